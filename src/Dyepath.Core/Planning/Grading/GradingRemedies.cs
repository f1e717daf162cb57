using System.Collections.Immutable;
using Dyepath.Core.Limits;
using Dyepath.Core.Quantities;

namespace Dyepath.Core.Planning;

/// <summary>What can be changed so that sizes fit better.</summary>
internal enum GradingRemedyKind
{
    /// <summary>More rounds of edging than are allowed; the amount is the most that a size then has.</summary>
    MoreRounds,

    /// <summary>Plain bands at the sides; the amount is the widest, in rows.</summary>
    SideBands,

    /// <summary>Front and back of different counts; the amount is the largest difference, in stitches.</summary>
    UnequalPanels,

    /// <summary>More stitch counts than are allowed; the amount is how many there then are.</summary>
    MoreCounts,

    /// <summary>Several leans in one pattern; the amount is how many counts there then are.</summary>
    SeveralLeans,

    /// <summary>Another hook; the amount is its diameter in hundredths of a millimetre.</summary>
    OtherHook,
}

/// <summary>A change and what it brings.</summary>
/// <param name="Amount">As its kind says.</param>
/// <param name="WorstError">The furthest that a size then comes out from its target.</param>
/// <param name="Cost">The objective that is then reached, in cm².</param>
internal sealed record GradingRemedy(GradingRemedyKind Kind, int Amount, Length WorstError, double Cost);

/// <summary>A change to try.</summary>
/// <param name="Amount">From the plan that it gives.</param>
internal sealed record GradingChange(GradingRemedyKind Kind, GradingProblem Problem, Func<GradingPlan, int> Amount);

internal static class GradingRemedies
{
    /// <summary>
    /// Solves every change and gives those that help, the one with the smallest objective first, one of a kind: where there was no plan
    /// those that have one, else those that take at least the saving of a count off the worst error.
    /// </summary>
    public static ImmutableArray<GradingRemedy> Cheapest(GradingProblem problem, IEnumerable<GradingChange> changes, Effort effort)
    {
        ArgumentNullException.ThrowIfNull(problem);
        ArgumentNullException.ThrowIfNull(changes);
        var now = GradingProgram.Plan(problem, effort);
        var found = new List<GradingRemedy>();
        foreach (var change in changes)
        {
            var plan = GradingProgram.Plan(change.Problem, effort);
            if (plan is not null && (now is null || plan.WorstError <= now.WorstError - problem.Rules.CountSaving))
                found.Add(new GradingRemedy(change.Kind, change.Amount(plan), plan.WorstError, plan.Cost));
        }
        return [.. found.OrderBy(r => r.Cost).ThenBy(r => r.Kind).ThenBy(r => r.Amount).DistinctBy(r => r.Kind)];
    }
}
