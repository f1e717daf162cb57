using CsCheck;
using Dyepath.Core.Fabrics;
using Dyepath.Core.Planning;
using Dyepath.Core.Yarns;

namespace Dyepath.Core.Tests.Garments;

public sealed class FoundationTests
{
    /// <summary>Common instruction of several handbooks; half double and linen vary between them.</summary>
    [Theory]
    [InlineData("sc", 83, false, 84, 2)]
    [InlineData("hdc", 83, false, 85, 3)]
    [InlineData("hdc", 83, true, 84, 3)]
    [InlineData("dc", 83, true, 85, 4)]
    [InlineData("dc", 83, false, 86, 4)]
    [InlineData("linen", 84, false, 86, 4)]
    [InlineData("linen", 85, false, 86, 2)]
    public void Chains_follow_the_stitch(string stitch, int stitches, bool counts, int chains, int firstIn) =>
        Assert.Equal((chains, firstIn), Foundation.Chains(Stitch(stitch), stitches, counts));

    [Fact]
    public void From_the_knot_the_chains_end_exactly_where_the_first_stitch_begins()
    {
        Cases().Holds(
            (ring, stitch, stitches, start) =>
            {
                var plan = Foundation.Plan(ring, Even(ring), stitch, stitches, stitch.TurningChainCounts, start);
                var knot = ring.Sections.Take(plan.KnotSection).Sum(ColourRing.ToUnits) + plan.KnotInto;
                var ends = knot + plan.Chains * Foundation.ChainInUnits(stitch);
                Assert.Equal(0, Math.IEEERemainder(ends - start, ring.SequenceUnits), 4);
            },
            seed: 201, cases: 500);
    }

    [Fact]
    public void Counting_chains_one_by_one_from_the_colour_reaches_the_same_place()
    {
        Cases().Holds(
            (ring, stitch, stitches, start) =>
            {
                var plan = Foundation.Plan(ring, Even(ring), stitch, stitches, stitch.TurningChainCounts, start);
                var begins = ring.Sections.Take(plan.ColourSection).Sum(ColourRing.ToUnits);
                var chain = Foundation.ChainInUnits(stitch);
                var used = (plan.Chains + plan.MoreChains) * chain;
                // Never too few chains, and less than one too many.
                var over = ColourRing.Modulo(ColourRing.ToMicro(begins + used - start) + 2_000, ring.Total);
                Assert.InRange(ColourRing.ToUnits(over), 0, chain + 0.005);
            },
            seed: 202, cases: 500);
    }

    [Fact]
    public void The_chain_begins_at_the_last_colour_change_before_the_knot()
    {
        var ring = ColourRing.FromUnits([5, 4, 6, 7]);
        var plan = Foundation.Plan(ring, Even(ring), FabricStitch.SingleCrochet, 83, false, 0);
        // 84 chains of 25.5/53 are 40.415 units: the knot lies at −40.415 ≡ 3.585 (mod 22), in the first section, 7.45 chains into it.
        Assert.Equal(0, plan.KnotSection);
        Assert.Equal(44 - 84 * 25.5 / 53, plan.KnotInto, 5);
        Assert.Equal(0, plan.ColourSection);
        Assert.Equal(8, plan.MoreChains);
    }

    /// <summary>
    /// A colour that is dyed longer than its stitches take is worked looser; the chain goes on at the mean. 84 chains of 25.5/53 of 6 cm are
    /// 242.49 cm of yarn; before row 1 come colours of 24, 30, 48 and 30 cm, 132 in all: one sequence back there are 132 cm more, so that
    /// the knot lies 264 − 242.49 = 21.51 cm into the sequence, within the first colour's 24 cm.
    /// </summary>
    [Fact]
    public void The_yarn_of_the_chains_is_measured_along_the_colours_as_they_are_dyed()
    {
        var ring = ColourRing.FromUnits([5, 4, 6, 7]);
        var plan = Foundation.Plan(ring, [4, 5, 8, 5], FabricStitch.SingleCrochet, 83, false, 0);
        Assert.Equal(0, plan.KnotSection);
        Assert.Equal(21.51 / 6, plan.KnotInto, 0.001);
        // Two stitches into the third colour, which is dyed a third longer than it is worked: 8/6 of 2 units on, besides the first two colours.
        var later = Foundation.Plan(ring, [4, 5, 8, 5], FabricStitch.SingleCrochet, 20, false, 11);
        Assert.Equal(4 + 5 + 2 * 8 / 6.0 - 21 * 25.5 / 53, later.KnotSection == 0 ? later.KnotInto : 4 + later.KnotInto, 5);
    }

    private static System.Collections.Immutable.ImmutableArray<double> Even(ColourRing ring) => [.. ring.Sections.Select(ColourRing.ToUnits)];

    private static Gen<(ColourRing Ring, FabricStitch Stitch, int Stitches, double Start)> Cases() => Gen.Select(
        Gen.Double[0.5, 12].Array[1, 8], Gen.Int[0, 3].Select(i => FabricStitch.All[i]), Gen.Int[2, 300], Gen.Double[-50, 50],
        (sections, stitch, stitches, start) => (ColourRing.FromUnits(sections), stitch, stitches, start));

    private static FabricStitch Stitch(string id) => FabricStitch.All.Single(s => s.Id == id);
}
