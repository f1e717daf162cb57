using System.Collections.Immutable;
using Dyepath.Core.Booklets;

namespace Dyepath.Core.Reading;

/// <summary>What a piece's instructions say for one size when they are followed word by word.</summary>
/// <param name="Name">As the pattern heads it.</param>
/// <param name="Size">Name of the size that they were followed for.</param>
/// <param name="Chains">Chains of the foundation.</param>
/// <param name="RowStitches">Stitches of the first rows, one for each row that is written out.</param>
/// <param name="Rows">The last row that is worked.</param>
/// <param name="Marks">Rows or stitches to mark, in order.</param>
/// <param name="BandRows">Rows of a side band; 0 where none is said.</param>
public sealed record ReadPiece(
    string Name, string Size, int Chains, ImmutableArray<int> RowStitches, int Rows, ImmutableArray<int> Marks, int BandRows)
{
    /// <summary>Where a marker goes: at two edges a mark has two.</summary>
    public int MarkedPlaces { get; init; }

    /// <summary>Where it begins in the colours; null where nothing is said.</summary>
    public ReadBeginning? Beginning { get; init; }

    /// <summary>Stitches picked up for a side band, and below its mark; 0 where none are said.</summary>
    public int BandStitches { get; init; }

    /// <summary>Stitches of the side band below its mark; 0 where none are said.</summary>
    public int BandMark { get; init; }

    /// <summary>Which edge is the cuff; null where nothing is said.</summary>
    public string? Cuff { get; init; }

    /// <summary>Chains that begin the rows after the first, one for each row that says so.</summary>
    public ImmutableArray<int> TurningChains { get; init; } = [];

    /// <summary>Every row that is told, in the order of work.</summary>
    public ImmutableArray<ReadRow> Shaped { get; init; } = [];

    /// <summary>Where parts are joined on, in the order of work.</summary>
    public ImmutableArray<ReadJoin> Joined { get; init; } = [];

    /// <summary>What is said of a triangle before its rows; missing for everything else.</summary>
    public ReadTriangle? Triangle { get; init; }

    /// <summary>No row stops short, goes on or is joined on.</summary>
    public bool IsRectangle => Joined.IsEmpty && Shaped.All(r => r is { Left: 0, Chains: 0 });
}

/// <summary>A row of a shaped piece.</summary>
/// <param name="Part">How many parts were begun before its own.</param>
/// <param name="Row">From 1.</param>
/// <param name="Stitches">That it comes to.</param>
/// <param name="Left">Stitches of the row below that it leaves at its end.</param>
/// <param name="Chains">Chains that it goes on over at its end.</param>
public sealed record ReadRow(int Part, int Row, int Stitches, int Left, int Chains)
{
    /// <summary>Stitches beyond the row below, left by shorter rows, that it goes on over.</summary>
    public int Standing { get; init; }

    /// <summary>What it says of the openings that begin or end there; empty where it says nothing.</summary>
    public string Here { get; init; } = "";

    /// <summary>Symbol of the last stitch's colour and its number there; null where nothing is said.</summary>
    public string? Last { get; init; }

    /// <summary>Whether it works stitches together where it ends, or else where it begins; null where it works none so.</summary>
    public bool? TogetherAtEnd { get; init; }

    /// <summary>Told by the words of an earlier row.</summary>
    public bool Repeats { get; init; }
}

/// <param name="Of">The piece and the opening that it fills a corner of, such as <c>front neck</c>.</param>
/// <param name="Meets">The opening whose upright edge its own meets, such as <c>neck</c>.</param>
/// <param name="Wearers">The wearer's side.</param>
/// <param name="Slope">Where odd-numbered rows <c>end</c> or <c>begin</c>.</param>
/// <param name="Width">As printed.</param>
/// <param name="Height">As printed.</param>
public sealed record ReadTriangle(string Of, string Meets, string Wearers, string Slope, string Width, string Height);

