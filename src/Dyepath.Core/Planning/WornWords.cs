using Dyepath.Core.Garments;
using Dyepath.Core.Sizing;

namespace Dyepath.Core.Planning;

/// <summary>What is held against the body, and what helps where it does not hold, in the words of findings.</summary>
public static class WornWords
{
    /// <summary>As a heading has it: <c>hem</c>, or <c>brim, stretched</c>.</summary>
    public static string Of(FitPart part) => FitPartNames.Of(part);

    /// <summary>As a sentence begins after <c>the</c>, up to its verb: <c>hem</c>, or <c>brim, stretched,</c>.</summary>
    public static string Subject(FitPart part) => Of(part) is var words && words.Contains(',') ? $"{words}," : words;

    /// <summary>What to do, such as <c>make the neck wider</c>, in the words of the pattern's size tables.</summary>
    public static string Of(Mend mend, SizeSelection sizes)
    {
        ArgumentNullException.ThrowIfNull(sizes);
        return sizes.InWords(Of(mend));
    }

    /// <summary>The same where it is not known whose sizes they are.</summary>
    public static string Of(Mend mend) => mend switch
    {
        Mend.WidenNeck => "make the neck wider",
        Mend.NarrowNeck => "make the neck narrower",
        Mend.NarrowNeckOrEase => "make the neck narrower, or give more ease",
        Mend.Ease => "give more ease",
        Mend.BustEase => "give more ease at the bust",
        Mend.HipEase => "give more ease at the hip",
        Mend.UpperArmEase => "give more ease at the upper arm",
        Mend.SleeveEase => "give the sleeves more ease",
        Mend.EaseOrWiderSleeves => "give more ease, or wider sleeves",
        Mend.LessOffHead => "take less off the head",
        Mend.LongerSleeves => "take less off, or leave sleeves out",
        Mend.DeeperGusset => "make it deeper, or 0 for none",
        Mend.LargerArmShare => "give a larger share, or leave the sides open",
        Mend.JoinLessOfSides => "join less of the sides",
    };
}
