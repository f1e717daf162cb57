using Dyepath.Core.Quantities;
using Dyepath.Core.Yarns;

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
        return Share(piece, row, piece.StitchesBefore(row), from, to);
    }

    internal static double Share(PlannedPiece piece, int row, int first, double from, double to)
    {
        int stitches = piece.RowStitches[row], right = 0;
        for (int i = 0; i < stitches; i++)
        {
            double phase = from + (to - from) * (i + 0.5) / stitches;
            if (piece.ColourAtPlace(piece.RowPlace(row) + ColourRing.ToMicro(i + phase)) == piece.Colours[first + i]) right++;
        }
        return (double)right / stitches;
    }
}
