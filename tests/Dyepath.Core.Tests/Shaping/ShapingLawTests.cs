using CsCheck;
using Dyepath.Core.Fabrics;
using Dyepath.Core.Shaping;
using Dyepath.Core.Tests.Fabrics;
using Dyepath.Core.Yarns;

namespace Dyepath.Core.Tests.Shaping;

/// <summary>The laws of shaping (derived in docs/mathematics.md), each worked by the product and walked by brute force.</summary>
public sealed class ShapingLawTests
{
    private const long Unit = BruteShape.Unit;

    /// <summary>
    /// Two to six distinct colours of one to seven whole stitches, three or more where two would read the same there and back.
    /// </summary>
    private static readonly Gen<int[]> Rings = Gen.Int[1, 7].Array[3, 6];

    private static readonly Gen<long> HalfTurns = Gen.Long[-1, 4].Select(t => t * Unit / 2);

    /// <summary>How a shaped piece of one part compares with the brute-force walk and with the panel that is never shaped.</summary>
    private static (bool AsWalked, bool AsUncut, ShapedPiece Piece) Compare(
        int[] ring, int units, long turn, long slip, Outline outline, long start = 0)
    {
        var panel = Panel(ring, units, turn, slip, start);
        var piece = ShapedPiece.Work(panel, outline);
        var brute = new BruteShape(ring, turn, slip);
        var cells = brute.Walk(BruteShape.Whole(outline, start));
        var uncut = brute.Uncut(units, start);
        return (
            cells.All(c => piece.SectionAt(c.Key.Row, c.Key.Column) == c.Value),
            cells.All(c => uncut(c.Key.Row, c.Key.Column) == c.Value),
            piece);
    }

    private static SteadyPanel Panel(int[] ring, int units, long turn, long slip = 0, long start = 0) => SteadyPanel.Of(
        ColourRing.FromUnits([.. ring.Select(n => (double)n)]), units,
        new PathOptions { TurnCost = turn / (double)Unit, Start = start / (double)Unit }, slipStitchYarn: slip / (double)Unit);

    private static int KeepingStep(int period) => period % 2 == 0 ? period / 2 : period;

    /// <summary>Even rows end at the left, odd rows at the right.</summary>
    private static Outline Ends(int units, int rows, Func<int, int> unitsLeftAtTheEndOf)
    {
        var (first, last) = (0, units - 1);
        return Outline.ByRow([.. Enumerable.Range(0, rows).Select(row =>
        {
            if (row > 0 && row % 2 == 0)
                last -= unitsLeftAtTheEndOf(row);
            else if (row > 0)
                first += unitsLeftAtTheEndOf(row);
            return (first, last);
        })]);
    }

    [Fact]
    public void Law_9_units_left_at_row_ends_keep_every_colour_when_twice_as_many_are_whole_periods() =>
        Gen.Select(Rings, Gen.Int[0, 15], HalfTurns, Gen.Int[0, 2].Array[3, 11], Gen.Int[0, 9]).Holds((ring, over, turn, left, start) =>
        {
            var step = KeepingStep(ring.Sum());
            var units = left.Sum() * step + 1 + over;
            var outline = Ends(units, left.Length, row => left[row] * step);
            var (asWalked, asUncut, piece) = Compare(ring, units, turn, 0, outline, start * Unit);
            return asWalked && asUncut && piece.KeepsMotif && piece.Panel.KeepingStep == step;
        }, seed: 901, cases: 400);

