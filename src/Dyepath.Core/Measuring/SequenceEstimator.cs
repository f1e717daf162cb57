using System.Collections.Immutable;
using Dyepath.Core.Limits;
using Dyepath.Core.Swatches;
using Dyepath.Core.Yarns;

namespace Dyepath.Core.Measuring;

/// <summary>Repeats counted without a break in work from one ball, every row as long as the sequence.</summary>
/// <param name="Ball">Index of the ball.</param>
/// <param name="FirstRepeat">Index of its first row among the ball's.</param>
internal sealed record CountedRun(int Ball, int FirstRepeat, ImmutableArray<ImmutableArray<int>> Rows);

/// <summary>
/// Estimates a colour sequence from stitches counted per colour, by generalised least squares on the cumulative
/// boundaries (docs/mathematics.md, "Measuring"). A mean of the repeats with its usual error takes the repeats for
/// independent, which hands that drift do not make, and covers 0.65 to 0.75 where it says 0.95.
/// </summary>
public static class SequenceEstimator
{
    /// <summary>
    /// Boundaries estimated together; a longer run is cut into pieces of this size, each with its own beginning, which
    /// bounds the work by the number of counts and gives up little: what a longer run adds is the rounding's share alone.
    /// </summary>
    internal const int MostBoundaries = 320;

    /// <summary>The weights depend on the answer through the boundaries' places; it settles in two passes.</summary>
    private const int Passes = 2;

    /// <param name="repeats">
    /// 1 or more rows of 1 to 64 counts within <see cref="CountedBall.Counts"/>, all of one length, counted without a break.
    /// </param>
    /// <param name="dye">Relative standard deviation of each section's length; omitted, the prior's for all.</param>
    /// <param name="blends">
    /// Units over which each section runs into the next one, 0 to 1,000; omitted, all change sharply.
    /// </param>
    /// <exception cref="ArgumentException">No row, rows of unequal length, a count out of range, or nothing counted at all.</exception>
    public static SequenceEstimate Estimate(
        ImmutableArray<ImmutableArray<int>> repeats, HandsPrior hands, IReadOnlyList<double>? dye = null, IReadOnlyList<double>? blends =
            null)
    {
        ArgumentNullException.ThrowIfNull(hands);
        if (repeats.IsDefaultOrEmpty || repeats[0].Length is 0 or > ColourRing.MostSections
            || repeats.Any(r => r.Length != repeats[0].Length || r.Any(k => !CountedBall.Counts.Holds(k))))
        {
            throw new ArgumentException(
                $"Counts need 1 or more rows, each of the same 1 to {ColourRing.MostSections} counts from "
                + $"{CountedBall.Counts.Smallest} to {CountedBall.Counts.Largest}.",
                nameof(repeats));
        }
        if (repeats.All(r => r.Sum() == 0))
            throw new ArgumentException("No stitch was counted.", nameof(repeats));
        if (dye is not null && (dye.Count != repeats[0].Length || dye.Any(d => !(d >= 0 && d <= 1))))
            throw new ArgumentException("Dye needs one figure from 0 to 1 for each section.", nameof(dye));
        if (blends is not null && (blends.Count != repeats[0].Length || blends.Any(b => !(b >= 0 && b <= CountedBall.Counts.Largest))))
            throw new ArgumentException("Blends need one length in units for each section.", nameof(blends));
        var doubt = SectionDoubt.Of(dye ?? Enumerable.Repeat(hands.Dye, repeats[0].Length));
        if (blends is not null)
            doubt = doubt with { Boundary = [.. blends.Select(SectionDoubt.OfBlend)] };
        return Estimate([new CountedRun(0, 0, repeats)], hands, doubt);
    }

    internal static SequenceEstimate Estimate(
        IReadOnlyList<CountedRun> runs, HandsPrior hands, SectionDoubt doubt, Effort? effort = null, int mostBoundaries = MostBoundaries)
    {
        var sections = runs[0].Rows[0].Length;
        var blocks = Blocks(runs, sections, mostBoundaries);
        var repeats = blocks.Sum(b => b.Length);
        var mean = new double[sections];
        for (var j = 0; j < sections; j++)
            mean[j] = Math.Max(blocks.Sum(b => b.Sum(row => row[j])) / (double)repeats, 1.0 / (2 * repeats));

        SequenceEstimate? estimate = null;
        for (var pass = 0; pass < Passes; pass++)
        {
            var error = Math.Sqrt(CountingPlan.SequenceVariance(mean, doubt.Dye, hands, repeats, doubt.MeanBoundary));
            var covariance = new CountCovariance(mean, doubt, hands, error);
            estimate = NormalSums.Of(blocks, sections, covariance, [], effort).Solve(hands);
            for (var j = 0; j < sections; j++)
                mean[j] = Math.Max(estimate.Sections[j].Value, 1.0 / (2 * repeats));
        }
        return estimate!;
    }

    /// <summary>
    /// The estimates of groups of runs, each from itself and from all the others together, the weights those of <paramref name="whole"/>:
    /// what is compared is then weighed alike, and the work grows with the counts and not with the groups.
    /// </summary>
    /// <param name="whole">The estimate of all runs.</param>
    internal static ImmutableArray<(SequenceEstimate Own, SequenceEstimate? Others)> Apart(
        IReadOnlyList<IReadOnlyList<CountedRun>> groups, SequenceEstimate whole, SectionDoubt doubt, Effort? effort)
    {
        var sections = whole.Sections.Length;
        var mean = whole.Sections.Select(s => Math.Max(s.Value, 1.0 / (2 * whole.Repeats))).ToArray();
        var error = Math.Sqrt(CountingPlan.SequenceVariance(mean, doubt.Dye, whole.Hands, whole.Repeats, doubt.MeanBoundary));
        var covariance = new CountCovariance(mean, doubt, whole.Hands, error);
        var designs = new Dictionary<int, BlockDesign>();
        var sums = groups.Select(runs => NormalSums.Of(Blocks(runs, sections, MostBoundaries), sections, covariance, designs,
            effort)).ToArray();
        // Summed from either end, since a sum less one of its parts may lose what makes it positive.
        var before = new NormalSums[sums.Length];
        var after = new NormalSums[sums.Length];
        for (var i = 1; i < sums.Length; i++)
        {
            before[i] = i == 1 ? sums[0] : before[i - 1] + sums[i - 1];
            after[^(i + 1)] = i == 1 ? sums[^1] : after[^i] + sums[^i];
        }
        return
        [
            .. sums.Select((own, i) => (own.Solve(whole.Hands), sums.Length == 1 ? null
                : (i == 0 ? after[i] : i == sums.Length - 1 ? before[i] : before[i] + after[i]).Solve(whole.Hands))),
        ];
    }

    internal static ImmutableArray<int>[][] Blocks(IEnumerable<CountedRun> runs, int sections, int mostBoundaries) =>
        [.. runs.SelectMany(run => run.Rows.Chunk(Math.Max(1, (mostBoundaries - 1) / sections)))];
}
