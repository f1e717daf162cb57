using Dyepath.Core.Sizing.Counts;

namespace Dyepath.Core.Tests.Sizing.Counts;

/// <summary>The grading program by trying every set of counts: shares nothing with the solver but the cost of one pair.</summary>
internal static class BruteForce
{
    /// <summary>
    /// The best objective and, among the plans that reach it, the least total and the fewest counts; null without a plan.
    /// </summary>
    public static (double Objective, double Total, int Counts)? Solve(CountProblem problem, int counts)
    {
        double worstAllowed = double.PositiveInfinity;
        if (problem.Criterion != GradingCriterion.Total)
        {
            foreach (int[] open in Openings(problem, counts))
            {
                double worst = Each(problem, open, double.PositiveInfinity, Worst).Max();
                worstAllowed = Math.Min(worstAllowed, worst);
            }
        }

        (double Objective, double Total, int Counts)? best = null;
        foreach (int[] open in Openings(problem, counts))
        {
            double total = Each(problem, open, worstAllowed, Total).Sum();
            if (double.IsFinite(total)
                && (best is null || total < best.Value.Total - 1e-9
                    || (total < best.Value.Total + 1e-9 && open.Length < best.Value.Counts)))
                best = (problem.Criterion == GradingCriterion.Total ? total : worstAllowed, total, open.Length);
        }

        return best;
    }

    private static IEnumerable<double> Each(
        CountProblem problem, int[] open, double worstAllowed, Func<CountProblem, int, int, double> cost) =>
        Enumerable.Range(0, problem.Sizes.Length).Select(s =>
            (problem.Sizes[s].Pinned is int pin ? [pin] : open)
            .Where(i => !problem.Sizes[s].Excluded.Contains(i) && Worst(problem, s, i) <= worstAllowed)
            .Select(i => cost(problem, s, i))
            .DefaultIfEmpty(double.PositiveInfinity)
            .Min());

    private static double Total(CountProblem problem, int s, int i)
    {
        double loss = Loss(problem, s, i), weight = problem.Sizes[s].Weight, penalty = problem.Candidates[i].Penalty;
        return problem.PenaltyScale == PenaltyScale.BySizeWeight ? weight * (loss + penalty) : weight * loss + penalty;
    }

    private static double Worst(CountProblem problem, int s, int i)
    {
        double error = (problem.Candidates[i].Measure - problem.Sizes[s].Target).Centimetres;
        double loss = Loss(problem, s, i);
        return problem.Criterion != GradingCriterion.WorstError
            ? loss + problem.Candidates[i].Penalty
            : double.IsFinite(loss) ? Math.Abs(error) : loss;
    }

    private static double Loss(CountProblem problem, int s, int i) =>
        (problem.Sizes[s].Loss ?? problem.Loss).Of(problem.Candidates[i].Measure - problem.Sizes[s].Target);

    /// <summary>All sets of at most so many candidates that hold every pinned one.</summary>
    private static IEnumerable<int[]> Openings(CountProblem problem, int counts)
    {
        int pinned = problem.Sizes.Where(s => s.Pinned is not null).Aggregate(0, (mask, s) => mask | 1 << s.Pinned!.Value);
        for (int mask = 1; mask < 1 << problem.Candidates.Length; mask++)
        {
            if ((mask & pinned) == pinned && int.PopCount(mask) <= counts)
                yield return [.. Enumerable.Range(0, problem.Candidates.Length).Where(i => (mask >> i & 1) != 0)];
        }
    }
}
