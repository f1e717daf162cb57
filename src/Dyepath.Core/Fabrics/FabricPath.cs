using System.Collections.Immutable;
using Dyepath.Core.Planning;
using Dyepath.Core.Quantities;
using Dyepath.Core.Yarns;

namespace Dyepath.Core.Fabrics;

/// <summary>
/// Where every stitch lies along the yarn. Row r starts at Y_r and Y_{r+1} = Y_r + N_r + τ_r, all in whole micro-units.
/// Columns are counted leftwards from the right-hand edge of the first row.
/// </summary>
/// <remarks>
/// Beyond its rows and edges the piece goes on as it began and as it ended: what a seam asks for, where stitches would stand if the
/// fabric went on.
/// A cell is one pooling unit. In linen stitch a row of N stitches has ⌈N/2⌉ cells; with N odd the cell worked last is half
/// a unit of yarn, and in a row that runs backwards that half lies at the right-hand edge, cell c &gt; 0 at [c − ½, c + ½).
/// </remarks>
public sealed class FabricPath
{
    /// <summary>In a row.</summary>
    public const int MostStitches = 1_000;

    /// <summary>In a piece.</summary>
    public const int MostRows = 5_000;

    private readonly long[] _starts;

    /// <summary>1 where the first row is worked the way in which odd rows are otherwise.</summary>
    private readonly int _odd;

    private FabricPath(Working working, ImmutableArray<int> stitches, RowPlaces places, PathOptions options)
    {
        Working = working;
        RowStitches = stitches;
        FirstColumns = places.FirstColumns;
        Turns = places.Turns;
        Pulled = places.Pulled;
        StitchesPerUnit = options.StitchesPerUnit;
        TurningChainCounts = options.TurningChainCounts;
        _odd = options.FirstRowBackwards ? 1 : 0;
        _starts = new long[stitches.Length];
        _starts[0] = ColourRing.ToMicro(options.Start);
        for (var row = 1; row < _starts.Length; row++)
            _starts[row] = checked(_starts[row - 1] + RowYarn(row - 1) + Turns[row - 1] + Pulled[row]);
        Advance = SteadyAdvance();
    }

    /// <summary>Turned, or how rounds follow each other.</summary>
    public Working Working { get; }

    /// <summary>N_r in stitches.</summary>
    public ImmutableArray<int> RowStitches { get; }

    /// <summary>o_r: the column of each row's rightmost cell.</summary>
    public ImmutableArray<int> FirstColumns { get; }

    /// <summary>τ_r in micro-units.</summary>
    public ImmutableArray<long> Turns { get; }

    /// <summary>
    /// Micro-units of yarn drawn after the turn and before each row's first stitch, through slip stitches along the row below.
    /// </summary>
    public ImmutableArray<long> Pulled { get; }

    /// <summary>1, or 2 in linen stitch.</summary>
    public int StitchesPerUnit { get; }

    /// <summary>Whether the turning chain stands for the row's first stitch.</summary>
    public bool TurningChainCounts { get; }

    /// <summary>1 to <see cref="MostRows"/>.</summary>
    public int Rows => RowStitches.Length;

    /// <summary>Whether every other row runs backwards through the columns.</summary>
    public bool IsTurned => Working is Working.Turned or Working.RoundsTurned;

    /// <summary>What repeats from row to row; null where counts, columns or turns change along the piece.</summary>
    public RowAdvance? Advance { get; }

    /// <param name="stitches">N, 1 to 1,000 stitches in every row.</param>
    /// <param name="rows">1 to 5,000.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value outside its range.</exception>
    /// <exception cref="ArgumentException">
    /// A turn that takes back the whole row, a spiral with a turn, or a counting chain of no yarn.
    /// </exception>
    public static FabricPath Constant(Working working, int stitches, int rows, PathOptions? options = null)
    {
        Guard.InRange(rows, 1, MostRows, "rows");
        return RowByRow(working, [.. Enumerable.Repeat(stitches, rows)], options);
    }

    /// <summary>
    /// N and N + 1 stitches in turn: the extra one is worked into the edge where the even-numbered row ended, so it
    /// stands in a column of its own at the left, N, in turned work.
    /// </summary>
    /// <param name="stitches">N, 1 to 999.</param>
    /// <inheritdoc cref="Constant"/>
    public static FabricPath Alternating(Working working, int stitches, int rows, PathOptions? options = null)
    {
        Guard.InRange(stitches, 1, MostStitches - 1, "stitches");
        Guard.InRange(rows, 1, MostRows, "rows");
        return RowByRow(working, [.. Enumerable.Range(0, rows).Select(r => stitches + (r & 1))], options);
    }

