using System.Collections.Immutable;
using Dyepath.Core.Limits;
using Dyepath.Core.Quantities;

namespace Dyepath.Core.Sizing.Counts;

/// <summary>
/// Chooses a stitch count for every size with at most so many distinct counts, exactly. Sizes that share a
/// convex loss are solved by interval programming, all others by branch and bound; which and why is in
/// docs/decisions/grading-program.md. Costs are compared in steps of 2⁻⁴³ of what one count for all would
/// cost, or finer. Among equal costs the plan with fewer distinct counts is taken, then, going up from the
/// smallest target, the smaller count (under branch and bound, among those the search meets first). The
/// same problem gives the same plan on every machine.
/// </summary>
public static class CountProgram
{
    /// <summary>The best plan with at most <paramref name="counts"/> distinct counts, pinned ones included.</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="counts"/> under 1.</exception>
    /// <exception cref="OperationCanceledException">Cancelled.</exception>
    public static CountResult Solve(CountProblem problem, int counts, CancellationToken cancel = default) =>
        Solve(problem, counts, new Effort(cancel: cancel));

    internal static CountResult Solve(CountProblem problem, int counts, Effort effort)
    {
        ArgumentNullException.ThrowIfNull(problem);
        Guard.InRange(counts, 1, int.MaxValue, "counts");
        return new CountSolver(problem, effort).Solve(counts);
    }

    /// <summary>The best plans with at most 1, 2, … as many counts as there are sizes, in this order.</summary>
    /// <exception cref="OperationCanceledException">Cancelled.</exception>
    public static ImmutableArray<CountResult> SolveEach(CountProblem problem, CancellationToken cancel = default) =>
        SolveEach(problem, new Effort(cancel: cancel));

    internal static ImmutableArray<CountResult> SolveEach(CountProblem problem, Effort effort)
    {
        ArgumentNullException.ThrowIfNull(problem);
        CountSolver solver = new(problem, effort);
        return [.. Enumerable.Range(1, problem.Sizes.Length).Select(counts => solver.Solve(counts))];
    }

    /// <summary>
    /// What one size's pin costs: the objective of <paramref name="plan"/> less that of the best plan with the
    /// same number of counts and all other pins; never negative.
    /// </summary>
    /// <param name="problem">The problem with its pins.</param>
    /// <param name="plan">The problem's best plan, from <see cref="Solve(CountProblem, int, CancellationToken)"/>.</param>
    /// <param name="size">Index of a pinned size.</param>
    /// <param name="cancel">Ends a long search.</param>
    /// <exception cref="ArgumentException">The size is not pinned, or the plan is not of this problem.</exception>
    /// <exception cref="OperationCanceledException">Cancelled.</exception>
    public static double CostOfPin(CountProblem problem, CountPlan plan, int size, CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(problem);
        ArgumentNullException.ThrowIfNull(plan);
        CountProblem free = problem.WithoutPin(size);
        if (plan.Sizes.Length != problem.Sizes.Length || plan.Sizes[size].Candidate != problem.Sizes[size].Pinned)
            throw new ArgumentException("The plan is not one of this problem.", nameof(plan));
        CountResult without = Solve(free, plan.CountsAllowed, cancel);

        // The plan itself is a choice without the pin, so there is one; the last step of the keys may differ in sign.
        return Math.Max(0, plan.Objective - without.Plan!.Objective);
    }

    /// <summary>
    /// What each further count buys: for every number of counts the smallest worst error, and among the
    /// plans that reach it the smallest total loss. The problem's own criterion is not used.
    /// </summary>
    /// <exception cref="OperationCanceledException">Cancelled.</exception>
    public static TradeOff TradeOffOf(CountProblem problem, CancellationToken cancel = default) =>
        TradeOffOf(problem, new Effort(cancel: cancel));

    internal static TradeOff TradeOffOf(CountProblem problem, Effort effort)
    {
        ArgumentNullException.ThrowIfNull(problem);
        return new TradeOff(SolveEach(problem.By(GradingCriterion.WorstError), effort));
    }
}
