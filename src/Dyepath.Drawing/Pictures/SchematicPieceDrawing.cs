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

    /// <param name="scale">Millimetres on the sheet for a centimetre of the piece.</param>
    /// <param name="label">Words of a dimension, or its number in the key.</param>
    public static SchematicPieceDrawing Of(SchematicPiece piece, double scale, Reader reader, Func<DimensionLine, DimensionLine> label)
    {
        var outline = piece.Outline.Select(p => Place(p, scale)).ToArray();
        var shapes = ImmutableArray.CreateBuilder<Shape>();
        var bounds = BoundsOf(outline);
        shapes.Add(new PathBuilder().Polygon(outline).With(new Style(null, Ink.Edge)));
        foreach (var line in Lines(piece, scale, reader, label))
        {
            shapes.AddRange(line.Draw());
            bounds = BoundsOf([.. Corners(bounds), .. line.Corners()]);
        }
        var taken = new List<Box>();
        shapes.AddRange(NameAndDirection(piece, BoundsOf(outline), reader.LeftHanded, taken));
        foreach (var mark in piece.Marks)
            shapes.AddRange(Mark(mark, scale, BoundsOf(outline), reader, taken));
        bounds = BoundsOf([.. Corners(bounds), .. taken.SelectMany(Corners)]);
        return new SchematicPieceDrawing(shapes.ToImmutable(), bounds);
    }

    private static List<DimensionLine> Lines(SchematicPiece piece, double scale, Reader reader, Func<DimensionLine, DimensionLine> label)
    {
        var lines = new List<DimensionLine>();
        foreach (var dimension in piece.Dimensions.OrderBy(d => Math.Abs(d.Offset)))
        {
            var (from, to) = (Place(dimension.From, scale), Place(dimension.To, scale));
            var way = to - from;
            if (way.Length < 0.01)
                continue;
            var away = new Point(way.Y, -way.X) * (Math.Sign(dimension.Offset) / way.Length);
            var distance = dimension.Offset == 0 ? 0 : Math.Max(Math.Abs(dimension.Offset) * scale, DimensionLine.Lane);
            var line = label(new DimensionLine(from, to, away, distance, reader.Text(dimension.Label)));
            while (line.Distance > 0 && lines.Find(line.SharesLane) is { } neighbour)
                line = line with { Distance = line.Distance + DimensionLine.Lane + Clear - (line.LanePlace - neighbour.LanePlace) };
            lines.Add(line);
        }
        return lines;
    }

    private static List<Shape> NameAndDirection(SchematicPiece piece, Box inside, bool leftHanded, List<Box> taken)
    {
        var shapes = new List<Shape>();
        var fits = Typeface.BoldFace.Width(piece.Name, 1);
        var size = Math.Min(NameSize, (inside.Width - 3) / Math.Max(fits, 0.1));
        var middle = new Point(inside.X + inside.Width / 2, inside.Y + inside.Height / 2);
        var named = size >= 2.2 && inside.Height >= 6 ? middle : new Point(middle.X, inside.Bottom + 14);
        size = Math.Clamp(size, 2.2, NameSize);
        shapes.Add(DimensionLine.LabelLine(named, piece.Name, 0, new Lettering(size, Ink.Black, Anchor.Middle, Bold: true)));
        taken.Add(new Box(named.X - fits * size / 2, named.Y - size / 2, fits * size, size));
        var way = new Point(leftHanded ? -piece.WorkedTowards.X : piece.WorkedTowards.X, piece.WorkedTowards.Y);
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
    private static IEnumerable<Shape> Mark(SchematicMark mark, double scale, Box inside, Reader reader, List<Box> taken)
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
            if (taken.Exists(box.Overlaps))
                continue;
            taken.Add(box);
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
