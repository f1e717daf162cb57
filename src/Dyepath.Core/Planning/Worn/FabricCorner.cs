using Dyepath.Core.Fabrics;
using Dyepath.Core.Garments;

namespace Dyepath.Core.Planning;

/// <summary>The corner of a fabric in which its work begins, as worn: up, the bottom right one; sideways, the bottom left one.</summary>
public sealed class FabricCorner
{
    private readonly byte[] _cells;

    private FabricCorner(int columns, int rows, byte[] cells) => (Columns, Rows, _cells) = (columns, rows, cells);

    /// <summary>Stitches, or worked sideways rows, from side to side.</summary>
    public int Columns { get; }

    /// <summary>Rows, or worked sideways stitches, from top to bottom.</summary>
    public int Rows { get; }

    /// <summary>Section of each stitch, the top line first, each from left to right; or <see cref="WornPiece.Empty"/>.</summary>
    public ReadOnlySpan<byte> Cells => _cells;

    internal static FabricCorner Of(Fabric fabric, int stitches, Direction direction)
    {
        var path = fabric.Path;
        var (rows, unit) = (path.Rows, path.StitchesPerUnit);
        var across = Math.Min(stitches, path.RowStitches.Max());
        var (columns, lines) = direction == Direction.Up ? (across, rows) : (rows, across);
        var cells = new byte[columns * lines];
        Array.Fill(cells, WornPiece.Empty);
        for (var row = 0; row < rows; row++)
        {
            var worked = fabric.Row(row);
            var first = unit * path.FirstColumns[row] + path.DrawnHalfUnitsLeft(row);
            for (var stitch = Math.Max(0, first); stitch < Math.Min(across, first + worked.Length * unit); stitch++)
            {
                var (x, y) = direction == Direction.Up ? (across - 1 - stitch, rows - 1 - row) : (row, across - 1 - stitch);
                cells[y * columns + x] = worked[(stitch - first) / unit];
            }
        }
        return new FabricCorner(columns, lines, cells);
    }
}
