using CsCheck;
using Dyepath.Core.Fabrics;
using Dyepath.Core.Shaping;
using Dyepath.Core.Yarns;

namespace Dyepath.Core.Tests.Shaping;

public sealed class ShapedPieceTests
{
    private const long Unit = BruteShape.Unit;

    private static readonly ColourRing TidalRing = ColourRing.FromUnits([5, 4, 6, 7]);

    /// <summary>What happens at a row's beginning and end: units slip-stitched over, and units left (grown where negative).</summary>
    private static readonly Gen<(int Slipped, int Left)> RowEnds = Gen.Select(Gen.Int[-6, 2].Select(s => Math.Max(s, 0)), Gen.Int[-2, 2]);

    private static readonly Gen<Piece> Pieces =
        Gen.Select(
            Gen.Select(Gen.Int[1, 6].Array[2, 5], Gen.Long[-1, 3].Select(t => t * Unit / 4),
            Gen.Int[0, 3].Select(s => s * Unit / 4), Gen.Int[0, 30]),
            Gen.Int[8, 30], RowEnds.Array[2, 9], RowEnds.Array[1, 7], RowEnds.Array[1, 7],
            Gen.Select(Gen.Int[0, 99], Gen.Int[0, 99], Gen.Bool, Gen.Bool))
        .Select((yarn, units, one, two, three, how) =>
            new Piece(yarn.Item1, yarn.Item2, yarn.Item3, yarn.Item4 * Unit, units, [one, two, three], how));

    [Fact]
    public void Every_shaped_piece_shows_what_a_walk_along_the_yarn_shows_and_its_steps_lead_there() =>
        Pieces.Holds(made =>
        {
            var panel = SteadyPanel.Of(
                ColourRing.FromUnits([.. made.Ring.Select(n => (double)n)]), made.Units,
                new PathOptions { TurnCost = made.Turn / (double)Unit, Start = made.Start / (double)Unit },
                slipStitchYarn: made.Slip / (double)Unit);
            var brute = new BruteShape(made.Ring, made.Turn, made.Slip);
            var outlines = made.Outlines();
            var piece = ShapedPiece.Work(panel, outlines);

            var parts = StepFollower.Follow(
                piece.Steps, [.. outlines.Select(o => o.Outline.Rows)], [.. outlines.Select(o => o.Below)], made.Ring, brute);
            for (var i = 0; i < parts.Count; i++)
                Assert.Equal(BruteShape.Columns(outlines[i].Outline), parts[i].Rows);
            var cells = brute.Walk([.. parts]);
            for (var row = 0; row < piece.Rows; row++)
            {
                for (var column = piece.FirstColumn - 1; column <= piece.LastColumn + 1; column++)
                    Assert.Equal(cells.TryGetValue((row, column), out var section) ? section : (int?)null, piece.SectionAt(row, column));
            }

            // Yarn: from each part's first stitch to its last, and what lies between parts that are not cut.
            var yarn = parts.Select((p, i) =>
                brute.EndOf(p) - made.Turn - (piece.Parts[i].Continues ? brute.EndOf(parts[i - 1]) - made.Turn : p.Start)).Sum();
            Assert.Equal(yarn / (double)Unit, piece.Yarn, 1e-9);

            // Keeping the motif is keeping the place along the yarn: checked against the panel's own places.
            var keeps = piece.Parts.All(p => Enumerable.Range(p.FirstRow, p.Rows).All(r => p.OffsetAt(r) == 0));
            Assert.Equal(keeps, piece.KeepsMotif);
            var uncut = brute.Uncut(made.Units, made.Start);
            if (keeps)
                Assert.All(cells, c => Assert.Equal(uncut(c.Key.Row, c.Key.Column), c.Value));
        }, seed: 910, cases: 600);

    [Fact]
    public void The_generated_pieces_are_of_all_kinds()
    {
        var acts = new HashSet<ShapingAct>();
        var (uncutBetween, cut, otherWay) = (0, 0, 0);
        Pieces.Holds(made =>
        {
            var panel = SteadyPanel.Of(TidalRing, made.Units);
            var piece = ShapedPiece.Work(panel, made.Outlines());
            acts.UnionWith(piece.Steps.Select(s => s.Act));
            uncutBetween += piece.Parts.Count(p => p.Continues);
            cut += piece.Parts.Count(p => p.Index > 0 && !p.Continues);
            otherWay += piece.Breaks.Count(b => b.Jump is null);
        }, seed: 911, cases: 300);
        Assert.Superset(
            new HashSet<ShapingAct>
            {
                ShapingAct.Begin, ShapingAct.LeaveUnworked, ShapingAct.SlipStitchBack,
                ShapingAct.WorkOverChains, ShapingAct.FastenOff, ShapingAct.Join,
            },
            acts);
        Assert.True(uncutBetween > 20 && cut > 20 && otherWay > 20, $"{uncutBetween}, {cut}, {otherWay}");
    }

