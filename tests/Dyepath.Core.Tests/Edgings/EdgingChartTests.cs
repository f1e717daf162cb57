using System.Collections.Immutable;
using Dyepath.Core.Booklets;
using Dyepath.Core.Edgings;

namespace Dyepath.Core.Tests.Edgings;

/// <summary>What the chart of an edging shows is what its words say: the words are followed, the marks counted.</summary>
public sealed class EdgingChartTests
{
    public static TheoryData<string> RoundUponRound => [.. EdgingLibrary.All.Where(e => !e.Across).Select(e => e.Id)];

    public static TheoryData<string> AcrossTheEdge => [.. EdgingLibrary.All.Where(e => e.Across).Select(e => e.Id)];

    public static TheoryData<string> Every => [.. EdgingLibrary.All.Select(e => e.Id)];

    [Theory]
    [MemberData(nameof(RoundUponRound))]
    public void A_repeat_has_the_marks_of_its_words_round_by_round(string id)
    {
        var edging = EdgingLibrary.Find(id);
        var chart = edging.Chart;
        Assert.Equal(edging.Multiple, chart.Repeat!.Stitches);
        Assert.Equal(edging.Multiple, chart.Repeat.To - chart.Repeat.From);
        for (var row = 0; row < chart.Rows.Length; row++)
        {
            var said = Followed(edging, row).Select(f => f.Made(edging.Multiple)).ToArray();
            var marks = Marks(chart, row).ToArray();
            var within = marks.Where(s => InRepeat(chart, s)).ToArray();
            Assert.Equal(said.SelectMany(s => s).OrderBy(s => s.Key), Counted(within));
            // Outside: the chains that it begins with, and the slip stitch that closes it.
            var end = End(marks, chart, chart.Rows[row].Way);
            var first = new StepFollower(Say(edging.StepOf(row, chart.Rows.Length).Text));
            Assert.Equal((first.Chains, first.Joins), (end.Chains, end.Joins));
        }
    }

    [Theory]
    [MemberData(nameof(AcrossTheEdge))]
    public void A_rib_has_the_marks_of_its_words(string id)
    {
        var edging = EdgingLibrary.Find(id);
        var chart = edging.Chart;
        Assert.Equal(edging.Multiple, chart.Repeat!.Stitches);
        var held = RibFollower.Held(Say(edging.Steps[3].Text));
        Assert.Equal(held, edging.Multiple);
        var within = chart.Symbols.Where(s => InRepeat(chart, s)).ToArray();
        int Count(StitchSymbol symbol) => within.Count(s => s.Symbol == symbol);
        Assert.Equal((held, held), (Count(StitchSymbol.SingleCrochet), Count(StitchSymbol.SlipStitch)));
        // A row down to the edge and a row up from it, each of as many stitches, on their side, and the chain that turns.
        var rib = within.Where(s => s.Degrees != 0).ToArray();
        Assert.All(rib, s => Assert.Equal(-90, s.Degrees));
        var perRow = rib.GroupBy(s => s.X).Select(g => g.Count()).ToArray();
        Assert.Equal(2, perRow.Length);
        Assert.Equal(perRow[0], perRow[1]);
        Assert.Equal(1, Count(StitchSymbol.Chain));
        // Chains to begin with: a stitch of the first row each, and one to turn.
        Assert.Equal(perRow[0] + 1, chart.Symbols.Count(s => s is { Symbol: StitchSymbol.Chain, Degrees: 90 }));
    }

    /// <summary>Marks stand on a place of their own: none covers another's middle.</summary>
    [Theory]
    [MemberData(nameof(Every))]
    public void No_two_marks_stand_on_one_place(string id)
    {
        var symbols = EdgingLibrary.Find(id).Chart.Symbols;
        for (var i = 0; i < symbols.Length; i++)
        {
            for (var j = 0; j < i; j++)
                Assert.True(Math.Abs(symbols[i].X - symbols[j].X) + Math.Abs(symbols[i].Y - symbols[j].Y) > 0.3, $"{symbols[i]} {symbols[j]}");
        }
    }

