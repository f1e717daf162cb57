using System.Collections.Immutable;
using CsCheck;
using Dyepath.Core.Fabrics;
using Dyepath.Core.Garments;
using Dyepath.Core.Planning;
using Dyepath.Core.Projects;
using Dyepath.Core.Yarns;

namespace Dyepath.Core.Tests.Garments;

/// <summary>Laws of docs/seams.md.</summary>
public sealed class SeamLawTests
{
    private const long Unit = ColourRing.Unit;

    [Fact]
    public void One_start_matches_both_side_seams_exactly_if_twice_what_is_seen_less_one_is_a_whole_period()
    {
        Gen.Select(Gen.Int[3, 30], Gen.Int[8, 120], Gen.Int[0, 2], Gen.Int[-2, 2]).Holds(
            (period, stitches, hidden, halfTurns) =>
            {
                var exact = Enumerable.Range(0, period).Any(
                    start => Sides(period, stitches, hidden, halfTurns / 2.0, start, turned: false) == 0);
                return exact == (2 * (stitches - 1 - 2 * hidden) % period == 0);
            },
            seed: 401, cases: 600);
    }

    [Fact]
    public void The_same_panel_wrong_side_out_matches_every_side_stitch()
    {
        Gen.Select(Gen.Int[3, 30], Gen.Int[8, 120], Gen.Int[0, 2], Gen.Int[-2, 2]).Holds(
            (period, stitches, hidden, halfTurns) => Sides(period, stitches, hidden, halfTurns / 2.0, 0, turned: true) == 0,
            seed: 402, cases: 300);
    }

    [Fact]
    public void Starting_later_shifts_every_jump_alike()
    {
        Gen.Select(Gen.Int[3, 30], Gen.Int[8, 80], Gen.Int[0, 40]).Holds(
            (period, stitches, later) =>
            {
                var front = Path(stitches, 0, 0);
                var tally = new SeamMeter(period * Unit);
                tally.AddSeam(SeamEdge.Right(front, 0, 30, Unit), SeamEdge.Left(Path(stitches, 0, 0), 0, 30, Unit),
                    SeamExtension.Continued);
                var worked = new SeamMeter(period * Unit);
                worked.AddSeam(SeamEdge.Right(front, 0, 30, Unit), SeamEdge.Left(Path(stitches, 0, later), 0, 30, Unit),
                    SeamExtension.Continued);
                return tally.MeanJump(later * Unit) == worked.MeanJump();
            },
            seed: 403, cases: 300);
    }

    /// <summary>
    /// Walked by hand: seen from outside with its cuff down, a sleeve worked sideways begins at its left side, which lies at the
    /// front's underarm on the wearer's left arm and at the back's on the right one.
    /// </summary>
    [Fact]
    public void Round_an_armhole_a_sideways_sleeve_meets_the_panels_as_it_is_worn()
    {
        var text = System.Text.Encoding.UTF8.GetString(DemoProject.Utf8)
            .Replace("\"yarn\": \"companion\", \"shorterBy\": \"26 cm\"", "\"shorterBy\": \"0 cm\"", StringComparison.Ordinal)
            .Replace("\"direction\": \"best\"", "\"direction\": \"sideways\"", StringComparison.Ordinal)
            .Replace("\"hiddenStitches\": 1", "\"extension\": \"continued\", \"hiddenStitches\": 1", StringComparison.Ordinal);
        var plan = GarmentPlanner.Plan(ProjectReader.Read(System.Text.Encoding.UTF8.GetBytes(text)).Project!).Plan!;
        var period = plan.Sequence.Ring.Total;
        foreach (var size in plan.Sizes)
        {
            var (front, back, sleeve) = (size.Pieces[0], size.Pieces[1], size.Pieces.Single(p => p.Name == "sleeve"));
            var armhole = front.Opening(OpeningId.Armhole).First - 1;
            // One stitch and one row are hidden in every seam.
            var columns = Enumerable.Range(armhole, front.Stitches - 1 - armhole).ToArray();
            var rows = Enumerable.Range(1, sleeve.Rows - 2).Select(r => At(sleeve, r, sleeve.Stitches - 2)).Reverse().ToArray();
            foreach (var left in (bool[])[true, false])
            {
                var ofFront = columns.Select(c => At(front, left ? front.Rows - 1 : 0, c));
                var backEnds = left == back.WrongSideOut;
                var ofBack = columns.Select(c => At(back, backEnds ? back.Rows - 1 : 0, c));
                // From the underarm where the sleeve ends, up to the shoulder and down to where it begins.
                var round = left ? ofBack.Concat(ofFront.Reverse()).ToArray() : ofFront.Concat(ofBack.Reverse()).ToArray();
                var pairs = Math.Max(round.Length, rows.Length);
                var mean = Enumerable.Range(0, pairs).Average(
                    i => Math.Abs(Wrap(rows[i * rows.Length / pairs] - round[i * round.Length / pairs], period))) / (double)Unit;
                Assert.Equal(mean, size.Seams.Single(s => s.Id == (left ? SeamId.LeftArmhole : SeamId.RightArmhole)).PhaseJump, 9);
            }
        }
    }

