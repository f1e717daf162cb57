namespace Dyepath.Core.Garments;

/// <summary>A measure of the finished garment. Names in JSON are these in camel case with <c>Cm</c> appended.</summary>
public enum GarmentMeasure
{
    /// <summary>Finished bust or chest: all the way round.</summary>
    Width,
    Length,
    ArmholeDepth,
    NeckWidth,
    SleeveWidth,
    SleeveLength,
    Circumference,
    Height,
}

/// <summary>Names of measures in the document: these in camel case.</summary>
public static class GarmentMeasures
{
    public static string Key(GarmentMeasure measure)
    {
        var name = measure.ToString();
        return char.ToLowerInvariant(name[0]) + name[1..];
    }
}

/// <summary>Counts that the designer may fix by hand, as the document names them.</summary>
internal static class FixedCounts
{
    public const string PanelStitches = "panelStitches";
    public const string PanelRows = "panelRows";
    public const string SleeveStitches = "sleeveStitches";
    public const string SleeveRows = "sleeveRows";
}
