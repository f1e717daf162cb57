using CsCheck;
using Dyepath.Core.Quantities;
using Dyepath.Core.Sizing.Counts;

namespace Dyepath.Core.Tests.Sizing.Counts;

public class CountProgramLawTests
{
    [Fact]
    public void Interval_programming_agrees_with_trying_every_set_of_counts() =>
        Instances.Interval(6, 7).Holds(
            problem =>
            {
                Assert.True(new CountSolver(problem).IsInterval);
                Enumerable.Range(1, problem.Sizes.Length).ToList().ForEach(counts => AgreesWithBruteForce(problem, counts));
            },
            seed: 0xa1, cases: 1_000);

    [Fact]
    public void Branch_and_bound_agrees_with_trying_every_set_of_counts() =>
        Instances.Any(6, 7).Holds(
            problem => Enumerable.Range(1, problem.Sizes.Length).ToList().ForEach(counts => AgreesWithBruteForce(problem, counts)),
            seed: 0xa2, cases: 1_000);

    /// <summary>Sizes may refuse counts, but the run of counts that a size allows only moves up with its target.</summary>
    [Fact]
    public void Interval_programming_is_exact_when_exclusions_move_with_targets() =>
        Gen.Select(Instances.Interval(6, 7), Gen.Int[0, 120], Gen.Int[0, 120]).Holds(
            (problem, below, above) =>
            {
                CountProblem windowed = CountProblem.Create(
                    [.. problem.Sizes.Select(size => size with
                    {
                        Pinned = null,
                        Excluded = [.. Enumerable.Range(0, problem.Candidates.Length).Where(i =>
                            problem.Candidates[i].Measure < size.Target - Length.FromMillimetres(below)
                            || problem.Candidates[i].Measure > size.Target + Length.FromMillimetres(above))],
                    })],
                    problem.Candidates, problem.Loss, problem.Criterion);
                if (windowed.Sizes.All(size => size.Excluded.Length < windowed.Candidates.Length))
                    Assert.True(new CountSolver(windowed).IsInterval);
                Enumerable.Range(1, problem.Sizes.Length).ToList().ForEach(counts => AgreesWithBruteForce(windowed, counts));
            },
            seed: 0xa3, cases: 1_000);

    [Fact]
    public void Sizes_that_share_a_count_are_neighbours_by_target_when_penalties_follow_weights() =>
        Instances.Interval(8, 12).Holds(
            problem =>
            {
                foreach (CountResult result in CountProgram.SolveEach(problem))
                {
                    if (result.Plan is not { } plan)
                        continue;
                    int[] free = [.. Enumerable.Range(0, problem.Sizes.Length)
                        .Where(s => problem.Sizes[s].Pinned is null).OrderBy(s => problem.Sizes[s].Target).ThenBy(s => s)];
                    int[] runs = [.. free.Select(s => plan.Sizes[s].Candidate)];
                    int starts = runs.Where((candidate, p) => p == 0 || candidate != runs[p - 1]).Count();
                    Assert.Equal(runs.Distinct().Count(), starts);
                }
            },
            seed: 0xa4, cases: 500);

    [Fact]
    public void Branch_and_bound_reaches_the_interval_optimum() =>
        Gen.Select(Gen.Int[1, 20], Gen.Int[1, 120], Gen.Int[1, 6], Gen.Int, Gen.OneOf(Enum.GetValues<GradingCriterion>())).Holds(
            (sizes, candidates, counts, seed, criterion) =>
            {
                CountProblem problem = Instances.Large(sizes, candidates, 0, seed, criterion);
                CountPlan expected = problem.Plan(counts);
                CountPlan actual = Instances.BySearch(problem).Plan(counts);
                Assert.Equal(expected.Objective, actual.Objective, 1e-7);
                Assert.Equal(expected.TotalLoss, actual.TotalLoss, 1e-7 * (1 + expected.TotalLoss));
                Assert.Equal(expected.Counts.Length, actual.Counts.Length);
            },
            seed: 0xa5, cases: 150);

