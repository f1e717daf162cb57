using System.Collections.Immutable;
using Dyepath.Core.Fabrics;
using Dyepath.Core.Quantities;

namespace Dyepath.Core.Motifs;

/// <summary>What a count asks of the maker beyond working it.</summary>
[Flags]
public enum CountTask
{
    /// <summary>Rows of one count, turned as the fabric's turns are.</summary>
    None = 0,

    /// <summary>One stitch more in every other row, worked into its edge, and left out again in the next.</summary>
    ExtraEdgeStitch = 1,

    /// <summary>A turn that takes half a stitch's yarn: a chain 1 left loose rather than drawn in.</summary>
    HalfStitchTurn = 2,
}

/// <summary>A stitch count and what it makes.</summary>
/// <param name="Stitches">N, the fewer where two alternate.</param>
/// <param name="RowStitches">The counts in turn: one, or N and N + 1.</param>
/// <param name="TurnCost">τ in units.</param>
/// <param name="Task">Beyond working the stitches.</param>
/// <param name="HalfRepeats">
/// Turned: the half periods nearest to a row with its turn, so that it is that many half repeats plus the lean. Rounds: whole periods.
/// </param>
/// <param name="Reading">The motif that it makes, and how clearly.</param>
/// <param name="Forgiveness">Null only where the ring has no line to lose.</param>
public sealed record CountFinding(
    int Stitches,
    ImmutableArray<int> RowStitches,
    double TurnCost,
    CountTask Task,
    long HalfRepeats,
    MotifReading Reading,
    Forgiveness? Forgiveness)
{
    /// <summary>Of the fewer stitches.</summary>
    public required Length Width { get; init; }

    /// <summary>Units by which the colours move with every row, whichever way; 0 where they do not.</summary>
    public double Lean => Math.Abs(Reading.Lean?.UnitsPerRow ?? 0);
}

/// <summary>A count near to making the motif.</summary>
/// <param name="Finding">What the count makes instead.</param>
/// <param name="TurnChange">Units of yarn more or less at each turn that would make it the motif; null where none would.</param>
/// <param name="YarnChange">Relative change of yarn per stitch that would make it the motif; null where none within reach would.</param>
public sealed record NearCount(CountFinding Finding, double? TurnChange, double? YarnChange);

/// <summary>What would make an infeasible wish feasible.</summary>
public abstract record CountAdvice
{
    private CountAdvice()
    {
    }

    /// <summary>What the count that it names asks of the maker besides.</summary>
    public CountTask Task { get; init; }

    /// <summary>Another turn cost, in units, for one of the counts.</summary>
    /// <param name="Stitches">The count that would then make the motif.</param>
    /// <param name="TurnCost">Yarn that every turn would have to take, in units.</param>
    public sealed record Turn(int Stitches, double TurnCost) : CountAdvice;

    /// <summary>
    /// Another hook: yarn per stitch changed by this much, so that the sequence takes so many units, for one of the counts. Gauge and
    /// size change with it.
    /// </summary>
    /// <param name="Stitches">The count that would then make the motif.</param>
    /// <param name="YarnChange">Of the yarn per stitch, relative; more than 0 is a larger hook.</param>
    /// <param name="SequenceUnits">What the whole sequence would then come to.</param>
    public sealed record Hook(int Stitches, double YarnChange, double SequenceUnits) : CountAdvice;

    /// <summary>Another motif, which so many of the counts make.</summary>
    /// <param name="Kind">What they make instead.</param>
    /// <param name="Counts">How many of the range make it.</param>
    /// <param name="Example">Stitches of one of them.</param>
    public sealed record Motif(MotifKind Kind, int Counts, int Example) : CountAdvice;

    /// <summary>Another way of working, in which so many of the counts make the motif.</summary>
    /// <param name="Working">Another than was asked for.</param>
    /// <param name="Counts">How many of the range then make the motif.</param>
    /// <param name="Example">Stitches of one of them.</param>
    public sealed record Way(Working Working, int Counts, int Example) : CountAdvice;

    /// <summary>A count outside the range.</summary>
    /// <param name="Stitches">The nearest one that makes the motif.</param>
    public sealed record Range(int Stitches) : CountAdvice;
}

/// <summary>The counts of a range that make one motif.</summary>
/// <param name="Kind">The motif that they make.</param>
/// <param name="Counts">How many of the range make it.</param>
/// <param name="Example">The clearest of them.</param>
public sealed record MotifShare(MotifKind Kind, int Counts, CountFinding Example);

/// <summary>The answer to a search for counts.</summary>
/// <param name="Counts">Every count in the range that makes the motif.</param>
/// <param name="Nearest">Where there is none: the counts nearest to it, nearest first.</param>
/// <param name="Advice">Where there is none: what would make it feasible, the least change first within each kind.</param>
public sealed record CountSearch(
    ImmutableArray<CountFinding> Counts, ImmutableArray<NearCount> Nearest, ImmutableArray<CountAdvice> Advice);
