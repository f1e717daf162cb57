using Dyepath.Core.Booklets;
using static Dyepath.Core.Edgings.EdgingWords;

namespace Dyepath.Core.Edgings;

/// <summary>Firm bands of single crochet.</summary>
internal static class Bands
{
    private const int Charted = 8;

    public static Edging Plain() => new()
    {
        Id = EdgingLibrary.Plain,
        Name = Phrase.Of($"plain {Sc} band"),
        Rounds = 3,
        Fewest = 1,
        // Common practice, no source.
        Stretched = 1.05,
        Steps = [FirstRound, SingleRounds],
        Chart = new EdgingChart(Charted)
            .Round(EdgingChart.Each(StitchSymbol.SingleCrochet, Charted))
            .Round(EdgingChart.Each(StitchSymbol.SingleCrochet, Charted))
            .Repeating(1),
    };

    /// <summary>Along an edge whose ends do not meet.</summary>
    public static Edging Open() => new()
    {
        Id = EdgingLibrary.PlainRows,
        Name = Phrase.Of($"plain {Sc} band in rows"),
        Rounds = 3,
        Fewest = 1,
        InRows = true,
        Places = [EdgingPlace.Hem, EdgingPlace.Neck],
        // Common practice, no source.
        Stretched = 1.05,
        Steps =
        [
            new(EdgingLabels.Numbered(1, row: true), Phrase.Of($"Ch 1, {Sc} in every place of the pick-up, turn.")),
            new(EdgingLabels.Further(row: true), Phrase.Of($"Ch 1, {Sc} in each {Sc} across, turn.")),
        ],
        Chart = new EdgingChart(Charted)
            .Row(EdgingChart.Each(StitchSymbol.SingleCrochet, Charted))
            .Row(EdgingChart.Each(StitchSymbol.SingleCrochet, Charted))
            .Repeating(1),
    };

    public static Edging Corded() => new()
    {
        Id = "corded",
        Name = Phrase.Of($"corded edge (reverse {Sc})"),
        Rounds = 2,
        LastDepth = 0.7,
        LastYarn = 1.15,
        LastKeepsCount = true,
        Steps =
        [
            FirstRound,
            RoundsBetween,
            new(EdgingLabels.Last,
                Phrase.Of($"Without turning, ch 1, reverse {Sc} in each {Sc} around, going back the way you came; {SlSt} in the first of them.")),
        ],
        Special =
        [
            Special(Phrase.Of($"Reverse {Sc}"), Phrase.Of(
                $"without turning, insert the hook in the next st to the {new Side(true)}, draw up a loop, {YarnOver} and draw through both loops.")),
        ],
        Chart = new EdgingChart(Charted)
            .Round(EdgingChart.Each(StitchSymbol.SingleCrochet, Charted))
            .RoundBack(EdgingChart.Each(StitchSymbol.ReverseSingleCrochet, Charted))
            .Repeating(1),
    };
}
