using Dyepath.Core.Swatches;
using Dyepath.Core.Yarns;

namespace Dyepath.Core.Tests.Yarns;

public class EstimatorCoverageTests
{
    [Fact]
    public void Explore()
    {
        foreach (var kind in new[] { "whole", "half", "any" , "near"})
        foreach (var spread in new[] { 0.001, 0.003, 0.01 })
        foreach (var dye in new[] { 0.0, 0.02 })
        {
            var line = "";
            foreach (var m in new[] { 2, 3, 6, 12 })
            {
                const int trials = 1500;
                var prior = new HandsPrior(spread, 50, dye);
                int c = 0, s = 0;
                for (var t = 0; t < trials; t++)
                {
                    var maker = new SimulatedMaker(spread, 50, dye, (ulong)(t * 7919 + 13));
                    var ring = new double[4];
                    for (var j = 0; j < 4; j++) ring[j] = 3 + 5 * maker.Uniform();
                    var sum = ring.Sum();
                    var target = kind switch { "whole" => 22.0, "half" => 22.5, "near" => 22.06, _ => sum };
                    ring[3] += target - sum;
                    if (ring[3] < 1.5) { continue; }
                    var counts = maker.Count(ring, m);
                    var e = SequenceEstimator.Estimate(counts, prior);
                    if (Math.Abs(e.Sequence.Value - ring.Sum()) > 1.96 * e.Sequence.StandardError) c++;
                    for (var j = 0; j < ring.Length; j++)
                        if (Math.Abs(e.Sections[j].Value - ring[j]) > 1.96 * e.Sections[j].StandardError) s++;
                }
                line += $"  m {m}: {1-(double)c / trials:0.000} {1-(double)s / trials / 4:0.000}";
            }
            TestContext.Current.TestOutputHelper!.WriteLine($"{kind} σ {spread} dye {dye} {line}");
        }
    }
}
