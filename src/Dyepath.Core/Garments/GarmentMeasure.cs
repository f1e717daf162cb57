using System.Collections.Immutable;
using System.Text.Json;

namespace Dyepath.Core.Garments;

/// <summary>A measure of the finished garment. Names in JSON are these in camel case with <c>Cm</c> appended.</summary>
public enum GarmentMeasure
{
    /// <summary>Finished bust or chest: all the way round.</summary>
    Width,

    /// <summary>From the shoulder, or of a skirt from the waist, down to the lower edge; of a flat piece from bottom to top.</summary>
    Length,

    /// <summary>From the shoulder down to the end of the armhole.</summary>
    ArmholeDepth,

    /// <summary>Across the neck, from shoulder to shoulder.</summary>
    NeckWidth,

    /// <summary>All the way round a sleeve.</summary>
    SleeveWidth,

    /// <summary>From the armhole to the lower edge.</summary>
    SleeveLength,

    /// <summary>All the way round, of a hat or a cowl.</summary>
    Circumference,

    /// <summary>From bottom to top, of what does not hang from the body.</summary>
    Height,

    /// <summary>How far down from the top edge a sleeve is joined to the body.</summary>
    SleeveJoin,

    /// <summary>How far an armhole lies within the side of its piece.</summary>
    ArmholeInset,

    /// <summary>From the shoulder down to the lower edge of the front neck.</summary>
    NeckDepth,

    /// <summary>The same at the back.</summary>
    BackNeckDepth,

    /// <summary>Across a piece that spans both arms, flat.</summary>
    WristToWrist,

    /// <summary>How far a gusset holds two panels apart.</summary>
    GussetDepth,

    /// <summary>Along the edge that is sewn to the panels.</summary>
    GussetLength,

    /// <summary>From long edge to long edge.</summary>
    StrapWidth,

    /// <summary>With the ends that are sewn on.</summary>
    StrapLength,

    /// <summary>Of a front or a back that does not meet the other at the sides.</summary>
    PanelWidth,

    /// <summary>How much of a side a tab is sewn to.</summary>
    TabJoin,

    /// <summary>From front to back.</summary>
    TabLength,

    /// <summary>Along the sides.</summary>
    TabHeight,

    /// <summary>From the shoulder seam down a side.</summary>
    LegOpening,

    /// <summary>Of the back alone, from side seam to side seam, where the front is in two.</summary>
    BackWidth,

    /// <summary>Of one front that opens: from its shoulder to its front edge, before the band.</summary>
    FrontNeck,

    /// <summary>Of a shawl, from tip to tip.</summary>
    Wingspan,

    /// <summary>Of a shawl, from its upper edge to its lowest point.</summary>
    Depth,

    /// <summary>All the way round the lower edge, where that is wider than what is above.</summary>
    HemWidth,

    /// <summary>All the way round a hat's upper edge, before it is drawn together.</summary>
    CrownEdge,

    /// <summary>How far up from the hem a side is left open.</summary>
    Vent,

    /// <summary>Of a triangle that fills the corner of a cut, along the cut's lower edge.</summary>
    InsertWidth,

    /// <summary>Of the same, along the cut's upright edge.</summary>
    InsertHeight,
}

/// <summary>Names of measures in the document: these in camel case.</summary>
public static class GarmentMeasures
{
    /// <summary>In running text, such as <c>armhole depth</c>.</summary>
    public static string Words(GarmentMeasure measure) => measure switch
    {
        GarmentMeasure.SleeveJoin => "sleeve joined to the body",
        GarmentMeasure.NeckDepth => "front neck depth",
        GarmentMeasure.LegOpening => "leg opening depth",
        GarmentMeasure.Vent => "side vent",
        GarmentMeasure.TabJoin => "tab joined to the side",
        _ => string.Concat(measure.ToString().Select((c, i) => i > 0 && char.IsUpper(c) ? $" {char.ToLowerInvariant(c)}" : $"{char.ToLowerInvariant(c)}")),
    };

    /// <summary>With its article, such as <c>an armhole depth</c>.</summary>
    internal static string One(GarmentMeasure measure) => Words(measure) is var words && words[0] is 'a' or 'e' or 'i' or 'o' ? $"an {words}" : $"a {words}";

    /// <summary>As the document names it, such as <c>armholeDepth</c>.</summary>
    public static string Key(GarmentMeasure measure) => JsonNamingPolicy.CamelCase.ConvertName(measure.ToString());
}

/// <summary>Counts that the designer may fix by hand, as the document names them: such as <c>panelStitches</c>.</summary>
public static class FixedCounts
{
    private static readonly ImmutableArray<string> Groups = ["panel", "front", "sleeve"];

    /// <summary>Those of stitches that a document may fix.</summary>
    public static ImmutableArray<string> OfStitches { get; } = [.. Groups.Select(g => g + InStitches)];

    /// <summary>Those of rows that a document may fix.</summary>
    public static ImmutableArray<string> OfRows { get; } = [.. Groups.Select(g => g + InRows)];

    private const string InStitches = "Stitches";
    private const string InRows = "Rows";

    /// <summary>The group whose count it is, and whether of stitches or else of rows; null where no document may fix it.</summary>
    public static (string Group, bool IsStitches)? Find(string what) =>
        OfStitches.IndexOf(what) is >= 0 and var stitches ? (Groups[stitches], true)
        : OfRows.IndexOf(what) is >= 0 and var rows ? (Groups[rows], false) : null;

    /// <summary>What fixes a group's stitches, such as <c>panelStitches</c>.</summary>
    public static string Stitches(PieceGroup group) => Named(group, InStitches);

    /// <summary>What fixes a group's rows, such as <c>panelRows</c>.</summary>
    public static string Rows(PieceGroup group) => Named(group, InRows);

    private static string Named(PieceGroup group, string what)
    {
        ArgumentNullException.ThrowIfNull(group);
        return group.Name + what;
    }
}
