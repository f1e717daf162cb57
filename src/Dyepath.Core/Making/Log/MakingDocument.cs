using System.Collections.Immutable;
using Dyepath.Core.Projects;

namespace Dyepath.Core.Making.Log;

/// <summary>
/// A piece being made in one size: the design as it was when it was begun, and everything that was done since. Later changes of the
/// design do not touch it.
/// </summary>
/// <param name="Project">The design as it was when the piece was begun.</param>
/// <param name="Size">Name of one of its sizes.</param>
/// <param name="Counted">
/// Stitches of each section that the maker counted in her own yarn, repeat after repeat; empty where she did not.
/// </param>
/// <param name="Log">Grows at its end only.</param>
public sealed record MakingDocument(
    Project Project, string Size, ImmutableArray<ImmutableArray<int>> Counted, ImmutableArray<Entry> Log)
{
    /// <summary>The first version of the document's form: its log does not hold what was said.</summary>
    public const int First = 1;

    /// <summary>The latest version that this program reads.</summary>
    public const int Latest = 2;

    /// <summary>Of <see cref="Log"/>.</summary>
    public const int MostEntries = 20_000;

    /// <summary>Repeats in <see cref="Counted"/>.</summary>
    public const int MostCounted = 20;

    /// <summary>
    /// The version that it is written in: the first that has a form for all of it, so that a design without a log stays as it was.
    /// </summary>
    public int Version => Log.IsEmpty ? First : Log.Max(VersionOf);

    /// <summary>The first version that has a form for an entry.</summary>
    public static int VersionOf(Entry entry)
    {
        ArgumentNullException.ThrowIfNull(entry);
        return entry.Said is null && entry.Kind is not (EntryKind.Ball or EntryKind.Knot or EntryKind.Stop) ? First : Latest;
    }

    /// <summary>Without photos, which are not needed while making.</summary>
    public static MakingDocument Begin(Project project, string size)
    {
        ArgumentNullException.ThrowIfNull(project);
        ArgumentException.ThrowIfNullOrEmpty(size);
        return new MakingDocument(project with { Photos = [] }, size, [], []);
    }
}
