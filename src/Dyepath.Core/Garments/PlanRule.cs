namespace Dyepath.Core.Garments;

/// <summary>
/// The measures and steps that a plan follows a rule of the trade for. JSON names them by these words in camel case; what the rule says
/// depends on the garment.
/// </summary>
public enum PlanRule
{
    /// <summary>For which body within a size's range it is planned.</summary>
    Body,

    /// <summary>How other sizes follow what was made in the base size.</summary>
    Locked,

    /// <summary>Which of the swatch's gauges counts.</summary>
    Gauge,

    /// <summary>What seams and edgings take.</summary>
    Seam,

    /// <summary>Of the body, of a panel, or of a flat piece with all its measures.</summary>
    Width,

    /// <summary>What two fronts make up of the width.</summary>
    Fronts,

    /// <summary>From top to bottom.</summary>
    Length,

    /// <summary>Of what is left open for the arms.</summary>
    ArmholeDepth,

    /// <summary>How far an armhole lies within its side.</summary>
    ArmholeInset,

    /// <summary>Width and depths of a neck that is cut.</summary>
    Neck,

    /// <summary>Of a neck that is left open.</summary>
    NeckWidth,

    /// <summary>Where cut edges lie, so that the motif goes on.</summary>
    Motif,

    /// <summary>How buttonholes are spread, and on which side they are.</summary>
    Buttonholes,

    /// <summary>All round.</summary>
    SleeveWidth,

    /// <summary>From the armhole to the cuff.</summary>
    SleeveLength,

    /// <summary>How much of a sleeve is sewn to the body below a top edge.</summary>
    SleeveJoin,

    /// <summary>What is left open at the lower ends of the sides.</summary>
    Vent,

    /// <summary>How far the edge round the shoulders is drawn in.</summary>
    TopEdge,

    /// <summary>Of what is left open for an animal's forelegs.</summary>
    LegOpening,

    /// <summary>Of panels that tabs hold together.</summary>
    PanelWidth,

    /// <summary>What holds panels together.</summary>
    Tabs,

    /// <summary>Across what spans both arms.</summary>
    WristToWrist,

    /// <summary>All round a hat or a cowl.</summary>
    Circumference,

    /// <summary>From a hat's brim to its crown.</summary>
    Height,

    /// <summary>How a gored crown narrows.</summary>
    CrownEdge,

    /// <summary>How a gored skirt widens.</summary>
    HemWidth,

    /// <summary>How the ends of rows follow an outline.</summary>
    Steps,

    /// <summary>How a piece comes to slant.</summary>
    Bias,

    /// <summary>Of the strip between two panels.</summary>
    GussetLength,

    /// <summary>Of a strap with its ends.</summary>
    StrapLength,

    /// <summary>When a further stitch count is taken.</summary>
    Grading,

    /// <summary>How sizes follow each other, and the bodies of their range.</summary>
    Widths,

    /// <summary>How many rounds each size's edging has where they are left open.</summary>
    Edgings,
}
