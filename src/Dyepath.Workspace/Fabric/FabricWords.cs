using System.Collections.Immutable;
using System.Globalization;
using Dyepath.Core.Booklets;
using Dyepath.Core.Fabrics;
using Dyepath.Core.Garments;
using Dyepath.Core.Planning;

namespace Dyepath.Workspace.Fabric;

/// <summary>Seams and stitches in a maker's words.</summary>
public static class FabricWords
{
    /// <summary>How far the colours jump, to the half unit: finer is beyond what an eye sees.</summary>
    /// <param name="stitch">The fabric's.</param>
    public static string Jump(double phaseJump, FabricStitch stitch) =>
        (Math.Round(phaseJump * 2, MidpointRounding.AwayFromZero) / 2) switch
        {
            0 => "the colours run on here",
            1 => $"the colours jump 1 {Unit(stitch)} of yarn here",
            var halves => string.Create(CultureInfo.InvariantCulture, $"the colours jump {halves} {Many(stitch)} of yarn here"),
        };

    /// <summary>How the colours meet at a seam, against what, and how far they jump.</summary>
    /// <param name="stitch">The fabric's.</param>
    public static string Judged(SeamPlan seam, FabricStitch stitch)
    {
        ArgumentNullException.ThrowIfNull(seam);
        var against = seam.Extension == SeamExtension.Mirrored ? "mirrored" : "carried on";
        return $"{(seam.IsClose() ? "close" : seam.Quality.Words())}, {against}: {Jump(seam.PhaseJump, stitch)}";
    }

    /// <summary>What pieces that begin anywhere would give.</summary>
    /// <param name="chance">Mean jump, in units.</param>
    /// <param name="stitch">The fabric's.</param>
    public static string Chance(double chance, FabricStitch stitch) =>
        string.Create(CultureInfo.InvariantCulture, $"By chance the colours would jump {Math.Round(chance * 2, MidpointRounding.AwayFromZero) / 2:0.#} {Many(stitch)} on average");

    /// <summary>How many stitches of a seam are off by less than half a stitch.</summary>
    public static string Match(double match) => match switch
    {
        >= 0.995 => "all stitches lie at their place",
        < 0.005 => "no stitch lies at its place",
        _ => $"{Share(match)} of the stitches lie at their place",
    };

    /// <summary>The count that was chosen for a piece: of a shaped one its widest row, on a bias the mean of two.</summary>
    public static int Count(PiecePlan piece)
    {
        ArgumentNullException.ThrowIfNull(piece);
        return piece.Shape switch
        {
            null => piece.Stitches,
            { Bias: > 0 } biased => (biased.ShortestRow + biased.WidestRow) / 2,
            var shape => shape.WidestRow,
        };
    }

    /// <summary>
    /// Of its rows, such as <c>83</c>, <c>82 and 83</c> where two alternate, <c>59 to 83</c> where it is shaped, or <c>19 to 1</c> of a
    /// triangle.
    /// </summary>
    public static string Stitches(PiecePlan piece)
    {
        ArgumentNullException.ThrowIfNull(piece);
        return piece.Shape is { } shape
            ? FormattableString.Invariant($"{shape.ShortestRow} to {shape.WidestRow}")
            : piece.Taper is { } taper ? FormattableString.Invariant($"{taper.Stitches} to 1") : string.Join(" and ", piece.RowStitches);
    }

    /// <param name="chance">As a plan has it; missing where there is nothing to hold.</param>
    public static string MadeWell(double? chance) => chance switch
    {
        null => "nothing to hold",
        >= 0.995 => "for nearly every maker",
        < 0.005 => "for hardly any maker",
        < 0.015 => "for 1 maker of 100",
        { } share => string.Create(CultureInfo.InvariantCulture, $"for {Math.Round(100 * share)} makers of 100"),
    };

    /// <summary>The counts to offer, and how many makers they serve.</summary>
    /// <param name="count">Stitches of the planned row, as <see cref="Count"/> has them.</param>
    /// <param name="stitch">The fabric's.</param>
    public static string Variants(CountVariants variants, int count, FabricStitch stitch)
    {
        ArgumentNullException.ThrowIfNull(variants);
        var alone = $"{count} alone: {MadeWell(variants.Alone)}";
        if (variants.Variants.Length == 1)
            return variants.ServesMost ? alone : $"{alone}; no other count serves more";
        var counts = variants.Variants.Select(v => Variant(v, count, stitch).ToString(CultureInfo.InvariantCulture)).ToArray();
        return $"{alone}; {string.Join(", ", counts[..^1])} or {counts[^1]}: {MadeWell(variants.Served)}{(variants.ServesMost ? "" : ", and further ones bring hardly more")}";
    }

