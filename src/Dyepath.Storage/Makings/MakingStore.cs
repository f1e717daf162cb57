using System.Linq.Expressions;
using Dyepath.Contracts;
using Dyepath.Storage.Database;
using Dyepath.Storage.Faults;
using Dyepath.Storage.Projects;
using Dyepath.Storage.Watch;
using Microsoft.EntityFrameworkCore;

namespace Dyepath.Storage.Makings;

/// <summary>
/// Copies of the pieces under way; the devices on which they are made have the originals. So there are no versions: a making
/// holds its whole log.
/// </summary>
public sealed class MakingStore(AppDb db, TimeProvider clock, StoreUse use, StoreWatch watch)
{
    /// <summary>Several hosts on one database that begin pieces at the same moment may pass it by a few.</summary>
    public const int Most = 200;

    private static readonly Expression<Func<MakingRow, MakingSummary>> Summary =
        m => new MakingSummary(m.Id, m.Title, m.Size, m.ProjectId, m.Entries, m.UpdatedAt, m.Etag) { Made = m.Made };

    private static readonly Func<MakingRow, MakingSummary> Summarised = Summary.Compile();

    /// <summary>The latest changed first.</summary>
    public Task<Page<MakingSummary>> ListAsync(Place after, CancellationToken stop) => db.AgainAsync(
        async _ => Place.Page(
            (await db.Makings.Where(m => m.UpdatedAt < after.Moment || (m.UpdatedAt == after.Moment && string.Compare(m.Id, after.Id) > 0))
                .OrderByDescending(m => m.UpdatedAt).ThenBy(m => m.Id).Take(ApiPaths.MostListed + 1).Select(Summary).ToListAsync(stop))
                .ConvertAll(m => m with { Title = ShownName.Of(m.Title) }),
            making => new Place(making.UpdatedAt, making.Id)),
        stop);

    /// <summary>The text, where its bytes are still those that were stored.</summary>
    public Task<TextReading> ReadAsync(string id, CancellationToken stop) => db.AgainAsync(
        async _ =>
        {
            byte[]? document = null;
            MakingSummary? head;
            try
            {
                var found = await db.Makings.AsNoTracking().SingleOrDefaultAsync(m => m.Id == id, stop);
                head = found is null ? null : Summarised(found);
                document = found?.Document;
            }
            catch (Exception e) when (StoreFaults.Find(e) == StoreFault.Damaged)
            {
                head = await SummaryAsync(id, stop);
            }
            if (head is null)
                return new TextReading.Missing();
            return document is not null && Etags.Of(document) == head.Etag
                ? new TextReading.Sound(document, head.Etag, Made: head.Made)
                : (TextReading)new TextReading.Damaged(ShownName.Of(head.Title), head.Etag, head.UpdatedAt);
        },
        stop);

    /// <summary><see cref="MakingOutcome.Stale"/> where another text has the id.</summary>
    public Task<MakingOutcome> CreateAsync(string id, string? projectId, MakingText text, CancellationToken stop)
    {
        ArgumentNullException.ThrowIfNull(text);
        return watch.WriteAsync(
            db,
            async again =>
            {
                using var turn = await db.TakeTurnAsync(stop);
                if (await SummaryAsync(id, stop) is { } taken)
                    return await SameOrStaleAsync(taken, text, again, stop);
                if (await db.Makings.CountAsync(stop) >= Most)
                    return new MakingOutcome.Full();
                await use.TakeBytesAsync(db, text.Document.Length, stop);
                var row = new MakingRow
                {
                    Id = id,
                    Title = text.Title,
                    Size = text.Size,
                    ProjectId = projectId,
                    Entries = text.Entries,
                    UpdatedAt = clock.GetStoredNow(),
                    Etag = text.Etag,
                    Document = text.Document,
                };
                db.Makings.Add(row);
                try
                {
                    await db.SaveChangesAsync(stop);
                }
                catch (DbUpdateException e) when (StoreFaults.Find(e) is null)
                {
                    // Another host may have taken the id between the look and the write.
                    db.ChangeTracker.Clear();
                    if (await SummaryAsync(id, stop) is { } meanwhile)
                        return await SameOrStaleAsync(meanwhile, text, again, stop);
                    throw;
                }
                return new MakingOutcome.Created(Summarised(row));
            },
            stop);
    }

    /// <summary>
    /// Replaces the text if it is still the one that was seen. Storing the text that is there already changes nothing and
    /// succeeds, whatever was seen, so that it may be sent again; it mends damaged bytes.
    /// </summary>
    /// <param name="seen">ETag of the text that this one continues.</param>
    public Task<MakingOutcome> SaveAsync(string id, string seen, MakingText text, CancellationToken stop)
    {
        ArgumentNullException.ThrowIfNull(text);
        return watch.WriteAsync<MakingOutcome>(
            db,
            async _ =>
            {
                using var turn = await db.TakeTurnAsync(stop);
                var now = clock.GetStoredNow();
                // One statement, so that of two writers who saw the same text the second finds another ETag.
                var replaced = await db.Makings.Where(m => m.Id == id && m.Etag == seen && m.Etag != text.Etag).ExecuteUpdateAsync(
                    m => m.SetProperty(x => x.Title, text.Title).SetProperty(x => x.Size, text.Size)
                        .SetProperty(x => x.Entries, text.Entries)
                        .SetProperty(x => x.UpdatedAt, now).SetProperty(x => x.Etag, text.Etag).SetProperty(x => x.Document, text.Document),
                    stop);
                if (await SummaryAsync(id, stop) is not { } stored)
                    return new MakingOutcome.Missing();
                return replaced == 1 ? new MakingOutcome.Saved(stored) : await SameOrStaleAsync(stored, text, again: false, stop);
            },
            stop);
    }

    /// <returns>Whether there was such a making.</returns>
    public Task<bool> DeleteAsync(string id, CancellationToken stop) => watch.WriteAsync(
        db,
        async again =>
        {
            using var turn = await db.TakeTurnAsync(stop);
            return await db.Makings.Where(m => m.Id == id).ExecuteDeleteAsync(stop) == 1 || again;
        },
        stop);

    /// <param name="again">Whether an earlier try, whose answer was lost, may have made it.</param>
    private async Task<MakingOutcome> SameOrStaleAsync(MakingSummary stored, MakingText text, bool again, CancellationToken stop)
    {
        if (stored.Etag != text.Etag)
            return new MakingOutcome.Stale(stored);
        await db.Makings.Where(m => m.Id == stored.Id && m.Etag == text.Etag)
            .ExecuteUpdateAsync(m => m.SetProperty(x => x.Document, text.Document), stop);
        return again ? new MakingOutcome.Created(stored) : new MakingOutcome.Saved(stored);
    }

    private Task<MakingSummary?> SummaryAsync(string id, CancellationToken stop) =>
        db.Makings.Where(m => m.Id == id).Select(Summary).SingleOrDefaultAsync(stop);
}
