namespace Dyepath.Core.Edgings;

/// <summary>The edges of garments that edgings run along; <see cref="EdgeWords"/> has what the maker finds them by.</summary>
public enum EdgeId
{
    /// <summary>The front, where the edging goes along it: its lower edge, its side of an armhole, or its top.</summary>
    Front,

    /// <summary>The back, at the same places as <see cref="Front"/>.</summary>
    Back,

    /// <summary>The lower edge of the front at the wearer's left.</summary>
    LeftFront,

    /// <summary>The lower edge of the front at the wearer's right.</summary>
    RightFront,

    /// <summary>Top of the sleeve at the wearer's left, of a garment with a top edge.</summary>
    LeftSleeve,

    /// <summary>Top of the sleeve at the wearer's right, of a garment with a top edge.</summary>
    RightSleeve,

    /// <summary>The front's edge of the neck, from shoulder to shoulder.</summary>
    FrontNeck,

    /// <summary>The back's edge of the neck, from shoulder to shoulder.</summary>
    BackNeck,

    /// <summary>Of a front that opens, the neck's edge at the wearer's left.</summary>
    LeftFrontNeck,

    /// <summary>Of a front that opens, the neck's edge at the wearer's right.</summary>
    RightFrontNeck,

    /// <summary>Of a front neck that inserts make a V, at the wearer's left.</summary>
    LeftNeckSlope,

    /// <summary>The same at the wearer's right.</summary>
    RightNeckSlope,

    /// <summary>From hem to neck, of a front that opens.</summary>
    FrontEdge,

    /// <summary>The front's edge of a shoulder that is buttoned.</summary>
    FrontLeftShoulder,

    /// <summary>All round the lower edge of what hangs from the waist.</summary>
    Hem,

    /// <summary>All round the top of a skirt.</summary>
    Waist,

    /// <summary>All round the lower edge of a sleeve.</summary>
    Cuff,

    /// <summary>All round the lower edge of a hat, or either end of a cowl.</summary>
    Brim,

    /// <summary>The upper edge of a hat.</summary>
    Crown,

    /// <summary>The bottom of a piece, as it is worn or laid.</summary>
    LowerEdge,

    /// <summary>The right side of a piece that is edged all round, seen from outside.</summary>
    RightEdge,

    /// <summary>The top of a piece, as it is worn or laid.</summary>
    UpperEdge,

    /// <summary>The left side of a piece that is edged all round, seen from outside.</summary>
    LeftEdge,

    /// <summary>The lowest rows of a shawl.</summary>
    Point,

    /// <summary>Of a shawl, the slope at the right, seen from outside.</summary>
    RightSlope,

    /// <summary>Of a shawl, the slope at the left, seen from outside.</summary>
    LeftSlope,

    /// <summary>The end of a gusset that the yarn comes to first.</summary>
    OneGussetEnd,

    /// <summary>The end of a gusset that the yarn comes to last.</summary>
    OtherGussetEnd,

    /// <summary>From the lower edge to the shoulder, where sides are not sewn; left and right are the wearer's.</summary>
    BackLeftSide,

    /// <summary>At the wearer's right, from the lower edge to the shoulder.</summary>
    BackRightSide,

    /// <summary>At the wearer's left, from the lower edge to the shoulder.</summary>
    FrontLeftSide,

    /// <summary>At the wearer's right, from the lower edge to the shoulder.</summary>
    FrontRightSide,

    /// <summary>The back's lower edge, where its sides are edged too.</summary>
    BackLowerEdge,

    /// <summary>The front's lower edge, where its sides are edged too.</summary>
    FrontLowerEdge,

    /// <summary>At the wearer's left, from the lower edge to the tab.</summary>
    BackLeftSideBelowTab,

    /// <summary>At the wearer's right, from the lower edge to the tab.</summary>
    BackRightSideBelowTab,

    /// <summary>At the wearer's left, from the lower edge to the tab.</summary>
    FrontLeftSideBelowTab,

    /// <summary>At the wearer's right, from the lower edge to the tab.</summary>
    FrontRightSideBelowTab,

    /// <summary>From front to back, at the wearer's left.</summary>
    LeftTabLowerEdge,

    /// <summary>From front to back, at the wearer's right.</summary>
    RightTabLowerEdge,

    /// <summary>From the tab to the shoulder, at either side.</summary>
    FrontSideAboveTab,

    /// <summary>From the tab to the shoulder, at either side.</summary>
    BackSideAboveTab,

    /// <summary>From front to back, below the arm.</summary>
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

    /// <summary>The same at the wearer's left of what is cut out.</summary>
    StepsAtWearersLeft,

    /// <summary>The same at the wearer's right.</summary>
    StepsAtWearersRight,

    /// <summary>Of what is cut out of a piece, the edge at the bottom.</summary>
    LowerEdge,

    /// <summary>Of what is cut out of a piece, an edge like the one at the bottom, but higher.</summary>
    Step,

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
