using System.Collections.Immutable;
using Dyepath.Core.Fabrics;
using Dyepath.Core.Motifs;
using Dyepath.Core.Quantities;
using Dyepath.Core.Sizing.Counts;
using Dyepath.Core.Yarns;

namespace Dyepath.Core.Garments;

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
        int rows,
        CancellationToken cancel)
    {
        var (from, to) = Range(axis, edges, panels, targets);
        var search = CountFinder.Find(fabrication.Ring, fabrication.Counts(direction, working, from, to, rows));
        var grading = fabrication.Project.Garment.Grading;
        var best = search.Counts.Where(c => axis.Of(c.Stitches, edges) > Length.Zero).GroupBy(c => c.Stitches).Select(g => g.MinBy(c => Penalty(c, grading))!).ToArray();
        var widened = panels == 2 && (grading.SideBands || grading.UnequalPanels);
        var counts = ImmutableArray.CreateBuilder<GradedCount>();
        if (widened)
            counts.AddRange(Expand(fabrication, best, axis, edges, targets));
        else
            counts.AddRange(best.Select(c => GradedCount.Alone(c, panels * axis.Of(c.RowStitches.Average(), edges), Penalty(c, grading))));
        var made = counts.Count;
        foreach (var pin in pins.OfType<int>().Distinct().Where(
            p => !counts.Any(c => c.Bands == 0 && c.Front.Stitches == p && c.Back.Stitches == p)))
            counts.Add(Alone(fabrication, direction, working, axis, edges, panels, pin, rows));
        if (made == 0 && pins.Any(p => p is null))
            return new Grading([], [], Reasons(search, fabrication.Project.Garment.Motif, from, to));
        var motif = fabrication.Project.Garment.Motif;
        return Grader.Choose(
            counts.ToImmutable(), targets, pins, [.. counts.Select(c => c.Front.Reading.Kind != motif)], grading.MostCounts, cancel);
    }

    private static double Penalty(CountFinding finding, GradingChoice grading) =>
        Grader.Penalty(finding, grading.ForgivenessWeight)
        + (finding.Task.HasFlag(CountTask.ExtraEdgeStitch) ? PenaltyPerTask : 0)
        + (finding.Task.HasFlag(CountTask.HalfStitchTurn) ? PenaltyPerTask : 0);

    private static (int From, int To) Range(Axis axis, int edges, int panels, ImmutableArray<Length> targets)
    {
        var from = axis.Nearest((targets.Min() - Reach) / panels, edges);
        var to = axis.Nearest((targets.Max() + Reach) / panels, edges);
        from = Math.Clamp(from, 2, FabricPath.MostStitches);
        return (from, Math.Clamp(to, from, FabricPath.MostStitches));
    }

    /// <summary>A count that was fixed, whatever it makes.</summary>
    private static GradedCount Alone(
        Fabrication fabrication, Direction direction, Working working, Axis axis, int edges, int panels, int stitches, int rows)
    {
        var options = fabrication.Counts(direction, working, stitches, stitches, rows) with { Alternating = false, HalfTurn = false };
        var search = CountFinder.Find(fabrication.Ring, options);
        var finding = search.Counts.IsEmpty ? search.Nearest[0].Finding : search.Counts[0];
        return GradedCount.Alone(finding, panels * axis.Of(stitches, edges), Penalty(finding, fabrication.Project.Garment.Grading));
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
