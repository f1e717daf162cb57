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
    public const byte Empty = 255;

    /// <summary>Worked in the companion yarn.</summary>
    public const byte Plain = 254;

    private readonly byte[] _cells;
    private readonly int _unit;

    /// <summary>Drawn stitches by which a row begins to the left of the farthest right.</summary>
    private readonly int[] _rowsFrom;
    private readonly bool _sideways;
    private readonly bool _mirrored;

    private WornPiece(Plan plan, PiecePlan piece, ReadOnlySpan<byte> worked)
    {
        Piece = piece;
        _sideways = plan.Direction == Direction.Sideways;
        _mirrored = piece.WrongSideOut;
        var unit = _unit = plan.Project.Fabric.Stitch.StitchesPerUnit;
        _rowsFrom = new int[piece.Rows];
        if (!piece.Pooled)
        {
            (Columns, Rows) = _sideways ? (piece.Rows, piece.Stitches) : (piece.Stitches, piece.Rows);
            _cells = new byte[Columns * Rows];
            Array.Fill(_cells, Plain);
            return;
        }
        var fabric = PieceFabric.Of(plan, piece);
        var path = fabric.Path;
        Fabric = fabric;
        int First(int row) => unit * path.FirstColumns[row] + (unit == 1 ? 0 : path.DrawnHalfUnitsLeft(row));
        var rows = Enumerable.Range(0, path.Rows);
        var rightmost = rows.Min(First);
        var across = rows.Max(r => First(r) + unit * path.Cells(r)) - rightmost;
        (Columns, Rows) = _sideways ? (path.Rows, across) : (across, path.Rows);
        _cells = new byte[Columns * Rows];
        Array.Fill(_cells, Empty);
        for (var row = 0; row < path.Rows; row++)
        {
            var backwards = !worked.IsEmpty && path.RunsBackwards(row);
            var cells = worked.IsEmpty ? fabric.Row(row) : worked[..path.Cells(row)];
            worked = worked.IsEmpty ? worked : worked[path.Cells(row)..];
            var first = _rowsFrom[row] = First(row) - rightmost;
            for (var i = 0; i < cells.Length * unit; i++)
                _cells[Place(row, first + i, across)] = cells[backwards ? cells.Length - 1 - i / unit : i / unit];
        }
    }

    public PiecePlan Piece { get; }

    /// <summary>Missing for a plain piece.</summary>
    public Fabric? Fabric { get; }

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
        var path = piece.Pooled ? PieceFabric.Of(plan, piece).Path : null;
        if (path is null || worked.Length != Enumerable.Range(0, path.Rows).Sum(path.Cells))
            throw new ArgumentException($"The {piece.Name} is not worked in {worked.Length} units.", nameof(worked));
        return new WornPiece(plan, piece, worked);
    }

    /// <summary>The row, from 0, and the drawn stitch of it, from 0 at its first row's right-hand edge, at a place as worn.</summary>
    /// <param name="x">From the left, in [0, <see cref="Columns"/>).</param>
    /// <param name="y">From the top, in [0, <see cref="Rows"/>).</param>
    public (int Row, int Stitch) At(int x, int y)
    {
        if (_mirrored)
            x = Columns - 1 - x;
        return _sideways ? (x, Rows - 1 - y) : (Rows - 1 - y, Columns - 1 - x);
    }

    /// <summary>The row, from 0, and the pooling unit of it, from 0 at its own right-hand edge; null where nothing is worked.</summary>
    /// <inheritdoc cref="At"/>
    public (int Row, int Unit)? UnitAt(int x, int y)
    {
        Guard.InRange(x, 0, Columns - 1, "columns");
        Guard.InRange(y, 0, Rows - 1, "rows");
        if (_cells[y * Columns + x] == Empty)
            return null;
        var (row, stitch) = At(x, y);
        return (row, (stitch - _rowsFrom[row]) / _unit);
    }

    private int Place(int row, int stitch, int across)
    {
        var (x, y) = _sideways ? (row, across - 1 - stitch) : (across - 1 - stitch, Rows - 1 - row);
        return y * Columns + (_mirrored ? Columns - 1 - x : x);
    }
}
