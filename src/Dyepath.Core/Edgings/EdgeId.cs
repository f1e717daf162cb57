namespace Dyepath.Core.Edgings;

/// <summary>The edges of garments that edgings run along; <see cref="EdgeWords"/> has what the maker finds them by.</summary>
public enum EdgeId
{
    Front,
    Back,
    LeftFront,
    RightFront,
    LeftSleeve,
    RightSleeve,

    FrontNeck,
    BackNeck,
    LeftFrontNeck,
    RightFrontNeck,

    /// <summary>Of a front neck that inserts make a V, at the wearer's left.</summary>
    LeftNeckSlope,
    RightNeckSlope,

    /// <summary>From hem to neck, of a front that opens.</summary>
    FrontEdge,

    /// <summary>The front's edge of a shoulder that is buttoned.</summary>
    FrontLeftShoulder,

    Hem,
    Waist,
    Cuff,
    Brim,

    /// <summary>The upper edge of a hat.</summary>
    Crown,

    LowerEdge,
    RightEdge,
    UpperEdge,
    LeftEdge,

    /// <summary>The lowest rows of a shawl.</summary>
    Point,
    RightSlope,
    LeftSlope,

    /// <summary>The end of a gusset that the yarn comes to first.</summary>
    OneGussetEnd,
    OtherGussetEnd,

    /// <summary>From the lower edge to the shoulder, where sides are not sewn; left and right are the wearer's.</summary>
    BackLeftSide,
    BackRightSide,
    FrontLeftSide,
    FrontRightSide,
    BackLowerEdge,
    FrontLowerEdge,

    BackLeftSideBelowTab,
    BackRightSideBelowTab,
    FrontLeftSideBelowTab,
    FrontRightSideBelowTab,
    LeftTabLowerEdge,
    RightTabLowerEdge,

    /// <summary>From the tab to the shoulder, at either side.</summary>
    FrontSideAboveTab,
    BackSideAboveTab,
    TabUpperEdge,
}

/// <summary>Which part of an edge a stretch is; what is cut out of a piece turns corners, and a slope goes in steps.</summary>
public enum EdgePart
{
    Whole,

    /// <summary>The stitches along a slope.</summary>
    Steps,

    /// <summary>The row ends along a slope.</summary>
    RowEnds,

    /// <summary>Stitches and row ends by turns, which the edging smooths.</summary>
    AlongSteps,

    LowerEdge,
    UpperEdge,
    UprightEdge,

    /// <summary>The upright edge at the wearer's left, of two that face each other.</summary>
    WearersLeft,
    WearersRight,
}

/// <summary>What is picked up along, of a garment's edge or of a piece's side.</summary>
public abstract record StretchId
{
    private StretchId()
    {
    }

    /// <summary>An edge that an edging runs along, or a part of it.</summary>
    public sealed record OfEdge(EdgeId Edge, EdgePart Part = EdgePart.Whole) : StretchId;

    /// <summary>The end of the rows of an edging that was worked before.</summary>
    public sealed record EndOf(EdgingPlace Place) : StretchId;

    /// <summary>The ends of the plain bands along a piece's sides.</summary>
    public sealed record SideBands : StretchId;

    /// <summary>A piece's side that a plain band is picked up along.</summary>
    public sealed record OfSide(SidePart Part) : StretchId;
}

/// <summary>Which part of a side, where an opening is marked on it.</summary>
public enum SidePart
{
    Whole,
    BelowMark,
    AboveMark,
}
