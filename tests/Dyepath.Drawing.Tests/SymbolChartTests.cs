using Dyepath.Core.Booklets;
using Dyepath.Core.Edgings;
using Dyepath.Drawing.Lists;
using Dyepath.Drawing.Pictures;

namespace Dyepath.Drawing.Tests;

/// <summary>Charts of edgings as they are drawn.</summary>
public sealed class SymbolChartTests
{
    public static TheoryData<string> Edgings => [.. EdgingLibrary.All.Select(e => e.Id)];

    /// <summary>
    /// Marks stand clear of each other, so that a row can be told from the next; a picot and a bunch of strands alone stand on the stitch
    /// that carries them.
    /// </summary>
    [Theory]
    [MemberData(nameof(Edgings))]
    public void No_mark_lies_over_another(string id)
    {
        var symbols = EdgingLibrary.Find(id).Chart.Symbols;
        for (var i = 0; i < symbols.Length; i++)
        {
            for (var j = 0; j < i; j++)
            {
                var overlaps = BoxOf(symbols[i]).Overlaps(BoxOf(symbols[j]));
                Assert.False(overlaps, $"{symbols[i]} lies over {symbols[j]}");
            }
        }
    }

    [Fact]
    public void Every_mark_has_its_row_in_the_page_of_symbols()
    {
        var page = File.ReadAllText(RepositoryFile.Find("docs/symbols.md"));
        Assert.All(Enum.GetNames<StitchSymbol>(), mark => Assert.Contains($"\n| {mark} | ", page, StringComparison.Ordinal));
    }

    /// <summary>In a chart a single crochet is the plus of the common set, never the V that its loops look like.</summary>
    [Theory]
    [InlineData(StitchSymbol.SingleCrochet)]
    [InlineData(StitchSymbol.ReverseSingleCrochet)]
    [InlineData(StitchSymbol.BackLoopSingleCrochet)]
    public void A_single_crochet_is_two_lines_that_cross_in_their_middle(StitchSymbol symbol)
    {
        var ends = Assert.IsType<Outline>(StitchSymbols.Of(symbol)[0]).Steps.Select(s => s.To).ToArray();
        Assert.Equal(4, ends.Length);
        var (one, other) = (ends[1] - ends[0], ends[3] - ends[2]);
        Assert.Equal(0, (ends[0] + ends[1] - ends[2] - ends[3]).Length, 9);
        Assert.Equal(0, one.X * other.X + one.Y * other.Y, 9);
    }

    /// <summary>On a phone 390 px wide, 16 px kept at either side, letters of a chart are at least 10 px high.</summary>
    [Theory]
    [MemberData(nameof(Edgings))]
    public void It_can_be_read_on_a_phone(string id)
    {
        var sheet = Draw(EdgingLibrary.Find(id).Chart, Hand.Right);
        var lettering = Texts(sheet).Select(t => t.Lettering.Size).Min() * Math.Min(1, 358 / (sheet.Width * 96 / 25.4)) * 96 / 25.4;
        Assert.True(lettering >= 10, $"{lettering:0.0} px over {sheet.Width:0} mm");
    }

    /// <summary>Numbers of all rows and the repeat are written.</summary>
    [Theory]
    [MemberData(nameof(Edgings))]
    public void Rows_and_repeat_are_written(string id)
    {
        var chart = EdgingLibrary.Find(id).Chart;
        var said = Texts(Draw(chart, Hand.Right)).Select(t => t.Text).ToArray();
        Assert.Equal(Enumerable.Range(1, chart.Rows.Length).Select(r => $"{r}"), said.Where(t => int.TryParse(t, out _)).Order());
        Assert.Single(said, t => t == (chart.Repeat!.Stitches == 1 ? "repeat: 1 stitch" : $"repeat: {chart.Repeat.Stitches} stitches"));
    }

    /// <summary>For the left hand everything changes sides: a round's number stands at the left.</summary>
    [Fact]
    public void A_left_handed_chart_is_the_mirror()
    {
        var chart = EdgingLibrary.Find("shell").Chart;
        var (right, left) = (Draw(chart, Hand.Right), Draw(chart, Hand.Left));
        Assert.Equal(right.Width, left.Width, 6);
        double Number(Sheet sheet) => Texts(sheet).Single(t => t.Text == "2").At.X;
        var (origin, mirrored) = (((Group)right.Shapes[0]).At.X, ((Group)left.Shapes[0]).At.X);
        Assert.Equal(right.Width - (Number(right) + origin), Number(left) + mirrored, 6);
        Assert.True(Number(right) + origin > right.Width / 2);
    }

    private static Sheet Draw(SymbolChart chart, Hand hand)
    {
        var edition = SampleBooklet.Everyone with { Hand = hand };
        return SymbolChartDrawing.Draw(chart, "Edging.", "", new Reader(edition, SampleBooklet.Saying(SampleBooklet.Booklet, edition)), Room.Screen).Sheets[0];
    }

    private static IEnumerable<TextLine> Texts(Sheet sheet) => ((Group)sheet.Shapes[0]).Shapes.OfType<TextLine>();

    /// <summary>Where a mark's ink is, a hair taken off all round.</summary>
    private static Box BoxOf(PlacedSymbol symbol)
    {
        const double hair = 0.2;
        var (side, up) = StitchSymbols.Reach(symbol.Symbol);
        var (x, y) = (symbol.X * StitchSymbols.StitchWidth, -symbol.Y * StitchSymbols.RowHeight);
        return symbol.Degrees switch
        {
            90 => new Box(x + hair, y - side + hair, up - 2 * hair, 2 * (side - hair)),
            -90 => new Box(x - up + hair, y - side + hair, up - 2 * hair, 2 * (side - hair)),
            _ => new Box(x - side + hair, y - up + hair, 2 * (side - hair), up - 2 * hair),
        };
    }
}
