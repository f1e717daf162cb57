namespace Dyepath.Core.Making.Drift;

/// <summary>The standard normal distribution, with the same bits on every machine.</summary>
internal static class NormalCurve
{
    private const double PerRootTwoPi = 0.39894228040143268;

    public static double Density(double x) => Math.Abs(x) > 37 ? 0 : PerRootTwoPi * PortableMath.Exp(-x * x / 2);

    /// <summary>
    /// Probability up to <paramref name="x"/>, within 10⁻¹⁵: ½ + density·(x + x³/3 + x⁵/(3·5) + …) (Marsaglia, "Evaluating the normal
    /// distribution", Journal of Statistical Software 11, 2004).
    /// </summary>
    public static double Below(double x)
    {
        if (x < -8) return 0;
        if (x > 8) return 1;
        double term = x, sum = x, before = 0;
        for (int n = 3; sum != before; n += 2)
        {
            before = sum;
            term *= x * x / n;
            sum += term;
        }
        return 0.5 + sum * Density(x);
    }
}
