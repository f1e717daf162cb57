using CsCheck;
using Dyepath.Core.Checking;
using Dyepath.Core.Edgings;
using Dyepath.Core.Fabrics;
using Dyepath.Core.Planning;
using Dyepath.Core.Quantities;

namespace Dyepath.Core.Tests.Edgings;

public sealed class PickUpTests
{
    private static readonly Edging Band = EdgingLibrary.All.Single(e => e.Id == "sc");
    private static readonly FlatRatios OneForOne = new(1, 1);

    /// <summary>Common practice: single, half double and double from tutorials; row heights are means of published gauges.</summary>
    [Theory]
    [InlineData("sc", 1, 1)]
    [InlineData("hdc", 3, 2)]
    [InlineData("dc", 2, 1)]
    public void Row_ends_take_the_trades_number(string stitch, int stitches, int rows)
    {
        var height = Length.FromCentimetres(0.7) * FabricStitch.All.Single(s => s.Id == stitch).HeightOverWidth;
        Assert.Equal((stitches, rows), PickUp.SimpleRatio(Usual(0.7).AlongRowEnds(height)));
    }

    /// <summary>Ten published leaflets give single crochet row heights of 0.80 to 0.93 stitch widths.</summary>
    [Theory]
    [InlineData(0.8)]
    [InlineData(0.875)]
    [InlineData(0.929)]
    public void Single_crochet_takes_one_stitch_a_row_at_every_published_gauge(double heightOverWidth)
    {
        var (stitches, rows) = PickUp.SimpleRatio(Usual(1).AlongRowEnds(Length.FromCentimetres(heightOverWidth)));
        Assert.Equal(1, (double)stitches / rows);
    }

    [Theory]
    [InlineData(0.75, 3, 4)]
    [InlineData(0.667, 2, 3)]
    [InlineData(1, 1, 1)]
    [InlineData(1.5, 3, 2)]
    [InlineData(2.76, 11, 4)]
    public void The_nearest_simple_ratio_is_taken(double ratio, int stitches, int places) =>
        Assert.Equal((stitches, places), PickUp.SimpleRatio(ratio));

