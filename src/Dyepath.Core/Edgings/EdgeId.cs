namespace Dyepath.Core.Edgings;

/// <summary>The edges of garments that edgings run along; <see cref="EdgeWords"/> has what the maker finds them by.</summary>
public enum EdgeId
{
    /// <summary>The front's lower edge.</summary>
    Front,

    /// <summary>The back's lower edge.</summary>
    Back,

    /// <summary>The lower edge of the front at the wearer's left.</summary>
    LeftFront,

    /// <summary>The lower edge of the front at the wearer's right.</summary>
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
    /// <summary>All of the edge.</summary>
    Whole,

    /// <summary>The stitches along a slope.</summary>
    Steps,

    /// <summary>The row ends along a slope.</summary>
    RowEnds,

    /// <summary>Stitches and row ends by turns, which the edging smooths.</summary>
    AlongSteps,

    /// <summary>Of what is cut out of a piece, the edge at the bottom.</summary>
    LowerEdge,

    /// <summary>Of what is cut out of a piece, the edge at the top.</summary>
    UpperEdge,

    /// <summary>Of what is cut out of a piece, the only edge that runs up.</summary>
    UprightEdge,

    /// <summary>The upright edge at the wearer's left, of two that face each other.</summary>
    WearersLeft,

    /// <summary>The upright edge at the wearer's right, of two that face each other.</summary>
    WearersRight,
}

/// <summary>What is picked up along, of a garment's edge or of a piece's side.</summary>
public abstract record StretchId
{
    private StretchId()
    {
    }

    /// <summary>An edge that an edging runs along, or a part of it.</summary>
    /// <param name="Edge">Which edge of the garment.</param>
    /// <param name="Part">All of it unless said otherwise.</param>
    public sealed record OfEdge(EdgeId Edge, EdgePart Part = EdgePart.Whole) : StretchId;

    /// <summary>The end of the rows of an edging that was worked before.</summary>
    /// <param name="Place">Where that edging lies.</param>
    public sealed record EndOf(EdgingPlace Place) : StretchId;

    /// <summary>The ends of the plain bands along a piece's sides.</summary>
    public sealed record SideBands : StretchId;

    /// <summary>A piece's side that a plain band is picked up along.</summary>
    /// <param name="Part">All of it, or to one side of a mark.</param>
    public sealed record OfSide(SidePart Part) : StretchId;
}

/// <summary>Which part of a side, where an opening is marked on it.</summary>
public enum SidePart
{
    /// <summary>From end to end.</summary>
    Whole,

    /// <summary>From the bottom up to the mark of the opening.</summary>
    BelowMark,

    /// <summary>From the mark of the opening up to the top.</summary>
    AboveMark,
}
