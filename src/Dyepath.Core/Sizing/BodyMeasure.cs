using System.Text.Json;

namespace Dyepath.Core.Sizing;

/// <summary>What is measured on the body. A girth goes all the way round.</summary>
public enum BodyMeasure
{
    /// <summary>Girth at the fullest part of the bust, or of the chest.</summary>
    Bust,

    /// <summary>Girth.</summary>
    Waist,

    /// <summary>Girth at the fullest part.</summary>
    Hip,

    /// <summary>From shoulder tip to shoulder tip across the back.</summary>
    CrossBack,

    /// <summary>From the neck bone down to the natural waist.</summary>
    BackWaistLength,

    /// <summary>From the neck bone down to the hip; what a men's chart gives in place of the waist length.</summary>
    BackHipLength,

    /// <summary>From wrist to underarm along the inside.</summary>
    ArmLengthToUnderarm,

    /// <summary>Girth at the widest part of the upper arm.</summary>
    UpperArm,

    /// <summary>Straight down from the shoulder to the level of the underarm. Not a girth.</summary>
    ArmholeDepth,

    /// <summary>From the neck bone over the shoulder to the wrist, arm slightly bent.</summary>
    CentreBackNeckToCuff,

    /// <summary>Girth.</summary>
    Head,

    /// <summary>Girth where the neck meets the shoulders.</summary>
    NeckBase,

    /// <summary>Girth halfway up.</summary>
    MidNeck,

    /// <summary>Girth around both shoulders and arms.</summary>
    Shoulders,

    /// <summary>Girth just below the bust.</summary>
    UnderBust,

    /// <summary>Girth above the bust, under the arms.</summary>
    UpperChest,
}

/// <summary>What body measures are called in print and in documents.</summary>
public static class BodyMeasures
{
    /// <summary>As a size table prints it, in lower case; Bust reads "bust or chest".</summary>
    public static string Words(BodyMeasure measure) => measure switch
    {
        BodyMeasure.Bust => "bust or chest",
        BodyMeasure.Waist => "waist",
        BodyMeasure.Hip => "hip",
        BodyMeasure.CrossBack => "cross back",
        BodyMeasure.BackWaistLength => "back waist length",
        BodyMeasure.BackHipLength => "back hip length",
        BodyMeasure.ArmLengthToUnderarm => "arm length to underarm",
        BodyMeasure.UpperArm => "upper arm",
        BodyMeasure.ArmholeDepth => "armhole depth",
        BodyMeasure.CentreBackNeckToCuff => "centre back neck to cuff",
        BodyMeasure.Head => "head",
        BodyMeasure.NeckBase => "neck base",
        BodyMeasure.MidNeck => "mid neck",
        BodyMeasure.Shoulders => "shoulders",
        BodyMeasure.UnderBust => "under bust",
        BodyMeasure.UpperChest => "upper chest",
    };

    /// <summary>As a document spells it: the member's name with a small first letter, such as <c>upperArm</c>.</summary>
    public static string Key(BodyMeasure measure) => JsonNamingPolicy.CamelCase.ConvertName(measure.ToString());
}
