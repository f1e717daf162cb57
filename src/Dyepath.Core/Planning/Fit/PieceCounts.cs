using System.Collections.Immutable;
using Dyepath.Core.Fabrics;
using Dyepath.Core.Findings;
using Dyepath.Core.Garments;
using Dyepath.Core.Limits;
using Dyepath.Core.Motifs;
using Dyepath.Core.Quantities;
using Dyepath.Core.Replays;
using Dyepath.Core.Swatches;
using Dyepath.Core.Yarns;

namespace Dyepath.Core.Planning;

/// <summary>Candidates for the count along a piece's stitches, and the choice among them for all sizes.</summary>
internal static class PieceCounts
{
    /// <summary>
    /// Squared centimetres for each thing that a count asks of the maker beyond working it: a stitch more in every other row, a
    /// loose turn.
    /// </summary>
    private const double PenaltyPerTask = 1;

    /// <summary>How far beyond the sizes' own measures counts are looked for.</summary>
    private static readonly Length Reach = Length.FromCentimetres(20);

    private const int MostBandRows = 6;

    /// <summary>Squared centimetres for plain bands at all, and for each of their rows.</summary>
    private const double PenaltyOfBands = 4, PenaltyPerBandRow = 0.5;

    /// <summary>Squared centimetres for panels of different counts at all, and for each stitch of difference.</summary>
    private const double PenaltyOfDifference = 2, PenaltyPerStitchOfDifference = 0.1;

    /// <summary>Stitches by which front and back may differ.</summary>
    private const int MostDifference = 100;

