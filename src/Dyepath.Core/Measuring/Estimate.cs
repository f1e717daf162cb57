using Dyepath.Core.Quantities;

namespace Dyepath.Core.Measuring;

/// <summary>A number with its standard error, both in the unit that its owner states.</summary>
/// <param name="Value">The best estimate.</param>
/// <param name="StandardError">0 or more.</param>
public readonly record struct Estimate(double Value, double StandardError)
{
    /// <summary>The normal interval that holds the truth with probability <paramref name="confidence"/>.</summary>
    /// <param name="confidence">0.5 to 0.9999.</param>
    /// <exception cref="ArgumentOutOfRangeException">Confidence outside its range.</exception>
    public (double Low, double High) Interval(double confidence = 0.95)
    {
        Guard.InRange(confidence, 0.5, 0.9999, "probability");
        var reach = Normal.TwoSided(confidence) * StandardError;
        return (Value - reach, Value + reach);
    }

    /// <summary>Probability, for a normal error, that the truth lies in [<paramref name="low"/>, <paramref name="high"/>].</summary>
    public double ProbabilityWithin(double low, double high) => StandardError == 0
        ? (low <= Value && Value <= high ? 1 : 0)
        : Normal.Below((high - Value) / StandardError) - Normal.Below((low - Value) / StandardError);

    /// <summary>Both times <paramref name="factor"/>, which carries no error of its own.</summary>
    public Estimate Scaled(double factor) => new(Value * factor, StandardError * Math.Abs(factor));

    /// <summary>The product of independent estimates, its error to first order.</summary>
    public static Estimate operator *(Estimate a, Estimate b) => new(
        a.Value * b.Value, Math.Sqrt(Square(a.StandardError * b.Value) + Square(b.StandardError * a.Value)));

    /// <summary>The quotient of independent estimates, its error to first order.</summary>
    public static Estimate operator /(Estimate a, Estimate b)
    {
        var value = a.Value / b.Value;
        return new(value, Math.Sqrt(Square(a.StandardError) + Square(value * b.StandardError)) / Math.Abs(b.Value));
    }

    /// <summary>How many standard errors two independent estimates lie apart.</summary>
    public static double Apart(Estimate a, Estimate b) =>
        Math.Abs(a.Value - b.Value) / Math.Sqrt(Square(a.StandardError) + Square(b.StandardError));

    private static double Square(double x) => x * x;
}
