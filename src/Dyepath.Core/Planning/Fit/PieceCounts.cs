using System.Collections.Immutable;
using Dyepath.Core.Fabrics;
using Dyepath.Core.Findings;
using Dyepath.Core.Garments;
using Dyepath.Core.Motifs;
using Dyepath.Core.Quantities;
using Dyepath.Core.Replays;
using Dyepath.Core.Sizing.Counts;
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

    /// <param name="axis">Along the stitches.</param>
    /// <param name="edges">Sewn edges that hide stitches.</param>
    /// <param name="panels">Panels that make up the measure: 2 for a girth, 1 for a length.</param>
    /// <param name="targets">Of the whole measure.</param>
    /// <param name="pins">Counts that are fixed for a size.</param>
    /// <param name="rows">About how many rows the piece has.</param>
    public static Grading Choose(
        Fabrication fabrication,
        Direction direction,
        Working working,
        Axis axis,
        int edges,
        int panels,
        ImmutableArray<Length> targets,
        ImmutableArray<int?> pins,
        int rows)
    {
        var (from, to) = Range(axis, edges, panels, targets);
        var options = fabrication.Counts(direction, working, from, to, rows);
        var search = Find(fabrication, options);
        var makers = search.Counts.Where(c => axis.Of(c.Stitches, edges) > Length.Zero && CanBeWritten(fabrication, working, c)).ToArray();
        var fixedCounts = pins.OfType<int>().Distinct().Select(pin => (Pin: pin, Finding: Fixed(fabrication, direction, working, pin, rows))).ToArray();
        if (fixedCounts.FirstOrDefault(f => f.Finding is null) is { Pin: > 0 and var lost })
        {
            return new Grading([], [], [new Finding(FindingLevel.Fault, "fabric.turnCost",
                $"A turn takes back more yarn than a row of {lost} stitches has: fix a larger count, or check the turn.")]);
        }
        CountFinding[] pinned = [.. fixedCounts.Select(f => f.Finding!)];
        var offer = new CountOffer(options, search, Offered(makers.Concat(pinned)), Alone);
        if (pinned.FirstOrDefault(pin => !CanBeWritten(fabrication, working, pin)) is { } wrong)
            return new Grading([], [], [WrongParity(working, wrong.Stitches)]) { Offer = offer };
        if (makers.Length == 0 && pins.Any(p => p is null))
            return new Grading([], [], Reasons(search, fabrication.Project.Garment.Motif, from, to)) { Offer = offer };
        var best = fabrication.Decisions.Grading([.. makers, .. pinned], Best);
        return best with { Offer = offer };

        Grading Best()
        {
            Grading? best = null;
            foreach (var alike in makers.Concat(pinned).GroupBy(c => RowsOf(fabrication, c)))
            {
                if (pinned.Any(p => RowsOf(fabrication, p) != alike.Key))
                    continue;
                var grading = Grade([.. alike.Except(pinned)]);
                if (best is null || grading.Cost(targets) < best.Cost(targets))
                    best = grading;
            }
            return best ?? new Grading([], [], [new Finding(FindingLevel.Fault, "sizes",
                "The fixed counts are even in one size and odd in another: linen stitch is worked otherwise then. Fix counts that are alike.")]);
        }

        Grading Grade(CountFinding[] findings)
        {
            var choice = fabrication.Project.Garment.Grading;
            var motif = fabrication.Project.Garment.Motif;
            findings = [.. findings.GroupBy(c => c.Stitches).Select(g => g.MinBy(c => Penalty(c, choice))!)];
            var counts = ImmutableArray.CreateBuilder<GradedCount>();
            if (panels == 2 && (choice.SideBands || choice.UnequalPanels))
                counts.AddRange(Expand(fabrication, findings, axis, edges, targets));
            else
                counts.AddRange(findings.Select(Alone));
            counts.AddRange(pinned
                .Where(p => !counts.Any(c => c.Bands == 0 && c.Front.Stitches == p.Stitches && c.Back.Stitches == p.Stitches))
                .Select(Alone));
            return Grader.Choose(
                counts.ToImmutable(), targets, pins, [.. counts.Select(c => c.Front.Reading.Kind != motif)], choice.MostCounts, fabrication.Effort);
        }

        ImmutableArray<GradedCount> Offered(IEnumerable<CountFinding> findings) =>
        [
            .. findings.Select(Alone).GroupBy(c => (c.Front.Stitches, c.Front.RowStitches.Length)).Select(g => g.MinBy(c => c.Penalty)!)
                .OrderBy(c => c.Measure),
        ];

        GradedCount Alone(CountFinding finding) => GradedCount.Alone(
            finding, panels * axis.Of(finding.RowStitches.Average(), edges), Penalty(finding, fabrication.Project.Garment.Grading));
    }

    /// <summary>One text serves all sizes, so that all sizes alternate or none does; even and odd linen rows are worked differently.</summary>
    private static (bool Alternating, bool OddLinen) RowsOf(Fabrication fabrication, CountFinding count) =>
        (count.RowStitches.Length == 2, IsLinen(fabrication) && count.Stitches % 2 == 1);

    private static bool CanBeWritten(Fabrication fabrication, Working working, CountFinding count) => IsLinen(fabrication)
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

    private static bool IsLinen(Fabrication fabrication) => fabrication.Stitch.StitchesPerUnit == 2;

    private static double Penalty(CountFinding finding, GradingChoice grading) =>
        Grader.Penalty(finding, grading)
        + (finding.Task.HasFlag(CountTask.ExtraEdgeStitch) ? PenaltyPerTask : 0)
        + (finding.Task.HasFlag(CountTask.HalfStitchTurn) ? PenaltyPerTask : 0);

    private static (int From, int To) Range(Axis axis, int edges, int panels, ImmutableArray<Length> targets)
    {
        var from = axis.Nearest((targets.Min() - Reach) / panels, edges);
        var to = axis.Nearest((targets.Max() + Reach) / panels, edges);
        from = Math.Clamp(from, 2, FabricPath.MostStitches);
        return (from, Math.Clamp(to, from, FabricPath.MostStitches));
    }

    private static CountSearch Find(Fabrication fabrication, CountOptions options) => fabrication.Decisions.Answer(
        () => CountFinder.Find(fabrication.Ring, options, fabrication.Effort), CountDecisions.Write, CountDecisions.ReadSearch);

    /// <summary>A count that was fixed, whatever it makes; null where its turn takes the whole row back.</summary>
    private static CountFinding? Fixed(Fabrication fabrication, Direction direction, Working working, int stitches, int rows)
    {
        var options = fabrication.Counts(direction, working, stitches, stitches, rows) with { Alternating = false, HalfTurn = false };
        var search = Find(fabrication, options);
        return search.Counts.IsEmpty ? search.Nearest.FirstOrDefault()?.Finding : search.Counts[0];
    }

    /// <summary>
    /// Side bands and unequal panels; a wider panel continues a narrower one only half periods on, so those alone are
    /// paired.
    /// </summary>
    private static IEnumerable<GradedCount> Expand(
        Fabrication fabrication, CountFinding[] findings, Axis axis, int edges, ImmutableArray<Length> targets)
    {
        var grading = fabrication.Project.Garment.Grading;
        var byStitches = findings.ToDictionary(f => f.Stitches);
        var rule = new ExpansionRule
        {
            BandStitch = fabrication.SingleCrochetHeight,
            MostBandStitches = grading.SideBands ? MostBandRows : 0,
            CostOfBands = 4,
            CostPerBandStitch = 0.5,
            MostDifference = grading.UnequalPanels
                ? Math.Min(100, (int)(ColourRing.ToUnits(fabrication.PeriodMicro) * fabrication.Stitch.StitchesPerUnit))
                : 0,
            CostOfDifference = 2,
            CostPerStitchOfDifference = 0.1,
            Narrowest = Length.Max(Length.Zero, targets.Min() - Reach),
            Widest = targets.Max() + Reach,
        };
        var unit = ColourRing.Unit / fabrication.Stitch.StitchesPerUnit;
        var families = grading.UnequalPanels
            ? findings.GroupBy(f => 2 * f.Stitches * unit % fabrication.PeriodMicro)
            : findings.GroupBy(_ => 0L);
        return families
            .SelectMany(family => CandidateExpansion.Build(
                [.. family.Select(f => new PanelCount(f.Stitches, axis.Of(f.RowStitches.Average(), edges), Penalty(f, grading)))], rule))
            .OrderBy(e => e.Penalty).Take(CountProblem.MostCandidates - 64)
            .Select(e => new GradedCount(byStitches[e.FrontStitches], byStitches[e.BackStitches], e.BandStitches, e.Measure, e.Penalty));
    }

    /// <summary>What is nearest to a motif that no count makes, and what would help.</summary>
    private static ImmutableArray<Finding> Reasons(CountSearch search, MotifKind motif, int from, int to)
    {
        var findings = ImmutableArray.CreateBuilder<Finding>();
        findings.Add(new Finding(FindingLevel.Fault, "garment.motif", FormattableString.Invariant(
            $"No count from {from} to {to} makes {MotifWords.Of(motif)}.")));
        if (!search.Nearest.IsEmpty)
        {
            findings.Add(new Finding(FindingLevel.Note, "garment.motif", "Nearest: " + string.Join("; ", search.Nearest.Select(n =>
                FormattableString.Invariant($"{n.Finding.Stitches} stitches make {MotifWords.Of(n.Finding.Reading.Kind)}"))) + "."));
        }
        findings.AddRange(search.Advice.Select(a => new Finding(FindingLevel.Note, "garment.motif", AdviceWords.Say(a))));
        return findings.ToImmutable();
    }
}
