using Dyepath.Core.Garments;

namespace Dyepath.Client.Draft;

/// <summary>Measures as a maker names them.</summary>
internal static class MeasureWords
{
    public static string Of(GarmentMeasure measure) => measure switch
    {
        GarmentMeasure.Width => "round the body",
        GarmentMeasure.Length => "length",
        GarmentMeasure.ArmholeDepth => "armhole depth",
        GarmentMeasure.NeckWidth => "neck width",
        GarmentMeasure.SleeveWidth => "round the sleeve",
        GarmentMeasure.SleeveLength => "sleeve length",
        GarmentMeasure.Circumference => "round",
        GarmentMeasure.Height => "height",
        _ => throw new ArgumentOutOfRangeException(nameof(measure), measure, "No words for this measure."),
    };
}
