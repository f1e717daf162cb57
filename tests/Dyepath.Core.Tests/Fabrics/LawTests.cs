using CsCheck;
using Dyepath.Core.Fabrics;
using Dyepath.Core.Yarns;

namespace Dyepath.Core.Tests.Fabrics;

/// <summary>The laws of turned and round fabrics (derived in docs/mathematics.md), each of the fabric as the program works it.</summary>
public sealed class LawTests
{
    private const long Unit = ColourRing.Unit;

    /// <summary>Two to seven distinct colours of one to nine whole stitches.</summary>
    private static readonly Gen<int[]> WholeRings = Gen.Int[1, 9].Array[2, 7];

    private static readonly Gen<long> HalfTurns = Gen.Long[-1, 5].Select(t => t * Unit / 2);

    /// <summary>The fabric's sections, columns from the right; brute force comes to the same (<see cref="FabricTests"/>).</summary>
    private static int[][] Work(int[] ring, Working working, int stitches, int rows, long turn = 0, long start = 0)
    {
        var path = FabricPath.Constant(working, stitches, rows, new PathOptions { TurnCost = turn / 1e6, Start = start / 1e6 });
        var fabric = Fabric.Work(ColourRing.FromUnits([.. ring.Select(n => (double)n)]), path);
        return [.. fabric.ToRows().Select(row => row.ToArray())];
    }

    private static long Gcd(long a, long b) => b == 0 ? Math.Abs(a) : Gcd(b, a % b);

    [Fact]
    public void Law_1_row_pairs_of_constant_N_start_where_the_closed_form_says() =>
        Gen.Select(Gen.Int[1, 120], Gen.Long[-900_000, 3_000_000], Gen.Int[1, 20]).Holds((n, turn, pairs) =>
        {
            var path = FabricPath.Constant(Working.Turned, n, 2 * pairs, new PathOptions { TurnCost = turn / 1e6 });
            var advance = 2 * (n * Unit + turn);
            return Enumerable.Range(0, pairs).All(k => Enumerable.Range(0, n).All(c =>
                path.SpanAt(2 * k, c) == new YarnSpan(k * advance + c * Unit, Unit)
                && path.SpanAt(2 * k + 1, c) == new YarnSpan((k + 1) * advance - turn - Unit - c * Unit, Unit)));
        }, seed: 101, cases: 300);

    [Fact]
    public void Law_2_turned_fabrics_half_a_period_apart_agree_on_the_columns_they_share() =>
        Gen.Select(WholeRings, Gen.Int[1, 60], Gen.Int[1, 4], HalfTurns, Gen.Int[0, 30]).Holds((ring, n, j, turn, start) =>
        {
            var doubled = j * ring.Sum();
            var wider = n + doubled / 2;
            if (doubled % 2 != 0 || n * Unit + turn <= 0)
                return true;
            var narrow = Work(ring, Working.Turned, n, 12, turn, start * Unit);
            var wide = Work(ring, Working.Turned, wider, 12, turn, start * Unit);
            return narrow.Zip(wide).All(rows => rows.First.AsSpan().SequenceEqual(rows.Second.AsSpan(0, n)));
        }, seed: 102, cases: 500);

    [Fact]
    public void Law_2_does_not_hold_in_the_round_where_half_periods_jump_at_the_join()
    {
        // P = 22: at half periods and one the join jumps by nearly half the motif, at whole periods and one by one stitch.
        int[] ring = [5, 4, 6, 7];
        Assert.Equal(1, JumpAtJoin(ring, 23));
        Assert.Equal(1, JumpAtJoin(ring, 65));
        Assert.Equal(10, JumpAtJoin(ring, 12));
        Assert.Equal(10, JumpAtJoin(ring, 54));
    }

    [Fact]
    public void Law_3_one_stitch_more_moves_the_lean_by_one() =>
        Gen.Select(WholeRings, Gen.Int[1, 200], HalfTurns).Holds((ring, n, turn) =>
        {
            var period = ring.Sum() * Unit;
            var less = Lean.Of(new RowAdvance(2 * (n * Unit + turn), 2), period);
            var more = Lean.Of(new RowAdvance(2 * ((n + 1) * Unit + turn), 2), period);
            return Lean.Wrap(more.Micro - less.Micro - 2 * Unit, period) == 0;
        }, seed: 103, cases: 500);

    [Fact]
    public void Law_3_panels_agree_only_when_they_differ_by_half_periods_turned_or_periods_in_rounds() =>
        Gen.Select(WholeRings, Gen.Int[0, 20], Gen.Int[1, 40], Gen.Bool).Holds((ring, over, wider, turned) =>
        {
            var period = ring.Sum();
            var n = period + over;
            var way = turned ? Working.Turned : Working.Rounds;
            var narrow = Work(ring, way, n, 5);
            var wide = Work(ring, way, n + wider, 5);
            var agree = narrow.Zip(wide).All(rows => rows.First.AsSpan().SequenceEqual(rows.Second.AsSpan(0, n)));
            return agree == (wider * (turned ? 2 : 1) % period == 0);
        }, seed: 104, cases: 500);

