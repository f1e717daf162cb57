using System.Collections.Immutable;
using Dyepath.Core.Fabrics;
using Dyepath.Core.Findings;
using Dyepath.Core.Quantities;
using Dyepath.Core.Yarns;

namespace Dyepath.Core.Planning;

/// <summary>How a size's panels begin and how many rows they have.</summary>
/// <param name="Start">Start of the second piece in whole units.</param>
/// <param name="Seams">Jump and match of each seam, as a <see cref="SeamPlan"/> has them.</param>
internal sealed record SeamDecision(
    int Rows, int Neck, bool BackTurned, int FrontStart, int Start, ImmutableArray<(double Jump, double Match)> Seams);

/// <summary>Chooses row counts, start colours and the way the back is turned so that the motif jumps least across the seams.</summary>
internal static class SeamSearch
{
    /// <summary>Rows may be changed as long as the garment's measure stays within this of its target.</summary>
    public static readonly Length Tolerance = Length.FromCentimetres(1);

    /// <summary>Ties: a stitch of jump is worth far more than any of these.</summary>
    private const double PerCentimetre = 0.05;
    private const double PerTurnedBack = 0.03;
    private const double PerOddRows = 0.02;

    /// <summary>What a row, or a start, of one layout takes.</summary>
    private const int StepsOfRow = 60;

    /// <summary>A start within a colour has to be counted off, where a colour's first stitch is seen: worth this much jump.</summary>
    private const double PerStartWithinColour = 0.5;

    /// <param name="rows">The rows nearest to the target.</param>
    /// <param name="error">Error of the garment's measure for a row count.</param>
    /// <param name="layout">Lays out the panels, both starting at 0.</param>
    /// <param name="lengths">Seam lengths, as weights.</param>
    public static SeamDecision Choose(
        Fabrication fabrication,
        int rows,
        bool rowsFixed,
        Func<int, Length> error,
        Func<int, bool, BoxyLayout> layout,
        ImmutableArray<double> lengths,
        int frontStart,
        int? backStart) =>
        fabrication.Decisions.Seams(() => Search(fabrication, rows, rowsFixed, error, layout, lengths, (frontStart, backStart)));

    private static SeamDecision Search(
        Fabrication fabrication,
        int rows,
        bool rowsFixed,
        Func<int, Length> error,
        Func<int, bool, BoxyLayout> layout,
        ImmutableArray<double> lengths,
        (int Front, int? Back) asked)
    {
        var (frontStart, backStart) = asked;
        var starts = (int)Math.Clamp(fabrication.PeriodMicro / ColourRing.Unit, 1, ColourRing.LongestSequence);
        var changes = Changes(fabrication, starts);
        // A start that the designer chose is the only one. Every other is a whole stitch of the sequence too: counted on from the front's,
        // one that passes the sequence's end would not be, where the sequence is not whole.
        var (earliest, latest) = backStart is { } wanted ? (wanted, wanted) : (0, starts - 1);
        (int Rows, bool Turned, int Start) best = default;
        var least = double.PositiveInfinity;
        foreach (var count in Rows(rows, rowsFixed, error))
        {
            foreach (var turned in (ReadOnlySpan<bool>)[false, true])
            {
                var placed = layout(count, turned);
                fabrication.Effort.Spend(StepsOfRow * (long)(placed.Rows + starts));
                var meters = placed.Meters(fabrication.PeriodMicro);
                var own = Math.Abs(error(count).Centimetres) * PerCentimetre + (turned ? PerTurnedBack : 0) + (
                    count % 2 == 0 ? 0 : PerOddRows);
                for (var start = earliest; start <= latest; start++)
                {
                    var later = start - frontStart;
                    var within = backStart is null && !changes[start];
                    var cost = own + (within ? PerStartWithinColour : 0) + Mean(meters, lengths, later * ColourRing.Unit);
                    if (cost >= least - 1e-9)
                        continue;
                    (least, best) = (cost, (count, turned, start));
                }
            }
        }
        var chosen = layout(best.Rows, best.Turned);
        return new SeamDecision(
            best.Rows, chosen.Neck, best.Turned, frontStart, best.Start,
            [.. chosen.Meters(fabrication.PeriodMicro).Select(m => Figures(m, best.Start - frontStart))]);
    }

