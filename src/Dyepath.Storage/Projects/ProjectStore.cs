using Dyepath.Contracts;
using Dyepath.Storage.Database;
using Dyepath.Storage.Versions;
using Microsoft.EntityFrameworkCore;

namespace Dyepath.Storage.Projects;

/// <summary>The projects of one store. Every change is a transaction of its own that either happens whole or not at all.</summary>
public sealed class ProjectStore(AppDb db, TimeProvider clock)
{
    public async Task<IReadOnlyList<ProjectSummary>> ListAsync(bool archived, CancellationToken stop) =>
        [.. (await db.Projects.Where(p => p.Archived == archived).OrderByDescending(p => p.UpdatedAt).ThenBy(p => p.Id)
            .Select(p => new { p.Id, p.Name, p.Archived, p.UpdatedAt, p.Etag, p.Swatch }).ToListAsync(stop))
            .Select(p => new ProjectSummary(p.Id, p.Name, p.Archived, p.UpdatedAt, p.Etag, StoredSwatch.Read(p.Swatch)))];

    public Task<bool> IsEmptyAsync(CancellationToken stop) => db.Projects.AllAsync(p => false, stop);

    /// <summary>The text and its ETag; null where there is no such project.</summary>
    public async Task<(byte[] Document, string Etag)?> ReadAsync(string id, CancellationToken stop)
    {
        var found = await db.Projects.Where(p => p.Id == id).Select(p => new { p.Document, p.Etag })
            .SingleOrDefaultAsync(stop);
        return found is null ? null : (found.Document, found.Etag);
    }

    public async Task<ProjectSummary?> SummaryAsync(string id, CancellationToken stop)
    {
        var found = await db.Projects.Where(p => p.Id == id)
            .Select(p => new { p.Id, p.Name, p.Archived, p.UpdatedAt, p.Etag, p.Swatch }).SingleOrDefaultAsync(stop);
        return found is null
            ? null
            : new ProjectSummary(found.Id, found.Name, found.Archived, found.UpdatedAt, found.Etag, StoredSwatch.Read(found.Swatch));
    }

    /// <summary><see cref="ChangeOutcome.Stale"/> where the id is taken.</summary>
    public async Task<ChangeOutcome> CreateAsync(string id, Draft draft, CancellationToken stop)
    {
        ArgumentNullException.ThrowIfNull(draft);
        if (await SummaryAsync(id, stop) is { } taken)
            return new ChangeOutcome.Stale(taken);
        var now = clock.GetStoredNow();
        var row = new ProjectRow
        {
            Id = id,
            Name = draft.Name,
            CreatedAt = now,
            UpdatedAt = now,
            Etag = draft.Etag,
            Swatch = StoredSwatch.Write(draft.Swatch),
            Document = draft.Document,
        };
        db.Projects.Add(row);
        using var turn = await db.TakeTurnAsync(stop);
        try
        {
            await db.SaveChangesAsync(stop);
        }
        catch (DbUpdateException)
        {
            // Somebody may have taken the id between the look and the write.
            db.ChangeTracker.Clear();
            if (await SummaryAsync(id, stop) is { } meanwhile)
                return new ChangeOutcome.Stale(meanwhile);
            throw;
        }
        return new ChangeOutcome.Done(row.Summary);
    }

    /// <summary>
    /// Replaces the text if it is still the one that was seen; the replaced one becomes a version. Storing the text that is
    /// there already changes nothing and succeeds, whatever was seen, so that a save may be sent again.
    /// </summary>
    /// <param name="seen">ETag of the text that the change was made from.</param>
    /// <param name="keep">Keeps the replaced text whatever its age, up to the quota: before a restore, which may be a slip.</param>
    public async Task<ChangeOutcome> SaveAsync(string id, string seen, Draft draft, bool keep, CancellationToken stop)
    {
        ArgumentNullException.ThrowIfNull(draft);
        using var turn = await db.TakeTurnAsync(stop);
        await using var transaction = await db.Database.BeginTransactionAsync(stop);
        if (await db.Locked(id).SingleOrDefaultAsync(stop) is not { } row)
            return new ChangeOutcome.Missing();
        if (row.Etag == draft.Etag)
            return new ChangeOutcome.Done(row.Summary);
        if (row.Etag != seen)
            return new ChangeOutcome.Stale(row.Summary);
        var now = clock.GetStoredNow();
        db.Versions.Add(new VersionRow
        {
            ProjectId = id,
            Number = ++row.LastVersion,
            SavedAt = row.UpdatedAt,
            Kept = keep,
            Bytes = row.Document.Length,
            Document = row.Document,
        });
        row.Document = draft.Document;
        row.Etag = draft.Etag;
        row.Name = draft.Name;
        row.Swatch = StoredSwatch.Write(draft.Swatch);
        row.UpdatedAt = now;
        await db.SaveChangesAsync(stop);
        await ThinAsync(id, now, stop);
        await transaction.CommitAsync(stop);
        return new ChangeOutcome.Done(row.Summary);
    }

    /// <summary>Into the archive, or back on the shelf.</summary>
    public async Task<ProjectSummary?> ArchiveAsync(string id, bool archived, CancellationToken stop)
    {
        using var turn = await db.TakeTurnAsync(stop);
        await db.Projects.Where(p => p.Id == id).ExecuteUpdateAsync(p => p.SetProperty(x => x.Archived, archived), stop);
        return await SummaryAsync(id, stop);
    }

    /// <summary>For ever, with every version; only from the archive.</summary>
    public async Task<DeleteOutcome> DeleteAsync(string id, CancellationToken stop)
    {
        using var turn = await db.TakeTurnAsync(stop);
        if (await db.Projects.Where(p => p.Id == id && p.Archived).ExecuteDeleteAsync(stop) == 1)
            return DeleteOutcome.Deleted;
        return await db.Projects.AnyAsync(p => p.Id == id, stop) ? DeleteOutcome.NotArchived : DeleteOutcome.Missing;
    }

    private async Task ThinAsync(string id, DateTimeOffset now, CancellationToken stop)
    {
        var versions = await db.Versions.Where(v => v.ProjectId == id)
            .Select(v => new SavedText(v.Number, v.SavedAt, v.Bytes, v.Kept)).ToListAsync(stop);
        var dropped = Retention.Dropped(versions, now);
        if (dropped.Count > 0)
        {
            await db.Versions.Where(v => v.ProjectId == id && dropped.Contains(v.Number)).ExecuteDeleteAsync(stop);
        }
    }
}
