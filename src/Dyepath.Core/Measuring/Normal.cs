namespace Dyepath.Core.Measuring;

/// <summary>The normal and chi-square probabilities that estimates and findings need.</summary>
internal static class Normal
{
    /// <summary>Numerator and denominator of Hart's quotient, the highest power first.</summary>
    private static readonly double[] Over =
    [
        0.0352624965998911, 0.700383064443688, 6.37396220353165, 33.912866078383, 112.079291497871, 221.213596169931, 220.206867912376,
    ];

    private static readonly double[] Under =
    [
        0.0883883476483184, 1.75566716318264, 16.064177579207, 86.7807322029461, 296.564248779674, 637.333633378831, 793.826512519948,
        440.413735824752,
    ];

    /// <summary>Probability that a standard normal variable is below <paramref name="x"/>, to about 1e-15.</summary>
    /// <remarks>
    /// Hart and others, Computer Approximations, 1968, no. 5666, as given by West, "Better approximations to cumulative normal functions",
    /// Wilmott magazine, 2005 (from memory; a test holds it to another library).
    /// </remarks>
    public static double Below(double x)
    {
        var far = Math.Abs(x);
        if (far > 8)
            return x < 0 ? 0 : 1;
        double above;
        if (far < 7.07106781186547)
        {
            double over = 0, under = 0;
            foreach (var factor in Over)
                over = over * far + factor;
            foreach (var factor in Under)
                under = under * far + factor;
            above = Math.Exp(-far * far / 2) * over / under;
        }
        else
        {
            above = Density(far) / (far + 1 / (far + 2 / (far + 3 / (far + 4 / (far + 0.65)))));
        }
        return x < 0 ? above : 1 - above;
    }

    /// <summary>
    /// The value z with |x| ≤ z for a standard normal x with probability <paramref name="confidence"/>, over 0 and under 1.
    /// </summary>
    public static double TwoSided(double confidence) => Quantile((1 + confidence) / 2);

    /// <summary>Inverse of <see cref="Below"/> for probabilities over 1e-14 and under 1 − 1e-14, by bisection.</summary>
    public static double Quantile(double probability)
    {
        double low = -8, high = 8;
        for (var i = 0; i < 60; i++)
        {
            var middle = (low + high) / 2;
            if (Below(middle) < probability)
                low = middle;
            else
                high = middle;
        }
        return (low + high) / 2;
    }

    /// <summary>Probability that a chi-square variable exceeds <paramref name="x"/>; within a tenth of itself around 1 %.</summary>
    /// <remarks>Wilson and Hilferty, Proceedings of the National Academy of Sciences 17, 1931.</remarks>
    public static double ChiSquareAbove(double x, int degrees)
    {
        var spread = 2.0 / (9 * degrees);
        return Below((1 - spread - Math.Cbrt(x / degrees)) / Math.Sqrt(spread));
    }

    private static double Density(double x) => Math.Exp(-x * x / 2) / Math.Sqrt(2 * Math.PI);
}
