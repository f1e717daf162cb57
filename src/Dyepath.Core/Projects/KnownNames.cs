using System.Collections.Immutable;

namespace Dyepath.Core.Projects;

/// <summary>The names that a document may refer to outside itself.</summary>
/// <param name="ChartSizes">Sizes of each size chart, smallest first; of a chart that is missing here only the id is checked.</param>
/// <param name="Edgings">Ids of the edgings; empty, they are not checked.</param>
public sealed record KnownNames(
    ImmutableDictionary<string, ImmutableArray<string>> ChartSizes,
    ImmutableArray<string> Edgings)
{
    /// <summary>Refers to nothing outside; ids of charts are checked all the same.</summary>
    public static KnownNames None { get; } = new(ImmutableDictionary<string, ImmutableArray<string>>.Empty, []);

    /// <summary>Ids of the shipped size charts.</summary>
    public static ImmutableArray<string> Charts { get; } =
        ["women", "men", "child", "youth", "baby", "en13402-women", "en13402-men", "astm-misses"];

    /// <summary>Body measures of a size chart.</summary>
    public static ImmutableArray<string> BodyMeasures { get; } =
    [
        "bust", "chest", "waist", "hip", "crossBack", "backWaistLength", "armLengthToUnderarm", "upperArm", "armholeDepth",
        "centreBackNeckToCuff", "height", "headCircumference",
    ];

    /// <summary>Finished measures that may be fixed.</summary>
    public static ImmutableArray<string> FinishedMeasures { get; } =
        ["width", "length", "armholeDepth", "neckWidth", "sleeveWidth", "sleeveLength", "circumference", "height"];

    /// <summary>Stitch counts that may be fixed.</summary>
    public static ImmutableArray<string> StitchCounts { get; } = ["panelStitches", "sleeveStitches"];

    /// <summary>Row counts that may be fixed.</summary>
    public static ImmutableArray<string> RowCounts { get; } = ["panelRows", "sleeveRows"];
}
