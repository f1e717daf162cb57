using Dyepath.Core.Booklets;
using Dyepath.Core.Quantities;
using static Dyepath.Core.Edgings.EdgingWords;

namespace Dyepath.Core.Edgings;

/// <summary>Casings for an elastic or a cord. Figures: common practice, no source.</summary>
internal static class Casings
{
    private const int Charted = 8;
    private const int ElasticRounds = 6;

    /// <summary>Folded in half, so that a round adds half its height; the last one is slip stitched to the edge besides.</summary>
    public static Edging Elastic() => new()
    {
        Id = EdgingLibrary.ElasticCasing,
        Name = Phrase.Plain("folded casing for an elastic"),
        Rounds = ElasticRounds,
        RoundDepth = 0.5,
        LastDepth = 0.5,
        LastYarn = 1 + SlipStitchYarn,
        Relaxed = 0.85,
        ElasticShare = 0.9,
        Folded = true,
        Places = [EdgingPlace.Hem, EdgingPlace.Cuffs, EdgingPlace.TopEdge, EdgingPlace.Waist, EdgingPlace.Brim],
        Steps = [FirstRound, SingleRounds],
        Finishing =
        [
            new(Phrase.Plain("Casing"), Phrase.Of(
                $"Fold the band to the inside along the round named, then {SlSt} in each {Sc} of the last round and in the foot of the {Sc} of round 1 behind it together, all around but for the last {Length.FromCentimetres(3)}.")),
            new(Phrase.Plain("Elastic"), Phrase.Of(
                $"Draw it through the casing, overlap its ends by {Edgings.Edging.ElasticOverlap}, sew them together, and close the casing.")),
        ],
        Chart = ElasticChart(),
    };

    /// <summary>The eyelet round's height and yarn, and the cord along the edge, are counted with the last round.</summary>
    public static Edging Drawstring() => new()
    {
        Id = "drawstring",
        Name = Phrase.Plain("drawstring casing"),
        Multiple = 2,
        Rounds = 3,
        Fewest = 3,
        LastDepth = DoubleHeight,
        LastYarn = (DoubleYarn + ChainYarn) / 2 + 1.2 * (ChainYarn + SlipStitchYarn),
        Relaxed = 0.8,
        Hazards = EdgingHazards.Cords,
        Places = [EdgingPlace.Hem, EdgingPlace.Neck, EdgingPlace.Cuffs, EdgingPlace.Brims, EdgingPlace.TopEdge, EdgingPlace.Waist],
        Steps =
        [
            FirstRound,
            new(EdgingLabels.Numbered(2), Phrase.Of(
                $"Ch 2 (not counted), * {Dc} in the next {Sc}, ch 1, {Skip} 1 {Sc}; repeat from * around; {SlSt} in the first {Dc}.")),
            new(EdgingLabels.Further(), Phrase.Of($"Ch 1, {Sc} in each st around; {SlSt} in the first {Sc}.")),
        ],
        Finishing =
        [
            new(Phrase.Plain("Cord"), Phrase.Of(
                $"Chain a cord as long as the edge and {Edgings.Edging.CordBeyond} more, {SlSt} in each ch back to its beginning, fasten off, and thread it through the eyelets of round 2.")),
        ],
        ForChildren = new(Phrase.Plain("Cord, for a child"), Phrase.Of(
            $"Leave no more than {Length.FromCentimetres(7.5)} of it outside with the edge pulled wide, tie no knots and no toggles, and sew it fast at the middle.")),
        Chart = new EdgingChart(Charted)
            .Round(EdgingChart.Each(StitchSymbol.SingleCrochet, Charted))
            .Round(Enumerable.Range(0, Charted / 2).SelectMany(i => new ChartStitch[]
            {
                new(StitchSymbol.DoubleCrochet, 2 * i), new(StitchSymbol.Chain, 2 * i + 1, 1),
            }), 2, 1.5)
            .Round(EdgingChart.Each(StitchSymbol.SingleCrochet, Charted))
            .Repeating(2),
    };

    private static SymbolChart ElasticChart()
    {
        var chart = new EdgingChart(Charted);
        for (var round = 0; round < ElasticRounds; round++)
        {
            if (round == ElasticRounds / 2)
                chart.Fold();
            chart.Round(EdgingChart.Each(StitchSymbol.SingleCrochet, Charted));
        }
        return chart.Upon(EdgingChart.Each(StitchSymbol.SlipStitch, Charted)).Repeating(1);
    }
}
