using System.Runtime.CompilerServices;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using Dyepath.Storage.Database;
using Microsoft.EntityFrameworkCore;

namespace Dyepath.Storage.Backup;

/// <summary>How much of each was written or restored.</summary>
/// <param name="LeftAlone">Names of projects and makings that the store had already under the same id, and keeps as they are.</param>
public sealed record BackupTally(int Projects, int Versions, int Handovers, int Logs, int Makings, IReadOnlyList<string> LeftAlone)
{
    internal static BackupTally Of(BackupEnd counts, IReadOnlyList<string> leftAlone) =>
        new(counts.Projects, counts.Versions, counts.Handovers, counts.Logs, counts.Makings, leftAlone);
}

/// <summary>What may be stored.</summary>
/// <param name="IsId">Whether a text may be an id.</param>
/// <param name="IsProject">Whether a text may be a project's document.</param>
/// <param name="IsMaking">Whether a text may be a making.</param>
public sealed record BackupRules(Func<string, bool> IsId, Func<byte[], bool> IsProject, Func<byte[], bool> IsMaking);

/// <summary>The file is no whole backup.</summary>
public sealed class BadBackupException(string message, Exception? inner = null) : Exception(message, inner);

/// <summary>The whole store as lines of JSON, the same from both databases.</summary>
public sealed class BackupStore(AppDb db, TimeProvider clock)
{
    /// <summary>Leaves letters of every language readable.</summary>
    private static readonly BackupJson Readable = new(new JsonSerializerOptions(BackupJson.Default.Options)
    {
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    });

    /// <summary>Writes the store as it stands at one moment; saving goes on meanwhile.</summary>
    public async Task<BackupTally> WriteAsync(Stream stream, CancellationToken stop)
    {
        ArgumentNullException.ThrowIfNull(stream);
        await using var transaction = await db.BeginSnapshotAsync(stop);
        var written = new BackupEnd(0, 0);
        await WriteLineAsync(stream, new BackupLine { Start = new(BackupStart.PresentForm, clock.GetUtcNow()) }, stop);
        await foreach (var line in LinesAsync(stop).WithCancellation(stop))
        {
            await WriteLineAsync(stream, line, stop);
            written = written.With(line);
        }
        await WriteLineAsync(stream, new BackupLine { End = written }, stop);
        return BackupTally.Of(written, []);
    }

    /// <summary>
    /// Adds the projects and makings of a backup. One whose id the store has already stays as it is there.
    /// Either the whole backup is restored or, if it throws, nothing.
    /// </summary>
    /// <exception cref="BadBackupException">The file is no backup, or was cut short; nothing was restored.</exception>
    public async Task<BackupTally> RestoreAsync(Stream stream, BackupRules rules, CancellationToken stop)
    {
        ArgumentNullException.ThrowIfNull(stream);
        ArgumentNullException.ThrowIfNull(rules);
        using var lines = new StreamReader(stream, Encoding.UTF8, leaveOpen: true);
        if (await ReadLineAsync(lines, 1, stop) is not { Start.Form: BackupStart.FirstForm or BackupStart.PresentForm })
            throw new BadBackupException("The first line is not that of a backup which this version of Dyepath can read.");
        await using var transaction = await db.Database.BeginTransactionAsync(stop);
        var knownProjects = (await db.Projects.Select(p => p.Id).ToListAsync(stop)).ToHashSet();
        var knownMakings = (await db.Makings.Select(m => m.Id).ToListAsync(stop)).ToHashSet();
        var rows = new BackupRows(rules);
        var leftAlone = new List<string>();
        var (read, restored) = (new BackupEnd(0, 0), new BackupEnd(0, 0));
        string? project = null;
        for (var number = 2; ; number++)
        {
            var line = await ReadLineAsync(lines, number, stop);
            if (line is { End: { } end } && end == read)
            {
                await transaction.CommitAsync(stop);
                return BackupTally.Of(restored, leftAlone);
            }
            bool isNew;
            switch (line)
            {
                case { Project: { } row }:
                    isNew = knownProjects.Add(row.Id);
                    project = isNew ? row.Id : null;
                    if (!isNew)
                        leftAlone.Add(row.Name);
                    break;
                case { Making: { } row }:
                    isNew = knownMakings.Add(row.Id);
                    if (!isNew)
                        leftAlone.Add(row.Title);
                    break;
                case { Version: not null } or { Handover: not null } or { Log: not null }:
                    isNew = project is not null;
                    break;
                default:
                    throw new BadBackupException($"Line {number} is not what belongs there: the file was cut short or changed.");
            }
            read = read.With(line);
            if (!isNew)
                continue;
            db.Add(rows.Row(line, project) ?? throw new BadBackupException($"Line {number} holds nothing that could be stored."));
            restored = restored.With(line);
            await db.SaveChangesAsync(stop);
            db.ChangeTracker.Clear();
        }
    }

    private async IAsyncEnumerable<BackupLine> LinesAsync([EnumeratorCancellation] CancellationToken stop)
    {
        foreach (var id in await db.Projects.OrderBy(p => p.CreatedAt).ThenBy(p => p.Id).Select(p => p.Id).ToListAsync(stop))
        {
            yield return BackupRows.Line(await db.Projects.AsNoTracking().SingleAsync(p => p.Id == id, stop));
            await foreach (var version in EachAsync(db.Versions.Where(v => v.ProjectId == id).OrderBy(v => v.Number), stop))
                yield return BackupRows.Line(version);
            await foreach (var handover in EachAsync(db.Handovers.Where(h => h.ProjectId == id).OrderBy(h => h.Id), stop))
                yield return BackupRows.Line(handover);
            await foreach (var log in EachAsync(db.Logs.Where(l => l.ProjectId == id).OrderBy(l => l.Id), stop))
                yield return BackupRows.Line(log);
        }
        await foreach (var making in EachAsync(db.Makings.OrderBy(m => m.Id), stop))
            yield return BackupRows.Line(making);
    }

    /// <summary>One row in memory at a time.</summary>
    private static ConfiguredCancelableAsyncEnumerable<TRow> EachAsync<TRow>(IQueryable<TRow> rows, CancellationToken stop)
        where TRow : class => rows.AsNoTracking().AsAsyncEnumerable().WithCancellation(stop);

    private static async Task WriteLineAsync(Stream stream, BackupLine line, CancellationToken stop)
    {
        await JsonSerializer.SerializeAsync(stream, line, Readable.BackupLine, stop);
        stream.WriteByte((byte)'\n');
    }

    private static async Task<BackupLine?> ReadLineAsync(StreamReader lines, int number, CancellationToken stop)
    {
        try
        {
            return await lines.ReadLineAsync(stop) is { } line
                ? JsonSerializer.Deserialize(line, BackupJson.Default.BackupLine)
                : null;
        }
        catch (JsonException e)
        {
            throw new BadBackupException($"Line {number} is not JSON of the form of a backup.", e);
        }
    }
}
