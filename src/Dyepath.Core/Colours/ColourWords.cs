namespace Dyepath.Core.Colours;

/// <summary>Plain words for a colour, for alternative text where a name such as "kelp" says nothing to the ear.</summary>
public static class ColourWords
{
    private const double GreyChroma = 0.025;

    // Upper ends of the hue angles in OKLab; the sRGB primaries lie at 29°, 142° and 264°.
    private static readonly (double UpTo, string Word)[] Hues =
    [
        (15, "pink"), (42, "red"), (80, "orange"), (115, "yellow"), (165, "green"), (215, "teal"),
        (280, "blue"), (318, "purple"), (345, "magenta"), (360, "pink"),
    ];

    /// <summary>
    /// Such as "dark teal", "pale grey", "brown". Boundaries are ours: words for colours have no standard.
    /// </summary>
    public static string Describe(Srgb colour)
    {
        var seen = colour.ToLinear().ToOklab();
        return seen.Chroma < GreyChroma ? Grey(seen.Lightness) : Shade(seen.Lightness) + Hue(seen);
    }

    private static string Hue(Oklab seen)
    {
        var word = Hues.First(range => seen.HueDegrees <= range.UpTo).Word;
        return word switch
        {
            "orange" when seen.Lightness < 0.62 => "brown",
            "yellow" when seen.Lightness < 0.62 => "olive",
            "orange" or "yellow" when seen.Chroma < 0.07 => "beige",
            "red" when seen.Lightness > 0.72 => "pink",
            _ => word,
        };
    }

    private static string Grey(double lightness) => lightness switch
    {
        < 0.18 => "black",
        > 0.97 => "white",
        _ => Shade(lightness) + "grey",
    };

    private static string Shade(double lightness) => lightness switch
    {
        < 0.40 => "dark ",
        > 0.85 => "pale ",
        _ => "",
    };
}
