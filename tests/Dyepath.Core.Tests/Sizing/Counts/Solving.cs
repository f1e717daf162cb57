using Dyepath.Core.Sizing.Counts;

namespace Dyepath.Core.Tests.Sizing.Counts;

/// <summary>The public calls, stopped when the test run is.</summary>
internal static class Solving
{
    public static CountResult Solve(this CountProblem problem, int counts) =>
        CountProgram.Solve(problem, counts, TestContext.Current.CancellationToken);

    public static CountPlan Plan(this CountProblem problem, int counts) => problem.Solve(counts).Plan!;

    public static TradeOff TradeOff(this CountProblem problem) =>
        CountProgram.TradeOffOf(problem, TestContext.Current.CancellationToken);

    public static double CostOfPin(this CountProblem problem, CountPlan plan, int size) =>
        CountProgram.CostOfPin(problem, plan, size, TestContext.Current.CancellationToken);
}