    /// <summary>
    /// A start for the first piece: with lean 0 the colours stand clearest where a row and its return agree most; else where the
    /// sequence begins.
    /// </summary>
    public static int FirstStart(Fabrication fabrication, FabricPath path, double lean)
    {
        if (lean != 0 || !path.IsTurned)
            return 0;
        return fabrication.Decisions.Start(() => Clearest(fabrication, path));
    }

    private static int Clearest(Fabrication fabrication, FabricPath path)
    {
        var ring = fabrication.Ring;
        var units = (int)(path.RowYarn(0) / ColourRing.Unit);
        var starts = SequenceUnits(fabrication);
        // Both rows' colours by whole units along the yarn: any start reads a stretch of each, the second one backwards.
        fabrication.Effort.Spend((starts + units) * 20L);
        var first = Enumerable.Range(0, starts + units).Select(i => Colour(ring, path.FromRight(0, i * ColourRing.Unit))).ToArray();
        var second = Enumerable.Range(0, starts + units).Select(i => Colour(ring, path.FromRight(1, (units - 1 - i) * ColourRing.Unit))).ToArray();
        var (best, most) = (0, -1);
        for (var start = 0; start < starts; start++)
        {
            fabrication.Effort.Spend(1 + units / 10);
            var same = 0;
            for (var c = 0; c < units; c++)
                same += first[start + c] == second[start + units - 1 - c] ? 1 : 0;
            if (same > most)
                (best, most) = (start, same);
        }
        return best;
    }

    /// <summary>The start that makes the mean of the jumps least; ties to a colour's first stitch, then the earliest.</summary>
    public static int Start(Fabrication fabrication, IReadOnlyList<SeamMeter> meters) => fabrication.Decisions.Start(() =>
    {
        var starts = (int)Math.Clamp(fabrication.PeriodMicro / ColourRing.Unit, 1, ColourRing.LongestSequence);
        var changes = Changes(fabrication, starts);
        return Enumerable.Range(0, starts).MinBy(start =>
            meters.Sum(m => m.MeanJump(start * ColourRing.Unit)) / ColourRing.Unit + (changes[start] ? 0 : PerStartWithinColour));
    });

    /// <summary>A seam's mean jump in units, and its match, when the second piece starts so many units later.</summary>
    public static (double Jump, double Match) Figures(SeamMeter meter, int later = 0) =>
        (meter.MeanJump(later * ColourRing.Unit) / ColourRing.Unit, meter.Match(later * ColourRing.Unit));

    /// <summary>Starts that no sequence has, or that name a piece without its own colours.</summary>
    public static IEnumerable<Finding> Faults(Fabrication fabrication)
    {
        var units = SequenceUnits(fabrication);
        foreach (var (piece, start) in fabrication.Project.Garment.Starts)
        {
            if (start >= units)
                yield return new Finding(FindingLevel.Fault, $"garment.starts.{piece}", FormattableString.Invariant(
                    $"One sequence of this yarn has {units} stitches: begin the {piece} at a whole number from 0 to {units - 1}."));
        }
    }

    private static IEnumerable<int> Rows(int rows, bool rowsFixed, Func<int, Length> error)
    {
        yield return rows;
        for (var step = 1; step <= 8 && !rowsFixed; step++)
        {
            foreach (var count in new[] { rows - step, rows + step })
            {
                if (count is > 4 and <= FabricPath.MostRows && error(count) <= Tolerance && error(count) >= -Tolerance)
                    yield return count;
            }
        }
    }

    private static double Mean(ImmutableArray<SeamMeter> meters, ImmutableArray<double> lengths, long later)
    {
        double sum = 0, all = 0;
        for (var i = 0; i < meters.Length; i++)
        {
            sum += lengths[i] * meters[i].MeanJump(later) / ColourRing.Unit;
            all += lengths[i];
        }
        return all == 0 ? 0 : sum / all;
    }

    private static bool[] Changes(Fabrication fabrication, int starts) =>
        [.. Enumerable.Range(0, starts).Select(s => fabrication.Ring.Locate(s * ColourRing.Unit).Into < ColourRing.Unit)];

    private static int Colour(ColourRing ring, long place) => ring.Colours[ring.Locate(place + ColourRing.Unit / 2).Section];

    private static int SequenceUnits(Fabrication fabrication) => (int)Math.Max(1, fabrication.Ring.Total / ColourRing.Unit);
}
