using Dyepath.Core.Making;
using Dyepath.Core.Making.Drift;

namespace Dyepath.Core.Tests.Making.Drift;

public sealed class HoldableWorkTests
{
    private static readonly PlannedPiece Panel = Pieces.Of([5, 4, 6, 7], 83, 72);

    [Fact]
    public void Known_steady_hands_hold_the_width()
    {
        HoldableWork work = HoldableWork.For(Panel, World(0.01), CheckHabit.EveryRow);
        Assert.True(work.Holds);
        Assert.Null(work.Narrower);
        Assert.Equal("Your hands hold this width.", DriftWords.Say(work));
    }

    [Fact]
    public void Law_each_remedy_for_unsteady_hands_holds_for_other_makers_too()
    {
        HoldableWork work = HoldableWork.For(Panel, World(0.05), CheckHabit.EveryRow);
        Assert.False(work.Holds);
        string said = DriftWords.Say(work);
        Assert.StartsWith("Your hands cannot hold this width", said);
        Assert.DoesNotContain("%", said);

        // More makers, of another seed, with what is said done to a piece built from scratch.
        double Median(CheckHabit check, int stitches, double spread) => MakerSimulation.Run(
            Pieces.Of([5, 4, 6, 7], stitches, 72), World(spread), new MakerPolicy(check, Steering.Advice), 100, seed: 77).Share.Value;
        Assert.True(Median(CheckHabit.EveryRow, 83, 0.05) < 0.75);
        Assert.True(work.SectionsHold);
        Assert.True(Median(CheckHabit.EverySection, 83, 0.05) > 0.8);
        Assert.Equal((83 + work.Narrower!.Count - 1) / work.Narrower.Count, work.Narrower.Stitches);
        Assert.True(Median(work.Narrower.Check, work.Narrower.Stitches, 0.05) > 0.79);
        Assert.True(Median(CheckHabit.EveryRow, 83, 0.05 * work.Steadier!.Value) > 0.79);
        Assert.Contains($"panels of {work.Narrower.Stitches} stitches", said);
        Assert.Contains("look where every colour ends", said);
    }

    [Fact]
    public void Known_hopeless_hands_are_told_so()
    {
        HoldableWork work = HoldableWork.For(Panel, World(0.2), CheckHabit.EveryRow, makers: 10);
        Assert.False(work.Holds || work.SectionsHold);
        Assert.True(work.Narrower is null && work.Steadier is null);
        Assert.Contains("Neither", DriftWords.Say(work));
    }

    [Fact]
    public void The_makers_are_like_the_one_that_the_filter_knows()
    {
        DriftFilter filter = DriftFilter.Begin(new DriftModel(0.02, 30) { Bias = 0.01, Misreads = 0.1 }).Predict(83, 0.01).Observe(2);
        MakerWorld world = MakerWorld.Of(filter, 0.05, 0.02);
        DriftModel told = world.Model(Panel);
        Assert.Equal((filter.BiasMean, filter.GainMean, filter.GainSd), (told.Bias, told.Gain, told.GainSpread));
        Assert.Equal(filter.BiasSd, told.BiasSpread, 1e-12);
        Assert.Equal((filter.Spread, 30, 0.1), (told.Spread, told.Memory, told.Misreads));
        Assert.Equal(0.05, world.Hands.LargestCorrection);
    }

    private static MakerWorld World(double spread) => new() { Hands = HandModel.Create(spread, 50) };
}
