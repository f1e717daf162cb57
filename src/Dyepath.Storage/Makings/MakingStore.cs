using System.Linq.Expressions;
using Dyepath.Contracts;
using Dyepath.Storage.Database;
using Microsoft.EntityFrameworkCore;

namespace Dyepath.Storage.Makings;

/// <summary>
/// Copies of the pieces under way; the devices on which they are made have the originals. So there are no versions: a making
/// holds its whole log.
/// </summary>
public sealed class MakingStore(AppDb db, TimeProvider clock)
{
    /// <summary>Several hosts on one database that begin pieces at the same moment may pass it by a few.</summary>
    public const int Most = 200;

    private static readonly Expression<Func<MakingRow, MakingSummary>> Summary =
        m => new MakingSummary(m.Id, m.Title, m.Size, m.ProjectId, m.Entries, m.UpdatedAt, m.Etag);

    public async Task<IReadOnlyList<MakingSummary>> ListAsync(CancellationToken stop) =>
        await db.Makings.OrderByDescending(m => m.UpdatedAt).ThenBy(m => m.Id).Select(Summary).ToListAsync(stop);

    /// <summary>The text and its ETag; null where there is no such making.</summary>
    public async Task<(byte[] Document, string Etag)?> ReadAsync(string id, CancellationToken stop)
    {
        var found = await db.Makings.Where(m => m.Id == id).Select(m => new { m.Document, m.Etag }).SingleOrDefaultAsync(stop);
        return found is null ? null : (found.Document, found.Etag);
    }

    /// <summary><see cref="MakingOutcome.Stale"/> where another text has the id.</summary>
    public async Task<MakingOutcome> CreateAsync(string id, string? projectId, MakingText text, CancellationToken stop)
    {
        ArgumentNullException.ThrowIfNull(text);
        using var turn = await db.TakeTurnAsync(stop);
        if (await SummaryAsync(id, stop) is { } taken)
            return SameOrStale(taken, text);
        if (await db.Makings.CountAsync(stop) >= Most)
            return new MakingOutcome.Full();
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
        catch (DbUpdateException)
        {
            // Another host may have taken the id between the look and the write.
            db.ChangeTracker.Clear();
            if (await SummaryAsync(id, stop) is { } meanwhile)
                return SameOrStale(meanwhile, text);
            throw;
        }
        return new MakingOutcome.Created(new(id, text.Title, text.Size, projectId, text.Entries, row.UpdatedAt, text.Etag));
    }

    /// <summary>
    /// Replaces the text if it is still the one that was seen. Storing the text that is there already changes nothing and
    /// succeeds, whatever was seen, so that it may be sent again.
    /// </summary>
    /// <param name="seen">ETag of the text that this one continues.</param>
    public async Task<MakingOutcome> SaveAsync(string id, string seen, MakingText text, CancellationToken stop)
    {
        ArgumentNullException.ThrowIfNull(text);
        using var turn = await db.TakeTurnAsync(stop);
        var now = clock.GetStoredNow();
        // One statement, so that of two writers who saw the same text the second finds another ETag.
        var replaced = await db.Makings.Where(m => m.Id == id && m.Etag == seen && m.Etag != text.Etag).ExecuteUpdateAsync(
            m => m.SetProperty(x => x.Title, text.Title).SetProperty(x => x.Size, text.Size).SetProperty(x => x.Entries, text.Entries)
                .SetProperty(x => x.UpdatedAt, now).SetProperty(x => x.Etag, text.Etag).SetProperty(x => x.Document, text.Document),
            stop);
        if (await SummaryAsync(id, stop) is not { } stored)
            return new MakingOutcome.Missing();
        return replaced == 1 ? new MakingOutcome.Saved(stored) : SameOrStale(stored, text);
    }

    /// <returns>Whether there was such a making.</returns>
    public async Task<bool> DeleteAsync(string id, CancellationToken stop)
    {
        using var turn = await db.TakeTurnAsync(stop);
        return await db.Makings.Where(m => m.Id == id).ExecuteDeleteAsync(stop) == 1;
    }

    private static MakingOutcome SameOrStale(MakingSummary stored, MakingText text) =>
        stored.Etag == text.Etag ? new MakingOutcome.Saved(stored) : new MakingOutcome.Stale(stored);

    private Task<MakingSummary?> SummaryAsync(string id, CancellationToken stop) =>
        db.Makings.Where(m => m.Id == id).Select(Summary).SingleOrDefaultAsync(stop);
}
