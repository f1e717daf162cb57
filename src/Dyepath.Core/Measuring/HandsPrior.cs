using System.Globalization;
using Dyepath.Core.Limits;
using Dyepath.Core.Swatches;

namespace Dyepath.Core.Measuring;

/// <summary>
/// How evenly hands and dye are supposed to work: yarn per stitch is a first-order autoregression about its mean, and
/// each dyed section departs from its mean length on its own. An estimate from a few counted repeats cannot find these
/// figures as well, so it takes them from here and holds "for hands like these".
/// </summary>
public sealed record HandsPrior
{
    /// <param name="spread">Relative standard deviation of the yarn in one stitch, within <see cref="Spreads"/>.</param>
    /// <param name="memory">Stitches after which its correlation has fallen to 1/e, within <see cref="Memories"/>.</param>
    /// <param name="dye">Relative standard deviation of one section's length from repeat to repeat, within <see cref="Dyes"/>.</param>
    /// <param name="isMakersOwn">Whether the figures come from this maker's log.</param>
    /// <exception cref="ArgumentOutOfRangeException">A figure outside its range.</exception>
    public HandsPrior(double spread, double memory, double dye, bool isMakersOwn = false)
    {
        Spread = Spreads.Check(spread);
        Memory = Memories.Check(memory);
        Dye = Dyes.Check(dye);
        IsMakersOwn = isMakersOwn;
    }

    /// <summary>Of <see cref="Spread"/>.</summary>
    public static Bounds Spreads { get; } = new(0, 0.5, "of one stitch's yarn");

    /// <summary>Of <see cref="Memory"/>.</summary>
    public static Bounds Memories { get; } = new(0.1, 10_000, "stitches");

    /// <summary>Of <see cref="Dye"/>.</summary>
    public static Bounds Dyes { get; } = new(0, 0.5, "of a section's length");

    /// <summary>
    /// Spread 2 %, memory 50 stitches, dye 2 %. An assumption: the only readings found, four on one swatch (17, 17¼, 17,
    /// 16½ stitches over 3 in, one maker), vary by 1.9 %, which at this memory is nearly the spread itself; no source
    /// gives memory or dye.
    /// </summary>
    public static HandsPrior Default { get; } = new(0.02, 50, 0.02);

    /// <summary>Standard deviation of the yarn in one stitch over its mean.</summary>
    public double Spread { get; }

    /// <summary>Stitches after which the correlation of yarn per stitch has fallen to 1/e.</summary>
    public double Memory { get; }

    /// <summary>Standard deviation of one section's length from repeat to repeat over its mean.</summary>
    public double Dye { get; }

    /// <summary>The figures are this maker's and not assumed.</summary>
    public bool IsMakersOwn { get; }

    /// <summary>The spread is not as assumed but as the counts themselves show.</summary>
    public bool IsFitted { get; private init; }

    /// <summary>The same with a spread that the counts show; itself where that is its own.</summary>
    internal HandsPrior Wider(double spread) =>
        spread == Spread ? this : new HandsPrior(spread, Memory, Dye, IsMakersOwn) { IsFitted = true };

    /// <summary>The maker's own figures where given, else the default; dye as in <see cref="Default"/>.</summary>
    /// <exception cref="ArgumentOutOfRangeException">A figure outside its range.</exception>
    public static HandsPrior For(HandSteadiness? hands) =>
        hands is null ? Default : new HandsPrior(hands.Spread, hands.Memory, Default.Dye, isMakersOwn: true);

    /// <summary>
    /// Variance, in stitches squared, of the yarn that <paramref name="stitches"/> stitches take (0 or more): the variance
    /// of a sum of a first-order autoregression, continued to fractions of a stitch.
    /// </summary>
    public double WanderVariance(double stitches)
    {
        var rho = Math.Exp(-1 / Memory);
        var left = OneLessExp(1 / Memory);
        var variance = stitches * (1 + rho) / left - 2 * rho * OneLessExp(stitches / Memory) / (left * left);
        return Math.Max(0, variance) * Spread * Spread;
    }

    /// <summary>1 − e⁻ˣ to full precision where x is small, as it is for a long memory.</summary>
    private static double OneLessExp(double x) => x > 1 ? 1 - Math.Exp(-x) : 2 * Math.Exp(-x / 2) * Math.Sinh(x / 2);

    /// <summary>How the answer names its condition.</summary>
    public string Words => string.Create(CultureInfo.InvariantCulture,
        $"for hands like these: {Spread * 100:0.##} % from stitch to stitch, holding for about {Memory:0} "
        + $"stitches{(IsMakersOwn ? ", the maker's own figures" : IsFitted ? ", as these counts show" : ", assumed")}");
}
