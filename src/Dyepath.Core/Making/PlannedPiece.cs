using System.Collections.Immutable;
using Dyepath.Core.Fabrics;
using Dyepath.Core.Planning;
using Dyepath.Core.Quantities;
using Dyepath.Core.Yarns;

namespace Dyepath.Core.Making;

/// <summary>
/// A piece in the order in which it is worked. Turned or in the round makes no difference to the yarn: a row takes its stitches
/// one after another, then the turn or join takes its cost. The planned colours are those that perfectly even hands get.
/// </summary>
public sealed class PlannedPiece
{
    /// <summary>Micro-units of one stitch, as floating numbers, which are exact up to 9·10¹⁵.</summary>
    internal const double Stitch = ColourRing.Unit;

    private readonly ColourRing _sequence;
    private readonly RingReader _reader;
    private readonly long _start;
    private readonly long[] _rowPlaces;

    private PlannedPiece(ColourRing sequence, ImmutableArray<int> rowStitches, ImmutableArray<long> turns, long start)
    {
        (_sequence, _reader, _start) = (sequence, new RingReader(sequence), start);
        Ring = MergedRing.Of(sequence);
        Period = ColourPeriod.Of(sequence)?.Micro ?? sequence.Total;
        (RowStitches, Turns) = (rowStitches, turns);
        Start = ColourRing.Modulo(start - Ring.Origin, Ring.Total);
        _rowPlaces = new long[rowStitches.Length];
        for (int row = 1; row < _rowPlaces.Length; row++)
            _rowPlaces[row] = _rowPlaces[row - 1] + rowStitches[row - 1] * ColourRing.Unit + turns[row - 1];
        Stitches = rowStitches.Sum();
        Colours = new byte[Stitches];
        WorkEvenly();
    }

    /// <summary>Stitches of each row, in pooling units.</summary>
    public ImmutableArray<int> RowStitches { get; }

    /// <summary>In all rows together; at most 5,000,000.</summary>
    public int Stitches { get; }

    /// <summary>Micro-units of yarn after each row: its turn or join, less what a last stitch of half a unit leaves of the unit.</summary>
    public ImmutableArray<long> Turns { get; }

    internal MergedRing Ring { get; }

    /// <summary>Phases that differ by this many micro-units look alike; the whole sequence for one colour.</summary>
    internal double Period { get; }