    [Theory]
    [InlineData(0)]
    [InlineData(double.NaN)]
    [InlineData(5.5)]
    public void A_ratio_out_of_range_is_refused(double ratio) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => PickUp.SimpleRatio(ratio));

    [Fact]
    public void An_edge_without_places_is_refused()
    {
        Assert.Throws<ArgumentException>(() => PickUp.Plan(Band, [], OneForOne, 0));
        Assert.Throws<ArgumentException>(() => PickUp.Plan(Band, [new(new StretchId.OfEdge(EdgeId.Hem), true, 0)], OneForOne, 0));
    }

    [Fact]
    public void The_sentence_reads_as_a_person_would_say_it()
    {
        var edging = Band with { Multiple = 6 };
        var pickUp = PickUp.Plan(edging, [new(new StretchId.OfEdge(EdgeId.FrontNeck), true, 42), new(new StretchId.OfEdge(EdgeId.BackNeck), true, 42)], new(1, 0.75), 2);
        Assert.Equal(
            "on each of front neck and back neck: pick up 3 in every 4 row ends, 10 times, then 2 in the last 2 row ends = 32; 1 extra at each of the 2 "
                + "corners; 66 in all.",
            PickUpWords.Text(pickUp));
    }

    /// <summary>Stitches and row ends by their names, one and many; extras at the corners or at their places; more, or fewer.</summary>
    [Theory]
    [InlineData(true, 8, 1.0, 1, 0, 0, "front edge: pick up 1 in each of the 8 row ends: 8 in all.")]
    [InlineData(false, 8, 0.5, 1, 0, 0, "front edge: pick up 1 in each of the 8 stitches: 8 in all.")]
    [InlineData(true, 9, 0.75, 1, 0, 0, "front edge: pick up 3 in every 4 row ends, 2 times, then 1 in the last 1 row end: 7 in all.")]
    [InlineData(true, 10, 0.75, 1, 0, 0, "front edge: pick up 3 in every 4 row ends, 2 times, then 2 in the last 2 row ends: 8 in all.")]
    [InlineData(false, 8, 1.0, 5, 0, 0, "front edge: pick up 1 in each of the 8 stitches = 8; 2 extra, at stitch 3, stitch 7; 10 in all.")]
    [InlineData(false, 9, 1.0, 5, 0, 0, "front edge: pick up 1 in each of the 9 stitches = 9; 1 extra, at stitch 5; 10 in all.")]
    [InlineData(false, 11, 1.0, 5, 0, 0, "front edge: pick up 1 in each of the 11 stitches = 11; 1 fewer, at stitch 6; 10 in all.")]
    [InlineData(false, 8, 1.0, 1, 4, 2, "front edge: pick up 1 in each of the 8 stitches = 8; 2 extra at each of the 4 corners; 16 in all.")]
    [InlineData(false, 8, 1.0, 5, 4, 1, "front edge: pick up 1 in each of the 8 stitches = 8; 1 extra at each of the 4 corners; 2 fewer, at stitch 3, stitch 7; 10 in all.")]
    [InlineData(false, 12, 1.0, 10, 2, 0, "front edge: pick up 1 in each of the 12 stitches = 12; 1 fewer at each of the 2 corners; 10 in all.")]
    public void Every_way_to_spread_stitches_has_its_words(bool rowEnds, int places, double ratio, int multiple, int corners, int perCorner, string said) =>
        Assert.Equal(said, PickUpWords.Text(PickUp.Plan(Band with { Multiple = multiple }, [new(new StretchId.OfEdge(EdgeId.FrontEdge), rowEnds, places)], new(1, ratio), corners, perCorner)));

    /// <summary>A rib draws in: along stitches it takes three in four.</summary>
    [Theory]
    [InlineData(9, "front edge: pick up 3 in every 4 stitches, 2 times, then 1 in the last 1 stitch = 7; 1 extra, at stitch 5; 8 in all.")]
    [InlineData(16, "front edge: pick up 3 in every 4 stitches, 4 times: 12 in all.")]
    public void A_rib_takes_three_stitches_in_four(int places, string said) =>
        Assert.Equal(said, PickUpWords.Text(PickUp.Plan(EdgingLibrary.All.Single(e => e.Id == "rib"), [new(new StretchId.OfEdge(EdgeId.FrontEdge), false, places)], OneForOne, 0)));

    [Fact]
    public void An_open_edge_has_the_plus_and_a_closed_one_not()
    {
        var edging = Band with { Multiple = 6, Plus = 1 };
        Assert.Equal(25, PickUp.Plan(edging, [new(new StretchId.OfEdge(EdgeId.FrontEdge), false, 25)], OneForOne, 0, closed: false).Total);
        Assert.Equal(24, PickUp.Plan(edging, [new(new StretchId.OfEdge(EdgeId.FrontEdge), false, 25)], OneForOne, 0).Total);
        Assert.Equal(6, PickUp.NearestRepeat(1, 6, 0));
        Assert.Equal(12, PickUp.NearestRepeat(9, 6, 0));
        Assert.Equal(7, PickUp.NearestRepeat(-20, 6, 1));
    }

    [Fact]
    public void Following_the_sentence_gives_exactly_the_number()
    {
        Gen.Select(Gen.Int[1, 300], Gen.Int[1, 300], Gen.Double[0.5, 3], Gen.Int[1, 8], Gen.Int[0, 4], Gen.Bool).Holds(
            (one, other, ratio, multiple, corners, closed) =>
            {
                var edging = Band with { Multiple = multiple, Plus = multiple / 3 };
                var pickUp = PickUp.Plan(edging, [new(new StretchId.OfEdge(EdgeId.Front), true, one), new(new StretchId.OfEdge(EdgeId.Back), false, other)], new(1, ratio), corners, 2, closed);
                Assert.Equal(pickUp.Total, RuleFollower.Follow(PickUpWords.Text(pickUp)).Stitches);
                Assert.Equal(0, (pickUp.Total - (closed ? 0 : edging.Plus)) % multiple);
            },
            seed: 101, cases: 2_000);
    }

    [Fact]
    public void Picked_up_stitches_run_even_along_every_stretch()
    {
        Gen.Select(Gen.Int[1, 400], Gen.Double[0.5, 3]).Holds(
            (places, ratio) =>
            {
                var rule = PickUp.Plan(Band, [new(new StretchId.OfEdge(EdgeId.FrontEdge), true, places)], new(1, ratio), 0).Stretches[0];
                var even = (double)rule.Stitches / rule.Places;
                var picked = 0;
                for (var group = 1; group <= rule.Groups; group++)
                {
                    picked += rule.Stitches;
                    Assert.Equal(even * group * rule.Places, picked, 9);
                }
                Assert.InRange(rule.Total - even * places, -0.5, 0.5);
            },
            seed: 102, cases: 1_000);
    }

    [Fact]
    public void Extras_without_corners_stand_a_whole_gap_apart()
    {
        Gen.Select(Gen.Int[10, 500], Gen.Int[2, 9]).Holds(
            (places, multiple) =>
            {
                var pickUp = PickUp.Plan(Band with { Multiple = multiple }, [new(new StretchId.OfEdge(EdgeId.Hem), false, places)], OneForOne, 0);
                var extra = pickUp.ExtraPlaces();
                Assert.Equal(Math.Abs(pickUp.Extra), extra.Length);
                var gap = (double)places / Math.Max(1, extra.Length);
                for (var i = 1; i < extra.Length; i++)
                    Assert.InRange(extra[i] - extra[i - 1], Math.Floor(gap), Math.Ceiling(gap));
                Assert.All(extra, p => Assert.InRange(p, 1, places));
            },
            seed: 103, cases: 1_000);
    }

    [Fact]
    public void Every_edging_can_be_worked_from_its_steps_and_chart()
    {
        Assert.True(EdgingLibrary.All.Length >= 4);
        Assert.Equal(EdgingLibrary.All.Length, EdgingLibrary.All.Select(e => e.Id).Distinct().Count());
        Assert.All(EdgingLibrary.All, edging =>
        {
            Assert.True(edging is { Multiple: >= 1, Plus: >= 0, Rounds: >= 1, Draw: > 0.4 and <= 1 });
            Assert.NotEmpty(edging.Steps);
            Assert.NotEmpty(edging.Chart.Symbols);
            Assert.True(edging.Depth(2, Length.FromCentimetres(1)) > edging.Depth(1, Length.FromCentimetres(1)));
            Assert.True(EdgingLibrary.TryFind(edging.Id, out var found) && found.Id == edging.Id);
        });
        Assert.False(EdgingLibrary.TryFind("fringe of ours", out _));
    }

    [Fact]
    public void Loops_stay_off_the_neck_of_childrens_garments()
    {
        var picot = EdgingLibrary.All.Single(e => e.Id == "picot");
        Assert.False(picot.AllowedAt(EdgingPlace.Neck, children: true));
        Assert.True(picot.AllowedAt(EdgingPlace.Hem, children: true));
        Assert.True(picot.AllowedAt(EdgingPlace.Neck, children: false));
        Assert.True(Band.AllowedAt(EdgingPlace.Neck, children: true));
    }

    [Fact]
    public void A_plain_band_is_as_deep_and_takes_as_much_yarn_as_its_rounds()
    {
        Assert.Equal(Length.FromCentimetres(2.4), Band.Depth(4, Length.FromCentimetres(0.6)));
        Assert.Equal(400, Band.YarnInSingleCrochet(100, 4));
        Assert.Throws<ArgumentOutOfRangeException>(() => Band.Depth(0, Length.FromCentimetres(1)));
        Assert.Throws<ArgumentOutOfRangeException>(() => Band.YarnInSingleCrochet(10, 41));
    }

    private static EdgingGauge Usual(double stitchWidth) => new(Length.FromCentimetres(stitchWidth * 0.85), Length.FromCentimetres(stitchWidth * 0.9), false);
}
