using System.Collections.Immutable;
using Dyepath.Core.Measuring;

namespace Dyepath.Core.Tests.Yarns;

/// <summary>How often intervals that say 95 % hold the truth, over simulated makers.</summary>
public class EstimatorCoverageTests
{
    private const double Reach = 1.959964;

    [Theory]
    [InlineData(0.001, 0.0, 3)]
    [InlineData(0.003, 0.02, 6)]
    [InlineData(0.01, 0.0, 12)]
    [InlineData(0.01, 0.02, 3)]
    [InlineData(0.02, 0.02, 2)]
    [InlineData(0.02, 0.02, 6)]
    [InlineData(0.02, 0.02, 12)]
    [InlineData(0.05, 0.02, 6)]
    [InlineData(0.05, 0.0, 3)]
    public void Intervals_cover_as_often_as_they_say(double spread, double dye, int repeats)
    {
        var (sequence, sections) = Coverage(spread, dye, repeats, sequenceStitches: null, 1_500, Estimated);

        Assert.InRange(sequence, 0.93, 0.97);
        Assert.InRange(sections, 0.93, 0.97);
    }

    [Theory]
    [InlineData(0.02, 4)]
    [InlineData(0.03, 6)]
    [InlineData(0.03, 12)]
    public void The_naive_mean_of_the_repeats_covers_far_less_than_it_says(double spread, int repeats)
    {
        var (sequence, _) = Coverage(spread, 0.02, repeats, null, 1_500, (counts, _, _) =>
        {
            var totals = counts.Select(row => (double)row.Sum()).ToArray();
            var mean = totals.Average();
            var error = Math.Sqrt(totals.Sum(t => (t - mean) * (t - mean)) / (totals.Length - 1) / totals.Length);
            return (new Estimate(mean, error), []);
        });

        Assert.InRange(sequence, 0.65, 0.75);
    }

    [Fact]
    public void Whole_sequences_and_steady_hands_repeat_their_rounding_which_independent_rounding_denies()
    {
        const int repeats = 12;
        var (_, correlated) = Coverage(0.001, 0, repeats, 22, 300, Estimated);
        var (_, independent) = Coverage(0.001, 0, repeats, 22, 300, (counts, ring, hands) =>
        {
            var (sections, covariance) = DirectEstimate.Solve(counts, ring, hands, 0, correlatedRounding: false);
            return (default, [.. sections.Select((s, j) => new Estimate(s, Math.Sqrt(covariance[j, j])))]);
        });

        Assert.InRange(correlated, 0.85, 0.98);
        Assert.InRange(independent, 0.3, 0.6);
    }

    [Fact]
    public void The_closed_form_of_the_sequences_error_agrees_with_simulation()
    {
        double[] ring = [5.3, 4.4, 5.9, 6.4];
        var hands = new HandsPrior(0.01, 50, 0.02);
        const int trials = 2_000;
        var errors = Enumerable.Range(0, trials).Select(t =>
            SequenceEstimator.Estimate(Maker(hands, t).Count(ring, 8), hands).Sequence.Value - ring.Sum()).ToArray();

        var simulated = Math.Sqrt(errors.Sum(e => e * e) / trials);
        var closed = Math.Sqrt(CountingPlan.SequenceVariance(ring, [0.02, 0.02, 0.02, 0.02], hands, 8));
        Assert.InRange(simulated / closed, 0.95, 1.05);
    }

    private static (Estimate Sequence, ImmutableArray<Estimate> Sections) Estimated(
        ImmutableArray<ImmutableArray<int>> counts, double[] ring, HandsPrior hands)
    {
        var estimate = SequenceEstimator.Estimate(counts, hands);
        return (estimate.Sequence, estimate.Sections);
    }

    private static (double Sequence, double Sections) Coverage(
        double spread,
        double dye,
        int repeats,
        double? sequenceStitches,
        int trials,
        Func<ImmutableArray<ImmutableArray<int>>, double[], HandsPrior, (Estimate Sequence, ImmutableArray<Estimate> Sections)> estimator)
    {
        var hands = new HandsPrior(spread, 50, dye);
        int sequence = 0, sections = 0, measured = 0;
        for (var trial = 0; trial < trials; trial++)
        {
            var maker = Maker(hands, trial);
            var ring = Enumerable.Range(0, 4).Select(_ => 4 + 4 * maker.Uniform()).ToArray();
            if (sequenceStitches is { } wanted)
                ring[3] = wanted - ring[0] - ring[1] - ring[2];
            if (ring[3] < 2)
                continue;
            var (c, each) = estimator(maker.Count(ring, repeats), ring, hands);
            measured++;
            sequence += Covers(c, ring.Sum()) ? 1 : 0;
            sections += each.Where((e, j) => Covers(e, ring[j])).Count();
        }
        return ((double)sequence / measured, (double)sections / measured / 4);
    }

    private static SimulatedMaker Maker(HandsPrior hands, int trial) =>
        new(hands.Spread, hands.Memory, hands.Dye, 20_000 + (ulong)trial);

    private static bool Covers(Estimate estimate, double truth) =>
        Math.Abs(estimate.Value - truth) <= Reach * estimate.StandardError;
}
