using Dyepath.Core.Booklets;
using Dyepath.Core.Fabrics;

namespace Dyepath.Core.Edgings;

/// <summary>What the words and figures of several edgings share; yarn and height over those of single crochet.</summary>
internal static class EdgingWords
{
    public const double ChainYarn = FabricStitch.ChainInSingleCrochet;

    /// <summary>From memory.</summary>
    public const double SlipStitchYarn = 0.5;

    public static double HalfDoubleYarn => FabricStitch.HalfDoubleCrochet.YarnInSingleCrochet;

    public static double DoubleYarn => FabricStitch.DoubleCrochet.YarnInSingleCrochet;

    public static double HalfDoubleHeight => FabricStitch.HalfDoubleCrochet.HeightOverWidth / FabricStitch.SingleCrochet.HeightOverWidth;

    public static double DoubleHeight => FabricStitch.DoubleCrochet.HeightOverWidth / FabricStitch.SingleCrochet.HeightOverWidth;

    /// <summary>Width of a stitch in row heights: what a stitch adds to an edging whose rows stand across the edge.</summary>
    public static double StitchWidth => 1 / FabricStitch.SingleCrochet.HeightOverWidth;

    public static Term Sc => new("sc");

    public static Term Hdc => new("hdc");

    public static Term Dc => new("dc");

    public static Term SlSt => new("sl st");

    public static Term Skip => new("skip");

    public static Term Skipped => new("skipped");

    public static Term YarnOver => new("yarn over");

    public static Instruction FirstRound => new(EdgingLabels.Numbered(1), Phrase.Of($"Ch 1, {Sc} in every place of the pick-up; {SlSt} in the first {Sc}."));

    public static Instruction SingleRounds => new(EdgingLabels.Further(), Phrase.Of($"Ch 1, {Sc} in each {Sc} around; {SlSt} in the first {Sc}."));

    public static Instruction RoundsBetween => SingleRounds with { Label = EdgingLabels.Between };

    public static Phrase Special(Phrase name, Phrase how) => Phrase.Of($"{new Strong(name)}: {how}");
}
