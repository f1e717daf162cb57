using CsCheck;
using Dyepath.Core.Fabrics;
using Dyepath.Core.Quantities;
using Dyepath.Core.Shaping;
using Dyepath.Core.Yarns;

namespace Dyepath.Core.Tests.Shaping;

public sealed class ShapePlannerTests
{
    private const long Unit = BruteShape.Unit;

    private static readonly ColourRing TidalRing = ColourRing.FromUnits([5, 4, 6, 7]);

    /// <summary>Edges in tenths of a unit, right and left of each row, on a panel of a few units.</summary>
    private static readonly Gen<Small> Smalls =
        Gen.Select(
            Gen.Select(Gen.Int[3, 8], Gen.Int[2, 5], Gen.Int[0, 2], Gen.Int[0, 2]),
            Gen.Select(Gen.Int[-15, 45], Gen.Int[-15, 45]).Array[2, 5],
            Gen.Select(Gen.Select(Gen.Bool, Gen.Bool), Gen.Int[1, 2], Gen.Int[0, 12], Gen.Int[0, 3]))
        .Select((yarn, edges, how) => new Small(
            yarn.Item1, yarn.Item2, yarn.Item3 * Unit / 2, yarn.Item4 * Unit / 2,
            [.. edges.Select(e => e.Item1 * Unit / 10)], [.. edges.Select(e => (yarn.Item1 * 10 - e.Item2) * Unit / 10)],
            new ShapeOptions
            {
                Chains = how.Item1.Item1,
                SlipStitches = how.Item1.Item2,
                LeastUnits = how.Item2,
                Tolerance = how.Item3 / 4.0,
                StepWorth = how.Item4 * 0.75,
                StepSpares = yarn.Item4 * 0.5,
            }));

    [Fact]
    public void No_outline_that_keeps_the_motif_is_nearer_than_the_planned_one() =>
        Smalls.Holds(small =>
        {
            var plan = small.Plan(small.Options with { Tolerance = null });
            var best = small.Exhaustive(null).Best();
            var cost = small.CostOf(plan.Piece, null);
            Assert.Equal(best.Cost.Key, cost.Key);
            Assert.True(plan.Piece.KeepsMotif);
            Assert.Equal(cost.Away / (double)Unit, plan.Distance, 1e-9);
            Assert.Null(plan.Nearer);
        }, seed: 920, cases: 700);

    [Fact]
    public void Where_that_is_not_near_enough_no_outline_breaks_the_motif_less_than_the_one_offered() =>
        Smalls.Holds(small =>
        {
            var plan = small.Plan(small.Options);
            var tolerance = ColourRing.ToMicro(small.Options.Tolerance!.Value);
            Assert.Equal(Math.Abs(plan.Worst.Units) > small.Options.Tolerance, plan.Nearer is not null);
            if (plan.Nearer is { } nearer)
                Assert.Equal(small.Exhaustive(tolerance).Best().Cost.Key, small.CostOf(nearer.Piece, tolerance).Key);
        }, seed: 921, cases: 400);

    /// <summary>A slope whose panel has a turn of the yarn that no step makes up for: few steps where each has something to spare, many where none has.</summary>
    [Fact]
    public void Where_steps_have_to_spare_something_there_are_fewer_of_them()
    {
        var panel = SteadyPanel.Of(ColourRing.FromUnits([5, 4, 6, 4]), 40);
        SilhouettePart[] slope = [new(0, 40, EdgeLine.Upright(0), Line((0, 40), (40, 25)))];
        int Steps(double spares) => ShapePlanner.Plan(panel, slope, new ShapeOptions { Tolerance = 2.5, StepSpares = spares })!.Nearer!.Piece.Steps
            .Count(s => s.Units > 0 && s.Act != ShapingAct.Begin);
        Assert.True(Steps(8) < Steps(0), $"{Steps(8)}, {Steps(0)}");
        Assert.Throws<ArgumentOutOfRangeException>(() => Steps(101));
    }

