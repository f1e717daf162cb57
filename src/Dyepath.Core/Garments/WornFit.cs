using Dyepath.Core.Quantities;
using Dyepath.Core.Sizing;

namespace Dyepath.Core.Garments;

/// <summary>A part of the garment held against a part of the body.</summary>
/// <param name="Part">What of the garment was held.</param>
/// <param name="Garment">As large as it can be made without harm, what it stretches included.</param>
/// <param name="Body">The body's measure that it was held against.</param>
/// <param name="Wanted">What the garment needs at least there.</param>
/// <param name="Place">Where in the document it can be changed.</param>
/// <param name="Mend">What helps where it does not hold.</param>
public sealed record WornFit(FitPart Part, Length Garment, BodyMeasure Body, Length Wanted, string Place, Mend Mend)
{
    /// <summary>What the fabric stretches by of that, or may be smaller by than the body because it does; zero where it does not.</summary>
    public Length Stretch { get; init; }

    /// <summary>As it lies flat, before it stretches.</summary>
    public Length AsMade { get; init; } = Garment;

    /// <summary>What <see cref="AsMade"/> and <see cref="Stretch"/> have to come to at least.</summary>
    public Length Needed => AsMade + Stretch - Spare;

    /// <summary>By how much it is larger than it has to be; under zero: too small.</summary>
    public Length Spare => Garment - Wanted;

    /// <summary>The garment is at least as large there as it has to be.</summary>
    public bool Holds => Garment >= Wanted;
}

/// <summary>Parts of a garment that are held against the body; lengths are finished ones.</summary>
public enum FitPart
{
    /// <summary>All round the body.</summary>
    Body,

    /// <summary>The same, of a garment that opens in front.</summary>
    ClosedBody,

    /// <summary>All round the lower edge, which the hip goes through.</summary>
    Hem,

    /// <summary>All round a sleeve.</summary>
    Sleeve,

    /// <summary>All round an armhole.</summary>
    Armhole,

    /// <summary>All round the neck's opening, stretched.</summary>
    NeckOpening,

    /// <summary>Fabric between the neck and the armhole or the side.</summary>
    ShoulderBesideNeck,

    /// <summary>What a boat neck leaves of the breadth of both shoulders.</summary>
    ShouldersBesideBoatNeck,

    /// <summary>All round a hat's lower edge, stretched.</summary>
    Brim,

    /// <summary>All round, before it is drawn in.</summary>
    Waist,

    /// <summary>All round front, back and both sleeves, before it is drawn in.</summary>
    TopEdge,

    /// <summary>All round, where the sides are joined.</summary>
    JoinedSides,

    /// <summary>All round a front and a back that tabs hold together.</summary>
    FrontBackAndTabs,
}

/// <summary>What helps where a part of a garment comes out too small; the plan's findings have the words.</summary>
public enum Mend
{
    /// <summary>A wider neck.</summary>
    WidenNeck,

    /// <summary>A narrower neck.</summary>
    NarrowNeck,

    /// <summary>A narrower neck, or more ease.</summary>
    NarrowNeckOrEase,

    /// <summary>More ease.</summary>
    Ease,

    /// <summary>More ease at the bust.</summary>
    BustEase,

    /// <summary>More ease at the hip.</summary>
    HipEase,

    /// <summary>More ease at the upper arm.</summary>
    UpperArmEase,

    /// <summary>More ease in the sleeves.</summary>
    SleeveEase,

    /// <summary>More ease, or wider sleeves.</summary>
    EaseOrWiderSleeves,

    /// <summary>A smaller share taken off the head's girth.</summary>
    LessOffHead,

    /// <summary>Sleeves that are less shortened, or none.</summary>
    LongerSleeves,

    /// <summary>A deeper gusset, or none.</summary>
    DeeperGusset,

    /// <summary>More of the arm's length from neck to side edge.</summary>
    LargerArmShare,

    /// <summary>Sides that are joined over a shorter stretch.</summary>
    JoinLessOfSides,
}

/// <summary>Parts of a garment held against the body, as JSON names them.</summary>
public static class FitPartNames
{
    /// <summary>Beside a column that says how far it stretches: <c>neck opening, all round</c>.</summary>
    public static string Alone(FitPart part) => part switch
    {
        FitPart.NeckOpening => "neck opening, all round",
        FitPart.Brim => "brim, all round",
        FitPart.Body => "body, all round",
        _ => Of(part),
    };

    /// <summary>Never changed once it was written, whatever the words are that a reader is told.</summary>
    public static string Of(FitPart part) => part switch
    {
        FitPart.Body => "body",
        FitPart.ClosedBody => "body, closed",
        FitPart.Hem => "hem",
        FitPart.Sleeve => "sleeve",
        FitPart.Armhole => "armhole",
        FitPart.NeckOpening => "neck opening, all round and stretched",
        FitPart.ShoulderBesideNeck => "shoulder beside the neck",
        FitPart.ShouldersBesideBoatNeck => "shoulder breadth beside the boat neck",
        FitPart.Brim => "brim, stretched",
        FitPart.Waist => "waist, before it is drawn in",
        FitPart.TopEdge => "top edge, before it is drawn in",
        FitPart.JoinedSides => "joined sides, all round",
        FitPart.FrontBackAndTabs => "front, back and tabs, all round",
    };
}
