using Dyepath.Storage.Database;
using Dyepath.Storage.Faults;
using Microsoft.EntityFrameworkCore;

namespace Dyepath.Storage.Watch;

/// <summary>
/// How much of its limits the store uses. Bytes are counted now and then and what this host adds is added: counting reads a row
/// of every text, and a save must not take longer the more is stored.
/// </summary>
public sealed class StoreUse(StoreLimits limits, TimeProvider clock)
{
    /// <summary>Other hosts store too.</summary>
    private static readonly TimeSpan CountedFor = TimeSpan.FromMinutes(1);

    private readonly Lock _lock = new();
    private DateTimeOffset _counted = DateTimeOffset.MinValue;
    private long _bytes;

    /// <exception cref="StoreException">There is no room for another.</exception>
    internal async Task TakeProjectAsync(AppDb db, long bytes, CancellationToken stop)
    {
        if (await db.Projects.CountAsync(stop) >= limits.MostProjects)
            throw new StoreException(StoreFault.TooManyProjects);
        await TakeBytesAsync(db, bytes, stop);
    }

    /// <exception cref="StoreException">There is no room for so many more.</exception>
    internal async Task TakeBytesAsync(AppDb db, long more, CancellationToken stop)
    {
        if (TryTake(more))
            return;
        var bytes = await CountAsync(db, stop);
        lock (_lock)
        {
            (_bytes, _counted) = (bytes, clock.GetUtcNow());
        }
        if (!TryTake(more))
            throw new StoreException(StoreFault.TooManyBytes);
    }

    private bool TryTake(long more)
    {
        lock (_lock)
        {
            if (clock.GetUtcNow() - _counted > CountedFor || _bytes + more > limits.MostBytes)
                return false;
            _bytes += more;
            return true;
        }
    }

    private static async Task<long> CountAsync(AppDb db, CancellationToken stop) =>
        await db.Projects.SumAsync(p => (long)p.Document.Length, stop) + await db.Versions.SumAsync(v => (long)v.Bytes, stop)
        + await db.Handovers.SumAsync(h => (long)h.Document.Length, stop) + await db.Logs.SumAsync(l => (long)l.Bytes, stop)
        + await db.Makings.SumAsync(m => (long)m.Document.Length, stop);
}
