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
    /// The end of a row worked with such a phase error: a stitch has the colour at its middle, on a boundary the earlier. The inverse of
    /// <see cref="DriftReading.AtRowEnd"/> where that expects this phase.
    /// </summary>
    /// <param name="piece">The piece as planned.</param>
    /// <param name="row">From 0.</param>
    /// <param name="phase">In whole stitches, positive when colours come early, in [−1,000,000, 1,000,000].</param>
    public static RowEnd Looks(PlannedPiece piece, int row, int phase)
    {
        ArgumentNullException.ThrowIfNull(piece);
        Guard.InRange(row, 0, piece.RowStitches.Length - 1, "rows");
        Guard.InRange(phase, -1_000_000, 1_000_000, "stitches");
        JoinedRing ring = piece.Ring;
        // Whole micro-stitches, so that boundaries are exact.
        double middle = (Place(piece, row) + (phase - 0.5) * JoinedRing.Stitch) % ring.Sequence;
        if (middle <= 0) middle += ring.Sequence;
        int section = 0;
        while (middle > ring.Lengths[section]) middle -= ring.Lengths[section++];
        return new RowEnd(ring.Colours[section], (int)Math.Ceiling(middle / JoinedRing.Stitch));
    }

    /// <summary>Where the plan has a row's end, in micro-stitches from the ring's origin.</summary>
    internal static double Place(PlannedPiece piece, int row)
    {
        double place = piece.Start + row * piece.TurnCost;
        for (int r = 0; r <= row; r++) place += piece.RowStitches[r] * JoinedRing.Stitch;
        return place;
    }
}
