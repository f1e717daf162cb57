using Dyepath.Core.Making.Drift;

namespace Dyepath.Core.Tests.Making.Drift;

/// <summary>The search for the likeliest hands: its steps as Nelder and Mead give them, by hand, and where it ends.</summary>
public sealed class SimplexTests
{
    /// <summary>
    /// Corners (0, 0), (4, 0) and (0, 2) of values 1, 3 and 2: the worst is mirrored at the middle (2, 1) of the others, to (4, 2); gone on
    /// to (6, 3) where that is the best; drawn back to (3, 1.5) where it is no better than the others, or to (1, 0.5) where it is no
    /// better than the worst.
    /// </summary>
    [Theory]
    [InlineData(5, 7, "(4, 2) (6, 3)", 6, 3)]
    [InlineData(5, 4, "(4, 2) (6, 3)", 4, 2)]
    [InlineData(2.5, 0, "(4, 2)", 4, 2)]
    [InlineData(1.5, 1.8, "(4, 2) (3, 1.5)", 3, 1.5)]
    [InlineData(0.5, 1.8, "(4, 2) (1, 0.5)", 1, 0.5)]
    public void A_step_is_the_published_one(double mirrored, double then, string tried, double x, double y)
    {
        List<string> asked = [];
        var kept = new double[] { x, y };
        var (at, _) = Simplex.Maximise(
            point =>
            {
                asked.Add(FormattableString.Invariant($"({point[0]}, {point[1]})"));
                return asked.Count switch
                {
                    1 => 1,
                    2 => 3,
                    3 => 2,
                    4 => mirrored,
                    5 when tried.Contains(") (", StringComparison.Ordinal) => then,
                    // Whatever comes later is worse than all, so that the corner that was kept shows by what is tried next.
                    _ => -1,
                };
            },
            [[0, 0], [4, 0], [0, 2]], 1e-9);
        var steps = tried.Split(") (").Length;
        Assert.Equal(tried, string.Join(' ', asked.Skip(3).Take(steps)));
        Assert.Equal(Math.Max(3, Math.Max(mirrored, steps == 2 ? then : mirrored)), Value(asked, at, mirrored, then));
        if (Math.Max(mirrored, steps == 2 ? then : 0) > 3)
            Assert.Equal(kept, at);

        static double Value(List<string> asked, double[] at, double mirrored, double then) =>
            asked.IndexOf(FormattableString.Invariant($"({at[0]}, {at[1]})")) switch { 0 => 1, 1 => 3, 2 => 2, 3 => mirrored, 4 => then, _ => -1 };
    }

    /// <summary>Where nothing helps, every corner but the best goes half the way to it.</summary>
    [Fact]
    public void Where_nothing_helps_all_draw_together()
    {
        List<(double, double)> asked = [];
        Simplex.Maximise(
            point =>
            {
                asked.Add((point[0], point[1]));
                return asked.Count switch { 1 => 1, 2 => 3, 3 => 2, _ => 0 };
            },
            [[0, 0], [4, 0], [0, 2]], 1e-9);
        // Mirrored and drawn back in vain; then halfway from (4, 0) to (0, 2) and to (0, 0).
        Assert.Equal([(4, 2), (1, 0.5), (2, 1), (2, 0)], asked.Skip(3).Take(4));
    }

    /// <summary>The top of a hill is found from any side, whatever its slopes, and a tilted one as well.</summary>
    [Theory]
    [InlineData(0, 0)]
    [InlineData(5, -7)]
    [InlineData(-3, 11)]
    public void The_top_of_a_hill_is_found(double x, double y)
    {
        foreach (var (steep, tilt) in new[] { (1.0, 0.0), (9.0, 0.0), (4.0, 1.5) })
        {
            var count = 0;
            var (at, value) = Simplex.Maximise(
                p =>
                {
                    count++;
                    var (a, b) = (p[0] - 2, p[1] + 1);
                    return 10 - a * a - steep * b * b - tilt * a * b;
                },
                [[x, y], [x + 1, y], [x, y + 1]], 1e-12);
            Assert.Equal(2, at[0], 1e-4);
            Assert.Equal(-1, at[1], 1e-4);
            Assert.Equal(10, value, 1e-8);
            Assert.InRange(count, 20, 250);
        }
    }

    /// <summary>1, 2, 3, 4: mean 2.5, standard deviation √(5/3), of which half, that of the mean, goes 1.96 times to either side.</summary>
    [Fact]
    public void A_mean_has_the_interval_of_the_normal()
    {
        var figure = Figure.Mean([3, 1, 4, 2]);
        Assert.Equal(2.5, figure.Value, 1e-12);
        Assert.Equal(2.5 - 1.959964 * Math.Sqrt(5.0 / 3) / 2, figure.Low, 1e-5);
        Assert.Equal(2.5 + 1.959964 * Math.Sqrt(5.0 / 3) / 2, figure.High, 1e-5);
        Assert.Equal(new Figure(7, 7, 7), Figure.Mean([7]));
    }

    /// <summary>By the published table of the sign test, of a hundred the 40th and the 61st; of five the first and the last.</summary>
    [Theory]
    [InlineData(100, 40, 61)]
    [InlineData(5, 1, 5)]
    [InlineData(3, 1, 3)]
    public void A_median_lies_between_two_of_its_values(int count, int low, int high)
    {
        var figure = Figure.Median([.. Enumerable.Range(1, count).Reverse().Select(n => (double)n)]);
        Assert.Equal(((count + 1) / 2.0, (double)low, (double)high), (figure.Value, figure.Low, figure.High));
    }

    /// <summary>What a filter knows of a maker is what she is drawn by: a bias as wide as a uniform one of its spread.</summary>
    [Fact]
    public void A_world_of_one_maker_is_what_is_known_of_her()
    {
        var model = new DriftModel(0.013, 40) { Bias = 0.02, BiasSpread = 0.01, Gain = 0.8, GainSpread = 0.1, Misreads = 0.04, Slips = 0.001 };
        var world = MakerWorld.Of(DriftFilter.Begin(model), 0.05, 0.03);
        Assert.Equal((0.013, 40.0, 0.02, 0.05), (Math.Round(world.Hands.Spread, 9), world.Hands.Memory, Math.Round(world.Hands.Bias, 9), world.Hands.LargestCorrection));
        Assert.Equal(0.01 * Math.Sqrt(3), world.LargestBias, 1e-9);
        Assert.Equal((0.8, 0.1, 0.03, 0.04, 0.001), (world.Gain, Math.Round(world.GainSpread, 9), world.Dye, world.Misreads, world.Slips));
        // And back: a filter's parameters of such makers are those that it was begun with.
        var again = world.Model(Pieces.Of([5, 4, 6, 7], 20, 10));
        Assert.Equal(
            (0.02, 0.01, 0.8, 0.1, 0.04, 0.001),
            (Math.Round(again.Bias, 9), Math.Round(again.BiasSpread, 9), again.Gain, Math.Round(again.GainSpread, 9), again.Misreads, again.Slips));
    }
}