    [Fact]
    public void An_armhole_and_a_neck_are_said_step_by_step()
    {
        // P = 22, N = 67. Rows 0 to 9 in full; row 9 ends at the right and leaves 11, row 10 at the left 11. Row 20 begins at the right:
        // its side goes on, 12 units wide; the other one of 12 is joined on at its right, after 11 + 12 + 21 columns.
        var piece = ShapedPiece.Work(SteadyPanel.Of(TidalRing, 67),
        [
            new(0, Outline.Of(20, [new(0, 0, 66), new(9, 11, 66), new(10, 11, 55)])),
            new(20, Outline.Rectangle(12, 6).Shifted(11)) { Below = 0, Continues = true },
            new(20, Outline.Rectangle(12, 6).Shifted(44)) { Below = 0 },
        ]);
        Assert.True(piece.KeepsMotif);
        // Row 20 of the panel begins at 20 · 67 = 1,340 = 60 · 22 + 20, and column 44 two periods on: five units into the last section, 15
        // to 22.
        ShapingStep[] expected =
        [
            new(ShapingAct.Begin, 0, 0, RowEdge.Right, 0, 67, new YarnPlace(0, 0)),
            new(ShapingAct.LeaveUnworked, 0, 9, RowEdge.Right, 11, 11),
            new(ShapingAct.LeaveUnworked, 0, 10, RowEdge.Left, 55, 11),
            new(ShapingAct.LeaveUnworked, 1, 20, RowEdge.Left, 22, 33),
            new(ShapingAct.FastenOff, 1, 25, RowEdge.Right, 11, 0),
            new(ShapingAct.Join, 2, 20, RowEdge.Right, 44, 33, new YarnPlace(3, 5)),
            new(ShapingAct.FastenOff, 2, 25, RowEdge.Right, 44, 0),
        ];
        Assert.Equal(expected, piece.Steps);
        Assert.Equal((26, 0, 66, 0), (piece.Rows, piece.FirstColumn, piece.LastColumn, piece.CompanionChains));
        Assert.Equal(9 * 67 + 56 + 10 * 45 + 2 * 6 * 12, piece.Yarn);
    }

    [Fact]
    public void A_break_is_told_where_its_row_begins_with_its_jump_and_the_lean_after_it()
    {
        // Row 4 ends at the left and leaves 5 of 67: across that turn colours lie 10 units back; 2 · 62 = 6 · 22 − 8, so that rows lean −4.
        var broken = ShapedPiece.Work(SteadyPanel.Of(TidalRing, 67), Outline.Of(12, [new(0, 0, 66), new(4, 0, 61)]));
        var only = Assert.Single(broken.Breaks);
        Assert.Equal(new MotifBreak(0, 5, RowEdge.Left, 61, -10, -4, false), only);

        // Five and six left at the two edges make half a period together: the motif is displaced and keeps its lean.
        var displaced = ShapedPiece.Work(SteadyPanel.Of(TidalRing, 67), Outline.Of(12, [new(0, 0, 66), new(4, 0, 61), new(5, 6, 61)]));
        Assert.Equal(
            [new MotifBreak(0, 5, RowEdge.Left, 61, -10, 1, true), new MotifBreak(0, 6, RowEdge.Right, 6, 10, 1, true)], displaced.Breaks);
    }

    [Fact]
    public void One_colour_is_never_broken()
    {
        var panel = SteadyPanel.Of(ColourRing.FromUnits([9]), 20);
        Assert.Equal((1, 1), (panel.KeepingStep, panel.KeepingSlip));
        Assert.True(ShapedPiece.Work(panel, Outline.Of(9, [new(0, 0, 19), new(3, 4, 19), new(6, 4, 12)])).KeepsMotif);
    }

