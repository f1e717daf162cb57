using Dyepath.Contracts;
using Dyepath.Storage.Database;
using Microsoft.EntityFrameworkCore;

namespace Dyepath.Storage.Versions;

/// <summary>The earlier texts of projects.</summary>
public sealed class VersionStore(AppDb db)
{
    /// <summary>Newest first; null where there is no such project.</summary>
    public async Task<IReadOnlyList<VersionSummary>?> ListAsync(string projectId, CancellationToken stop)
    {
        var versions = await db.Versions.Where(v => v.ProjectId == projectId).OrderByDescending(v => v.Number)
            .Select(v => new VersionSummary(v.Number, v.SavedAt, v.Bytes)).ToListAsync(stop);
        return versions.Count > 0 || await db.Projects.AnyAsync(p => p.Id == projectId, stop) ? versions : null;
    }

    public Task<byte[]?> ReadAsync(string projectId, int number, CancellationToken stop) =>
        db.Versions.Where(v => v.ProjectId == projectId && v.Number == number).Select(v => v.Document).SingleOrDefaultAsync(stop);
}
