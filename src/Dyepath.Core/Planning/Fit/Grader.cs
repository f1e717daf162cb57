using System.Collections.Immutable;
using Dyepath.Core.Findings;
using Dyepath.Core.Garments;
using Dyepath.Core.Limits;
using Dyepath.Core.Motifs;
using Dyepath.Core.Quantities;

namespace Dyepath.Core.Planning;

/// <summary>A count that a size may have, for both panels or for one piece.</summary>
/// <param name="Front">Of the front, or of the only piece.</param>
/// <param name="Back">The same unless unequal panels are allowed.</param>
/// <param name="Bands">Visible plain rows along each side of each panel.</param>
/// <param name="Measure">Without edgings.</param>
internal sealed record GradedCount(CountFinding Front, CountFinding Back, int Bands, Length Measure, double Penalty)
{
    /// <summary>Rounds of the edging that lengthens the measure; missing where none does.</summary>
    public int? Rounds { get; init; }

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

    /// <summary>The grading program's objective, in square centimetres; infinite without a choice.</summary>
    public double Cost { get; init; } = double.PositiveInfinity;

    /// <summary>The furthest that a size comes out along the stitches.</summary>
    public Length WorstError { get; init; }

    /// <summary>False where the work was cut short, so that a better choice may exist.</summary>
    public bool IsProven { get; init; } = true;

    /// <summary>What would help, cheapest first; missing where nothing was graded.</summary>
    public Func<Effort, ImmutableArray<GradingRemedy>>? Remedies { get; init; }

    public bool HasChoice => !Chosen.IsEmpty;
}

/// <summary>Puts counts before the grading program.</summary>
internal static class Grader
{
    /// <summary>What a further count must save for an adult's measure; a child's by as much less (common practice, no source).</summary>
    public static readonly Length CountSaving = Length.FromCentimetres(0.5);

    /// <summary>How much wider the next size must be at least.</summary>
    public static readonly Length LeastRise = Length.FromCentimetres(1);

    /// <summary>Leans as near to each other as this look alike over a garment.</summary>
    public const double LeanTolerance = 0.25;

    /// <summary>
    /// The loss of an error is four times as large where it takes ease away, so that 1 cm too little weighs as 2 cm too much.
    /// </summary>
    private const double TooLittleEase = 4;

    /// <summary>Square centimetres for each round that departs from the wished ones.</summary>
    private const double PenaltyPerRound = 0.02;

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
    /// <param name="own">Candidates that only pinned sizes may have, since they do not make the motif.</param>
    /// <param name="rounds">What the edging may be, by rounds; empty where none changes the measure.</param>
    public static GradingProblem Problem(
        StitchMeasure measure, GradingChoice choice, ImmutableArray<GradedCount> counts, ImmutableArray<bool> own,
        ImmutableArray<GradingRounds> rounds)
    {
        var charts = counts.SelectMany(c => new[] { c.Front.Stitches, c.Back.Stitches }).Distinct().Order().ToList();
        ImmutableHashSet<int> apart = [.. Enumerable.Range(0, counts.Length).Where(i => own[i])];
        var sizes = measure.Targets.Select((target, i) => new GradingSize(target)
        {
            Tolerance = measure.Tolerances.IsDefault ? 1 : measure.Tolerances[i],
            Floor = measure.Floors.IsDefault || choice.UnevenWidths ? null : measure.Floors[i],
            Pinned = measure.Pins[i] is { } pin && IndexOf(counts, pin) is var at and >= 0 ? at : null,
            Excluded = measure.Fewest.IsDefault
                ? apart : apart.Union(Enumerable.Range(0, counts.Length).Where(way => counts[way].Front.Stitches < measure.Fewest[i])),
            Rounds = Within(rounds, target),
        });
        return new GradingProblem(
            [.. sizes],
            [
                .. counts.Select((c, i) => new GradingWay(
                    charts.IndexOf(c.Front.Stitches), charts.IndexOf(c.Back.Stitches), c.Measure,
                    own[i] ? null : c.Front.Lean, c.Penalty)),
            ],
            new GradingRules(choice.MostCounts ?? 2 * GradingProblem.MostSizes, CountSaving)
            {
                LeastRise = choice.UnevenWidths ? null : measure.IsGirth ? LeastRise : Length.Zero,
                LeanTolerance = choice.SeveralLeans ? null : LeanTolerance,
                TooSmall = measure.IsGirth ? TooLittleEase : 1,
            });
    }

    /// <summary>
    /// Those that leave most of the measure to the motif, also where it comes out a tenth shorter than asked for; and the fewest of all.
    /// </summary>
    private static ImmutableArray<GradingRounds> Within(ImmutableArray<GradingRounds> rounds, Length target) =>
        [.. rounds.Where((r, at) => at == 0 || r.Depth <= 0.9 * PlanFindings.DeepEdging * target)];

    /// <summary>What the edging of a measure may be.</summary>
    /// <param name="widest">Any number of rounds, whatever was asked for.</param>
    public static ImmutableArray<GradingRounds> Rounds(SharedFabric shared, StitchMeasure measure, bool widest = false)
    {
        if (measure.Edging is not { } place || shared.EdgingAt(place) is not { } choice
            || !Edgings.EdgingLibrary.TryFind(choice.Edging, out var edging))
            return [];
        var (fewest, wished, most) = choice.RoundsOf(edging);
        if (widest)
            (fewest, most) = (Math.Min(fewest, edging.Fewest), edging.Allowed.Largest);
        return
        [
            .. Enumerable.Range(fewest, most - fewest + 1).Select(r => new GradingRounds(
                r, measure.Edgings(shared, r), PenaltyPerRound * Math.Abs(r - wished))),
        ];
    }

    public static Grading Choose(GradingProblem problem, ImmutableArray<GradedCount> counts, IReadOnlyList<string> names, Effort effort)
    {
        var answer = GradingProgram.Solve(problem, effort);
        ImmutableArray<CurvePoint> curve =
        [
            .. answer.Curve.Where(p => p.Allowed <= problem.Sizes.Length).Select(p => new CurvePoint(
                p.Allowed, p.Plan.WorstError, [.. p.Plan.Picks.Select(c => counts[c.Way].Front.Stitches).Distinct().Order()])),
        ];
        if (answer.Plan is not { } plan)
            return new Grading([], curve, [GradingWords.Say(GradingConflicts.Smallest(problem, effort), problem, names)]);
        return new Grading([.. plan.Picks.Select(p => counts[p.Way] with { Rounds = p.Rounds })], curve, [])
        {
            Cost = plan.Cost,
            WorstError = plan.WorstError,
            IsProven = answer.IsProven,
        };
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
}
