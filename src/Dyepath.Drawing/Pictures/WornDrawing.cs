using System.Collections.Immutable;
using Dyepath.Core.Booklets;
using Dyepath.Core.Colours;
using Dyepath.Core.Limits;
using Dyepath.Drawing.Lists;

namespace Dyepath.Drawing.Pictures;

/// <summary>Draws a garment as worn: its fabric stitch by stitch, its edgings and its figure.</summary>
internal static class WornDrawing
{
    /// <summary>Cells overlap by this share of themselves, so that no paper shows between them.</summary>
    private const double Overlap = 0.04;

    private const int StepsOfRun = 20;

    /// <summary>The back's scale over the front's: alike, or smaller where that leaves the front more room; beside it or below.</summary>
    private static readonly ImmutableArray<(double Back, bool Beside)> Ways = [(1, true), (1, false), (0.75, true), (0.75, false)];

    /// <summary>
    /// Front and back beside or below each other, in the middle of a room and in the way in which most of them is seen; of what is the same
    /// from behind, one view.
    /// </summary>
    /// <param name="gap">Between the two.</param>
    public static ImmutableArray<(Sheet Sheet, Point At)> Arranged(BookletCover cover, int size, Reader reader, Box room, double gap)
    {
        var views = Views(cover, size);
        if (views.Length == 1)
        {
            var only = views[0].Bounds;
            var sheet = Draw(views[0], cover, Math.Min(room.Width / only.Width, room.Height / only.Height), reader);
            return [(sheet, new Point(room.X + (room.Width - sheet.Width) / 2, room.Y + (room.Height - sheet.Height) / 2))];
        }
        var (front, back) = (views[0].Bounds, views[1].Bounds);
        var best = (from way in Ways
                    let scale = Largest(front, back, room, gap, way)
                    orderby scale * scale * (front.Width * front.Height + way.Back * way.Back * back.Width * back.Height) descending
                    select (scale, ratio: way.Back, beside: way.Beside)).First();
        var (first, second) = (Draw(views[0], cover, best.scale, reader), Draw(views[1], cover, best.scale * best.ratio, reader));
        if (!best.beside)
        {
            var top = room.Y + (room.Height - first.Height - gap - second.Height) / 2;
            return
            [
                (first, new Point(room.X + (room.Width - first.Width) / 2, top)),
                (second, new Point(room.X + (room.Width - second.Width) / 2, top + first.Height + gap)),
            ];
        }
        var left = room.X + (room.Width - first.Width - gap - second.Width) / 2;
        // Both hang from one line, or a smaller one stands on it.
        var middle = room.Y + (room.Height - Math.Max(first.Height, second.Height)) / 2;
        return
        [
            (first, new Point(left, middle)),
            (second, new Point(left + first.Width + gap, best.ratio < 1 ? middle + first.Height - second.Height : middle)),
        ];
    }

    /// <summary>The front's largest scale.</summary>
    private static double Largest(Box front, Box back, Box room, double gap, (double Back, bool Beside) way)
    {
        var (width, height) = (way.Back * back.Width, way.Back * back.Height);
        return way.Beside
            ? Math.Min((room.Width - gap) / (front.Width + width), room.Height / Math.Max(front.Height, height))
            : Math.Min((room.Height - gap) / (front.Height + height), room.Width / Math.Max(front.Width, width));
    }

    /// <summary>Front and back, each with what it takes in a drawing at the scale of 1 mm for 1 cm.</summary>
    public static ImmutableArray<(GarmentDrawing View, Box Bounds)> Views(BookletCover cover, int size)
    {
        var worn = cover.Worn[size].Value;
        return [.. new[] { worn.Front, worn.Behind }.OfType<GarmentDrawing>().Select(view => (view, Bounds(view)))];
    }

    /// <summary>One view by itself.</summary>
    /// <param name="scale">Millimetres for a centimetre.</param>
    public static Sheet Draw((GarmentDrawing View, Box Bounds) view, BookletCover cover, double scale, Reader reader) =>
        Draw(view.View, view.Bounds, cover, scale, reader);

