namespace Dyepath.Core.Garments;

/// <summary>The pieces that garments are made of. The document and JSON name them by these words in lower case.</summary>
public enum PieceId
{
    /// <summary>From side to side of the wearer's front; of a bag or cushion the panel that is seen.</summary>
    Front,

    /// <summary>From side to side of the wearer's back; of a bag or cushion the other panel.</summary>
    Back,

    /// <summary>The half of a front that opens which lies over the wearer's left side.</summary>
    LeftFront,

    /// <summary>The half of a front that opens which lies over the wearer's right side.</summary>
    RightFront,

    /// <summary>Either sleeve: both are made alike.</summary>
    Sleeve,

    /// <summary>The tube, worked in rounds or sewn.</summary>
    Cowl,

    /// <summary>The whole of a wrap.</summary>
    Wrap,

    /// <summary>The whole of a blanket.</summary>
    Blanket,

    /// <summary>The whole of a shawl.</summary>
    Shawl,

    /// <summary>The only piece of a garment that is named otherwise.</summary>
    Panel,

    /// <summary>A strip between two panels.</summary>
    Gusset,

    /// <summary>What a bag hangs from.</summary>
    Strap,

    /// <summary>A short piece that holds front and back together at a side.</summary>
    Tab,

    /// <summary>A plain triangle in the corner of a cut at the wearer's left.</summary>
    LeftInsert,

    /// <summary>A plain triangle in the corner of a cut at the wearer's right.</summary>
    RightInsert,
}

/// <summary>Where edges of pieces meet: sewn, or the join of a round. JSON names them by these words in lower case, parted.</summary>
public enum SeamId
{
    /// <summary>Front to back at the wearer's left, from the hem to the armhole or what else is open above.</summary>
    LeftSide,

    /// <summary>Front to back at the wearer's right, from the hem to the armhole or what else is open above.</summary>
    RightSide,

    /// <summary>Front to back at the wearer's left, from the neck to the outer end.</summary>
    LeftShoulder,

    /// <summary>Front to back at the wearer's right, from the neck to the outer end.</summary>
    RightShoulder,

    /// <summary>The top of the left sleeve to front and back.</summary>
    LeftArmhole,

    /// <summary>The top of the right sleeve to front and back.</summary>
    RightArmhole,

    /// <summary>Along the underside of a sleeve.</summary>
    LeftSleeve,

    /// <summary>The same of the other sleeve.</summary>
    RightSleeve,

    /// <summary>The two edges of a panel that goes round, at the wearer's back.</summary>
    BackSeam,

    /// <summary>Where the rounds of a tube are joined: no seam is sewn.</summary>
    RoundJoin,

    /// <summary>A sleeve's sides, where they are sewn to the body below a top edge.</summary>
    LeftSleeveFront,

    /// <summary>The left sleeve's side to the back, below the top edge.</summary>
    LeftSleeveBack,

    /// <summary>The right sleeve's side to the front, below the top edge.</summary>
    RightSleeveFront,

    /// <summary>The right sleeve's side to the back, below the top edge.</summary>
    RightSleeveBack,

    /// <summary>Front to back along the bottom, of a bag or a cushion.</summary>
    LowerSeam,

    /// <summary>Front to back along the top of a cushion, closed last.</summary>
    UpperSeam,

    /// <summary>Along both sides and the lower edge of a panel.</summary>
    GussetToFront,

    /// <summary>Along both sides and the lower edge of the other panel.</summary>
    GussetToBack,

    /// <summary>The sides of a tab, where they are sewn to front and back.</summary>
    LeftTabFront,

    /// <summary>The tab at the wearer's left to the back.</summary>
    LeftTabBack,

    /// <summary>The tab at the wearer's right to the front.</summary>
    RightTabFront,

    /// <summary>The tab at the wearer's right to the back.</summary>
    RightTabBack,

    /// <summary>Where two fronts meet, buttoned or open.</summary>
    FrontOpening,

    /// <summary>Along the lower edge of a cut from its middle, and up its upright edge.</summary>
    LeftInsert,

    /// <summary>The same at the wearer's right.</summary>
    RightInsert,
}

/// <summary>What a seam leaves open.</summary>
public enum OpeningId
{
    /// <summary>For the head: a slit between the shoulders, or what is cut out of them.</summary>
    Neck,

    /// <summary>For an arm, or where a sleeve is set in.</summary>
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
    /// <summary>In lower case, such as <c>left front</c>.</summary>
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
    };

    /// <summary>In lower case, such as <c>left side</c>.</summary>
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
    };

    /// <summary>In lower case, such as <c>leg opening</c>.</summary>
    public static string Of(OpeningId opening) => opening switch
    {
        OpeningId.Neck => "neck",
        OpeningId.Armhole => "armhole",
        OpeningId.SleeveJoin => "sleeve join",
        OpeningId.Tab => "tab",
        OpeningId.LegOpening => "leg opening",
        OpeningId.Vent => "vent",
    };
}