    [Fact]
    public void The_small_silhouettes_try_both_edges_together_too()
    {
        var (together, broken, slipped, grown) = (0, 0, 0, 0);
        Smalls.Holds(small =>
        {
            var plan = small.Plan(small.Options);
            // A point that no two edges by themselves would leave anything of.
            together +=
                Enumerable.Range(0, small.Right.Length).Any(r => small.Left[r] - small.Right[r] < small.Options.LeastUnits * Unit) ? 1 : 0;
            broken += plan.Nearer is { Piece.KeepsMotif: false } ? 1 : 0;
            slipped += plan.Piece.Steps.Count(s => s.Act == ShapingAct.SlipStitchBack);
            grown += plan.Piece.CompanionChains;
        }, seed: 922, cases: 300);
        Assert.True(together > 30 && broken > 30 && slipped > 10 && grown > 10, $"{together}, {broken}, {slipped}, {grown}");
    }

    /// <summary>The side of a neck that is cut along a curve or a slope, with an edge that goes in and out again, as one has worked sideways.</summary>
    [Fact]
    public void No_stepped_neck_is_nearer_to_its_curve_than_the_planned_one() =>
        Gen.Select(Gen.Int[6, 9], Gen.Int[1, 4], Gen.Int[0, 1], Gen.Int[2, 5], Gen.Int[5, 7], Gen.Bool).Holds((units, half, turn, depth, rows, isRound) =>
        {
            var into = Enumerable.Range(0, rows).Select(r => Math.Abs((2 * r + 1.0) / rows - 1)).Select(off => isRound ? Math.Sqrt(1 - off * off) : 1 - off);
            var small = new Small(
                units, 2 * half, turn * Unit / 2, 0, [.. Enumerable.Repeat(0L, rows)], [.. into.Select(i => ColourRing.ToMicro(units - i * Math.Min(depth, units - 2)))],
                new ShapeOptions { LeastUnits = 1, StepWorth = 0.75 });
            var plan = small.Plan(small.Options);
            Assert.True(plan.Piece.KeepsMotif);
            Assert.Equal(small.Exhaustive(null).Best().Cost.Key, small.CostOf(plan.Piece, null).Key);
        }, seed: 923, cases: 60);

    /// <summary>Every outline within a small panel whose edges lie whole steps inside it is tried.</summary>
    [Fact]
    public void Where_the_first_row_may_begin_anywhere_no_outline_within_the_panel_is_nearer() =>
        Gen.Select(
            Gen.Select(Gen.Int[1, 3], Gen.Int[3, 9], Gen.Int[2, 6], Gen.Int[1, 3]),
            Gen.Select(Gen.Int[-10, 100], Gen.Int[-10, 100]).Array[6], Gen.Int[0, 3]).Holds((of, edges, worth) =>
        {
            var (step, units, rows, least) = of;
            // Two colours of one length: a period of twice the step.
            var panel = SteadyPanel.Of(ColourRing.FromUnits([step, step]), units);
            long[] right = [.. edges.Select(e => e.Item1 * Unit / 10)], left = [.. edges.Select(e => e.Item2 * Unit / 10)];
            var options = new ShapeOptions { WithinPanel = true, LeastUnits = Math.Min(least, units), StepWorth = worth };
            var plan = ShapePlanner.Plan(
                panel, [new(0, rows, EdgeLine.ByRow([.. right[..rows].Select(ColourRing.ToUnits)]), EdgeLine.ByRow([.. left[..rows].Select(ColourRing.ToUnits)]))], options)!;
            var outline = plan.Piece.Parts[0].Outline;
            var uncut = Fabric.Work(panel.Ring, FabricPath.Constant(Working.Turned, units, rows));
            for (var row = 0; row < rows; row++)
            {
                for (var column = 0; column < units; column++)
                {
                    if (plan.Piece.SectionAt(row, column - plan.FirstColumn) is { } section && section != uncut[row, column])
                        return false;
                }
            }
            var steps = Enumerable.Range(1, rows - 1).Sum(r => (outline.At(r).First != outline.At(r - 1).First ? 1 : 0) + (outline.At(r).Last != outline.At(r - 1).Last ? 1 : 0));
            var cost = plan.Distance * Unit + steps * worth * Unit;
            return plan.Piece.KeepsMotif && Math.Abs(cost - Least(0, 0, 0)) < 1;

            double Least(int row, int first, int last)
            {
                if (row == rows)
                    return 0;
                var best = double.PositiveInfinity;
                for (var a = 0; a < units; a += step)
                {
                    for (var b = units - 1; b >= a + options.LeastUnits - 1; b -= step)
                    {
                        // A row begins where the one before ended.
                        if (row > 0 && (row % 2 == 0 ? a != first : b != last))
                            continue;
                        // The edge that it ends at passes by a row that must be workable too.
                        var stepped = row > 0 && (a != first || b != last) ? worth * Unit : 0;
                        best = Math.Min(best, Math.Abs(a * Unit - right[row]) + Math.Abs((b + 1) * Unit - left[row]) + stepped + Least(row + 1, a, b));
                    }
                }
                return best;
            }
        }, seed: 923, cases: 300);

