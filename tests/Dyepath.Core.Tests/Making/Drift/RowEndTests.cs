using CsCheck;
using Dyepath.Core.Making;
using Dyepath.Core.Making.Drift;
using Dyepath.Core.Planning;

namespace Dyepath.Core.Tests.Making.Drift;

public sealed class RowEndTests
{
    /// <summary>Sections of any length, of colours of which some occur twice or more; turns that take or give yarn; rows of all lengths.</summary>
    private static Gen<(double[] Sections, int[] Colours, int[] Rows, double Turn, double Start)> Rings(double shortest) =>
        Gen.Select(
            Gen.Select(Gen.Frequency((1, Gen.Int[1, 12].Select(n => (double)n)), (1, Gen.Double[shortest, 12])), Gen.Int[0, 3]).Array[2, 8],
            Gen.Int[1, 60].Array[1, 6],
            Gen.Double[-2, 3],
            Gen.Double[-40, 40],
            (sections, rows, turn, start) => (
                sections.Select(s => Math.Round(s.Item1, 6)).ToArray(), sections.Select(s => s.Item2).ToArray(), rows, turn, start));

    [Fact]
    public void Law_reading_how_a_rows_end_looks_gives_the_phase_back() =>
        Gen.Select(Rings(1), Gen.Int[-60, 60]).Holds(
            (ring, phase) =>
            {
                // One colour shows no phase.
                if (ring.Colours.Distinct().Count() == 1) return;
                PlannedPiece piece = Pieces.Of([.. ring.Sections], [.. ring.Colours], [.. ring.Rows], ring.Turn, ring.Start);
                for (int row = 0; row < ring.Rows.Length; row++)
                {
                    RowEnd end = RowEnd.Looks(piece, row, phase);
                    Assert.Equal(phase, DriftReading.AtRowEnd(piece, row, end.Colour, end.Count, expected: phase));
                }
            },
            seed: 61, cases: 3_000);

    [Fact]
    public void Law_without_a_phase_error_a_row_ends_as_planned() =>
        Rings(0.05).Holds(
            ring =>
            {
                PlannedPiece piece = Pieces.Of([.. ring.Sections], [.. ring.Colours], [.. ring.Rows], ring.Turn, ring.Start);
                for (int row = 0; row < ring.Rows.Length; row++)
                {
                    byte[] worked = piece.Colours[piece.StitchesBefore(row)..piece.StitchesBefore(row + 1)];
                    RowEnd end = RowEnd.Looks(piece, row, 0);
                    Assert.Equal(worked[^1], end.Colour);
                    int count = worked.Reverse().TakeWhile(colour => colour == end.Colour).Count();
                    int most = (int)Math.Ceiling(ring.Sections.Sum() - 1e-9);
                    if (count < worked.Length) Assert.Equal(Math.Min(count, most), end.Count);
                    else Assert.True(end.Count >= Math.Min(count, most), $"{end.Count} of {count} in row {row}");
                }
            },
            seed: 63, cases: 1_000);

    [Fact]
    public void Law_a_reading_of_each_section_looks_so_again() =>
        Rings(1).Holds(
            ring =>
            {
                // Colours by section, so that a reading means one section; sections of one stitch or more.
                int[] colours = [.. Enumerable.Range(0, ring.Sections.Length)];
                PlannedPiece piece = Pieces.Of([.. ring.Sections], [.. colours], [.. ring.Rows], ring.Turn, ring.Start);
                foreach (int colour in colours)
                {
                    for (int count = 1; count <= Math.Floor(ring.Sections[colour]); count++)
                    {
                        int early = DriftReading.AtRowEnd(piece, ring.Rows.Length - 1, colour, count)!.Value;
                        Assert.Equal((colour, count), Told(RowEnd.Looks(piece, ring.Rows.Length - 1, early)));
                    }
                }
            },
            seed: 62, cases: 1_000);

    [Fact]
    public void Law_it_looks_like_yarn_that_begins_so_much_further_along()
    {
        int seen = 0;
        Gen.Select(Rings(1), Gen.Int[-30, 30]).Holds(
            (ring, phase) =>
            {
                int row = ring.Rows.Length - 1;
                PlannedPiece piece = Pieces.Of([.. ring.Sections], [.. ring.Colours], [.. ring.Rows], ring.Turn, ring.Start);
                PlannedPiece made = Pieces.Of([.. ring.Sections], [.. ring.Colours], [.. ring.Rows], ring.Turn, ring.Start + phase);
                int count = made.Colours.Reverse().TakeWhile(c => c == made.Colours[^1]).Count();
                // A colour that began before the row is not all in the row.
                if (count >= ring.Rows[row]) return;
                seen++;
                Assert.Equal((made.Colours[^1], count), Told(RowEnd.Looks(piece, row, phase)));
            },
            seed: 63, cases: 2_000);
        Assert.True(seen > 1_000);
    }

    [Fact]
    public void Known_ends_of_a_short_row()
    {
        // 5, 4, 6, 7: a row of 11 ends with two stitches of the third colour.
        PlannedPiece piece = Pieces.Of([5, 4, 6, 7], 11, 1);
        Assert.Equal((2, 2), Told(RowEnd.Looks(piece, 0, 0)));
        Assert.Equal((2, 3), Told(RowEnd.Looks(piece, 0, 1)));
        Assert.Equal((1, 4), Told(RowEnd.Looks(piece, 0, -2)));
        Assert.Equal((3, 7), Told(RowEnd.Looks(piece, 0, 11)));
        Assert.Equal((0, 1), Told(RowEnd.Looks(piece, 0, 12)));
    }

    [Fact]
    public void Invalid_rows_and_phases_are_named()
    {
        PlannedPiece piece = Pieces.Of([5, 4, 6, 7], 11, 1);
        Assert.Throws<ArgumentOutOfRangeException>("row", () => RowEnd.Looks(piece, 1, 0));
        Assert.Throws<ArgumentOutOfRangeException>("phase", () => RowEnd.Looks(piece, 0, int.MinValue));
    }

    private static (int, int) Told(RowEnd end) => (end.Colour, end.Count);
}
