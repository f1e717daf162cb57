using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using Dyepath.Storage.Database;
using Dyepath.Storage.Projects;
using Dyepath.Storage.Versions;
using Microsoft.EntityFrameworkCore;

namespace Dyepath.Storage.Backup;

/// <param name="Projects">How many projects were written or restored.</param>
/// <param name="LeftAlone">Names of projects that the store had already under the same id, and keeps as they are.</param>
public sealed record BackupTally(int Projects, int Versions, IReadOnlyList<string> LeftAlone);

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
        var (projects, versions) = (0, 0);
        await WriteLineAsync(stream, new BackupLine { Start = new(BackupStart.PresentForm, clock.GetUtcNow()) }, stop);
        foreach (var id in await db.Projects.OrderBy(p => p.CreatedAt).ThenBy(p => p.Id).Select(p => p.Id).ToListAsync(stop))
        {
            var row = await db.Projects.AsNoTracking().SingleAsync(p => p.Id == id, stop);
            projects++;
            await WriteLineAsync(stream, new BackupLine { Project = Line(row) }, stop);
            var earlier = db.Versions.AsNoTracking().Where(v => v.ProjectId == id).OrderBy(v => v.Number).AsAsyncEnumerable();
            await foreach (var version in earlier.WithCancellation(stop))
            {
                versions++;
                await WriteLineAsync(stream, new BackupLine { Version = Line(version) }, stop);
            }
        }
        await WriteLineAsync(stream, new BackupLine { End = new(projects, versions) }, stop);
        return new BackupTally(projects, versions, []);
    }

    /// <summary>
    /// Adds the projects of a backup. One whose id the store has already stays as it is there.
    /// Either the whole backup is restored or, if it throws, nothing.
    /// </summary>
    /// <param name="isProject">Whether an id and a text may be stored as a project.</param>
    /// <exception cref="BadBackupException">The file is no backup, or was cut short; nothing was restored.</exception>
    public async Task<BackupTally> RestoreAsync(Stream stream, Func<string, byte[], bool> isProject, CancellationToken stop)
    {
        ArgumentNullException.ThrowIfNull(stream);
        using var lines = new StreamReader(stream, Encoding.UTF8, leaveOpen: true);
        if (await ReadLineAsync(lines, 1, stop) is not { Start.Form: BackupStart.PresentForm })
            throw new BadBackupException("The first line is not that of a backup which this version of Dyepath can read.");
        await using var transaction = await db.Database.BeginTransactionAsync(stop);
        var known = (await db.Projects.Select(p => p.Id).ToListAsync(stop)).ToHashSet();
        var leftAlone = new List<string>();
        var (projects, versions, read) = (0, 0, new BackupEnd(0, 0));
        string? current = null;
        for (var number = 2; ; number++)
        {
            switch (await ReadLineAsync(lines, number, stop))
            {
                case { Project: { } project }:
                    read = read with { Projects = read.Projects + 1 };
                    current = known.Add(project.Id) ? project.Id : null;
                    if (current is null)
                    {
                        leftAlone.Add(project.Name);
                        continue;
                    }
                    projects++;
                    db.Projects.Add(Row(project, isProject) ?? throw Unfit(number));
                    break;
                case { Version: { } version }:
                    read = read with { Versions = read.Versions + 1 };
                    if (current is null)
                        continue;
                    versions++;
                    db.Versions.Add(Row(current, version, isProject) ?? throw Unfit(number));
                    break;
                case { End: { } end } when end == read:
                    await transaction.CommitAsync(stop);
                    return new BackupTally(projects, versions, leftAlone);
                default:
                    throw new BadBackupException($"Line {number} is not what belongs there: the file was cut short or changed.");
            }
            await db.SaveChangesAsync(stop);
            db.ChangeTracker.Clear();
        }
    }

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

    private static BackupProject Line(ProjectRow row) => new(
        row.Id, row.Name, row.Archived, row.CreatedAt, row.UpdatedAt, row.LastVersion, Encoding.UTF8.GetString(row.Document),
        StoredSwatch.Read(row.Swatch));

    private static BackupVersion Line(VersionRow row) => new(row.Number, row.SavedAt, row.Kept, Encoding.UTF8.GetString(row.Document));

    private static BadBackupException Unfit(int number) => new($"Line {number} holds no project that could be stored.");

    private static ProjectRow? Row(BackupProject line, Func<string, byte[], bool> isProject)
    {
        var document = Encoding.UTF8.GetBytes(line.Document);
        return !isProject(line.Id, document) ? null : new ProjectRow
        {
            Id = line.Id,
            Name = line.Name,
            Archived = line.Archived,
            CreatedAt = line.CreatedAt.ToUniversalTime(),
            UpdatedAt = line.UpdatedAt.ToUniversalTime(),
            Etag = Draft.EtagOf(document),
            LastVersion = line.LastVersion,
            Swatch = StoredSwatch.Write(line.Swatch),
            Document = document,
        };
    }

    private static VersionRow? Row(string project, BackupVersion line, Func<string, byte[], bool> isProject)
    {
        var document = Encoding.UTF8.GetBytes(line.Document);
        return !isProject(project, document) ? null : new VersionRow
        {
            ProjectId = project,
            Number = line.Number,
            SavedAt = line.SavedAt.ToUniversalTime(),
            Kept = line.Kept,
            Bytes = document.Length,
            Document = document,
        };
    }
}
