using System.Collections.Immutable;
using Dyepath.Core.Limits;
using Dyepath.Core.Quantities;

namespace Dyepath.Core.Planning;

/// <summary>
/// Few stitch counts for many sizes, as a customer accepts them: one program for the curve of worst error over counts and for the plan, so
/// that what the curve promises is what the plan delivers (docs/decisions/grading-program.md).
/// </summary>
internal static class GradingProgram
{
    /// <summary>Steps for one number of counts, or for one look whether the rules can hold; about 50 ms.</summary>
    private const long WorkOfOne = 5_000_000;

    /// <summary>The plan, and the curve that it lies on.</summary>
    /// <exception cref="TooMuchWorkException">Only where the caller's own limit is reached.</exception>
    public static GradingAnswer Solve(GradingProblem problem, Effort effort) => Solve(problem, MostUseful(problem), effort);

    /// <summary>The plan alone, with no more counts than are allowed; null where the rules cannot hold.</summary>
    /// <inheritdoc cref="Solve(GradingProblem, Effort)"/>
    public static GradingPlan? Plan(GradingProblem problem, Effort effort) => Solve(problem, Allowed(problem), effort).Plan;

    private static GradingAnswer Solve(GradingProblem problem, int mostCounts, Effort effort)
    {
        ArgumentNullException.ThrowIfNull(problem);
        ArgumentNullException.ThrowIfNull(effort);
        var curve = ImmutableArray.CreateBuilder<GradingPoint>();
        GradingPlan? made = null;
        GradingPlan? allowed = null;
        var proven = true;
        var saving = problem.Rules.CountSaving.Nanometres;
        for (var k = 1; k <= mostCounts; k++)
        {
            var misfit = long.MaxValue;
            var below = long.MaxValue / 8;
            if (made is not null)
            {
                // A further count must save what it costs, in the worst misfit and in the objective.
                misfit = made.WorstMisfit.Nanometres - (k - made.Charts.Length) * saving;
                below = Units(made.Cost - k * problem.CountCost);
            }
            if (misfit >= 0 && below > 0)
                made = AtMost(problem, k, misfit, below, effort, ref proven) ?? made;
            if (made is not null)
                curve.Add(new GradingPoint(k, made));
            if (k == Allowed(problem))
                allowed = made;
        }
        return new GradingAnswer(curve.ToImmutable(), allowed, proven);
    }

    /// <summary>Whether all rules can hold.</summary>
    /// <param name="isProven">False where the work was cut short; the answer is then that they cannot.</param>
    public static bool CanHold(GradingProblem problem, Effort effort, out bool isProven)
    {
        ArgumentNullException.ThrowIfNull(problem);
        isProven = true;
        var work = WorkOfOne;
        foreach (var (from, to) in GradingTable.LeansOf(problem))
        {
            var table = GradingTable.Of(problem, from, to, long.MaxValue);
            if (GradingSearch.Solve(table, Allowed(problem), long.MaxValue / 8, ref work, effort, out _, out var proven) is not null)
            {
                isProven = true;
                return true;
            }
            isProven &= proven;
        }
        return false;
    }

    /// <summary>Counts that sizes could use at most: one each, or two where panels differ.</summary>
    private static int MostUseful(GradingProblem problem) =>
        problem.Sizes.Length * (problem.Ways.Any(w => w.SecondChart != w.Chart) ? 2 : 1);

    private static int Allowed(GradingProblem problem) => Math.Min(problem.Rules.MostCounts, MostUseful(problem));

    private static GradingPlan? AtMost(GradingProblem problem, int counts, long misfit, long below, Effort effort, ref bool proven)
    {
        GradingPlan? best = null;
        var work = WorkOfOne;
        foreach (var (from, to) in GradingTable.LeansOf(problem))
        {
            var table = GradingTable.Of(problem, from, to, misfit);
            var picks = GradingSearch.Solve(table, counts, below, ref work, effort, out var cost, out var all);
            proven &= all;
            if (picks is not null)
                (best, below) = (PlanOf(problem, table, picks), cost);
        }
        return best;
    }

    private static GradingPlan PlanOf(GradingProblem problem, GradingTable table, int[] picks)
    {
        var chosen = new GradingPick[table.Sizes];
        double cost = 0;
        Length worst = default, misfit = default;
        var charts = new SortedSet<int>();
        for (var p = 0; p < picks.Length; p++)
        {
            var (options, size) = (table.Options[p], problem.Sizes[table.Order[p]]);
            var (at, finished) = (picks[p], Length.FromNanometres(options.Finished[picks[p]]));
            var rounds = options.Rounds[at] < 0 ? null : size.Rounds[options.Rounds[at]];
            chosen[table.Order[p]] = new GradingPick(options.Way[at], rounds?.Rounds, finished);
            cost += problem.CostOf(size, finished, problem.Ways[options.Way[at]].Penalty + (rounds?.Penalty ?? 0));
            worst = Length.Max(worst, Length.Max(finished - size.Target, size.Target - finished));
            misfit = Length.Max(misfit, Length.FromNanometres(options.Misfit[at]));
            charts.Add(options.Chart[at]);
            charts.Add(options.SecondChart[at]);
        }
        return new GradingPlan([.. chosen], [.. charts], cost + charts.Count * problem.CountCost, worst, misfit);
    }

    private static long Units(double squareCentimetres) =>
        (long)Math.Floor(Math.Clamp(squareCentimetres * GradingTable.CostUnits, long.MinValue / 8.0, long.MaxValue / 8.0));
}
