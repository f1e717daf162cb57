namespace Dyepath.Workspace.Draft;

/// <summary>A small scale of whole numbers, with places on it as shares of its width.</summary>
/// <param name="Low">At the left end.</param>
/// <param name="High">At the right end.</param>
public sealed record IntervalScale(double Low, double High)
{
    /// <summary>In the scale's own unit.</summary>
    public double Width => High - Low;

    /// <summary>0 at the left end, 1 at the right one; never beyond them.</summary>
    public double At(double value) => Math.Clamp((value - Low) / Width, 0, 1);

    /// <summary>Marks of a scale, at most <paramref name="most"/> of them, in steps of 1, 2 or 5 times a power of ten.</summary>
    public IEnumerable<double> Marks(int most) => MarksEvery(Step(Width, most));

    /// <summary>Whole multiples of a step within the scale, ends included.</summary>
    public IEnumerable<double> MarksEvery(double step)
    {
        for (var n = Math.Ceiling(Low / step - 1e-9); n * step <= High + 1e-9 * step; n++)
            yield return Math.Round(n * step, 9);
    }

    /// <summary>The smallest step of 1, 2 or 5 times a power of ten with about so many marks at most.</summary>
    public static double Step(double width, int most)
    {
        var rough = width / Math.Max(1, most);
        var power = Math.Pow(10, Math.Floor(Math.Log10(rough)));
        return ((double[])[1, 2, 5, 10]).First(s => s * power >= rough * (1 - 1e-9)) * power;
    }

    /// <summary>A percentage for a style.</summary>
    public static string Percent(double share) => string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{100 * share:0.##}%");
}
