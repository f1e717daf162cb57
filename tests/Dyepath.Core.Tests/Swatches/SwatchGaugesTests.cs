using Dyepath.Core.Measuring;
using Dyepath.Core.Quantities;
using Dyepath.Core.Swatches;

namespace Dyepath.Core.Tests.Swatches;

public class SwatchGaugesTests
{
    private static readonly Length Ten = Length.FromCentimetres(10);
    private static readonly Gauge Worked = new(14, 16, Ten);
    private static readonly Gauge Blocked = new(13.5, 15.5, Ten);
    private static readonly Gauge Hung = new(13.75, 15, Ten);

    [Fact]
    public void The_size_follows_the_last_state_measured()
    {
        var swatch = new Swatch(5, Worked, null, null, []);

        Assert.Equal((GaugeState.Worked, Worked), (swatch.StateForSize(), swatch.ForSize()));
        swatch = swatch with { Blocked = Blocked };
        Assert.Equal((GaugeState.Blocked, Blocked), (swatch.StateForSize(), swatch.ForSize()));
        swatch = swatch with { Hung = Hung };
        Assert.Equal((GaugeState.Hung, Hung), (swatch.StateForSize(), swatch.ForSize()));
        Assert.Equal(14 / 13.75, swatch.WidthChange(), 1e-6);
        Assert.Equal(16 / 15.0, swatch.HeightChange(), 1e-6);
    }

    [Fact]
    public void A_quarter_stitch_misread_is_the_gauges_error()
    {
        var width = Worked.StitchWidthCentimetres();

        Assert.Equal(10 / 14.0, width.Value, 1e-6);
        // Derived: a uniform error of ±¼ has a standard deviation of ¼/√3 stitches in 14.
        Assert.Equal(0.25 / Math.Sqrt(3) / 14, width.StandardError / width.Value, 1e-9);
        Assert.Equal(0.25 / Math.Sqrt(3) / 16, Worked.RowHeightCentimetres().StandardError / Worked.RowHeightCentimetres().Value, 1e-9);
    }

    [Fact]
    public void A_longer_measure_is_a_surer_one() => Assert.True(
        new Gauge(28, 32, Length.FromCentimetres(20)).StitchWidthCentimetres().StandardError
            < Worked.StitchWidthCentimetres().StandardError);

    [Fact]
    public void Wander_of_the_hands_is_the_variance_of_an_autoregressions_sum()
    {
        (double, double, int)[] cases = [(0.02, 50, 1), (0.02, 50, 83), (0.05, 3, 40), (0.01, 200, 300)];
        foreach (var (spread, memory, count) in cases)
        {
            var sum = 0.0;
            for (var a = 0; a < count; a++)
            {
                for (var b = 0; b < count; b++)
                    sum += Math.Exp(-Math.Abs(a - b) / memory);
            }
            Assert.Equal(spread * spread * sum, new HandsPrior(spread, memory, 0).WanderVariance(count), 1e-9);
        }
    }

    [Fact]
    public void Wander_grows_from_nothing()
    {
        var last = 0.0;
        var hands = HandsPrior.Default;
        Assert.Equal(0, hands.WanderVariance(0));
        foreach (var stitches in (double[])[0.25, 0.5, 1, 2, 10, 100, 10_000])
        {
            var now = hands.WanderVariance(stitches);
            Assert.True(now > last);
            last = now;
        }
    }

    [Fact]
    public void The_makers_own_figures_replace_the_supposed_ones()
    {
        var own = HandsPrior.For(new HandSteadiness(0.01, 80));

        Assert.True(own.IsMakersOwn);
        Assert.Equal((0.01, 80, HandsPrior.Default.Dye), (own.Spread, own.Memory, own.Dye));
        Assert.Same(HandsPrior.Default, HandsPrior.For(null));
        Assert.Equal("for hands like these: 1 % from stitch to stitch, holding for about 80 stitches, the maker's own figures", own.Words);
        Assert.Throws<ArgumentOutOfRangeException>("spread", () => new HandsPrior(double.NaN, 50, 0));
        Assert.Throws<ArgumentOutOfRangeException>("memory", () => new HandsPrior(0.02, 0, 0));
    }
}
