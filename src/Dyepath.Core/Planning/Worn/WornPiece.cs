using System.Collections.Immutable;
using Dyepath.Core.Fabrics;
using Dyepath.Core.Garments;
using Dyepath.Core.Quantities;

namespace Dyepath.Core.Planning;

/// <summary>
/// A piece's fabric as it is worn: seen from the public side, hem or cuff at the bottom. Worked sideways, rows grow from left
/// to right and the first row's right-hand edge is the bottom (docs/seams.md has the drawing).
/// </summary>
public sealed class WornPiece
{
    /// <summary>Nothing is drawn here: a row of linen stitch stands half a unit over.</summary>
    public const byte Empty = Booklets.ColourChart.Blank;

    /// <summary>Worked in the companion yarn.</summary>
    public const byte Plain = Booklets.Patch.Plain;

    private readonly byte[] _cells;
    private readonly int _unit;

    /// <summary>Drawn stitches by which a row begins to the left of the furthest right.</summary>
    private readonly int[] _rowsFrom;

    /// <summary>Of a gored piece, the place in its line of what stands at each place once the gores are closed.</summary>
    private readonly int[]? _closed;
    private readonly bool _sideways;
    private readonly bool _mirrored;

    private WornPiece(Plan plan, PiecePlan piece, ReadOnlySpan<byte> worked)
    {
        Piece = piece;
        _sideways = plan.Construction.GroupOf(piece.Id).WorkedIn(plan.Direction) == Direction.Sideways;
        _mirrored = piece.WrongSideOut;
        var unit = _unit = plan.Project.Fabric.Stitch.StitchesPerUnit;
        _rowsFrom = [];
        if (!piece.Pooled)
        {
            (Columns, Rows) = _sideways ? (piece.Rows, piece.Stitches) : (piece.Stitches, piece.Rows);
            _cells = new byte[Columns * Rows];
            Array.Fill(_cells, Plain);
            for (var row = 0; piece.Taper is { } taper && row < Rows; row++)
            {
                var without = taper.Stitches - taper.At(row);
                _cells.AsSpan((Rows - 1 - row) * Columns + (taper.Slope == PieceSide.Left ? 0 : Columns - without), without).Fill(Empty);
            }
            return;
        }
        Fabrics = Worked(plan, piece);
        int First(FabricPath path, int row) => unit * path.FirstColumns[row] + (unit == 1 ? 0 : path.DrawnHalfUnitsLeft(row));
        _rowsFrom = new int[piece.Rows];
        var rows = Fabrics.SelectMany(f => Enumerable.Range(0, f.Fabric.Rows).Select(r => (f.Fabric.Path, Row: r))).ToArray();
        var rightmost = rows.Min(r => First(r.Path, r.Row));
        var across = rows.Max(r => First(r.Path, r.Row) + unit * r.Path.Cells(r.Row)) - rightmost;
        (Columns, Rows) = _sideways ? (piece.Rows, across) : (across, piece.Rows);
        _cells = new byte[Columns * Rows];
        Array.Fill(_cells, Empty);
        foreach (var (firstRow, fabric) in Fabrics)
        {
            var path = fabric.Path;
            for (var row = 0; row < path.Rows; row++)
            {
                var backwards = !worked.IsEmpty && path.RunsBackwards(row);
                var cells = worked.IsEmpty ? fabric.Row(row) : worked[..path.Cells(row)];
                worked = worked.IsEmpty ? worked : worked[path.Cells(row)..];
                var first = First(path, row) - rightmost;
                if (path.StitchesPerUnit > 1)
                    _rowsFrom[firstRow + row] = first;
                for (var i = 0; i < cells.Length * unit; i++)
                    _cells[Place(firstRow + row, first + i, across)] = cells[backwards ? cells.Length - 1 - i / unit : i / unit];
            }
        }
        if (plan.Construction.GroupOf(piece.Id).Gores is not null)
            _closed = Close();
    }

    /// <summary>How far a line begins within the piece's full width, and ends, where gores are closed; 0 where there are none.</summary>
    /// <param name="y">From the top.</param>
    public int Inset(int y) => _closed is null ? 0 : _cells.AsSpan(y * Columns, Columns).IndexOfAnyExcept(Empty);

    /// <summary>Moves what each line has together, into its middle.</summary>
    private int[] Close()
    {
        var from = new int[_cells.Length];
        for (var y = 0; y < Rows; y++)
        {
            var line = _cells.AsSpan(y * Columns, Columns);
            var there = Enumerable.Range(0, Columns).Where(x => _cells[y * Columns + x] != Empty).ToArray();
            var cells = there.Select(x => _cells[y * Columns + x]).ToArray();
            line.Fill(Empty);
            var left = (Columns - there.Length) / 2;
            cells.CopyTo(line[left..]);
            there.CopyTo(from, y * Columns + left);
        }
        return from;
    }

