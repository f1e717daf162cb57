using System.Collections.Immutable;
using CsCheck;
using Dyepath.Core.Limits;
using Dyepath.Core.Planning;
using Dyepath.Core.Quantities;
using static Dyepath.Core.Tests.Garments.TestProjects;

namespace Dyepath.Core.Tests.Garments.Grading;

/// <summary>The one program for curve and plan, with all its rules together.</summary>
public sealed class GradingProgramTests
{
    [Fact]
    public void Curve_and_plan_agree_with_trying_every_choice() => GradingInstances.Small(4, 7).Holds(AgreesWithTryingAll, seed: 0xb1, cases: 4_000);

    [Fact]
    public void Five_sizes_of_few_ways_agree_too() => GradingInstances.Small(6, 4).Holds(AgreesWithTryingAll, seed: 0xb2, cases: 1_000);

    /// <summary>What the curve promises at a number of counts is what a plan with that number delivers, to the size.</summary>
    [Fact]
    public void The_curve_delivers_what_it_promises() => GradingInstances.Small(5, 7).Holds(
        problem =>
        {
            foreach (var point in Solved(problem).Curve)
            {
                var allowed = problem with { Rules = problem.Rules with { MostCounts = point.Allowed } };
                var asked = Solved(allowed).Plan!;
                Assert.Equal(point.Plan.Picks, asked.Picks);
                Assert.Equal(asked.Picks, GradingProgram.Plan(allowed, new Effort())!.Picks);
                Assert.Equal(point.Plan.WorstError, asked.WorstError);
                Assert.True(asked.Charts.Length <= point.Allowed);
            }
        },
        seed: 0xb3, cases: 500);

    [Fact]
    public void A_further_count_is_never_taken_for_less_than_it_must_save() => GradingInstances.Small(5, 7).Holds(
        problem =>
        {
            foreach (var (fewer, more) in Solved(problem).Curve.Zip(Solved(problem).Curve.Skip(1)))
            {
                var further = more.Plan.Charts.Length - fewer.Plan.Charts.Length;
                Assert.True(further >= 0);
                Assert.True(more.Plan.WorstMisfit <= fewer.Plan.WorstMisfit - further * problem.Rules.CountSaving);
            }
        },
        seed: 0xb4, cases: 500);

    [Fact]
    public void A_conflict_cannot_hold_and_could_without_any_part_of_it()
    {
        var conflicts = 0;
        GradingInstances.Small(4, 5).Holds(
            problem =>
            {
                if (Solved(problem).Plan is not null)
                    return;
                conflicts++;
                var conflict = GradingConflicts.Smallest(problem, new Effort());
                Assert.True(conflict.IsProven);
                Assert.False(EveryGrading.CanHold(Only(problem, conflict)));
                if (conflict.Sizes.Length > 1)
                    Assert.All(conflict.Sizes, s => Assert.True(EveryGrading.CanHold(Only(problem, conflict with { Sizes = conflict.Sizes.Remove(s) }))));
                Assert.All(conflict.Pins, s => Assert.True(EveryGrading.CanHold(Only(problem, conflict with { Pins = conflict.Pins.Remove(s) }))));
                Assert.True(!conflict.Rise || EveryGrading.CanHold(Only(problem, conflict with { Rise = false })));
                Assert.True(!conflict.Floor || EveryGrading.CanHold(Only(problem, conflict with { Floor = false })));
                Assert.True(!conflict.MostCounts || EveryGrading.CanHold(Only(problem, conflict with { MostCounts = false })));
                Assert.True(!conflict.OneLean || EveryGrading.CanHold(Only(problem, conflict with { OneLean = false })));
            },
            seed: 0xb5, cases: 600);
        Assert.InRange(conflicts, 100, 599);
    }

    /// <summary>Two counts 2 cm apart serve nine lengths within a third of a centimetre once the hem has 1 to 8 rounds.</summary>
    [Fact]
    public void Rounds_of_edging_close_the_gap_at_one_count()
    {
        ImmutableArray<GradingRounds> rounds = [.. Enumerable.Range(1, 8).Select(r => new GradingRounds(r, Cm(0.65 * r), 0.01 * Math.Abs(r - 4)))];
        ImmutableArray<GradingWay> ways = [GradingWay.Alone(0, Cm(62), 1, 0), GradingWay.Alone(1, Cm(64), 1, 0)];
        GradingProblem Of(ImmutableArray<GradingRounds> open) => new(
            [.. Enumerable.Range(0, 9).Select(s => new GradingSize(Cm(63 + 0.5 * s)) { Rounds = open })], ways, new GradingRules(9, Cm(0.5)));
        var graded = Solved(Of(rounds)).Plan!;
        Assert.Single(graded.Charts);
        Assert.True(graded.WorstError < Cm(0.33));
        Assert.True(Solved(Of([])).Plan!.WorstError > Cm(1));
    }

