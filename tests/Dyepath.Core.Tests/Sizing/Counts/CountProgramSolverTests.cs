using Dyepath.Core.Quantities;
using Dyepath.Core.Sizing.Counts;
using Google.OrTools.Sat;

namespace Dyepath.Core.Tests.Sizing.Counts;

/// <summary>
/// The grading program against Google OR-Tools' CP-SAT, on costs that are whole numbers: whole centimetres,
/// weights and penalties.
/// </summary>
public class CountProgramSolverTests
{
    [Theory]
    [InlineData(9, 20, 3, 1)]
    [InlineData(9, 30, 5, 2)]
    [InlineData(12, 24, 4, 3)]
    public void Totals_agree_with_an_exact_solver(int sizes, int candidates, int counts, int seed)
    {
        foreach (PenaltyScale scale in Enum.GetValues<PenaltyScale>())
        {
            foreach (double refused in new[] { 0, 0.5 })
            {
                CountProblem problem = Whole(sizes, candidates, refused, seed, GradingCriterion.Total, scale);
                double expected = CpSat(problem, counts, worst: false);
                Assert.Equal(expected, problem.Plan(counts).Objective);
            }
        }
    }

    [Theory]
    [InlineData(9, 30, 3, 5)]
    [InlineData(12, 24, 5, 6)]
    public void Worst_errors_agree_with_an_exact_solver(int sizes, int candidates, int counts, int seed)
    {
        foreach (double refused in new[] { 0, 0.5 })
        {
            CountProblem problem = Whole(sizes, candidates, refused, seed, GradingCriterion.WorstError, PenaltyScale.BySizeWeight);
            double expected = CpSat(problem, counts, worst: true);
            Assert.Equal(expected, problem.Plan(counts).WorstError.Centimetres);
        }
    }

    private static CountProblem Whole(
        int sizes, int candidates, double refused, int seed, GradingCriterion criterion, PenaltyScale scale)
    {
        Random random = new(seed);
        return CountProblem.Create(
            [.. Enumerable.Range(0, sizes).Select(_ => new SizeTarget(Length.FromCentimetres(random.Next(40, 140)), random.Next(1, 6))
            {
                Excluded = [.. Enumerable.Range(0, candidates).Where(_ => random.NextDouble() < refused)],
            })],
            [
                .. Enumerable.Range(0, candidates)
                    .Select(_ => new CountCandidate(Length.FromCentimetres(random.Next(40, 140)), random.Next(0, 60))),
            ],
            criterion: criterion,
            penaltyScale: scale);
    }

    private static double CpSat(CountProblem problem, int counts, bool worst)
    {
        CpModel model = new();
        BoolVar[] open = [.. problem.Candidates.Select((_, i) => model.NewBoolVar($"open{i}"))];
        model.Add(LinearExpr.Sum(open) <= counts);
        IntVar largest = model.NewIntVar(0, 1000, "largest");
        List<LinearExpr> costs = [];
        for (int s = 0; s < problem.Sizes.Length; s++)
        {
            List<BoolVar> choices = [];
            foreach (int i in Enumerable.Range(0, open.Length).Except(problem.Sizes[s].Excluded))
            {
                BoolVar chosen = model.NewBoolVar($"size{s}count{i}");
                model.AddImplication(chosen, open[i]);
                choices.Add(chosen);
                long error = (long)Math.Round((problem.Candidates[i].Measure - problem.Sizes[s].Target).Centimetres);
                long weight = (long)problem.Sizes[s].Weight;
                long penalty = (long)problem.Candidates[i].Penalty * (problem.PenaltyScale == PenaltyScale.BySizeWeight ? weight : 1);
                costs.Add(chosen * (weight * error * error + penalty));
                if (worst)
                    model.Add(largest >= chosen * Math.Abs(error));
            }

            model.AddExactlyOne(choices);
        }

        model.Minimize(worst ? largest : LinearExpr.Sum(costs));
        CpSolver solver = new() { StringParameters = "num_workers:1, random_seed:1" };
        Assert.Equal(CpSolverStatus.Optimal, solver.Solve(model));
        return solver.ObjectiveValue;
    }
}
