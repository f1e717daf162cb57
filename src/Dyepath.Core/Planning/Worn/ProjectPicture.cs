using System.Collections.Immutable;
using Dyepath.Core.Colours;

namespace Dyepath.Core.Planning;

/// <summary>A corner of the planned fabric as worn, small enough to stand for the whole project.</summary>
/// <param name="Colours">By section, the companion yarn left out.</param>
/// <param name="Columns">From side to side.</param>
/// <param name="Rows">From top to bottom.</param>
/// <param name="Cells">The top line first, each from left to right; <see cref="WornPiece.Empty"/> where there is no stitch.</param>
public sealed record ProjectPicture(ImmutableArray<Srgb> Colours, int Columns, int Rows, byte[] Cells)
{
    /// <summary>The lower left corner of the base size's first piece in the variegated yarn; null where no piece is.</summary>
    public static ProjectPicture? Of(Plan plan, int mostColumns, int mostRows)
    {
        ArgumentNullException.ThrowIfNull(plan);
        var size = plan.Sizes.FirstOrDefault(s => s.Name == plan.Project.Sizes.Base) ?? plan.Sizes[plan.Sizes.Length / 2];
        if (size.Pieces.FirstOrDefault(p => p.Pooled) is not { } pooled)
            return null;
        var piece = WornPiece.Of(plan, pooled);
        var (columns, rows) = (Math.Min(piece.Columns, mostColumns), Math.Min(piece.Rows, mostRows));
        var cells = new byte[columns * rows];
        for (var y = 0; y < rows; y++)
            piece.Cells.Slice((piece.Rows - rows + y) * piece.Columns, columns).CopyTo(cells.AsSpan(y * columns));
        return new ProjectPicture([.. plan.Sequence.Colours.Select(c => c.Colour)], columns, rows, cells);
    }
}
