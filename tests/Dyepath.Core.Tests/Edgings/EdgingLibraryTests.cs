using Dyepath.Core.Booklets;
using Dyepath.Core.Edgings;
using Dyepath.Core.Quantities;

namespace Dyepath.Core.Tests.Edgings;

/// <summary>The edgings that ship, one by one: what a leaflet would say of each, and what a maker would measure.</summary>
public sealed class EdgingLibraryTests
{
    private static readonly Edition Metric = new(Terms.Us, Units.Centimetres, Hand.Right);

    /// <summary>Repeats: none in a band, 3 single crochets under a picot, 6 from shell to shell, 2 for each slip stitch that holds a rib.</summary>
    [Theory]
    [InlineData("sc", "plain sc band", 1, 3)]
    [InlineData("corded", "corded edge (reverse sc)", 1, 2)]
    [InlineData("picot", "picot edge", 3, 2)]
    [InlineData("shell", "shell edge", 6, 2)]
    [InlineData("rib", "sideways rib (sc in the back loop)", 2, 6)]
    public void Its_name_its_repeat_and_its_usual_rounds(string id, string name, int multiple, int rounds)
    {
        var edging = Of(id);
        Assert.Equal(name, Say(edging.Name));
        Assert.Equal((multiple, rounds), (edging.Multiple, edging.Rounds));
        Assert.Equal(0, edging.Plus);
    }

    [Theory]
    [InlineData("sc", "Round 1: Ch 1, sc in every place of the pick-up; sl st in the first sc.", "Every further round: Ch 1, sc in each sc around; sl st in the first sc.")]
    [InlineData("corded", "Round 1: Ch 1, sc in every place of the pick-up; sl st in the first sc.",
        "Last round: Without turning, ch 1, reverse sc in each sc around, going back the way you came; sl st in the first of them.")]
    [InlineData("picot", "Round 1: Ch 1, sc in every place of the pick-up; sl st in the first sc.",
        "Last round: Ch 1, * sc in each of the next 3 sc, ch 3, sl st in the sc just made; repeat from * around; sl st in the first sc.")]
    [InlineData("shell", "Round 1: Ch 1, sc in every place of the pick-up; sl st in the first sc.",
        "Last round: Ch 1, * sc in the next sc, skip 2 sc, 5 dc in the next sc, skip 2 sc; repeat from * around; sl st in the first sc.")]
    [InlineData("rib", "Round 1: Ch 1, sc in every place of the pick-up; sl st in the first sc. Ch 1 for every further round, and 1 more.",
        "Rib row 1: Sc in the 2nd ch and in each ch to the edge, sl st in each of the next 2 sc of round 1, turn.",
        "Rib row 2: Skip the 2 sl st, sc in the back loop of each sc to the end, ch 1, turn.",
        "Rib row 3: Sc in the back loop of each sc to the edge, sl st in each of the next 2 sc of round 1, turn. Repeat rib rows 2 and 3 around; sew the last row to the first.")]
    public void It_is_worked_so(string id, params string[] steps) =>
        Assert.Equal(steps, Of(id).Steps.Select(s => Capital($"{Say(s.Label)}: ") + Capital(Say(s.Text))));

    /// <summary>
    /// Over 60 stitches picked up, in single crochets of yarn: a picot is three chains and a slip stitch, a shell's repeat five double
    /// crochets and a single one; reverse single crochet takes 1.15 of a plain one, a rib's row 1.1 (from memory, a strip each).
    /// </summary>
    [Theory]
    [InlineData("sc", 3, 180)]
    [InlineData("corded", 2, 60 + 60 * 1.15)]
    [InlineData("picot", 2, 60 + 60 + 20 * (3 * 25.5 / 53 + 0.5))]
    [InlineData("shell", 2, 60 + 10 * (5 * 102.0 / 53 + 1))]
    [InlineData("rib", 6, 60 * (5 * 1.1 + 1))]
    public void It_takes_the_yarn_of_its_stitches(string id, int rounds, double singleCrochets) =>
        Assert.Equal(singleCrochets, Of(id).YarnInSingleCrochet(60, rounds), 1e-9);

