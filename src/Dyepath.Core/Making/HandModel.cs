using Dyepath.Core.Planning;
using Dyepath.Core.Quantities;

namespace Dyepath.Core.Making;

/// <summary>
/// A maker's hands: the yarn of stitch i, relative to what the plan gives it, is 1 + bias + a_i + correction, with a_i
/// a stationary first-order autoregression of standard deviation <see cref="Spread"/> and correlation e^(−1/memory)
/// from one stitch to the next. A stitch takes no less than no yarn and no more than twice the plan's,
/// rounded to a millionth of it.
/// </summary>
public sealed record HandModel
{
    private HandModel(double spread, double memory, double bias, double largestCorrection) =>
        (Spread, Memory, Bias, LargestCorrection) = (spread, memory, bias, largestCorrection);

    /// <summary>Standard deviation of a stitch's relative yarn, in [0, 0.5]; 0.01 is a steady hand.</summary>
    public double Spread { get; }

    /// <summary>Correlation length in stitches, in [0, 100,000]; 0 makes every stitch independent of the last.</summary>
    public double Memory { get; }

    /// <summary>Mean departure from the planned yarn per stitch, relative, in [−0.5, 0.5]; positive is looser.</summary>
    public double Bias { get; }

    /// <summary>The most that the maker tightens or loosens when correcting, relative, in [0, 0.5].</summary>
    public double LargestCorrection { get; }

    /// <summary>Correlation from one stitch to the next, e^(−1/memory).</summary>
    public double Correlation => Memory == 0 ? 0 : PortableMath.Exp(-1 / Memory);

    /// <exception cref="ArgumentOutOfRangeException">A value is not finite or outside the range named at its property.</exception>
    public static HandModel Create(double spread, double memory, double bias = 0, double largestCorrection = MadeWell.LargestCorrection) =>
        new(
            Guard.InRange(spread, 0, 0.5, "of the yarn per stitch"),
            Guard.InRange(memory, 0, 100_000, "stitches"),
            Guard.InRange(bias, -0.5, 0.5, "of the yarn per stitch"),
            Guard.InRange(largestCorrection, 0, 0.5, "of the yarn per stitch"));
}
