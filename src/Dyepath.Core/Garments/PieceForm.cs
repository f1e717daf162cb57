using System.Collections.Immutable;

namespace Dyepath.Core.Garments;

/// <summary>
/// The outline of a piece that is no rectangle, as it would be if rows could end anywhere: rows follow it in steps that keep the motif.
/// </summary>
/// <param name="Corners">
/// Three or more, against the clock, nowhere hollow; together they reach all four sides of the piece.
/// </param>
/// <param name="Field">Where the document says how large it is.</param>
public sealed record PieceForm(ImmutableArray<FormCorner> Corners, string Field)
{
    /// <summary>Between which places it lies on a line from side to side, or from bottom to top.</summary>
    /// <param name="at">Share of the way along the other direction, over 0 and under 1.</param>
    /// <param name="upright">From bottom to top.</param>
    public (double From, double To) Crossing(double at, bool upright)
    {
        var (from, to) = (1.0, 0.0);
        for (var i = 0; i < Corners.Length; i++)
        {
            var (one, other) = (Ends(Corners[i], upright), Ends(Corners[(i + 1) % Corners.Length], upright));
            if (one.At > at == other.At > at)
                continue;
            var crossed = one.Place + (other.Place - one.Place) * (at - one.At) / (other.At - one.At);
            (from, to) = (Math.Min(from, crossed), Math.Max(to, crossed));
        }
        return (from, to);
    }

    private static (double At, double Place) Ends(FormCorner corner, bool upright) =>
        upright ? (corner.Across, corner.Up) : (corner.Up, corner.Across);
}

/// <param name="Across">Share of the width from the left as worn, 0 to 1.</param>
/// <param name="Up">Share of the height from the bottom, 0 to 1.</param>
public readonly record struct FormCorner(double Across, double Up);
