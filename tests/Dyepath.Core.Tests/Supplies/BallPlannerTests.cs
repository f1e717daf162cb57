using System.Collections.Immutable;
using CsCheck;
using Dyepath.Core.Fabrics;
using Dyepath.Core.Garments;
using Dyepath.Core.Planning;
using Dyepath.Core.Quantities;
using Dyepath.Core.Yarns;

namespace Dyepath.Core.Tests.Supplies;

public sealed class BallPlannerTests
{
    private static readonly Length Unit = Length.FromCentimetres(4);

    [Fact]
    public void Joins_fall_where_working_stitch_by_stitch_runs_out()
    {
        Gen.Select(
            Gen.Int[5, 40], Gen.Int[1, 30], Gen.Int[-1, 2].Select(q => q / 4.0), Gen.Int[8, 60], Gen.Int[0, 30], Gen.Int[1, 3],
            Gen.Int[0, 2].Select(h => h / 2.0)).Holds(
            (stitches, rows, turn, ballUnits, foundation, pieces, waste) =>
            {
                var sequence = 20 * ColourRing.Unit;
                var ball = Unit * (ballUnits + 20 + 7.5);
                var list = Enumerable.Range(0, pieces)
                    .Select(i => new PooledPiece(
                        new PieceRun(PieceId.Front, i), Path(stitches, rows, turn, 3 * i),
                        foundation * ColourRing.Unit / 2, foundation)).ToList();
                var plan = BallPlanner.Plan(sequence, Unit, ball, list, waste, Length.Zero)!;
                var (balls, joins) = Brute(list, sequence, ball, waste);
                Assert.Equal(balls, plan.Balls);
                Assert.Equal(joins, plan.Joins.Select(j => (j.Ball, j.Run, j.Row, j.Stitch)));
            },
            seed: 301, cases: 400);
    }

    [Fact]
    public void Yarn_is_neither_made_nor_lost()
    {
        Gen.Select(Gen.Int[5, 90], Gen.Int[1, 90], Gen.Double[30, 200], Gen.Double[0, 80], Gen.Int[1, 4]).Holds(
            (stitches, rows, ballMetres, otherMetres, pieces) =>
            {
                var list = Enumerable.Range(0, pieces)
                    .Select(i => new PooledPiece(new PieceRun(PieceId.Front, i), Path(stitches, rows, 0, 5 * i), 0, 0)).ToList();
                var (ball, other) = (Length.FromMetres(ballMetres), Length.FromMetres(otherMetres));
                var plan = BallPlanner.Plan(22 * ColourRing.Unit, Unit, ball, list, 0.5, other)!;
                var pooled = Unit * ((double)pieces * stitches * rows);
                var accounted = pooled + other + plan.Wasted + plan.Left;
                Assert.Equal((plan.Balls * ball).Metres, accounted.Metres, 0.001);
                Assert.True(plan.Left >= Length.Zero && plan.Left < ball);
            },
            seed: 302, cases: 400);
    }

    [Fact]
    public void A_ball_shorter_than_one_sequence_and_its_ends_has_no_plan() =>
        Assert.Null(BallPlanner.Plan(22 * ColourRing.Unit, Unit, Unit * 20, [], 1, Length.Zero));

    [Fact]
    public void Endless_work_has_no_plan()
    {
        var piece = new PooledPiece(new PieceRun(PieceId.Blanket), Path(1_000, 5_000, 0, 0), 0, 0);
        Assert.Null(BallPlanner.Plan(2 * ColourRing.Unit, Unit, Unit * 30, [piece], 1, Length.Zero));
    }

    /// <summary>Works every chain and stitch in small steps of yarn, taking a new ball when one runs out.</summary>
    private static (int Balls, ImmutableArray<(int, PieceRun, int, int)> Joins) Brute(
        List<PooledPiece> pieces, long sequence, Length ball, double waste)
    {
        const long step = 250_000;
        var end = (long)(BallPlanner.End / Unit * ColourRing.Unit);
        var fresh = (long)(ball / Unit * ColourRing.Unit) - (long)(waste * sequence) - 2 * end;
        var (balls, left, place) = (0, 0L, 0L);
        var joins = ImmutableArray.CreateBuilder<(int, PieceRun, int, int)>();
        foreach (var piece in pieces)
        {
            var run = ((piece.Path.RowStart(0) - piece.Foundation - place) % sequence + sequence) % sequence + 2 * end;
            if (balls == 0 || left <= run)
                (balls, left) = (balls + 1, fresh);
            else
                left -= run;
            for (var chain = 1; chain <= piece.Chains; chain++)
                Work(0, chain, piece.Foundation / piece.Chains);
            var stitches = piece.Path.RowStitches[0];
            for (var row = 1; row <= piece.Path.Rows; row++)
            {
                for (var stitch = 1; stitch <= stitches; stitch++)
                {
                    // A turn that takes yarn back takes it from the next row's first stitches as they come.
                    var yarn = ColourRing.Unit + (stitch == stitches && row < piece.Path.Rows ? piece.Path.Turns[0] : 0);
                    Work(row, stitch, yarn);
                }
            }
            place = piece.Path.RowStart(0) - piece.Foundation + piece.Yarn;

            void Work(int row, int stitch, long yarn)
            {
                for (var done = 0L; done < yarn; done += step)
                {
                    if (left == 0)
                    {
                        joins.Add((balls, piece.Run, row, stitch));
                        (balls, left) = (balls + 1, fresh);
                    }
                    left -= step;
                }
            }
        }
        return (balls, joins.ToImmutable());
    }

    private static FabricPath Path(int stitches, int rows, double turn, int start) =>
        FabricPath.Constant(Working.Turned, stitches, rows, new PathOptions { TurnCost = turn, Start = start });
}