    /// <summary>
    /// A row's lines lean as the panel's where its stitches lie as far off the panel's, along the yarn, as those of the row before; walked
    /// with a colour for every stitch, so that places are told by colours alone.
    /// </summary>
    [Fact]
    public void What_is_lost_of_the_motif_are_rows_whose_colours_move_otherwise_than_the_panels() =>
        Gen.Select(Gen.Int[2, 24], Gen.Int[0, 15], Gen.Int[0, 4].Array[3, 14]).Holds((period, over, left) =>
        {
            int[] ring = [.. Enumerable.Repeat(1, period)];
            var units = left.Sum() + 1 + over;
            var outline = Ends(units, left.Length, row => left[row]);
            var (_, _, piece) = Compare(ring, units, 0, 0, outline);
            var brute = new BruteShape(ring, 0);
            var cells = brute.Walk(BruteShape.Whole(outline, 0));
            var uncut = brute.Uncut(units);
            var (lost, all, before) = (0, 0, 0);
            foreach (var run in outline.ByRow())
            {
                // Of the yarn, not of the row: a row to the left takes it backwards.
                var off = cells[(run.FromRow, run.First)] - uncut(run.FromRow, run.First);
                var moved = ((off - before) % period + period) % period;
                lost += moved == 0 ? 0 : run.Units;
                all += run.Units;
                before = off;
            }
            return Math.Abs(piece.LostShare - lost / (double)all) < 1e-12 && (lost > 0 || piece.KeepsMotif);
        }, seed: 919, cases: 300);

    [Fact]
    public void Law_9_any_other_number_left_at_a_row_end_changes_a_colour_of_the_next_row() =>
        Gen.Select(Rings, Gen.Int[1, 40], HalfTurns, Gen.Int[1, 6], Gen.Int[0, 9]).Holds((ring, left, turn, row, start) =>
        {
            var period = ring.Sum();
            if (2 * left % period == 0)
                return true;
            // A whole period is still worked, so that a shift shows somewhere.
            var units = left + period;
            var (asWalked, asUncut, piece) = Compare(ring, units, turn, 0, Ends(units, 9, r => r == row ? left : 0), start * Unit);
            var found = piece.Breaks[0];
            return asWalked && !asUncut && !piece.KeepsMotif && found.Row == row + 1
                && found.Jump == Lean.Wrap(-2 * left * Unit, period * Unit) / (double)Unit
                && found.Edge == (row % 2 == 0 ? RowEdge.Left : RowEdge.Right) && found.Column == (row % 2 == 0 ? units - 1 - left : left);
        }, seed: 902, cases: 400);

    [Fact]
    public void Law_9_slip_stitches_back_keep_every_colour_only_over_whole_periods_less_the_yarn_they_pull() =>
        Gen.Select(Rings, Gen.Int[1, 30], HalfTurns, Gen.Int[1, 6], Gen.Int[0, 2].Select(s => s * Unit / 2))
        .Holds((ring, over, turn, row, slip) =>
        {
            var period = ring.Sum();
            var units = over + 2 * period;
            // Row r begins so many units in.
            var outline = Outline.ByRow([.. Enumerable.Range(0, 9).Select(r => (
                r >= row && row % 2 == 0 ? over : 0, units - 1 - (r >= row && row % 2 == 1 ? over : 0)))]);
            var (asWalked, asUncut, piece) = Compare(ring, units, turn, slip, outline);
            var keeps = 2 * over % period == 0 && (over * Unit - over * slip) % (period * Unit) == 0;
            var step = piece.Steps.Single(s => s.Act == ShapingAct.SlipStitchBack);
            return asWalked && asUncut == keeps && piece.KeepsMotif == keeps && step.Units == over
                && step.Yarn == over * slip / (double)Unit && step.Row == row;
        }, seed: 903, cases: 600);

    [Fact]
    public void Law_9_half_a_period_may_be_left_at_a_row_end_but_not_slip_stitched_over()
    {
        int[] ring = [5, 4, 6, 7];
        var atTheEnd = Outline.Of(6, [new(0, 0, 66), new(2, 0, 55)]);
        var atTheBeginning = Outline.Of(6, [new(0, 0, 66), new(3, 0, 55)]);
        Assert.True(Compare(ring, 67, 0, 0, atTheEnd).AsUncut);
        Assert.False(Compare(ring, 67, 0, 0, atTheBeginning).AsUncut);
        Assert.True(Compare(ring, 67, 0, 0, Outline.Of(6, [new(0, 0, 66), new(3, 0, 44)])).AsUncut);
        Assert.Equal((11, 22), (Panel(ring, 67, 0).KeepingStep, Panel(ring, 67, 0).KeepingSlip));
        // Half a unit of yarn a slip stitch: over 44 of them a whole period is pulled through.
        Assert.Equal(44, Panel(ring, 67, 0, Unit / 2).KeepingSlip);
    }

