using System.Collections.Immutable;
using System.Globalization;
using Dyepath.Core.Booklets;
using Dyepath.Core.Limits;
using Dyepath.Core.Planning;
using Dyepath.Drawing.Lists;

namespace Dyepath.Drawing.Pictures;

/// <summary>
/// Draws a colour chart as it is worked: row 1 at the bottom, each row's number and an arrow where the row begins.
/// A chart too large for the room is divided into parts, after an overview of where each lies.
/// </summary>
internal static class ColourChartDrawing
{
    private const double Side = 10;
    private const double Below = 5;
    private const double Above = 1.5;

    /// <summary>A cell that is read with ease, over the smallest that takes a legible symbol; smaller ones only save a part.</summary>
    private const double Easy = 3.1 / 2.7;

    /// <summary>Width on a screen, where there is room, in millimetres.</summary>
    private const double ScreenCell = 4.6;

    private const double LargestCell = 5.2;

    /// <summary>Columns that a number takes.</summary>
    private const int RoomOfNumber = 3;

    /// <summary>Height over width of the picture on a cover.</summary>
    private const double CoverProportion = 0.62;

    /// <summary>The same at most, where a whole piece is drawn.</summary>
    private const double TallestCover = 0.8;

    public static DrawnPicture Draw(ColourChart chart, string title, string description, Reader reader, Room room)
    {
        var geometry = new ChartGeometry(chart, reader.LeftHanded);
        var key = ColourKeySigns.Of(chart.Key);
        var shortSide = Math.Min(1, geometry.Proportion);
        if (!room.IsPaged)
        {
            var onScreen = Math.Max(ScreenCell, Easy * room.SmallestCell / shortSide);
            return new DrawnPicture([Part(chart, geometry, geometry.Whole, onScreen, title, description, reader.Effort)], key);
        }
        var inside = room with { Width = room.Width - 2 * Side, Height = room.Height - Below - Above };
        if (Fitting(geometry.Whole, geometry, inside) is var fitting && fitting >= room.SmallestCell / shortSide)
            return new DrawnPicture([Part(chart, geometry, geometry.Whole, fitting, title, description, reader.Effort)], key);
        var parts = Divide(geometry, inside.Width * shortSide, inside.Height * shortSide / geometry.Proportion, room.SmallestCell);
        var unitWidth = parts.Min(part => Fitting(part.Window, geometry, inside));
        var sheets = parts.Select(part => Part(chart, geometry, part.Window, unitWidth, $"{title} {Extent(chart, geometry, part, reader)}", description, reader.Effort));
        return new DrawnPicture([Overview(chart, geometry, parts, $"{title} {reader.Text("Where each part lies.")}", description, room, reader.Effort), .. sheets], key);
    }

    private static double Fitting(ChartWindow window, ChartGeometry geometry, Room room)
    {
        var fits = Math.Min(room.Width / window.Columns, room.Height / (window.Rows * geometry.Proportion));
        return Math.Min(Math.Max(LargestCell, 1.3 * room.SmallestCell), fits);
    }

    /// <summary>
    /// The colours alone, to scale and as they are worn, for a cover: a piece that is cut whole, of others five eighths as tall as wide
    /// where the fabric has the rows.
    /// </summary>
    public static Sheet Fabric(ColourChart chart, Reader reader, double width, string title) =>
        Fabric(chart, reader, title, new Room(width, TallestCover * width), CoverProportion);

    /// <summary>The same within a room: across the whole of it, and as tall as it or the fabric is.</summary>
    public static Sheet Fabric(ColourChart chart, Reader reader, string title, Room room) =>
        Fabric(chart, reader, title, room, room.Height / room.Width);

    /// <summary>Of a piece that is no rectangle. Rows that only alternate differ by one.</summary>
    public static bool IsCut(ColourChart chart) =>
        chart.Cells.Contains(ColourChart.Blank) || chart.RowUnits.Max() - chart.RowUnits.Min() > 1;

