using Dyepath.Core.Measuring;
using Dyepath.Core.Planning;
using Dyepath.Core.Quantities;

namespace Dyepath.Core.Adapting;

/// <summary>Every threshold by which a pattern is judged for a reader's own yarn (docs/adapting.md lists them).</summary>
public static class AdaptLimits
{
    /// <summary>
    /// The most that hands hold for good against their own tension, of the yarn per stitch: what they can do, less what they need for
    /// corrections.
    /// </summary>
    public const double Held = MadeWell.HeldForGood * MadeWell.LargestCorrection;

    /// <summary>What hands differ by from one day to the next, of the yarn per stitch: nothing is said of less.</summary>
    public const double Usual = MadeWell.LargestBias;

    /// <summary>
    /// Two lengths of yarn that differ by less are taken for the same: each is stretched or crimped by
    /// <see cref="MeasuringErrors.Stretch"/>, and of two that is half as much again.
    /// </summary>
    public static double SameYarn { get; } = 1.5 * MeasuringErrors.Default.Stretch;

    /// <summary>
    /// No two makers with hooks for one yarn differ by more of the yarn per stitch (an assumption without a source): beyond it is another
    /// yarn.
    /// </summary>
    public const double HandsApart = 0.25;

    /// <summary>A finished measure that is off by no more is as the pattern has it.</summary>
    public static Length SameSize { get; } = FitError.Poor;

    /// <summary>
    /// A garment of which a measure is farther off than this from what it asks for is not the one that was asked for (an assumption
    /// without a source).
    /// </summary>
    public static Length LargestMiss { get; } = 2 * FitError.Poor;

    /// <summary>How far another hook may depart from the reader's own, in millimetres.</summary>
    public const double HookReach = 1;

    /// <summary>
    /// A piece that comes out well for fewer makers than this share is not offered, unless the pattern's own does for hardly more (an
    /// assumption without a source).
    /// </summary>
    public const double FewestMakers = 0.5;

    /// <summary>
    /// Of the makers of whom the pattern's piece comes out well, the share that may be lost (an assumption without a source).
    /// </summary>
    public const double LostMakers = 0.1;

    /// <summary>
    /// Another garment is named, and the pattern's numbers are kept by hands that depart from them, where the piece comes out well for this
    /// share of makers (an assumption without a source).
    /// </summary>
    public const double WellMade = 0.8;

    /// <summary>The most other garments that are named.</summary>
    public const int MostOffered = 5;

    /// <summary>A motif that is less clear than this share of the clearest that the yarn can make is hardly seen.</summary>
    public const double Readable = PlanFindings.FaintMotif;

    /// <summary>What planning another garment may take, in steps of <see cref="Limits.Effort"/>: about a tenth of a second.</summary>
    internal const long EffortOfOther = 10_000_000;
}