    /// <summary>Stitches of a count that is offered.</summary>
    public static int Variant(CountVariant variant, int count, FabricStitch stitch)
    {
        ArgumentNullException.ThrowIfNull(stitch);
        return count + variant.Offset * stitch.StitchesPerUnit;
    }

    /// <summary>The repeats for which one of the counts is offered, such as <c>20.3 to 20.9</c>.</summary>
    /// <param name="at">Which of them.</param>
    /// <param name="repeat">The plan's, in pooling units.</param>
    public static string Repeats(CountVariants variants, int at, double repeat)
    {
        ArgumentNullException.ThrowIfNull(variants);
        return at == 0 ? $"under {Repeat(1)}" : at == variants.Variants.Length - 1 ? $"{Repeat(at)} or more" : $"{Repeat(at)} to {Repeat(at + 1)}";

        string Repeat(int from) => (repeat * (1 + variants.Variants[from].From)).ToString("0.0", CultureInfo.InvariantCulture);
    }

    /// <summary>In whole per cent, such as <c>83 %</c>.</summary>
    public static string Share(double share) => string.Create(CultureInfo.InvariantCulture, $"{Math.Round(100 * share)} %");

    /// <summary>What is counted against the yarn: in linen stitch a single crochet and the chain beside it.</summary>
    public static string Unit(FabricStitch stitch) => IsCountedInPairs(stitch) ? "pair" : "stitch";

    /// <summary>The plural of what <see cref="Unit"/> names.</summary>
    public static string Many(FabricStitch stitch) => IsCountedInPairs(stitch) ? "pairs" : "stitches";

    private static bool IsCountedInPairs(FabricStitch stitch)
    {
        ArgumentNullException.ThrowIfNull(stitch);
        return stitch.StitchesPerUnit == 2;
    }

    /// <summary>A seam as the making up names it.</summary>
    public static string Seam(SeamId seam) =>
        seam is SeamId.LeftSleeve or SeamId.RightSleeve ? $"under the {PlaceNames.Of(seam)}" : PlaceNames.Of(seam);

    /// <summary>One stitch, as it is read out.</summary>
    /// <param name="balls">In each copy of the piece; null where it cannot be told.</param>
    public static string Stitch(
        PiecePlan piece, StitchReading read, (string Name, string Symbol) colour, ImmutableArray<int?> balls, bool turned,
        FabricStitch stitch, Units units)
    {
        var side = !turned ? "" : read.RightSide ? " (RS)" : " (WS)";
        var row = turned ? "row" : "round";
        var tones = read.TwoToned ? ", two-toned" : "";
        var change = read.ToChange switch
        {
            null => "",
            0 => read.TwoToned ? " The colour changes within it." : " The colour changes right beside it.",
            < 1.05 and > 0.95 => $" The next change of colour is 1 {Unit(stitch)} of yarn away.",
            var d => string.Create(CultureInfo.InvariantCulture, $" The nearest change of colour is {d:0.#} {Many(stitch)} of yarn away."),
        };
        return $"{Wording.Capital(piece.Name)}, {row} {read.Row}{side}, {Unit(stitch)} {read.Column} from the right: {colour.Name} ({colour.Symbol}){tones}. "
            + $"{Yarn(read.FromStart.Metres, units)} from the piece's first stitch{string.Concat(balls.Select((ball, copy) => ball is null ? "" : $", ball {ball}{Of(copy)}"))}.{change}";

        string Of(int copy) => piece.Copies == 1 ? "" : $" in {piece.Name} {copy + 1}";
    }

    private static string Yarn(double metres, Units units) => Wording.InchesFirst(units)
        ? string.Create(CultureInfo.InvariantCulture, $"{metres / 0.9144:0.0} yd of yarn")
        : string.Create(CultureInfo.InvariantCulture, $"{metres:0.0} m of yarn");
}
