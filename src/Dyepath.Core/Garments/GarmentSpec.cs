using System.Collections.Immutable;
using Dyepath.Core.Edgings;
using Dyepath.Core.Fabrics;
using Dyepath.Core.Findings;
using Dyepath.Core.Limits;
using Dyepath.Core.Motifs;
using Dyepath.Core.Quantities;
using Dyepath.Core.Sizing;

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
/// <param name="Shape">Which garment, with its own fields.</param>
/// <param name="Working">Panels and wraps are turned; a cowl may be worked in rounds.</param>
/// <param name="Direction">Missing: the one that fits the sizes better.</param>
/// <param name="Motif">What the colours should draw.</param>
/// <param name="Grading">What may be traded so that few counts serve all sizes.</param>
/// <param name="Seams">What seams hide, and how colours are to meet there.</param>
/// <param name="Edgings">At most one for each place of the garment.</param>
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

/// <summary>Ease added to the body's girth: the middle of a published category, or a length of the designer's own.</summary>
/// <param name="Category">Such as <c>classic</c>; needs <paramref name="Revision"/>, since two revisions differ.</param>
/// <param name="Revision">Which printing of the published table <paramref name="Category"/> means; missing without one.</param>
/// <param name="Own">Used when no category is named.</param>
public sealed record Ease(string? Category, string? Revision, Length? Own)
{
    /// <summary>As a length; zero where <see cref="Faults"/> has something to say.</summary>
    public Length Length => Own ?? Published?.Typical ?? Length.Zero;

    private EaseRange? Published => Category is null ? null : PublishedEase.All.FirstOrDefault(range =>
        range.Revision.ToString().Equals(Revision, StringComparison.OrdinalIgnoreCase)
        && (range.Name == Category || range.Name == Category + " fit"));

    /// <summary>An ease that no published table has.</summary>
    /// <param name="place">Where it stands in the document.</param>
    public ImmutableArray<Finding> Faults(string place) => (Own, Category, Published) switch
    {
        (not null, null, _) or (_, not null, not null) => [],
        (_, null, _) => [new Finding(FindingLevel.Fault, place, "Give an ease: a length, or a category with its revision.")],
        _ =>
        [
            new Finding(FindingLevel.Fault, place,
                $"There is no ease {Category} in the {Revision ?? "unnamed"} revision: choose one of {string.Join(", ", PublishedEase.All.Select(r => $"{r.Name} ({r.Revision})"))}."),
        ],
    };
}

/// <summary>How far the fit may be traded for few counts, and which means the designer allows.</summary>
/// <param name="MostCounts">At most this many distinct stitch counts over all sizes; missing, where the curve bends.</param>
/// <param name="AlternatingRows">Rows of N and N + 1 stitches in turn may be used.</param>
/// <param name="HalfStitchTurn">Turns that take half a stitch of yarn may be used.</param>
/// <param name="SideBands">Plain bands along the sides may make up what a count is short of.</param>
/// <param name="UnequalPanels">Front and back may have different counts.</param>
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
    /// <summary>Pieces and sizes may lean by different amounts; otherwise one pattern has one lean, to either side.</summary>
    public bool SeveralLeans { get; init; }

    /// <summary>
    /// Neighbouring sizes may come out equally wide, and a size may come out under the largest body of its range: what no customer
    /// accepts, and what a sample or a test may do.
    /// </summary>
    public bool UnevenWidths { get; init; }

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

/// <param name="Extension">By which seams are judged; missing: each by the one that it comes nearest to.</param>
/// <param name="HiddenStitches">Stitches that a seam along row ends takes from each edge.</param>
/// <param name="HiddenRows">Rows that a seam along stitches takes from each edge.</param>
public sealed record SeamChoice(SeamExtension? Extension, int HiddenStitches, int HiddenRows)
{
    /// <summary>Of stitches and of rows.</summary>
    public static CountBounds Hidden { get; } = new(0, 10, "stitches or rows");
}

/// <param name="Where">The edge that it goes to.</param>
/// <param name="Edging">The edging's id.</param>
/// <param name="Rounds">
/// For every size. Missing: about as many as the edging has, in each size as many as bring its measure nearest to its target where that
/// measure runs along the stitches.
/// </param>
public sealed record EdgingChoice(EdgingPlace Where, string Edging, int? Rounds)
{
    /// <summary>The fewest rounds where <see cref="Rounds"/> is missing; missing too: half of the edging's own.</summary>
    public int? Fewest { get; init; }

    /// <summary>The most; missing: two more than twice the edging's own.</summary>
    public int? Most { get; init; }

    /// <summary>What a size may have, and what it has where its measure asks for nothing else.</summary>
    public (int Fewest, int Wished, int Most) RoundsOf(Edging edging)
    {
        ArgumentNullException.ThrowIfNull(edging);
        if (Rounds is { } all)
            return (all, all, all);
        var fewest = Fewest ?? Math.Min(Most ?? edging.Allowed.Largest, Math.Max(edging.Fewest, edging.Rounds / 2));
        var most = Math.Max(fewest, Most ?? Math.Min(2 * edging.Rounds + 2, edging.Allowed.Largest));
        return (fewest, Math.Clamp(edging.Rounds, fewest, most), most);
    }
}
