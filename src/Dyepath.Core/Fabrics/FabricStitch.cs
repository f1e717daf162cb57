using System.Collections.Immutable;

namespace Dyepath.Core.Fabrics;

/// <summary>
/// A stitch that a fabric is made of. Names are US; UK names come from the terms table. Proportions are nominal and
/// serve only where the maker's swatch is silent.
/// </summary>
/// <param name="Id">How the project document names it.</param>
/// <param name="Name">US name.</param>
/// <param name="Abbreviation">US abbreviation.</param>
/// <param name="TurningChains">Chains worked to turn (common instruction, several handbooks).</param>
/// <param name="FirstStitchInChain">Which chain from the hook takes the first stitch of the first row.</param>
/// <param name="HeightOverWidth">Row height over stitch width (means of published gauges).</param>
/// <param name="YarnInSingleCrochet">Yarn of one stitch over that of one single crochet (one measured strip, ±20 %).</param>
public sealed record FabricStitch(
    string Id,
    string Name,
    string Abbreviation,
    int TurningChains,
    int FirstStitchInChain,
    double HeightOverWidth,
    double YarnInSingleCrochet)
{
    /// <summary>Whether the turning chain counts as the row's first stitch unless the pattern says otherwise.</summary>
    public bool TurningChainCounts { get; init; }

    /// <summary>Stitches in one pooling unit: 1, or 2 in linen stitch.</summary>
    public int StitchesPerUnit { get; init; } = 1;

    /// <summary>Yarn of one chain over that of one single crochet: 25.5 in against 53 in for a 5 in strip (one measurement).</summary>
    public const double ChainInSingleCrochet = 25.5 / 53;

    /// <summary>US term: double crochet in the UK.</summary>
    public static FabricStitch SingleCrochet { get; } =
        new("sc", "single crochet", "sc", 1, 2, 0.9, 1);

    /// <summary>US term: half treble crochet in the UK.</summary>
    public static FabricStitch HalfDoubleCrochet { get; } =
        new("hdc", "half double crochet", "hdc", 2, 3, 1.3, 78.5 / 53);

    /// <summary>US term: treble crochet in the UK.</summary>
    public static FabricStitch DoubleCrochet { get; } =
        new("dc", "double crochet", "dc", 3, 4, 1.65, 102.0 / 53) { TurningChainCounts = true };

    /// <summary>
    /// Single crochet and chain 1 in turn, each single crochet worked into the chain space below; a unit is two stitches wide.
    /// </summary>
    public static FabricStitch Linen { get; } =
        new("linen", "linen stitch", "linen st", 1, 2, 0.9, (1 + ChainInSingleCrochet) / 2) { StitchesPerUnit = 2 };

    /// <summary>Every stitch that a document can name.</summary>
    public static ImmutableArray<FabricStitch> All { get; } = [SingleCrochet, HalfDoubleCrochet, DoubleCrochet, Linen];

    /// <summary>Yarn of the turning chain, beyond what it saves, in pooling units, where the maker has measured nothing.</summary>
    /// <remarks>
    /// A chain that counts as a stitch costs its own yarn less the stitch it stands for; one that does not costs
    /// itself, a little of it absorbed in the turn (0.94 of it: 0.45 of a single crochet for chain 1).
    /// </remarks>
    public double NominalTurnCost
    {
        get
        {
            var chains = TurningChains * ChainInSingleCrochet / (YarnInSingleCrochet * StitchesPerUnit);
            return TurningChainCounts ? chains - 1 : Math.Round(chains * 0.94, 2);
        }
    }
}
