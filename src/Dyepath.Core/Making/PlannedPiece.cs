using System.Collections.Immutable;
using Dyepath.Core.Quantities;

namespace Dyepath.Core.Making;

/// <summary>
/// A piece in the order in which it is worked. Turned or in the round makes no difference to the yarn: a row takes its stitches
/// one after another, then the turn or join takes its cost. The planned colours are those that perfectly even hands get.
/// </summary>
public sealed class PlannedPiece
{
    private const int MostSections = 64;
    private const int MostStitches = 1_000;
    private const int MostRows = 5_000;

    private PlannedPiece(ColourRing ring, ImmutableArray<int> rowStitches, double turnCost, double start)
    {
        Ring = ring;
        RowStitches = rowStitches;
        TurnCost = turnCost;
        Start = start;
        Stitches = rowStitches.Sum();
        Colours = new byte[Stitches];
        WorkEvenly();
    }

    public ImmutableArray<int> RowStitches { get; }

    /// <summary>In all rows together; at most 5,000,000.</summary>
    public int Stitches { get; }

    internal ColourRing Ring { get; }

    /// <summary>Micro-stitches of yarn between two rows.</summary>
    internal double TurnCost { get; }

    /// <summary>Micro-stitches from the ring's origin to the first stitch, in [0, one sequence).</summary>
    internal double Start { get; }

    /// <summary>The planned colour of each stitch, in working order.</summary>
    internal byte[] Colours { get; }

    /// <summary>Stitches worked when a planned section has just ended, within the piece, ascending.</summary>
    internal ImmutableArray<int> SectionEnds { get; private set; }

    internal ImmutableArray<int> SequenceEnds { get; private set; }

    internal ImmutableArray<int> RowEnds { get; private set; }

    /// <summary>Plans a piece; lengths are rounded to the nearest micro-stitch.</summary>
    /// <param name="sectionStitches">Length of each section of the sequence, 1 to 64 of them, each in [0.01, 10,000] stitches.</param>
    /// <param name="colours">A number in [0, 63] for each section, equal for equal colours; empty for all distinct.</param>
    /// <param name="rowStitches">Stitches of each row or round, in [1, 1,000]; 1 to 5,000 rows.</param>
    /// <param name="turnCost">Stitches' worth of yarn that a turn or join takes, in [−10, 10]; 0 in a spiral.</param>
    /// <param name="start">Where in the sequence the first stitch begins, in [−1,000,000, 1,000,000] stitches, modulo the sequence.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value outside its range.</exception>
    /// <exception cref="ArgumentException">Not as many colours as sections.</exception>
    public static PlannedPiece Create(
        ImmutableArray<double> sectionStitches,
        ImmutableArray<int> colours,
        ImmutableArray<int> rowStitches,
        double turnCost = 0,
        double start = 0)
    {
        int sections = Guard.InRange(sectionStitches.Length, 1, MostSections, "sections", nameof(sectionStitches));
        foreach (double length in sectionStitches) Guard.InRange(length, 0.01, 10_000, "stitches", nameof(sectionStitches));
        if (colours.Length != 0 && colours.Length != sections)
            throw new ArgumentException($"{colours.Length} colours for {sections} sections; give one each, or none.", nameof(colours));
        foreach (int colour in colours) Guard.InRange(colour, 0, MostSections - 1, "as the number of a colour", nameof(colours));
        Guard.InRange(rowStitches.Length, 1, MostRows, "rows", nameof(rowStitches));
        foreach (int stitches in rowStitches) Guard.InRange(stitches, 1, MostStitches, "stitches", nameof(rowStitches));
        Guard.InRange(turnCost, -10, 10, "stitches");
        Guard.InRange(start, -1e6, 1e6, "stitches");

        var ring = ColourRing.Join(sectionStitches, colours.Length == 0 ? [.. Enumerable.Range(0, sections)] : colours);
        double fromOrigin = (ColourRing.Micro(start) - ring.Origin) % ring.Sequence;
        if (fromOrigin < 0) fromOrigin += ring.Sequence;
        return new PlannedPiece(ring, rowStitches, ColourRing.Micro(turnCost), fromOrigin);
    }

    /// <summary>As the other, with every row alike.</summary>
    /// <inheritdoc cref="Create(ImmutableArray{double}, ImmutableArray{int}, ImmutableArray{int}, double, double)"/>
    public static PlannedPiece Create(
        ImmutableArray<double> sectionStitches, int stitches, int rows, double turnCost = 0, double start = 0) => Create(
        sectionStitches,
        [],
        [.. Enumerable.Repeat(stitches, Guard.InRange(rows, 1, MostRows, "rows"))],
        turnCost,
        start);

    internal ImmutableArray<int> CheckPoints(CheckHabit check) => check switch
    {
        // One colour shows no phase.
        _ when Ring.Count == 1 => [],
        CheckHabit.Never => [],
        CheckHabit.EveryRow => RowEnds,
        CheckHabit.EverySequence => SequenceEnds,
        CheckHabit.EverySection => SectionEnds,
        _ => throw new ArgumentOutOfRangeException(nameof(check), check, "No such habit."),
    };

    private void WorkEvenly()
    {
        var walk = new YarnWalk(Ring, dyeVariation: 0, lanes: 1);
        walk.Begin(0, Start, default);
        var sectionEnds = ImmutableArray.CreateBuilder<int>();
        var sequenceEnds = ImmutableArray.CreateBuilder<int>();
        var rowEnds = ImmutableArray.CreateBuilder<int>();
        double place = 0;
        int worked = 0;
        long sections = 0, sequences = 0;
        foreach (int stitches in RowStitches)
        {
            for (int i = 0; i < stitches; i++)
            {
                Colours[worked++] = (byte)walk.Work(0, place, place + ColourRing.Stitch);
                place += ColourRing.Stitch;
                long ended = walk.Occurrence(0) + (place == walk.Ends[0] ? 1 : 0);
                if (ended > sections) sectionEnds.Add(worked);
                sections = Math.Max(sections, ended);
                long through = (long)Math.Floor(place / Ring.Sequence);
                if (through > sequences) sequenceEnds.Add(worked);
                sequences = Math.Max(sequences, through);
            }
            rowEnds.Add(worked);
            place += TurnCost;
            walk.Turn(0, place);
        }
        (SectionEnds, SequenceEnds, RowEnds) = (Within(sectionEnds), Within(sequenceEnds), Within(rowEnds));
    }

    /// <summary>A check at the very end corrects nothing.</summary>
    private ImmutableArray<int> Within(ImmutableArray<int>.Builder ends)
    {
        if (ends.Count > 0 && ends[^1] == Stitches) ends.RemoveAt(ends.Count - 1);
        return ends.ToImmutable();
    }
}
