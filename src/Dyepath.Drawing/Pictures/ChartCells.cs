using System.Collections.Immutable;
using Dyepath.Core.Booklets;
using Dyepath.Core.Colours;
using Dyepath.Core.Limits;
using Dyepath.Drawing.Lists;

namespace Dyepath.Drawing.Pictures;

/// <summary>The coloured cells of a window of a chart, with their symbols and grid; the window's top left corner is the origin.</summary>
internal sealed class ChartCells(ColourChart chart, ChartGeometry geometry, ChartWindow window, double unitWidth, Effort effort)
{
    /// <summary>What it takes to place one cell.</summary>
    private const int StepsOfCell = 20;

    private readonly ImmutableArray<string> _symbols = [.. chart.Key.Select(ColourKeySigns.Symbol)];

    public double UnitWidth { get; } = unitWidth;

    public double RowHeight { get; } = unitWidth * geometry.Proportion;

    public double Width => window.Columns * UnitWidth;

    public double Height => window.Rows * RowHeight;

    /// <summary>Row 1 is at the bottom.</summary>
    public double Top(int row) => (window.EndRow - 1 - row) * RowHeight;

    /// <summary>One outline for each colour; neighbours of one colour are one rectangle.</summary>
    public IEnumerable<Shape> Colours()
    {
        var paths = new Dictionary<Srgb, PathBuilder>();
        for (var row = window.FirstRow; row < window.EndRow; row++)
        {
            var units = geometry.Units(row);
            effort.Spend(StepsOfCell * units);
            for (var start = 0; start < units;)
            {
                if (geometry.IsBlank(row, start))
                {
                    start++;
                    continue;
                }
                var colour = Colour(row, start);
                var end = start + 1;
                while (end < units && !geometry.IsBlank(row, end) && Colour(row, end) == colour)
                    end++;
                if (Clipped(geometry.Half(row, start), geometry.Half(row, end)) is var (from, to))
                {
                    if (!paths.TryGetValue(colour, out var path))
                        paths.Add(colour, path = new PathBuilder());
                    path.Rectangle(geometry.Left(window, from, to) * UnitWidth, Top(row), (to - from) / 2.0 * UnitWidth, RowHeight);
                }
                start = end;
            }
        }
        return paths.Select(pair => pair.Value.With(new Style(pair.Key)));
    }

    /// <summary>Each cell's symbol, in black or white by contrast, so that the chart reads in grey.</summary>
    public IEnumerable<Shape> Symbols()
    {
        var longest = _symbols.Max(symbol => symbol.Length);
        var size = Math.Min(RowHeight * 0.85, UnitWidth * (longest > 1 ? 0.6 : 0.75));
        for (var row = window.FirstRow; row < window.EndRow; row++)
        {
            effort.Spend(StepsOfCell * geometry.Units(row));
            var middle = Top(row) + RowHeight / 2;
            var here = row;
            var inWindow = Enumerable.Range(0, geometry.Units(row))
                .Where(unit => !geometry.IsBlank(here, unit) && HasCentre(geometry.Half(here, unit) + 1));
            foreach (var ink in inWindow.GroupBy(unit => Contrast.InkOn(Colour(here, unit))).OrderBy(ink => ink.Key.Red))
            {
                var lettering = new Lettering(size, ink.Key, Anchor.Middle);
                var texts = ink
                    .Select(unit => (X: (geometry.Left(window, geometry.Half(here, unit), geometry.Half(here, unit) + 2) + 0.5) * UnitWidth,
                        _symbols[geometry.Section(here, unit)]))
                    .OrderBy(text => text.X);
                yield return new TextRow(lettering.BaselineAround(middle), [.. texts], lettering);
            }
        }
    }

    /// <summary>Fine lines round every cell, bold ones after every tenth row and, where rows are even, every tenth column.</summary>
    public IEnumerable<Shape> Grid()
    {
        var (fine, tenth) = (new PathBuilder(), new PathBuilder());
        var begun = new Dictionary<int, int>();
        for (var row = window.FirstRow; row < window.EndRow; row++)
        {
            effort.Spend(StepsOfCell * geometry.Units(row));
            var edges = new HashSet<int>();
            foreach (var worked in geometry.Worked(row))
                edges.UnionWith(Row(fine, tenth, row, worked));
            Upright(fine, begun, edges, row);
        }
        Upright(fine, begun, [], window.EndRow);
        if (geometry.IsUniform)
        {
            for (var half = window.FirstHalf; half <= window.EndHalf; half += 2)
                Vertical((half - geometry.Whole.FirstHalf) % 20 == 0 && half > geometry.Whole.FirstHalf ? tenth : fine, half, 0, Height);
        }
        yield return fine.With(new Style(null, Ink.Grid));
        if (!tenth.IsEmpty)
            yield return tenth.With(new Style(null, Ink.Tenth));
    }

    /// <returns>Where its upright lines stand, in halves; none where those of the whole window are drawn at once.</returns>
    private IEnumerable<int> Row(PathBuilder fine, PathBuilder tenth, int row, (int First, int End) worked)
    {
        if (Clipped(geometry.Half(row, worked.First), geometry.Half(row, worked.End)) is not var (from, to))
            return [];
        var left = geometry.Left(window, from, to) * UnitWidth;
        var right = left + (to - from) / 2.0 * UnitWidth;
        fine.Line(new Point(left, Top(row) + RowHeight), new Point(right, Top(row) + RowHeight));
        fine.Line(new Point(left, Top(row)), new Point(right, Top(row)));
        if ((chart.FirstRow + row) % 10 == 0)
            tenth.Line(new Point(left, Top(row)), new Point(right, Top(row)));
        if (geometry.IsUniform)
            return [];
        var edges = Enumerable.Range(worked.First, worked.End - worked.First + 1).Select(unit => geometry.Half(row, unit));
        return edges.Where(half => half > from && half < to).Prepend(from).Append(to);
    }

    /// <summary>Draws the lines that stand below the row and do not go on in it, and begins those that begin in it.</summary>
    /// <param name="begun">The row from which each line stands.</param>
    private void Upright(PathBuilder path, Dictionary<int, int> begun, HashSet<int> edges, int row)
    {
        foreach (var (half, first) in begun.Where(line => !edges.Contains(line.Key)).OrderBy(line => line.Key).ToArray())
        {
            Vertical(path, half, Top(row - 1), Top(first) + RowHeight);
            begun.Remove(half);
        }
        foreach (var half in edges)
            begun.TryAdd(half, row);
    }

    private void Vertical(PathBuilder path, int half, double top, double bottom)
    {
        var x = geometry.Left(window, half, half) * UnitWidth;
        path.Line(new Point(x, top), new Point(x, bottom));
    }

    private Srgb Colour(int row, int unit) => chart.Key[geometry.Section(row, unit)].Colour;

    private bool HasCentre(int half) => half > window.FirstHalf && half <= window.EndHalf;

    private (int From, int To)? Clipped(int from, int to)
    {
        var clipped = (From: Math.Max(from, window.FirstHalf), To: Math.Min(to, window.EndHalf));
        return clipped.From < clipped.To ? clipped : null;
    }
}