    [Fact]
    public void Law_10_rows_worked_on_over_companion_chains_keep_every_colour_when_twice_as_many_are_whole_periods() =>
        Gen.Select(Rings, Gen.Int[4, 25], HalfTurns, Gen.Int[-2, 1].Array[3, 11]).Holds((ring, over, turn, left) =>
        {
            var step = KeepingStep(ring.Sum());
            var units = over + left.Where(l => l > 0).Sum() * step;
            var (asWalked, asUncut, piece) = Compare(ring, units, turn, 0, Ends(units, left.Length, row => left[row] * step));
            var grown = -left.Skip(1).Where(l => l < 0).Sum() * step;
            return asWalked && asUncut && piece.KeepsMotif && piece.CompanionChains == grown;
        }, seed: 1001, cases: 400);

    [Fact]
    public void Law_10_any_other_number_of_chains_changes_a_colour() =>
        Gen.Select(Rings, Gen.Int[1, 30], HalfTurns, Gen.Int[1, 6]).Holds((ring, chains, turn, row) =>
        {
            var period = ring.Sum();
            var (asWalked, asUncut, piece) = Compare(ring, period + 1, turn, 0, Ends(period + 1, 9, r => r == row ? -chains : 0));
            return asWalked && asUncut == (2 * chains % period == 0) && piece.KeepsMotif == asUncut;
        }, seed: 1002, cases: 400);

    [Fact]
    public void Law_11_short_rows_that_leave_half_a_period_keep_the_long_part_and_jump_by_twice_the_lean_in_the_strip() =>
        Gen.Select(Rings, Gen.Int[2, 30], HalfTurns, Gen.Int[1, 4], Gen.Bool).Holds((ring, over, turn, pair, atLeft) =>
        {
            var period = ring.Sum();
            var (left, row) = (KeepingStep(period), 2 * pair + (atLeft ? 0 : 1));
            var units = left + over;
            var outline = OutlineShapes.ShortRows(units, 14, atLeft ? RowEdge.Left : RowEdge.Right, [(row, left)]);
            var (asWalked, asUncut, piece) = Compare(ring, units, turn, 0, outline);
            var part = piece.Parts[0];
            // The strip's last row worked this way lies below the pair, its next one above it, where one row pair less is between them.
            var column = atLeft ? units - 1 : 0;
            var (below, above) = (part.Path.SpanAt(row - 2, column).From, part.Path.SpanAt(row + 2, column).From);
            var lean = Lean.Of(FabricPath.Constant(Working.Turned, units, 2, piece.Panel.Options).Advance!.Value, period * Unit);
            var jump = Lean.Wrap(above - below - 2 * (units * Unit + turn), period * Unit);
            return asWalked && asUncut && piece.KeepsMotif
                && Enumerable.Range(row, 2).All(r => piece.SectionAt(r, column) is null)
                && piece.Steps.Count(s => s.Act == ShapingAct.WorkOverStanding && s.Row == row + 2 && s.Units == left) == 1
                && piece.CompanionChains == 0 && Lean.Wrap(jump - lean.Micro, period * Unit) == 0;
        }, seed: 1101, cases: 300);

