using System.Collections.Immutable;
using CsCheck;
using Dyepath.Core.Fabrics;
using Dyepath.Core.Planning;
using Dyepath.Core.Yarns;

namespace Dyepath.Core.Tests.Fabrics;

/// <summary>Named cases: counting chains, linen stitch, changing counts, short sequences, bounds.</summary>
public sealed class FabricCaseTests
{
    private const long Unit = BruteFabric.Unit;

    private static int[] RowOf(Fabric fabric, int row) => [.. fabric.Row(row).ToArray().Select(b => (int)b)];

    [Fact]
    public void The_first_column_of_turned_rows_is_at_the_right_and_odd_rows_run_backwards()
    {
        var fabric = Fabric.Work(
            ColourRing.FromUnits([2, 1, 3]), FabricPath.Constant(Working.Turned, 5, 2, new PathOptions { TurnCost = 1 }));
        Assert.Equal([0, 0, 1, 2, 2], RowOf(fabric, 0));
        Assert.Equal([2, 2, 1, 0, 0], RowOf(fabric, 1));
    }

    [Fact]
    public void Rounds_all_run_forwards()
    {
        var fabric = Fabric.Work(ColourRing.FromUnits([2, 1, 3]), FabricPath.Constant(Working.Rounds, 5, 3));
        Assert.Equal([0, 0, 1, 2, 2], RowOf(fabric, 0));
        Assert.Equal([2, 0, 0, 1, 2], RowOf(fabric, 1));
        Assert.Equal([2, 2, 0, 0, 1], RowOf(fabric, 2));
    }

    [Fact]
    public void A_tie_goes_to_the_earlier_along_the_yarn_and_under_three_quarters_is_two_toned()
    {
        var fabric = Fabric.Work(ColourRing.FromUnits([1.5, 1.5, 1.25, 0.75]), FabricPath.Constant(Working.Rounds, 5, 1));
        // [0,1) a; [1,2) half a, half b; [2,3) b; [3,4) c; [4,5) quarter c, three quarters d.
        Assert.Equal([0, 0, 1, 2, 3], RowOf(fabric, 0));
        Assert.Equal([false, true, false, false, false], Enumerable.Range(0, 5).Select(c => fabric.IsTwoToned(0, c)));
        Assert.Equal(1, fabric.TwoToned);
    }

    [Fact]
    public void Equal_colours_are_merged_before_the_majority_is_taken()
    {
        // a .4, b .45, a .15: the colour a covers more, and its first section more of it.
        var ring = ColourRing.FromUnits([0.4, 0.45, 0.15], ["a", "b", "a"]);
        var fabric = Fabric.Work(ring, FabricPath.Constant(Working.Rounds, 2, 1));
        Assert.Equal([0, 0], RowOf(fabric, 0));
        Assert.Equal(2, fabric.TwoToned);
    }

    [Theory]
    [InlineData(0.3, 0.2)]
    [InlineData(0.1, 0.15)]
    [InlineData(0.000001, 0.000001)]
    public void A_sequence_shorter_than_a_stitch_shows_the_colour_that_covers_most(double one, double other)
    {
        var ring = ColourRing.FromUnits([one, other]);
        var brute = new BruteFabric([.. ring.Sections], [0, 1]);
        var fabric = Fabric.Work(ring, FabricPath.Constant(Working.Turned, 3, 4));
        if (ring.Total > 1_000)
            Assert.All(
                Enumerable.Range(0, 4),
                r => Assert.All(
                    Enumerable.Range(0, 3), c => Assert.Equal(brute.Show(fabric.Path.SpanAt(r, c).From, Unit).Section, fabric[r, c])));
        Assert.Equal(12, fabric.TwoToned);
    }

    [Fact]
    public void The_rows_of_a_fabric_are_given_as_section_indices()
    {
        var fabric = Fabric.Work(ColourRing.FromUnits([2, 1, 3]), FabricPath.Alternating(Working.Turned, 3, 2));
        Assert.Equal([[0, 0, 1], [0, 2, 2, 2]], fabric.ToRows().Select(r => r.ToArray()));
    }

