using System.Linq.Expressions;
using Dyepath.Storage.Database;
using Dyepath.Storage.Faults;
using Dyepath.Storage.Watch;
using Microsoft.EntityFrameworkCore;

namespace Dyepath.Storage.Sessions;

/// <summary>A device that is signed in.</summary>
/// <param name="Id">By which it is signed out; opens nothing.</param>
/// <param name="Device">Such as "Firefox on Linux".</param>
/// <param name="SignedInAt">When it gave the access token.</param>
/// <param name="SeenAt">At most <see cref="SessionStore.SeenEvery"/> before it last asked for anything.</param>
public sealed record Session(string Id, string Device, DateTimeOffset SignedInAt, DateTimeOffset SeenAt);

/// <summary>
/// Devices that gave the access token, each with a key of its own. A session holds under the token that it was begun with
/// alone, which callers name by its mark.
/// </summary>
public sealed class SessionStore(AppDb db, TimeProvider clock, StoreWatch watch)
{
    /// <summary>A device that was not seen for so long is signed out.</summary>
    public static readonly TimeSpan LongestIdle = TimeSpan.FromDays(30);

    /// <summary>A device that signed in so long ago is signed out, however often it was seen.</summary>
    public static readonly TimeSpan Longest = TimeSpan.FromDays(180);

    /// <summary>So often at most a request writes that its device was seen.</summary>
    public static readonly TimeSpan SeenEvery = TimeSpan.FromHours(1);

    /// <summary>The device that was not seen for the longest time makes room for a new one.</summary>
    public const int Most = 100;

    private static readonly Expression<Func<SessionRow, Session>> Summary = s => new Session(s.Id, s.Device, s.SignedInAt, s.SeenAt);

    /// <returns>The new session, and its key, which is told this once.</returns>
    public Task<(Session Session, string Key)> BeginAsync(string tokenMark, string device, CancellationToken stop)
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
        var session = new Session(row.Id, row.Device, row.SignedInAt, row.SeenAt);
        return WriteAsync(
            async again =>
            {
                await using var transaction = await db.Database.BeginTransactionAsync(stop);
                // An earlier try, whose answer was lost, may have begun it.
                if (again && await db.Sessions.AnyAsync(s => s.Id == row.Id, stop))
                    return (session, key);
                var (idle, old) = (now - LongestIdle, now - Longest);
                await db.Sessions.Where(s => s.SeenAt <= idle || s.SignedInAt <= old).ExecuteDeleteAsync(stop);
                var beyond = await db.Sessions.OrderByDescending(s => s.SeenAt).ThenByDescending(s => s.Id).Skip(Most - 1).Select(s => s.Id)
                    .ToListAsync(stop);
                if (beyond.Count > 0)
                    await db.Sessions.Where(s => beyond.Contains(s.Id)).ExecuteDeleteAsync(stop);
                db.Sessions.Add(row);
                await db.SaveChangesAsync(stop);
                await transaction.CommitAsync(stop);
                return (session, key);
            },
            stop);
    }

    /// <summary>
    /// The session that the key opens, which is then seen; null where it opens none, or none any more. Where the store does not take
    /// that it was seen, it opens all the same: who only reads goes on reading.
    /// </summary>
    public async Task<Session?> OpenAsync(string key, string tokenMark, CancellationToken stop)
    {
        if (!SecretKey.HasForm(key))
            return null;
        var hash = SecretKey.Hash(key);
        var now = clock.GetStoredNow();
        var found = await db.AgainAsync(
            _ => Standing(tokenMark, now).Where(s => s.KeyHash == hash).Select(Summary).SingleOrDefaultAsync(stop), stop);
        if (found is not { } session || now - session.SeenAt < SeenEvery)
            return found;
        try
        {
            await WriteAsync(
                _ => db.Sessions.Where(s => s.Id == session.Id).ExecuteUpdateAsync(s => s.SetProperty(x => x.SeenAt, now), stop), stop);
            return session with { SeenAt = now };
        }
        catch (StoreException)
        {
            return session;
        }
    }

    /// <summary>The latest seen first.</summary>
    public async Task<IReadOnlyList<Session>> ListAsync(string tokenMark, CancellationToken stop) => await db.AgainAsync(
        _ => Standing(tokenMark, clock.GetStoredNow()).OrderByDescending(s => s.SeenAt).ThenByDescending(s => s.Id).Select(Summary)
            .ToListAsync(stop),
        stop);

    /// <returns>Whether there was such a session.</returns>
    public Task<bool> EndAsync(string id, CancellationToken stop) => WriteAsync(
        async again => await db.Sessions.Where(s => s.Id == id).ExecuteDeleteAsync(stop) == 1 || again, stop);

    /// <summary>Signs every device out.</summary>
    public Task EndAllAsync(CancellationToken stop) => WriteAsync(_ => db.Sessions.ExecuteDeleteAsync(stop), stop);

    /// <summary>Ends what was begun with another token, so that going back to that one brings no device back.</summary>
    public Task EndOfOtherTokensAsync(string tokenMark, CancellationToken stop) =>
        WriteAsync(_ => db.Sessions.Where(s => s.TokenMark != tokenMark).ExecuteDeleteAsync(stop), stop);

    private Task<T> WriteAsync<T>(Func<bool, Task<T>> work, CancellationToken stop) => watch.WriteAsync(
        db,
        async again =>
        {
            using var turn = await db.TakeTurnAsync(stop);
            return await work(again);
        },
        stop);

    private IQueryable<SessionRow> Standing(string tokenMark, DateTimeOffset now)
    {
        var (idle, old) = (now - LongestIdle, now - Longest);
        return db.Sessions.Where(s => s.TokenMark == tokenMark && s.SeenAt > idle && s.SignedInAt > old);
    }
}
