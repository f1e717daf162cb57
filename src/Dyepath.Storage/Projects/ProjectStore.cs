using Dyepath.Contracts;
using Dyepath.Storage.Database;
using Dyepath.Storage.Faults;
using Dyepath.Storage.Versions;
using Dyepath.Storage.Watch;
using Microsoft.EntityFrameworkCore;

namespace Dyepath.Storage.Projects;

/// <summary>The projects of one store. Every change is a transaction of its own that either happens whole or not at all.</summary>
public sealed class ProjectStore(AppDb db, TimeProvider clock, StoredForms forms, StoreUse use, StoreWatch watch)
{
    /// <summary>Those on the shelf, or those in the archive, the latest changed first.</summary>
    public Task<Page<ProjectSummary>> ListAsync(bool archived, Place after, CancellationToken stop) => db.AgainAsync(
        async _ => Place.Page(
            (await db.Projects.Where(p => p.Archived == archived)
                .Where(p => p.UpdatedAt < after.Moment || (p.UpdatedAt == after.Moment && string.Compare(p.Id, after.Id) > 0))
                .OrderByDescending(p => p.UpdatedAt).ThenBy(p => p.Id).Take(ApiPaths.MostListed + 1).Select(ProjectHead.Of)
                .ToListAsync(stop))
                .ConvertAll(head => head.Summary),
            project => new Place(project.UpdatedAt, project.Id)),
        stop);

    /// <summary>There is no project, on the shelf or in the archive.</summary>
    public Task<bool> IsEmptyAsync(CancellationToken stop) => db.AgainAsync(_ => db.Projects.AllAsync(p => false, stop), stop);

    /// <summary>The text, where its bytes are still those that were stored.</summary>
    public Task<TextReading> ReadAsync(string id, CancellationToken stop) => db.AgainAsync(
        async _ =>
        {
            byte[]? document = null;
            ProjectHead? head;
            try
            {
                // In one statement, so that no save comes in between.
                var found = await db.Projects.AsNoTracking().SingleOrDefaultAsync(p => p.Id == id, stop);
                (head, document) = (found is null ? null : ProjectHead.Read(found), found?.Document);
            }
            catch (Exception e) when (StoreFaults.Find(e) == StoreFault.Damaged)
            {
                head = await HeadAsync(id, stop);
            }
            if (head is null)
                return new TextReading.Missing();
            var isSound = document is not null && Etags.Of(document) == head.Etag;
            watch.Saw(id, head.Shown, isSound);
            return isSound
                ? new TextReading.Sound(document!, head.Etag, StoredSwatch.Read(head.Swatch), head.Made)
                : (TextReading)new TextReading.Damaged(
                    head.Shown, head.Etag, head.UpdatedAt, await GoodVersion.FindAsync(db, forms, id, stop));
        },
        stop);

    /// <summary><see cref="ChangeOutcome.Stale"/> where the id is taken.</summary>
    public Task<ChangeOutcome> CreateAsync(string id, Draft draft, CancellationToken stop)
    {
        ArgumentNullException.ThrowIfNull(draft);
        return WriteAsync(
            async again =>
            {
                using var turn = await db.TakeTurnAsync(stop);
                if (await HeadAsync(id, stop) is { } taken)
                    return Taken(taken, again);
                await use.TakeProjectAsync(db, draft.Document.Length, stop);
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
                try
                {
                    await db.SaveChangesAsync(stop);
                }
                catch (DbUpdateException e) when (StoreFaults.Find(e) is null)
                {
                    // Another host may have taken the id between the look and the write.
                    db.ChangeTracker.Clear();
                    if (await HeadAsync(id, stop) is { } meanwhile)
                        return Taken(meanwhile, again);
                    throw;
                }
                return new ChangeOutcome.Done(ProjectHead.Read(row).Summary);
            },
            stop);

        // Tried again, it may have been taken by the first try, whose answer was lost.
        ChangeOutcome Taken(ProjectHead head, bool again) => again && head.Etag == draft.Etag
            ? new ChangeOutcome.Done(head.Summary)
            : new ChangeOutcome.Stale(head.Summary);
    }

    /// <summary>
    /// Replaces the text if it is still the one that was seen; the replaced one becomes a version. Storing the text that is
    /// there already changes nothing and succeeds, whatever was seen, so that a save may be sent again; it mends damaged bytes.
    /// </summary>
    /// <param name="seen">ETag of the text that the change was made from.</param>
    /// <param name="keep">Keeps the replaced text whatever its age, up to the quota: before a restore, which may be a slip.</param>
    public Task<ChangeOutcome> SaveAsync(string id, string seen, Draft draft, bool keep, CancellationToken stop)
    {
        ArgumentNullException.ThrowIfNull(draft);
        return WriteAsync(
            async _ =>
            {
                try
                {
                    return await ReplaceAsync(id, seen, draft, keep, canReadOld: true, stop);
                }
                catch (Exception e) when (StoreFaults.Find(e) == StoreFault.Damaged)
                {
                    db.ChangeTracker.Clear();
                    return await ReplaceAsync(id, seen, draft, keep, canReadOld: false, stop);
                }
            },
            stop);
    }