    [Fact]
    public void A_turning_chain_that_counts_lies_before_its_row_and_takes_its_own_yarn() =>
        Gen.Select(Gen.Int[1, 40].Array[2, 5], Gen.Int[2, 30], Gen.Int[-9, 25], Gen.Int[-50, 50]).Holds((tenths, n, turn, start) =>
        {
            long[] sections = [.. tenths.Select(t => t * Unit / 4)];
            var ring = ColourRing.FromUnits([.. tenths.Select(t => t / 4.0)]);
            var micro = turn * Unit / 10;
            var options = new PathOptions { TurnCost = turn / 10.0, Start = start / 2.0, TurningChainCounts = true };
            var fabric = Fabric.Work(ring, FabricPath.Constant(Working.Turned, n, 7, options));
            var brute = new BruteFabric(sections, [.. Enumerable.Range(0, sections.Length)]);
            var (at, two) = (start * Unit / 2, 0);
            for (var r = 0; r < 7; r++)
            {
                for (var i = 0; i < n; i++)
                {
                    // The chain, κ = 1 + τ stitches of yarn, is worked first; then n − 1 stitches.
                    var shown = i == 0 ? brute.Show(at - micro, Unit + micro) : brute.Show(at + i * Unit, Unit);
                    two += shown.Two ? 1 : 0;
                    if (fabric[r, r % 2 == 0 ? i : n - 1 - i] != shown.Section)
                        return false;
                }
                at += n * Unit + micro;
            }
            return two == fabric.TwoToned;
        }, seed: 111, cases: 400);

    [Fact]
    public void Linen_rows_of_half_a_unit_end_in_half_a_unit() =>
        Gen.Select(Gen.Int[1, 20].Array[2, 5], Gen.Int[1, 31], Gen.Int[0, 3], Gen.Enum<Working>()).Holds((halves, n, turn, way) =>
        {
            turn = way == Working.Spiral ? 0 : turn;
            var ring = ColourRing.FromUnits([.. halves.Select(t => t / 2.0)]);
            var brute = new BruteFabric([.. ring.Sections], [.. Enumerable.Range(0, halves.Length)]);
            var path = FabricPath.Constant(way, n, 6, new PathOptions { TurnCost = turn / 4.0, StitchesPerUnit = 2 });
            var fabric = Fabric.Work(ring, path);
            var (at, two) = (0L, 0);
            for (var r = 0; r < 6; r++)
            {
                var cells = (n + 1) / 2;
                for (var i = 0; i < cells; i++)
                {
                    var half = i == cells - 1 && n % 2 == 1;
                    var shown = brute.Show(at + i * Unit, half ? Unit / 2 : Unit);
                    two += shown.Two ? 1 : 0;
                    if (fabric[r, path.RunsBackwards(r) ? cells - 1 - i : i] != shown.Section)
                        return false;
                }
                at += n * Unit / 2 + turn * Unit / 4;
            }
            return two == fabric.TwoToned;
        }, seed: 112, cases: 400);

    [Theory]
    [InlineData(8, 0, 1)]
    [InlineData(7, 0, -1)]
    public void Every_other_linen_row_is_drawn_half_a_unit_over(int stitches, int even, int odd)
    {
        var path = FabricPath.Constant(Working.Turned, stitches, 2, new PathOptions { StitchesPerUnit = 2 });
        Assert.Equal((even, odd), (path.DrawnHalfUnitsLeft(0), path.DrawnHalfUnitsLeft(1)));
    }

