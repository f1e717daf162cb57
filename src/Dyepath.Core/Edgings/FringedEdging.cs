using Dyepath.Core.Booklets;
using Dyepath.Core.Quantities;
using static Dyepath.Core.Edgings.EdgingWords;

namespace Dyepath.Core.Edgings;

/// <summary>
/// Strands knotted into a round of single crochet; what hangs is not counted as depth. Length and number of strands: common practice, no
/// source.
/// </summary>
internal static class FringedEdging
{
    private const int Charted = 8;
    private const int StitchesToBunch = 2;

    private static Fringe Strands { get; } = new(3, Length.FromCentimetres(28), Length.FromCentimetres(12));

    public static Edging Edging() => new()
    {
        Id = "fringe",
        Name = Phrase.Plain("fringe"),
        Multiple = StitchesToBunch,
        Rounds = 1,
        Fewest = 1,
        Stretched = 1.05,
        Hazards = EdgingHazards.Strands,
        Places = [EdgingPlace.Border],
        Fringe = Strands,
        Steps = [FirstRound, SingleRounds],
        Finishing =
        [
            new(Phrase.Plain("Fringe"), Phrase.Of(
                $"Cut {Strands.Strands} strands of {Strands.Cut} for every {StitchesToBunch} {Sc}. * {Skip} 1 {Sc}, knot a bunch of {Strands.Strands} strands into the next {Sc}; repeat from * around. Trim to {Strands.Hangs}.")),
        ],
        Special =
        [
            Special(Phrase.Plain("To knot a bunch"), Phrase.Plain(
                "fold the strands in half, draw the fold through the st from back to front with the hook, draw the ends through the fold, and pull tight.")),
        ],
        Chart = new EdgingChart(Charted)
            .Round(EdgingChart.Each(StitchSymbol.SingleCrochet, Charted))
            .Upon(Enumerable.Range(0, Charted / StitchesToBunch)
                .Select(i => new ChartStitch(StitchSymbol.Strands, StitchesToBunch * i + 1)))
            .Repeating(StitchesToBunch),
    };
}