    /// <summary>
    /// Walked by hand: seen from outside with its cuff down, the right-hand side of a sleeve worked upwards lies at the back's underarm
    /// on the wearer's left arm, whose armhole is the front's right-hand edge; at the front's underarm on the right one.
    /// </summary>
    [Fact]
    public void Round_an_armhole_an_upward_sleeve_meets_the_panels_as_it_is_worn()
    {
        var plan = TestProjects.Tideline.Sleeved(pooled: true).Directed(Direction.Up)
            .With(g => g with { Seams = g.Seams with { Extension = SeamExtension.Continued } }).Planned();
        var period = plan.Sequence.Ring.Total;
        foreach (var size in plan.Sizes)
        {
            var (front, back, sleeve) = (size.Pieces[0], size.Pieces[1], size.Pieces[2]);
            var from = front.Opening(OpeningId.Armhole).First - 1;
            // One stitch and one row are hidden in every seam: the last row in the shoulder's.
            var rows = Enumerable.Range(from, front.Rows - 1 - from).ToArray();
            var top = Enumerable.Range(1, sleeve.Stitches - 2).Select(c => At(sleeve, sleeve.Rows - 2, c)).ToArray();
            foreach (var left in (bool[])[true, false])
            {
                var ofFront = rows.Select(r => At(front, r, left ? 0 : front.Stitches - 1)).ToArray();
                var atLeft = left != back.WrongSideOut;
                var ofBack = rows.Select(r => At(back, r, atLeft ? back.Stitches - 1 : 0)).ToArray();
                var round = left ? ofBack.Concat(ofFront.Reverse()).ToArray() : ofFront.Concat(ofBack.Reverse()).ToArray();
                var pairs = Math.Max(round.Length, top.Length);
                var mean = Enumerable.Range(0, pairs).Average(
                    i => Math.Abs(Wrap(top[i * top.Length / pairs] - round[i * round.Length / pairs], period))) / (double)Unit;
                Assert.Equal(mean, size.Seams.Single(s => s.Where == (left ? "left armhole" : "right armhole")).PhaseJump, 9);
            }
        }
    }

    /// <summary>
    /// Of a fabric without lean the first start is the one with which a row and the next agree in most columns; by working both rows of
    /// each start.
    /// </summary>
    [Theory]
    [InlineData(63)]
    [InlineData(42)]
    [InlineData(50)]
    [InlineData(57)]
    public void Without_lean_colours_stand_clearest_where_two_rows_agree(int stitches)
    {
        var plan = TestProjects.Tideline.Planned();
        var agree = Enumerable.Range(0, 21).Select(start =>
        {
            var fabric = Fabric.Work(plan.Sequence.Ring, FabricPath.Constant(Working.Turned, stitches, 2, new PathOptions { Start = start }));
            return Enumerable.Range(0, stitches).Count(c => fabric[0, c] == fabric[1, c]);
        }).ToList();
        var path = FabricPath.Constant(Working.Turned, stitches, 40, new PathOptions());
        Assert.Equal(agree.IndexOf(agree.Max()), SeamSearch.FirstStart(SharedFabric.Of(plan), path, 0));
        Assert.Equal(0, SeamSearch.FirstStart(SharedFabric.Of(plan), path, 0.5));
        Assert.Equal(0, SeamSearch.FirstStart(SharedFabric.Of(plan), FabricPath.Constant(Working.Rounds, stitches, 40, new PathOptions()), 0));
    }

    /// <summary>Joined and turned rounds: N ≡ P/2 ± 1 jumps at the join, N ≡ ±1 jumps by one stitch, a whole number of periods not at
    /// all.</summary>
    [Theory]
    [InlineData(22, 66, 0)]
    [InlineData(22, 67, 1)]
    [InlineData(22, 65, 1)]
    [InlineData(22, 78, 10)]
    [InlineData(22, 76, 10)]
    public void A_round_jumps_at_its_join_by_what_it_misses(int period, int stitches, int jump)
    {
        var path = Path(Working.RoundsTurned, [stitches], 40, 0, 0);
        var meter = new SeamMeter(period * Unit);
        meter.AddSeam(SeamEdge.Left(path, 0, 40, 0), SeamEdge.Right(path, 0, 40, 0), SeamExtension.Continued);
        Assert.Equal(jump, meter.MeanJump() / Unit);
    }