    private static ImmutableArray<(int FirstRow, Fabric Fabric)> Worked(Plan plan, PiecePlan piece) => piece.Shape is { } shape
        ? [.. shape.Parts.Select(p => (p.FirstRow, p.Fabric))]
        : [(0, PieceFabric.Of(plan, piece))];

    /// <summary>What is shown.</summary>
    public PiecePlan Piece { get; }

    /// <summary>
    /// Its fabric, or of a shaped piece that of each part, and the row of the piece that it begins with; none for a plain piece.
    /// </summary>
    public ImmutableArray<(int FirstRow, Fabric Fabric)> Fabrics { get; } = [];

    /// <summary>
    /// The fabric that a pooling unit of a row belongs to, and which of that fabric's row it is; null where nothing is worked.
    /// </summary>
    /// <param name="row">From 0.</param>
    /// <param name="unit">As <see cref="UnitAt"/> has it.</param>
    internal (int FirstRow, Fabric Fabric, int Unit)? FabricOf(int row, int unit)
    {
        foreach (var (firstRow, fabric) in Fabrics)
        {
            var at = row - firstRow;
            if (at < 0 || at >= fabric.Rows)
                continue;
            var own = Piece.Shape is { } shape ? unit + shape.FirstColumn - fabric.Path.FirstColumns[at] : unit;
            if (own >= 0 && own < fabric.Path.Cells(at))
                return (firstRow, fabric, own);
        }
        return null;
    }

    /// <summary>Stitches (worked sideways, rows) from side to side.</summary>
    public int Columns { get; }

    /// <summary>Rows (worked sideways, stitches) from top to bottom.</summary>
    public int Rows { get; }

    /// <summary>Section of each stitch, the top line first, each from left to right; or <see cref="Plain"/>, <see cref="Empty"/>.</summary>
    public ReadOnlySpan<byte> Cells => _cells;

    public static WornPiece Of(Plan plan, PiecePlan piece)
    {
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(piece);
        return new WornPiece(plan, piece, []);
    }

    /// <summary>A pooled piece with other colours than planned.</summary>
    /// <param name="worked">A section for each pooling unit, in working order.</param>
    /// <exception cref="ArgumentException">Plain, or not as many sections as units.</exception>
    public static WornPiece Of(Plan plan, PiecePlan piece, ReadOnlySpan<byte> worked)
    {
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(piece);
        var paths = piece.Pooled ? PieceFabric.Stretches(plan, piece).Select(s => s.Path) : [];
        if (!piece.Pooled || worked.Length != paths.Sum(p => Enumerable.Range(0, p.Rows).Sum(p.Cells)))
            throw new ArgumentException($"The {piece.Name} is not worked in {worked.Length} units.", nameof(worked));
        return new WornPiece(plan, piece, worked);
    }

    /// <summary>The row, from 0, and the drawn stitch of it, from 0 at its first row's right-hand edge, at a place as worn.</summary>
    /// <param name="x">From the left, in [0, <see cref="Columns"/>).</param>
    /// <param name="y">From the top, in [0, <see cref="Rows"/>).</param>
    public (int Row, int Stitch) At(int x, int y)
    {
        if (_closed is not null)
            x = _closed[y * Columns + x];
        if (_mirrored)
            x = Columns - 1 - x;
        return _sideways ? (x, Rows - 1 - y) : (Rows - 1 - y, Columns - 1 - x);
    }

    /// <summary>
    /// The row, from 0, and the pooling unit of it, from 0 at its own right-hand edge, or of a shaped piece at the piece's; null where
    /// nothing is worked.
    /// </summary>
    /// <inheritdoc cref="At"/>
    public (int Row, int Unit)? UnitAt(int x, int y)
    {
        Guard.InRange(x, 0, Columns - 1, "columns");
        Guard.InRange(y, 0, Rows - 1, "rows");
        if (_cells[y * Columns + x] is Empty or Plain)
            return null;
        var (row, stitch) = At(x, y);
        return (row, InRow(row, stitch).Unit);
    }

    /// <summary>
    /// The pooling unit of a drawn stitch, as <see cref="UnitAt"/> has it, and which stitch of the unit it is, from 0 at the right-hand
    /// edge.
    /// </summary>
    internal (int Unit, int Part) InRow(int row, int stitch) => Math.DivRem(stitch - _rowsFrom[row], _unit);

    private int Place(int row, int stitch, int across)
    {
        var (x, y) = _sideways ? (row, across - 1 - stitch) : (across - 1 - stitch, Rows - 1 - row);
        return y * Columns + (_mirrored ? Columns - 1 - x : x);
    }
}
