using System.Collections.Immutable;
using Dyepath.Core.Booklets;
using Dyepath.Drawing.Lists;
using Dyepath.Drawing.Typography;

namespace Dyepath.Drawing.Pictures;

/// <summary>One piece drawn to a scale, with the box that it needs on the sheet.</summary>
internal sealed record SchematicPieceDrawing(ImmutableArray<Shape> Shapes, Box Bounds)
{
    private const double NameSize = 3.6;
    private const double MarkSize = 2.6;

    /// <summary>More than a lane needs, so that rounding cannot leave two lines in it.</summary>
    private const double Clear = 0.01;

    /// <summary>Further out than this no line looks for room.</summary>
    private const int MostLanes = 8;

    /// <param name="scale">Millimetres on the sheet for a centimetre of the piece.</param>
    /// <param name="inKey">The line with a number in place of its words, which it puts into the key.</param>
    public static SchematicPieceDrawing Of(SchematicPiece piece, double scale, Reader reader, Func<DimensionLine, DimensionLine> inKey)
    {
        var outline = piece.Outline.Select(p => Place(p, scale)).ToArray();
        var shapes = ImmutableArray.CreateBuilder<Shape>();
        var bounds = BoundsOf(outline);
        shapes.Add(new PathBuilder().Polygon(outline).With(new Style(null, Ink.Edge)));
        var taken = new List<Box>();
        var named = NameAndDirection(piece, reader.Text(piece.Name), bounds, taken);
        (Point From, Point To)[] edges =
        [
            .. outline.Select((corner, i) => (corner, outline[(i + 1) % outline.Length])),
            .. piece.Marks.Select(m => (Place(m.From, scale), Place(m.To, scale))),
        ];
        var lines = Lines(piece, scale, reader, inKey, (taken, edges));
        foreach (var line in lines)
        {
            shapes.AddRange(line.Draw());
            bounds = BoundsOf([.. Corners(bounds), .. line.Corners()]);
        }
        shapes.AddRange(named);
        taken.AddRange(lines.Select(l => l.LabelBox));
        (Point, Point)[] drawn = [.. edges, .. lines.SelectMany(l => l.Strokes())];
        foreach (var mark in piece.Marks)
            shapes.AddRange(Mark(mark, scale, BoundsOf(outline), reader, (taken, drawn)));
        bounds = BoundsOf([.. Corners(bounds), .. taken.SelectMany(Corners)]);
        return new SchematicPieceDrawing(shapes.ToImmutable(), bounds);
    }

    /// <summary>Each line as near as its label stands clear of everything else, and everything else of it.</summary>
    /// <param name="around">Words and lines that stand already.</param>
    private static List<DimensionLine> Lines(
        SchematicPiece piece, double scale, Reader reader, Func<DimensionLine, DimensionLine> inKey,
        (List<Box> Words, (Point From, Point To)[] Edges) around)
    {
        var wanted = piece.Dimensions.OrderBy(d => Math.Abs(d.Offset)).Select(Nearest).OfType<DimensionLine>().ToArray();
        var lines = new List<DimensionLine>();
        for (var i = 0; i < wanted.Length; i++)
        {
            // Those that come later may lie further out: their witness lines then pass beside this one.
            var passing = wanted[(i + 1)..].SelectMany(later => later.Witnesses()).ToArray();
            lines.Add(Lanes(wanted[i]).FirstOrDefault(l => IsClear(l, passing)) ?? Numbered(wanted[i], passing));
        }
        return lines;

        DimensionLine? Nearest(Dimension dimension)
        {
            var (from, to) = (Place(dimension.From, scale), Place(dimension.To, scale));
            var way = to - from;
            if (way.Length < 0.01)
                return null;
            var away = new Point(way.Y, -way.X) * (Math.Sign(dimension.Offset) / way.Length);
            var distance = dimension.Offset == 0 ? 0 : Math.Max(Math.Abs(dimension.Offset) * scale, DimensionLine.Lane);
            var line = new DimensionLine(from, to, away, distance, reader.Text(dimension.Label));
            return line.LabelBelongsInKey ? inKey(line) : line;
        }

        // Words for which there is no room anywhere, where a number has some.
        DimensionLine Numbered(DimensionLine line, (Point From, Point To)[] passing)
        {
            var numbered = line.HasWords ? Lanes(line with { Label = "0" }).ToArray() : [];
            var clear = Array.Find(numbered, l => IsClear(l, passing)) ?? Array.Find(numbered, l => IsClear(l, []));
            return clear is null
                ? Lanes(line).FirstOrDefault(l => IsClear(l, [])) ?? Lanes(line).First()
                : clear with { Label = inKey(line).Label };
        }

        // From the nearest outwards, each in a lane of its own; inside the piece a line stays where it is.
        IEnumerable<DimensionLine> Lanes(DimensionLine line)
        {
            for (var lane = 0; lane < (line.Distance > 0 ? MostLanes : 1); lane++)
            {
                while (line.Distance > 0 && lines.Find(line.SharesLane) is { } neighbour)
                    line = line with { Distance = line.Distance + DimensionLine.Lane + Clear - (line.LanePlace - neighbour.LanePlace) };
                foreach (var placed in line.LabelPlaces())
                    yield return placed;
                line = line with { Distance = line.Distance + DimensionLine.Lane + Clear };
            }
        }

        bool IsClear(DimensionLine line, (Point From, Point To)[] passing)
        {
            var box = line.LabelBox;
            return !around.Words.Exists(box.Overlaps)
                && !around.Edges.Concat(passing).Any(e => box.Meets(e.From, e.To))
                // Inside the piece words that a line is too short for have no place along it.
                && (line.Distance > 0 || line.LabelFits || !line.Strokes().Any(s => box.Meets(s.From, s.To)))
                && !lines.Exists(other => box.Overlaps(other.LabelBox) || other.Strokes().Any(s => box.Meets(s.From, s.To))
                    || line.Strokes().Any(s => other.LabelBox.Meets(s.From, s.To)));
        }
    }

