namespace Dyepath.Core.Shaping;

/// <summary>A part as it is asked for: an outline, where it stands in the piece, and how its yarn begins.</summary>
/// <param name="FirstRow">Of the piece; of the first part 0.</param>
/// <param name="Outline">Its rows are counted from the part's first; columns are the piece's.</param>
public sealed record PartOutline(int FirstRow, Outline Outline)
{
    /// <summary>Index of the part that it is worked on, whose rows end where it begins; none for the first part.</summary>
    public int? Below { get; init; }

    /// <summary>The yarn of the part before, which is the part below, is not cut.</summary>
    public bool Continues { get; init; }

    /// <summary>The edge from which the first row is worked; where nothing is said, the one that keeps the panel's order of rows.</summary>
    public RowEdge? From { get; init; }

    /// <summary>Where along the sequence the first stitch lies, in units; where nothing is said, its own place in the panel.</summary>
    public double? Start { get; init; }
}
