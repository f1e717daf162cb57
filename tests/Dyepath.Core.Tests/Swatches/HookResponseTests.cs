using Dyepath.Core.Fabrics;
using Dyepath.Core.Measuring;
using Dyepath.Core.Quantities;
using Dyepath.Core.Swatches;

namespace Dyepath.Core.Tests.Swatches;

public class HookResponseTests
{
    private static readonly Length Ten = Length.FromCentimetres(10);
    private static readonly Swatch Five = new(
        5, new Gauge(14, 16, Ten), new Gauge(13.5, 15.5, Ten), new Gauge(13.5, 15, Ten),
        [new(100, Length.FromCentimetres(700), Mass.FromGrams(3.5))]);

    private static readonly Swatch Six = new(
        6, new Gauge(12.5, 14, Ten), new Gauge(12, 13.5, Ten), null, [new(100, Length.FromCentimetres(790))]);

    [Fact]
    public void One_swatch_keeps_the_fabrics_proportions()
    {
        var larger = HookResponse.Supposed(Five).At(5.5);

        Assert.Equal(Five.Worked.StitchWidth / Five.Worked.RowHeight, larger.Worked.StitchWidth / larger.Worked.RowHeight, 1e-6);
        // Common practice, no source: one stitch in about sixteen for half a millimetre.
        Assert.InRange(larger.Worked.Stitches / 14, 1 - 1 / 14.0, 1 - 1 / 20.0);
        Assert.Equal(Five.WidthChange(), larger.WidthChange(), 1e-6);
        Assert.Equal(
            larger.Worked.StitchWidth / Five.Worked.StitchWidth, larger.YarnUsed[0].Length!.Value / Five.YarnUsed[0].Length!.Value, 1e-6);
    }

    [Fact]
    public void Two_swatches_are_both_passed_through()
    {
        var response = HookResponse.Between(Five, Six);
        var own = response.At(5);
        var other = response.At(6);

        Assert.Equal(Five.Worked.Stitches, own.Worked.Stitches, 1e-9);
        Assert.Equal(Six.Worked.Stitches, other.Worked.Stitches, 1e-6);
        Assert.Equal(Six.Worked.Rows, other.Worked.Rows, 1e-6);
        Assert.Equal(Six.Blocked!.Rows, other.Blocked!.Rows, 1e-6);
        Assert.Equal(790, other.YarnUsed[0].Length!.Value.Centimetres, 1e-5);
        Assert.NotNull(other.Hung);
        Assert.True(response.IsMeasured);
    }

    [Fact]
    public void Between_two_swatches_everything_lies_between()
    {
        var middle = HookResponse.Between(Five, Six).At(5.5);

        Assert.InRange(middle.Worked.Stitches, 12.5, 14);
        Assert.InRange(middle.Worked.Rows, 14, 16);
        Assert.InRange(middle.YarnUsed[0].Length!.Value.Centimetres, 700, 790);
    }

    [Fact]
    public void Yarn_follows_the_width_where_one_swatch_measured_none()
    {
        var response = HookResponse.Between(Five, Six with { YarnUsed = [] });

        Assert.Equal(response.WidthPower, response.YarnPower);
    }

    [Fact]
    public void Weighed_swatches_are_compared_by_mass()
    {
        var heavier = Six with { YarnUsed = [new(50, null, Mass.FromGrams(2))] };

        Assert.Equal(4 / 3.5, HookResponse.Between(Five, heavier).YarnFactor(6), 1e-9);
    }

    [Fact]
    public void Swatches_that_differ_by_more_than_their_hooks_are_held_within_reason()
    {
        var response = HookResponse.Between(Five, Six with { HookMillimetres = 5.001 });

        Assert.Equal(HookResponse.LargestPower, response.WidthPower);
        Assert.True(double.IsFinite(response.At(50).Worked.Stitches));
    }

    [Fact]
    public void A_fabric_with_two_swatches_of_one_hook_falls_back_on_the_first()
    {
        var fabric = new FabricChoice(FabricStitch.SingleCrochet, Five, Six with { HookMillimetres = 5 });

        Assert.False(HookResponse.For(fabric).IsMeasured);
        Assert.True(HookResponse.For(fabric with { OtherSwatch = Six }).IsMeasured);
    }

    [Fact]
    public void Hooks_out_of_range_are_refused_by_name()
    {
        Assert.Throws<ArgumentOutOfRangeException>("hook", () => HookResponse.Supposed(Five).At(0));
        Assert.Throws<ArgumentException>("other", () => HookResponse.Between(Five, Six with { HookMillimetres = 5 }));
        Assert.Throws<ArgumentOutOfRangeException>("power", () => HookResponse.Supposed(Five, double.NaN));
    }
}
