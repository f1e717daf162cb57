namespace Dyepath.Core.Colours;

/// <summary>
/// Light in the sRGB primaries, proportional to intensity: 0 is none, 1 the display's full. Light is added, mixed
/// and blurred here, never in the gamma-encoded bytes. A simulation may leave [0, 1]; a display clips.
/// <c>default</c> is black.
/// </summary>
public readonly record struct LinearRgb
{
    internal LinearRgb(double red, double green, double blue) => (Red, Green, Blue) = (red, green, blue);

    /// <summary>0 to 1 of the display's full red.</summary>
    public double Red { get; }

    /// <summary>0 to 1 of the display's full green.</summary>
    public double Green { get; }

    /// <summary>0 to 1 of the display's full blue.</summary>
    public double Blue { get; }

    /// <summary>Each channel clipped to [0, 1].</summary>
    public LinearRgb Clipped() => new(Math.Clamp(Red, 0, 1), Math.Clamp(Green, 0, 1), Math.Clamp(Blue, 0, 1));

    /// <summary>The nearest bytes, halves up, after clipping to [0, 1].</summary>
    public Srgb ToSrgb() => new(SrgbTransfer.ToByte(Red), SrgbTransfer.ToByte(Green), SrgbTransfer.ToByte(Blue));

    /// <summary>
    /// By the matrix that the primaries and the D65 white point x 0.3127, y 0.3290 of IEC 61966-2-1 imply, unrounded:
    /// the standard's own four decimals do not send white exactly to Y = 1.
    /// </summary>
    public Xyz ToXyz() => new(
        0.41239079926595934 * Red + 0.357584339383878 * Green + 0.1804807884018343 * Blue,
        0.21263900587151027 * Red + 0.715168678767756 * Green + 0.07219231536073371 * Blue,
        0.01933081871559182 * Red + 0.11919477979462598 * Green + 0.9505321522496607 * Blue);

    /// <summary>Source: Ottosson 2020, "A perceptual color space for image processing", the matrices from linear sRGB.</summary>
    public Oklab ToOklab()
    {
        var l = Math.Cbrt(0.4122214708 * Red + 0.5363325363 * Green + 0.0514459929 * Blue);
        var m = Math.Cbrt(0.2119034982 * Red + 0.6806995451 * Green + 0.1073969566 * Blue);
        var s = Math.Cbrt(0.0883024619 * Red + 0.2817188376 * Green + 0.6299787005 * Blue);
        return new Oklab(
            0.2104542553 * l + 0.7936177850 * m - 0.0040720468 * s,
            1.9779984951 * l - 2.4285922050 * m + 0.4505937099 * s,
            0.0259040371 * l + 0.7827717662 * m - 0.8086757660 * s);
    }
}
