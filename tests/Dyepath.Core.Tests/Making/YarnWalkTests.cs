using Dyepath.Core.Fabrics;
using Dyepath.Core.Making;
using Dyepath.Core.Yarns;
using MathNet.Numerics.Statistics;

namespace Dyepath.Core.Tests.Making;

public sealed class YarnWalkTests
{
    private static readonly MergedRing Ring = MergedRing.Of(ColourRing.FromUnits([5, 4, 6]));

    [Fact]
    public void Law_sections_vary_about_their_length_and_independently()
    {
        const int trials = 20_000;
        double[] first = new double[trials], second = new double[trials];
        var walk = new YarnWalk(Ring, dyeVariation: 0.03, lanes: 1);
        for (int trial = 0; trial < trials; trial++)
        {
            walk.Begin(0, 0, new TrialSeed(4, trial));
            first[trial] = walk.Ends[0] - walk.Starts[0];
            walk.Turn(0, walk.Ends[0] + 1);
            second[trial] = walk.Ends[0] - walk.Starts[0];
        }
        Assert.Equal(5e6, first.Mean(), 4 * 0.15e6 / Math.Sqrt(trials));
        Assert.Equal(0.15e6, first.StandardDeviation(), 4 * 0.15e6 / Math.Sqrt(2 * trials));
        Assert.Equal(4e6, second.Mean(), 4 * 0.12e6 / Math.Sqrt(trials));
        Assert.Equal(0.12e6, second.StandardDeviation(), 4 * 0.12e6 / Math.Sqrt(2 * trials));
        Assert.Equal(0, Correlation.Pearson(first, second), 4 / Math.Sqrt(trials));
    }

    [Fact]
    public void Roundtrip_going_back_finds_the_same_sections()
    {
        var walk = new YarnWalk(Ring, dyeVariation: 0.1, lanes: 1);
        walk.Begin(0, 7e6, new TrialSeed(9, 2));
        var there = new List<(double, double, double, int)>();
        for (int i = 0; i < 50; i++)
        {
            there.Add((walk.Starts[0], walk.Ends[0], walk.PlannedStarts[0], walk.Colours[0]));
            walk.Turn(0, walk.Ends[0] + 1);
        }
        for (int i = 49; i >= 0; i--)
        {
            walk.Turn(0, walk.Starts[0] - 1);
            Assert.Equal(there[i], (walk.Starts[0], walk.Ends[0], walk.PlannedStarts[0], walk.Colours[0]));
        }
        walk.Turn(0, walk.Starts[0] - 1);
        Assert.Equal((-1, 0), (walk.Occurrence(0), walk.Colours[0]));
    }

    [Fact]
    public void Known_a_stitch_over_three_sections_has_the_one_that_covers_most()
    {
        MergedRing ring = MergedRing.Of(ColourRing.FromUnits([1, 0.4, 1]));
        var walk = new YarnWalk(ring, 0, 1);
        walk.Begin(0, 0.65e6, default);
        // 0.35 of the first, 0.4 of the second, 0.25 of the third.
        Assert.Equal(1, walk.Work(0, 0, 1e6));
        walk.Begin(0, 0.55e6, default);
        // 0.45, 0.4, 0.15.
        Assert.Equal(0, walk.Work(0, 0, 1e6));
    }

    [Fact]
    public void Extreme_sections_may_shrink_to_nothing()
    {
        var walk = new YarnWalk(Ring, dyeVariation: 0.5, lanes: 1);
        walk.Begin(0, 0, new TrialSeed(1, 1));
        for (int i = 1; i < 5_000; i++)
        {
            walk.Work(0, (i - 1) * 1e6, i * 1e6);
            Assert.True(walk.Starts[0] <= i * 1e6 && i * 1e6 <= walk.Ends[0]);
        }
    }
}