    /// <summary>Into the archive, or back on the shelf.</summary>
    public Task<ProjectSummary?> ArchiveAsync(string id, bool archived, CancellationToken stop) => WriteAsync(
        async _ =>
        {
            using var turn = await db.TakeTurnAsync(stop);
            await db.Projects.Where(p => p.Id == id).ExecuteUpdateAsync(p => p.SetProperty(x => x.Archived, archived), stop);
            return (await HeadAsync(id, stop))?.Summary;
        },
        stop);

    /// <summary>For ever, with every version; only from the archive.</summary>
    public Task<DeleteOutcome> DeleteAsync(string id, CancellationToken stop) => WriteAsync(
        async again =>
        {
            using var turn = await db.TakeTurnAsync(stop);
            if (await db.Projects.Where(p => p.Id == id && p.Archived).ExecuteDeleteAsync(stop) == 1)
                return DeleteOutcome.Deleted;
            if (await db.Projects.AnyAsync(p => p.Id == id, stop))
                return DeleteOutcome.NotArchived;
            return again ? DeleteOutcome.Deleted : DeleteOutcome.Missing;
        },
        stop);

    private async Task<ChangeOutcome> ReplaceAsync(
        string id, string seen, Draft draft, bool keep, bool canReadOld, CancellationToken stop)
    {
        using var turn = await db.TakeTurnAsync(stop);
        await using var transaction = await db.Database.BeginTransactionAsync(stop);
        if (await db.Locked(id).Select(ProjectHead.Of).SingleOrDefaultAsync(stop) is not { } head)
            return new ChangeOutcome.Missing();
        var isSame = head.Etag == draft.Etag;
        if (!isSame && head.Etag != seen)
            return new ChangeOutcome.Stale(head.Summary);
        var project = db.Projects.Where(p => p.Id == id);
        var old = canReadOld ? await project.Select(p => p.Document).SingleAsync(stop) : null;
        var swatch = StoredSwatch.Write(draft.Swatch) ?? head.Swatch;
        if (isSame)
        {
            if (old is null || Etags.Of(old) != draft.Etag)
                await project.ExecuteUpdateAsync(p => p.SetProperty(x => x.Document, draft.Document), stop);
            if (swatch != head.Swatch)
                await project.ExecuteUpdateAsync(p => p.SetProperty(x => x.Swatch, swatch), stop);
            await transaction.CommitAsync(stop);
            watch.Saw(id, head.Shown, isSound: true);
            return new ChangeOutcome.Done((head with { Swatch = swatch }).Summary);
        }
        await use.TakeBytesAsync(db, draft.Document.Length, stop);
        var now = clock.GetStoredNow();
        // Damaged bytes that nobody can read would only be another damaged text.
        var isKept = old is not null && (Etags.Of(old) == head.Etag || forms.IsDocument(old));
        var number = head.LastVersion + (isKept ? 1 : 0);
        if (isKept)
        {
            db.Versions.Add(new VersionRow
            {
                ProjectId = id,
                Number = number,
                SavedAt = head.UpdatedAt,
                Kept = keep,
                Bytes = old!.Length,
                Document = old,
            });
            await db.SaveChangesAsync(stop);
        }
        await project.ExecuteUpdateAsync(
            p => p.SetProperty(x => x.Document, draft.Document).SetProperty(x => x.Etag, draft.Etag).SetProperty(x => x.Name, draft.Name)
                .SetProperty(x => x.Swatch, swatch).SetProperty(x => x.UpdatedAt, now).SetProperty(x => x.LastVersion, number),
            stop);
        await ThinAsync(id, now, stop);
        await transaction.CommitAsync(stop);
        watch.Saw(id, draft.Name, isSound: true);
        return new ChangeOutcome.Done(
            (head with { Name = draft.Name, UpdatedAt = now, Etag = draft.Etag, Swatch = swatch, LastVersion = number }).Summary);
    }

    private Task<ProjectHead?> HeadAsync(string id, CancellationToken stop) =>
        db.Projects.Where(p => p.Id == id).Select(ProjectHead.Of).SingleOrDefaultAsync(stop);

    private Task<T> WriteAsync<T>(Func<bool, Task<T>> work, CancellationToken stop) => watch.WriteAsync(db, work, stop);

    private async Task ThinAsync(string id, DateTimeOffset now, CancellationToken stop)
    {
        var versions = await db.Versions.Where(v => v.ProjectId == id)
            .Select(v => new SavedText(v.Number, v.SavedAt, v.Bytes, v.Kept, v.Edition != null)).ToListAsync(stop);
        var dropped = Retention.Dropped(versions, now);
        if (dropped.Count > 0)
        {
            await db.Versions.Where(v => v.ProjectId == id && dropped.Contains(v.Number)).ExecuteDeleteAsync(stop);
        }
    }
}
