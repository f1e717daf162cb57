using CsCheck;
using Dyepath.Core.Fabrics;
using Dyepath.Core.Garments;
using Dyepath.Core.Making;
using Dyepath.Core.Planning;
using Dyepath.Core.Tests.Garments;

namespace Dyepath.Core.Tests.Making;

/// <summary>One trial's colours, taken out of the simulation.</summary>
public sealed class TrialDrawingTests
{
    [Fact]
    public void Law_a_drawn_trial_has_the_share_that_the_run_reports()
    {
        Gen.Select(
            Gen.Int[200, 9_000].Array[1, 6], Gen.Int[1, 3], Gen.Int[1, 40], Gen.Int[1, 20], Gen.Int[-900, 2_000], Gen.Enum<CheckHabit>(),
            Gen.Int[0, 40])
        .Holds(
            (sections, colours, stitches, rows, turn, check, spread) =>
            {
                var piece = Pieces.Of(
                    [.. sections.Select(n => n / 1000.0)], [.. sections.Select((_, i) => i % colours)],
                    [.. Enumerable.Range(0, rows).Select(r => stitches + r % 2)], turn / 1000.0, stitches / 3.0);
                var hands = HandModel.Create(spread / 1000.0, 30, bias: -spread / 8000.0);
                var settings = new SimulationSettings { Check = check, Trials = 11, Seed = (ulong)rows, DyeVariation = spread / 1500.0 };
                var result = TensionSimulation.Run(piece, hands, settings, cancellation: TestContext.Current.CancellationToken);
                for (var trial = 0; trial < settings.Trials; trial++)
                {
                    var drawn = TensionSimulation.Draw(piece, hands, settings, trial);
                    var right = drawn.Zip(piece.Colours).Count(pair => pair.First == pair.Second);
                    Assert.Equal(result.Shares[trial], (double)right / piece.Stitches);
                }
            },
            seed: 911, cases: 60);
    }

    [Fact]
    public void The_typical_trial_lies_nearest_to_the_median()
    {
        var result = TensionSimulation.Run(
            Pieces.Of([5, 4, 6, 7], 40, 30), HandModel.Create(0.01, 50), new SimulationSettings { Trials = 40 },
            cancellation: TestContext.Current.CancellationToken);
        var nearest = result.Shares.Min(s => Math.Abs(s - result.Median));
        Assert.Equal(nearest, Math.Abs(result.Shares[result.Typical] - result.Median));
    }

    [Fact]
    public void Hands_without_fault_draw_the_piece_as_it_is_planned_and_worn()
    {
        foreach (var project in new[] { TestProjects.Tideline.Directed(Direction.Up), TestProjects.Tideline.Directed(Direction.Sideways) })
        {
            var plan = project.Planned();
            foreach (var piece in plan.Sizes[4].Pieces.Where(p => p.Pooled))
            {
                var planned = PlannedPiece.Of(plan, piece);
                var drawn = TensionSimulation.Draw(planned, HandModel.Create(0, 50), new SimulationSettings { Trials = 1 }, 0);
                Assert.Equal(WornPiece.Of(plan, piece).Cells, WornPiece.Of(plan, piece, drawn).Cells);
                // Other colours than planned fall where their stitches lie.
                drawn[piece.Stitches + 1] = (byte)(drawn[piece.Stitches + 1] == 0 ? 1 : 0);
                var other = WornPiece.Of(plan, piece, drawn);
                var path = PieceFabric.Of(plan, piece).Path;
                var fromRight = path.RunsBackwards(1) ? path.Cells(1) - 2 : 1;
                var differs = Enumerable.Range(0, other.Columns * other.Rows)
                    .Where(i => other.Cells[i] != WornPiece.Of(plan, piece).Cells[i])
                    .Select(i => other.At(i % other.Columns, i / other.Columns));
                Assert.Equal([(1, fromRight)], differs);
                Assert.Throws<ArgumentException>(() => WornPiece.Of(plan, piece, drawn.AsSpan(1)));
            }
        }
        var plain = TestProjects.Tideline.Sleeved(pooled: false).Planned();
        Assert.Throws<ArgumentException>(() => PlannedPiece.Of(plain, plain.Sizes[0].Pieces[2]));
    }

    [Fact]
    public void Trials_are_numbered_from_0() => Assert.Throws<ArgumentOutOfRangeException>(
        () => TensionSimulation.Draw(Pieces.Of([5, 4], 9, 9), HandModel.Create(0.01, 50), new SimulationSettings { Trials = 5 }, 5));
}
