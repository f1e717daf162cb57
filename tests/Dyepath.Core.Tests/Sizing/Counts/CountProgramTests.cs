using System.Collections.Immutable;
using Dyepath.Core.Quantities;
using Dyepath.Core.Sizing.Counts;

namespace Dyepath.Core.Tests.Sizing.Counts;

public class CountProgramTests
{
    private static readonly double[] FineCentimetres = [.. Enumerable.Range(0, 2001).Select(mm => mm / 10.0)];

    public static TheoryData<string, double> BestSingleCounts => new()
    {
        { "squared", 102 },
        { "absolute", 94 },
        { "worst", 110 },
    };

    /// <summary>Statistics: the mean minimises squares, the median magnitudes, the midrange the largest magnitude.</summary>
    [Theory]
    [MemberData(nameof(BestSingleCounts))]
    public void Known_one_count_for_all_is_the_mean_the_median_or_the_midrange(string loss, double expected)
    {
        CountProblem problem = CountProblem.Create(
            Sizes(80, 88, 94, 108, 140),
            Counts(FineCentimetres),
            loss == "absolute" ? ErrorLoss.Absolute : ErrorLoss.Squared,
            loss == "worst" ? GradingCriterion.WorstError : GradingCriterion.Total);
        int chosen = Assert.Single(problem.Plan(1).Counts);
        Assert.Equal(Length.FromCentimetres(expected), problem.Candidates[chosen].Measure);
    }

    /// <summary>Worked by hand: 10, 11 | 20, 22 leaves 0.5² twice and 1² twice.</summary>
    [Fact]
    public void Known_two_groups_get_a_count_each()
    {
        CountProblem problem = CountProblem.Create(Sizes(22, 10, 20, 11), Counts(10.5, 15, 21, 40));
        CountPlan plan = problem.Plan(2);
        Assert.Equal([2, 0, 2, 0], plan.Sizes.Select(s => s.Candidate));
        Assert.Equal([-1, 0.5, 1, -0.5], plan.Sizes.Select(s => s.Error.Centimetres));
        Assert.Equal(2.5, plan.Objective);
        Assert.Equal(Length.FromCentimetres(1), plan.WorstError);
        Assert.Equal(Length.FromCentimetres(Math.Sqrt(2.5 / 4)), plan.RmsError);
    }

    /// <summary>
    /// Why unscaled penalties need branch and bound: the light size between two heavy ones shuns the
    /// penalty that they accept, so the sizes on count 0 are not neighbours.
    /// </summary>
    [Fact]
    public void Known_unscaled_penalties_break_the_interval_structure()
    {
        ImmutableArray<SizeTarget> sizes = [Size(9) with { Weight = 100 }, Size(10), Size(11) with { Weight = 100 }];
        ImmutableArray<CountCandidate> counts = [new(Length.FromCentimetres(10), 20), new(Length.FromCentimetres(14))];
        CountProblem unscaled = CountProblem.Create(sizes, counts, penaltyScale: PenaltyScale.Unscaled);
        CountPlan plan = unscaled.Plan(2);
        Assert.False(new CountSolver(unscaled).IsInterval);
        Assert.Equal([0, 1, 0], plan.Sizes.Select(s => s.Candidate));
        Assert.Equal(120 + 16 + 120, plan.Objective);

        // Cut into two runs the best is all on the first count: 120 + 20 + 120.
        Assert.Equal(260, unscaled.Plan(1).Objective);
        Assert.True(new CountSolver(CountProblem.Create(sizes, counts)).IsInterval);
    }

    /// <summary>
    /// The worst loss caps the choice by loss + penalty, the total then prefers by weight × loss + penalty:
    /// with equal weights other than 1 these differ, and the size in the middle goes its own way.
    /// </summary>
    [Fact]
    public void Known_the_worst_loss_with_unscaled_penalties_breaks_it_even_with_equal_weights()
    {
        ImmutableArray<SizeTarget> sizes = [.. Sizes(9, 11, 13).Select(size => size with { Weight = 100 })];
        ImmutableArray<CountCandidate> counts = [new(Length.FromCentimetres(10)), new(Length.FromCentimetres(11), 2.5)];
        CountProblem problem = CountProblem.Create(sizes, counts, ErrorLoss.Absolute, GradingCriterion.WorstLoss, PenaltyScale.Unscaled);
        CountPlan plan = problem.Plan(2);
        Assert.Equal([0, 1, 0], plan.Sizes.Select(s => s.Candidate));
        Assert.Equal((3, 402.5), (plan.Objective, plan.TotalLoss));
        Assert.False(new CountSolver(problem).IsInterval);
        Assert.True(new CountSolver(problem.By(GradingCriterion.Total)).IsInterval);
    }