    [Fact]
    public void Changing_counts_and_edges_show_what_the_definition_says() =>
        Gen.Select(Gen.Int[1, 60].Array[1, 5], Gen.Select(Gen.Int[1, 25], Gen.Int[-4, 4], Gen.Int[0, 3]).Array[1, 20], Gen.Enum<Working>())
            .Holds((tenths, rows, way) =>
            {
                var ring = ColourRing.FromUnits([.. tenths.Select(t => t / 10.0)]);
                int[] counts = [.. rows.Select(r => r.Item1)];
                int[] edges = [.. rows.Select(r => r.Item2)];
                var fabric = Fabric.Work(ring, FabricPath.RowByRow(way, [.. counts], null, [.. edges]));
                var expected = new BruteFabric([.. ring.Sections], [.. Enumerable.Range(0, tenths.Length)]).Work(way, counts, 0, 0, edges);
                return Enumerable.Range(0, counts.Length).All(r => RowOf(fabric, r).SequenceEqual(expected[r].Select(e => e.Section))
                    && fabric[r, edges[r]] == expected[r][0].Section);
            }, seed: 113, cases: 400);

    [Fact]
    public void The_advance_at_a_row_is_how_far_its_columns_move_along_the_yarn() =>
        Gen.Select(Gen.Select(Gen.Int[5, 25], Gen.Int[-2, 2], Gen.Int[0, 3]).Array[4, 12], Gen.Enum<Working>()).Holds((rows, way) =>
        {
            var turns = rows.Select(r => way == Working.Spiral ? 0 : r.Item3 / 4.0);
            var path = FabricPath.RowByRow(way, [.. rows.Select(r => r.Item1)], null, [.. rows.Select(r => r.Item2)], [.. turns]);
            return Enumerable.Range(0, rows.Length - 2).All(r =>
            {
                var advance = path.AdvanceAt(r);
                return path.SpanAt(r + advance.Rows, 2).From - path.SpanAt(r, 2).From == advance.Micro;
            });
        }, seed: 90, cases: 300);

    [Fact]
    public void Counting_chains_of_alternating_cost_each_take_their_own_yarn()
    {
        double[] units = [1.25, 2.5, 0.75];
        var turns = Enumerable.Range(0, 40).Select(r => r % 2 == 0 ? 0.5 : -0.5);
        var path = FabricPath.RowByRow(
            Working.Turned, [.. Enumerable.Repeat(9, 40)], new PathOptions { TurningChainCounts = true }, turnCosts: [.. turns]);
        var fabric = Fabric.Work(ColourRing.FromUnits(units), path);
        var brute = new BruteFabric([1_250_000, 2_500_000, 750_000], [0, 1, 2]);
        for (var r = 1; r < 40; r++)
        {
            var turn = r % 2 == 1 ? Unit / 2 : -Unit / 2;
            Assert.Equal(brute.Show(path.RowStart(r) - turn, Unit + turn).Section, fabric[r, r % 2 == 0 ? 0 : 8]);
        }
    }

    [Fact]
    public void Turn_costs_may_differ_from_row_to_row()
    {
        var path = FabricPath.RowByRow(Working.Turned, [4, 4, 4], turnCosts: [0.5, -0.25, 0]);
        Assert.Equal([0, 4_500_000, 8_250_000], Enumerable.Range(0, 3).Select(path.RowStart));
        Assert.Null(FabricPath.RowByRow(Working.Turned, [4, 4, 5, 4], turnCosts: null).Advance);
    }

    [Fact]
    public void The_largest_piece_fills_and_ends_where_it_should()
    {
        var path = FabricPath.Constant(Working.Turned, FabricPath.MostStitches, FabricPath.MostRows, new PathOptions { TurnCost = 0.37 });
        var ring = ColourRing.FromUnits([.. Enumerable.Range(1, 64).Select(i => i * 0.73)]);
        var fabric = Fabric.Work(ring, path);
        var last = new BruteFabric([.. ring.Sections], [.. Enumerable.Range(0, 64)]).Show(path.SpanAt(4999, 0).From, Unit);
        Assert.Equal(last.Section, fabric[4999, 0]);
        Assert.Equal(5_000_000, fabric.Cells.Length);
    }