    [Fact]
    public void A_period_of_no_whole_units_has_no_keeping_step_and_half_units_have()
    {
        Assert.Null(SteadyPanel.Of(ColourRing.FromUnits([5.2, 4.1, 6, 7.333_333]), 40).KeepingStep);
        // P = 22.6: 2k = 5 P at k = 56.5, 10 P at k = 113. P = 10.5: 2k = 2 P at k = 10.5, 4 P at 21.
        Assert.Equal(113, SteadyPanel.Of(ColourRing.FromUnits([5.2, 4.1, 6, 7.3]), 40).KeepingStep);
        Assert.Equal(21, SteadyPanel.Of(ColourRing.FromUnits([5, 5.5]), 40).KeepingStep);
        // Two colours repeated: P = 5, not 10.
        Assert.Equal(5, SteadyPanel.Of(ColourRing.FromUnits([3, 2, 3, 2], ["a", "b", "a", "b"]), 40).KeepingStep);
    }

    [Fact]
    public void A_linen_outline_counts_pairs_and_a_counting_chain_keeps_its_rows_beginnings()
    {
        var linen = ShapedPiece.Work(
            SteadyPanel.Of(TidalRing, 67, new PathOptions { StitchesPerUnit = 2 }), Outline.Of(20, [new(0, 0, 66), new(10, 0, 55)]));
        Assert.True(linen.KeepsMotif);
        Assert.Equal(2 * 56, linen.Parts[0].Path.RowStitches[10]);

        // A chain of 1.5 units for the first stitch: all but each row's first stitch are the panel's.
        var options = new PathOptions { TurnCost = 0.5, TurningChainCounts = true };
        var counting = ShapedPiece.Work(SteadyPanel.Of(TidalRing, 67, options), Outline.Of(20, [new(0, 0, 66), new(10, 0, 55)]));
        var uncut = Fabric.Work(TidalRing, FabricPath.Constant(Working.Turned, 67, 20, options));
        Assert.True(counting.KeepsMotif);
        Assert.All(Enumerable.Range(0, 20), r => Assert.All(
            Enumerable.Range(0, 56).Where(c => c != counting.Parts[0].BeginsAt(r)),
            c => Assert.Equal(uncut[r, c], counting.SectionAt(r, c))));
    }

    [Fact]
    public void What_cannot_be_worked_is_refused()
    {
        var panel = SteadyPanel.Of(TidalRing, 20);
        Assert.Throws<ArgumentException>("runs", () => Outline.Of(9, []));
        Assert.Throws<ArgumentException>("runs", () => Outline.Of(9, [new(1, 0, 5)]));
        Assert.Throws<ArgumentException>("runs", () => Outline.Of(9, [new(0, 0, 5), new(3, 1, 5), new(3, 2, 5)]));
        Assert.Throws<ArgumentException>("runs", () => Outline.Of(9, [new(0, 0, 5), new(3, 6, 9)]));
        Assert.Throws<ArgumentException>("runs", () => Outline.Of(9, [new(0, 0, 5), new(3, 0, 6, OverStanding: true)]));
        Assert.Throws<ArgumentOutOfRangeException>("runs", () => Outline.Of(9, [new(0, 0, 5), new(9, 0, 4)]));
        Assert.Throws<ArgumentOutOfRangeException>("runs", () => Outline.Of(9, [new(0, 0, 1_000)]));
        Assert.Throws<ArgumentOutOfRangeException>("runs", () => Outline.Of(9, [new(0, -1_001, 0)]));
        Assert.Throws<ArgumentOutOfRangeException>("runs", () => Outline.Of(9, [new(0, 3, 2)]));
        Assert.Throws<ArgumentOutOfRangeException>("rows", () => Outline.Of(5_001, [new(0, 0, 5)]));
        Assert.Throws<ArgumentException>(() => ShapedPiece.Work(panel, Outline.Rectangle(19, 4)));
        Assert.Throws<ArgumentException>(() => ShapedPiece.Work(panel, Outline.Rectangle(20, 4).Shifted(1)));
        // Row 3 begins at the left.
        Assert.Throws<ArgumentException>(() => ShapedPiece.Work(panel, Outline.Of(9, [new(0, 0, 19), new(3, 0, 20)])));
        PartOutline bottom = new(0, Outline.Rectangle(20, 4));
        PartOutline Top(int first, int last, int row = 4, int below = 0) =>
            new(row, Outline.Of(3, [new(0, first, last)])) { Below = below };
        Assert.Throws<ArgumentException>(() => ShapedPiece.Work(panel, [bottom, Top(0, 5, row: 5)]));
        Assert.Throws<ArgumentException>(() => ShapedPiece.Work(panel, [bottom, Top(0, 5, below: 1)]));
        Assert.Throws<ArgumentException>(() => ShapedPiece.Work(panel, [bottom, Top(20, 25)]));
        Assert.Throws<ArgumentException>(() => ShapedPiece.Work(panel, [bottom, Top(0, 9), Top(9, 19)]));
        // Row 4 goes on at the right, so that a part from the left is joined on.
        Assert.Throws<ArgumentException>(() => ShapedPiece.Work(panel, [bottom, Top(0, 9) with { Continues = true, From = RowEdge.Left }]));
        Assert.Throws<ArgumentException>(() => ShapedPiece.Work(panel, [bottom, Top(9, 19), Top(0, 5) with { Continues = true }]));
        Assert.Throws<ArgumentOutOfRangeException>(() => SteadyPanel.Of(TidalRing, 20, slipStitchYarn: double.NaN));
    }

