using Dyepath.Core.Quantities;

namespace Dyepath.Core.Colours;

/// <summary>
/// A colour in CIELAB under D65 (the CSS function <c>lab()</c> is under D50: the two must not be mixed).
/// Lightness runs from 0 to 100; A from green to red, B from blue to yellow. <c>default</c> is black.
/// </summary>
public readonly record struct Lab
{
    internal Lab(double lightness, double a, double b) => (Lightness, A, B) = (lightness, a, b);

    /// <summary>Lightness in [0, 100], A and B in [−200, 200], wider than any display reaches.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Outside these ranges, or not a number.</exception>
    public static Lab FromComponents(double lightness, double a, double b) => new(
        Guard.InRange(lightness, 0, 100, "L*"), Guard.InRange(a, -200, 200, "a*"), Guard.InRange(b, -200, 200, "b*"));

    /// <summary>L*, 0 for black to 100 for white.</summary>
    public double Lightness { get; }

    /// <summary>a*, from green (negative) to red (positive).</summary>
    public double A { get; }

    /// <summary>b*, from blue (negative) to yellow (positive).</summary>
    public double B { get; }

    /// <summary>Distance from the grey of the same lightness, 0 or more.</summary>
    public double Chroma => Math.Sqrt(A * A + B * B);
}
