using CsCheck;
using Dyepath.Core.Making;
using Dyepath.Core.Making.Drift;

namespace Dyepath.Core.Tests.Making.Drift;

public sealed class DriftReadingTests
{
    [Fact]
    public void Roundtrip_a_row_worked_out_of_phase_is_read_as_such()
    {
        Gen.Select(Gen.Int[2, 12].Array[2, 6], Gen.Int[10, 60], Gen.Int[0, 5], Gen.Int[0, 999], Gen.Int[-1_000, 1_000], Gen.Int[-4, 4])
        .Holds(
            (sections, stitches, row, start, turn, early) =>
            {
                // Yarn that begins further along the ring is a piece whose colours all come early.
                double[] lengths = [.. sections.Select(n => (double)n)];
                PlannedPiece plan = Pieces.Of([.. lengths], stitches, row + 1, turn / 1000.0, start / 37.0);
                PlannedPiece made = Pieces.Of([.. lengths], stitches, row + 1, turn / 1000.0, start / 37.0 + early);
                byte last = made.Colours[^1];
                int count = made.Colours.Reverse().TakeWhile(c => c == last).Count();
                if (count >= stitches) return;
                Assert.Equal(early, DriftReading.AtRowEnd(plan, row, last, count, expected: early + 0.3));
            },
            seed: 31, cases: 2_000);
    }

    [Fact]
    public void Known_readings_of_a_short_row()
    {
        // 5, 4, 6, 7: a row of 11 ends with two stitches of the third colour.
        PlannedPiece piece = Pieces.Of([5, 4, 6, 7], 11, 1);
        Assert.Equal(0, DriftReading.AtRowEnd(piece, 0, colour: 2, count: 2));
        Assert.Equal(1, DriftReading.AtRowEnd(piece, 0, colour: 2, count: 3));
        Assert.Equal(-1, DriftReading.AtRowEnd(piece, 0, colour: 2, count: 1));
        Assert.Equal(-2, DriftReading.AtRowEnd(piece, 0, colour: 1, count: 4));
        Assert.Null(DriftReading.AtRowEnd(piece, 0, colour: 1, count: 7));
        Assert.Null(DriftReading.AtRowEnd(piece, 0, colour: 9, count: 1));
    }

    [Fact]
    public void Known_shares_of_a_row()
    {
        PlannedPiece piece = Pieces.Of([5, 4, 6, 7], 22, 2);
        Assert.Equal(1, RowMatch.Share(piece, 1, 0.4, -0.4));
        // A stitch off, one in each of four colours is wrong.
        Assert.Equal(18 / 22.0, RowMatch.Share(piece, 0, 1, 1));
        Assert.Equal(14 / 22.0, RowMatch.Share(piece, 1, -2, -2));
        Assert.Equal(1, RowMatch.Share(piece, 0, 22, 22));
    }
}