    /// <summary>Far away a loss that stops growing leaves only the penalty to compare, on both sides of the dearer count.</summary>
    [Fact]
    public void Known_a_loss_that_stops_growing_breaks_the_interval_structure()
    {
        ImmutableArray<CountCandidate> counts = [new(Length.FromCentimetres(10)), new(Length.FromCentimetres(12), 1)];
        CountProblem problem = CountProblem.Create(Sizes(5, 12, 30), counts, Instances.Capped);
        Assert.Equal([0, 1, 0], problem.Plan(2).Sizes.Select(s => s.Candidate));
    }

    [Fact]
    public void Known_a_pinned_count_is_open_to_the_other_sizes_and_counted()
    {
        ImmutableArray<SizeTarget> sizes = [Size(10), Size(12) with { Pinned = 2 }, Size(20)];
        CountProblem problem = CountProblem.Create(sizes, Counts(10, 12, 19, 20));
        CountPlan one = problem.Plan(1);
        Assert.Equal([2, 2, 2], one.Sizes.Select(s => s.Candidate));
        CountPlan two = problem.Plan(2);
        Assert.Equal([0, 2, 2], two.Sizes.Select(s => s.Candidate));
        Assert.Equal(49 + 1, two.Objective);
        Assert.Equal(50 - 4, problem.CostOfPin(two, 1));
    }

    [Fact]
    public void Known_ties_go_to_fewer_counts_and_then_to_the_smaller_count()
    {
        CountProblem halfway = CountProblem.Create(Sizes(10), Counts(11, 9));
        Assert.Equal(1, halfway.Plan(1).Sizes[0].Candidate);

        // 9 and 11 serve 10 equally well; 11 is needed for 11 anyhow.
        CountProblem shared = CountProblem.Create(Sizes(10, 11), Counts(9, 11));
        Assert.Equal([1, 1], shared.Plan(2).Sizes.Select(s => s.Candidate));
        Assert.Equal([1, 1], Instances.BySearch(shared).Plan(2).Sizes.Select(s => s.Candidate));

        CountProblem twice = CountProblem.Create(Sizes(10), Counts(10, 10));
        Assert.Equal(0, twice.Plan(1).Sizes[0].Candidate);
    }

    [Fact]
    public void Known_the_worst_loss_includes_penalties_and_the_worst_error_does_not()
    {
        ImmutableArray<CountCandidate> counts = [new(Length.FromCentimetres(10), 9), new(Length.FromCentimetres(12), 1)];
        CountProblem byError = CountProblem.Create(Sizes(10), counts, criterion: GradingCriterion.WorstError);
        Assert.Equal((0, 0.0, 9.0), Summary(byError));
        Assert.Equal((1, 5.0, 5.0), Summary(byError.By(GradingCriterion.WorstLoss)));

        static (int, double, double) Summary(CountProblem problem) =>
            problem.Solve(1).Plan is { } plan ? (plan.Sizes[0].Candidate, plan.Objective, plan.TotalLoss) : default;
    }

    [Fact]
    public void Invalid_a_problem_without_a_plan_says_which_sizes_are_to_blame()
    {
        ErrorLoss near = ErrorLoss.Squared.Within(Length.FromCentimetres(-2), Length.FromCentimetres(2));
        AssertNone(CountProblem.Create(Sizes(50, 10, 90), Counts(11), near), 3, NoPlanReason.SizeHasNoCandidate, 0, 2);
        AssertNone(CountProblem.Create(Sizes(10), []), 1, NoPlanReason.SizeHasNoCandidate, 0);
        AssertNone(CountProblem.Create(Sizes(10, 20), Counts(10, 20), near), 1, NoPlanReason.TooFewCounts);
        AssertNone(
            CountProblem.Create([Size(10), Size(20) with { Pinned = 0 }], Counts(10, 20), near), 2, NoPlanReason.PinNotAllowed, 1);
        AssertNone(
            CountProblem.Create([Size(10) with { Pinned = 0, Excluded = [0] }], Counts(10)), 1, NoPlanReason.PinNotAllowed, 0);
        AssertNone(
            CountProblem.Create([Size(10) with { Pinned = 0 }, Size(15), Size(20) with { Pinned = 1 }], Counts(10, 20)),
            1, NoPlanReason.PinsUseTooManyCounts, 0, 2);
        AssertNone(
            CountProblem.Create([Size(10) with { Excluded = [1] }, Size(5) with { Excluded = [0] }], Counts(10, 20)),
            1, NoPlanReason.TooFewCounts);
    }

