using Dyepath.Contracts;
using Dyepath.Storage.Database;
using Dyepath.Storage.Faults;
using Microsoft.EntityFrameworkCore;

namespace Dyepath.Storage.Backup;

/// <param name="Counts">What the file holds.</param>
/// <param name="Damaged">What could not be written as it was stored.</param>
public sealed record WrittenBackup(BackupCounts Counts, IReadOnlyList<DamagedPart> Damaged);

/// <param name="Counts">What was added to the store.</param>
/// <param name="LeftAlone">Names of projects and makings that the store had already under the same id, and keeps as they are.</param>
/// <param name="HasHashes">Whether the file could be held to its hashes; those of earlier programs have none.</param>
public sealed record RestoredBackup(BackupCounts Counts, IReadOnlyList<string> LeftAlone, bool HasHashes);

/// <summary>The file is no whole backup.</summary>
public sealed class BadBackupException(string message, Exception? inner = null) : Exception(message, inner);

/// <summary>The whole store as lines of JSON, the same from both databases.</summary>
public sealed class BackupStore(AppDb db, TimeProvider clock, StoredForms forms)
{
    /// <summary>Writes the store as it stands at one moment; saving goes on meanwhile.</summary>
    /// <exception cref="StoreException">The store could not be read to its end.</exception>
    public async Task<WrittenBackup> WriteAsync(Stream stream, CancellationToken stop)
    {
        ArgumentNullException.ThrowIfNull(stream);
        try
        {
            await using var transaction = await db.BeginSnapshotAsync(stop);
            var source = await BackupSource.OfAsync(db, transaction, forms, stop);
            var writer = new BackupWriter(stream);
            var written = new BackupCounts(0, 0);
            await writer.WriteAsync(new BackupLine { Start = new(BackupStart.PresentForm, clock.GetUtcNow()) }, stop);
            await foreach (var line in source.LinesAsync(stop).WithCancellation(stop))
            {
                await writer.WriteAsync(line, stop);
                written = written.With(line);
            }
            await writer.WriteAsync(new BackupLine { End = written }, stop);
            return new WrittenBackup(written, source.Damaged);
        }
        catch (Exception e) when (StoreFaults.Find(e) is { } fault)
        {
            throw new StoreException(fault, e);
        }
    }

    /// <summary>
    /// Adds the projects and makings of a backup. One whose id the store has already stays as it is there.
    /// Either the whole backup is restored or, if it throws, nothing.
    /// </summary>
    /// <exception cref="BadBackupException">The file is no backup, or was cut short or changed.</exception>
    /// <exception cref="StoreException">The store did not take it.</exception>
    public async Task<RestoredBackup> RestoreAsync(Stream stream, CancellationToken stop)
    {
        ArgumentNullException.ThrowIfNull(stream);
        using var lines = new BackupReader(stream);
        await lines.ReadStartAsync(stop);
        try
        {
            return await RestoreAsync(lines, stop);
        }
        catch (Exception e) when (StoreFaults.Find(e) is { } fault)
        {
            throw new StoreException(fault, e);
        }
    }

    private async Task<RestoredBackup> RestoreAsync(BackupReader lines, CancellationToken stop)
    {
        using var turn = await db.TakeTurnAsync(stop);
        await using var transaction = await db.Database.BeginTransactionAsync(stop);
        var known = await KnownIds.OfAsync(db, stop);
        var order = new BackupOrder(forms);
        var leftAlone = new List<string>();
        var (read, restored) = (new BackupCounts(0, 0), new BackupCounts(0, 0));
        // Of the project that is being restored; null while one is left alone.
        string? project = null;
        while (await lines.ReadAsync(stop) is { } line)
        {
            if (line.End is { } end)
            {
                if (end != read)
                    throw new BadBackupException($"Line {lines.Number} counts other lines than there are above it: the file was changed.");
                if (await lines.ReadAsync(stop) is not null)
                    throw new BadBackupException($"Line {lines.Number} comes after the end of the backup: the file was changed.");
                await transaction.CommitAsync(stop);
                return new RestoredBackup(restored, leftAlone, lines.HasHashes);
            }
            if (order.Fault(line) is { } fault)
                throw new BadBackupException($"Line {lines.Number} {fault}. Nothing was restored.");
            read = read.With(line);
            if (line.Project is { } begun)
                project = known.Projects.Contains(begun.Id) ? null : begun.Id;
            var isKnown = line.Making is { } making ? known.Makings.Contains(making.Id) : project is null;
            if (isKnown)
            {
                if ((line.Project?.Name ?? line.Making?.Title) is { } name)
                    leftAlone.Add(ShownName.Of(name));
                continue;
            }
            if (known.HasElsewhere(line))
            {
                throw new BadBackupException(
                    $"Line {lines.Number} holds what the store has already under another project. Nothing was restored; restore it into an empty store.");
            }
            db.Add(BackupRows.Row(line, project));
            restored = restored.With(line);
            await db.SaveChangesAsync(stop);
            db.ChangeTracker.Clear();
        }
        throw new BadBackupException($"The file ends after line {lines.Number - 1}, and the backup does not: it was cut short. Nothing was restored.");
    }

    /// <summary>What the store has, by which a backup's lines are told from it.</summary>
    private sealed record KnownIds(
        HashSet<string> Projects, HashSet<string> Makings, HashSet<string> Handovers, HashSet<string> Keys, HashSet<string> Logs)
    {
        public static async Task<KnownIds> OfAsync(AppDb db, CancellationToken stop) => new(
            await SetAsync(db.Projects.Select(p => p.Id), stop), await SetAsync(db.Makings.Select(m => m.Id), stop),
            await SetAsync(db.Handovers.Select(h => h.Id), stop), await SetAsync(db.Handovers.Select(h => h.KeyHash), stop),
            await SetAsync(db.Logs.Select(l => l.Id), stop));

        public bool HasElsewhere(BackupLine line) =>
            (line.Handover is { } handover && (Handovers.Contains(handover.Id) || Keys.Contains(handover.KeyHash)))
            || (line.Log is { } log && Logs.Contains(log.Id));

        private static async Task<HashSet<string>> SetAsync(IQueryable<string> ids, CancellationToken stop) =>
            [.. await ids.ToListAsync(stop)];
    }
}