    /// <param name="proportion">Height over width where the fabric has the rows.</param>
    private static Sheet Fabric(ColourChart chart, Reader reader, string title, Room room, double proportion)
    {
        var width = room.Width;
        var whole = IsCut(chart);
        chart = WornChart.Of(chart, proportion);
        var geometry = new ChartGeometry(chart, reader.LeftHanded);
        var unit = width / geometry.Whole.Columns;
        if (whole)
            unit = Math.Min(unit, room.Height / (chart.Rows * geometry.Proportion));
        var wanted = whole ? chart.Rows : Math.Max(1, (int)(width * proportion / (unit * geometry.Proportion)));
        if (chart.Repeats && wanted > chart.Rows)
        {
            chart = WornChart.Tiled(chart, wanted);
            geometry = new ChartGeometry(chart, reader.LeftHanded);
        }
        var cells = new ChartCells(chart, geometry, geometry.Whole with { EndRow = Math.Min(wanted, chart.Rows) }, unit, reader.Effort);
        return new Sheet(cells.Width, cells.Height, [.. cells.Colours()], title);
    }

    private static Sheet Part(
        ColourChart chart, ChartGeometry geometry, ChartWindow window, double unitWidth, string title, string description, Effort effort)
    {
        var cells = new ChartCells(chart, geometry, window, unitWidth, effort);
        var inCells = new ChartCells(chart, geometry, window, 1, effort);
        ImmutableArray<Shape> inside = [new Group([.. inCells.Colours(), .. inCells.Symbols()], default, Scale: unitWidth),
            .. cells.Grid(), .. RowNumbers(chart, geometry, window, cells), .. ColumnNumbers(geometry, window, cells)];
        return new Sheet(
            cells.Width + 2 * Side, cells.Height + Above + Below, [new Group(inside, new Point(Side, Above))], title, description);
    }

    private static IEnumerable<Shape> RowNumbers(ColourChart chart, ChartGeometry geometry, ChartWindow window, ChartCells cells)
    {
        var size = Math.Min(2.8, cells.RowHeight * 0.9);
        var arrow = Math.Min(2.6, cells.RowHeight);
        for (var row = window.FirstRow; row < window.EndRow; row++)
        {
            var middle = cells.Top(row) + cells.RowHeight / 2;
            var atRight = geometry.BeginsAtRight(row);
            var outward = atRight ? 1 : -1;
            var edge = atRight ? cells.Width : 0;
            var lettering = new Lettering(size, Ink.Black, atRight ? Anchor.Start : Anchor.End, Bold: (chart.FirstRow + row) % 10 == 0);
            var number = (chart.FirstRow + row).ToString(CultureInfo.InvariantCulture);
            foreach (var shape in Arrow.Drawn(
                new Point(edge + outward * (0.7 + arrow), middle), new Point(edge + outward * 0.7, middle), arrow * 0.5, Ink.Fine))
                yield return shape;
            yield return new TextLine(new Point(edge + outward * (1.3 + arrow), lettering.BaselineAround(middle)), number, lettering);
        }
    }

    private static IEnumerable<Shape> ColumnNumbers(ChartGeometry geometry, ChartWindow window, ChartCells cells)
    {
        var first = geometry.Whole.FirstHalf;
        var lettering = new Lettering(2.6, Ink.Black, Anchor.Middle);
        var ticks = new PathBuilder();
        for (var half = first; half < window.EndHalf; half += 2)
        {
            var column = (half - first) / 2 + 1;
            // The first one shown, and every tenth that leaves it room.
            var into = (half - window.FirstHalf) / 2;
            if (half < window.FirstHalf || (into != 0 && (column % 10 != 0 || into < RoomOfNumber)))
                continue;
            var x = (geometry.Left(window, half, half + 2) + 0.5) * cells.UnitWidth;
            ticks.Line(new Point(x, cells.Height + 0.3), new Point(x, cells.Height + 1.1)).Line(new Point(x, -0.3), new Point(x, -1.1));
            yield return new TextLine(new Point(x, cells.Height + 3.5), column.ToString(CultureInfo.InvariantCulture), lettering);
        }
        if (!ticks.IsEmpty)
            yield return ticks.With(new Style(null, Ink.Fine));
    }

