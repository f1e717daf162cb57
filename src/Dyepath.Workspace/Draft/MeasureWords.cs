using Dyepath.Core.Garments;
using Dyepath.Core.Instructions;

namespace Dyepath.Workspace.Draft;

/// <summary>Measures as a maker names them.</summary>
internal static class MeasureWords
{
    public static string Of(GarmentMeasure measure, GarmentShape shape) => measure switch
    {
        GarmentMeasure.Width when GarmentWords.Of(shape).Round is { } what => $"round {what}",
        GarmentMeasure.Circumference => "round",
        GarmentMeasure.SleeveWidth => "round the sleeve",
        _ => GarmentMeasures.Words(measure),
    };
}
