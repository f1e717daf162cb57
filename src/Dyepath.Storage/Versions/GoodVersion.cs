using Dyepath.Contracts;
using Dyepath.Storage.Database;
using Dyepath.Storage.Faults;
using Microsoft.EntityFrameworkCore;

namespace Dyepath.Storage.Versions;

/// <summary>What a project whose text is damaged can go back to.</summary>
internal static class GoodVersion
{
    /// <summary>The newest version that can be read; null where there is none.</summary>
    public static async Task<VersionSummary?> FindAsync(AppDb db, StoredForms forms, string project, CancellationToken stop)
    {
        var versions = await db.Versions.Where(v => v.ProjectId == project).OrderByDescending(v => v.Number)
            .Select(v => new VersionSummary(v.Number, v.SavedAt, v.Bytes, v.Edition)).ToListAsync(stop);
        foreach (var version in versions)
        {
            try
            {
                var document = await db.Versions.Where(v => v.ProjectId == project && v.Number == version.Number)
                    .Select(v => v.Document).SingleOrDefaultAsync(stop);
                if (document is not null && forms.IsDocument(document))
                    return version;
            }
            catch (Exception e) when (StoreFaults.Find(e) == StoreFault.Damaged)
            {
                // Damaged too: the one before may be whole.
            }
        }
        return null;
    }
}
