using Dyepath.Core.Checking;
using Dyepath.Core.Garments;
using Dyepath.Core.Planning;
using Dyepath.Core.Yarns;

namespace Dyepath.Core.Tests.Garments;

/// <summary>Continued, mirrored and wrong side out are all tried where the document names none (docs/seams.md).</summary>
public sealed class SeamBestTests
{
    [Fact]
    public void Left_out_the_nearer_extension_is_taken_and_a_stated_one_is_kept()
    {
        Assert.Null(TestProjects.Tideline.Garment.Seams.Extension);
        var best = TestProjects.Tideline.Planned();
        foreach (var stated in Enum.GetValues<SeamExtension>())
        {
            var plan = TestProjects.Tideline.With(g => g with { Seams = g.Seams with { Extension = stated } }).Planned();
            Assert.All(plan.Sizes.SelectMany(s => s.Seams), s => Assert.True(s.Extension is null || s.Extension == stated));
            Assert.Empty(PlanCheck.Verify(plan));
            // What a start within a colour, odd rows and a centimetre of length are charged may be saved.
            foreach (var (one, other) in best.Sizes.Zip(plan.Sizes))
                Assert.True(Cost(one) <= Cost(other) + 0.65, $"{one.Name}: {Cost(one)} against {Cost(other)}");
        }
        Assert.Empty(PlanCheck.Verify(best));
    }

    /// <summary>The demo's back, turned over, mirrors its front at every seam; judged as carried on they were no better than chance.</summary>
    [Fact]
    public void The_demo_meets_without_a_jump()
    {
        var plan = GarmentPlanner.Plan(TestProjects.Tideline).Plan!;
        Assert.Equal(9, plan.Sizes.Length);
        foreach (var size in plan.Sizes)
        {
            var pooled = size.Seams.Where(s => s.First.Concat(s.Second).All(r => size[r.Piece].Pooled)).ToArray();
            Assert.Equal(4, pooled.Length);
            Assert.All(pooled, s => Assert.Equal((0, SeamExtension.Mirrored, 5.25, SeamQuality.Good), (s.PhaseJump, s.Extension!.Value, s.Chance, s.Quality)));
            Assert.All(size.Seams.Except(pooled), s => Assert.Equal((null, 0.0), (s.Extension, s.Chance)));
        }
    }

    /// <summary>Over every start, a jump of one size averages a quarter of the period, and the nearer of two a sixth.</summary>
    [Theory]
    [InlineData(21)]
    [InlineData(40)]
    public void Chance_alone_gives_a_quarter_of_the_period(int period)
    {
        var meter = new SeamMeter(period * (long)ColourRing.Unit);
        meter.Add(0, 0);
        const int steps = 1_000;
        var one = Enumerable.Range(0, steps).Select(i => meter.MeanJump(period * (long)ColourRing.Unit * i / steps) / ColourRing.Unit).ToArray();
        Assert.Equal(period / 4.0, one.Average(), 0.01);
        Assert.Equal(period / 6.0, one.SelectMany(a => one.Where((_, i) => i % 10 == 0), Math.Min).Average(), 0.05);
    }

    /// <summary>Limits by hand for 21 stitches: chance 5.25, of which two thirds are 3.5.</summary>
    [Theory]
    [InlineData(0, 5.25, SeamQuality.Good, "good")]
    [InlineData(1, 5.25, SeamQuality.Good, "good")]
    [InlineData(1.01, 5.25, SeamQuality.Visible, "visible")]
    [InlineData(3.49, 5.25, SeamQuality.Visible, "visible")]
    [InlineData(3.51, 5.25, SeamQuality.ByChance, "by chance")]
    [InlineData(0.9, 1, SeamQuality.ByChance, "by chance")]
    [InlineData(0, 0, SeamQuality.Good, "good")]
    public void A_seam_is_good_visible_or_by_chance(double jump, double chance, SeamQuality quality, string words)
    {
        Assert.Equal(quality, SeamQualities.Of(jump, chance));
        Assert.Equal(words, quality.Words());
    }

    private static double Cost(SizePlan size)
    {
        var seams = size.Seams.Where(s => s.First.Concat(s.Second).All(r => r.Piece is PieceId.Front or PieceId.Back)).ToArray();
        return seams.Sum(s => s.Length.Centimetres * s.PhaseJump) / seams.Sum(s => s.Length.Centimetres);
    }
}
