namespace Dyepath.Core.Making;

/// <summary>
/// Functions whose last bit must not depend on the machine. The platform's own logarithm and exponential differ
/// between C libraries and in the browser; these use only + − × ÷, which IEEE 754 fixes, and never a fused
/// multiply-add, which .NET does not introduce by itself.
/// </summary>
internal static class PortableMath
{
    /// <summary>ln 2 with its lower half clear, so that whole multiples up to 2¹⁰ are exact, and the rest.</summary>
    private const double Ln2High = 0.693147180369123816490;
    private const double Ln2Low = 1.90821492927058770002e-10;

    /// <summary>
    /// e^x for x in [−700, 700], within 4 units of the 16th significant digit: x = k ln 2 + r, |r| ≤ ½ ln 2, and
    /// Taylor's series of e^r to r¹³ (the remainder is under 5·10⁻¹⁸). Below −700 it is 0, at most 10⁻³⁰⁴ off.
    /// </summary>
    public static double Exp(double x)
    {
        if (x < -700) return 0;
        double k = Math.Round(x * (1 / (Ln2High + Ln2Low)));
        double r = x - k * Ln2High - k * Ln2Low;
        double sum = 1;
        for (int n = 13; n >= 1; n--) sum = 1 + sum * r / n;
        return sum * BitConverter.Int64BitsToDouble((1023L + (long)k) << 52);
    }
}
