using System.Collections.Immutable;
using Dyepath.Core.Swatches;

namespace Dyepath.Core.Measuring;

/// <summary>Stitches of each section and of the whole sequence, estimated from counts, in pooling units.</summary>
public sealed class SequenceEstimate
{
    private readonly double[] _covariance;

    internal SequenceEstimate(
        double[] sections, double[] covariance, int repeats, double residual, int degreesOfFreedom, HandsPrior hands)
    {
        _covariance = covariance;
        var count = sections.Length;
        Sections = [.. sections.Select((value, j) => new Estimate(value, Math.Sqrt(covariance[j * count + j])))];
        Sequence = new Estimate(sections.Sum(), Math.Sqrt(Math.Max(0, covariance.Sum())));
        Repeats = repeats;
        Residual = residual;
        DegreesOfFreedom = degreesOfFreedom;
        Hands = hands;
    }

    /// <summary>One estimate a section, in the order of the yarn's sections.</summary>
    public ImmutableArray<Estimate> Sections { get; }

    /// <summary>C.</summary>
    public Estimate Sequence { get; }

    /// <summary>Whole repeats that the estimate rests on.</summary>
    public int Repeats { get; }

    /// <summary>The figures that the errors are conditional on.</summary>
    public HandsPrior Hands { get; }

    /// <summary>Weighted sum of squares left over; near <see cref="DegreesOfFreedom"/> where the hands are as supposed.</summary>
    public double Residual { get; }

    /// <summary>Counts, less one for each section; 0 after a single repeat.</summary>
    public int DegreesOfFreedom { get; }

    /// <summary>Covariance of sections <paramref name="a"/> and <paramref name="b"/>, in units squared.</summary>
    public double Covariance(int a, int b) => _covariance[a * Sections.Length + b];

    /// <summary>The share of section <paramref name="section"/> in the sequence, its error to first order.</summary>
    public Estimate Share(int section)
    {
        var share = Sections[section].Value / Sequence.Value;
        var withTotal = Enumerable.Range(0, Sections.Length).Sum(k => Covariance(section, k));
        var variance = Covariance(section, section) - 2 * share * withTotal
            + share * share * Sequence.StandardError * Sequence.StandardError;
        return new Estimate(share, Math.Sqrt(Math.Max(0, variance)) / Sequence.Value);
    }

    internal double[] CovarianceMatrix => (double[])_covariance.Clone();
}
