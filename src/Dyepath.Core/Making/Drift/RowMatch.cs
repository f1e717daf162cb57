using Dyepath.Core.Quantities;

namespace Dyepath.Core.Making.Drift;

/// <summary>How much of a row has its planned colours when the phase is off.</summary>
public static class RowMatch
{
    /// <summary>
    /// The share of a row's stitches in planned colour, in [0, 1], if the phase error goes evenly from <paramref name="from"/> at its
    /// first stitch to <paramref name="to"/> at its last, in stitches.
    /// </summary>
    public static double Share(PlannedPiece piece, int row, double from, double to)
    {
        ArgumentNullException.ThrowIfNull(piece);
        Guard.InRange(row, 0, piece.RowStitches.Length - 1, "rows");
        int first = 0;
        for (int r = 0; r < row; r++) first += piece.RowStitches[r];
        return Share(piece, row, first, from, to);
    }

    internal static double Share(PlannedPiece piece, int row, int first, double from, double to)
    {
        JoinedRing ring = piece.Ring;
        int stitches = piece.RowStitches[row], right = 0;
        double before = piece.Start + first * JoinedRing.Stitch + row * piece.TurnCost;
        for (int i = 0; i < stitches; i++)
        {
            double phase = from + (to - from) * (i + 0.5) / stitches;
            double place = (before + (i + 0.5 + phase) * JoinedRing.Stitch) % ring.Sequence;
            if (place < 0) place += ring.Sequence;
            int section = 0;
            while (section + 1 < ring.Count && place > ring.Lengths[section]) place -= ring.Lengths[section++];
            if (ring.Colours[section] == piece.Colours[first + i]) right++;
        }
        return (double)right / stitches;
    }
}
