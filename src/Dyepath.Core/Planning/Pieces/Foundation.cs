using System.Collections.Immutable;
using Dyepath.Core.Fabrics;
using Dyepath.Core.Yarns;

namespace Dyepath.Core.Planning;

/// <summary>How a piece begins, so that its first stitch has its own colour.</summary>
/// <param name="Chains">Chains that the first row needs.</param>
/// <param name="FirstStitchInChain">Chain from the hook that takes the first stitch.</param>
/// <param name="Companion">Worked in companion yarn; the variegated yarn then joins at the first stitch and the rest says nothing.</param>
/// <param name="KnotSection">Without waste: the section in which the slip knot lies.</param>
/// <param name="KnotInto">
/// Yarn between that section's beginning and the knot, in units of the mean yarn per pooling unit; less than the section as it is dyed.
/// </param>
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
    /// before it, whatever colours it has: so it is gone back along the yarn as it is dyed, and the knot lies F·κ before the start.
    /// Beginning instead at the last colour change before that place costs the fewest further chains.
    /// </summary>
    /// <param name="dyed">From <see cref="Measuring.ColourSequence.Dyed"/>.</param>
    /// <param name="start">Pooling units, any value; taken modulo the sequence.</param>
    public static FoundationPlan Plan(
        ColourRing ring, ImmutableArray<double> dyed, FabricStitch stitch, int stitches, bool turningChainCounts, double start,
        bool inRounds = false)
    {
        ArgumentNullException.ThrowIfNull(ring);
        var (chains, first) = Chains(stitch, stitches, turningChainCounts, inRounds);
        var chain = ChainInUnits(stitch);
        var (begins, worked) = ring.Locate(ColourRing.ToMicro(start));
        var place = dyed.Take(begins).Sum() + dyed[begins] * worked / ring.Sections[begins] - chains * chain;
        var (section, into) = Locate(dyed, place);
        // Too few chains cannot be mended by a looser one, as too many can by a tighter one. A thousandth of a chain is beyond any hands.
        var more = (int)Math.Ceiling(into / chain - 1e-3);
        return new FoundationPlan(chains, first, false, section, into, section, more) { Yarn = chains * chain };
    }

    /// <summary>The section of a place along the yarn, and how far into it; to a millionth.</summary>
    private static (int Section, double Into) Locate(ImmutableArray<double> dyed, double place)
    {
        var all = dyed.Sum();
        var into = Math.Round(place - all * Math.Floor(place / all), 6);
        for (var section = 0; section < dyed.Length; section++)
        {
            if (into < dyed[section] - 5e-7)
                return (section, into);
            into = Math.Max(0, into - dyed[section]);
        }
        return (0, 0);
    }
}
