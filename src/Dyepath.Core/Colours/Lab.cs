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

    public double Lightness { get; }

    public double A { get; }

    public double B { get; }

    public double Chroma => Math.Sqrt(A * A + B * B);
}
