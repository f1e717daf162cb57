using System.Collections.Immutable;
using Dyepath.Core.Booklets;
using static Dyepath.Core.Edgings.EdgingWords;

namespace Dyepath.Core.Edgings;

/// <summary>Ribs whose rows stand across the edge, each pair of rows held to round 1 by slip stitches.</summary>
internal static class Ribs
{
    private const int ChartedRows = 8;
    private const int ChartedStitches = 5;

    /// <summary>Room of one stitch along a rib row, in row heights.</summary>
    private const double Pitch = 0.8;

    /// <summary>Draws in by a quarter (2:3 or 3:4 picked up) and stretches a little beyond the edge: common practice, no source.</summary>
    public static Edging SingleCrochet() => new()
    {
        Id = "rib",
        Name = Phrase.Of($"sideways rib ({Sc} in the back loop)"),
        Multiple = 2,
        Rounds = 6,
        RoundDepth = StitchWidth,
        RoundYarn = 1.1,
        Draw = 0.75,
        Relaxed = 0.75,
        Stretched = 1.1,
        Across = true,
        Steps = Steps(Phrase.Of($"{Sc}"), Phrase.Of($"{Sc} in the back loop of each {Sc}"), 2),
        Special = [BackLoop],
        Chart = Chart(StitchSymbol.SingleCrochet, StitchSymbol.BackLoopSingleCrochet, 2),
    };

    /// <summary>
    /// Its rows are half as high as those of single crochet, so that two go to a stitch of round 1. Yarn of a stitch 0.75 of a single
    /// crochet, two rows to a stitch picked up; draws in by a quarter and stretches by a quarter: common practice, no source.
    /// </summary>
    public static Edging SlipStitch() => new()
    {
        Id = "slip-rib",
        Name = Phrase.Of($"sideways slip-stitch rib ({Hdc} {SlSt} in the back loop)"),
        Multiple = 1,
        Rounds = 7,
        RoundDepth = StitchWidth,
        RoundYarn = 1.5,
        Draw = 0.8,
        Relaxed = 0.75,
        Stretched = 1.25,
        Across = true,
        Steps = Steps(Phrase.Of($"{Hdc} {SlSt}"), Phrase.Of($"{Hdc} {SlSt} in the back loop of each {Hdc} {SlSt}"), 1),
        Special =
        [
            BackLoop,
            Special(Phrase.Of($"{Hdc} {SlSt}"), Phrase.Of($"{YarnOver}, insert the hook, {YarnOver} and draw through the st and all loops on the hook.")),
        ],
        Chart = Chart(StitchSymbol.BackLoopHalfDoubleSlipStitch, StitchSymbol.BackLoopHalfDoubleSlipStitch, 1),
    };

    private static Phrase BackLoop => Special(Phrase.Plain("Back loop"), Phrase.Plain("the loop of the st that lies farther from you."));

    private static ImmutableArray<Instruction> Steps(Phrase stitch, Phrase inEach, int held)
    {
        var hold = held == 1 ? Phrase.Of($"{SlSt} in the next {Sc}") : Phrase.Of($"{SlSt} in each of the next {held} {Sc}");
        return
        [
            new(EdgingLabels.Numbered(1),
                Phrase.Of($"Ch 1, {Sc} in every place of the pick-up; {SlSt} in the first {Sc}. Ch 1 for every further round, and 1 more.")),
            new(Phrase.Plain("Rib row 1"), Phrase.Of($"{stitch} in the 2nd ch and in each ch to the edge, {hold} of round 1, turn.")),
            new(Phrase.Plain("Rib row 2"), Phrase.Of($"{Skip} the {(held == 1 ? "" : $"{held} ")}{SlSt}, {inEach} to the end, ch 1, turn.")),
            new(Phrase.Plain("Rib row 3"),
                Phrase.Of($"{inEach} to the edge, {hold} of round 1, turn. Repeat rib rows 2 and 3 around; sew the last row to the first.")),
        ];
    }

    /// <summary>
    /// From right to left: the chains, then rib rows down to the edge and up again; every stitch lies on its side, its foot on the row
    /// before.
    /// </summary>
    private static SymbolChart Chart(StitchSymbol first, StitchSymbol stitch, int held)
    {
        const double low = 1.6;
        const double top = low + ChartedStitches * Pitch;
        var picked = Enumerable.Range(0, ChartedRows / 2 * held).Select(i => ChartedRows - (i + 0.5) * 2 / held - 0.5).ToArray();
        var rows = Enumerable.Range(1, ChartedRows).ToArray();
        var along = Enumerable.Range(0, ChartedStitches).Select(i => low + i * Pitch).ToArray();
        return new SymbolChart(
            [
                .. picked.Select(x => new PlacedSymbol(StitchSymbol.SingleCrochet, x, 0)),
                new(StitchSymbol.Chain, ChartedRows, 0.1),
                new(StitchSymbol.SlipStitch, -1, 0.25),
                .. picked.Select(x => new PlacedSymbol(StitchSymbol.SlipStitch, x, 0.85)),
                .. along.Append(top).Select(y => new PlacedSymbol(StitchSymbol.Chain, ChartedRows - 0.25, y, 90)),
                .. from row in rows from y in along select new PlacedSymbol(row == 1 ? first : stitch, ChartedRows - row + 0.35, y, -90),
                .. rows.Where(r => r % 2 == 0 && r < ChartedRows)
                    .Select(r => new PlacedSymbol(StitchSymbol.Chain, ChartedRows - r - 0.5, top)),
            ],
            [])
        {
            Rows =
            [
                .. rows.Select(r => r % 2 == 1
                    ? new ChartRow(r, ChartedRows - r, top + 0.75, ChartWay.Down)
                    : new ChartRow(r, ChartedRows - r, -0.75, ChartWay.Up)),
            ],
            Lines = [new(-0.6, -0.1, ChartedRows - 0.4, -0.1)],
            Repeat = new ChartRepeat(3.5, 5.5, -1.3, held),
        };
    }
}