    /// <summary>Numbers from 1; a round's at the right where it begins, a round that goes back and every even row at the left.</summary>
    [Theory]
    [MemberData(nameof(RoundUponRound))]
    public void Rows_are_numbered_where_they_begin(string id)
    {
        var edging = EdgingLibrary.Find(id);
        var chart = edging.Chart;
        Assert.Equal(Enumerable.Range(1, chart.Rows.Length), chart.Rows.Select(r => r.Number));
        var (left, right) = (chart.Symbols.Min(s => s.X), chart.Symbols.Max(s => s.X));
        Assert.All(chart.Rows, row =>
        {
            var back = edging.InRows ? row.Number % 2 == 0 : Say(edging.StepOf(row.Number - 1, chart.Rows.Length).Text).Contains("going back", StringComparison.Ordinal);
            Assert.Equal(back ? ChartWay.Right : ChartWay.Left, row.Way);
            Assert.True(back ? row.X < left : row.X > right);
        });
    }

    /// <summary>The words of a round, and of what is done upon the last one where the chart shows it.</summary>
    private static IEnumerable<StepFollower> Followed(Edging edging, int row)
    {
        yield return new StepFollower(Say(edging.StepOf(row, edging.Chart.Rows.Length).Text));
        if (row != edging.Chart.Rows.Length - 1)
            yield break;
        foreach (var text in edging.Finishing.Select(f => Say(f.Text)))
        {
            if (text.Contains("* ", StringComparison.Ordinal))
                yield return new StepFollower(text);
            else if (text.IndexOf("sl st in each sc of the last round", StringComparison.Ordinal) is >= 0 and var at)
                yield return new StepFollower(text[at..]);
        }
    }

    private static IEnumerable<PlacedSymbol> Marks(SymbolChart chart, int row)
    {
        var (from, to) = (chart.Rows[row].Y - 0.5, row + 1 == chart.Rows.Length ? double.PositiveInfinity : chart.Rows[row + 1].Y - 0.5);
        return chart.Symbols.Where(s => s.Y >= from && s.Y < to);
    }

    private static (int Chains, int Joins) End(PlacedSymbol[] marks, SymbolChart chart, ChartWay way)
    {
        var right = chart.Symbols.Where(s => s.Symbol == StitchSymbol.SingleCrochet).Max(s => s.X);
        var ends = marks.Where(s => s.X > right || s.X < 0 && (way == ChartWay.Right || s.Symbol != StitchSymbol.Chain)).ToArray();
        return (ends.Count(s => s.Symbol == StitchSymbol.Chain), ends.Count(s => s.Symbol == StitchSymbol.SlipStitch));
    }

    private static bool InRepeat(SymbolChart chart, PlacedSymbol symbol) =>
        symbol.X - (symbol.Degrees == -90 ? 0.35 : 0) is var x && x >= chart.Repeat!.From && x < chart.Repeat.To;

    /// <summary>A picot is three chains and a slip stitch, a shell five double crochets, a V two of them and a chain.</summary>
    private static IEnumerable<KeyValuePair<StitchSymbol, int>> Counted(IEnumerable<PlacedSymbol> marks) => marks
        .SelectMany(m => m.Symbol switch
        {
            StitchSymbol.Picot => [(StitchSymbol.Chain, 3), (StitchSymbol.SlipStitch, 1)],
            StitchSymbol.Shell => [(StitchSymbol.DoubleCrochet, 5)],
            StitchSymbol.VStitch => [(StitchSymbol.DoubleCrochet, 2), (StitchSymbol.Chain, 1)],
            _ => ((StitchSymbol, int)[])[(m.Symbol, 1)],
        })
        .GroupBy(m => m.Item1).Select(g => KeyValuePair.Create(g.Key, g.Sum(m => m.Item2))).OrderBy(p => p.Key);

    private static string Say(Phrase phrase) => EdgingSayings.Say(phrase);
}
