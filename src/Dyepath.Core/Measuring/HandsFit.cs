using Dyepath.Core.Limits;

namespace Dyepath.Core.Measuring;

/// <summary>
/// Whether counts wander more than the hands that were assumed: the spread by restricted likelihood, weighed with how far hands differ, so
/// that a few repeats say little and many prevail. Intervals are then as wide as those hands make them.
/// </summary>
internal static class HandsFit
{
    /// <summary>Standard deviation of the logarithm of makers' spreads about the assumed one (an assumption: no source).</summary>
    private const double Makers = 0.7;

    /// <summary>Fewer repeats say nothing of the hands.</summary>
    private const int FewestRepeats = 4;

    /// <summary>Boundaries compared together: enough to show a wander over a hundred stitches and more.</summary>
    private const int MostBoundaries = 64;

    /// <summary>Spreads tried, over the assumed one.</summary>
    private static readonly double[] Ratios = [0.6, 0.8, 1, 1.25, 1.55, 1.95, 2.4, 3];

    /// <summary>Less than this over the assumed spread is left at that: so much chance finds in steady counts.</summary>
    private const double WorthWidening = 1.2;

    /// <summary>The hands as they are, or wider where they are assumed and the counts speak against them.</summary>
    public static HandsPrior Widened(IReadOnlyList<CountedRun> runs, HandsPrior hands, SectionDoubt doubt, Effort? effort = null)
    {
        if (hands.IsMakersOwn || hands.Spread == 0 || runs.Sum(run => run.Rows.Length) < FewestRepeats)
            return hands;
        var sections = runs[0].Rows[0].Length;
        var blocks = SequenceEstimator.Blocks(runs, sections, MostBoundaries);
        var repeats = blocks.Sum(block => block.Length);
        var mean = new double[sections];
        for (var j = 0; j < sections; j++)
            mean[j] = Math.Max(blocks.Sum(b => b.Sum(row => row[j])) / (double)repeats, 1.0 / (2 * repeats));
        var logs = Ratios.Select(ratio =>
        {
            var wider = new HandsPrior(Math.Min(hands.Spread * ratio, HandsPrior.Spreads.Largest), hands.Memory, hands.Dye);
            var error = Math.Sqrt(CountingPlan.SequenceVariance(mean, doubt.Dye, wider, repeats, doubt.MeanBoundary));
            var sums = NormalSums.Of(blocks, sections, new CountCovariance(mean, doubt, wider, error), [], effort);
            // Centred so that the mean square of makers' spreads is the assumed one's: nothing counted widens nothing.
            var apart = (Math.Log(ratio) + Makers * Makers) / Makers;
            return sums.LogLikelihood() - apart * apart / 2;
        }).ToArray();
        var best = logs.Max();
        double weights = 0, square = 0;
        for (var i = 0; i < logs.Length; i++)
        {
            var weight = Math.Exp(logs[i] - best);
            weights += weight;
            square += weight * Ratios[i] * Ratios[i];
        }
        var found = Math.Sqrt(square / weights);
        return found < WorthWidening ? hands : hands.Wider(Math.Min(hands.Spread * found, HandsPrior.Spreads.Largest));
    }
}