    private static List<Shape> NameAndDirection(SchematicPiece piece, string name, Box inside, List<Box> taken)
    {
        var shapes = new List<Shape>();
        var fits = Typeface.BoldFace.Width(name, 1);
        var size = Math.Min(NameSize, (inside.Width - 3) / Math.Max(fits, 0.1));
        var middle = new Point(inside.X + inside.Width / 2, inside.Y + inside.Height / 2);
        var named = size >= 2.2 && inside.Height >= 6 ? middle : new Point(middle.X, inside.Bottom + 14);
        size = Math.Clamp(size, 2.2, NameSize);
        shapes.Add(DimensionLine.LabelLine(named, name, 0, new Lettering(size, Ink.Black, Anchor.Middle, Bold: true)));
        taken.Add(new Box(named.X - fits * size / 2, named.Y - size / 2, fits * size, size));
        var way = new Point(piece.WorkedTowards.X, piece.WorkedTowards.Y);
        if (way.Length == 0 || inside.Height < 16 || inside.Width < 8)
            return shapes;
        way *= 1 / way.Length;
        var reach = Math.Min(5, Math.Min(inside.Width * 0.3, inside.Height * 0.12));
        var centre = new Point(middle.X, middle.Y + size + 1.5 + Math.Max(2, reach * Math.Abs(way.Y)));
        shapes.AddRange(Arrow.Drawn(centre - way * reach, centre + way * reach, 2.4, new Stroke(Ink.Black, 0.3)));
        taken.Add(new Box(centre.X - reach, centre.Y - reach, 2 * reach, 2 * reach));
        return shapes;
    }

    /// <summary>Heavier line, and its words on the inner side where nothing else stands.</summary>
    private static IEnumerable<Shape> Mark(
        SchematicMark mark, double scale, Box inside, Reader reader, (List<Box> Words, (Point From, Point To)[] Lines) around)
    {
        var (from, to) = (Place(mark.From, scale), Place(mark.To, scale));
        yield return new PathBuilder().Line(from, to).With(new Style(null, new Stroke(Ink.Black, 1)));
        var words = reader.Text(mark.Label);
        var way = to - from;
        if (words.Length == 0 || way.Length < 0.01)
            yield break;
        var along = way * (1 / way.Length);
        var inward = new Point(-along.Y, along.X);
        var centre = new Point(inside.X + inside.Width / 2, inside.Y + inside.Height / 2) - (from + to) * 0.5;
        if (inward.X * centre.X + inward.Y * centre.Y < 0)
            inward *= -1;
        var degrees = DimensionLine.Upright(along);
        var half = Typeface.Regular.Width(words, MarkSize) / 2;
        var (across, down) = (half * Math.Abs(along.X) + MarkSize * 0.6 * Math.Abs(along.Y),
            half * Math.Abs(along.Y) + MarkSize * 0.6 * Math.Abs(along.X));
        double[] alongTheMark = [0.5, 0.3, 0.7];
        double[] intoThePiece = [2.6, 6, 9.5];
        foreach (var middle in intoThePiece.SelectMany(away => alongTheMark.Select(share => from + way * share + inward * away)))
        {
            var box = new Box(middle.X - across, middle.Y - down, 2 * across, 2 * down);
            if (around.Words.Exists(box.Overlaps) || around.Lines.Any(l => box.Meets(l.From, l.To)))
                continue;
            around.Words.Add(box);
            yield return DimensionLine.LabelLine(middle, words, degrees, new Lettering(MarkSize, Ink.Soft, Anchor.Middle));
            yield break;
        }
    }

    private static Point Place(PlanePoint point, double scale) => new(point.X * scale, point.Y * scale);

    private static Point[] Corners(Box box) => [new(box.X, box.Y), new(box.Right, box.Bottom)];

    private static Box BoundsOf(IEnumerable<Point> points)
    {
        var all = points.ToArray();
        var (left, top) = (all.Min(p => p.X), all.Min(p => p.Y));
        return new Box(left, top, all.Max(p => p.X) - left, all.Max(p => p.Y) - top);
    }
}
