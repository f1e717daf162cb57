using System.Linq.Expressions;
using Dyepath.Storage.Database;
using Microsoft.EntityFrameworkCore;

namespace Dyepath.Storage.Sessions;

/// <summary>A device that is signed in.</summary>
/// <param name="Id">By which it is signed out; opens nothing.</param>
/// <param name="Device">Such as "Firefox on Linux".</param>
/// <param name="SeenAt">At most <see cref="SessionStore.SeenEvery"/> before it last asked for anything.</param>
public sealed record Session(string Id, string Device, DateTimeOffset SignedInAt, DateTimeOffset SeenAt);

/// <summary>
/// Devices that gave the access token, each with a key of its own. A session holds under the token that it was begun with
/// alone, which callers name by its mark.
/// </summary>
public sealed class SessionStore(AppDb db, TimeProvider clock)
{
    public static readonly TimeSpan LongestIdle = TimeSpan.FromDays(30);

    public static readonly TimeSpan Longest = TimeSpan.FromDays(180);

    /// <summary>So often at most a request writes that its device was seen.</summary>
    public static readonly TimeSpan SeenEvery = TimeSpan.FromHours(1);

    /// <summary>The device that was not seen for the longest time makes room for a new one.</summary>
    public const int Most = 100;

    private static readonly Expression<Func<SessionRow, Session>> Summary = s => new Session(s.Id, s.Device, s.SignedInAt, s.SeenAt);

    /// <returns>The new session, and its key, which is told this once.</returns>
    public async Task<(Session Session, string Key)> BeginAsync(string tokenMark, string device, CancellationToken stop)
    {
        var now = clock.GetStoredNow();
        var key = SecretKey.New();
        var row = new SessionRow
        {
            Id = Guid.CreateVersion7().ToString(),
            KeyHash = SecretKey.Hash(key),
            TokenMark = tokenMark,
            Device = device,
            SignedInAt = now,
            SeenAt = now,
        };
        using var turn = await db.TakeTurnAsync(stop);
        await using var transaction = await db.Database.BeginTransactionAsync(stop);
        var (idle, old) = (now - LongestIdle, now - Longest);
        await db.Sessions.Where(s => s.SeenAt <= idle || s.SignedInAt <= old).ExecuteDeleteAsync(stop);
        var beyond = await db.Sessions.OrderByDescending(s => s.SeenAt).ThenByDescending(s => s.Id).Skip(Most - 1).Select(s => s.Id)
            .ToListAsync(stop);
        if (beyond.Count > 0)
            await db.Sessions.Where(s => beyond.Contains(s.Id)).ExecuteDeleteAsync(stop);
        db.Sessions.Add(row);
        await db.SaveChangesAsync(stop);
        await transaction.CommitAsync(stop);
        return (new Session(row.Id, row.Device, row.SignedInAt, row.SeenAt), key);
    }

    /// <summary>The session that the key opens, which is then seen; null where it opens none, or none any more.</summary>
    public async Task<Session?> OpenAsync(string key, string tokenMark, CancellationToken stop)
    {
        if (!SecretKey.HasForm(key))
            return null;
        var hash = SecretKey.Hash(key);
        var now = clock.GetStoredNow();
        if (await Standing(tokenMark, now).Where(s => s.KeyHash == hash).Select(Summary).SingleOrDefaultAsync(stop) is not { } session)
            return null;
        if (now - session.SeenAt < SeenEvery)
            return session;
        using var turn = await db.TakeTurnAsync(stop);
        await db.Sessions.Where(s => s.Id == session.Id).ExecuteUpdateAsync(s => s.SetProperty(x => x.SeenAt, now), stop);
        return session with { SeenAt = now };
    }

    /// <summary>The latest seen first.</summary>
    public async Task<IReadOnlyList<Session>> ListAsync(string tokenMark, CancellationToken stop) =>
        await Standing(tokenMark, clock.GetStoredNow()).OrderByDescending(s => s.SeenAt).ThenByDescending(s => s.Id).Select(Summary)
            .ToListAsync(stop);

    /// <returns>Whether there was such a session.</returns>
    public async Task<bool> EndAsync(string id, CancellationToken stop)
    {
        using var turn = await db.TakeTurnAsync(stop);
        return await db.Sessions.Where(s => s.Id == id).ExecuteDeleteAsync(stop) == 1;
    }

    public async Task EndAllAsync(CancellationToken stop)
    {
        using var turn = await db.TakeTurnAsync(stop);
        await db.Sessions.ExecuteDeleteAsync(stop);
    }

    /// <summary>Ends what was begun with another token, so that going back to that one brings no device back.</summary>
    public async Task EndOfOtherTokensAsync(string tokenMark, CancellationToken stop)
    {
        using var turn = await db.TakeTurnAsync(stop);
        await db.Sessions.Where(s => s.TokenMark != tokenMark).ExecuteDeleteAsync(stop);
    }

    private IQueryable<SessionRow> Standing(string tokenMark, DateTimeOffset now)
    {
        var (idle, old) = (now - LongestIdle, now - Longest);
        return db.Sessions.Where(s => s.TokenMark == tokenMark && s.SeenAt > idle && s.SignedInAt > old);
    }
}
