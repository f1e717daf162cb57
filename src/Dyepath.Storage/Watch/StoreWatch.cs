using System.Collections.Concurrent;
using Dyepath.Storage.Database;
using Dyepath.Storage.Faults;

namespace Dyepath.Storage.Watch;

/// <summary>A text whose bytes are not those that were stored.</summary>
/// <param name="Id">Of the project or making.</param>
/// <param name="Name">Of the project or making, as lists show it.</param>
public sealed record DamagedText(string Id, string Name);

/// <summary>What this host has met of the store's troubles since it started.</summary>
public sealed class StoreWatch(TimeProvider clock)
{
    /// <summary>A disk that was full and took nothing since is called full no longer than this.</summary>
    private static readonly TimeSpan FullFor = TimeSpan.FromMinutes(10);

    private readonly ConcurrentDictionary<string, DamagedText> _damaged = new();
    private long _lastFull = long.MinValue;

    /// <summary>What was met and has not been read soundly since, by id.</summary>
    public IReadOnlyList<DamagedText> Damaged => [.. _damaged.Values.OrderBy(text => text.Id, StringComparer.Ordinal)];

    /// <summary>The disk was full a short while ago and has taken nothing since.</summary>
    public bool IsFull => clock.GetUtcNow().UtcTicks - FullFor.Ticks < Interlocked.Read(ref _lastFull);

    /// <summary>Where the next look goes on; see <see cref="StoreInspector"/>.</summary>
    internal string LookedUpTo { get; set; } = "";

    /// <summary>Does a change; see <see cref="AppDb.AgainAsync"/>. Whether the disk took it is seen.</summary>
    internal async Task<T> WriteAsync<T>(AppDb db, Func<bool, Task<T>> work, CancellationToken stop)
    {
        try
        {
            var done = await db.AgainAsync(work, stop);
            Interlocked.Exchange(ref _lastFull, long.MinValue);
            return done;
        }
        catch (StoreException e) when (e.Fault == StoreFault.DiskFull)
        {
            Interlocked.Exchange(ref _lastFull, clock.GetUtcNow().UtcTicks);
            throw;
        }
    }

    internal void Saw(string id, string name, bool isSound)
    {
        if (isSound)
            _damaged.TryRemove(id, out _);
        else
            _damaged[id] = new DamagedText(id, name);
    }
}
