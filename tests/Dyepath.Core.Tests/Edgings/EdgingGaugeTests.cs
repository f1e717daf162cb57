using CsCheck;
using Dyepath.Core.Edgings;
using Dyepath.Core.Fabrics;
using Dyepath.Core.Quantities;
using Dyepath.Core.Swatches;

namespace Dyepath.Core.Tests.Edgings;

public sealed class EdgingGaugeTests
{
    private static readonly Length Ten = Length.FromCentimetres(10);

    /// <summary>A measured edging has as many stitches in a centimetre along stitches as along row ends: those of its own gauge.</summary>
    [Fact]
    public void A_measured_edging_is_equally_dense_along_stitches_and_row_ends()
    {
        Gen.Select(Gen.Double[5, 40], Gen.Double[5, 40], Gen.Double[5, 40], Gen.Double[5, 40]).Holds(
            (stitches, rows, own, ownRows) =>
            {
                var fabric = new Gauge(stitches, rows, Ten);
                var flat = Of(FabricStitch.HalfDoubleCrochet, fabric, new Gauge(own, ownRows, Ten)).Flat(fabric);
                Assert.Equal(own / 10, flat.Stitches / fabric.StitchWidth.Centimetres, 1e-5);
                Assert.Equal(own / 10, flat.RowEnds / fabric.RowHeight.Centimetres, 1e-5);
            },
            seed: 105, cases: 1_000);
    }

    /// <summary>One for one where a measured edging's stitches are nearly as wide as the fabric's; another ratio is said where they are not.</summary>
    [Theory]
    [InlineData(20, "front edge: pick up 1 in each of the 40 stitches: 40 in all.")]
    [InlineData(18, "front edge: pick up 1 in each of the 40 stitches: 40 in all.")]
    [InlineData(22, "front edge: pick up 1 in each of the 40 stitches: 40 in all.")]
    [InlineData(25, "front edge: pick up 5 in every 4 stitches, 10 times: 50 in all.")]
    [InlineData(15, "front edge: pick up 3 in every 4 stitches, 10 times: 30 in all.")]
    public void Along_stitches_the_ratio_of_the_gauges_is_said(double own, string said)
    {
        var fabric = new Gauge(20, 22, Ten);
        var flat = Of(FabricStitch.SingleCrochet, fabric, new Gauge(own, 22, Ten)).Flat(fabric);
        Assert.Equal(said, PickUpWords.Text(PickUp.Plan(EdgingLibrary.Find("sc"), [new(new StretchId.OfEdge(EdgeId.FrontEdge), false, 40)], flat, 0)));
    }

    /// <summary>
    /// Without a swatch of its own the edging's stitch is 0.85 of the fabric's, its row as high as given, and stitches are picked up one for
    /// one. Linen counts its single crochets and chains one by one, so that it takes as many as single crochet of the same width.
    /// </summary>
    [Theory]
    [InlineData("sc")]
    [InlineData("dc")]
    [InlineData("linen")]
    public void What_was_not_measured_is_usual(string stitch)
    {
        var fabric = new Gauge(20, 22, Ten);
        var usual = Of(FabricStitch.All.Single(s => s.Id == stitch), fabric, null);
        Assert.Equal(0.425, usual.StitchWidth.Centimetres, 1e-5);
        Assert.Equal(0.45, usual.RowHeight.Centimetres, 1e-5);
        Assert.Equal(1, usual.Flat(fabric).Stitches);
        Assert.Equal(10 / 22.0 / 0.425, usual.Flat(fabric).RowEnds, 1e-5);
    }

    /// <summary>40 stitches of 5 mm and 22 rows of 10/22 cm.</summary>
    [Fact]
    public void An_edge_is_as_long_as_its_stitches_and_row_ends()
    {
        var pickUp = PickUp.Plan(EdgingLibrary.Find("sc"), [new(new StretchId.OfEdge(EdgeId.Hem), false, 40), new(new StretchId.OfEdge(EdgeId.Front), true, 22)], new(1, 1), 0);
        Assert.Equal(30, pickUp.EdgeLength(new Gauge(20, 22, Ten)).Centimetres, 1e-5);
    }

    private static EdgingGauge Of(FabricStitch stitch, Gauge fabric, Gauge? own) =>
        EdgingGauge.For(new FabricChoice(stitch, new Swatch(5, fabric, null, null, [])) { Edging = own }, fabric, Length.FromCentimetres(0.45));
}
