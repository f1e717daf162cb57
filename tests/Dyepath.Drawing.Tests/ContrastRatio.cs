using Dyepath.Core.Colours;

namespace Dyepath.Drawing.Tests;

/// <summary>WCAG 2.2, "contrast ratio" and "relative luminance".</summary>
internal static class ContrastRatio
{
    public static double Of(Srgb a, Srgb b)
    {
        var (lighter, darker) = (Math.Max(Luminance(a), Luminance(b)), Math.Min(Luminance(a), Luminance(b)));
        return (lighter + 0.05) / (darker + 0.05);
    }

    private static double Luminance(Srgb colour) =>
        0.2126 * Linear(colour.Red) + 0.7152 * Linear(colour.Green) + 0.0722 * Linear(colour.Blue);

    private static double Linear(byte channel) =>
        channel / 255.0 <= 0.04045 ? channel / 255.0 / 12.92 : Math.Pow((channel / 255.0 + 0.055) / 1.055, 2.4);
}
