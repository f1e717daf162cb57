using Dyepath.Core.Quantities;

namespace Dyepath.Core.Making.Drift;

/// <summary>How a row's end looks to the maker.</summary>
/// <param name="Colour">As in <see cref="Yarns.ColourRing.Colours"/>.</param>
/// <param name="Count">
/// Stitches of it back to where the colour began, from 1. As many as the row's or more: the whole row has this colour, and shows no
/// phase by itself.
/// </param>
public readonly record struct RowEnd(int Colour, int Count)
{
    /// <summary>
    /// The end of a row worked with such a phase error. The inverse of <see cref="DriftReading.AtRowEnd"/> where that expects this phase
    /// and no section is shorter than a stitch.
    /// </summary>
    /// <param name="piece">The piece as planned.</param>
    /// <param name="row">From 0.</param>
    /// <param name="phase">In whole stitches, positive when colours come early, in [−1,000,000, 1,000,000].</param>
    public static RowEnd Looks(PlannedPiece piece, int row, int phase)
    {
        ArgumentNullException.ThrowIfNull(piece);
        Guard.InRange(row, 0, piece.RowStitches.Length - 1, "rows");
        Guard.InRange(phase, -1_000_000, 1_000_000, "stitches");
        double end = piece.RowPlace(row) + (piece.RowStitches[row] + (double)phase) * PlannedPiece.Stitch;
        int most = (int)Math.Ceiling(piece.Ring.Total / PlannedPiece.Stitch), colour = Stitch(1), count = 1;
        while (count < most && Stitch(count + 1) == colour) count++;
        return new RowEnd(colour, count);

        int Stitch(int fromEnd) => piece.ColourAtPlace(end - fromEnd * PlannedPiece.Stitch);
    }
}