    /// <param name="rows">About how many rows the piece has.</param>
    public static Grading Choose(SharedFabric shared, Direction direction, Working working, StitchMeasure measure, int rows)
    {
        var (axis, edges, pins) = (measure.Axis, measure.Edges, measure.Pins);
        var (from, to) = Range(shared, measure);
        var options = shared.Counts(direction, working, from, to, rows);
        var search = Find(shared, options);
        var makers = search.Counts.Where(c => axis.Of(c.Stitches, edges) > Length.Zero && CanBeWritten(shared, working, c)).ToArray();
        var fixedCounts = pins.OfType<int>().Distinct().Select(pin => (Pin: pin, Finding: Fixed(shared, direction, working, pin, rows)))
            .ToArray();
        if (fixedCounts.FirstOrDefault(f => f.Finding is null) is { Pin: > 0 and var lost })
        {
            return new Grading([], [], [new Finding(FindingLevel.Fault, "fabric.turnCost",
                $"A turn takes back more yarn than a row of {lost} stitches has: fix a larger count, or check the turn.")]);
        }
        CountFinding[] pinned = [.. fixedCounts.Select(f => f.Finding!)];
        var offer = new CountOffer(options, search, Offered(makers.Concat(pinned)), Alone);
        if (pinned.FirstOrDefault(pin => !CanBeWritten(shared, working, pin)) is { } wrong)
            return new Grading([], [], [WrongParity(working, wrong.Stitches)]) { Offer = offer };
        if (makers.Length == 0 && pins.Any(p => p is null))
            return new Grading([], [], Reasons(search, shared.Project.Garment.Motif, from, to)) { Offer = offer };
        var choice = shared.Project.Garment.Grading;
        var best = shared.Decisions.Grading([.. makers, .. pinned], Best);
        return best with { Offer = offer, Remedies = Remedies };

        IEnumerable<CountFinding[]> Alike() => makers.Concat(pinned).GroupBy(c => RowsOf(shared, c))
            .Where(alike => pinned.All(p => RowsOf(shared, p) == alike.Key))
            .Select(alike => alike.Except(pinned).ToArray());

        Grading Best()
        {
            Grading? best = null;
            foreach (var alike in Alike())
            {
                var counts = Counted(alike, choice);
                var grading = Grader.Choose(Problem(counts, choice), counts, measure.Names, shared.Effort);
                if (best is null || grading.Cost < best.Cost)
                    best = grading;
            }
            return best ?? new Grading([], [], [new Finding(FindingLevel.Fault, "sizes",
                "The fixed counts are even in one size and odd in another: linen stitch is worked otherwise then. Fix counts that are alike.")]);
        }

        GradingProblem Problem(ImmutableArray<GradedCount> counts, GradingChoice allowed, bool widest = false) => Grader.Problem(
            measure, allowed, counts, [.. counts.Select(c => c.Front.Reading.Kind != shared.Project.Garment.Motif)],
            Grader.Rounds(shared, measure, widest));

        ImmutableArray<GradedCount> Counted(CountFinding[] findings, GradingChoice allowed)
        {
            findings =
            [
                .. findings.Where(c => allowed.SeveralLeans || measure.Lean is not { } lean
                    || Math.Abs(c.Lean - lean) <= Grader.LeanTolerance)
                    .GroupBy(c => c.Stitches).Select(g => g.MinBy(c => Penalty(c, allowed))!),
            ];
            var counts = ImmutableArray.CreateBuilder<GradedCount>();
            if (measure.MayDiffer && (allowed.SideBands || allowed.UnequalPanels))
                counts.AddRange(Expand(shared, findings, measure, allowed));
            else
                counts.AddRange(findings.Select(Alone));
            counts.AddRange(pinned
                .Where(p => !counts.Any(c => c.Bands == 0 && c.Front.Stitches == p.Stitches && c.Back.Stitches == p.Stitches))
                .Select(Alone));
            return counts.ToImmutable();
        }

        ImmutableArray<GradingRemedy> Remedies(Effort effort)
        {
            if (Alike().MaxBy(a => a.Length) is not { } alike)
                return [];
            var counts = Counted(alike, choice);
            return GradingRemedies.Cheapest(Problem(counts, choice), Changes(alike, counts), effort);
        }

        IEnumerable<GradingChange> Changes(CountFinding[] alike, ImmutableArray<GradedCount> counts)
        {
            if (measure.Edging is { } place && shared.EdgingAt(place) is not null)
                yield return new(
                    GradingRemedyKind.MoreRounds, Problem(counts, choice, widest: true), plan => plan.Picks.Max(p => p.Rounds) ?? 0);
            // Bands are worked in a companion yarn.
            if (measure.MayDiffer && !choice.SideBands && shared.Project.Companion is not null)
                yield return With(
                    GradingRemedyKind.SideBands, choice with { SideBands = true }, (plan, made) => plan.Picks.Max(p => made[p.Way].Bands));
            if (measure.MayDiffer && !choice.UnequalPanels)
            {
                yield return With(
                    GradingRemedyKind.UnequalPanels, choice with { UnequalPanels = true },
                    (plan, made) => plan.Picks.Max(p => made[p.Way].Front.Stitches - made[p.Way].Back.Stitches));
            }
            if (choice.MostCounts is not null)
                yield return With(GradingRemedyKind.MoreCounts, choice with { MostCounts = null }, (plan, _) => plan.Charts.Length);
            if (!choice.SeveralLeans)
                yield return With(GradingRemedyKind.SeveralLeans, choice with { SeveralLeans = true }, (plan, _) => plan.Charts.Length);
            // Counted work keeps its counts on another hook, and the gauge alone changes; free work draws something else.
            if (shared.Project.Fabric.Keeping == ColourKeeping.Counted)
            {
                foreach (var (hook, factor) in shared.HooksNear(direction))
                {
                    ImmutableArray<GradedCount> scaled = [.. counts.Select(c => c with { Measure = c.Measure * factor })];
                    yield return new(GradingRemedyKind.OtherHook, Problem(scaled, choice), _ => hook);
                }
            }

            GradingChange With(GradingRemedyKind kind, GradingChoice allowed, Func<GradingPlan, ImmutableArray<GradedCount>, int> amount)
            {
                var made = Counted(alike, allowed);
                return new(kind, Problem(made, allowed), plan => amount(plan, made));
            }
        }

        ImmutableArray<GradedCount> Offered(IEnumerable<CountFinding> findings) =>
        [
            .. findings.Select(Alone).GroupBy(c => (c.Front.Stitches, c.Front.RowStitches.Length)).Select(g => g.MinBy(c => c.Penalty)!)
                .OrderBy(c => c.Measure),
        ];

        GradedCount Alone(CountFinding finding) => GradedCount.Alone(
            finding, measure.Panels * axis.Of(finding.RowStitches.Average(), edges), Penalty(finding, shared.Project.Garment.Grading));
    }

    /// <summary>
    /// One text serves all sizes, so that all sizes alternate or none does; even and odd linen rows are worked differently.
    /// </summary>
    private static (bool Alternating, bool OddLinen) RowsOf(SharedFabric shared, CountFinding count) =>
        (count.RowStitches.Length == 2, IsLinen(shared) && count.Stitches % 2 == 1);

    private static bool CanBeWritten(SharedFabric shared, Working working, CountFinding count) => IsLinen(shared)
        ? count.RowStitches.Length == 1 && LinenWorks(working, count.Stitches)
        : count.RowStitches.Length == 1 || working == Working.Turned;

    /// <summary>
    /// Every single crochet of linen stitch must fall on a chain space, at the join of a round too. Turned rows mend their edges
    /// for either parity; a joined round closes on whole pairs; a spiral runs on over the round below only half a pair over.
    /// </summary>
    private static bool LinenWorks(Working working, int stitches) => working switch
    {
        Working.Turned => true,
        Working.Spiral => stitches % 2 == 1,
        _ => stitches % 2 == 0,
    };

