using Dyepath.Core.Fabrics;
using Dyepath.Core.Measuring;
using Dyepath.Core.Quantities;
using Dyepath.Core.Swatches;
using Dyepath.Core.Tests.Yarns;
using Dyepath.Core.Yarns;

namespace Dyepath.Core.Tests.Swatches;

public class YarnPerStitchTests
{
    private static readonly Yarn Yarn = MeasuredYarnTests.YarnOf(null);

    [Fact]
    public void An_unravelled_row_gives_length_over_stitches()
    {
        var found = Find([new(83, Length.FromCentimetres(588))]);

        Assert.Equal(YarnPerStitchSource.Unravelled, found.Source);
        Assert.Equal(588 / 83.0, found.Centimetres.Value, 12);
        Assert.Equal(588 / 83.0, found.PerUnit.Centimetres, 6);
    }

    [Fact]
    public void Several_rows_are_pooled()
    {
        var one = Find([new(40, Length.FromCentimetres(280))]);
        var two = Find([new(40, Length.FromCentimetres(280)), new(40, Length.FromCentimetres(284))]);

        Assert.Equal(7.05, two.Centimetres.Value, 12);
        Assert.True(two.Centimetres.StandardError < one.Centimetres.StandardError);
    }

    [Fact]
    public void Weighed_yarn_goes_by_the_label()
    {
        // 200 m in 100 g.
        var found = Find([new(200, null, Mass.FromGrams(7))]);

        Assert.Equal(YarnPerStitchSource.Weighed, found.Source);
        Assert.Equal(7, found.Centimetres.Value, 12);
        Assert.InRange(found.Centimetres.StandardError, 0.35, 0.7);
    }

    [Fact]
    public void The_sequence_serves_before_the_scale()
    {
        var found = Find([new(200, null, Mass.FromGrams(7))], new Estimate(22, 0.1), new Estimate(154, 4));

        Assert.Equal(YarnPerStitchSource.SequenceLength, found.Source);
        Assert.Equal(7, found.Centimetres.Value, 12);
        Assert.Equal(2, found.Ways.Length);
        Assert.Empty(found.Disagreements);
    }

    [Fact]
    public void Contradictions_are_named_and_not_averaged()
    {
        var found = Find([new(100, Length.FromCentimetres(700))], new Estimate(22, 0.1), new Estimate(190, 4));

        Assert.Equal(7, found.Centimetres.Value, 12);
        var finding = Assert.Single(found.Disagreements);
        Assert.Equal(FindingKind.YarnPerStitchDisagrees, finding.Kind);
        Assert.Contains("7.00 cm", finding.Text, StringComparison.Ordinal);
        Assert.Contains("8.64 cm", finding.Text, StringComparison.Ordinal);
    }

    [Fact]
    public void The_error_of_L_over_C_agrees_with_simulation()
    {
        var maker = new SimulatedMaker(0.02, 50, 0, 77);
        const int trials = 20_000;
        var quotients = Enumerable.Range(0, trials)
            .Select(_ => (154 + 4 * maker.Gaussian()) / (22 + 0.3 * maker.Gaussian())).ToArray();
        var mean = quotients.Average();
        var spread = Math.Sqrt(quotients.Sum(q => (q - mean) * (q - mean)) / trials);

        Assert.InRange(spread / (new Estimate(154, 4) / new Estimate(22, 0.3)).StandardError, 0.97, 1.03);
    }

    [Fact]
    public void Unmeasured_yarn_is_supposed_within_a_quarter()
    {
        // Reference: 7.3, 10.4, 12.8 cm for single, half double, double at 13 stitches to 4 in (derived from one
        // hobbyist's measurement, ±25 %); the ratio of whole strips gives 1.48 and 1.92 of single.
        var gauge = new Gauge(13, 14, Length.FromInches(4));
        Assert.Equal(7.3, Supposed(FabricStitch.SingleCrochet), 0.3);
        Assert.Equal(10.4, Supposed(FabricStitch.HalfDoubleCrochet), 0.4);
        Assert.Equal(12.8, Supposed(FabricStitch.DoubleCrochet), 0.8);

        double Supposed(FabricStitch stitch) => YarnPerStitch.Find(
            Yarn, stitch, new Swatch(5.5, gauge, null, null, []), HandsPrior.Default, null, null).Centimetres.Value;
    }

    [Theory]
    [InlineData(5.5, 5, TensionVerdict.Shows, "sand: 10 % looser; it will show.")]
    [InlineData(4.65, 5, TensionVerdict.MayShow, "sand: 7 % tighter; it may show.")]
    [InlineData(5.15, 5, TensionVerdict.Unseen, "sand: 3 % looser.")]
    [InlineData(5.01, 5, TensionVerdict.Unseen, "sand: as your hands work.")]
    public void Hand_tension_is_said_as_tighter_or_looser(double natural, int stitches, TensionVerdict verdict, string words)
    {
        var tension = Assert.Single(HandTension.Of(["sand"], [new Estimate(natural, 0.1)], [stitches]));

        Assert.Equal(natural / stitches - 1, tension.Change, 12);
        Assert.Equal((verdict, words), (tension.Verdict, tension.Words));
        Assert.DoesNotContain("tension", tension.Words, StringComparison.OrdinalIgnoreCase);
    }

    [Fact]
    public void Stacked_sections_show_sooner() =>
        Assert.Equal(
            TensionVerdict.Shows,
            HandTension.Of(["sand"], [new Estimate(5.25, 0.1)], [5], TensionLimits.Stacked)[0].Verdict);

    [Fact]
    public void Natural_units_give_the_same_change_as_length_over_stitches_and_yarn()
    {
        double length = 36, yarn = 7.1;
        var tension = HandTension.Of(["sand"], [new Estimate(length / yarn, 0)], [5])[0];

        Assert.Equal(length / (5 * yarn) - 1, tension.Change, 12);
    }

    [Fact]
    public void Hand_tension_refuses_lists_of_unequal_length() =>
        Assert.Throws<ArgumentException>("stitches", () => HandTension.Of(["sand"], [new Estimate(5, 0)], [5, 4]));

    private static YarnPerStitch Find(YarnUsed[] used, Estimate? sequence = null, Estimate? length = null) => YarnPerStitch.Find(
        Yarn,
        FabricStitch.SingleCrochet,
        new Swatch(5, new Gauge(14, 16, Length.FromCentimetres(10)), null, null, [.. used]),
        HandsPrior.Default,
        sequence,
        length);
}