    /// <summary>Pairs of any lengths, one after the other or apart, at either edge: the whole panel's colours, and a jump for each strip.</summary>
    [Fact]
    public void Law_11_pairs_of_several_lengths_keep_every_colour_and_jump_by_twice_the_lean_for_each_pair_skipped() =>
        Gen.Select(Rings, Gen.Int[1, 20], HalfTurns, Gen.Int[0, 3].Array[4, 9], Gen.Select(Gen.Bool, Gen.Int[0, 9])).Holds((ring, over, turn, steps, more) =>
        {
            var (atLeft, start) = more;
            var (period, step) = (ring.Sum(), KeepingStep(ring.Sum()));
            var units = 3 * step + over;
            // The first pair and the last are worked over all.
            steps[0] = steps[^1] = 0;
            var pairs = steps.Select((s, i) => (Row: 2 * i + (atLeft ? 0 : 1), Leave: s * step)).Where(p => p.Leave > 0).ToArray();
            var outline = OutlineShapes.ShortRows(units, 2 * steps.Length + 1, atLeft ? RowEdge.Left : RowEdge.Right, pairs);
            var (asWalked, asUncut, piece) = Compare(ring, units, turn, 0, outline, start * Unit);

            // Stitch by stitch: where each stands in the yarn, walked from the rows' lengths alone.
            var (at, places) = (0L, new Dictionary<(int Row, int Column), long>());
            var columns = BruteShape.Columns(outline);
            for (var row = 0; row < columns.Length; row++, at += turn)
            {
                for (var i = 0; i <= columns[row].Last - columns[row].First; i++, at += Unit)
                    places.Add((row, row % 2 == 0 ? columns[row].First + i : columns[row].Last - i), at);
            }
            var jumps = new List<(int Row, int Column, int Skipped, long Jump)>();
            foreach (var (row, column) in places.Keys.Where(c => c.Row > 0 && !places.ContainsKey((c.Row - 1, c.Column))))
            {
                var below = Enumerable.Range(1, row).First(n => places.ContainsKey((row - n, column)));
                // Of the row worked the same way that lies a pair below in the fabric as it is pulled together.
                var same = Enumerable.Range(below, row).First(n => n % 2 == 0 ? places.ContainsKey((row - n, column)) : false);
                var apart = places[(row, column)] - places[(row - same, column)];
                jumps.Add((row, column, below - 1, Lean.Wrap(apart - (same - below + 1) * (units * Unit + turn), period * Unit)));
            }
            var said = piece.Strips.SelectMany(s => Enumerable.Range(0, s.Units).Select(i => (
                s.Row, Column: s.Column + (atLeft ? -i : i), s.Skipped, Jump: (long)Math.Round(s.Jump * Unit)))).ToArray();
            var lean = Lean.Wrap(2 * (units * Unit + turn), period * Unit);
            return asWalked && asUncut && piece.KeepsMotif && jumps.Order().SequenceEqual(said.Order())
                && said.All(s => Lean.Wrap(s.Jump - s.Skipped / 2 * lean, period * Unit) == 0)
                && columns.Count(c => atLeft ? c.Last == units - 1 : c.First == 0) == columns.Length - 2 * pairs.Length;
        }, seed: 1103, cases: 300);

    [Fact]
    public void Law_11_short_rows_that_leave_another_number_break_the_long_part() =>
        Gen.Select(Rings, Gen.Int[1, 20], HalfTurns).Holds((ring, left, turn) =>
        {
            var period = ring.Sum();
            var outline = OutlineShapes.ShortRows(left + period, 10, RowEdge.Left, [(4, left)]);
            var (asWalked, asUncut, _) = Compare(ring, left + period, turn, 0, outline);
            return asWalked && asUncut == (2 * left % period == 0);
        }, seed: 1102, cases: 300);

    [Fact]
    public void Law_12_after_a_cut_sides_that_differ_from_the_panel_by_half_periods_go_on_exactly_as_below() =>
        Gen.Select(Rings, Gen.Int[0, 99], Gen.Int[1, 4], Gen.Int[1, 4], Gen.Select(HalfTurns, Gen.Int[2, 7], Gen.Int[0, 9]))
        .Holds((ring, over, i, j, more) =>
        {
            var (turn, row, start) = more;
            var step = KeepingStep(ring.Sum());
            // N′ = N − i steps and N″ = N − j steps, j of i at most; the neck is what they leave of N.
            var right = over % step + 1;
            var units = right + i * step;
            var left = units - Math.Min(i, j) * step;
            if (right + left >= units)
                return true;
            var (asWalked, asUncut, piece) = Cut(ring, units, turn, row, (right, left), start * Unit);
            return asWalked && asUncut && piece.KeepsMotif && piece.Panel.LeanOf(right) == piece.Panel.LeanOf(units);
        }, seed: 1201, cases: 400);

