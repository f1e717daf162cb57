namespace Dyepath.Core.Garments;

/// <summary>The pieces that garments are made of. The document and JSON name them by these words in lower case.</summary>
public enum PieceId
{
    Front,
    Back,
    Sleeve,
    Cowl,
    Wrap,
    Blanket,
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
}

/// <summary>What a seam leaves open.</summary>
public enum OpeningId
{
    Neck,
    Armhole,
}

/// <summary>Names of pieces and seams, as document, JSON and pattern have them.</summary>
public static class PlaceNames
{
    public static string Of(PieceId piece) => piece switch
    {
        PieceId.Front => "front",
        PieceId.Back => "back",
        PieceId.Sleeve => "sleeve",
        PieceId.Cowl => "cowl",
        PieceId.Wrap => "wrap",
        PieceId.Blanket => "blanket",
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
        _ => throw new ArgumentOutOfRangeException(nameof(seam), seam, "No such seam."),
    };
}
