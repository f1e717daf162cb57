using Dyepath.Core.Booklets;
using Dyepath.Core.Fabrics;

namespace Dyepath.Drawing.Pictures;

/// <summary>
/// Rows and half columns of a chart, half columns counted as <see cref="ColourChart.RowOffsets"/> are; ends are exclusive.
/// </summary>
internal readonly record struct ChartWindow(int FirstRow, int EndRow, int FirstHalf, int EndHalf)
{
    public int Rows => EndRow - FirstRow;

    public double Columns => (EndHalf - FirstHalf) / 2.0;
}

/// <summary>Where the units of a colour chart lie and which way its rows run, on the page of one hand.</summary>
internal sealed class ChartGeometry
{
    private readonly ColourChart _chart;
    private readonly bool _leftHanded;
    private readonly int[] _starts;

    public ChartGeometry(ColourChart chart, bool leftHanded)
    {
        Validate(chart);
        _chart = chart;
        _leftHanded = leftHanded;
        _starts = new int[chart.Rows];
        for (var row = 1; row < chart.Rows; row++)
            _starts[row] = _starts[row - 1] + chart.RowUnits[row - 1];
        var first = chart.RowOffsets.Min();
        var end = Enumerable.Range(0, chart.Rows).Max(r => chart.RowOffsets[r] + 2 * chart.RowUnits[r]);
        Whole = new ChartWindow(0, chart.Rows, first, end);
        IsUniform = chart.RowOffsets.All(o => o == chart.RowOffsets[0]) && chart.RowUnits.All(u => u == chart.RowUnits[0])
            && !chart.Cells.Contains(ColourChart.Blank);
    }

    public ChartWindow Whole { get; }

    /// <summary>Every row spans the same columns, so that grid lines run through.</summary>
    public bool IsUniform { get; }

    /// <summary>Row height over unit width.</summary>
    public double Proportion => _chart.RowHeight / _chart.UnitWidth;

    public bool Alternates => _chart.Working is Working.Turned or Working.RoundsTurned;

    /// <summary>Whether the row is worked with the right side facing; rounds without turns always are.</summary>
    public bool IsRightSide(int row) => !Alternates || (_chart.FirstRow + row) % 2 == 1;

    /// <summary>Right-handed makers begin right-side rows at the right.</summary>
    public bool BeginsAtRight(int row) => IsRightSide(row) != _leftHanded;

    public int Section(int row, int unit) => _chart.Cells[_starts[row] + unit];

    public bool IsBlank(int row, int unit) => Section(row, unit) == ColourChart.Blank;

    /// <summary>Stretches of a row's units between blanks; ends are exclusive.</summary>
    public IEnumerable<(int First, int End)> Worked(int row)
    {
        for (var unit = 0; unit < Units(row);)
        {
            var first = unit;
            while (unit < Units(row) && !IsBlank(row, unit))
                unit++;
            if (unit > first)
                yield return (first, unit);
            while (unit < Units(row) && IsBlank(row, unit))
                unit++;
        }
    }

    /// <summary>What of a window has stitches: without rows and columns at its edges that have none; null where none has.</summary>
    public ChartWindow? Worked(ChartWindow window)
    {
        var (firstRow, endRow, first, end) = (window.EndRow, window.FirstRow, window.EndHalf, window.FirstHalf);
        for (var row = window.FirstRow; row < window.EndRow; row++)
        {
            foreach (var (from, to) in Worked(row))
            {
                var (left, right) = (Math.Max(window.FirstHalf, Half(row, from)), Math.Min(window.EndHalf, Half(row, to)));
                if (left >= right)
                    continue;
                (firstRow, endRow, first, end) = (Math.Min(firstRow, row), row + 1, Math.Min(first, left), Math.Max(end, right));
            }
        }
        return firstRow < endRow ? new ChartWindow(firstRow, endRow, first, end) : null;
    }

    public int Units(int row) => _chart.RowUnits[row];

    /// <summary>Half column at which a unit starts, counted as the row offsets are.</summary>
    public int Half(int row, int unit) => _chart.RowOffsets[row] + 2 * unit;

    /// <summary>Distance from the window's left edge, in unit widths, of a stretch between two half columns.</summary>
    public double Left(ChartWindow window, int firstHalf, int endHalf) =>
        _leftHanded ? (firstHalf - window.FirstHalf) / 2.0 : (window.EndHalf - endHalf) / 2.0;

    private static void Validate(ColourChart chart)
    {
        ArgumentNullException.ThrowIfNull(chart);
        if (chart.Rows < 1 || chart.Columns < 1)
            throw new ArgumentException($"A chart has at least one row and one column, not {chart.Rows} and {chart.Columns}.", nameof(chart));
        if (chart.RowUnits.Length != chart.Rows || chart.RowOffsets.Length != chart.Rows)
            throw new ArgumentException($"A chart of {chart.Rows} rows needs as many row units and offsets, not {chart.RowUnits.Length} and {chart.RowOffsets.Length}.", nameof(chart));
        if (chart.RowUnits.Any(u => u < 1 || u > chart.Columns))
            throw new ArgumentException($"Row units must lie in [1, {chart.Columns}].", nameof(chart));
        if (chart.UnitWidth.Millimetres <= 0 || chart.RowHeight.Millimetres <= 0)
            throw new ArgumentException("Unit width and row height must be above 0 mm.", nameof(chart));
        if (chart.Cells.Length != chart.RowUnits.Sum())
            throw new ArgumentException($"{chart.RowUnits.Sum()} units need as many cells, not {chart.Cells.Length}.", nameof(chart));
        if (chart.Cells.Any(section => section >= chart.Key.Length && section != ColourChart.Blank))
            throw new ArgumentException($"Cells name sections from 0 to {chart.Key.Length - 1}, not {chart.Cells.Max()}.", nameof(chart));
    }
}