    /// <summary>
    /// Parts in strips of equally many rows, each strip of as many columns as its rows have, in tens where they can be; lettered from the
    /// first stitch on and numbered from the first row up. Where a part has no stitch in its first or last rows, it is without them.
    /// </summary>
    /// <param name="width">For the columns, where a cell's shorter side is 1.</param>
    /// <param name="height">For the rows, likewise.</param>
    private static ImmutableArray<(string Name, ChartWindow Window)> Divide(
        ChartGeometry geometry, double width, double height, double smallest)
    {
        var whole = geometry.Whole;
        var rows = Step(whole.Rows, height, smallest);
        var parts = ImmutableArray.CreateBuilder<(string, ChartWindow)>();
        for (var row = 0; row * rows < whole.Rows; row++)
        {
            var strip = geometry.Worked(whole with { FirstRow = row * rows, EndRow = Math.Min(whole.EndRow, (row + 1) * rows) });
            var columns = Step((int)Math.Ceiling(strip!.Value.Columns), width, smallest);
            var letter = 0;
            for (var half = strip.Value.FirstHalf; half < strip.Value.EndHalf; half += columns * 2)
            {
                var end = Math.Min(strip.Value.EndHalf, half + columns * 2);
                if (geometry.Worked(strip.Value with { FirstHalf = half, EndHalf = end }) is { } part)
                    parts.Add(($"{ColumnName(letter++)}{row + 1}", part));
            }
        }
        return parts.ToImmutable();
    }

    /// <summary>
    /// Shares <paramref name="all"/> out evenly among as few parts as there can be, in tens where they are read with ease.
    /// </summary>
    private static int Step(int all, double room, double smallest)
    {
        var most = Math.Max(1, (int)(room / smallest));
        if (all <= most)
            return all;
        var parts = (all + most - 1) / most;
        var even = (all + parts - 1) / parts;
        var tens = (even + 9) / 10 * 10;
        return tens * Easy * smallest <= room && all - (parts - 1) * tens >= tens / 2 ? tens : even;
    }

    private static string ColumnName(int column) =>
        column < 26 ? ((char)('A' + column)).ToString() : $"{ColumnName(column / 26 - 1)}{(char)('A' + column % 26)}";

    private static string Extent(ColourChart chart, ChartGeometry geometry, (string Name, ChartWindow Window) part, Reader reader)
    {
        var window = part.Window;
        var first = (window.FirstHalf - geometry.Whole.FirstHalf) / 2 + 1;
        var last = (window.EndHalf - geometry.Whole.FirstHalf + 1) / 2;
        var (from, to) = (chart.FirstRow + window.FirstRow, chart.FirstRow + window.EndRow - 1);
        return reader.Text(geometry.Alternates && chart.Working == Core.Fabrics.Working.Turned
            ? Phrase.Of($"Part {Phrase.Named(part.Name)}: columns {first} to {last}, rows {from} to {to}.")
            : Phrase.Of($"Part {Phrase.Named(part.Name)}: columns {first} to {last}, rounds {from} to {to}."));
    }

    private static Sheet Overview(ColourChart chart, ChartGeometry geometry, ImmutableArray<(string Name, ChartWindow Window)> parts,
        string title, string description, Room room, Effort effort)
    {
        var unit = Math.Min(room.Width * 0.8 / geometry.Whole.Columns, room.Height * 0.4 / (geometry.Whole.Rows * geometry.Proportion));
        var cells = new ChartCells(chart, geometry, geometry.Whole, unit, effort);
        var shapes = ImmutableArray.CreateBuilder<Shape>();
        shapes.AddRange(cells.Colours());
        var frames = new PathBuilder();
        var lettering = new Lettering(3, Ink.Black, Anchor.Middle, Bold: true);
        foreach (var (name, window) in parts)
        {
            var x = geometry.Left(geometry.Whole, window.FirstHalf, window.EndHalf) * unit;
            var y = cells.Top(window.EndRow - 1);
            var (width, height) = (window.Columns * unit, window.Rows * cells.RowHeight);
            frames.Rectangle(x, y, width, height);
            var middle = new Point(x + width / 2, y + height / 2);
            shapes.Add(new Ellipse(middle, 3.4, 2.6, new Style(Ink.Paper, Ink.Fine)));
            shapes.Add(new TextLine(new Point(middle.X, lettering.BaselineAround(middle.Y)), name, lettering));
        }
        shapes.Add(frames.With(new Style(null, Ink.Edge)));
        return new Sheet(cells.Width + 1, cells.Height + 1, [new Group(shapes.ToImmutable(), new Point(0.5, 0.5))], title, description);
    }
}
