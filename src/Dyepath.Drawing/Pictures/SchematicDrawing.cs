using System.Collections.Immutable;
using System.Globalization;
using Dyepath.Core.Booklets;
using Dyepath.Core.Quantities;
using Dyepath.Drawing.Lists;

namespace Dyepath.Drawing.Pictures;

/// <summary>Draws the pieces of a garment side by side at one scale, as on a pattern-cutter's draft, with a scale bar.</summary>
internal static class SchematicDrawing
{
    private const double Gap = 8;
    private const double BarHeight = 9;
    private const double Tallest = 125;
    private const double LargestCentimetres = 100_000;

    public static DrawnPicture Draw(Schematic schematic, string title, string description, Reader reader, Room room)
    {
        if (schematic.Pieces.IsEmpty || schematic.Pieces.Any(p => p.Outline.Length < 3))
            throw new ArgumentException("A schematic needs pieces of at least three corners.", nameof(schematic));
        foreach (var point in schematic.Pieces.SelectMany(Points))
        {
            Guard.InRange(point.X, -LargestCentimetres, LargestCentimetres, "cm", nameof(schematic));
            Guard.InRange(point.Y, -LargestCentimetres, LargestCentimetres, "cm", nameof(schematic));
        }
        var height = Math.Min(room.Height, Tallest) - BarHeight;
        var tallest = schematic.Pieces.Max(p => p.Outline.Max(o => o.Y) - p.Outline.Min(o => o.Y));
        var widest = schematic.Pieces.Max(p => p.Outline.Max(o => o.X) - p.Outline.Min(o => o.X));
        var scale = Math.Min(room.Width / Math.Max(widest, 1), height / Math.Max(tallest, 1));
        while (true)
        {
            var key = new List<KeyEntry>();
            var here = scale;
            var pieces = schematic.Pieces.Select(p => SchematicPieceDrawing.Of(p, here, reader, line => InKey(line, key))).ToArray();
            var (placed, size) = Shelves(pieces, room.Width);
            if ((size.X <= room.Width && size.Y <= height) || scale < 0.05)
                return Finished(placed, size, scale, key, title, description, reader);
            scale *= 0.94;
        }
    }

    private static IEnumerable<PlanePoint> Points(SchematicPiece piece) =>
    [
        .. piece.Outline,
        piece.WorkedTowards,
        .. piece.Dimensions.SelectMany(d => new[] { d.From, d.To, new PlanePoint(d.Offset, 0) }),
        .. piece.Marks.SelectMany(m => new[] { m.From, m.To }),
    ];

    /// <summary>A number in place of a line's words, which go into the key.</summary>
    private static DimensionLine InKey(DimensionLine line, List<KeyEntry> key)
    {
        if (key.Find(entry => entry.Text == line.Label) is { } known)
            return line with { Label = known.Sign.Title };
        var number = (key.Count + 1).ToString(CultureInfo.InvariantCulture);
        var lettering = new Lettering(3, Ink.Black, Anchor.Middle, Bold: true);
        key.Add(new KeyEntry(
            new Sheet(5, 5, [new TextLine(new Point(2.5, lettering.BaselineAround(2.5)), number, lettering)], number), line.Label));
        return line with { Label = number };
    }

    /// <summary>Left to right, feet on one line; a new shelf where the width runs out.</summary>
    private static (ImmutableArray<Shape> Shapes, Point Size) Shelves(SchematicPieceDrawing[] pieces, double width)
    {
        var shapes = ImmutableArray.CreateBuilder<Shape>();
        var (right, bottom) = (0.0, 0.0);
        for (var first = 0; first < pieces.Length;)
        {
            var end = first + 1;
            var used = pieces[first].Bounds.Width;
            while (end < pieces.Length && used + Gap + pieces[end].Bounds.Width <= width)
                used += Gap + pieces[end++].Bounds.Width;
            var shelf = pieces[first..end];
            var foot = bottom + (first > 0 ? Gap : 0) + shelf.Max(p => p.Bounds.Height);
            var x = 0.0;
            foreach (var piece in shelf)
            {
                shapes.Add(new Group(piece.Shapes, new Point(x - piece.Bounds.X, foot - piece.Bounds.Bottom)));
                x += piece.Bounds.Width + Gap;
            }
            (right, bottom, first) = (Math.Max(right, used), foot, end);
        }
        return (shapes.ToImmutable(), new Point(right, bottom));
    }

    private static DrawnPicture Finished(
        ImmutableArray<Shape> placed, Point size, double scale, List<KeyEntry> key, string title, string description, Reader reader)
    {
        var bar = ScaleBar(scale, size.Y + 5, reader.InchesFirst, out var barWidth);
        var sheet = new Sheet(
            Math.Max(size.X, barWidth) + 2, size.Y + BarHeight + 2, [new Group([.. placed, .. bar], new Point(1, 1))], title, description);
        var direction = new Sheet(
            6, 5, [.. Arrow.Drawn(new Point(0.5, 2.5), new Point(5.5, 2.5), 2.4, new Stroke(Ink.Black, 0.3))], reader.Text("Arrow"));
        return new DrawnPicture([sheet], [.. key, new KeyEntry(direction, reader.Text("Arrow inside a piece: the way its rows grow."))]);
    }

    private static ImmutableArray<Shape> ScaleBar(double scale, double top, bool inches, out double width)
    {
        const double longest = 45;
        var unit = inches ? 2.54 * scale : scale;
        ReadOnlySpan<int> lengths = [50, 20, 10, 5, 2];
        var length = 1;
        foreach (var candidate in lengths)
        {
            if (candidate * unit <= longest)
            {
                length = candidate;
                break;
            }
        }
        var bar = length * unit;
        var lettering = new Lettering(2.6, Ink.Black);
        var label = string.Create(CultureInfo.InvariantCulture, $"{length} {(inches ? "in" : "cm")}");
        width = bar + 14;
        return
        [
            new PathBuilder().Rectangle(0, top, bar, 1.4).With(new Style(Ink.Paper, Ink.Fine)),
            new PathBuilder().Rectangle(0, top, bar / 2, 1.4).With(new Style(Ink.Black)),
            new TextLine(new Point(bar + 1.6, lettering.BaselineAround(top + 0.7)), label, lettering),
        ];
    }
}
