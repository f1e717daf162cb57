using System.Collections.Immutable;
using Dyepath.Core.Booklets;
using Dyepath.Core.Quantities;

namespace Dyepath.Drawing.Pictures;

/// <summary>
/// A chart turned the way its piece is worn: what was worked sideways has its first row at the left and its rows upright.
/// </summary>
internal static class WornChart
{
    /// <summary>Fabric this wide is enough to be seen, of a piece whose rows are longer.</summary>
    private static readonly Length Broad = Length.FromCentimetres(60);

    /// <param name="proportion">Height over width of the picture that rows which come again shall fill.</param>
    public static ColourChart Of(ColourChart chart, double proportion)
    {
        if (!chart.Sideways)
            return chart;
        if (chart.Repeats)
            chart = Tiled(chart, (int)Math.Ceiling(Length.Min(chart.UnitWidth * chart.Columns / proportion, Broad) / chart.RowHeight));
        return Turned(chart);
    }

    /// <summary>The rows over and over, to this many at least.</summary>
    public static ColourChart Tiled(ColourChart chart, int rows)
    {
        var times = Math.Max(1, (rows + chart.Rows - 1) / chart.Rows);
        return chart with
        {
            Rows = chart.Rows * times,
            Cells = [.. Enumerable.Repeat(chart.Cells, times).SelectMany(c => c)],
            RowUnits = [.. Enumerable.Repeat(chart.RowUnits, times).SelectMany(r => r)],
            RowOffsets = [.. Enumerable.Repeat(chart.RowOffsets, times).SelectMany(r => r)],
        };
    }

    /// <summary>Up becomes right, right becomes down; half units become lines of their own where rows stand half a unit over.</summary>
    private static ColourChart Turned(ColourChart chart)
    {
        var first = chart.RowOffsets.Min();
        var halves = chart.RowOffsets.Any(o => (o - first) % 2 != 0) ? 1 : 2;
        var lines = chart.RowOffsets.Zip(chart.RowUnits, (offset, units) => offset - first + 2 * units).Max() / halves;
        var cells = new byte[lines * chart.Rows];
        Array.Fill(cells, ColourChart.Blank);
        for (var (row, at) = (0, 0); row < chart.Rows; row++)
        {
            for (var unit = 0; unit < chart.RowUnits[row]; unit++, at++)
            {
                var line = (chart.RowOffsets[row] - first + 2 * unit) / halves;
                for (var half = 0; half < 2; half += halves)
                    cells[(line + half) * chart.Rows + chart.Rows - 1 - row] = chart.Cells[at];
            }
        }
        if (chart.Gored)
        {
            for (var line = 0; line < lines; line++)
                Close(cells.AsSpan(line * chart.Rows, chart.Rows));
        }
        return chart with
        {
            Columns = chart.Rows,
            Rows = lines,
            Cells = [.. cells],
            RowUnits = [.. Enumerable.Repeat(chart.Rows, lines)],
            RowOffsets = [.. Enumerable.Repeat(0, lines)],
            FirstRow = 1,
            UnitWidth = chart.RowHeight,
            RowHeight = chart.UnitWidth * (halves / 2.0),
            Repeats = false,
            Sideways = false,
        };
    }

    /// <summary>Moves what a line has together, into its middle.</summary>
    private static void Close(Span<byte> line)
    {
        byte[] there = [.. line.ToArray().Where(c => c != ColourChart.Blank)];
        line.Fill(ColourChart.Blank);
        there.CopyTo(line[((line.Length - there.Length) / 2)..]);
    }
}