    [Fact]
    public void Invalid_arguments_are_named()
    {
        AssertNames("sizes", () => CountProblem.Create([], Counts(1)));
        AssertNames("sizes", () => CountProblem.Create(default, Counts(1)));
        AssertNames("candidates", () => CountProblem.Create(Sizes(1), default));
        AssertNames("sizes[1].Weight", () => CountProblem.Create([Size(1), Size(1) with { Weight = double.NaN }], Counts(1)));
        AssertNames("sizes[0].Weight", () => CountProblem.Create([Size(1) with { Weight = 0 }], Counts(1)));
        AssertNames("sizes[0].Pinned", () => CountProblem.Create([Size(1) with { Pinned = 1 }], Counts(1)));
        AssertNames("sizes[0].Excluded", () => CountProblem.Create([Size(1) with { Excluded = [-1] }], Counts(1)));
        AssertNames("sizes[0].Target", () => CountProblem.Create([new SizeTarget(Length.FromMetres(2000))], Counts(1)));
        AssertNames("candidates[0].Penalty", () => CountProblem.Create(Sizes(1), [new(Length.Zero, -1)]));
        AssertNames("criterion", () => CountProblem.Create(Sizes(1), Counts(1), criterion: (GradingCriterion)9));
        AssertNames("counts", () => CountProblem.Create(Sizes(1), Counts(1)).Solve(0));
        AssertNames("size", () => CountProblem.Create(Sizes(1), Counts(1)).WithoutPin(0));
        AssertNames("tooSmall", () => ErrorLoss.Squared.Within(Length.FromCentimetres(1), Length.FromCentimetres(2)));
        Assert.Throws<InvalidOperationException>(() =>
            CountProblem.Create(Sizes(1), Counts(1), ErrorLoss.Convex("broken", _ => double.NaN)).Solve(1));
    }

    [Fact]
    public void Extreme_all_sizes_pinned_leaves_nothing_to_choose()
    {
        CountProblem problem = CountProblem.Create([Size(10) with { Pinned = 1 }, Size(20) with { Pinned = 1 }], Counts(10, 20));
        foreach (GradingCriterion criterion in Enum.GetValues<GradingCriterion>())
            Assert.Equal([1, 1], problem.By(criterion).Plan(5).Sizes.Select(s => s.Candidate));
    }

    [Fact]
    public void Extreme_targets_and_weights_at_the_ends_of_their_ranges()
    {
        ImmutableArray<SizeTarget> sizes =
            [Size(-100_000) with { Weight = 1e6 }, Size(100_000) with { Weight = 1e-6 }, Size(0)];
        CountProblem problem = CountProblem.Create(sizes, Counts(-100_000, 0, 100_000));
        Assert.Equal([0, 2, 1], problem.Plan(3).Sizes.Select(s => s.Candidate));
        Assert.Equal([0, 1, 1], problem.Plan(2).Sizes.Select(s => s.Candidate));
    }

    [Theory]
    [InlineData(GradingCriterion.Total, 0.3)]
    [InlineData(GradingCriterion.WorstError, 0.05)]
    [InlineData(GradingCriterion.Total, 0)]
    public void Extreme_forty_sizes_and_a_thousand_counts_are_solved(GradingCriterion criterion, double refused)
    {
        CountProblem problem = Instances.Large(40, 1000, refused, 1, criterion);
        double before = double.PositiveInfinity;
        foreach (int counts in new[] { 4, 8, 40 })
        {
            CountPlan plan = problem.Plan(counts);
            Assert.InRange(plan.Counts.Length, 1, counts);
            Assert.True(plan.Objective <= before);
            before = plan.Objective;
        }
    }

    [Fact]
    public void Extreme_a_cancelled_search_stops()
    {
        CountProblem problem = Instances.Large(40, 1000, 0.5, 1);
        Assert.Throws<OperationCanceledException>(() => CountProgram.Solve(problem, 8, new CancellationToken(canceled: true)));
    }

    private static SizeTarget Size(double centimetres) => new(Length.FromCentimetres(centimetres));

    private static ImmutableArray<SizeTarget> Sizes(params double[] centimetres) => [.. centimetres.Select(Size)];

    private static ImmutableArray<CountCandidate> Counts(params double[] centimetres) =>
        [.. centimetres.Select(cm => new CountCandidate(Length.FromCentimetres(cm)))];

    private static void AssertNone(CountProblem problem, int counts, NoPlanReason reason, params int[] sizes)
    {
        CountResult result = problem.Solve(counts);
        Assert.False(result.HasPlan);
        Assert.Equal(reason, result.NoPlan.Reason);
        Assert.Equal(sizes, result.NoPlan.Sizes);
    }

    private static void AssertNames(string name, Action action) =>
        Assert.Contains(name, Assert.ThrowsAny<ArgumentException>(action).ParamName, StringComparison.Ordinal);
}
