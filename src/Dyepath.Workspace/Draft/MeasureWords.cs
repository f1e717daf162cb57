using Dyepath.Core.Garments;

namespace Dyepath.Workspace.Draft;

/// <summary>Measures as a maker names them.</summary>
internal static class MeasureWords
{
    public static string Of(GarmentMeasure measure, GarmentShape shape) => measure switch
    {
        GarmentMeasure.Width when shape.Words.Across is ("round", var what) => $"round {what}",
        GarmentMeasure.Circumference => "round",
        GarmentMeasure.SleeveWidth => "round the sleeve",
        _ => GarmentMeasures.Words(measure),
    };
}