    /// <summary>Micro-units from the ring's origin to the first stitch, in [0, one sequence).</summary>
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
        var (ring, stretches) = (plan.Sequence.Ring, PieceFabric.Stretches(plan, piece));
        if (stretches.Length == 1)
            return Of(ring, stretches[0].Path);
        // Where the yarn is cut, what lies before the next beginning is one more turn.
        var turns = ImmutableArray.CreateBuilder<long>();
        for (var i = 0; i < stretches.Length; i++)
        {
            var path = stretches[i].Path;
            turns.AddRange(Turning(path));
            if (i + 1 < stretches.Length)
                turns[^1] = ColourRing.Modulo(
                    stretches[i + 1].Path.RowStart(0) - path.RowStart(path.Rows - 1) - path.Cells(path.Rows - 1) * ColourRing.Unit,
                    ring.Total);
        }
        return new PlannedPiece(
            ring, [.. stretches.SelectMany(s => Enumerable.Range(0, s.Path.Rows).Select(s.Path.Cells))], turns.ToImmutable(),
            stretches[0].Path.RowStart(0));
    }

    private static IEnumerable<long> Turning(FabricPath path) =>
        Enumerable.Range(0, path.Rows).Select(r => path.RowStart(r + 1) - path.RowStart(r) - path.Cells(r) * ColourRing.Unit);

    /// <summary>
    /// A path in working order, in pooling units: a last one of half a unit counts as one, and a turning chain that counts as a stitch as
    /// one stitch after its turn.
    /// </summary>
    public static PlannedPiece Of(ColourRing sequence, FabricPath path)
    {
        ArgumentNullException.ThrowIfNull(sequence);
        ArgumentNullException.ThrowIfNull(path);
        var rows = Enumerable.Range(0, path.Rows);
        return new PlannedPiece(
            sequence, [.. rows.Select(path.Cells)],
            [.. Turning(path)], path.RowStart(0));
    }

    /// <summary>Plans a piece.</summary>
    /// <param name="sequence">Its sections at least 0.01 stitches each.</param>
    /// <param name="rowStitches">Stitches of each row or round, in [1, 1,000]; 1 to 5,000 rows.</param>
    /// <param name="turnCost">Stitches' worth of yarn that a turn or join takes, in [−10, 50]; 0 in a spiral.</param>
    /// <param name="start">
    /// Where in the sequence the first stitch begins, in stitches, in [−1,000,000, 1,000,000]; taken modulo the sequence.
    /// </param>
    /// <exception cref="ArgumentOutOfRangeException">A value outside its range.</exception>
    public static PlannedPiece Create(ColourRing sequence, ImmutableArray<int> rowStitches, double turnCost = 0, double start = 0)
    {
        PathOptions.TurnCosts.Check(turnCost);
        return Create(sequence, rowStitches, [.. Enumerable.Repeat(ColourRing.ToMicro(turnCost), rowStitches.Length)], start);
    }

    /// <summary>Plans a piece whose rows end each in its own way.</summary>
    /// <param name="turns">See <see cref="Turns"/>; one a row.</param>
    /// <inheritdoc cref="Create(ColourRing, ImmutableArray{int}, double, double)"/>
    /// <exception cref="ArgumentException">Not one turn a row.</exception>
    public static PlannedPiece Create(ColourRing sequence, ImmutableArray<int> rowStitches, ImmutableArray<long> turns, double start)
    {
        ArgumentNullException.ThrowIfNull(sequence);
        Guard.InRange(
            ColourRing.ToUnits(sequence.Sections.Min()), ColourRing.ShortestSection, ColourRing.LongestSequence, "stitches", nameof(sequence));
        Guard.InRange(rowStitches.Length, 1, FabricPath.MostRows, "rows", nameof(rowStitches));
        foreach (int stitches in rowStitches) Guard.InRange(stitches, 1, FabricPath.MostStitches, "stitches", nameof(rowStitches));
        if (turns.Length != rowStitches.Length)
            throw new ArgumentException($"{rowStitches.Length} rows need as many turns, not {turns.Length}.", nameof(turns));
        Guard.InRange(start, -PathOptions.FurthestStart, PathOptions.FurthestStart, "stitches");
        return new PlannedPiece(sequence, rowStitches, turns, ColourRing.ToMicro(start));
    }

    /// <summary>Stitches worked when a row begins; for the row after the last one, all of them.</summary>
    public int StitchesBefore(int row)
    {
        Guard.InRange(row, 0, RowStitches.Length, "rows");
        int stitches = 0;
        for (int r = 0; r < row; r++) stitches += RowStitches[r];
        return stitches;
    }

    /// <summary>The row, from 0, that a stitch is in; of those after the last one, the last row.</summary>
    /// <param name="stitch">From 0, in working order.</param>
    public int RowOf(int stitch)
    {
        var (row, end) = (0, RowStitches[0]);
        while (end <= stitch && row + 1 < RowStitches.Length) end += RowStitches[++row];
        return row;
    }

    /// <summary>Micro-units from the piece's first stitch to a row's.</summary>
    internal double RowPlace(int row) => _rowPlaces[row];

    /// <summary>Micro-units from the piece's first stitch to that which follows so many, in this row.</summary>
    internal double PlaceOf(int stitches, int row) =>
        row == RowStitches.Length ? RowPlace(row - 1) + RowStitches[^1] * Stitch + Turns[^1]
            : RowPlace(row) + (stitches - StitchesBefore(row)) * Stitch;

    /// <summary>The colour of one stitch's yarn from a place on, in micro-units from the piece's first stitch.</summary>
    internal int ColourAtPlace(double place) =>
        _sequence.Colours[_reader.Show(new YarnSpan(_start + (long)place, ColourRing.Unit)).Section];

    /// <summary>Planned colour of a stitch, as in <see cref="ColourRing.Colours"/>.</summary>
    /// <param name="stitch">From 0, in working order.</param>
    public int ColourAt(int stitch) => Colours[Guard.InRange(stitch, 0, Stitches - 1, "stitches")];

    /// <summary>The same yarn from the same start in other rows, in the same ranges.</summary>
    internal PlannedPiece WithRows(ImmutableArray<int> rowStitches) =>
        new(_sequence, rowStitches, [.. Enumerable.Repeat(Turns[0], rowStitches.Length)], _start);

    internal ImmutableArray<int> CheckPoints(CheckHabit check) => check switch
    {
        // One colour shows no phase.
        _ when Ring.Stretches.Length == 1 => [],
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
        for (int row = 0; row < RowStitches.Length; row++)
        {
            for (int i = 0; i < RowStitches[row]; i++)
            {
                Colours[worked++] = (byte)walk.Work(0, place, place + Stitch);
                place += Stitch;
                long ended = walk.Occurrence(0) + (place == walk.Ends[0] ? 1 : 0);
                if (ended > sections) sectionEnds.Add(worked);
                sections = Math.Max(sections, ended);
                long through = (long)Math.Floor(place / Ring.Total);
                if (through > sequences) sequenceEnds.Add(worked);
                sequences = Math.Max(sequences, through);
            }
            rowEnds.Add(worked);
            place += Turns[row];
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