    [Fact]
    public void Law_12_a_neck_cut_at_half_periods_keeps_every_colour_and_any_other_changes_one()
    {
        // P = 22, N = 67: sides of 23 and 23, or 12 and 34, leave 21 between; each side is 67 less a multiple of 11.
        int[] ring = [5, 4, 6, 7];
        foreach (var row in (int[])[10, 11])
        {
            foreach (var (right, left) in ((int, int)[])[(23, 23), (12, 34), (34, 23)])
                Assert.True(Cut(ring, 67, 0, row, (right, left)) is { AsWalked: true, AsUncut: true, Piece.KeepsMotif: true });
            foreach (var (right, left) in ((int, int)[])[(22, 23), (23, 24), (25, 25)])
                Assert.True(Cut(ring, 67, 0, row, (right, left)) is { AsWalked: true, AsUncut: false, Piece.KeepsMotif: false });
        }
    }

    [Fact]
    public void Law_12_the_first_row_of_each_side_goes_on_as_below_whatever_its_count() =>
        Gen.Select(Rings, Gen.Int[1, 20], Gen.Int[1, 20], Gen.Int[1, 20], Gen.Select(HalfTurns, Gen.Int[2, 7]))
        .Holds((ring, right, neck, left, more) =>
        {
            var (turn, row) = more;
            var units = right + neck + left;
            var (asWalked, _, piece) = Cut(ring, units, turn, row, (right, left));
            var uncut = new BruteShape(ring, turn).Uncut(units);
            // The side that is joined on begins at its own place; the other one has come round the last turn of the row below.
            var joined = piece.Parts.Single(p => p.Index > 0 && !p.Continues);
            var run = joined.Outline.At(0);
            return asWalked && Enumerable.Range(run.First, run.Units).All(c => piece.SectionAt(row, c) == uncut(row, c));
        }, seed: 1202, cases: 300);

    [Fact]
    public void Law_13_a_bias_panel_keeps_the_lean_of_one_family_and_changes_the_others_by_its_step() =>
        Gen.Select(Rings, Gen.Int[14, 40], HalfTurns, Gen.Int[1, 6], Gen.Bool).Holds((ring, units, turn, step, towardsLeft) =>
        {
            var (asWalked, _, piece) = Compare(
                ring, units, turn, 0, OutlineShapes.Bias(units, 12, step, towardsLeft ? RowEdge.Left : RowEdge.Right));
            var path = piece.Parts[0].Path;
            var before = 2 * (units * Unit + turn);
            // A pair has moved by one step less at its left-hand turn than at its right-hand one; the rows between those keep their lean.
            return asWalked
                && Enumerable.Range(0, 5).All(k => path.AdvanceAt(2 * k).Micro == before + (towardsLeft ? -2 : 2) * step * Unit)
                && Enumerable.Range(0, 5).All(k => path.AdvanceAt(2 * k + 1).Micro == before)
                && piece.CompanionChains == Enumerable.Range(1, 11).Count(r => r % 2 == (towardsLeft ? 0 : 1)) * step;
        }, seed: 1301, cases: 300);

