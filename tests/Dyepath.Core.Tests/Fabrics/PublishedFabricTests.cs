using Dyepath.Core.Fabrics;
using Dyepath.Core.Motifs;
using Dyepath.Core.Quantities;
using Dyepath.Core.Swatches;
using Dyepath.Core.Yarns;

namespace Dyepath.Core.Tests.Fabrics;

/// <summary>Facts from outside the project; each names where it comes from.</summary>
public sealed class PublishedFabricTests
{
    private static Lean LeanOf(Working working, int sequence, int stitches, double turn = 0) => Lean.Of(
        FabricPath.Constant(working, stitches, 4, new PathOptions { TurnCost = turn }).Advance!.Value, sequence * ColourRing.Unit);

    // Worked examples derived for this project (brute-force checked): line shift is in columns away from the starting
    // edge per two rows when worked flat, per round in rounds.
    [Theory]
    [InlineData(Working.Turned, 18, 17, 0, 2, 18.0)]
    [InlineData(Working.Turned, 18, 17, 0.5, 1, 36.0)]
    [InlineData(Working.Turned, 19, 28, 0, 1, 38.0)]
    [InlineData(Working.Turned, 19, 17, 0, 4, 9.5)]
    [InlineData(Working.Turned, 20, 30, 0, 0, null)]
    [InlineData(Working.Rounds, 20, 100, 0, 0, null)]
    [InlineData(Working.Rounds, 20, 101, 0, -1, 20.0)]
    [InlineData(Working.Spiral, 20, 101, 0, -1, 20.0)]
    public void Worked_examples_shift_their_lines_as_stated(
        Working working, int sequence, int stitches, double turn, double shift, double? rowsTall)
    {
        var lean = LeanOf(working, sequence, stitches, turn);
        Assert.Equal(shift, -lean.UnitsPerRow * lean.Rows);
        if (rowsTall is { } rows)
            Assert.Equal(rows, sequence / Math.Abs(lean.UnitsPerRow));
    }

    // "Predicting Planned Pooling Patterns", Bridges 2024, pp. 361–364 (abstract): three diamond families in turned
    // work, guaranteed for odd sequence lengths; that their lines shift 1, 2 and 4 stitches per two rows is derived here.
    [Fact]
    public void Every_odd_period_reaches_the_three_diamond_families_in_turned_work()
    {
        for (var period = 5; period <= 41; period += 2)
        {
            var leans = Enumerable.Range(1, 2 * period).Select(n => Math.Abs(LeanOf(Working.Turned, period, n).UnitsPerRow)).ToHashSet();
            Assert.Contains(0.5, leans);
            Assert.Contains(1.0, leans);
            // Four stitches in two rows are the same as one fewer or more where the period is 5, or three where it is 7.
            Assert.Contains(Math.Abs(Lean.Wrap(4 * ColourRing.Unit, period * ColourRing.Unit)) / 2e6, leans);
            Assert.Equal(period >= 9, leans.Contains(2.0));
        }
    }

    // Common practice, no source.
    [Fact]
    public void Whole_repeats_minus_one_give_argyle_in_turned_single_crochet()
    {
        var gauge = new Gauge(14, 16, Length.FromCentimetres(10));
        int[][] rings = [[5, 4, 6, 7], [6, 6, 6], [4, 5, 4, 6, 3], [8, 7, 9], [10, 3, 10, 9]];
        foreach (var sections in rings)
        {
            var reader = MotifReader.Create(ColourRing.FromUnits([.. sections.Select(s => (double)s)]), Working.Turned, gauge);
            for (var repeats = 2; repeats <= 5; repeats++)
                Assert.Equal(MotifKind.Argyle, reader.Read(FabricPath.Constant(Working.Turned, repeats * sections.Sum() - 1, 72)).Kind);
        }
    }

    // Three-distance theorem (conjectured by Steinhaus; Sós, Surányi, Świerczkowski 1957–58). The example's gaps are
    // derived: C 23.7, W 51, 9 rows give 1.5 twice, 2.1 three times, 3.6 four times.
    [Fact]
    public void Row_starts_of_a_real_sequence_leave_the_three_gaps_of_the_example()
    {
        var gaps = GapsOfRowStarts(23.7, 51, 9).GroupBy(g => g).OrderBy(g => g.Key).Select(g => (g.Key, g.Count()));
        Assert.Equal([(1_500_000, 2), (2_100_000, 3), (3_600_000, 4)], gaps);
    }

    [Fact]
    public void Row_starts_leave_at_most_three_gaps_the_largest_the_sum_of_the_others()
    {
        for (var i = 0; i < 400; i++)
        {
            var gaps = GapsOfRowStarts(5 + i * 0.173, 7 + i % 90, 2 + i % 61).Distinct().Order().ToArray();
            Assert.InRange(gaps.Length, 1, 3);
            if (gaps.Length == 3)
                Assert.Equal(gaps[2], gaps[0] + gaps[1]);
        }
    }

    // Derived table, whole: extra shift in stitches per two rows, and stitches of phase after 20 rows, of a systematic
    // error of 0.25, 0.5, 1, 2 and 5 per cent of yarn per stitch, to first order (2Wε and 20Wε).
    [Theory]
    [InlineData(20, new[] { 0.1, 0.2, 0.4, 0.8, 2 }, new[] { 1.0, 2, 4, 8, 20 })]
    [InlineData(40, new[] { 0.2, 0.4, 0.8, 1.6, 4 }, new[] { 2.0, 4, 8, 16, 40 })]
    [InlineData(60, new[] { 0.3, 0.6, 1.2, 2.4, 6 }, new[] { 3.0, 6, 12, 24, 60 })]
    [InlineData(80, new[] { 0.4, 0.8, 1.6, 3.2, 8 }, new[] { 4.0, 8, 16, 32, 80 })]
    [InlineData(100, new[] { 0.5, 1, 2, 4, 10 }, new[] { 5.0, 10, 20, 40, 100 })]
    [InlineData(120, new[] { 0.6, 1.2, 2.4, 4.8, 12 }, new[] { 6.0, 12, 24, 48, 120 })]
    public void Drift_of_a_systematic_error_is_as_tabled(int stitches, double[] shifts, double[] phases)
    {
        double[] errors = [0.0025, 0.005, 0.01, 0.02, 0.05];
        foreach (var (i, change) in errors.Index())
        {
            // The table leaves out the factor 1/(1 + ε).
            var drift = Forgiveness.LeanAfter(stitches, 0, change) * (1 + change);
            Assert.Equal(shifts[i], 2 * drift, 1e-9);
            Assert.Equal(phases[i], 20 * drift, 1e-9);
        }
    }

    private static long[] GapsOfRowStarts(double sequence, int stitches, int rows)
    {
        var ring = ColourRing.FromUnits([sequence]);
        var path = FabricPath.Constant(Working.Spiral, stitches, rows);
        var starts = Enumerable.Range(0, rows).Select(r => path.RowStart(r) % ring.Total).Distinct().Order().ToArray();
        return [.. starts.Zip([.. starts[1..], starts[0] + ring.Total], (a, b) => b - a)];
    }
}
