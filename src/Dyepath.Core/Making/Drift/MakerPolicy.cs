using Dyepath.Core.Booklets;
using Dyepath.Core.Measuring;

namespace Dyepath.Core.Making.Drift;

/// <summary>How a reading becomes a correction.</summary>
public enum Steering
{
    /// <summary>The whole-stitch drift is spread over the stitches to the next reading, as <see cref="TensionSimulation"/> does.</summary>
    Feel,

    /// <summary>Feel, and beside it a running mean of what the hands do when they are left alone, which is held against.</summary>
    LearningFeel,

    /// <summary><see cref="DriftAdvice"/> of a <see cref="DriftFilter"/> over the readings; surprising ones are read again.</summary>
    Advice,
}

/// <summary>How a simulated maker keeps her colours in place.</summary>
/// <param name="Check">When she reads.</param>
/// <param name="Steering">What she does with what she read.</param>
public sealed record MakerPolicy(CheckHabit Check, Steering Steering);

/// <summary>Figures with their 95 % intervals over makers.</summary>
/// <param name="Value">The figure itself.</param>
/// <param name="Low">Lower end of the interval.</param>
/// <param name="High">Upper end of the interval.</param>
public readonly record struct Figure(double Value, double Low, double High)
{
    internal static Figure Mean(double[] values)
    {
        double mean = values.Average();
        double variance = values.Sum(x => (x - mean) * (x - mean)) / Math.Max(1, values.Length - 1);
        double half = DriftFilter.Sd95 * Math.Sqrt(variance / values.Length);
        return new Figure(mean, mean - half, mean + half);
    }

    /// <summary>By the order statistics that a binomial count of makers below the median lies between.</summary>
    internal static Figure Median(double[] values)
    {
        double[] ordered = [.. values.Order()];
        int n = ordered.Length;
        int low = Math.Max(0, (int)Math.Floor((n - DriftFilter.Sd95 * Math.Sqrt(n)) / 2) - 1);
        return new Figure(Quantile.Of(ordered, 0.5), ordered[low], ordered[n - 1 - low]);
    }
}

/// <summary>What came of many makers working a piece.</summary>
/// <param name="Share">Median share of stitches in planned colour.</param>
/// <param name="RipBacks">Mean number of rows ripped back.</param>
/// <param name="Coverage">
/// Mean share of rows at whose end the filter's 95 % interval held the phase, before it was read; nothing without advice.
/// </param>
/// <param name="Recounts">Mean number of readings taken again.</param>
/// <param name="Shares">By maker.</param>
public sealed record MakerFigures(Figure Share, Figure RipBacks, Figure? Coverage, Figure Recounts, double[] Shares);
