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
    /// <summary>Version of the document's form that this program writes.</summary>
    public const int Version = 1;

    /// <summary>Of <see cref="Log"/>.</summary>
    public const int MostEntries = 20_000;

    /// <summary>Repeats in <see cref="Counted"/>.</summary>
    public const int MostCounted = 20;

    /// <summary>Without photos, which are not needed while making.</summary>
    public static MakingDocument Begin(Project project, string size)
    {
        ArgumentNullException.ThrowIfNull(project);
        ArgumentException.ThrowIfNullOrEmpty(size);
        return new MakingDocument(project with { Photos = [] }, size, [], []);
    }
}
