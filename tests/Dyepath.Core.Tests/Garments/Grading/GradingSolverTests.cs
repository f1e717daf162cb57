using System.Collections.Immutable;
using Dyepath.Core.Limits;
using Dyepath.Core.Planning;
using Dyepath.Core.Quantities;
using Google.OrTools.Sat;

namespace Dyepath.Core.Tests.Garments.Grading;

/// <summary>The grading program against Google OrTools' CP-SAT at the size of real patterns, on costs that are whole numbers.</summary>
public sealed class GradingSolverTests
{
    [Theory]
    [InlineData(9, 24, 0, 1)]
    [InlineData(9, 24, 3, 2)]
    [InlineData(12, 18, 2, 3)]
    [InlineData(9, 12, 5, 4)]
    public void The_fewest_counts_that_serve_agree_with_an_exact_solver(int sizes, int counts, int rounds, int seed)
    {
        var problem = Whole(sizes, counts, rounds, seed);
        var answer = GradingProgram.Solve(problem, new Effort());
        Assert.True(answer.IsProven);
        var first = answer.Curve[0];
        for (var k = 1; k < first.Allowed; k++)
            Assert.Null(Exact(problem, k));
        Assert.Equal(Exact(problem, first.Allowed), (long)Math.Round(first.Plan.Cost - first.Plan.Charts.Length * problem.CountCost));
    }

    private static GradingProblem Whole(int sizes, int counts, int rounds, int seed)
    {
        var random = new Random(seed);
        ImmutableArray<GradingRounds> edging = [.. Enumerable.Range(1, rounds).Select(r => new GradingRounds(r, Length.FromCentimetres(2 * r), random.Next(0, 3)))];
        return new GradingProblem(
            [
                .. Enumerable.Range(0, sizes).Select(s => new GradingSize(Length.FromCentimetres(60 + 4 * s + random.Next(0, 4)))
                {
                    Rounds = edging,
                    Weight = random.Next(1, 4),
                    Floor = random.Next(3) == 0 ? Length.FromCentimetres(58 + 4 * s) : null,
                    Excluded = [.. Enumerable.Range(0, counts).Where(_ => random.Next(5) == 0)],
                }),
            ],
            [
                .. Enumerable.Range(0, counts).Select(c => GradingWay.Alone(
                    c, Length.FromCentimetres(50 + random.Next(0, 60)), random.Next(2), random.Next(0, 6))),
            ],
            new GradingRules(sizes, Length.FromCentimetres(1)) { LeastRise = Length.FromCentimetres(1), LeanTolerance = 0, TooSmall = 4 });
    }

    private static long? Exact(GradingProblem problem, int most)
    {
        CpModel model = new();
        BoolVar[] open = [.. problem.Ways.Select((_, w) => model.NewBoolVar($"open{w}"))];
        var leans = model.NewBoolVar("lean");
        model.Add(LinearExpr.Sum(open) <= most);
        List<LinearExpr> costs = [];
        LinearExpr? before = null;
        GradingSize? smaller = null;
        foreach (var size in problem.Sizes.OrderBy(s => s.Target))
        {
            List<BoolVar> choices = [];
            List<LinearExpr> finished = [];
            for (var w = 0; w < open.Length; w++)
            {
                foreach (var r in size.Rounds.IsEmpty ? [new GradingRounds(0, Length.Zero, 0)] : size.Rounds)
                {
                    var measure = problem.Ways[w].Measure + r.Depth;
                    if (size.Excluded.Contains(w) || measure < size.Floor)
                        continue;
                    var chosen = model.NewBoolVar($"{choices.Count}");
                    model.AddImplication(chosen, open[w]);
                    model.AddImplication(chosen, problem.Ways[w].Lean > 0 ? leans : leans.Not());
                    choices.Add(chosen);
                    var error = (long)Math.Round((measure - size.Target).Centimetres);
                    costs.Add(chosen * (long)(size.Weight * ((error < 0 ? 4 : 1) * error * error + problem.Ways[w].Penalty + r.Penalty)));
                    finished.Add(chosen * (long)Math.Round(10 * measure.Centimetres));
                }
            }
            model.AddExactlyOne(choices);
            var now = LinearExpr.Sum(finished);
            if (before is not null && smaller is not null)
                model.Add(now - before >= (long)Math.Round(10 * problem.RiseBetween(smaller, size)!.Value.Centimetres));
            (before, smaller) = (now, size);
        }
        model.Minimize(LinearExpr.Sum(costs));
        CpSolver solver = new() { StringParameters = "num_workers:1, random_seed:1" };
        return solver.Solve(model) == CpSolverStatus.Optimal ? (long)solver.ObjectiveValue : null;
    }
}
