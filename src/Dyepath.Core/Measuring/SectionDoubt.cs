using System.Collections.Immutable;

namespace Dyepath.Core.Measuring;

/// <summary>What makes one repeat's sections differ from the next one's, beside the hands.</summary>
/// <param name="Dye">Relative standard deviation of each section's length, 0 to 1.</param>
/// <param name="Boundary">
/// Variance, in units squared, of the place at which the eye ends each section, beyond the rounding to whole stitches: 0 where colours
/// change
/// sharply and every stitch is read right.
/// </param>
internal sealed record SectionDoubt(ImmutableArray<double> Dye, ImmutableArray<double> Boundary)
{
    /// <summary>Sharp boundaries.</summary>
    public static SectionDoubt Of(IEnumerable<double> dye)
    {
        ImmutableArray<double> each = [.. dye];
        return new(each, [.. each.Select(_ => 0.0)]);
    }

    /// <summary>
    /// Variance of a boundary within a blend of such a length: the eye may call the change anywhere within it (an assumption: no source).
    /// </summary>
    /// <param name="units">Length of the blend in units, 0 or more.</param>
    public static double OfBlend(double units) => units * units / 12;

    /// <summary>The mean over the sections, which is what the closed forms take.</summary>
    public double MeanBoundary => Boundary.Average();

    /// <summary>Variance of one count of section <paramref name="j"/> from both its ends, in units squared.</summary>
    public double OfBothEnds(int j) => Boundary[j] + Boundary[(j + Boundary.Length - 1) % Boundary.Length];
}