    [Fact]
    public void A_crown_that_comes_to_a_point_keeps_a_stitch_in_every_row()
    {
        var plan = ShapePlanner.Plan(
            SteadyPanel.Of(TidalRing, 67),
            [new SilhouettePart(0, 60, Line((0, 0), (10, 0), (60, 33.5)), Line((0, 67), (10, 67), (60, 33.5)))],
            new ShapeOptions { LeastUnits = 3 })!;
        Assert.True(plan.Piece.KeepsMotif);
        var outline = plan.Piece.Parts[0].Outline;
        Assert.All(Enumerable.Range(0, 60), r => Assert.True(outline.At(r).Units >= 3));
        // Steps of 11 that follow a slope lie 5.5 off at most, and a row's end waits for its turn: 0.67 units more.
        Assert.InRange(Math.Abs(plan.Worst.Units), 0, 11);
    }

    [Fact]
    public void An_armhole_and_a_neck_are_planned_part_by_part()
    {
        var panel = SteadyPanel.Of(TidalRing, 89);
        var (right, left) = (Line((0, 0), (50, 0), (50, 10), (56, 14)), Line((0, 89), (50, 89), (50, 79), (56, 75)));
        SilhouettePart[] silhouette =
        [
            new(0, 76, right, left),
            new(76, 14, right, Line((0, 33))) { Below = 0 },
            new(76, 14, Line((0, 56)), left) { Below = 0 },
        ];
        var plan = ShapePlanner.Plan(panel, silhouette)!;
        Assert.True(plan.Piece.KeepsMotif);
        Assert.Equal([false, true, false], plan.Piece.Parts.Select(p => p.Continues));
        // Eleven at each edge; the neck is 89 less multiples of 11 less the sides: each neck edge at a multiple of 11 from the panel's.
        Assert.Equal((11, 77), (plan.Piece.Parts[0].Outline.At(75).First, plan.Piece.Parts[0].Outline.At(75).Last));
        Assert.Equal((11, 33), (plan.Piece.Parts[1].Outline.At(0).First, plan.Piece.Parts[1].Outline.At(0).Last));
        Assert.Equal((55, 77), (plan.Piece.Parts[2].Outline.At(0).First, plan.Piece.Parts[2].Outline.At(0).Last));
        var uncut = Fabric.Work(TidalRing, FabricPath.Constant(Working.Turned, 89, 90));
        for (var row = 0; row < 90; row++)
            Assert.All(Enumerable.Range(0, 89), c => Assert.True(
                plan.Piece.SectionAt(row, c) is null || plan.Piece.SectionAt(row, c) == uncut[row, c]));
        Assert.Equal(
            [
                ShapingAct.Begin, ShapingAct.LeaveUnworked, ShapingAct.LeaveUnworked, ShapingAct.LeaveUnworked,
                ShapingAct.FastenOff, ShapingAct.Join,
                ShapingAct.FastenOff,
            ],
            plan.Piece.Steps.Select(s => s.Act));
    }

