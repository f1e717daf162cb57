using System.Collections.Immutable;
using Dyepath.Core.Measuring;

namespace Dyepath.Core.Making;

/// <summary>What came of working a piece many times over. Shares are of stitches in their planned colour, in [0, 1].</summary>
public sealed class SimulationResult
{
    internal SimulationResult(
        ImmutableArray<double> shares, ImmutableArray<double> rowShares, double goodShare, double meanCorrection)
    {
        Shares = shares;
        RowShares = rowShares;
        ImmutableArray<double> ordered = shares.Sort();
        Median = Quantile.Of(ordered.AsSpan(), 0.5);
        P05 = Quantile.Of(ordered.AsSpan(), 0.05);
        P95 = Quantile.Of(ordered.AsSpan(), 0.95);
        Good = (double)shares.Count(share => share >= goodShare) / shares.Length;
        MeanCorrection = meanCorrection;
    }

    /// <summary>Each trial's share, in the trials' order.</summary>
    public ImmutableArray<double> Shares { get; }

    /// <summary>The trial whose share lies nearest to the median, the first of those that lie as near.</summary>
    public int Typical => Enumerable.Range(0, Shares.Length).MinBy(trial => Math.Abs(Shares[trial] - Median));

    /// <summary>Each row's share over all trials, first row first.</summary>
    public ImmutableArray<double> RowShares { get; }

    /// <summary>Half of the trials fall below it.</summary>
    public double Median { get; }

    /// <summary>Five trials in a hundred fall below it.</summary>
    public double P05 { get; }

    /// <summary>Five trials in a hundred lie above it.</summary>
    public double P95 { get; }

    /// <summary>The share of trials that reach the good share.</summary>
    public double Good { get; }

    /// <summary>Mean absolute relative correction over all stitches of all trials.</summary>
    public double MeanCorrection { get; }
}
