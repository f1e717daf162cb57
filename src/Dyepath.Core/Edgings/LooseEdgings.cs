using Dyepath.Core.Booklets;
using static Dyepath.Core.Edgings.EdgingWords;

namespace Dyepath.Core.Edgings;

/// <summary>Edgings of loops, fans and clusters.</summary>
internal static class LooseEdgings
{
    public static Edging Picot() => new()
    {
        Id = "picot",
        Name = Phrase.Plain("picot edge"),
        Multiple = 3,
        Rounds = 2,
        LastKeepsCount = true,
        LastDepth = 1.4,
        LastYarn = 1 + (3 * ChainYarn + SlipStitchYarn) / 3,
        // Common practice, no source.
        Stretched = 1.05,
        Hazards = EdgingHazards.Loops,
        Steps =
        [
            FirstRound,
            RoundsBetween,
            new(EdgingLabels.Last,
                Phrase.Of($"Ch 1, * {Sc} in each of the next 3 {Sc}, ch 3, {SlSt} in the {Sc} just made; repeat from * around; {SlSt} in the first {Sc}.")),
        ],
        Special = [Special(Phrase.Plain("Picot"), Phrase.Of($"ch 3, {SlSt} in the {Sc} just made."))],
        Chart = new EdgingChart(9)
            .Round(EdgingChart.Each(StitchSymbol.SingleCrochet, 9))
            .Round([
                .. EdgingChart.Each(StitchSymbol.SingleCrochet, 9),
                .. Enumerable.Range(0, 3).Select(i => new ChartStitch(StitchSymbol.Picot, 3 * i + 2, 0.8)),
            ])
            .Repeating(3),
    };

    public static Edging Shell() => new()
    {
        Id = "shell",
        Name = Phrase.Plain("shell edge"),
        Multiple = 6,
        Rounds = 2,
        LastKeepsCount = true,
        LastDepth = DoubleHeight,
        LastYarn = (5 * DoubleYarn + 1) / 6,
        // Common practice, no source.
        Stretched = 1.1,
        Hazards = EdgingHazards.Loops,
        Steps =
        [
            FirstRound,
            RoundsBetween,
            new(EdgingLabels.Last,
                Phrase.Of($"Ch 1, * {Sc} in the next {Sc}, {Skip} 2 {Sc}, 5 {Dc} in the next {Sc}, {Skip} 2 {Sc}; repeat from * around; {SlSt} in the first {Sc}.")),
        ],
        Chart = new EdgingChart(12)
            .Round(EdgingChart.Each(StitchSymbol.SingleCrochet, 12))
            .Round([
                .. Enumerable.Range(0, 2).Select(i => new ChartStitch(StitchSymbol.SingleCrochet, 6 * i)),
                .. Enumerable.Range(0, 2).Select(i => new ChartStitch(StitchSymbol.Shell, 6 * i + 3)),
            ])
            .Repeating(6),
    };

    /// <summary>A V takes as many stitches as it makes, two doubles and a chain, so that it lies flat.</summary>
    public static Edging VStitch() => new()
    {
        Id = "v-stitch",
        Name = Phrase.Plain("V-stitch edge"),
        Multiple = 3,
        Rounds = 2,
        LastKeepsCount = true,
        LastDepth = DoubleHeight,
        LastYarn = (2 * DoubleYarn + ChainYarn) / 3,
        // Common practice, no source.
        Stretched = 1.1,
        Hazards = EdgingHazards.Loops,
        Steps =
        [
            FirstRound,
            RoundsBetween,
            new(EdgingLabels.Last,
                Phrase.Of($"Ch 2 (not counted), * {Skip} 1 {Sc}, V-stitch in the next {Sc}, {Skip} 1 {Sc}; repeat from * around; {SlSt} in the first {Dc}.")),
        ],
        Special = [Special(Phrase.Plain("V-stitch"), Phrase.Of($"{Dc}, ch 1 and {Dc}, all in the same st."))],
        Chart = new EdgingChart(12)
            .Round(EdgingChart.Each(StitchSymbol.SingleCrochet, 12))
            .Round(Enumerable.Range(0, 4).Select(i => new ChartStitch(StitchSymbol.VStitch, 3 * i + 1)), 2)
            .Repeating(3),
    };

    /// <summary>
    /// Figures of depth follow the half double; yarn of a cluster is that of its two half doubles. Common practice, no source.
    /// </summary>
    public static Edging Clusters() => new()
    {
        Id = "clusters",
        Name = Phrase.Of($"crossed clusters of {Hdc}"),
        Multiple = 2,
        Rounds = 3,
        RoundDepth = HalfDoubleHeight,
        LastDepth = 1,
        RoundYarn = HalfDoubleYarn + ChainYarn / 2,
        LastYarn = 1,
        // Common practice, no source.
        Stretched = 1.1,
        Steps =
        [
            FirstRound,
            new(EdgingLabels.Further(), Phrase.Of(
                $"Ch 2 (not counted), * cluster over the next 2 sts, ch 1; repeat from * around; {SlSt} in the first cluster. Each cluster and each ch is a st of the next round.")),
        ],
        Special =
        [
            Special(Phrase.Plain("Cluster"), Phrase.Of(
                $"{YarnOver}, {Skip} a st, insert the hook in the following st and draw up a loop, {YarnOver}, insert the hook in the {Skipped} st, in front of what is there, and draw up a loop, {YarnOver} and draw through all 5 loops.")),
        ],
        Chart = new EdgingChart(8)
            .Round(EdgingChart.Each(StitchSymbol.SingleCrochet, 8))
            .Round(Crossed(0.5), 2, 1.25)
            .Round(Crossed(1), 2, 1.25)
            .Repeating(2),
    };

    /// <summary>A cluster over every two stitches, and the chain after it.</summary>
    private static IEnumerable<ChartStitch> Crossed(double first) => Enumerable.Range(0, 4).SelectMany(i => new ChartStitch[]
    {
        new(StitchSymbol.CrossedCluster, 2 * i + first),
        new(StitchSymbol.Chain, 2 * i + first + 1, 0.75),
    });
}
