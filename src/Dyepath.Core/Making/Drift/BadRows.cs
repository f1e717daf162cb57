namespace Dyepath.Core.Making.Drift;

/// <summary>A row as it is believed to have come out.</summary>
/// <param name="Row">From 0.</param>
/// <param name="From">The phase error at its first stitch, in stitches.</param>
/// <param name="To">The phase error at its last stitch.</param>
public readonly record struct WorkedRow(int Row, double From, double To);

/// <summary>Whether the last rows are worth keeping.</summary>
public static class BadRows
{
    /// <summary>More rows than this are not ripped back.</summary>
    public const int Most = 6;

    /// <summary>What a row gains by being ripped has to be more than this part of its stitches: it is worked twice.</summary>
    private const double Effort = 0.3;

    /// <summary>The part of what a row could keep at best that it keeps in the mean.</summary>
    private const double Usual = 0.9;

    /// <summary>A row that began further off than this many stitches is no place to go back to.</summary>
    private const double BeganWell = 2;

    /// <summary>Such a row ends the stretch that is judged.</summary>
    private const double Good = 0.75;

    /// <summary>
    /// The row, from 0, to whose beginning to rip back: that from which on all rows together gain most by being worked again. Missing
    /// where none gains enough.
    /// </summary>
    /// <param name="piece">As planned.</param>
    /// <param name="rows">The last rows, the latest first.</param>
    public static int? Worst(PlannedPiece piece, IEnumerable<WorkedRow> rows)
    {
        ArgumentNullException.ThrowIfNull(piece);
        ArgumentNullException.ThrowIfNull(rows);
        (double Gain, int Row)? best = null;
        double later = 0;
        foreach (var row in rows.Take(Most))
        {
            double share = RowMatch.Share(piece, row.Row, row.From, row.To);
            if (share >= Good) break;
            int stitches = piece.RowStitches[row.Row];
            // Worked again it begins where it began, and is brought back in its course; rows after it begin on the count.
            double period = piece.Period / PlannedPiece.Stitch, onTheCount = Math.Round(row.From / period) * period;
            double again = Usual * RowMatch.Share(piece, row.Row, row.From, onTheCount);
            double gain = later + (again - share - Effort) * stitches;
            if (Math.Abs(row.From - onTheCount) <= BeganWell && gain > (best?.Gain ?? 0)) best = (gain, row.Row);
            later += (Usual - share - Effort) * stitches;
        }
        return best?.Row;
    }
}
