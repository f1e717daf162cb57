using System.Collections.Immutable;
using Dyepath.Core.Fabrics;
using Dyepath.Core.Limits;
using Dyepath.Core.Planning;
using Dyepath.Core.Quantities;

namespace Dyepath.Core.Swatches;

/// <summary>Whether the maker steers each colour to a whole number of stitches, or lets the colours fall.</summary>
public enum ColourKeeping
{
    /// <summary>Each section takes exactly its intended stitches; hand tension is adjusted to make it so.</summary>
    Counted,

    /// <summary>Even tension; the colours fall where they fall.</summary>
    Free,
}

/// <summary>Yarn that a known number of stitches took, by length or by weight.</summary>
/// <param name="Stitches">Stitches unravelled or weighed; at least 1.</param>
/// <param name="Length">Of the relaxed yarn; missing where it was weighed alone.</param>
/// <param name="Mass">Missing where it was measured alone.</param>
public sealed record YarnUsed(int Stitches, Length? Length = null, Mass? Mass = null);

/// <summary>The maker's hands, where known: standard deviation of yarn per stitch and its correlation length in stitches.</summary>
/// <param name="Spread">Standard deviation of the yarn in one stitch over its mean.</param>
/// <param name="Memory">Stitches after which the correlation has fallen to 1/e.</param>
public sealed record HandSteadiness(double Spread, double Memory);

/// <summary>A measured swatch: everything that changes together when the hook changes.</summary>
/// <param name="HookMillimetres">Diameter of the hook.</param>
/// <param name="Worked">As it comes off the hook.</param>
/// <param name="Blocked">Washed and dried.</param>
/// <param name="Hung">After hanging, rows across the pull.</param>
/// <param name="YarnUsed">Unravelled rows or weighed pieces.</param>
public sealed record Swatch(
    double HookMillimetres,
    Gauge Worked,
    Gauge? Blocked,
    Gauge? Hung,
    ImmutableArray<YarnUsed> YarnUsed)
{
    /// <summary>Diameters, in millimetres.</summary>
    public static Bounds Hooks { get; } = new(0.5, 50, "mm");
}

/// <summary>The fabric that the pattern is worked in.</summary>
/// <param name="Stitch">What the fabric is made of.</param>
/// <param name="Swatch">With the hook that the pattern names.</param>
/// <param name="OtherSwatch">With another hook, so that hooks in between may be interpolated.</param>
/// <param name="Keeping">Counted, unless the pattern says otherwise.</param>
/// <param name="SectionStitches">Counted work: pooling units intended for each section, in order; missing, the estimate rounded.</param>
/// <param name="TurnCost">
/// Yarn taken to turn or join, in pooling units; missing, 0 in counted work (the turn is absorbed), else the stitch's nominal.
/// </param>
/// <param name="TurningChainCounts">Overrides the stitch's own habit.</param>
public sealed record FabricChoice(
    FabricStitch Stitch,
    Swatch Swatch,
    Swatch? OtherSwatch = null,
    ColourKeeping Keeping = ColourKeeping.Counted,
    ImmutableArray<int>? SectionStitches = null,
    double? TurnCost = null,
    bool? TurningChainCounts = null)
{
    /// <summary>The maker's own figures; missing, the stated prior.</summary>
    public HandSteadiness? Hands { get; init; }

    /// <summary>Of <see cref="SectionStitches"/>.</summary>
    public static CountBounds SectionCounts { get; } = new(1, 1_000, "stitches");

    /// <summary>Single crochet as the edgings are worked, with their hook and yarn; missing where it was not measured.</summary>
    public Gauge? Edging { get; init; }

    /// <summary>Whether the turning chain stands for the row's first stitch; in linen stitch it never stands for a whole unit.</summary>
    public bool ChainCountsAsStitch => ChainCounts(Stitch, TurningChainCounts);

    /// <summary>How this fabric's yarn runs through a piece.</summary>
    /// <param name="turnCost">Of a turn or join, in pooling units.</param>
    /// <param name="start">Where along the sequence the piece begins, in pooling units.</param>
    public PathOptions Path(double turnCost, double start = 0) => new()
    {
        TurnCost = turnCost,
        Start = start,
        StitchesPerUnit = Stitch.StitchesPerUnit,
        TurningChainCounts = ChainCountsAsStitch,
    };

    /// <inheritdoc cref="ChainCountsAsStitch"/>
    public static bool ChainCounts(FabricStitch stitch, bool? said)
    {
        ArgumentNullException.ThrowIfNull(stitch);
        return stitch.StitchesPerUnit == 1 && (said ?? stitch.TurningChainCounts);
    }
}