    [Fact]
    public void Paths_that_cannot_be_worked_are_refused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => FabricPath.Constant(Working.Turned, 0, 1));
        Assert.Throws<ArgumentOutOfRangeException>(() => FabricPath.Constant(Working.Turned, 1001, 1));
        Assert.Throws<ArgumentOutOfRangeException>(() => FabricPath.Constant(Working.Turned, 5, 0));
        Assert.Throws<ArgumentOutOfRangeException>(() => FabricPath.Constant(Working.Turned, 5, 5001));
        Assert.Throws<ArgumentOutOfRangeException>(
            () => FabricPath.Constant(Working.Turned, 5, 5, new PathOptions { TurnCost = double.NaN }));
        Assert.Throws<ArgumentOutOfRangeException>(
            () => FabricPath.Constant(Working.Turned, 5, 5, new PathOptions { Start = double.PositiveInfinity }));
        Assert.Throws<ArgumentException>(() => FabricPath.Constant(Working.Spiral, 5, 5, new PathOptions { TurnCost = 0.5 }));
        Assert.Throws<ArgumentException>(() => FabricPath.Constant(Working.Turned, 2, 5, new PathOptions { TurnCost = -2 }));
        Assert.Throws<ArgumentException>(
            () => FabricPath.Constant(Working.Turned, 5, 5, new PathOptions { TurnCost = -1, TurningChainCounts = true }));
        Assert.Throws<ArgumentException>(() => FabricPath.RowByRow(Working.Turned, [5, 5], null, [0]));
        Assert.Throws<ArgumentOutOfRangeException>(() => FabricPath.RowByRow(Working.Turned, []));
        var fabric = Fabric.Work(ColourRing.FromUnits([2, 3]), FabricPath.Constant(Working.Turned, 5, 2));
        Assert.Throws<ArgumentOutOfRangeException>(() => fabric[0, 5]);
        Assert.Throws<ArgumentOutOfRangeException>(() => fabric[2, 0]);
        Assert.Throws<ArgumentOutOfRangeException>(() => fabric.IsTwoToned(0, -1));
    }

    [Theory]
    [InlineData(new[] { 5.0, 4, 6, 7 }, "abcd", 22)]
    [InlineData(new[] { 3.0, 2, 3, 2 }, "abab", 5)]
    [InlineData(new[] { 1.0, 4, 2, 3, 2 }, "aabab", 12)]
    [InlineData(new[] { 1.0, 2, 3, 2, 2 }, "ababa", 5)]
    [InlineData(new[] { 2.0, 2, 2, 2, 2, 2 }, "abcabc", 6)]
    [InlineData(new[] { 0.1, 0.2, 0.1, 0.2 }, "abab", 0.3)]
    public void The_period_is_the_shortest_over_merged_equal_neighbours(double[] units, string colours, double period)
    {
        Assert.Equal(ColourRing.ToMicro(period), ColourPeriod.Of(ColourRing.FromUnits(units, colours.ToCharArray()))!.Micro);
    }

    [Fact]
    public void The_period_compares_lengths_within_their_error()
    {
        var ring = ColourRing.FromUnits([3, 2, 3.2, 2], ["a", "b", "a", "b"]);
        Assert.Equal(10_200_000, ColourPeriod.Of(ring)!.Micro);
        Assert.Equal(5_100_000, ColourPeriod.Of(ring, 0.2)!.Micro);
        Assert.Null(ColourPeriod.Of(ColourRing.FromUnits([3, 2], ["a", "a"]), 0.2));
    }

    [Theory]
    [InlineData(11, 22, 11)]
    [InlineData(-11, 22, 11)]
    [InlineData(12, 22, -10)]
    [InlineData(134, 22, 2)]
    [InlineData(-1, 22, -1)]
    public void Wrapping_lands_above_minus_half_a_period_and_up_to_half(long position, long period, long wrapped) =>
        Assert.Equal(wrapped, Lean.Wrap(position, period));
}