    /// <summary>
    /// With rows of 1 cm: a corded last round lies flatter than single crochet, a picot stands higher, a shell is as tall as its double
    /// crochet (1.65 stitch widths against 0.9); a rib's rows run outwards, so that each adds a stitch's width.
    /// </summary>
    [Theory]
    [InlineData("sc", 3, 3)]
    [InlineData("corded", 2, 1.7)]
    [InlineData("picot", 2, 2.4)]
    [InlineData("shell", 2, 1 + 1.65 / 0.9)]
    [InlineData("rib", 6, 5 / 0.9 + 1)]
    public void It_is_as_deep_as_its_rounds(string id, int rounds, double centimetres) =>
        Assert.Equal(centimetres, Of(id).Depth(rounds, Length.FromCentimetres(1)).Centimetres, 1e-6);

    /// <summary>Only a rib draws the edge in, to three quarters; only picots and shells leave loops.</summary>
    [Fact]
    public void A_rib_draws_in_and_loops_are_known()
    {
        Assert.Equal(0.75, Of("rib").Draw);
        Assert.All(EdgingLibrary.All.Where(e => e.Id != "rib"), e => Assert.Equal(1, e.Draw));
        Assert.Equal(["picot", "shell"], EdgingLibrary.All.Where(e => e.Loops).Select(e => e.Id));
    }

    /// <summary>What the chart shows is what the words say: the last round's repeat, over the row that it stands on.</summary>
    [Theory]
    [InlineData("sc", StitchSymbol.SingleCrochet, 1, new[] { 0, 1, 2, 3, 4, 5, 6, 7 })]
    [InlineData("corded", StitchSymbol.ReverseSingleCrochet, 1, new[] { 0, 1, 2, 3, 4, 5, 6, 7 })]
    [InlineData("picot", StitchSymbol.Picot, 2, new[] { 2, 5 })]
    [InlineData("shell", StitchSymbol.Shell, 1, new[] { 3, 9 })]
    public void Its_chart_shows_the_last_round(string id, StitchSymbol symbol, int row, int[] columns)
    {
        var chart = Of(id).Chart;
        Assert.Equal(columns.Select(c => (double)c), chart.Symbols.Where(s => s.Symbol == symbol && s.Y == row).Select(s => s.X));
        Assert.Equal(["1", "2"], chart.Labels.Select(l => l.Text));
        Assert.Equal([0.0, 1], chart.Labels.Select(l => l.Y));
        Assert.All(chart.Labels, l => Assert.True(l.X < 0));
    }

    [Fact]
    public void Every_repeat_of_the_words_uses_up_the_multiple()
    {
        // Picot: 3 single crochets. Shell: one, two skipped, one under the shell, two skipped. Rib: two slip stitches.
        Assert.Equal(3, Of("picot").Multiple);
        Assert.Equal(1 + 2 + 1 + 2, Of("shell").Multiple);
        Assert.Equal(2, Of("rib").Multiple);
    }

    /// <summary>Rib rows stand across the edge: their single crochets lie on their side, above the round that carries them.</summary>
    [Fact]
    public void A_ribs_chart_lies_on_its_side()
    {
        var chart = Of("rib").Chart;
        Assert.Equal(Enumerable.Range(0, 8).Select(i => (double)i), chart.Symbols.Where(s => s.Y == 0).Select(s => s.X));
        var rib = chart.Symbols.Where(s => s.Y > 0).ToArray();
        Assert.Equal(8 * 5, rib.Length);
        Assert.All(rib, s => Assert.Equal((StitchSymbol.SingleCrochet, 90.0), (s.Symbol, s.Degrees)));
        Assert.Equal([1.0, 2, 3, 4, 5], rib.Select(s => s.Y).Distinct().Order());
        Assert.Equal("back loop", Assert.Single(chart.Labels).Text);
    }

    private static Edging Of(string id) => EdgingLibrary.All.Single(e => e.Id == id);

    private static string Capital(string text) => char.ToUpperInvariant(text[0]) + text[1..];

    private static string Say(Phrase phrase) => new Wording(new Booklet("T", "D", ["M"], Metric, []), Metric).Text(phrase);
}
