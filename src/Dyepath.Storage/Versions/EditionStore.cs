using Dyepath.Contracts;
using Dyepath.Storage.Database;
using Dyepath.Storage.Watch;
using Microsoft.EntityFrameworkCore;

namespace Dyepath.Storage.Versions;

/// <summary>What came of publishing.</summary>
public abstract record PublishOutcome
{
    private PublishOutcome()
    {
    }

    /// <summary>It is kept; it may have been before.</summary>
    public sealed record Done(VersionSummary Version) : PublishOutcome;

    /// <summary>Another text is published under this number.</summary>
    public sealed record Taken(VersionSummary Version) : PublishOutcome;

    /// <summary>The project has <see cref="EditionStore.MostEditions"/> already.</summary>
    public sealed record TooMany : PublishOutcome;

    /// <summary>There is no such project.</summary>
    public sealed record Missing : PublishOutcome;
}

/// <summary>The texts that were published: versions that stay as they are, whatever becomes of the project's text.</summary>
public sealed class EditionStore(AppDb db, TimeProvider clock, StoreUse use, StoreWatch watch)
{
    /// <summary>Of one project.</summary>
    public const int MostEditions = 50;

    /// <summary>Keeps a text under its number. Sent again, the same text changes nothing and succeeds.</summary>
    /// <param name="edition">1 or more.</param>
    public Task<PublishOutcome> PublishAsync(string projectId, int edition, byte[] document, CancellationToken stop)
    {
        ArgumentNullException.ThrowIfNull(document);
        ArgumentOutOfRangeException.ThrowIfLessThan(edition, 1);
        return watch.WriteAsync(
            db,
            async _ =>
            {
                using var turn = await db.TakeTurnAsync(stop);
                await using var transaction = await db.Database.BeginTransactionAsync(stop);
                if (await db.Locked(projectId).Select(p => (int?)p.LastVersion).SingleOrDefaultAsync(stop) is not { } last)
                    return new PublishOutcome.Missing();
                var published = db.Versions.Where(v => v.ProjectId == projectId && v.Edition != null);
                if (await published.AsNoTracking().SingleOrDefaultAsync(v => v.Edition == edition, stop) is { } row)
                {
                    var kept = new VersionSummary(row.Number, row.SavedAt, row.Bytes, row.Edition);
                    return row.Document.AsSpan().SequenceEqual(document) ? new PublishOutcome.Done(kept) : new PublishOutcome.Taken(kept);
                }
                if (await published.CountAsync(stop) >= MostEditions)
                    return new PublishOutcome.TooMany();
                await use.TakeBytesAsync(db, document.Length, stop);
                var version = new VersionSummary(last + 1, clock.GetStoredNow(), document.Length, edition);
                db.Versions.Add(new VersionRow
                {
                    ProjectId = projectId,
                    Number = version.Number,
                    SavedAt = version.SavedAt,
                    Edition = edition,
                    Bytes = document.Length,
                    Document = document,
                });
                await db.SaveChangesAsync(stop);
                await db.Projects.Where(p => p.Id == projectId)
                    .ExecuteUpdateAsync(p => p.SetProperty(x => x.LastVersion, version.Number), stop);
                await transaction.CommitAsync(stop);
                return (PublishOutcome)new PublishOutcome.Done(version);
            },
            stop);
    }

    /// <summary>From now on it is a version like any other, and goes when its time comes.</summary>
    /// <returns>False where there is no such edition.</returns>
    public Task<bool> TakeBackAsync(string projectId, int edition, CancellationToken stop) => watch.WriteAsync(
        db,
        async again =>
        {
            using var turn = await db.TakeTurnAsync(stop);
            return await db.Versions.Where(v => v.ProjectId == projectId && v.Edition == edition)
                .ExecuteUpdateAsync(v => v.SetProperty(x => x.Edition, (int?)null), stop) > 0 || again;
        },
        stop);
}
