namespace Dyepath.Core.Colours;

/// <summary>
/// A colour in OKLab (Ottosson 2020): Lightness from 0 to 1. Its hue angle keeps blues blue where CIELAB's turns them
/// purple, so words for colours are taken from here. <c>default</c> is black.
/// </summary>
public readonly record struct Oklab
{
    internal Oklab(double lightness, double a, double b) => (Lightness, A, B) = (lightness, a, b);

    /// <summary>0 for black to 1 for white.</summary>
    public double Lightness { get; }

    /// <summary>From green (negative) to red (positive).</summary>
    public double A { get; }

    /// <summary>From blue (negative) to yellow (positive).</summary>
    public double B { get; }

    /// <summary>Distance from the grey of the same lightness, 0 or more.</summary>
    public double Chroma => Math.Sqrt(A * A + B * B);

    /// <summary>Degrees in [0, 360) from the A axis towards B; 0 for a grey without chroma.</summary>
    public double HueDegrees
    {
        get
        {
            var degrees = double.RadiansToDegrees(Math.Atan2(B, A));
            // A tiny negative angle plus 360 rounds to 360 itself.
            return degrees < 0 ? (degrees + 360) % 360 : degrees;
        }
    }
}
