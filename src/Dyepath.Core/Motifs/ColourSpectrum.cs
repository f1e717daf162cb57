using System.Collections.Immutable;
using System.Numerics;
using Dyepath.Core.Fabrics;
using Dyepath.Core.Yarns;

namespace Dyepath.Core.Motifs;

/// <summary>One wave of the colour ring, which comes m times a period.</summary>
/// <param name="Number">m.</param>
/// <param name="Frequency">Waves a unit along a row, folded into [0, ½] as stitches sample it.</param>
/// <param name="Power">|G_m|², its part of the colour variance, both signs of m together.</param>
/// <param name="Square">G_m·G_m without conjugation, both signs: what two mirrored waves share when they meet in phase.</param>
internal readonly record struct Harmonic(int Number, double Frequency, double Power, Complex Square);

/// <summary>
/// The colour ring as a Fourier series, G_m = (1/P) Σ g(y) e^(−2πi m y/P), in closed form from the ends of its
/// stretches (geometric sums over whole stitches, integrals otherwise). Derived in docs/mathematics.md.
/// </summary>
internal sealed class ColourSpectrum
{
    /// <summary>Waves shorter than this part of a unit are left out; stitches fold what little they carry into noise.</summary>
    private const int ShortestWave = 4;

    /// <summary>Enough for every wave of two units or longer in the longest sequence.</summary>
    private const int MostHarmonics = ColourRing.LongestSequence / 2;

    private ColourSpectrum(double period, ImmutableArray<Harmonic> harmonics, double variance)
    {
        Period = period;
        Harmonics = harmonics;
        Variance = variance;
    }

    /// <summary>P in units.</summary>
    public double Period { get; }

    public ImmutableArray<Harmonic> Harmonics { get; }

    /// <summary>Mean square distance of the ring's colours from their mean.</summary>
    public double Variance { get; }

    public static ColourSpectrum Of(ColourPeriod period, Palette palette)
    {
        var points = period.Stretches.Select(s => palette.Points[s.Colour]).ToArray();
        var whole = period.Origin % ColourRing.Unit == 0 && period.Stretches.All(s => s.Micro % ColourRing.Unit == 0);
        var length = ColourRing.ToUnits(period.Micro);
        var count = whole ? (int)length / 2 : Math.Clamp((int)(length * ShortestWave), 1, MostHarmonics);
        var harmonics = Enumerable.Range(1, count).Select(m => HarmonicOf(m, period, points, whole)).ToImmutableArray();
        return new ColourSpectrum(length, harmonics, VarianceOf(period, points));
    }

    private static Harmonic HarmonicOf(int m, ColourPeriod period, ImmutableArray<double>[] points, bool whole)
    {
        var length = ColourRing.ToUnits(period.Micro);
        var angle = 2 * Math.PI * m / length;
        var scale = (whole ? Math.Sin(angle / 2) : angle / 2) * length;
        var sums = new Complex[points[0].Length];
        var from = ColourRing.ToUnits(period.Origin);
        for (var i = 0; i < points.Length; i++)
        {
            var units = ColourRing.ToUnits(period.Stretches[i].Micro);
            // Stitch centres lie half a unit after their starts, hence the −1.
            var wave = Complex.FromPolarCoordinates(Math.Sin(angle * units / 2) / scale, -angle * (2 * from + units - 1) / 2);
            for (var k = 0; k < sums.Length; k++)
            {
                if (points[i][k] != 0)
                    sums[k] += wave * points[i][k];
            }
            from += units;
        }
        var bothSigns = whole && 2 * m == (int)length ? 1 : 2;
        var frequency = m / length % 1;
        var power = 0.0;
        var square = Complex.Zero;
        foreach (var sum in sums)
        {
            power += sum.Real * sum.Real + sum.Imaginary * sum.Imaginary;
            square += sum * sum;
        }
        return new Harmonic(m, Math.Min(frequency, 1 - frequency), bothSigns * power, bothSigns * square);
    }

    private static double VarianceOf(ColourPeriod period, ImmutableArray<double>[] points)
    {
        var weights = period.Stretches.Select(s => (double)s.Micro / period.Stretches.Sum(t => t.Micro)).ToArray();
        var variance = 0.0;
        for (var k = 0; k < points[0].Length; k++)
        {
            var mean = weights.Select((w, i) => w * points[i][k]).Sum();
            variance += weights.Select((w, i) => w * (points[i][k] - mean) * (points[i][k] - mean)).Sum();
        }
        return variance;
    }
}
