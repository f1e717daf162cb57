using System.Collections.Immutable;
using Dyepath.Core.Findings;
using Dyepath.Core.Garments;
using Dyepath.Core.Limits;
using Dyepath.Core.Motifs;
using Dyepath.Core.Quantities;
using Dyepath.Core.Sizing.Counts;

namespace Dyepath.Core.Planning;

/// <summary>A count that a size may have, for both panels or for one piece.</summary>
/// <param name="Front">Of the front, or of the only piece.</param>
/// <param name="Back">The same unless unequal panels are allowed.</param>
/// <param name="Bands">Visible plain rows along each side of each panel.</param>
internal sealed record GradedCount(CountFinding Front, CountFinding Back, int Bands, Length Measure, double Penalty)
{
    public static GradedCount Alone(CountFinding finding, Length measure, double penalty) => new(finding, finding, 0, measure, penalty);
}

/// <summary>What was looked for along the stitches, and what was found.</summary>
/// <param name="Counts">Every count that makes the motif, and those that were fixed; both panels alike, by measure.</param>
/// <param name="Measured">Any count, with the measure that both panels of it give.</param>
internal sealed record CountOffer(
    CountOptions Options, CountSearch Search, ImmutableArray<GradedCount> Counts, Func<CountFinding, GradedCount> Measured);

/// <summary>A count for every size, or which sizes stand in the way.</summary>
/// <param name="Chosen">One a size; empty where there is no choice.</param>
/// <param name="Curve">Worst error by how many counts are allowed.</param>
internal sealed record Grading(ImmutableArray<GradedCount> Chosen, ImmutableArray<CurvePoint> Curve, ImmutableArray<Finding> Reasons)
{
    /// <summary>What the choice was made among; missing where counts were not looked for.</summary>
    public CountOffer? Offer { get; init; }

    public bool HasChoice => !Chosen.IsEmpty;

    /// <summary>Squared centimetres of misfit and penalties; infinite without a choice.</summary>
    public double Cost(ImmutableArray<Length> targets) => HasChoice
        ? Chosen.Zip(targets, (c, t) => Math.Pow((c.Measure - t).Centimetres, 2) + c.Penalty).Sum()
        : double.PositiveInfinity;
}

/// <summary>Hands the counts to the grading program.</summary>
internal static class Grader
{
    /// <summary>A count that forgives this much is charged half of the full penalty.</summary>
    private const double HalfForgiven = 0.01;

    /// <summary>
    /// Square centimetres that a count adds to the squared fit error: the weight of forgiveness at none, half of it at 1 % of
    /// yarn per stitch; and the weight of clarity by as much as the motif is less clear than the best.
    /// </summary>
    public static double Penalty(CountFinding finding, GradingChoice choice) =>
        choice.ForgivenessWeight / (1 + Math.Max(0, finding.Forgiveness?.Least ?? 0) / HalfForgiven)
        + choice.ClarityWeight * (1 - finding.Reading.RelativeClarity);

    /// <param name="counts">Candidates, pinned ones included.</param>
    /// <param name="pins">Stitches pinned for a size.</param>
    /// <param name="own">Candidates that only pinned sizes may have, since they do not make the motif.</param>
    public static Grading Choose(
        ImmutableArray<GradedCount> counts,
        ImmutableArray<Length> targets,
        ImmutableArray<int?> pins,
        ImmutableArray<bool> own,
        int? mostCounts,
        Effort effort)
    {
        ImmutableArray<int> apart = [.. Enumerable.Range(0, counts.Length).Where(i => own[i])];
        var sizes = targets.Select((target, i) => pins[i] is { } pin && IndexOf(counts, pin) is var at and >= 0
            ? new SizeTarget(target) { Pinned = at }
            : new SizeTarget(target) { Excluded = apart }).ToImmutableArray();
        var problem = CountProblem.Create(sizes, [.. counts.Select(c => new CountCandidate(c.Measure, c.Penalty))]);
        var tradeOff = CountProgram.TradeOffOf(problem, effort);
        ImmutableArray<CurvePoint> curve =
        [
            .. tradeOff.ByCounts.Select((r, k) => (Result: r, Allowed: k + 1)).Where(r => r.Result.HasPlan).Select(r => new CurvePoint(
                r.Allowed, r.Result.Plan!.WorstError, [.. r.Result.Plan.Counts.Select(c => counts[c].Front.Stitches)])),
        ];
        var knee = tradeOff.Recommended(KneeRule.Default);
        var allowed = mostCounts ?? knee.Plan?.CountsAllowed ?? targets.Length;
        var result = CountProgram.Solve(problem, Math.Max(1, allowed), effort);
        return result.HasPlan
            ? new Grading([.. result.Plan.Sizes.Select(s => counts[s.Candidate])], curve, [])
            : new Grading([], curve, [new Finding(FindingLevel.Fault, "garment.grading.mostCounts", Words(result.NoPlan, allowed))]);
    }

    private static int IndexOf(ImmutableArray<GradedCount> counts, int stitches)
    {
        for (var i = 0; i < counts.Length; i++)
        {
            if (counts[i] is { Bands: 0 } count && count.Front.Stitches == stitches && count.Back.Stitches == stitches)
                return i;
        }
        return -1;
    }

    private static string Words(NoPlan reason, int allowed) => reason.Reason switch
    {
        NoPlanReason.PinsUseTooManyCounts => $"The fixed sizes alone use more than {allowed} counts: allow more, or fix fewer.",
        NoPlanReason.SizeHasNoCandidate =>
            "Some sizes have no count that makes the motif: widen the range, or choose another motif or hook.",
        NoPlanReason.PinNotAllowed => "A fixed count cannot be had: choose another.",
        _ => $"{allowed} counts cannot serve all sizes: allow more.",
    };
}
