using System.Collections.Immutable;
using Dyepath.Core.Measuring;

namespace Dyepath.Core.Tests.Yarns;

/// <summary>Intervals of blended yarns, and of hands unlike those assumed, over simulated makers.</summary>
public class EstimatorDoubtTests
{
    private const double Reach = 1.959964;
    private const int Trials = 600;

    [Theory]
    [InlineData(2.0, 4)]
    [InlineData(3.0, 8)]
    public void Sections_of_a_blended_yarn_cover_as_often_as_they_say(double blend, int repeats)
    {
        var (sequence, sections) = Coverage(0.02, 0.02, repeats, blend, (counts, hands) => SequenceEstimator.Estimate(
            counts, hands, blends: [blend, blend, blend, blend]));
        Assert.InRange(sequence, 0.92, 0.98);
        Assert.InRange(sections, 0.93, 0.98);

        var (_, unaware) = Coverage(0.02, 0.02, repeats, blend, (counts, hands) => SequenceEstimator.Estimate(counts, hands));
        Assert.InRange(unaware, 0.5, 0.9);
    }

    /// <summary>As assumed nothing is widened to speak of; unlike hands come most of the way back to 0.95.</summary>
    [Theory]
    [InlineData(0.02, 6, 0.93, 0.975)]
    [InlineData(0.02, 12, 0.93, 0.975)]
    [InlineData(0.03, 6, 0.88, 0.97)]
    [InlineData(0.03, 12, 0.88, 0.97)]
    [InlineData(0.05, 12, 0.84, 0.97)]
    public void Hands_unlike_those_assumed_widen_the_interval(double spread, int repeats, double least, double most)
    {
        var (sequence, _) = Coverage(spread, 0.02, repeats, 0, (counts, hands) => SequenceEstimator.Estimate(
            [new CountedRun(0, 0, counts)], HandsFit.Widened([new CountedRun(0, 0, counts)], hands, Sharp), Sharp));
        Assert.True(sequence >= least && sequence <= most, $"{sequence}");
        if (spread > 0.02)
        {
            var (assumed, _) = Coverage(spread, 0.02, repeats, 0, (counts, hands) => SequenceEstimator.Estimate(counts, hands));
            Assert.True(sequence > assumed, $"{sequence} {assumed}");
        }
    }

    [Fact]
    public void The_makers_own_figures_are_left_alone()
    {
        var counts = new SimulatedMaker(0.05, 50, 0.02, 3).Count([5.3, 4.4, 5.9, 6.4], 20);
        var own = new HandsPrior(0.02, 50, 0.02, isMakersOwn: true);
        Assert.Same(own, HandsFit.Widened([new CountedRun(0, 0, counts)], own, Sharp));
        Assert.True(HandsFit.Widened([new CountedRun(0, 0, counts)], HandsPrior.Default, Sharp).Spread > 0.025);
    }

    private static SectionDoubt Sharp => SectionDoubt.Of([0.02, 0.02, 0.02, 0.02]);

    private static (double Sequence, double Sections) Coverage(
        double spread, double assumed, int repeats, double blend,
        Func<ImmutableArray<ImmutableArray<int>>, HandsPrior, SequenceEstimate> estimator)
    {
        int sequence = 0, sections = 0;
        for (var trial = 0; trial < Trials; trial++)
        {
            var maker = new SimulatedMaker(spread, 50, 0.02, 50_000 + (ulong)trial);
            var ring = Enumerable.Range(0, 4).Select(_ => 4 + 4 * maker.Uniform()).ToArray();
            var estimate = estimator(maker.Count(ring, repeats, blend), new HandsPrior(assumed, 50, 0.02));
            sequence += Covers(estimate.Sequence, ring.Sum()) ? 1 : 0;
            sections += estimate.Sections.Where((e, j) => Covers(e, ring[j])).Count();
        }
        return ((double)sequence / Trials, (double)sections / Trials / 4);
    }

    private static bool Covers(Estimate estimate, double truth) => Math.Abs(estimate.Value - truth) <= Reach * estimate.StandardError;
}
