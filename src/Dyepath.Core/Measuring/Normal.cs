namespace Dyepath.Core.Measuring;

/// <summary>The normal and chi-square probabilities that estimates and findings need.</summary>
internal static class Normal
{
    /// <summary>Probability that a standard normal variable is below <paramref name="x"/>, to about 1e-15.</summary>
    /// <remarks>Marsaglia, "Evaluating the normal distribution", Journal of Statistical Software 11(4), 2004.</remarks>
    public static double Below(double x)
    {
        if (x < -8)
            return 0;
        if (x > 8)
            return 1;
        double sum = x, term = x;
        for (var i = 3; sum + term != sum; i += 2)
        {
            term *= x * x / i;
            sum += term;
        }
        return Math.Clamp(0.5 + sum * Density(x), 0, 1);
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