    /// <summary>Rows of one count, or of two that alternate: N and N + 1.</summary>
    /// <param name="rowStitches">One number, or two.</param>
    /// <exception cref="ArgumentException">Not one count or two that alternate by a stitch, and as <see cref="Constant"/>.</exception>
    /// <inheritdoc cref="Constant"/>
    public static FabricPath Steady(Working working, ImmutableArray<int> rowStitches, int rows, PathOptions? options = null) =>
        rowStitches switch
        {
            [var stitches] => Constant(working, stitches, rows, options),
            [var fewer, var more] when more == fewer + 1 => Alternating(working, fewer, rows, options),
            _ => throw new ArgumentException("A steady piece has one count, or two that alternate by a stitch.", nameof(rowStitches)),
        };

    /// <param name="stitches">N_r of every row, 1 to 1,000 each; 1 to 5,000 rows.</param>
    /// <param name="firstColumns">o_r, the column of each row's rightmost cell, −1,000 to 1,000; omitted, 0.</param>
    /// <param name="turnCosts">τ_r in units, as <see cref="PathOptions.TurnCost"/>, which it replaces.</param>
    /// <param name="pulled">See <see cref="Pulled"/>: in units, 0 to 1,000 each, 0 before the first row; omitted, 0.</param>
    /// <inheritdoc cref="Constant"/>
    public static FabricPath RowByRow(
        Working working,
        ImmutableArray<int> stitches,
        PathOptions? options = null,
        ImmutableArray<int>? firstColumns = null,
        ImmutableArray<double>? turnCosts = null,
        ImmutableArray<double>? pulled = null)
    {
        options ??= new PathOptions();
        Guard.InRange(stitches.Length, 1, MostRows, "rows", nameof(stitches));
        Guard.InRange(options.StitchesPerUnit, 1, 2, "stitches", nameof(options));
        Guard.InRange(options.Start, -PathOptions.FurthestStart, PathOptions.FurthestStart, "units", nameof(options));
        var columns = firstColumns ?? [.. new int[stitches.Length]];
        if (columns.Length != stitches.Length)
            throw new ArgumentException($"{stitches.Length} rows need as many first columns, not {columns.Length}.", nameof(firstColumns));
        if (turnCosts is { } costs && costs.Length != stitches.Length)
            throw new ArgumentException($"{stitches.Length} rows need as many turn costs, not {costs.Length}.", nameof(turnCosts));
        if (pulled is { } drawn && (drawn.Length != stitches.Length || drawn[0] != 0))
            throw new ArgumentException($"{stitches.Length} rows need as many stretches of pulled yarn, the first of them 0.", nameof(pulled));
        if (options is { TurningChainCounts: true, StitchesPerUnit: not 1 })
            throw new ArgumentException("A turning chain counts as a stitch only where a unit is one stitch.", nameof(options));
        var turns = ImmutableArray.CreateBuilder<long>(stitches.Length);
        for (var row = 0; row < stitches.Length; row++)
        {
            Guard.InRange(stitches[row], 1, MostStitches, "stitches", nameof(stitches));
            Guard.InRange(columns[row], -MostStitches, MostStitches, "columns", nameof(firstColumns));
            var cost = PathOptions.TurnCosts.Check(turnCosts?[row] ?? options.TurnCost, nameof(turnCosts));
            var turn = ColourRing.ToMicro(cost);
            if (working == Working.Spiral && turn != 0)
                throw new ArgumentException($"A spiral has no turn or join, so its turn cost is 0, not {cost}.", nameof(options));
            if (options.TurningChainCounts && PathOptions.TakesNoChain(cost))
                throw new ArgumentException($"A turning chain that counts takes some yarn: its turn cost lies over -1, not {cost}.", nameof(options));
            if (options.TakesBack(stitches[row], cost))
                throw new ArgumentException($"A turn cost of {cost} takes back the whole row of {stitches[row]}.", nameof(options));
            turns.Add(turn);
        }
        return new FabricPath(working, stitches, new RowPlaces(columns, turns.MoveToImmutable(), Micro(pulled, stitches.Length)), options);
    }

    /// <summary>Whether the row is worked from its left-hand edge to its right.</summary>
    public bool RunsBackwards(int row) => IsTurned && IsOdd(row);

    /// <summary>Pooling units in the row, a half one counted as one.</summary>
    public int Cells(int row) => StitchesPerUnit == 1 ? RowStitches[row] : (RowStitches[row] + 1) / 2;

    /// <summary>Yarn of the row without its turn, in micro-units; of rows beyond the piece too.</summary>
    public long RowYarn(int row) => RowStitches[Like(row)] * (ColourRing.Unit / StitchesPerUnit);

    /// <summary>Y_r, in micro-units; of rows beyond the piece too.</summary>
    public long RowStart(int row)
    {
        if (row < 0)
            return _starts[0] + row / 2 * PairYarn(0) - (row & 1) * RowAndTurn(row);
        if (row < Rows)
            return _starts[row];
        var beyond = row - Rows;
        return _starts[^1] + RowAndTurn(Rows - 1) + beyond / 2 * PairYarn(Rows) + (beyond & 1) * RowAndTurn(Rows);
    }

