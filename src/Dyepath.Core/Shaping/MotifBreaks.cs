using Dyepath.Core.Fabrics;
using Dyepath.Core.Yarns;

namespace Dyepath.Core.Shaping;

/// <summary>Where the colours stop going on as in the steady panel.</summary>
internal static class MotifBreaks
{
    public static IEnumerable<MotifBreak> Of(ShapedPiece piece)
    {
        foreach (var turn in Turns(piece))
        {
            if (turn.Jump is not { } jump)
                yield return Break(piece, turn.Part, turn.Row, null);
            else if (jump != 0 && jump != turn.Before)
                yield return Break(piece, turn.Part, turn.Row, ColourRing.ToUnits(jump));
        }
    }

    /// <summary>Units in rows across whose first turn the colours jump: their lines lean otherwise than the panel's.</summary>
    public static long LostUnits(ShapedPiece piece) => Turns(piece).Where(t => t.Jump != 0)
        // Of a part whose rows are worked the other way all that is left leans otherwise.
        .Sum(t => t.Part.Outline.ByRow().Skip(t.Row - t.Part.FirstRow).Take(t.Jump is null ? t.Part.Rows : 1).Sum(r => (long)r.Units));

    /// <summary>Every row's first turn; of a part whose rows are worked the other way than the panel's one for all of them.</summary>
    private static IEnumerable<Turn> Turns(ShapedPiece piece)
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
                    yield return new Turn(part, row, null, 0);
                    break;
                }
                var jump = Lean.Wrap(offset - state.Offset, piece.Panel.Period);
                yield return new Turn(part, row, jump, edge == RowEdge.Left ? state.LeftJump : state.RightJump);
                state = edge == RowEdge.Left
                    ? state with { LeftJump = jump, Offset = offset } : state with { RightJump = jump, Offset = offset };
            }
            ends[part.Index] = state;
        }
    }

    /// <param name="Jump">By how much the row's colours lie off those of the row before, micro-units; null where they cannot be held.</param>
    /// <param name="Before">Across the last turn at the same edge.</param>
    private readonly record struct Turn(ShapedPart Part, int Row, long? Jump, long Before);

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
