namespace Dyepath.Core.Colours;

/// <summary>Legibility by the Web Content Accessibility Guidelines 2.2.</summary>
public static class Contrast
{
    /// <summary>Least ratio for text under 18 pt (14 pt bold), success criterion 1.4.3.</summary>
    public const double SmallText = 4.5;

    /// <summary>Least ratio for large text (1.4.3) and for marks that carry meaning (1.4.11).</summary>
    public const double LargeTextAndMarks = 3;

    /// <summary>
    /// In [0, 1], with the guideline's own weights 0.2126, 0.7152, 0.0722; it differs from <see cref="Xyz.Y"/> in the
    /// fifth decimal.
    /// </summary>
    public static double RelativeLuminance(Srgb colour)
    {
        var light = colour.ToLinear();
        return 0.2126 * light.Red + 0.7152 * light.Green + 0.0722 * light.Blue;
    }

    /// <summary>In [1, 21], the same whichever colour comes first.</summary>
    public static double Ratio(Srgb first, Srgb second)
    {
        var (a, b) = (RelativeLuminance(first), RelativeLuminance(second));
        return (Math.Max(a, b) + 0.05) / (Math.Min(a, b) + 0.05);
    }

    /// <summary>
    /// Black or white, whichever reads better on <paramref name="ground"/>: at least √21 ≈ 4.58, enough for small text.
    /// </summary>
    public static Srgb InkOn(Srgb ground) =>
        Ratio(Srgb.Black, ground) >= Ratio(Srgb.White, ground) ? Srgb.Black : Srgb.White;
}