    [Fact]
    public void A_spiral_never_jumps()
    {
        var path = Path(Working.Spiral, [67], 40, 0, 0);
        var meter = new SeamMeter(22 * Unit);
        meter.AddSeam(SeamEdge.Left(path, 0, 39, 0), SeamEdge.Right(path, 1, 39, 0), SeamExtension.Continued);
        Assert.Equal(0, meter.MeanJump());
    }

    [Fact]
    public void Uncut_fabric_continues_itself()
    {
        // A panel cut out of a wider one: what lies beyond its right-hand edge is the neighbouring stitch of the same row.
        var path = Path(80, 0.5, 3);
        for (var row = 0; row < 9; row++)
        {
            Assert.Equal(path.FromRight(row, 4 * Unit), SeamEdge.Right(path, row, 1, 5 * Unit)[0].Beyond);
            Assert.Equal(path.FromLeft(row, 4 * Unit), SeamEdge.Left(path, row, 1, 5 * Unit)[0].Beyond);
            Assert.Equal(path.FromRight(row + 1, 7 * Unit), SeamEdge.Top(path, row, 7, 1)[0].Beyond);
            Assert.Equal(path.FromRight(row - 1, 7 * Unit), SeamEdge.Bottom(path, row, 7, 1)[0].Beyond);
        }
    }

    [Fact]
    public void A_piece_beyond_its_edges_is_the_worked_fabric_within_them()
    {
        Gen.Select(Gen.Int[2, 60], Gen.Bool, Gen.Int[-1, 2], Gen.Int[0, 3], Gen.Int[0, 21]).Holds(
            (stitches, alternating, halfTurns, working, start) =>
            {
                var way = (Working)working;
                var turn = way == Working.Spiral ? 0 : halfTurns / 2.0;
                var two = alternating && way is Working.Turned or Working.RoundsTurned;
                var options = new PathOptions { TurnCost = turn, Start = start };
                var worked = two ? FabricPath.Alternating(way, stitches, 12, options) : FabricPath.Constant(way, stitches, 12, options);
                // Of two rows only: the others lie beyond the piece.
                var path = Path(way, two ? [stitches, stitches + 1] : [stitches], 2, turn, start);
                for (var row = 0; row < 12; row++)
                {
                    for (var column = 0; column < worked.Cells(row); column++)
                        Assert.Equal(worked.SpanAt(row, column).From, path.FromRight(row, column * Unit));
                }
            },
            seed: 404, cases: 200);
    }

    /// <summary>Where along the yarn a stitch lies, columns from the right.</summary>
    private static long At(PiecePlan piece, int row, int column) =>
        Path(piece.Working, piece.RowStitches, piece.Rows, piece.TurnCost, piece.Start).FromRight(row, column * Unit);

    private static long Wrap(long jump, long period)
    {
        var within = ((jump % period) + period) % period;
        return within > period / 2 ? within - period : within;
    }

    private static FabricPath Path(int stitches, double turn, int start) => Path(Working.Turned, [stitches], 20, turn, start);

    private static FabricPath Path(Working working, ImmutableArray<int> stitches, int rows, double turn, double start) =>
        FabricPath.Steady(working, stitches, rows, new PathOptions { TurnCost = turn, Start = start });

    /// <summary>Stitch against stitch, mirrored: the sum of the jumps of both side seams over 20 rows, by counting along the
    /// yarn.</summary>
    private static double Sides(int period, int stitches, int hidden, double turn, int start, bool turned)
    {
        var sum = 0.0;
        for (var row = 0; row < 20; row++)
        {
            var begins = row * (stitches + turn);
            double Place(int column, int first) => first + begins + (row % 2 == 0 ? column : stitches - 1 - column);
            var (near, far) = (hidden, stitches - 1 - hidden);
            sum += Jump(Place(near, 0), Place(turned ? near : far, start)) + Jump(Place(far, 0), Place(turned ? far : near, start));
        }
        return sum;

        double Jump(double a, double b)
        {
            var rest = ((b - a) % period + period) % period;
            return Math.Min(rest, period - rest);
        }
    }
}