    [Fact]
    public void An_outline_finds_its_rows()
    {
        var outline = Outline.Of(9, [new(0, 0, 9), new(2, 0, 9), new(4, 1, 9), new(7, 1, 12)]);
        Assert.Equal([new(0, 0, 9), new(4, 1, 9), new(7, 1, 12)], outline.Runs);
        Assert.Equal(
            [(0, 9), (0, 9), (0, 9), (0, 9), (1, 9), (1, 9), (1, 9), (1, 12), (1, 12)],
            Enumerable.Range(0, 9).Select(r => (outline.At(r).First, outline.At(r).Last)));
        Assert.True(outline.Has(8, 12) && !outline.Has(6, 12) && !outline.Has(9, 5)
            && !outline.Has(-1, 5) && !outline.Has(4, 0) && outline.Has(4, 1));
        Assert.Throws<ArgumentOutOfRangeException>(() => outline.At(9));
    }

    /// <param name="How">Columns of the two sides, whether they begin the panel's way, and whether the side at the turn goes on.</param>
    private sealed record Piece(
        int[] Ring, long Turn, long Slip, long Start, int Units, (int Slipped, int Left)[][] Ends,
        (int Right, int Left, bool PanelsWay, bool GoesOn) How)
    {
        public PartOutline[] Outlines()
        {
            var bottom = Grow(0, Units - 1, false, Ends[0], (-1_000, 1_000));
            var ground = bottom.At(bottom.Rows - 1);
            var row = bottom.Rows;
            if (ground.Units < 3)
                return [new PartOutline(0, bottom)];
            var right = 1 + How.Right % (ground.Units - 2);
            var left = 1 + How.Left % (ground.Units - right - 1);
            var fromRight = row % 2 == 0;
            var from = How.PanelsWay == fromRight ? RowEdge.Right : RowEdge.Left;
            var rightSide = (First: ground.First, Last: ground.First + right - 1);
            var leftSide = (First: ground.Last - left + 1, Last: ground.Last);
            var goesOn = How.PanelsWay && How.GoesOn;
            PartOutline Side((int First, int Last) side, (int, int)[] ends, bool continued, (int, int) within) =>
                new(row, Grow(side.First, side.Last, from == RowEdge.Left, ends, within)) { Below = 0, Continues = continued, From = from };
            var one = Side(rightSide, Ends[1], goesOn && fromRight, (-1_000, rightSide.Last));
            var other = Side(leftSide, Ends[2], goesOn && !fromRight, (leftSide.First, 1_000));
            return fromRight ? [new(0, bottom), one, other] : [new(0, bottom), other, one];
        }

        /// <summary>Rows whose beginnings and ends move as asked, where that leaves something to work.</summary>
        private static Outline Grow(int first, int last, bool fromLeft, (int Slipped, int Left)[] ends, (int First, int Last) within)
        {
            var columns = new List<(int, int)>();
            for (var i = 0; i < ends.Length; i++, fromLeft = !fromLeft)
            {
                if (i > 0)
                {
                    var (slipped, left) = ends[i];
                    if (last - first - slipped - Math.Max(left, 0) > 0)
                    {
                        (first, last) = fromLeft ? (first + left, last - slipped) : (first + slipped, last - left);
                        (first, last) = (Math.Max(first, within.First), Math.Min(last, within.Last));
                    }
                }
                columns.Add((first, last));
            }
            return Outline.ByRow(columns);
        }
    }
}
