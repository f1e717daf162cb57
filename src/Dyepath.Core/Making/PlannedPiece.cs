using System.Collections.Immutable;
using Dyepath.Core.Fabrics;
using Dyepath.Core.Garments;
using Dyepath.Core.Quantities;
using Dyepath.Core.Yarns;

namespace Dyepath.Core.Making;

/// <summary>
/// A piece in the order in which it is worked. Turned or in the round makes no difference to the yarn: a row takes its stitches
/// one after another, then the turn or join takes its cost. The planned colours are those that perfectly even hands get.
/// </summary>
public sealed class PlannedPiece
{
    private PlannedPiece(JoinedRing ring, ImmutableArray<int> rowStitches, double turnCost, double start)
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

    internal JoinedRing Ring { get; }

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

    /// <summary>A pooled piece of a garment; in linen stitch in pooling units, half a unit at a row's end counted as one.</summary>
    /// <exception cref="ArgumentException">The piece is plain.</exception>
    public static PlannedPiece Of(Plan plan, PiecePlan piece)
    {
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(piece);
        if (!piece.Pooled)
            throw new ArgumentException($"The {piece.Name} is worked in one colour.", nameof(piece));
        var perUnit = plan.Project.Fabric.Stitch.StitchesPerUnit;
        var rows = Enumerable.Range(0, piece.Rows).Select(r => (piece.RowStitches[r % piece.RowStitches.Length] + perUnit - 1) / perUnit);
        return Create(plan.Ring, [.. rows], piece.Working == Working.Spiral ? 0 : piece.TurnCost, piece.Start);
    }

    /// <summary>Plans a piece.</summary>
    /// <param name="sequence">Its sections at least 0.01 stitches each.</param>
    /// <param name="rowStitches">Stitches of each row or round, in [1, 1,000]; 1 to 5,000 rows.</param>
    /// <param name="turnCost">Stitches' worth of yarn that a turn or join takes, in [−10, 50]; 0 in a spiral.</param>
    /// <param name="start">Where in the sequence the first stitch begins, in stitches, in [−1,000,000, 1,000,000]; taken modulo the sequence.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value outside its range.</exception>
    public static PlannedPiece Create(ColourRing sequence, ImmutableArray<int> rowStitches, double turnCost = 0, double start = 0)
    {
        ArgumentNullException.ThrowIfNull(sequence);
        Guard.InRange(ColourRing.ToUnits(sequence.Sections.Min()), ColourRing.ShortestSection, ColourRing.LongestSequence, "stitches", nameof(sequence));
        Guard.InRange(rowStitches.Length, 1, FabricPath.MostRows, "rows", nameof(rowStitches));
        foreach (int stitches in rowStitches) Guard.InRange(stitches, 1, FabricPath.MostStitches, "stitches", nameof(rowStitches));
        PathOptions.TurnCosts.Check(turnCost);
        Guard.InRange(start, -PathOptions.FurthestStart, PathOptions.FurthestStart, "stitches");

        var ring = JoinedRing.Join(sequence);
        double fromOrigin = (JoinedRing.Micro(start) - ring.Origin) % ring.Sequence;
        if (fromOrigin < 0) fromOrigin += ring.Sequence;
        return new PlannedPiece(ring, rowStitches, JoinedRing.Micro(turnCost), fromOrigin);
    }

    /// <summary>Stitches worked when a row begins; for the row after the last one, all of them.</summary>
    public int StitchesBefore(int row)
    {
        Guard.InRange(row, 0, RowStitches.Length, "rows");
        int stitches = 0;
        for (int r = 0; r < row; r++) stitches += RowStitches[r];
        return stitches;
    }

    /// <summary>Planned colour of a stitch, as in <see cref="ColourRing.Colours"/>.</summary>
    /// <param name="stitch">From 0, in working order.</param>
    public int ColourAt(int stitch) => Colours[Guard.InRange(stitch, 0, Stitches - 1, "stitches")];

    /// <summary>The same yarn from the same start in other rows, in the same ranges.</summary>
    internal PlannedPiece WithRows(ImmutableArray<int> rowStitches) => new(Ring, rowStitches, TurnCost, Start);

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
                Colours[worked++] = (byte)walk.Work(0, place, place + JoinedRing.Stitch);
                place += JoinedRing.Stitch;
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
