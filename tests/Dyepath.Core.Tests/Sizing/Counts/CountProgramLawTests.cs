using CsCheck;
using Dyepath.Core.Quantities;
using Dyepath.Core.Sizing.Counts;

namespace Dyepath.Core.Tests.Sizing.Counts;

public class CountProgramLawTests
{
    [Fact]
    public void Interval_programming_agrees_with_trying_every_set_of_counts() =>
        Instances.Interval(6, 7).Sample(
            problem =>
            {
                Assert.True(new CountSolver(problem).IsInterval);
                Enumerable.Range(1, problem.Sizes.Length).ToList().ForEach(counts => AgreesWithBruteForce(problem, counts));
            },
            seed: "0000000000a1", iter: 3000, threads: 1);

    [Fact]
    public void Branch_and_bound_agrees_with_trying_every_set_of_counts() =>
        Instances.Any(6, 7).Sample(
            problem => Enumerable.Range(1, problem.Sizes.Length).ToList().ForEach(counts => AgreesWithBruteForce(problem, counts)),
            seed: "0000000000a2", iter: 3000, threads: 1);

    private static void AgreesWithBruteForce(CountProblem problem, int counts)
    {
        CountResult result = CountProgram.Solve(problem, counts);
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
