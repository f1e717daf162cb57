using System.Runtime.CompilerServices;
using Dyepath.Contracts;
using Dyepath.Storage.Database;
using Dyepath.Storage.Faults;
using Dyepath.Storage.Projects;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Storage;

namespace Dyepath.Storage.Backup;

/// <summary>The kinds of texts that a store holds.</summary>
public enum StoredPart
{
    /// <summary>The text of a project.</summary>
    Project,

    /// <summary>An earlier text of a project.</summary>
    Version,

    /// <summary>A piece as it was handed over.</summary>
    Handover,

    /// <summary>What a maker has sent.</summary>
    Log,

    /// <summary>A piece under way.</summary>
    Making,
}

/// <summary>What could not be backed up as it was stored.</summary>
/// <param name="Part">What kind of text it is.</param>
/// <param name="Name">Of the project or making that it belongs to, as lists show it.</param>
/// <param name="Id">Of the part itself: a version's number.</param>
/// <param name="Instead">The version that stands in the backup for a project's text.</param>
public sealed record DamagedPart(StoredPart Part, string Name, string Id, int? Instead = null);

/// <summary>
/// Everything that is stored, as lines; one row in memory at a time. What is damaged fails for itself alone: it is left out, or a project's
/// text replaced by its newest version that can be read.
/// </summary>
internal sealed class BackupSource
{
    private const string Beginning = "beginning";

    private readonly AppDb _db;
    private readonly IDbContextTransaction _snapshot;
    private readonly StoredForms _forms;
    private readonly List<DamagedPart> _damaged = [];

    private BackupSource(AppDb db, IDbContextTransaction snapshot, StoredForms forms) => (_db, _snapshot, _forms) = (db, snapshot, forms);

    public IReadOnlyList<DamagedPart> Damaged => _damaged;

    public static async Task<BackupSource> OfAsync(AppDb db, IDbContextTransaction snapshot, StoredForms forms, CancellationToken stop)
    {
        // After a row that cannot be read, PostgreSQL reads nothing more in the same transaction unless it goes back to here.
        await snapshot.CreateSavepointAsync(Beginning, stop);
        return new BackupSource(db, snapshot, forms);
    }

    public async IAsyncEnumerable<BackupLine> LinesAsync([EnumeratorCancellation] CancellationToken stop)
    {
        var heads = await _db.Projects.OrderBy(p => p.CreatedAt).ThenBy(p => p.Id).Select(p => new { p.Id, p.Name }).ToListAsync(stop);
        foreach (var head in heads)
        {
            await foreach (var line in ProjectAsync(head.Id, ProjectHead.Show(head.Name), stop))
                yield return line;
        }
        foreach (var head in await _db.Makings.OrderBy(m => m.Id).Select(m => new { m.Id, m.Title }).ToListAsync(stop))
        {
            if (await SoundAsync(_db.Makings.Where(m => m.Id == head.Id), stop) is { } row)
                yield return BackupRows.Line(row);
            else
                _damaged.Add(new DamagedPart(StoredPart.Making, ShownName.Of(head.Title), head.Id));
        }
    }

    private async IAsyncEnumerable<BackupLine> ProjectAsync(string id, string name, [EnumeratorCancellation] CancellationToken stop)
    {
        var versions = await _db.Versions.Where(v => v.ProjectId == id).OrderBy(v => v.Number).Select(v => v.Number).ToListAsync(stop);
        if (await ProjectLineAsync(id, name, versions, stop) is not { } project)
            yield break;
        yield return project;
        foreach (var number in versions)
        {
            if (await SoundAsync(_db.Versions.Where(v => v.ProjectId == id && v.Number == number), stop) is { } row)
                yield return BackupRows.Line(row);
            else
                _damaged.Add(new DamagedPart(StoredPart.Version, name, $"{number}"));
        }
        var handovers = new HashSet<string>();
        foreach (var handover in await _db.Handovers.Where(h => h.ProjectId == id).OrderBy(h => h.Id).Select(h => h.Id).ToListAsync(stop))
        {
            if (await SoundAsync(_db.Handovers.Where(h => h.Id == handover), stop) is { } row && handovers.Add(handover))
                yield return BackupRows.Line(row);
            else
                _damaged.Add(new DamagedPart(StoredPart.Handover, name, handover));
        }
        foreach (var log in await _db.Logs.Where(l => l.ProjectId == id).OrderBy(l => l.Id).Select(l => l.Id).ToListAsync(stop))
        {
            if (await SoundAsync(_db.Logs.Where(l => l.Id == log), stop) is not { } row)
            {
                _damaged.Add(new DamagedPart(StoredPart.Log, name, log));
                continue;
            }
            // As if the handover that is damaged were revoked: its logs stay.
            var line = BackupRows.Line(row);
            yield return row.HandoverId is null || handovers.Contains(row.HandoverId)
                ? line
                : new BackupLine { Log = line.Log! with { HandoverId = null } };
        }
    }

    /// <summary>Null where neither its text nor any version of it can be read.</summary>
    private async Task<BackupLine?> ProjectLineAsync(string id, string name, List<int> versions, CancellationToken stop)
    {
        var project = _db.Projects.Where(p => p.Id == id);
        if (await SoundAsync(project, stop) is { } row)
            return BackupRows.Line(row, row.Document);
        foreach (var number in Enumerable.Reverse(versions))
        {
            if (await SoundAsync(_db.Versions.Where(v => v.ProjectId == id && v.Number == number), stop) is not { } version)
                continue;
            _damaged.Add(new DamagedPart(StoredPart.Project, name, id, number));
            var head = await project.Select(p => new ProjectRow
            {
                Id = p.Id,
                Name = p.Name,
                Archived = p.Archived,
                CreatedAt = p.CreatedAt,
                UpdatedAt = p.UpdatedAt,
                Etag = p.Etag,
                LastVersion = p.LastVersion,
                Swatch = p.Swatch,
                Document = Array.Empty<byte>(),
            }).SingleAsync(stop);
            return BackupRows.Line(head, version.Document);
        }
        _damaged.Add(new DamagedPart(StoredPart.Project, name, id));
        return null;
    }

    /// <summary>Null where the row's text is not the one that was stored, or where it cannot be read.</summary>
    private async Task<TRow?> SoundAsync<TRow>(IQueryable<TRow> rows, CancellationToken stop)
        where TRow : class, ITextRow
    {
        try
        {
            var row = await rows.AsNoTracking().SingleOrDefaultAsync(stop);
            return row is not null && (row.Etag is null || row.Etag == Etags.Of(row.Document)) && _forms.IsDocument(row.Document)
                ? row : null;
        }
        catch (Exception e) when (StoreFaults.Find(e) == StoreFault.Damaged)
        {
            await _snapshot.RollbackToSavepointAsync(Beginning, stop);
            return null;
        }
    }
}