    /// <summary>Of what is drawn, in centimetres, without the room for dimensions.</summary>
    private static Box Bounds(GarmentDrawing view)
    {
        var xs = view.Lines().SelectMany(p => p).Select(p => p.X).ToArray();
        var ys = view.Lines().SelectMany(p => p).Select(p => p.Y).ToArray();
        return new Box(xs.Min() - 0.5, ys.Min() - 0.5, xs.Max() - xs.Min() + 1, ys.Max() - ys.Min() + 1);
    }

    private static IEnumerable<IEnumerable<(double X, double Y)>> Lines(this GarmentDrawing view) => view.Outlines
        .Select(o => o.Points.AsEnumerable())
        .Concat(view.Patches.Select(p => new[] { (p.X, p.Y), (p.X + p.Width, p.Y + p.Height) }.AsEnumerable()));

    private static Sheet Draw(GarmentDrawing view, Box box, BookletCover cover, double scale, Reader reader)
    {
        var shapes = ImmutableArray.CreateBuilder<Shape>();
        // Made with the other hand, everything comes out mirrored.
        Point At((double X, double Y) p) => new(
            (reader.LeftHanded ? box.Right - p.X : p.X - box.X) * scale, (p.Y - box.Y) * scale);
        foreach (var line in view.Outlines.Where(o => o.Kind == "body"))
            shapes.Add(Path(line, At).With(new Style(null, new Stroke(Ink.Line, 0.25, 1))));
        foreach (var patch in view.Patches)
            shapes.AddRange(Fabric(patch, cover, At, reader.Effort));
        foreach (var line in view.Outlines.Where(o => o.Kind != "body"))
        {
            var style = line.Kind switch
            {
                "edging" => new Style(cover.Edging, new Stroke(Ink.Soft, 0.2)),
                "opening" => new Style(null, new Stroke(Ink.Soft, 0.3)),
                _ => new Style(null, new Stroke(Ink.Soft, 0.2)),
            };
            shapes.Add(Path(line, At).With(style));
        }
        return new Sheet(box.Width * scale, box.Height * scale, shapes.ToImmutable(), view.Sentence);
    }

    private static PathBuilder Path(GarmentLine line, Func<(double X, double Y), Point> at)
    {
        var path = new PathBuilder();
        if (line.Closed)
            return path.Polygon([.. line.Points.Select(at)]);
        foreach (var (from, to) in line.Points.Zip(line.Points.Skip(1)))
            path.Line(at(from), at(to));
        return path;
    }

    private static IEnumerable<Shape> Fabric(Patch patch, BookletCover cover, Func<(double X, double Y), Point> at, Effort effort)
    {
        var odd = patch.Turns % 2 != 0;
        var (across, down) = odd ? (patch.Rows, patch.Columns) : (patch.Columns, patch.Rows);
        var (width, height) = (patch.Width / across, patch.Height / down);
        var paths = new SortedDictionary<byte, PathBuilder>();
        for (var y = 0; y < down; y++)
        {
            for (var x = 0; x < across;)
            {
                var from = x;
                var colour = Cell(patch, x, y);
                while (x < across && Cell(patch, x, y) == colour)
                    x++;
                if (colour == ColourChart.Blank)
                    continue;
                effort.Spend(StepsOfRun);
                if (!paths.TryGetValue(colour, out var path))
                    paths[colour] = path = new PathBuilder();
                var (left, top) = (patch.X + from * width, patch.Y + y * height);
                var right = Math.Min(patch.X + x * width + Overlap * width, patch.X + patch.Width);
                var bottom = Math.Min(top + height * (1 + Overlap), patch.Y + patch.Height);
                path.Polygon(at((left, top)), at((right, top)), at((right, bottom)), at((left, bottom)));
            }
        }
        return paths.Select(p => (Shape)p.Value.With(new Style(p.Key == Patch.Plain ? cover.Companion : cover.Colours[p.Key])));
    }

    /// <summary>Of the patch as it lies, once its cells are turned.</summary>
    private static byte Cell(Patch patch, int x, int y)
    {
        var (column, row) = (patch.Turns % 4) switch
        {
            0 => (x, y),
            1 => (y, patch.Rows - 1 - x),
            2 => (patch.Columns - 1 - x, patch.Rows - 1 - y),
            _ => (patch.Columns - 1 - y, x),
        };
        return patch.Cells[row * patch.Columns + column];
    }
}
