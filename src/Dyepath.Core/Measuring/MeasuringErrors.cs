using Dyepath.Core.Quantities;

namespace Dyepath.Core.Measuring;

/// <summary>How far a maker's readings may be from the truth. The defaults are common practice, no source.</summary>
/// <param name="LengthReading">Largest reading error of a length of yarn, either way, uniform within.</param>
/// <param name="Stretch">Relative standard deviation from stretch and crimp, 0 to 0.5.</param>
/// <param name="MassReading">Largest reading error of the scale, either way, uniform within.</param>
/// <param name="Label">Relative standard deviation of the label's metres per gram, 0 to 0.5.</param>
/// <param name="GaugeReading">Largest reading error of a gauge count, either way, in stitches or rows, uniform within; 0 to 2.</param>
public sealed record MeasuringErrors(Length LengthReading, double Stretch, Mass MassReading, double Label, double GaugeReading)
{
    /// <summary>½ cm, 3 %, ½ g, 5 %, ¼ stitch.</summary>
    public static MeasuringErrors Default { get; } =
        new(Length.FromCentimetres(0.5), 0.03, Mass.FromGrams(0.5), 0.05, 0.25);

    /// <summary>Standard deviation of an error that is uniform within <paramref name="reach"/> either way.</summary>
    internal static double Uniform(double reach) => reach / Math.Sqrt(3);
}
