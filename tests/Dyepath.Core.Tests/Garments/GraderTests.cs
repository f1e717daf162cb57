using System.Collections.Immutable;
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

    /// <summary>
    /// What is asked of sizes becomes the program's: a girth rises by a centimetre, weighs too little as four times too much, and has the
    /// largest body for a floor; another measure only never falls; widths that may be uneven and leans that may differ bind nothing.
    /// </summary>
    [Theory]
    [InlineData(true, false, false, 1.0, 4, true)]
    [InlineData(false, false, false, 0.0, 1, true)]
    [InlineData(true, true, false, null, 4, false)]
    [InlineData(true, false, true, 1.0, 4, true)]
    public void What_sizes_ask_is_put_to_the_program(bool girth, bool uneven, bool severalLeans, double? rise, double tooSmall, bool floors)
    {
        var found = Counts();
        ImmutableArray<GradedCount> counts = [.. found.Select((f, i) => GradedCount.Alone(f, TestProjects.Cm(80 + i), i))];
        var measure = new StitchMeasure(
            GarmentMeasure.Width, default, 0, null, ["S", "M", "L"], [TestProjects.Cm(81), TestProjects.Cm(85), TestProjects.Cm(90)], [null, found[1].Stitches, 7])
        {
            IsGirth = girth,
            Floors = [TestProjects.Cm(79), TestProjects.Cm(83), TestProjects.Cm(88)],
            Fewest = [0, 0, found[1].Stitches],
        };
        var choice = TestProjects.Tideline.Garment.Grading with { UnevenWidths = uneven, SeveralLeans = severalLeans, MostCounts = 3 };
        var own = counts.Select((_, i) => i == 2).ToImmutableArray();
        var problem = Grader.Problem(measure, choice, counts, own, []);
        Assert.Equal(rise, problem.Rules.LeastRise?.Centimetres);
        Assert.Equal((tooSmall, 3, 0.5), (problem.Rules.TooSmall, problem.Rules.MostCounts, problem.Rules.CountSaving.Centimetres));
        Assert.Equal(severalLeans ? null : 0.25, problem.Rules.LeanTolerance);
        Assert.Equal(measure.Targets, problem.Sizes.Select(s => s.Target));
        Assert.Equal(floors ? measure.Floors.Select(f => (Quantities.Length?)f) : [null, null, null], problem.Sizes.Select(s => s.Floor));
        // Fixed counts are found among those offered; one that is none of them fixes nothing.
        Assert.Equal([null, 1, null], problem.Sizes.Select(s => s.Pinned));
        // A count that does not make the motif is only for who has it fixed, and one of too few stitches for nobody.
        Assert.Equal(["2", "2", "0 2"], problem.Sizes.Select(s => string.Join(' ', s.Excluded.Order())));
        Assert.Equal(Enumerable.Range(0, counts.Length), problem.Ways.Select(w => w.Chart));
        Assert.Equal(counts.Select(c => (c.Measure, c.Penalty)), problem.Ways.Select(w => (w.Measure, w.Penalty)));
        Assert.Equal(counts.Select((c, i) => own[i] ? null : (double?)c.Front.Lean), problem.Ways.Select(w => w.Lean));
        Assert.All(problem.Sizes, s => Assert.Equal(1, s.Tolerance));
    }

    private static ImmutableArray<CountFinding> Counts()
    {
        var plan = Patterns.Named("worked up").Planned();
        var options = SharedFabric.Of(plan).Counts(Direction.Up, Working.Turned, 40, 120, 80);
        return [.. CountFinder.Find(plan.Sequence.Ring, options).Counts.DistinctBy(c => c.Stitches).OrderBy(c => c.Stitches).Take(4)];
    }

    private static CountFinding Found()
    {
        var plan = Patterns.Named("worked up").Planned();
        var options = SharedFabric.Of(plan).Counts(Direction.Up, Working.Turned, 40, 120, 80);
        return CountFinder.Find(plan.Sequence.Ring, options).Counts[0];
    }
}