    [Fact]
    public void A_part_that_goes_on_finds_the_row_below_in_step()
    {
        // Row 10 ends at the left, where 5 are left if it is the last; a part that goes on there would break.
        var line = Line((0, 67), (10, 67), (10, 62), (30, 62));
        SilhouettePart bottom = new(0, 11, Line((0, 0)), line);
        Assert.Equal(62, ShapePlanner.Plan(SteadyPanel.Of(TidalRing, 67), [bottom])!.Piece.Parts[0].Outline.At(10).Units);
        var plan = ShapePlanner.Plan(SteadyPanel.Of(TidalRing, 67), [bottom, new(11, 6, Line((0, 0)), line) { Below = 0 }])!;
        Assert.True(plan.Piece.KeepsMotif);
        Assert.Equal(67, plan.Piece.Parts[0].Outline.At(10).Units);
    }

    [Fact]
    public void Without_whole_steps_the_panel_stays_and_a_break_is_offered_with_its_place()
    {
        var panel = SteadyPanel.Of(ColourRing.FromUnits([5.2, 4.1, 6, 7.3]), 60);
        SilhouettePart[] silhouette = [new(0, 40, Line((0, 0)), Line((0, 60), (20, 60), (20, 48), (40, 48)))];
        var plan = ShapePlanner.Plan(panel, silhouette, new ShapeOptions { Tolerance = 2 })!;
        Assert.Single(plan.Piece.Parts[0].Outline.Runs);
        Assert.Equal(new EdgeMiss(0, 20, RowEdge.Left, 12), plan.Worst);
        Assert.Equal(12 * 20, plan.Distance, 1e-9);
        // Leaving 11 jumps by 22 of 22.6, leaving 12 by 24: 0.6 against 1.4, and 10 by 2.6.
        var found = Assert.Single(plan.Nearer!.Piece.Breaks);
        Assert.Equal((21, RowEdge.Left, 48), (found.Row, found.Edge, found.Column));
        Assert.Equal(0.6, found.Jump!.Value, 1e-9);
    }

    [Fact]
    public void Where_no_outline_keeps_the_motif_the_plan_itself_says_its_breaks()
    {
        // C = 22.6: a side whose neck edge is in step would be as wide as the panel.
        var panel = SteadyPanel.Of(ColourRing.FromUnits([5.2, 4.1, 6, 7.3]), 67);
        var (right, left) = (Line((0, 0)), Line((0, 67)));
        SilhouettePart[] silhouette =
        [
            new(0, 20, right, left), new(20, 8, right, Line((0, 24))) { Below = 0 }, new(20, 8, Line((0, 44)), left) { Below = 0 },
        ];
        Assert.Null(ShapePlanner.Plan(panel, silhouette));
        var plan = ShapePlanner.Plan(panel, silhouette, new ShapeOptions { Tolerance = 1 })!;
        Assert.Null(plan.Nearer);
        Assert.Equal([1, 2], plan.Piece.Breaks.Select(b => b.Part));
        Assert.InRange(Math.Abs(plan.Worst.Units), 0, 1);
    }

    [Fact]
    public void Chains_grow_a_piece_beyond_its_first_row_where_they_may()
    {
        SilhouettePart[] silhouette = [new(0, 40, Line((0, 0), (40, -20)), Line((0, 67), (40, 87)))];
        var plan = ShapePlanner.Plan(SteadyPanel.Of(TidalRing, 67), silhouette)!;
        Assert.True(plan.Piece.KeepsMotif);
        Assert.Equal((-22, 88, 44), (plan.Piece.FirstColumn, plan.Piece.LastColumn, plan.Piece.CompanionChains));
        Assert.Single(
            ShapePlanner.Plan(SteadyPanel.Of(TidalRing, 67), silhouette, new ShapeOptions { Chains = false })!.Piece.Parts[0].Outline.Runs);
    }

    [Fact]
    public void Sides_that_leave_each_other_no_room_are_no_plan()
    {
        var (right, left) = (Line((0, 0)), Line((0, 20)));
        Assert.Null(ShapePlanner.Plan(
            SteadyPanel.Of(TidalRing, 20),
                [new(0, 10, right, left), new(10, 4, right, left) { Below = 0 }, new(10, 4, Line((0, 19)), left) { Below = 0 }]));
    }

