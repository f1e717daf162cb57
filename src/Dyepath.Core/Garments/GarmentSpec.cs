using System.Collections.Immutable;
using Dyepath.Core.Edgings;
using Dyepath.Core.Fabrics;
using Dyepath.Core.Limits;
using Dyepath.Core.Motifs;
using Dyepath.Core.Planning;
using Dyepath.Core.Quantities;

namespace Dyepath.Core.Garments;

/// <summary>Which way a garment is worked; chosen for the garment, never for one size.</summary>
public enum Direction
{
    /// <summary>The circumference runs along the stitches, the length along the rows.</summary>
    Up,

    /// <summary>The length runs along the stitches, the circumference along the rows.</summary>
    Sideways,
}

/// <summary>What is to be made. Every length is finished, as worn.</summary>
/// <param name="Working">Panels and wraps are turned; a cowl may be worked in rounds.</param>
/// <param name="Direction">Missing: the one that fits the sizes better.</param>
/// <param name="Motif">What the colours should draw.</param>
public sealed record GarmentSpec(
    GarmentShape Shape,
    Working Working,
    Direction? Direction,
    MotifKind Motif,
    GradingChoice Grading,
    SeamChoice Seams,
    ImmutableArray<EdgingChoice> Edgings)
{
    /// <summary>
    /// Where in the sequence pieces begin, by the piece's name, in whole pooling units; a missing one begins where it serves best.
    /// </summary>
    public ImmutableSortedDictionary<string, int> Starts { get; init; } = ImmutableSortedDictionary<string, int>.Empty;

    /// <summary>Where the designer begins a piece, in whole pooling units; null where it begins as serves best.</summary>
    public int? StartOf(PieceId piece) => Starts.TryGetValue(PlaceNames.Of(piece), out var start) ? start : null;
}

/// <summary>The outline of a garment and the lengths that the body does not give.</summary>
public abstract record GarmentShape;

/// <summary>A boxy pullover or tunic: two rectangular panels, a slit neck, and perhaps rectangular sleeves.</summary>
/// <param name="BelowWaist">Body length is the chart's back waist length plus this.</param>
/// <param name="HipBelowWaist">A body that hangs at least this far below the waist reaches the hip, and hip plus ease counts too.</param>
/// <param name="NeckWidth">Slit neck of the base size, after its edging.</param>
/// <param name="NeckStep">Added to the neck width per size above the base, taken off below it.</param>
/// <param name="UpperArmEase">Armhole depth is the larger of the chart's and half of upper arm plus this.</param>
/// <param name="Sleeves">Missing: none, the armholes are edged.</param>
/// <param name="IsTunic">What the pattern calls it: a tunic, or else a pullover.</param>
public sealed record BoxyTop(
    Ease BustEase,
    Length HipEase,
    Length BelowWaist,
    Length HipBelowWaist,
    Length NeckWidth,
    Length NeckStep,
    Length UpperArmEase,
    SleeveSpec? Sleeves,
    bool IsTunic = false) : GarmentShape;

/// <summary>Rectangular sleeves, sewn or picked up along the armhole.</summary>
/// <param name="Pooled">Worked in the variegated yarn, or else in the companion yarn.</param>
/// <param name="ShorterBy">
/// Taken off the full length: chart's centre back neck to cuff, less half the panel's width (so that a wider dropped shoulder shortens it).
/// </param>
public sealed record SleeveSpec(bool Pooled, Length ShorterBy);

/// <summary>A tube: circumference and height.</summary>
public sealed record Cowl(Length Circumference, Length Height) : GarmentShape;

/// <summary>A wrap, scarf or blanket: one rectangle.</summary>
/// <param name="IsBlanket">What the pattern calls it: a blanket, or else a wrap.</param>
public sealed record Wrap(Length Width, Length Length, bool IsBlanket = false) : GarmentShape;

/// <summary>Ease added to the body's girth: the middle of a published category, or a length of the designer's own.</summary>
/// <param name="Category">Such as <c>classic</c>; needs <paramref name="Revision"/>, since two revisions differ.</param>
/// <param name="Own">Used when no category is named.</param>
public sealed record Ease(string? Category, string? Revision, Length? Own);

/// <summary>How far the fit may be traded for few counts, and which means the designer allows.</summary>
/// <param name="MostCounts">At most this many distinct stitch counts over all sizes; missing, where the curve bends.</param>
/// <param name="ForgivenessWeight">Square centimetres added for a count that forgives nothing, falling with what it forgives; 0 ignores
/// it.</param>
/// <param name="ClarityWeight">Square centimetres added for a count whose motif cannot be seen, falling with its relative clarity; 0
/// ignores it.</param>
public sealed record GradingChoice(
    int? MostCounts,
    bool AlternatingRows,
    bool HalfStitchTurn,
    bool SideBands,
    bool UnequalPanels,
    double ForgivenessWeight,
    double ClarityWeight)
{
    /// <summary>Of either weight.</summary>
    public static Bounds Weights { get; } = new(0, 1_000, "cm²");
}

/// <summary>How the motif goes on across a seam.</summary>
public enum SeamExtension
{
    /// <summary>As if the fabric had never been cut.</summary>
    Continued,

    /// <summary>As in a mirror that stands on the seam.</summary>
    Mirrored,
}

/// <param name="HiddenStitches">Stitches that a seam along row ends takes from each edge.</param>
/// <param name="HiddenRows">Rows that a seam along stitches takes from each edge.</param>
public sealed record SeamChoice(SeamExtension Extension, int HiddenStitches, int HiddenRows)
{
    /// <summary>Of stitches and of rows.</summary>
    public static CountBounds Hidden { get; } = new(0, 10, "stitches or rows");
}

/// <param name="Edging">The edging's id.</param>
/// <param name="Rounds">Missing: as many as the edging has.</param>
public sealed record EdgingChoice(EdgingPlace Where, string Edging, int? Rounds);
