using Dyepath.Core.Fabrics;
using Dyepath.Core.Garments;
using Dyepath.Core.Motifs;
using Dyepath.Core.Planning;
using Dyepath.Core.Tests.Instructions;

namespace Dyepath.Core.Tests.Garments;

/// <summary>What a count is charged for, in square centimetres of misfit.</summary>
public sealed class GraderTests
{
    /// <summary>
    /// The weight of forgiveness is charged whole where nothing is forgiven, half at 1 % of yarn a stitch and a third at 2 %; the weight of
    /// clarity by the part of it that is missing.
    /// </summary>
    [Theory]
    [InlineData(0, 1, 12)]
    [InlineData(0.01, 1, 6)]
    [InlineData(0.02, 1, 4)]
    [InlineData(0, 0.75, 12 + 2)]
    [InlineData(0.01, 0, 6 + 8)]
    public void A_count_is_charged_for_what_it_does_not_forgive_and_does_not_show(double forgives, double clarity, double charged)
    {
        var choice = TestProjects.Tideline.Garment.Grading with { ForgivenessWeight = 12, ClarityWeight = 8 };
        var found = Found();
        var finding = found with { Forgiveness = new Forgiveness(-forgives, 0.5), Reading = found.Reading with { RelativeClarity = clarity } };
        Assert.Equal(charged, Grader.Penalty(finding, choice), 1e-9);
        Assert.Equal(charged, Grader.Penalty(finding with { Forgiveness = new Forgiveness(-0.5, forgives) }, choice), 1e-9);
        Assert.Equal(12 + 8 * (1 - clarity), Grader.Penalty(finding with { Forgiveness = null }, choice), 1e-9);
    }

    private static CountFinding Found()
    {
        var plan = Patterns.Named("worked up").Planned();
        var options = SharedFabric.Of(plan).Counts(Direction.Up, Working.Turned, 40, 120, 80);
        return CountFinder.Find(plan.Sequence.Ring, options).Counts[0];
    }
}
