using System.Collections.Immutable;
using Dyepath.Core.Booklets;

namespace Dyepath.Core.Reading;

/// <summary>What a piece's instructions say for one size when they are followed word by word.</summary>
/// <param name="Name">As the pattern heads it.</param>
/// <param name="Chains">Chains of the foundation.</param>
/// <param name="RowStitches">Stitches of the first rows, one for each row that is written out.</param>
/// <param name="Rows">The last row that is worked.</param>
/// <param name="Marks">Rows or stitches to mark, in order.</param>
public sealed record ReadPiece(
    string Name, string Size, int Chains, ImmutableArray<int> RowStitches, int Rows, ImmutableArray<int> Marks, int BandRows, ReadBeginning? Beginning)
{
    /// <summary>Chains that begin the rows after the first, one for each row that says so.</summary>
    public ImmutableArray<int> TurningChains { get; init; } = [];
}

/// <summary>Where a piece begins in the colour sequence.</summary>
/// <param name="FirstStitch">Symbol of the colour and number of the stitch, such as <c>D1</c>.</param>
/// <param name="EasyColour">Symbol of the colour at whose beginning the knot lies; empty where the foundation is not pooled.</param>
/// <param name="Knot">The length after which the knot lies, as printed.</param>
public sealed record ReadBeginning(int Chart, int ChartRow, string FirstStitch, string EasyColour, int ExtraChains, string Knot, string KnotColour);

/// <summary>What an edging's words say for one size.</summary>
/// <param name="Followed">Stitches picked up by who follows the rule.</param>
/// <param name="Total">The rule's own total.</param>
/// <param name="Rule">As a maker of this size reads it.</param>
public sealed record ReadEdging(string Place, int Copies, string Size, int PickUp, int Rounds, int Followed, int Total, string Rule);

/// <summary>What a booklet's text says, and where it contradicts itself.</summary>
/// <param name="Tables">By section title and part heading.</param>
/// <param name="Lines">Every other line of a section and part, unwrapped.</param>
/// <param name="Disagreements">Each names the line and what was counted against what is said.</param>
public sealed record ReadBooklet(
    ImmutableArray<string> Sizes,
    ImmutableArray<ReadPiece> Pieces,
    ImmutableArray<ReadEdging> Edgings,
    ImmutableArray<(string Section, string Part, ReadTable Table)> Tables,
    ImmutableArray<(string Section, string Part, string Line)> Lines,
    ImmutableArray<string> Disagreements);
