using Dyepath.Core.Making.Work;
using Dyepath.Core.Planning;
using Dyepath.Core.Projects;
using Xunit;

namespace Dyepath.Core.Tests.Making.Work;

public sealed class OwnYarnTests
{
    private static readonly Project Tideline = ProjectReader.Read(DemoProject.Utf8).Project!;
    private static readonly Plan Plan = GarmentPlanner.Plan(Tideline).Plan!;

    [Theory]
    // The pattern's own counts are 5, 4, 3, 5, 4: 21 stitches.
    [InlineData(new[] { 5, 4, 3, 5, 4 }, new[] { 5, 4, 3, 5, 4 }, OwnYarnVerdict.Fits, 0)]
    [InlineData(new[] { 5, 4, 3, 5, 4 }, new[] { 5, 4, 4, 5, 4 }, OwnYarnVerdict.Fits, 21 / 21.5 - 1)]
    [InlineData(new[] { 5, 4, 4, 5, 4 }, new[] { 5, 4, 4, 5, 4 }, OwnYarnVerdict.HookUp, 21 / 22.0 - 1)]
    [InlineData(new[] { 4, 4, 3, 4, 4 }, new[] { 4, 4, 3, 4, 4 }, OwnYarnVerdict.HookDown, 21 / 19.0 - 1)]
    public void Her_yarn_is_held_against_the_pattern_s(int[] first, int[] second, OwnYarnVerdict verdict, double bias)
    {
        var own = OwnYarn.Of(Tideline, Plan.Sequence.Ring, [[.. first], [.. second]]);
        Assert.Equal(verdict, own.Verdict);
        Assert.Equal(bias, own.Bias, 1e-12);
        Assert.InRange(own.BiasSd, 0.005, 0.04);
    }

    [Fact]
    public void A_piece_worked_out_anew_has_her_sequence()
    {
        var hers = OwnYarn.Rederive(Tideline, [[5, 4, 4, 5, 4], [5, 4, 4, 5, 4]]);
        var plan = GarmentPlanner.Plan(hers).Plan!;
        Assert.Equal(22, plan.Sequence.Ring.SequenceUnits);
        Assert.Equal(22, OwnYarn.Of(hers, plan.Sequence.Ring, [[5, 4, 4, 5, 4]]).Planned);
        Assert.NotEqual(Plan.Sizes[2].Pieces[0].Stitches, plan.Sizes[2].Pieces[0].Stitches);
    }

    [Fact]
    public void Every_colour_is_counted() =>
        Assert.Throws<ArgumentException>(() => OwnYarn.Of(Tideline, Plan.Sequence.Ring, [[5, 4, 3]]));
}
