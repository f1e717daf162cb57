using Dyepath.Storage.Database;
using Dyepath.Storage.Projects;
using Microsoft.EntityFrameworkCore;

namespace Dyepath.Storage.Watch;

/// <summary>Looks whether the store can be worked with.</summary>
public sealed class StoreInspector(AppDb db, ProjectStore projects, StoreWatch watch)
{
    /// <summary>Texts that one look reads: each look reads the next ones, so that looking costs the same however much is stored.</summary>
    private const int TextsOfOneLook = 10;

    /// <summary>Words where a newer program has changed the tables since; null where the tables are this program's.</summary>
    public Task<string?> FindNewerAsync(CancellationToken stop) => db.AgainAsync(_ => db.NewerFormAsync(stop), stop);

    /// <summary>Reads the next projects' texts; what is damaged is in <see cref="StoreWatch.Damaged"/> after.</summary>
    public async Task LookAsync(CancellationToken stop)
    {
        var from = watch.LookedUpTo;
        var next = await db.AgainAsync(
            _ => db.Projects.Where(p => string.Compare(p.Id, from) > 0).OrderBy(p => p.Id).Select(p => p.Id)
                .Take(TextsOfOneLook).ToListAsync(stop),
            stop);
        watch.LookedUpTo = next.Count < TextsOfOneLook ? "" : next[^1];
        foreach (var id in next)
            await projects.ReadAsync(id, stop);
        // One that was deleted since is no trouble any more. The ones of this look were read just now.
        foreach (var damaged in watch.Damaged.ExceptBy(next, damaged => damaged.Id))
        {
            if (await projects.ReadAsync(damaged.Id, stop) is TextReading.Missing)
                watch.Saw(damaged.Id, damaged.Name, isSound: true);
        }
    }
}