    [Fact]
    public void An_edge_runs_straight_from_corner_to_corner_and_is_looked_at_half_way_up_each_row()
    {
        var line = Line((2, 10), (4, 20), (4, 25), (6, 25));
        Assert.Equal([10, 10, 12.5, 17.5, 25, 25, 25], Enumerable.Range(0, 7).Select(r => ColourRing.ToUnits(line.At(r))));
        Assert.Equal([3, 5, 5], Enumerable.Range(4, 3).Select(r => ColourRing.ToUnits(EdgeLine.ByRow([3, 5], 4).At(r))));
        var centimetres = EdgeLine.FromLengths(
            [(Length.FromCentimetres(0), Length.FromCentimetres(50)), (Length.FromCentimetres(10), Length.FromCentimetres(40))],
            Length.FromCentimetres(0.5), Length.FromCentimetres(1));
        Assert.Equal(99, ColourRing.ToUnits(centimetres.At(0)));
        Assert.Throws<ArgumentException>("points", () => Line((3, 1), (2, 1)));
        Assert.Throws<ArgumentOutOfRangeException>("points", () => EdgeLine.Of([]));
        Assert.Throws<ArgumentOutOfRangeException>("points", () => Line((3, double.NaN)));
        Assert.Throws<ArgumentOutOfRangeException>("points", () => EdgeLine.Upright(2_001));
    }

    [Fact]
    public void What_is_no_silhouette_is_refused()
    {
        var (right, left) = (Line((0, 0)), Line((0, 20)));
        void Refused(params SilhouettePart[] parts) =>
            Assert.ThrowsAny<ArgumentException>(() => ShapePlanner.Plan(SteadyPanel.Of(TidalRing, 20), parts));
        Refused();
        Refused(new SilhouettePart(1, 4, right, left));
        Refused(new SilhouettePart(0, 0, right, left));
        Refused(new SilhouettePart(0, 5_001, right, left));
        Refused(new SilhouettePart(0, 4, right, left) { Below = 0 });
        Refused(new SilhouettePart(0, 4, right, left), new SilhouettePart(4, 4, right, left));
        Refused(new SilhouettePart(0, 4, right, left), new SilhouettePart(5, 4, right, left) { Below = 0 });
        Refused(new SilhouettePart(0, 4, right, left), new SilhouettePart(4, 4, right, left) { Below = 1 });
        Assert.Throws<ArgumentException>("panel", () => ShapePlanner.Plan(
            SteadyPanel.Of(TidalRing, 20, working: Working.Rounds), [new SilhouettePart(0, 4, right, left)]));
        Assert.Throws<ArgumentOutOfRangeException>(() => ShapePlanner.Plan(
            SteadyPanel.Of(TidalRing, 20), [new SilhouettePart(0, 4, right, left)], new ShapeOptions { Tolerance = double.NaN }));
    }

    [Fact]
    public void A_neck_is_fitted_by_the_counts_of_its_two_sides()
    {
        // Law 12 at P = 22, N = 67: sides are 67 less multiples of 11, so that necks are 10, 21, 32, …
        var panel = SteadyPanel.Of(TidalRing, 67);
        var choices = NeckFitter.Choices(panel, new OutlineRun(0, 0, 66), 19);
        Assert.Equal(new NeckChoice(23, 23, 21, 2, 0, 0), choices[0]);
        Assert.Equal(6, choices.Count(c => c.KeepsMotif));
        Assert.All(choices.Take(6), c => Assert.True((67 - c.Right) % 11 == 0 && (67 - c.Left) % 11 == 0));
        // Exactly as wished with two sides of 24, where 2 · (67 − 24) = 86 = 4 · 22 − 2, so that each turn at the neck jumps by two.
        Assert.Equal(new NeckChoice(24, 24, 19, 0, 2, 2), choices[6]);
        Assert.Equal(new NeckChoice(23, 24, 20, 1, 0, 2), choices[7]);
        Assert.Equal(12, choices.Length);
    }

