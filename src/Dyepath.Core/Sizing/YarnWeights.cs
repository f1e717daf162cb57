using System.Collections.Immutable;
using Dyepath.Core.Quantities;

namespace Dyepath.Core.Sizing;

/// <summary>Two printings of the table differ at super bulky and jumbo; the others are the same in both.</summary>
public enum YarnWeightRevision
{
    /// <summary>Super bulky 6 to 9 stitches with 9 to 16 mm, jumbo up to 5.</summary>
    A,

    /// <summary>Super bulky 7 to 9 stitches with 9 to 15 mm, jumbo up to 6.</summary>
    B,
}

/// <summary>
/// A category of yarn thickness. Stitches are per 4 in (10 cm): single crochet, except lace, which is counted in doubles.
/// </summary>
/// <param name="Category">0 (lace) to 7 (jumbo).</param>
/// <param name="Name">In lower case.</param>
/// <param name="CrochetStitches">Per 4 in (10 cm).</param>
/// <param name="Hook">Recommended diameters.</param>
/// <param name="HookUs">The same as letters and numbers.</param>
/// <param name="KnitStitches">Per 4 in (10 cm), in stockinette.</param>
/// <param name="Needle">Recommended diameters of knitting needles.</param>
public sealed record YarnWeight(
    int Category, string Name, OpenRange<int> CrochetStitches, OpenRange<Length> Hook, string HookUs, OpenRange<int> KnitStitches,
    OpenRange<Length> Needle)
{
    /// <summary>What <see cref="CrochetStitches"/> counts.</summary>
    public string CrochetStitch { get; init; } = "single crochet";

    /// <summary>Missing for jumbo, for which no figure was found.</summary>
    public OpenRange<double>? MetresPer100Grams { get; init; }
}

/// <summary>
/// The Craft Yarn Council's yarn weight system. Neighbouring ranges overlap, so neither a gauge nor a grist decides the
/// category alone; published garments commonly use smaller hooks than the table (category 4 with 5 mm).
/// </summary>
public static class YarnWeights
{
    /// <summary>For all but the metres per 100 g.</summary>
    public static Citation Source { get; } = new(Provenance.Published, "Craft Yarn Council yarn weight system, as pages quote it");

    /// <summary>For the metres per 100 g, converted from yards per pound and rounded to the metre.</summary>
    public static Citation GristSource { get; } = new(
        Provenance.Published, "a spinning magazine's extension of the table; 1 yd/lb = 0.20159 m per 100 g");

    private static readonly ImmutableArray<YarnWeight> Common =
    [
        Row(0, "lace", (32, 42), (1.4, 2.25), "steel 6 7 8 or B-1", (33, 40), (1.5, 2.25)) with
        {
            CrochetStitch = "double crochet",
            MetresPer100Grams = new(484, null),
        },
        Row(1, "super fine", (21, 32), (2.25, 3.5), "B-1 to E-4", (27, 32), (2.25, 3.25)) with { MetresPer100Grams = new(383, 484) },
        Row(2, "fine", (16, 20), (3.5, 4.5), "E-4 to 7", (23, 26), (3.25, 3.75)) with { MetresPer100Grams = new(242, 383) },
        Row(3, "light", (12, 17), (4.5, 5.5), "7 to I-9", (21, 24), (3.75, 4.5)) with { MetresPer100Grams = new(182, 242) },
        Row(4, "medium", (11, 14), (5.5, 6.5), "I-9 to K-10.5", (16, 20), (4.5, 5.5)) with { MetresPer100Grams = new(121, 181) },
        Row(5, "bulky", (8, 11), (6.5, 9), "K-10.5 to M-13", (12, 15), (5.5, 8)) with { MetresPer100Grams = new(81, 121) },
    ];

    private static readonly ImmutableArray<YarnWeight> RevisionA =
    [
        .. Common,
        Row(6, "super bulky", (6, 9), (9, 16), "M-13 to Q", (7, 11), (8, 12.75)) with { MetresPer100Grams = new(null, 81) },
        Row(7, "jumbo", (null, 5), (16, null), "Q+", (null, 6), (12.75, null)),
    ];

    private static readonly ImmutableArray<YarnWeight> RevisionB =
    [
        .. Common,
        Row(6, "super bulky", (7, 9), (9, 15), "M-13 to Q", (7, 11), (8, 12.75)) with { MetresPer100Grams = new(null, 81) },
        Row(7, "jumbo", (null, 6), (15, null), "Q+", (null, 6), (12.75, null)),
    ];

    /// <summary>Categories 0 to 7, in order.</summary>
    public static ImmutableArray<YarnWeight> All(YarnWeightRevision revision) => revision switch
    {
        YarnWeightRevision.A => RevisionA,
        YarnWeightRevision.B => RevisionB,
        _ => throw new ArgumentOutOfRangeException(nameof(revision), revision, "revision must be A or B."),
    };

    /// <summary>Every category whose grist allows these metres per 100 g; between two of them, the thicker. Never empty.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Outside [1, 10,000] m per 100 g.</exception>
    public static ImmutableArray<YarnWeight> ByGrist(double metresPer100Grams, YarnWeightRevision revision)
    {
        Guard.InRange(metresPer100Grams, 1, 10_000, "m per 100 g");
        var weights = All(revision);
        var matching = weights
            .Where(weight => weight.MetresPer100Grams is { } grist && grist.Contains(metresPer100Grams)).ToImmutableArray();
        return matching.IsEmpty
            ? [weights.First(weight => weight.MetresPer100Grams is { } grist && !grist.IsBelow(metresPer100Grams))]
            : matching;
    }

    /// <summary>Every category whose crochet gauge allows this many of its stitches in 4 in (10 cm); empty where none does.</summary>
    public static ImmutableArray<YarnWeight> ByGauge(int stitchesPer4Inches, YarnWeightRevision revision) =>
        [.. All(revision).Where(weight => weight.CrochetStitches.Contains(stitchesPer4Inches))];

    private static YarnWeight Row(
        int category, string name, (int? Least, int? Most) stitches, (double? Least, double? Most) hook, string hookUs,
        (int? Least, int? Most) knit, (double? Least, double? Most) needle) => new(
            category, name, new(stitches.Least, stitches.Most), Millimetres(hook), hookUs,
            new(knit.Least, knit.Most), Millimetres(needle));

    private static OpenRange<Length> Millimetres((double? Least, double? Most) range) => new(
        range.Least is { } least ? Length.FromMillimetres(least) : null,
        range.Most is { } most ? Length.FromMillimetres(most) : null);
}
