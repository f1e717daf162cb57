using System.Runtime.CompilerServices;

namespace Dyepath.Core.Quantities;

/// <summary>
/// Range checks for public factories. The framework's own helpers let NaN through
/// (<c>ThrowIfGreaterThan(NaN, …)</c> passes), so every floating-point argument comes here.
/// </summary>
public static class Guard
{
    /// <summary>
    /// Returns <paramref name="value"/> when it is finite and within [<paramref name="minimum"/>, <paramref name="maximum"/>].
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">
    /// NaN, infinite, or outside the range; names parameter, value, range and unit.
    /// </exception>
    public static double InRange(
        double value, double minimum, double maximum, string unit, [CallerArgumentExpression(nameof(value))] string name = "")
    {
        if (!(value >= minimum && value <= maximum))
            throw new ArgumentOutOfRangeException(name, value, $"{name} must lie in [{minimum}, {maximum}] {unit}.");
        return value;
    }

    /// <summary>Returns <paramref name="value"/> when it is within [<paramref name="minimum"/>, <paramref name="maximum"/>].</summary>
    /// <exception cref="ArgumentOutOfRangeException">Outside the range; names parameter, value, range and unit.</exception>
    public static int InRange(
        int value, int minimum, int maximum, string unit, [CallerArgumentExpression(nameof(value))] string name = "")
    {
        if (value < minimum || value > maximum)
            throw new ArgumentOutOfRangeException(name, value, $"{name} must lie in [{minimum}, {maximum}] {unit}.");
        return value;
    }
}