/// <summary>A part that is joined on.</summary>
/// <param name="Part">How many parts were begun before it.</param>
/// <param name="On">The row that it stands on, from 1.</param>
/// <param name="RightSide">Which side of the work faces.</param>
/// <param name="Over">Stitches left before it.</param>
/// <param name="Beside">What they are counted from: a side that is worked already, or the edge where this is null.</param>
/// <param name="First">Symbol of the colour and number of the stitch.</param>
public sealed record ReadJoin(int Part, int On, bool RightSide, int Over, string? Beside, string First)
{
    /// <summary>The opening whose lower edge the stitches between are; empty where none is named.</summary>
    public string Here { get; init; } = "";
}

/// <summary>Where a piece begins in the colour sequence.</summary>
/// <param name="Chart">Number of the chart that it is on; 0 where none is said.</param>
/// <param name="ChartRow">The chart's row with which it begins; 0 where none is said.</param>
/// <param name="FirstStitch">Symbol of the colour and number of the stitch, such as <c>D1</c>.</param>
/// <param name="EasyColour">Symbol of the colour at whose beginning the knot lies; empty where the foundation is not pooled.</param>
/// <param name="ExtraChains">Chains beyond those that carry stitches; 0 where none are said.</param>
/// <param name="Knot">The length after which the knot lies, as printed.</param>
/// <param name="KnotColour">Symbol of the colour from whose beginning the knot's length is counted.</param>
public sealed record ReadBeginning(
    int Chart, int ChartRow, string FirstStitch, string EasyColour, int ExtraChains, string Knot, string KnotColour);

/// <summary>What an edging's words say for one size.</summary>
/// <param name="Place">As the pattern heads it.</param>
/// <param name="Copies">How often it is worked.</param>
/// <param name="Size">Name of the size that the words were followed for.</param>
/// <param name="PickUp">Stitches that are said to be picked up.</param>
/// <param name="Rounds">That are said to be worked.</param>
/// <param name="Followed">Stitches picked up by who follows the rule.</param>
/// <param name="Total">The rule's own total.</param>
public sealed record ReadEdging(string Place, int Copies, string Size, int PickUp, int Rounds, int Followed, int Total)
{
    /// <summary>As a maker of this size reads it.</summary>
    public required string Rule { get; init; }

    /// <summary>Corners that each round widens at, and those that it narrows at.</summary>
    public (int Outer, int Inner) Corners { get; init; }

    /// <summary>The rule of the other one of a pair; missing where none is said.</summary>
    public string? OtherRule { get; init; }

    /// <summary>Stitches said of the last round; missing where nothing is said.</summary>
    public int? LastCount { get; init; }

    /// <summary>Lengths as printed, such as <c>62 cm / 24½ in</c>; missing where nothing is said of them.</summary>
    public string? Edge { get; init; }

    /// <inheritdoc cref="Edge"/>
    public string? AtRest { get; init; }

    /// <inheritdoc cref="Edge"/>
    public string? Stretched { get; init; }

    /// <inheritdoc cref="Edge"/>
    public string? Elastic { get; init; }

    /// <summary>Missing where nothing is said of buttonholes.</summary>
    public ReadButtonholes? Buttonholes { get; init; }
}

/// <summary>A band's buttonholes as its sentences say, and the stitches of their row as one who works it counts them.</summary>
/// <param name="Holes">As said of the band.</param>
/// <param name="Row">The band's row with the holes, from 1, as said of the band.</param>
/// <param name="Worked">As the words of the row make them.</param>
/// <param name="WorkedRow">The same as said where the row is worked.</param>
/// <param name="Stitches">That the row uses.</param>
public sealed record ReadButtonholes(int Holes, int Row, int Worked, int WorkedRow, int Stitches);

/// <summary>What a booklet's text says, and where it contradicts itself.</summary>
/// <param name="Sizes">Names, in the booklet's order.</param>
/// <param name="Pieces">Every piece in every size.</param>
/// <param name="Edgings">Every edging in every size.</param>
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