    [Fact]
    public void Law_4_the_reversed_ring_from_minus_N_mirrored_leans_the_other_way() =>
        Gen.Select(WholeRings, Gen.Int[1, 70], Gen.Int[0, 3], Gen.Int[2, 12]).Holds((ring, n, turn, rows) =>
        {
            var last = ring.Length - 1;
            var mirrored = Work([.. ring.Reverse()], Working.Rounds, n, rows, turn * Unit, -n * Unit)
                .Select(row => row.Reverse().Select(s => last - s).ToArray()).ToArray();
            // The same piece worked on downwards from its first round leans the other way.
            var downwards = Work(ring, Working.Rounds, n, rows, turn * Unit, -(rows - 1) * (n + turn) * Unit).Reverse().ToArray();
            return mirrored.Zip(downwards).All(pair => pair.First.AsSpan().SequenceEqual(pair.Second));
        }, seed: 105, cases: 500);

    [Fact]
    public void Law_5_a_turned_fabric_repeats_after_so_many_row_pairs_and_not_sooner() =>
        Gen.Select(Gen.Int[1, 6].Array[3, 5], Gen.Int[0, 20], HalfTurns).Holds((ring, over, turn) =>
        {
            long period = ring.Sum();
            var n = (int)period + over;
            var advance = 2 * (n * Unit + turn) / Unit;
            var pairs = (int)(period / Gcd(advance % period, period));
            var fabric = Work(ring, Working.Turned, n, 4 * pairs, turn);
            bool RepeatsAfter(int q) =>
                Enumerable.Range(0, fabric.Length - 2 * q).All(r => fabric[r].AsSpan().SequenceEqual(fabric[r + 2 * q]));
            return RepeatsAfter(pairs) && !Enumerable.Range(1, pairs - 1).Any(RepeatsAfter);
        }, seed: 106, cases: 200);

    [Fact]
    public void Law_5_a_there_and_back_ring_may_repeat_sooner()
    {
        // Three and three of two colours, N = 6, a turn of three stitches: one row pair by the formula, yet every row is like the first.
        var fabric = Work([3, 3], Working.Turned, 6, 12, 3 * Unit);
        Assert.All(fabric, row => Assert.Equal(fabric[0], row));
    }

    [Theory]
    [InlineData(18)]
    [InlineData(22)]
    [InlineData(40)]
    public void Law_6_an_even_period_reaches_half_leans_only_by_alternating_or_by_half_a_turn(int period)
    {
        var micro = period * Unit;
        var constant = Enumerable.Range(1, 200).Select(n => Lean.Of(FabricPath.Constant(Working.Turned, n, 2).Advance!.Value, micro))
            .ToArray();
        var alternating = Enumerable.Range(1, 200).Select(n => Lean.Of(FabricPath.Alternating(Working.Turned, n, 2).Advance!.Value, micro))
            .ToArray();
        var halfTurn = Enumerable.Range(1, 200)
            .Select(n => Lean.Of(FabricPath.Constant(Working.Turned, n, 2, new PathOptions { TurnCost = 0.5 }).Advance!.Value, micro))
            .ToArray();
        Assert.All(constant, l => Assert.Equal(0, l.Micro % (2 * Unit)));
        Assert.All(alternating, l => Assert.NotEqual(0, l.Micro % (2 * Unit)));
        Assert.Contains(alternating, l => l.UnitsPerRow == 0.5);
        Assert.Contains(alternating, l => l.UnitsPerRow == -0.5);
        Assert.Contains(halfTurn, l => l.UnitsPerRow == 0.5);
    }

    [Fact]
    public void Law_6_an_odd_period_reaches_half_leans_at_half_of_odd_periods_plus_or_minus_one() =>
        Gen.Select(Gen.Int[2, 30], Gen.Int[1, 6]).Holds((half, m) =>
        {
            var (period, repeats) = (2 * half + 1, 2 * m - 1);
            return new[] { -1, 1 }.All(sign =>
                Lean.Of(
                    FabricPath.Constant(Working.Turned, (repeats * period + sign) / 2, 2).Advance!.Value,
                    period * Unit).UnitsPerRow == sign / 2.0);
        }, seed: 107, cases: 200);

