using Dyepath.Contracts;
using Dyepath.Storage.Database;
using Dyepath.Storage.Faults;
using Dyepath.Storage.Makings;
using Dyepath.Storage.Watch;
using Microsoft.EntityFrameworkCore;

namespace Dyepath.Storage.Handovers;

/// <summary>What makers to whom a project was handed over have sent of their pieces.</summary>
public sealed class MakerLogStore(AppDb db, TimeProvider clock, StoredForms forms, StoreUse use, StoreWatch watch)
{
    /// <summary>Pieces that makers may begin from one handover.</summary>
    public const int MostOfHandover = 50;

    /// <summary>Whoever has a key may write, so all logs of one handover together stay below this.</summary>
    public const long MostBytesOfHandover = 20_000_000;

    /// <summary>Stores the log of a piece, or replaces what was sent of it before under the same handover.</summary>
    public Task<ReceiveOutcome> ReceiveAsync(HandedPiece handed, string makingId, MakingText text, CancellationToken stop)
    {
        ArgumentNullException.ThrowIfNull(handed);
        ArgumentNullException.ThrowIfNull(text);
        return watch.WriteAsync(
            db,
            async _ =>
            {
                using var turn = await db.TakeTurnAsync(stop);
                await using var transaction = await db.Database.BeginTransactionAsync(stop);
                if (!await db.LockAsync(handed.ProjectId, stop) || !await db.Handovers.AnyAsync(h => h.Id == handed.Id, stop))
                    return ReceiveOutcome.Revoked;
                var others = await db.Logs.Where(l => l.HandoverId == handed.Id && l.MakingId != makingId).Select(l => l.Bytes)
                    .ToListAsync(stop);
                if (others.Count >= MostOfHandover || others.Sum(bytes => (long)bytes) + text.Document.Length > MostBytesOfHandover)
                    return ReceiveOutcome.Full;
                var now = clock.GetStoredNow();
                var replaced = await db.Logs.Where(l => l.HandoverId == handed.Id && l.MakingId == makingId).ExecuteUpdateAsync(
                    l => l.SetProperty(x => x.Size, text.Size).SetProperty(x => x.ReceivedAt, now).SetProperty(x => x.Entries, text.Entries)
                        .SetProperty(x => x.Bytes, text.Document.Length).SetProperty(x => x.Document, text.Document),
                    stop);
                if (replaced == 0)
                {
                    await use.TakeBytesAsync(db, text.Document.Length, stop);
                    db.Logs.Add(new MakerLogRow
                    {
                        Id = Guid.CreateVersion7().ToString(),
                        ProjectId = handed.ProjectId,
                        HandoverId = handed.Id,
                        MakingId = makingId,
                        Size = text.Size,
                        ReceivedAt = now,
                        Entries = text.Entries,
                        Bytes = text.Document.Length,
                        Document = text.Document,
                    });
                    await db.SaveChangesAsync(stop);
                }
                await transaction.CommitAsync(stop);
                return ReceiveOutcome.Stored;
            },
            stop);
    }

    /// <summary>Newest first; null where there is no such project.</summary>
    public Task<Page<ReceivedLog>?> ListAsync(string projectId, Place after, CancellationToken stop) => db.AgainAsync(
        async _ =>
        {
            var logs = await db.Logs.Where(l => l.ProjectId == projectId)
                .Where(l => l.ReceivedAt < after.Moment || (l.ReceivedAt == after.Moment && string.Compare(l.Id, after.Id) > 0))
                .OrderByDescending(l => l.ReceivedAt).ThenBy(l => l.Id).Take(ApiPaths.MostListed + 1)
                .Select(l => new ReceivedLog(l.Id, l.Size, l.ReceivedAt, l.Entries)).ToListAsync(stop);
            return logs.Count > 0 || await db.Projects.AnyAsync(p => p.Id == projectId, stop)
                ? Place.Page(logs, log => new Place(log.ReceivedAt, log.Id))
                : null;
        },
        stop);

    /// <summary>Null where there is no such log.</summary>
    /// <exception cref="StoreException">It is damaged.</exception>
    public Task<byte[]?> ReadAsync(string projectId, string id, CancellationToken stop) => db.AgainAsync(
        async _ => forms.Sound(await db.Logs.Where(l => l.ProjectId == projectId && l.Id == id).Select(l => l.Document)
            .SingleOrDefaultAsync(stop)),
        stop);

    /// <returns>Whether there was such a log.</returns>
    public Task<bool> DeleteAsync(string projectId, string id, CancellationToken stop) => watch.WriteAsync(
        db,
        async again =>
        {
            using var turn = await db.TakeTurnAsync(stop);
            return await db.Logs.Where(l => l.ProjectId == projectId && l.Id == id).ExecuteDeleteAsync(stop) == 1 || again;
        },
        stop);
}