    [Fact]
    public void Law_13_decreases_worked_into_stitches_change_nothing_along_the_yarn() =>
        // N constant, every row a column further over: the colours along each row are those of the upright panel.
        Gen.Select(Rings, Gen.Int[3, 40], HalfTurns, Gen.Int[1, 2]).Holds((ring, units, turn, shear) =>
        {
            var options = new PathOptions { TurnCost = turn / (double)Unit };
            var colours = ColourRing.FromUnits([.. ring.Select(n => (double)n)]);
            var upright = Fabric.Work(colours, FabricPath.Constant(Working.Turned, units, 10, options));
            var sheared = Fabric.Work(colours, FabricPath.RowByRow(
                Working.Turned, [.. Enumerable.Repeat(units, 10)], options, [.. Enumerable.Range(0, 10).Select(r => r * shear)]));
            return Enumerable.Range(0, 10).All(r => upright.Row(r).SequenceEqual(sheared.Row(r)));
        }, seed: 1302, cases: 200);

    [Fact]
    public void Law_14_tapering_by_ones_moves_the_lean_by_one_a_stitch_and_comes_back_every_half_period() =>
        Gen.Select(Rings, Gen.Int[40, 60], HalfTurns).Holds((ring, units, turn) =>
        {
            var period = ring.Sum() * Unit;
            var (asWalked, _, piece) = Compare(ring, units, turn, 0, OutlineShapes.Taper(units, 30, 1));
            // Across both edges of a pair two stitches are lost, so that two rows later the lean is two less.
            var leans = Enumerable.Range(0, 28).Select(r => piece.Parts[0].Path.AdvanceAt(r)).ToArray();
            return asWalked
                && Enumerable.Range(0, 27).All(r => Lean.Wrap(leans[r + 1].Micro - leans[r].Micro + 2 * Unit, period) == 0)
                && Enumerable.Range(1, 10).All(k => piece.Panel.LeanOf(units - k).Micro is var lean
                    && Lean.Wrap(lean - piece.Panel.LeanOf(units).Micro + 2 * k * Unit, period) == 0);
        }, seed: 1401, cases: 200);

    [Fact]
    public void Law_14_whole_counts_in_the_argyle_window_are_rare()
    {
        // At P = 22 the leans of N, N − 1, … run through 11 values; ±1 are two of them: 2/11 = 0.18.
        var panel = Panel([5, 4, 6, 7], 83, 0);
        var argyle = Enumerable.Range(0, 11).Count(k => Math.Abs(panel.LeanOf(83 - k).UnitsPerRow) == 1);
        Assert.Equal(0.18, argyle / 11.0, 0.005);
        Assert.Equal(panel.LeanOf(83), panel.LeanOf(83 - 11));
    }

    [Fact]
    public void Law_15_rounds_that_grow_by_whole_periods_keep_the_lean_and_the_colours_and_others_do_not() =>
        Gen.Select(Rings, Gen.Int[0, 20], HalfTurns, Gen.Int[1, 30], Gen.Int[1, 6]).Holds((ring, over, turn, more, round) =>
        {
            var period = ring.Sum();
            var units = period + over;
            var options = new PathOptions { TurnCost = turn / (double)Unit };
            var grown = FabricPath.RowByRow(
                Working.Rounds, [.. Enumerable.Range(0, 10).Select(r => r < round ? units : units + more)], options);
            var fabric = Fabric.Work(ColourRing.FromUnits([.. ring.Select(n => (double)n)]), grown);
            var brute = new BruteFabric([.. ring.Select(n => n * Unit)], [.. Enumerable.Range(0, ring.Length)])
                .Work(Working.Rounds, [.. Enumerable.Repeat(units, 10)], turn, 0);
            var asSteady = Enumerable.Range(0, 10).All(r => Enumerable.Range(0, units).All(c => fabric[r, c] == brute[r][c].Section));
            var sameLean = Lean.Of(grown.AdvanceAt(8), period * Unit) == Lean.Of(grown.AdvanceAt(0), period * Unit);
            return sameLean == (more % period == 0 || round == 9) && (asSteady || more % period != 0);
        }, seed: 1501, cases: 300);

