using Dyepath.Core.Fabrics;
using Dyepath.Core.Yarns;

namespace Dyepath.Core.Planning;

/// <summary>How a piece begins, so that its first stitch has its own colour.</summary>
/// <param name="Chains">Chains that the first row needs.</param>
/// <param name="FirstStitchInChain">Chain from the hook that takes the first stitch.</param>
/// <param name="Companion">Worked in companion yarn; the variegated yarn then joins at the first stitch and the rest says nothing.</param>
/// <param name="KnotSection">Without waste: the section in which the slip knot lies.</param>
/// <param name="KnotInto">Pooling units of yarn between that section's beginning and the knot, [0, section length).</param>
/// <param name="ColourSection">The easy way: begin the chain where this section begins.</param>
/// <param name="MoreChains">
/// The easy way: chains to add until the first stitch's place has come, a part of a chain made a whole one; they are left unworked, and
/// undone later.
/// </param>
public sealed record FoundationPlan(
    int Chains,
    int FirstStitchInChain,
    bool Companion,
    int KnotSection,
    double KnotInto,
    int ColourSection,
    int MoreChains)
{
    /// <summary>Pooling units of yarn in the chains that the first row needs.</summary>
    public required double Yarn { get; init; }
}

/// <summary>Foundation chains (common instruction, several handbooks) and the yarn that they take out of the sequence.</summary>
public static class Foundation
{
    /// <summary>
    /// Chains for a row of N stitches: single crochet N + 1 and into the 2nd; half double N + 2 into the 3rd (N + 1 where the
    /// chain counts); double N + 2 into the 4th where the chain counts, else N + 3. Linen stitch of even N takes N + 2 into the
    /// 4th, the skipped chains being the first space; of odd N, N + 1 into the 2nd. A ring has a chain for every stitch: the
    /// chain that lifts the first round is made after the ring is joined.
    /// </summary>
    /// <param name="inRounds">The chain is joined into a ring.</param>
    public static (int Chains, int FirstStitchInChain) Chains(
        FabricStitch stitch, int stitches, bool turningChainCounts, bool inRounds = false)
    {
        ArgumentNullException.ThrowIfNull(stitch);
        if (inRounds)
            return (stitches, 1);
        if (stitch.StitchesPerUnit == 2 && stitches % 2 == 0)
            return (stitches + 2, 4);
        return (stitches + stitch.TurningChains - (turningChainCounts ? 1 : 0), stitch.TurningChains + 1);
    }

    /// <summary>Yarn of one chain in pooling units.</summary>
    public static double ChainInUnits(FabricStitch stitch)
    {
        ArgumentNullException.ThrowIfNull(stitch);
        return FabricStitch.ChainInSingleCrochet / (stitch.YarnInSingleCrochet * stitch.StitchesPerUnit);
    }

    /// <summary>
    /// Plans the beginning of a piece whose first stitch lies at <paramref name="start"/>. The chains take F·κ units of yarn
    /// before it, so the knot lies at start − F·κ; beginning instead at the last colour change before that place costs the
    /// fewest further chains.
    /// </summary>
    /// <param name="start">Pooling units, any value; taken modulo the sequence.</param>
    public static FoundationPlan Plan(
        ColourRing ring, FabricStitch stitch, int stitches, bool turningChainCounts, double start, bool companion, bool inRounds = false)
    {
        ArgumentNullException.ThrowIfNull(ring);
        var (chains, first) = Chains(stitch, stitches, turningChainCounts, inRounds);
        var chain = ChainInUnits(stitch);
        var (section, into) = ring.Locate(ColourRing.ToMicro(start - chains * chain));
        // Too few chains cannot be mended by a looser one, as too many can by a tighter one. A thousandth of a chain is beyond any hands.
        var more = (int)Math.Ceiling(ColourRing.ToUnits(into) / chain - 1e-3);
        return new FoundationPlan(chains, first, companion, section, ColourRing.ToUnits(into), section, more) { Yarn = chains * chain };
    }
}
