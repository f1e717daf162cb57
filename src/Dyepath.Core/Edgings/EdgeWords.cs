using Dyepath.Core.Booklets;

namespace Dyepath.Core.Edgings;

/// <summary>Edges as the maker finds them.</summary>
public static class EdgeWords
{
    /// <summary>Within a sentence, such as <c>front neck</c>.</summary>
    public static string Of(EdgeId edge) => edge switch
    {
        EdgeId.Front => "front",
        EdgeId.Back => "back",
        EdgeId.LeftFront => "left front",
        EdgeId.RightFront => "right front",
        EdgeId.LeftSleeve => "left sleeve",
        EdgeId.RightSleeve => "right sleeve",
        EdgeId.FrontNeck => "front neck",
        EdgeId.BackNeck => "back neck",
        EdgeId.LeftFrontNeck => "left front neck",
        EdgeId.RightFrontNeck => "right front neck",
        EdgeId.LeftNeckSlope => "front neck, slope at the wearer's left",
        EdgeId.RightNeckSlope => "front neck, slope at the wearer's right",
        EdgeId.FrontEdge => "front edge",
        EdgeId.FrontLeftShoulder => "left shoulder of the front",
        EdgeId.Hem => "hem",
        EdgeId.Waist => "waist",
        EdgeId.Cuff => "cuff",
        EdgeId.Brim => "brim",
        EdgeId.Crown => "crown",
        EdgeId.LowerEdge => "lower edge",
        EdgeId.RightEdge => "right edge",
        EdgeId.UpperEdge => "upper edge",
        EdgeId.LeftEdge => "left edge",
        EdgeId.Point => "point",
        EdgeId.RightSlope => "right slope",
        EdgeId.LeftSlope => "left slope",
        EdgeId.OneGussetEnd => "one end of the gusset",
        EdgeId.OtherGussetEnd => "other end of the gusset",
        EdgeId.BackLeftSide => "left side of the back",
        EdgeId.BackRightSide => "right side of the back",
        EdgeId.FrontLeftSide => "left side of the front",
        EdgeId.FrontRightSide => "right side of the front",
        EdgeId.BackLowerEdge => "lower edge of the back",
        EdgeId.FrontLowerEdge => "lower edge of the front",
        EdgeId.BackLeftSideBelowTab => "left side of the back below the tab",
        EdgeId.BackRightSideBelowTab => "right side of the back below the tab",
        EdgeId.FrontLeftSideBelowTab => "left side of the front below the tab",
        EdgeId.FrontRightSideBelowTab => "right side of the front below the tab",
        EdgeId.LeftTabLowerEdge => "lower edge of the left tab",
        EdgeId.RightTabLowerEdge => "lower edge of the right tab",
        EdgeId.FrontSideAboveTab => "side of the front above the tab",
        EdgeId.BackSideAboveTab => "side of the back above the tab",
        EdgeId.TabUpperEdge => "upper edge of the tab",
    };

    /// <summary>Within a sentence, such as <c>front neck, lower edge</c>.</summary>
    public static string Of(StretchId stretch) => stretch switch
    {
        StretchId.OfEdge { Part: EdgePart.Whole } whole => Of(whole.Edge),
        StretchId.OfEdge part => $"{Of(part.Edge)}, {Of(part.Part)}",
        StretchId.EndOf end => $"end of the {EdgingPlaces.Words(end.Place)}",
        StretchId.SideBands => "side bands",
        StretchId.OfSide side => side.Part switch
        {
            SidePart.Whole => "side",
            SidePart.BelowMark => "below the mark",
            SidePart.AboveMark => "above it",
            _ => throw new ArgumentOutOfRangeException(nameof(stretch), stretch, "No words for this stretch."),
        },
        _ => throw new ArgumentOutOfRangeException(nameof(stretch), stretch, "No words for this stretch."),
    };

    /// <summary>Such as <c>front neck, lower edge</c>, edge and part each by its own name.</summary>
    public static Phrase Said(StretchId stretch) => stretch switch
    {
        StretchId.OfEdge { Part: not EdgePart.Whole } part => Phrase.Join(", ", [Phrase.Plain(Of(part.Edge)), Phrase.Plain(Of(part.Part))]),
        StretchId.EndOf end => Phrase.Of($"end of the {EdgingPlaces.Words(end.Place)}"),
        _ => Phrase.Plain(Of(stretch)),
    };

    /// <summary>Between two stretches.</summary>
    public static string Of(EdgeCorner corner) => corner == EdgeCorner.Outer ? "outer corner" : "inner corner";

    private static string Of(EdgePart part) => part switch
    {
        EdgePart.Steps => "steps",
        EdgePart.RowEnds => "row ends",
        EdgePart.AlongSteps => "along its steps",
        EdgePart.StepsAtWearersLeft => "along the steps at the wearer's left",
        EdgePart.StepsAtWearersRight => "along the steps at the wearer's right",
        EdgePart.LowerEdge => "lower edge",
        EdgePart.Step => "step",
        EdgePart.UpperEdge => "upper edge",
        EdgePart.UprightEdge => "upright edge",
        EdgePart.WearersLeft => "edge at the wearer's left",
        EdgePart.WearersRight => "edge at the wearer's right",
        _ => throw new ArgumentOutOfRangeException(nameof(part), part, "No words for this part of an edge."),
    };
}