    /// <summary>Sizes that share a chart are not always neighbours: edging rounds fit one measure and not the next.</summary>
    [Fact]
    public void Sizes_that_share_a_count_need_not_be_neighbours()
    {
        ImmutableArray<GradingRounds> rounds = [new(1, Cm(1), 0), new(4, Cm(4), 0)];
        var problem = new GradingProblem(
            [.. new[] { 11.0, 12.5, 14 }.Select(t => new GradingSize(Cm(t)) { Rounds = rounds })],
            [GradingWay.Alone(0, Cm(10), 1, 0), GradingWay.Alone(1, Cm(11.5), 1, 0)],
            new GradingRules(2, Cm(0.5)) { LeastRise = Cm(1) });
        var plan = Solved(problem).Plan!;
        Assert.Equal([0, 1, 0], plan.Picks.Select(p => p.Way));
        Assert.Equal([1, 1, 4], plan.Picks.Select(p => p.Rounds));
        Assert.Equal(Length.Zero, plan.WorstError);
    }

    /// <summary>A real size of task stays provable: nine sizes, forty counts of two leans, bands and rounds.</summary>
    [Fact]
    public void Nine_sizes_of_forty_counts_are_proven()
    {
        var ways = Enumerable.Range(0, 40).SelectMany(c => Enumerable.Range(0, 4).Select(band =>
            GradingWay.Alone(c, Cm(70 + 2.1 * c + 2.6 * band), c % 2 == 0 ? 1 : 1.5, 1 + c % 3 + 2 * band))).ToImmutableArray();
        var problem = new GradingProblem(
            [.. Enumerable.Range(0, 9).Select(s => new GradingSize(Cm(84.3 + 7.9 * s)) { Floor = Cm(80 + 7.9 * s) })],
            ways, new GradingRules(9, Cm(0.5)) { LeastRise = Cm(1), LeanTolerance = 0, TooSmall = 4 });
        var answer = Solved(problem);
        Assert.NotNull(answer.Plan);
        Assert.True(answer.IsProven);
    }

    [Fact]
    public void Work_that_is_cut_short_is_said_and_keeps_the_rules()
    {
        var random = new Random(5);
        var ways = Enumerable.Range(0, 200).Select(c => GradingWay.Alone(c, Cm(60 + 0.37 * c), 1, c * 7919 % 31 / 10.0)).ToImmutableArray();
        var problem = new GradingProblem(
            [.. Enumerable.Range(0, 40).Select(s => new GradingSize(Cm(62.1 + 1.7 * s)) { Excluded = [.. Enumerable.Range(0, 200).Where(_ => random.NextDouble() < 0.8)] })],
            ways, new GradingRules(40, Length.Zero) { LeanTolerance = 0 });
        var effort = new Effort(2_000_000_000);
        var answer = GradingProgram.Solve(problem, effort);
        Assert.NotNull(answer.Plan);
        Assert.False(answer.IsProven);
        Assert.All(answer.Plan.Picks.Select((p, s) => (p.Way, s)), p => Assert.DoesNotContain(p.Way, problem.Sizes[p.s].Excluded));
    }

    private static void AgreesWithTryingAll(GradingProblem problem)
    {
        var most = problem.Sizes.Length * 2;
        var expected = EveryGrading.Curve(problem, most);
        var answer = Solved(problem);
        Assert.True(answer.IsProven);
        for (var k = 1; k <= problem.Sizes.Length; k++)
        {
            var plan = answer.Curve.SingleOrDefault(p => p.Allowed == k)?.Plan;
            Assert.Equal(expected[k - 1] is null, plan is null);
            if (expected[k - 1] is not { } best)
                continue;
            Assert.Equal(best.Cost, plan!.Cost, 1e-4);
            Assert.Equal(best.Worst, plan.WorstError.Centimetres, 1e-6);
            Assert.Equal(best.Counts, plan.Charts.Length);
        }
        Assert.Equal(EveryGrading.CanHold(problem), answer.Plan is not null);
        Assert.Equal(EveryGrading.CanHold(problem), GradingProgram.CanHold(problem, new Effort(), out _));
    }

    private static GradingAnswer Solved(GradingProblem problem) => GradingProgram.Solve(problem, new Effort());

    /// <summary>The sizes and rules of a conflict and none besides.</summary>
    private static GradingProblem Only(GradingProblem problem, GradingConflict conflict) => new(
        [
            .. conflict.Sizes.Select(s => problem.Sizes[s] with
            {
                Pinned = conflict.Pins.Contains(s) ? problem.Sizes[s].Pinned : null,
                Floor = conflict.Floor ? problem.Sizes[s].Floor : null,
            }),
        ],
        problem.Ways,
        problem.Rules with
        {
            MostCounts = conflict.MostCounts ? problem.Rules.MostCounts : 80,
            LeastRise = conflict.Rise ? problem.Rules.LeastRise : null,
            LeanTolerance = conflict.OneLean ? problem.Rules.LeanTolerance : null,
        });
}