    [Fact]
    public void Necks_are_all_that_nothing_betters() =>
        Gen.Select(Gen.Int[1, 6].Array[2, 4], Gen.Int[6, 24], Gen.Int[0, 100], Gen.Int[0, 100]).Holds((ring, units, wish, at) =>
        {
            var panel = SteadyPanel.Of(ColourRing.FromUnits([.. ring.Select(n => (double)n)]), units);
            var (neck, centre) = (units * wish / 100.0, units * at / 100.0);
            var choices = NeckFitter.Choices(panel, new OutlineRun(0, 0, units - 1), neck, centre, 100);
            var period = ring.Sum();
            int Jump(int side) => 2 * (units - side) % period is var rest && 2 * rest > period ? period - rest : rest;
            double Away(int right, int left) => Math.Abs(right - (centre - neck / 2)) + Math.Abs(units - left - (centre + neck / 2));
            var all = Enumerable.Range(1, units - 2).SelectMany(r => Enumerable.Range(1, units - 1 - r).Select(l => (r, l))).ToList();
            Assert.All(choices, c =>
            {
                Assert.Equal(Away(c.Right, c.Left), c.Away, 1e-9);
                Assert.Equal((Jump(c.Right), Jump(c.Left)), (Math.Abs(c.RightJump), Math.Abs(c.LeftJump)));
                Assert.Equal(units, c.Right + c.Neck + c.Left);
            });
            var keeping = all.Where(c => Jump(c.r) == 0 && Jump(c.l) == 0).Select(c => Away(c.r, c.l)).ToList();
            Assert.Equal(keeping.Count > 0, choices.Any(c => c.KeepsMotif));
            if (keeping.Count > 0)
                Assert.Equal(keeping.Min(), choices[0].Away, 1e-9);
        }, seed: 930, cases: 200);

    private static EdgeLine Line(params (double Row, double Units)[] points) =>
        EdgeLine.Of([.. points.Select(p => new EdgePoint(p.Row, p.Units))]);

    /// <param name="Right">Where the right-hand edge of each row should be, micro-units from that of the first row.</param>
    private sealed record Small(int Units, int Period, long Turn, long Slip, long[] Right, long[] Left, ShapeOptions Options)
    {
        private int Step => Period % 2 == 0 ? Period / 2 : Period;

        public ShapePlan Plan(ShapeOptions options)
        {
            var panel = SteadyPanel.Of(
                ColourRing.FromUnits([1, Period - 1]), Units,
                    new PathOptions { TurnCost = Turn / (double)Unit }, slipStitchYarn: Slip / (double)Unit);
            return ShapePlanner.Plan(
                panel, [new SilhouettePart(0, Right.Length, Edge(Right), Edge(Left))], options with { LeastUnits = Least })!;

            static EdgeLine Edge(long[] micro) => EdgeLine.ByRow([.. micro.Select(ColourRing.ToUnits)]);
        }

        public BruteOutlines Exhaustive(long? tolerance) => new(Units, Period, Turn, Slip)
        {
            Right = Right,
            Left = Left,
            // Beyond what the edges ask for by one step that keeps the motif.
            Range = (-2 - Step, 5 + Step),
            Chains = Options.Chains,
            Slips = Options.SlipStitches,
            Least = Least,
            StepWorth = StepWorth,
            StepSpares = StepSpares,
            Tolerance = tolerance,
        };

        private long StepWorth => ColourRing.ToMicro(Options.StepWorth);

        private long StepSpares => ColourRing.ToMicro(Options.StepSpares);

        private int Least => Math.Min(Options.LeastUnits, Units);

        /// <summary>By the outline alone.</summary>
        public BruteCost CostOf(ShapedPiece piece, long? tolerance)
        {
            var part = piece.Parts[0];
            var cost = new BruteCost(0, 0, 0, piece.Steps.Count(s => s.Units > 0 && s.Act != ShapingAct.Begin), StepWorth, tolerance is null ? 0 : StepSpares);
            for (var row = 0; row < Right.Length; row++)
            {
                var run = part.Outline.At(row);
                long[] away = [Math.Abs(run.First * Unit - Right[row]), Math.Abs((run.Last + 1) * Unit - Left[row])];
                var jump = row == 0 ? 0 : Lean.Wrap(part.OffsetAt(row)!.Value - part.OffsetAt(row - 1)!.Value, Period * Unit);
                cost = new BruteCost(
                    cost.OutOfTolerance + (tolerance is { } most ? away.Count(a => a > most) : 0),
                    cost.Jumps + Math.Abs(jump), cost.Away + away.Sum(), cost.Steps,
                    StepWorth, cost.StepSpares);
            }
            return cost;
        }
    }
}
