using System.Collections.Immutable;
using Dyepath.Core.Fabrics;
using Dyepath.Core.Findings;
using Dyepath.Core.Garments;
using Dyepath.Core.Quantities;
using Dyepath.Core.Yarns;

namespace Dyepath.Core.Planning;

/// <summary>How a piece lies beside those that are decided already, and how many rows it and they have.</summary>
/// <param name="Turned">Wrong side out.</param>
/// <param name="Start">In whole units.</param>
internal sealed record SeamDecision(int Rows, bool Turned, int Start);

/// <summary>A seam of a piece that is being decided.</summary>
/// <param name="Meters">One for each extension that it may be judged by, tallied with the piece starting at 0.</param>
/// <param name="Later">
/// 1 where starting the piece later adds to its jumps, −1 where it takes from them, 0 where both its edges are the piece's.
/// </param>
/// <param name="Weight">Such as its length.</param>
internal readonly record struct OpenSeam(ImmutableArray<JudgedSeam> Meters, int Later, double Weight)
{
    /// <summary>Mean jump in micro-units against the extension that comes nearest.</summary>
    public double LeastJump(long start)
    {
        var least = double.PositiveInfinity;
        foreach (var (_, meter) in Meters)
            least = Math.Min(least, meter.MeanJump(Later * start));
        return least;
    }
}

/// <summary>A seam's jumps against one extension.</summary>
internal readonly record struct JudgedSeam(SeamExtension Extension, SeamMeter Meter);

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
    /// <param name="choices">Other row counts may be taken, the piece may be turned over, and the start that the designer chose.</param>
    /// <param name="error">Error of the garment's measure for a row count.</param>
    /// <param name="seams">Seams of the piece for a row count, turned or not.</param>
    public static SeamDecision Choose(
        SharedFabric shared,
        int rows,
        (bool MayChangeRows, bool MayTurn, int? Start) choices,
        Func<int, Length> error,
        Func<int, bool, ImmutableArray<OpenSeam>> seams) =>
        shared.Decisions.Seams(() => Search(shared, rows, choices, error, seams));

    private static SeamDecision Search(
        SharedFabric shared,
        int rows,
        (bool MayChangeRows, bool MayTurn, int? Start) choices,
        Func<int, Length> error,
        Func<int, bool, ImmutableArray<OpenSeam>> seams)
    {
        var starts = (int)Math.Clamp(shared.PeriodMicro / ColourRing.Unit, 1, ColourRing.LongestSequence);
        var changes = Changes(shared, starts);
        // A start that the designer chose is the only one. Every other is a whole stitch of the sequence too: counted on from another
        // piece's, one that passes the sequence's end would not be, where the sequence is not whole.
        var (earliest, latest) = choices.Start is { } wanted ? (wanted, wanted) : (0, starts - 1);
        SeamDecision? best = null;
        var least = double.PositiveInfinity;
        foreach (var count in Rows(rows, !choices.MayChangeRows, error))
        {
            foreach (var turned in choices.MayTurn ? (ReadOnlySpan<bool>)[false, true] : [false])
            {
                var open = seams(count, turned);
                shared.Effort.Spend(StepsOfRow * (long)(count + starts) * Math.Max(1, open.Max(s => s.Meters.Length)));
                var own = Math.Abs(error(count).Centimetres) * PerCentimetre + (turned ? PerTurnedBack : 0) + (
                    count % 2 == 0 ? 0 : PerOddRows);
                for (var start = earliest; start <= latest; start++)
                {
                    var within = choices.Start is null && !changes[start];
                    var cost = own + (within ? PerStartWithinColour : 0) + Mean(open, start);
                    if (cost >= least - 1e-9)
                        continue;
                    (least, best) = (cost, new SeamDecision(count, turned, start));
                }
            }
        }
        return best!;
    }

    /// <summary>
    /// A start for the first piece: with lean 0 the colours stand clearest where a row and its return agree most; else where the
    /// sequence begins.
    /// </summary>
    public static int FirstStart(SharedFabric shared, FabricPath path, double lean)
    {
        if (lean != 0 || !path.IsTurned)
            return 0;
        return shared.Decisions.Start(() => Clearest(shared, path));
    }

    private static int Clearest(SharedFabric shared, FabricPath path)
    {
        var ring = shared.Ring;
        var units = (int)(path.RowYarn(0) / ColourRing.Unit);
        var starts = SequenceUnits(shared);
        // Both rows' colours by whole units along the yarn: any start reads a stretch of each, the second one backwards.
        shared.Effort.Spend((starts + units) * 20L);
        var first = Enumerable.Range(0, starts + units).Select(i => Colour(ring, path.FromRight(0, i * ColourRing.Unit))).ToArray();
        var second = Enumerable.Range(0, starts + units).Select(i => Colour(ring, path.FromRight(1, (units - 1 - i) * ColourRing.Unit)))
            .ToArray();
        var (best, most) = (0, -1);
        for (var start = 0; start < starts; start++)
        {
            shared.Effort.Spend(1 + units / 10);
            var same = 0;
            for (var c = 0; c < units; c++)
                same += first[start + c] == second[start + units - 1 - c] ? 1 : 0;
            if (same > most)
                (best, most) = (start, same);
        }
        return best;
    }

    /// <summary>A seam's mean jump in units, and its match.</summary>
    public static (double Jump, double Match) Figures(SeamMeter meter) => (meter.MeanJump() / ColourRing.Unit, meter.Match());

    /// <summary>Starts that no sequence has, or that name a piece without its own colours.</summary>
    public static IEnumerable<Finding> Faults(SharedFabric shared)
    {
        var units = SequenceUnits(shared);
        foreach (var (piece, start) in shared.Project.Garment.Starts)
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

    private static double Mean(ImmutableArray<OpenSeam> seams, int start)
    {
        double sum = 0, all = 0;
        foreach (var seam in seams)
        {
            sum += seam.Weight * seam.LeastJump((long)start * ColourRing.Unit) / ColourRing.Unit;
            all += seam.Weight;
        }
        return all == 0 ? 0 : sum / all;
    }

    private static bool[] Changes(SharedFabric shared, int starts) =>
        [.. Enumerable.Range(0, starts).Select(s => shared.Ring.Locate(s * ColourRing.Unit).Into < ColourRing.Unit)];

    private static int Colour(ColourRing ring, long place) => ring.Colours[ring.Locate(place + ColourRing.Unit / 2).Section];

    public static int SequenceUnits(SharedFabric shared) => (int)Math.Max(1, shared.Ring.Total / ColourRing.Unit);
}