    [Fact]
    public void Law_15_a_constant_outline_in_rounds_is_the_steady_panel()
    {
        var panel = SteadyPanel.Of(ColourRing.FromUnits([5, 4, 6, 7]), 23, new PathOptions { TurnCost = 0.5 }, Working.Rounds);
        var piece = ShapedPiece.Work(panel, Outline.Rectangle(23, 12));
        var brute = new BruteFabric([5 * Unit, 4 * Unit, 6 * Unit, 7 * Unit], [0, 1, 2, 3])
            .Work(Working.Rounds, [.. Enumerable.Repeat(23, 12)], Unit / 2, 0);
        Assert.True(piece.KeepsMotif);
        Assert.All(Enumerable.Range(0, 12), r =>
            Assert.All(Enumerable.Range(0, 23), c => Assert.Equal(brute[r][c].Section, piece.SectionAt(r, c))));
        Assert.Throws<ArgumentException>(() => ShapedPiece.Work(panel, Outline.Of(12, [new(0, 0, 22), new(4, 0, 11)])));
    }

    [Fact]
    public void Law_16_a_row_worked_until_the_sequence_has_come_round_m_times_and_one_stitch_more_leans_by_one() =>
        Gen.Select(Rings, Gen.Int[1, 4], Gen.Int[0, 9]).Holds((ring, m, start) =>
        {
            // The maker sees colours only: she works until the first one begins for the m-th time again, and one stitch into it.
            var brute = new BruteFabric([.. ring.Select(n => n * Unit)], [.. Enumerable.Range(0, ring.Length)]);
            var (worked, come, shown) = (1, 0, 0);
            while (come < m)
            {
                var next = brute.Show(worked++ * Unit, Unit).Section;
                come += next == 0 && shown != 0 ? 1 : 0;
                shown = next;
            }
            return worked == m * ring.Sum() + 1 && Panel(ring, worked, 0, 0, start * Unit).LeanOf(worked) is var lean
                && Lean.Wrap(lean.Micro - 2 * Unit, ring.Sum() * Unit) == 0;
        }, seed: 1601, cases: 200);

    /// <summary>A panel cut after so many rows into two sides at its edges, worked and walked.</summary>
    private static (bool AsWalked, bool AsUncut, ShapedPiece Piece) Cut(
        int[] ring, int units, long turn, int row, (int Right, int Left) sides, long start = 0)
    {
        var panel = Panel(ring, units, turn, 0, start);
        PartOutline Side(int first, int last, bool goesOn) =>
            new(row, Outline.Of(8, [new(0, first, last)])) { Below = 0, Continues = goesOn };
        // An even row begins at the right, so that there the right-hand side goes on.
        var fromRight = row % 2 == 0;
        var (right, left) = (Side(0, sides.Right - 1, fromRight), Side(units - sides.Left, units - 1, !fromRight));
        var piece = ShapedPiece.Work(
            panel, [new PartOutline(0, Outline.Rectangle(units, row)), fromRight ? right : left, fromRight ? left : right]);

        var brute = new BruteShape(ring, turn);
        var uncut = brute.Uncut(units, start);
        // Where each row of the uncut panel begins, by the yarn of the rows before it.
        var at = start + row * (units * Unit + turn);
        var (firstSide, secondSide) = fromRight
            ? (new BrutePart(row, false, at, Rows(0, sides.Right - 1)),
                new BrutePart(row, false, at + (units - sides.Left) * Unit, Rows(units - sides.Left, units - 1)))
            : (new BrutePart(row, true, at, Rows(units - sides.Left, units - 1)),
                new BrutePart(row, true, at + (units - sides.Right) * Unit, Rows(0, sides.Right - 1)));
        var cells = brute.Walk(new BrutePart(0, false, start, [.. Enumerable.Repeat((0, units - 1), row)]), firstSide, secondSide);
        return (
            cells.All(c => piece.SectionAt(c.Key.Row, c.Key.Column) == c.Value),
            cells.All(c => uncut(c.Key.Row, c.Key.Column) == c.Value),
            piece);

        static (int, int)[] Rows(int first, int last) => [.. Enumerable.Repeat((first, last), 8)];
    }
}
