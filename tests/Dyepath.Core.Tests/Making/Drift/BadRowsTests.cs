using Dyepath.Core.Making.Drift;

namespace Dyepath.Core.Tests.Making.Drift;

/// <summary>Which rows are worth working again. Colours of 6, 5, 7 and 4 stitches: two stitches off are 8 of 22 wrong, six nearly all.</summary>
public sealed class BadRowsTests
{
    private static readonly Core.Making.PlannedPiece Piece = Pieces.Of([6, 5, 7, 4], 88, 12);

    [Fact]
    public void Good_rows_are_kept()
    {
        Assert.Null(BadRows.Worst(Piece, []));
        Assert.Null(BadRows.Worst(Piece, [new(5, 0, 0), new(4, 9, 0)]));
        Assert.Null(BadRows.Worst(Piece, [new(5, 0, 2)]));
    }

    [Fact]
    public void A_row_that_ran_away_is_worked_again() => Assert.Equal(5, BadRows.Worst(Piece, [new(5, 0, 8), new(4, 0, 0)]));

    /// <summary>Ripping leads to where the row began: of no use where colours were as far off by then.</summary>
    [Fact]
    public void A_row_that_began_as_badly_is_not_mended_by_itself()
    {
        Assert.Null(BadRows.Worst(Piece, [new(5, 5, 5), new(4, 0, 0)]));
        Assert.Equal(4, BadRows.Worst(Piece, [new(5, 5, 5), new(4, 0, 5)]));
    }

    [Fact]
    public void All_rows_since_the_last_good_one_are_judged_together()
    {
        WorkedRow[] bad = [new(9, 7, 8), new(8, 6, 7), new(7, 0, 6), new(6, 0, 0), new(5, 0, 8)];
        Assert.Equal(7, BadRows.Worst(Piece, bad));
        // No more than six at a time.
        Assert.NotEqual(0, BadRows.Worst(Piece, [.. Enumerable.Range(0, 9).Select(i => new WorkedRow(8 - i, 6, 6)), new(0, 0, 6)]));
    }

    /// <summary>A whole period off looks like none.</summary>
    [Fact]
    public void Whole_sequences_are_not_seen()
    {
        Assert.Null(BadRows.Worst(Piece, [new(5, 22, 22)]));
        Assert.Equal(5, BadRows.Worst(Piece, [new(5, 22, 30)]));
    }
}
