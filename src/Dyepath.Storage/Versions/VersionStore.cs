using Dyepath.Contracts;
using Dyepath.Storage.Database;
using Dyepath.Storage.Faults;
using Microsoft.EntityFrameworkCore;

namespace Dyepath.Storage.Versions;

/// <summary>The earlier texts of projects.</summary>
public sealed class VersionStore(AppDb db, StoredForms forms)
{
    /// <summary>Newest first; null where there is no such project.</summary>
    /// <param name="below">Number that the list goes on below.</param>
    public Task<(IReadOnlyList<VersionSummary> Items, int? Next)?> ListAsync(string projectId, int below, CancellationToken stop) =>
        db.AgainAsync<(IReadOnlyList<VersionSummary>, int?)?>(
            async _ =>
            {
                var versions = await db.Versions.Where(v => v.ProjectId == projectId && v.Number < below).OrderByDescending(v => v.Number)
                    .Select(v => new VersionSummary(v.Number, v.SavedAt, v.Bytes, v.Edition))
                    .Take(ApiPaths.MostListed + 1).ToListAsync(stop);
                if (versions.Count > ApiPaths.MostListed)
                    return (versions[..ApiPaths.MostListed], versions[ApiPaths.MostListed - 1].Number);
                return versions.Count > 0 || await db.Projects.AnyAsync(p => p.Id == projectId, stop) ? (versions, null) : null;
            },
            stop);

    /// <summary>Null where there is no such version.</summary>
    /// <exception cref="StoreException">It is damaged.</exception>
    public Task<byte[]?> ReadAsync(string projectId, int number, CancellationToken stop) => db.AgainAsync(
        async _ => forms.Sound(await db.Versions.Where(v => v.ProjectId == projectId && v.Number == number)
            .Select(v => v.Document).SingleOrDefaultAsync(stop)),
        stop);
}
