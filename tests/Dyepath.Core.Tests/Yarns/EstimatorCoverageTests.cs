using Dyepath.Core.Swatches;
using Dyepath.Core.Yarns;

namespace Dyepath.Core.Tests.Yarns;

public class EstimatorCoverageTests
{
    [Fact]
    public void Explore()
    {
        double[][] rings = [[5, 4, 6, 7], [5.4, 4.3, 6.6, 5.7], [5.23, 4.11, 6.37, 6.9], [5.5, 4.5, 6, 6.5], [3.2, 9.02, 9.8],[5.1, 4.3, 6.2, 6.42]];
        foreach (var spread in new[] { 0.001, 0.003, 0.01, 0.02, 0.05 })
        foreach (var dye in new[] { 0.0, 0.02 })
        foreach (var m in new[] { 2, 3, 6, 12 })
        {
            foreach (var ring in rings)
            {
                const int trials = 400;
                var prior = new HandsPrior(spread, 50, dye);
                int c = 0, s = 0;
                for (var t = 0; t < trials; t++)
                {
                    var counts = new SimulatedMaker(spread, 50, dye, (ulong)(t * 7919 + 13)).Count(ring, m);
                    var e = SequenceEstimator.Estimate(counts, prior);
                    if (Math.Abs(e.Sequence.Value - ring.Sum()) <= 1.96 * e.Sequence.StandardError) c++;
                    for (var j = 0; j < ring.Length; j++)
                        if (Math.Abs(e.Sections[j].Value - ring[j]) <= 1.96 * e.Sections[j].StandardError) s++;
                }
                TestContext.Current.TestOutputHelper!.WriteLine($"σ {spread} dye {dye} m {m} ring {string.Join(",", ring)} C {(double)c / trials:0.000} sections {(double)s / trials / ring.Length:0.000}");
            }
        }
    }
}
