using Dyepath.Core.Fabrics;
using Dyepath.Core.Planning;
using Dyepath.Core.Quantities;
using Dyepath.Core.Yarns;

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
    /// <param name="colour">As in <see cref="ColourRing.Colours"/>.</param>
    /// <param name="count">Stitches of it at the row's end, in [1, 4,096].</param>
    /// <param name="expected">The phase error expected, in stitches.</param>
    /// <returns>Nothing when no section of that colour is so long, by more than two stitches.</returns>
    public static int? AtRowEnd(PlannedPiece piece, int row, int colour, int count, double expected = 0)
    {
        ArgumentNullException.ThrowIfNull(piece);
        Guard.InRange(row, 0, piece.RowStitches.Length - 1, "rows");
        Guard.InRange(count, 1, ColourRing.LongestSequence, "stitches");
        Guard.InRange(expected, -1_000_000, 1_000_000, "stitches");
        MergedRing ring = piece.Ring;
        // Whole micro-stitches, so that boundaries are exact.
        double end = piece.Start + piece.RowPlace(row) + piece.RowStitches[row] * PlannedPiece.Stitch, begins = 0;
        double? best = null;
        for (int section = 0; section < ring.Stretches.Length; section++)
        {
            if (ring.Stretches[section].Colour == colour && (count - 2) * PlannedPiece.Stitch <= ring.Stretches[section].Micro)
            {
                // Stitch j before the end has its middle j − ½ before it; `count` of them lie after the section's beginning.
                double exact = begins + (count + 0.5) * PlannedPiece.Stitch - end;
                exact += Math.Round(((expected + 0.5) * PlannedPiece.Stitch - exact) / ring.Total) * ring.Total;
                double early = Math.Floor(exact / PlannedPiece.Stitch);
                if (best is null || Math.Abs(early - expected) < Math.Abs(best.Value - expected)) best = early;
            }
            begins += ring.Stretches[section].Micro;
        }
        return best is { } found ? (int)found : null;
    }
}
