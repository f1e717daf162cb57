namespace Dyepath.Core.Colours;

/// <summary>CIE 1931 tristimulus values; Y is 1 for the display's white. <c>default</c> is black.</summary>
public readonly record struct Xyz
{
    /// <summary>
    /// D65 as IEC 61966-2-1 gives it (x 0.3127, y 0.3290). Tables that start from X = 0.95047 differ by up to 0.004 in Lab.
    /// </summary>
    public static readonly Xyz D65 = new(0.3127 / 0.3290, 1, (1 - 0.3127 - 0.3290) / 0.3290);

    internal Xyz(double x, double y, double z) => (X, Y, Z) = (x, y, z);

    /// <summary>About 0.95 for the display's white.</summary>
    public double X { get; }

    /// <summary>Luminance, 0 for black to 1 for the display's white.</summary>
    public double Y { get; }

    /// <summary>About 1.09 for the display's white.</summary>
    public double Z { get; }

    /// <summary>CIELAB against <see cref="D65"/>. Source: CIE 15, the cube root with its linear part below (6/29)³.</summary>
    public Lab ToLab()
    {
        var (x, y, z) = (Compress(X / D65.X), Compress(Y / D65.Y), Compress(Z / D65.Z));
        return new Lab(116 * y - 16, 500 * (x - y), 200 * (y - z));
    }

    private static double Compress(double ratio)
    {
        const double Delta = 6.0 / 29;
        return ratio > Delta * Delta * Delta ? Math.Cbrt(ratio) : ratio / (3 * Delta * Delta) + 4.0 / 29;
    }
}
