namespace Dyepath.Core.Colours;

/// <summary>How different two colours look.</summary>
public static class ColourDifference
{
    private const double Pow25To7 = 6103515625;

    /// <summary>
    /// CIEDE2000 with k_L = k_C = k_H = 1; 0 for equal colours, symmetric, about 1 where smooth patches side by side can
    /// just be told apart. It is not a metric: the triangle inequality fails.
    /// Source: Sharma, Wu, Dalal 2005, "The CIEDE2000 color-difference formula: implementation notes, supplementary test
    /// data, and mathematical observations", equations 2 to 22.
    /// </summary>
    public static double DeltaE2000(Lab first, Lab second)
    {
        var meanChroma7 = Math.Pow((first.Chroma + second.Chroma) / 2, 7);
        var stretch = 1.5 - 0.5 * Math.Sqrt(meanChroma7 / (meanChroma7 + Pow25To7));
        var (chroma1, hue1) = ChromaAndHue(first.A * stretch, first.B);
        var (chroma2, hue2) = ChromaAndHue(second.A * stretch, second.B);

        var bothColoured = chroma1 * chroma2 != 0;
        var hueStep = bothColoured ? SignedHueStep(hue1, hue2) : 0;
        var lightnessStep = second.Lightness - first.Lightness;
        var chromaStep = chroma2 - chroma1;
        var hueDistance = 2 * Math.Sqrt(chroma1 * chroma2) * SinDegrees(hueStep / 2);

        var lightness = (first.Lightness + second.Lightness) / 2;
        var chroma = (chroma1 + chroma2) / 2;
        var hue = bothColoured ? MeanHue(hue1, hue2) : hue1 + hue2;
        var t = 1 - 0.17 * CosDegrees(hue - 30) + 0.24 * CosDegrees(2 * hue)
            + 0.32 * CosDegrees(3 * hue + 6) - 0.20 * CosDegrees(4 * hue - 63);

        var fromMiddle = (lightness - 50) * (lightness - 50);
        var lightnessPart = lightnessStep / (1 + 0.015 * fromMiddle / Math.Sqrt(20 + fromMiddle));
        var chromaPart = chromaStep / (1 + 0.045 * chroma);
        var huePart = hueDistance / (1 + 0.015 * chroma * t);

        var chroma7 = Math.Pow(chroma, 7);
        var blueness = (hue - 275) / 25;
        var rotation = -SinDegrees(60 * Math.Exp(-blueness * blueness)) * 2 * Math.Sqrt(chroma7 / (chroma7 + Pow25To7));

        // The rotation term can push a vanishing sum a rounding error below zero.
        return Math.Sqrt(Math.Max(0,
            lightnessPart * lightnessPart + chromaPart * chromaPart + huePart * huePart + rotation * chromaPart * huePart));
    }

    private static (double Chroma, double Hue) ChromaAndHue(double a, double b)
    {
        if (a == 0 && b == 0)
            return (0, 0);
        var degrees = double.RadiansToDegrees(Math.Atan2(b, a));
        return (Math.Sqrt(a * a + b * b), degrees < 0 ? degrees + 360 : degrees);
    }

    private static double SignedHueStep(double from, double to) => (to - from) switch
    {
        > 180 => to - from - 360,
        < -180 => to - from + 360,
        var step => step,
    };

    private static double MeanHue(double first, double second)
    {
        var sum = first + second;
        if (Math.Abs(first - second) <= 180)
            return sum / 2;
        return (sum < 360 ? sum + 360 : sum - 360) / 2;
    }

    private static double SinDegrees(double degrees) => Math.Sin(double.DegreesToRadians(degrees));

    private static double CosDegrees(double degrees) => Math.Cos(double.DegreesToRadians(degrees));
}