    [Fact]
    public void More_counts_or_more_candidates_never_cost_more() =>
        Instances.Any(6, 8).Holds(
            problem =>
            {
                CountProblem fewer = CountProblem.Create(
                    [.. problem.Sizes.Select(s => s with { Pinned = null, Excluded = [.. s.Excluded.Where(i => i < problem.Candidates.Length - 1)] })],
                    problem.Candidates[..^1], problem.Loss, problem.Criterion, problem.PenaltyScale);
                CountProblem all = CountProblem.Create(
                    [.. problem.Sizes.Select(s => s with { Pinned = null })],
                    problem.Candidates, problem.Loss, problem.Criterion, problem.PenaltyScale);
                double before = double.PositiveInfinity;
                for (int counts = 1; counts <= problem.Sizes.Length; counts++)
                {
                    double objective = Objective(all, counts);
                    Assert.True(objective <= before + 1e-9);
                    Assert.True(objective <= Objective(fewer, counts) + 1e-9);
                    before = objective;
                }
            },
            seed: 0xa6, cases: 500);

    [Fact]
    public void The_order_in_which_sizes_and_candidates_are_given_does_not_matter() =>
        Gen.Select(Instances.Interval(7, 10), Gen.Int[1, 4], Gen.Int).Holds(
            (problem, counts, seed) =>
            {
                Random random = new(seed);
                int[] sizes = [.. Enumerable.Range(0, problem.Sizes.Length).OrderBy(_ => random.Next())];
                int[] candidates = [.. Enumerable.Range(0, problem.Candidates.Length).OrderBy(_ => random.Next())];
                CountProblem shuffled = CountProblem.Create(
                    [.. sizes.Select(s => problem.Sizes[s] with
                    {
                        Pinned = problem.Sizes[s].Pinned is int pin ? Array.IndexOf(candidates, pin) : null,
                    })],
                    [.. candidates.Select(i => problem.Candidates[i])], problem.Loss, problem.Criterion);
                Assert.Equal(Objective(problem, counts), Objective(shuffled, counts), 1e-9);
            },
            seed: 0xa7, cases: 500);

    [Fact]
    public void Moving_targets_and_measures_together_changes_nothing() =>
        Gen.Select(Instances.Any(6, 8), Gen.Int[-5000, 5000], Gen.Int[1, 3]).Holds(
            (problem, millimetres, counts) =>
            {
                Length by = Length.FromMillimetres(millimetres);
                CountProblem moved = CountProblem.Create(
                    [.. problem.Sizes.Select(s => s with { Target = s.Target + by })],
                    [.. problem.Candidates.Select(c => c with { Measure = c.Measure + by })],
                    problem.Loss, problem.Criterion, problem.PenaltyScale);
                Assert.Equal(problem.Solve(counts).Plan?.Sizes.AsEnumerable(), moved.Solve(counts).Plan?.Sizes.AsEnumerable());
            },
            seed: 0xa8, cases: 300);

    [Fact]
    public void A_pin_costs_the_difference_that_taking_it_out_makes() =>
        Gen.Select(Instances.Any(5, 6), Gen.Int[1, 3]).Holds(
            (problem, counts) =>
            {
                if (problem.Solve(counts).Plan is not { } plan)
                    return;
                foreach (int size in Enumerable.Range(0, problem.Sizes.Length).Where(s => problem.Sizes[s].Pinned is not null))
                {
                    double without = BruteForce.Solve(problem.WithoutPin(size), counts)!.Value.Objective;
                    Assert.Equal(plan.Objective - without, problem.CostOfPin(plan, size), 1e-9 * (1 + without));
                }
            },
            seed: 0xa9, cases: 1_000);

    private static double Objective(CountProblem problem, int counts) =>
        problem.Solve(counts).Plan?.Objective ?? double.PositiveInfinity;

    private static void AgreesWithBruteForce(CountProblem problem, int counts)
    {
        CountResult result = problem.Solve(counts);
        (double Objective, double Total, int Counts)? expected = BruteForce.Solve(problem, counts);
        Assert.Equal(expected is not null, result.HasPlan);
        if (expected is not { } best || result.Plan is not { } plan)
            return;
        Assert.Equal(best.Objective, plan.Objective, 1e-9 * (1 + best.Objective));
        Assert.Equal(best.Total, plan.TotalLoss, 1e-9 * (1 + best.Total));
        Assert.Equal(best.Counts, plan.Counts.Length);
        Assert.All(problem.Sizes.Zip(plan.Sizes), pair =>
        {
            Assert.True(pair.First.Pinned is null || pair.First.Pinned == pair.Second.Candidate);
            Assert.DoesNotContain(pair.Second.Candidate, pair.First.Excluded);
            Assert.Equal(problem.Candidates[pair.Second.Candidate].Measure - pair.First.Target, pair.Second.Error);
        });
    }
}