    /// <summary>
    /// Yarn from the first stitch to the last stitch's end, in micro-units: with the turns between rows, none after the last.
    /// </summary>
    public long Yarn => _starts[^1] + RowYarn(Rows - 1) - _starts[0];

    /// <summary>Where the unit begins that lies so far from a row's right-hand edge; negative beyond the edge, micro-units both.</summary>
    public long FromRight(int row, long distance) => RunsBackwards(row)
        ? RowStart(row) + RowYarn(row) - ColourRing.Unit - distance
        : RowStart(row) + distance;

    /// <summary>Where the unit begins that lies so far from a row's left-hand edge; negative beyond the edge, micro-units both.</summary>
    public long FromLeft(int row, long distance) => FromRight(row, RowYarn(row) - ColourRing.Unit - distance);

    /// <summary>
    /// The yarn from a row to the next one worked the same way, in micro-units, of the colours' own places in the columns: where
    /// counts change from row to row, edges move and this is what <see cref="Lean"/> wraps.
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">The row, or the next of its kind, is not in the piece.</exception>
    public RowAdvance AdvanceAt(int row)
    {
        var step = IsTurned ? 2 : 1;
        Guard.InRange(row, 0, Rows - 1 - step, "rows");
        return new RowAdvance(Place(row + step) - Place(row), step);
    }

    /// <summary>The yarn that the cell at a column takes.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The row has no cell there.</exception>
    public YarnSpan SpanAt(int row, int column)
    {
        var cells = Cells(row);
        var fromRight = Guard.InRange(column - FirstColumns[row], 0, cells - 1, "cells", nameof(column));
        return SpanOf(row, RunsBackwards(row) ? cells - 1 - fromRight : fromRight);
    }

    /// <summary>
    /// How far left of its column a row is drawn, in half units. In linen stitch every other row sits half a unit over, so that
    /// single crochets stand above chains: to the left, or to the right where a backward row begins with half a unit.
    /// </summary>
    public int DrawnHalfUnitsLeft(int row) =>
        StitchesPerUnit == 1 || !IsOdd(row) ? 0 : RunsBackwards(row) && (RowStitches[row] & 1) == 1 ? -1 : 1;

    /// <summary>The yarn of the cell worked <paramref name="order"/>-th in its row, counted from 0.</summary>
    internal YarnSpan SpanOf(int row, int order)
    {
        var from = _starts[row] + order * ColourRing.Unit;
        var length = Math.Min(ColourRing.Unit, RowYarn(row) - order * ColourRing.Unit);
        if (!TurningChainCounts || order != 0)
            return new YarnSpan(from, length);
        var turn = Turns[Math.Max(row - 1, 0)];
        return new YarnSpan(from - turn, length + turn);
    }

    /// <summary>
    /// The row of the piece that a row is worked like: itself, or beyond the piece the nearest that is worked the same way.
    /// </summary>
    private int Like(int row) => row < 0
        ? Math.Min(row & 1, Rows - 1)
        : row < Rows ? row : Math.Max(Rows - 1 - ((row - (Rows - 1)) & 1), 0);

    private bool IsOdd(int row) => ((row + _odd) & 1) == 1;

    private static ImmutableArray<long> Micro(ImmutableArray<double>? pulled, int rows) => pulled is { } units
        ? [.. units.Select(u => ColourRing.ToMicro(Guard.InRange(u, 0, MostStitches, "units", nameof(pulled))))]
        : [.. new long[rows]];

    private long RowAndTurn(int row) => RowYarn(row) + Turns[Like(row)];

    private long PairYarn(int row) => RowAndTurn(row) + RowAndTurn(row + 1);

    /// <summary>The yarn position of column 0; in a backward row, of its far side, so that both grow as the piece grows.</summary>
    private long Place(int row)
    {
        var firstColumn = FirstColumns[row] * ColourRing.Unit;
        return RunsBackwards(row) ? RowStart(row) + RowYarn(row) + firstColumn : RowStart(row) - firstColumn;
    }

    private RowAdvance? SteadyAdvance()
    {
        if (Pulled.Any(p => p != 0))
            return null;
        var everyRow = AllAlike(1);
        if (!everyRow && !AllAlike(2))
            return null;
        var first = RowYarn(0) + Turns[0];
        if (everyRow)
            return IsTurned ? new RowAdvance(2 * first, 2) : new RowAdvance(first, 1);
        return new RowAdvance(first + RowYarn(1) + Turns[1], 2);
    }

    private bool AllAlike(int step)
    {
        for (var row = step; row < Rows; row++)
        {
            if (RowStitches[row] != RowStitches[row - step] || FirstColumns[row] != FirstColumns[row - step]
                || Turns[row] != Turns[row - step])
                return false;
        }
        return true;
    }

    private readonly record struct RowPlaces(ImmutableArray<int> FirstColumns, ImmutableArray<long> Turns, ImmutableArray<long> Pulled);
}
