using Dyepath.Core.Limits;
using Dyepath.Core.Planning;
using Dyepath.Core.Yarns;

namespace Dyepath.Core.Fabrics;

/// <summary>How the yarn runs besides the stitch counts. The defaults are single crochet with a turn that takes no yarn.</summary>
public sealed record PathOptions
{
    /// <summary>Of <see cref="TurnCost"/>.</summary>
    public static Bounds TurnCosts { get; } = new(-10, 50, "units");

    /// <summary>A turning chain that counts as a stitch takes some yarn: its turn costs more than this.</summary>
    public const double CountingChainOver = -1;

    /// <summary>Furthest start either way along the yarn, in units.</summary>
    public const double FurthestStart = 1_000_000;

    /// <summary>
    /// τ: extra yarn to turn or join after every row, in units, −10 to 50, rounded to micro-units. A turning chain
    /// that counts as a stitch and takes κ stitches' yarn costs κ − 1. A spiral has none.
    /// </summary>
    public double TurnCost { get; init; }

    /// <summary>Y₀: where along the sequence the first row starts, in units, rounded to micro-units.</summary>
    public double Start { get; init; }

    /// <summary>Stitches in one pooling unit: 1, or 2 in linen stitch.</summary>
    public int StitchesPerUnit { get; init; } = 1;

    /// <summary>
    /// The first row runs from its left-hand edge, as odd rows do otherwise: a part that is joined on above another. In linen stitch
    /// it is then drawn as an odd row. Says nothing of the way in rounds that are not turned.
    /// </summary>
    public bool FirstRowBackwards { get; init; }

    /// <summary>
    /// The turning chain is the row's first stitch. With κ = 1 + τ it lies along [Y_r − τ, Y_r + 1), the rest of the
    /// row at whole steps from Y_r + 1; needs τ over −1 and one stitch a unit. The first row's own chains are taken likewise.
    /// </summary>
    public bool TurningChainCounts { get; init; }

    /// <summary>Whether a turning chain that counts would be left no yarn by this turn cost, once rounded.</summary>
    /// <param name="turnCost">In units.</param>
    public static bool TakesNoChain(double turnCost) => ColourRing.ToMicro(turnCost) <= ColourRing.ToMicro(CountingChainOver);

    /// <summary>Whether a turn takes back the whole row before it, once rounded.</summary>
    /// <param name="stitches">Of the row.</param>
    /// <param name="turnCost">In units.</param>
    public bool TakesBack(int stitches, double turnCost) =>
        stitches * (ColourRing.Unit / StitchesPerUnit) + ColourRing.ToMicro(turnCost) <= 0;
}
