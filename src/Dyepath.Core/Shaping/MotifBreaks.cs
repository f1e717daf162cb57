using Dyepath.Core.Fabrics;
using Dyepath.Core.Yarns;

namespace Dyepath.Core.Shaping;

/// <summary>Where the colours stop going on as in the steady panel.</summary>
internal static class MotifBreaks
{
    public static IEnumerable<MotifBreak> Of(ShapedPiece piece)
    {
        // Of each part's last row.
        var ends = new State[piece.Parts.Length];
        foreach (var part in piece.Parts)
        {
            var state = part.Continues ? ends[part.Below!.Value] : default;
            for (var row = part.FirstRow; row < part.FirstRow + part.Rows; row++)
            {
                var edge = part.BeginningOf(row);
                if (part.OffsetAt(row) is not { } offset)
                {
                    yield return Break(piece, part, row, null);
                    break;
                }
                var jump = Lean.Wrap(offset - state.Offset, piece.Panel.Period);
                if (jump != 0 && jump != (edge == RowEdge.Left ? state.LeftJump : state.RightJump))
                    yield return Break(piece, part, row, ColourRing.ToUnits(jump));
                state = edge == RowEdge.Left
                    ? state with { LeftJump = jump, Offset = offset } : state with { RightJump = jump, Offset = offset };
            }
            ends[part.Index] = state;
        }
    }

    private static MotifBreak Break(ShapedPiece piece, ShapedPart part, int row, double? jump)
    {
        var lean = piece.Panel.LeanOf(part.Outline.At(row - part.FirstRow).Units);
        return new MotifBreak(
            part.Index, row, part.BeginningOf(row), part.BeginsAt(row), jump,
            lean.UnitsPerRow, lean == piece.Panel.LeanOf(piece.Panel.Units));
    }

    /// <param name="RightJump">Across the last turn at the right-hand edge, micro-units.</param>
    /// <param name="LeftJump">Across the last turn at the left-hand edge.</param>
    /// <param name="Offset">Of the row before.</param>
    private readonly record struct State(long RightJump, long LeftJump, long Offset);
}
