using Dyepath.Core.Quantities;

namespace Dyepath.Core.Making.Drift;

/// <summary>What the maker sees, turned into a whole-stitch phase error.</summary>
public static class DriftReading
{
    /// <summary>
    /// The phase error, positive when colours come early, of work that ends in <paramref name="count"/> stitches of a colour: of all
    /// that would look so, the one nearest to what is expected.
    /// </summary>
    /// <param name="piece">The piece as planned.</param>
    /// <param name="row">The row that has just been worked, from 0.</param>
    /// <param name="colour">As in <see cref="Yarns.ColourRing.Colours"/>.</param>
    /// <param name="count">Stitches of it at the row's end, in [1, 1,000].</param>
    /// <param name="expected">The phase error expected, in stitches.</param>
    /// <returns>Nothing when no section of that colour is so long, by more than two stitches.</returns>
    public static int? AtRowEnd(PlannedPiece piece, int row, int colour, int count, double expected = 0)
    {
        ArgumentNullException.ThrowIfNull(piece);
        Guard.InRange(row, 0, piece.RowStitches.Length - 1, "rows");
        Guard.InRange(count, 1, 1_000, "stitches");
        Guard.InRange(expected, -1_000_000, 1_000_000, "stitches");
        JoinedRing ring = piece.Ring;
        double end = (piece.Start + row * piece.TurnCost) / JoinedRing.Stitch;
        for (int r = 0; r <= row; r++) end += piece.RowStitches[r];

        double sequence = ring.Sequence / JoinedRing.Stitch, begins = 0;
        double? best = null;
        for (int section = 0; section < ring.Count; section++)
        {
            double length = ring.Lengths[section] / JoinedRing.Stitch;
            if (ring.Colours[section] == colour && count <= length + 2)
            {
                // Stitch j before the end has its middle j − ½ before it; `count` of them lie after the section's beginning.
                double exact = begins + count + 0.5 - end;
                exact += Math.Round((expected - exact + 0.5) / sequence) * sequence;
                double early = Math.Floor(exact);
                if (best is null || Math.Abs(early - expected) < Math.Abs(best.Value - expected)) best = early;
            }
            begins += length;
        }
        return best is { } found ? (int)found : null;
    }
}