    private static Finding WrongParity(Working working, int stitches) => new(FindingLevel.Fault, "sizes", working == Working.Spiral
        ? $"Linen stitch in a spiral needs an odd number of stitches, so that every single crochet falls on a chain space: fix {stitches - 1} or {stitches + 1}, not {stitches}."
        : $"Linen stitch in joined rounds needs an even number of stitches, whole pairs: fix {stitches - 1} or {stitches + 1}, not {stitches}.");

    private static bool IsLinen(SharedFabric shared) => shared.Stitch.StitchesPerUnit == 2;

    private static double Penalty(CountFinding finding, GradingChoice grading) =>
        Grader.Penalty(finding, grading)
        + (finding.Task.HasFlag(CountTask.ExtraEdgeStitch) ? PenaltyPerTask : 0)
        + (finding.Task.HasFlag(CountTask.HalfStitchTurn) ? PenaltyPerTask : 0);

    private static (int From, int To) Range(SharedFabric shared, StitchMeasure measure)
    {
        var (axis, edges) = (measure.Axis, measure.Edges);
        var edging = measure.Edgings(shared);
        var from = axis.Nearest((measure.Targets.Min() - edging - Reach) / measure.Panels, edges);
        var to = axis.Nearest((measure.Targets.Max() - edging + Reach) / measure.Panels, edges);
        from = Math.Clamp(from, 2, FabricPath.MostStitches);
        return (from, Math.Clamp(to, from, FabricPath.MostStitches));
    }

    private static CountSearch Find(SharedFabric shared, CountOptions options) => shared.Decisions.Answer(
        () => CountFinder.Find(shared.Ring, options, shared.Effort), CountDecisions.Write, CountDecisions.ReadSearch);

    /// <summary>A count that was fixed, whatever it makes; null where its turn takes the whole row back.</summary>
    private static CountFinding? Fixed(SharedFabric shared, Direction direction, Working working, int stitches, int rows)
    {
        var options = shared.Counts(direction, working, stitches, stitches, rows) with { Alternating = false, HalfTurn = false };
        var search = Find(shared, options);
        return search.Counts.IsEmpty ? search.Nearest.FirstOrDefault()?.Finding : search.Counts[0];
    }

    /// <summary>
    /// Side bands and unequal panels; a wider panel continues a narrower one only half periods on, so those alone are paired, the wider one
    /// in front, over the bust.
    /// </summary>
    private static IEnumerable<GradedCount> Expand(
        SharedFabric shared, CountFinding[] findings, StitchMeasure measure, GradingChoice allowed)
    {
        var unit = ColourRing.Unit / shared.Stitch.StitchesPerUnit;
        var most = Math.Min(MostDifference, (int)(ColourRing.ToUnits(shared.PeriodMicro) * shared.Stitch.StitchesPerUnit));
        var (narrowest, widest) = (Length.Max(Length.Zero, measure.Targets.Min() - Reach), measure.Targets.Max() + Reach);
        var made = from back in findings
                   from front in findings
                   let difference = front.Stitches - back.Stitches
                   where difference == 0 || (allowed.UnequalPanels && difference > 0 && difference <= most
                       && 2 * difference * unit % shared.PeriodMicro == 0)
                   from bands in Enumerable.Range(0, allowed.SideBands ? MostBandRows + 1 : 1)
                   let finished = Of(front) + Of(back) + 4 * bands * shared.SingleCrochetHeight
                   where finished >= narrowest && finished <= widest
                   select new GradedCount(
                       front, back, bands, finished,
                       (Penalty(front, allowed) + Penalty(back, allowed)) / 2
                           + (bands == 0 ? 0 : PenaltyOfBands + bands * PenaltyPerBandRow)
                           + (difference == 0 ? 0 : PenaltyOfDifference + difference * PenaltyPerStitchOfDifference));
        return made.OrderBy(c => c.Penalty).ThenBy(c => c.Measure).Take(GradingProblem.MostWays - 64);

        Length Of(CountFinding count) => measure.Axis.Of(count.RowStitches.Average(), measure.Edges);
    }

    /// <summary>What is nearest to a motif that no count makes, and what would help.</summary>
    private static ImmutableArray<Finding> Reasons(CountSearch search, MotifKind motif, int from, int to)
    {
        var none = FormattableString.Invariant($"No count from {from} to {to} makes {MotifWords.Of(motif)}.");
        var nearest = search.Nearest.IsEmpty ? "" : $" Nearest: {string.Join("; ", search.Nearest.Select(n =>
            FormattableString.Invariant($"{n.Finding.Stitches} stitches make {MotifWords.Of(n.Finding.Reading.Kind)}")))}.";
        return
        [
            new Finding(FindingLevel.Fault, "garment.motif", none + nearest)
                .Helped([.. search.Advice.Select(a => new Remedy(null, null, AdviceWords.Say(a)))]),
        ];
    }
}