    [Fact]
    public void Law_7_each_row_is_the_one_below_mirrored_about_stated_columns() =>
        Gen.Select(WholeRings, Gen.Int[1, 60], Gen.Int[0, 3], Gen.Int[-2, 2]).Holds((ring, n, turn, j) =>
        {
            var period = ring.Sum();
            var fabric = Work(ring, Working.Turned, n, 8, turn * Unit);
            return Enumerable.Range(0, 7).All(r =>
            {
                var doubledAxis = (r % 2 == 1 ? -(turn + 1) : 2 * n + turn - 1) + j * period;
                return Enumerable.Range(0, n).All(c => doubledAxis - c is var d && (d < 0 || d >= n || fabric[r][c] == fabric[r + 1][d]));
            });
        }, seed: 108, cases: 500);

    [Fact]
    public void Law_7_crossing_bands_are_solid_as_wide_as_the_section_and_as_tall_as_the_lean_says()
    {
        int[] ring = [5, 4, 6, 7];
        var fabric = Work(ring, Working.Turned, 67, 88);
        for (var j = 0; j < ring.Length; j++)
        {
            // Lean 1: a section of n stitches crosses itself n wide and n rows tall.
            var widest = Enumerable.Range(0, 87).Max(r => LongestRun(67, c => fabric[r][c] == j && fabric[r + 1][c] == j));
            var tallest = Enumerable.Range(0, 67).Max(c => LongestRun(88, r => fabric[r][c] == j));
            // The mirror axes stand between stitches where P is even, so a section of odd n meets itself on n − 1.
            Assert.Equal(ring[j] / 2 * 2, widest);
            Assert.InRange(tallest, ring[j] - 1, ring[j] + 1);
        }
        // Elsewhere two colours alternate by rows: never more than two colours in a column of one row pair.
        var alternating = Enumerable.Range(0, 86).Sum(r => Enumerable.Range(0, 67).Count(c => fabric[r][c] != fabric[r + 1][c]));
        Assert.InRange(alternating / (86.0 * 67), 0.5, 0.9);
    }

    [Fact]
    public void Law_8_one_start_matches_both_side_seams_only_where_the_closed_form_says() =>
        Gen.Select(WholeRings, Gen.Int[0, 30], Gen.Int[0, 2]).Holds((ring, over, hidden) =>
        {
            var period = ring.Sum();
            var n = period + over + 2 * hidden + 1;
            var front = Work(ring, Working.Turned, n, 2 * period);
            var (left, right) = (n - 1 - hidden, hidden);
            var matched = Enumerable.Range(0, period).Any(start =>
            {
                var back = Work(ring, Working.Turned, n, 2 * period, 0, start * Unit);
                return front.Zip(back).All(rows => rows.First[left] == rows.Second[right] && rows.Second[left] == rows.First[right]);
            });
            return matched || 2 * (n - 1 - 2 * hidden) % period != 0;
        }, seed: 109, cases: 150);

    [Fact]
    public void Law_8_without_it_no_start_matches_where_the_lean_visits_every_phase()
    {
        // P = 11, 2N = 2·15 leaves 8, prime to 11, so that each side stitch visits the whole ring; 2(N − 1) = 28 is no multiple of 11.
        int[] ring = [3, 2, 5, 1];
        var front = Work(ring, Working.Turned, 15, 44);
        Assert.DoesNotContain(Enumerable.Range(0, 11), start =>
        {
            var back = Work(ring, Working.Turned, 15, 44, 0, start * Unit);
            return front.Zip(back).All(rows => rows.First[14] == rows.Second[0] && rows.Second[14] == rows.First[0]);
        });
    }

    [Fact]
    public void Law_8_the_same_panel_wrong_side_out_matches_every_side_stitch() =>
        Gen.Select(WholeRings, Gen.Int[1, 60], HalfTurns.Where(t => t >= 0)).Holds((ring, n, turn) =>
        {
            // As worn: front columns from right to left, then the back, whose columns run the other way once it is turned over.
            var front = Work(ring, Working.Turned, n, 10, turn);
            var round = front.Select(row => row.Concat(row.Reverse()).ToArray());
            return round.All(row => row[n - 1] == row[n] && row[2 * n - 1] == row[0]);
        }, seed: 110, cases: 100);

    private static int LongestRun(int count, Func<int, bool> holds)
    {
        var (longest, run) = (0, 0);
        for (var i = 0; i < count; i++)
            longest = Math.Max(longest, run = holds(i) ? run + 1 : 0);
        return longest;
    }

    /// <summary>Stitches of yarn by which the first column lies off what would continue the last one round the tube.</summary>
    private static int JumpAtJoin(int[] ring, int n)
    {
        var path = FabricPath.Constant(Working.RoundsTurned, n, 2);
        var beyond = path.SpanAt(0, n - 1).From + Unit;
        return (int)(Math.Abs(Lean.Wrap(beyond - path.SpanAt(0, 0).From, ring.Sum() * Unit)) / Unit);
    }
}
