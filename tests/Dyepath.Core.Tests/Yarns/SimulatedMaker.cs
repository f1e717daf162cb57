using System.Collections.Immutable;

namespace Dyepath.Core.Tests.Yarns;

/// <summary>
/// Counts stitches as a maker would: each stitch takes its own yarn, each section its own length, and a stitch belongs
/// to the section that covers most of it.
/// </summary>
internal sealed class SimulatedMaker(double spread, double memory, double dye, ulong seed)
{
    private readonly double _rho = Math.Exp(-1 / memory);
    private readonly double _dye = dye;
    private readonly double _spread = spread;
    private ulong _state = seed;

    /// <param name="blend">Stitches over which each colour runs into the next; the change is called anywhere within it.</param>
    public ImmutableArray<ImmutableArray<int>> Count(IReadOnlyList<double> sections, int repeats, double blend = 0)
    {
        // Where the first stitch begins within the section, in stitches.
        var boundary = Uniform() - 0.5;
        var tension = _spread * Gaussian();
        double yarn = 0, taken = 1 + tension;
        int stitch = 0, counted = 0;
        var rows = ImmutableArray.CreateBuilder<ImmutableArray<int>>();
        for (var r = 0; r < repeats; r++)
        {
            var row = ImmutableArray.CreateBuilder<int>();
            foreach (var section in sections)
            {
                boundary += section * (1 + _dye * Gaussian());
                var called = blend == 0 ? boundary : boundary + blend * (Uniform() - 0.5);
                while (yarn + taken / 2 <= called)
                {
                    yarn += taken;
                    stitch++;
                    tension = _rho * tension + _spread * Math.Sqrt(1 - _rho * _rho) * Gaussian();
                    taken = 1 + tension;
                }
                row.Add(stitch - counted);
                counted = stitch;
            }
            rows.Add(row.ToImmutable());
        }
        return rows.ToImmutable();
    }

    public double Uniform() => (Next() >> 11) * (1.0 / (1UL << 53));

    public double Gaussian() =>
        Math.Sqrt(-2 * Math.Log(1 - Uniform())) * Math.Cos(2 * Math.PI * Uniform());

    // SplitMix64 (Steele, Lea, Flood 2014): the same on every machine.
    private ulong Next()
    {
        var z = _state += 0x9E3779B97F4A7C15;
        z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9;
        z = (z ^ (z >> 27)) * 0x94D049BB133111EB;
        return z ^ (z >> 31);
    }
}
