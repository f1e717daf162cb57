namespace Dyepath.Core.Garments;

/// <summary>The pieces that garments are made of. The document and JSON name them by these words in lower case.</summary>
public enum PieceId
{
    Front,
    Back,

    /// <summary>The half of a front that opens which lies over the wearer's left side.</summary>
    LeftFront,
    RightFront,
    Sleeve,
    Cowl,
    Wrap,
    Blanket,
    Shawl,

    /// <summary>The only piece of a garment that is named otherwise.</summary>
    Panel,

    /// <summary>A strip between two panels.</summary>
    Gusset,
    Strap,

    /// <summary>A short piece that holds front and back together at a side.</summary>
    Tab,

    /// <summary>A plain triangle in the corner of a cut at the wearer's left.</summary>
    LeftInsert,
    RightInsert,
}

/// <summary>Where edges of pieces meet: sewn, or the join of a round. JSON names them by these words in lower case, parted.</summary>
public enum SeamId
{
    LeftSide,
    RightSide,
    LeftShoulder,
    RightShoulder,
    LeftArmhole,
    RightArmhole,

    /// <summary>Along the underside of a sleeve.</summary>
    LeftSleeve,
    RightSleeve,
    BackSeam,
    RoundJoin,

    /// <summary>A sleeve's sides, where they are sewn to the body below a top edge.</summary>
    LeftSleeveFront,
    LeftSleeveBack,
    RightSleeveFront,
    RightSleeveBack,

    LowerSeam,
    UpperSeam,

    /// <summary>Along both sides and the lower edge of a panel.</summary>
    GussetToFront,
    GussetToBack,

    /// <summary>The sides of a tab, where they are sewn to front and back.</summary>
    LeftTabFront,
    LeftTabBack,
    RightTabFront,
    RightTabBack,

    /// <summary>Where two fronts meet, buttoned or open.</summary>
    FrontOpening,

    /// <summary>Along the lower edge of a cut from its middle, and up its upright edge.</summary>
    LeftInsert,
    RightInsert,
}

/// <summary>What a seam leaves open.</summary>
public enum OpeningId
{
    Neck,
    Armhole,

    /// <summary>Where a sleeve's side is sewn to the body's below a top edge.</summary>
    SleeveJoin,

    /// <summary>Where a tab is sewn to a side.</summary>
    Tab,

    /// <summary>For an animal's foreleg.</summary>
    LegOpening,

    /// <summary>The bottom of a side seam, left open.</summary>
    Vent,
}

/// <summary>Names of pieces and seams, as document, JSON and pattern have them.</summary>
public static class PlaceNames
{
    public static string Of(PieceId piece) => piece switch
    {
        PieceId.Front => "front",
        PieceId.Back => "back",
        PieceId.LeftFront => "left front",
        PieceId.RightFront => "right front",
        PieceId.Sleeve => "sleeve",
        PieceId.Cowl => "cowl",
        PieceId.Wrap => "wrap",
        PieceId.Blanket => "blanket",
        PieceId.Shawl => "shawl",
        PieceId.Panel => "panel",
        PieceId.Gusset => "gusset",
        PieceId.Strap => "strap",
        PieceId.Tab => "tab",
        PieceId.LeftInsert => "left insert",
        PieceId.RightInsert => "right insert",
        _ => throw new ArgumentOutOfRangeException(nameof(piece), piece, "No such piece."),
    };

    public static string Of(SeamId seam) => seam switch
    {
        SeamId.LeftSide => "left side",
        SeamId.RightSide => "right side",
        SeamId.LeftShoulder => "left shoulder",
        SeamId.RightShoulder => "right shoulder",
        SeamId.LeftArmhole => "left armhole",
        SeamId.RightArmhole => "right armhole",
        SeamId.LeftSleeve => "left sleeve",
        SeamId.RightSleeve => "right sleeve",
        SeamId.BackSeam => "back seam",
        SeamId.RoundJoin => "round join",
        SeamId.LeftSleeveFront => "left sleeve to front",
        SeamId.LeftSleeveBack => "left sleeve to back",
        SeamId.RightSleeveFront => "right sleeve to front",
        SeamId.RightSleeveBack => "right sleeve to back",
        SeamId.LowerSeam => "lower seam",
        SeamId.UpperSeam => "upper seam",
        SeamId.GussetToFront => "gusset to front",
        SeamId.GussetToBack => "gusset to back",
        SeamId.LeftTabFront => "left tab to front",
        SeamId.LeftTabBack => "left tab to back",
        SeamId.RightTabFront => "right tab to front",
        SeamId.RightTabBack => "right tab to back",
        SeamId.FrontOpening => "front opening",
        SeamId.LeftInsert => "left insert to front",
        SeamId.RightInsert => "right insert to front",
        _ => throw new ArgumentOutOfRangeException(nameof(seam), seam, "No such seam."),
    };

    public static string Of(OpeningId opening) => opening switch
    {
        OpeningId.Neck => "neck",
        OpeningId.Armhole => "armhole",
        OpeningId.SleeveJoin => "sleeve join",
        OpeningId.Tab => "tab",
        OpeningId.LegOpening => "leg opening",
        OpeningId.Vent => "vent",
        _ => throw new ArgumentOutOfRangeException(nameof(opening), opening, "No such opening."),
    };
}
