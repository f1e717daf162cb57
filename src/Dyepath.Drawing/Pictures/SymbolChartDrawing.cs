using System.Collections.Immutable;
using Dyepath.Core.Booklets;
using Dyepath.Core.Quantities;
using Dyepath.Drawing.Lists;
using Dyepath.Drawing.Typography;

namespace Dyepath.Drawing.Pictures;

/// <summary>Draws stitches by their standard marks; the whole chart is mirrored for left-handed makers.</summary>
internal static class SymbolChartDrawing
{
    private const double Edge = 2;
    private const double Furthest = 10_000;

    private static readonly Lettering Label = new(3.2, Ink.Black, Anchor.Middle);

    public static DrawnPicture Draw(SymbolChart chart, string title, string description, Reader reader, Room room)
    {
        if (chart.Symbols.IsEmpty)
            throw new ArgumentException("A symbol chart needs at least one symbol.", nameof(chart));
        foreach (var symbol in chart.Symbols)
        {
            Guard.InRange(symbol.X, -Furthest, Furthest, "stitches", nameof(chart));
            Guard.InRange(symbol.Y, -Furthest, Furthest, "rows", nameof(chart));
            Guard.InRange(symbol.Degrees, -360, 360, "degrees", nameof(chart));
        }
        foreach (var label in chart.Labels)
        {
            Guard.InRange(label.X, -Furthest, Furthest, "stitches", nameof(chart));
            Guard.InRange(label.Y, -Furthest, Furthest, "rows", nameof(chart));
        }
        var hand = reader.LeftHanded ? -1 : 1;
        var shapes = ImmutableArray.CreateBuilder<Shape>();
        var (left, top, right, bottom) = (double.MaxValue, double.MaxValue, double.MinValue, double.MinValue);
        foreach (var symbol in chart.Symbols)
        {
            var foot = Place(symbol.X, symbol.Y);
            var degrees = hand * symbol.Degrees;
            shapes.Add(new Group(StitchSymbols.Of(symbol.Symbol), foot, degrees));
            var (side, up) = StitchSymbols.Reach(symbol.Symbol);
            foreach (var corner in new Point[] { new(-side, 0), new(side, 0), new(-side, -up), new(side, -up) })
                Include(foot + Turned(corner, degrees));
        }
        foreach (var label in chart.Labels)
        {
            var at = Place(label.X, label.Y);
            shapes.Add(new TextLine(at, label.Text, Label));
            var half = Typeface.Regular.Width(label.Text, Label.Size) / 2;
            Include(new Point(at.X - half, at.Y - Label.Size));
            Include(new Point(at.X + half, at.Y + 1));
        }
        var scale = Math.Min(1, Math.Min((room.Width - 2 * Edge) / (right - left), (room.Height - 2 * Edge) / (bottom - top)));
        var sheet = new Sheet(
            (right - left) * scale + 2 * Edge,
            (bottom - top) * scale + 2 * Edge,
            [new Group(shapes.ToImmutable(), new Point(Edge - left * scale, Edge - top * scale), 0, scale)],
            title,
            description);
        return new DrawnPicture([sheet], [.. chart.Symbols.Select(s => s.Symbol).Distinct().Order().Select(s => Entry(s, reader))]);

        Point Place(double x, double y) => new(hand * x * StitchSymbols.StitchWidth, -y * StitchSymbols.RowHeight);

        void Include(Point point)
        {
            (left, right) = (Math.Min(left, point.X), Math.Max(right, point.X));
            (top, bottom) = (Math.Min(top, point.Y), Math.Max(bottom, point.Y));
        }
    }

    private static KeyEntry Entry(StitchSymbol symbol, Reader reader)
    {
        const double size = 8;
        var name = reader.Text(Name(symbol));
        var (side, up) = StitchSymbols.Reach(symbol);
        var scale = Math.Min(0.75, (size - 0.6) / Math.Max(2 * side, up));
        var sign = new Sheet(size, size, [new Group(StitchSymbols.Of(symbol), new Point(size / 2, size / 2 + up * scale / 2), 0, scale)], $"Mark for {name}");
        return new KeyEntry(sign, name);
    }

    private static Phrase Name(StitchSymbol symbol) => symbol switch
    {
        StitchSymbol.Chain => Phrase.Of($"{new Term("ch")}"),
        StitchSymbol.SlipStitch => Phrase.Of($"{new Term("sl st")}"),
        StitchSymbol.SingleCrochet => Phrase.Of($"{new Term("sc")}"),
        StitchSymbol.HalfDoubleCrochet => Phrase.Of($"{new Term("hdc")}"),
        StitchSymbol.DoubleCrochet => Phrase.Of($"{new Term("dc")}"),
        StitchSymbol.TrebleCrochet => Phrase.Of($"{new Term("tr")}"),
        StitchSymbol.ReverseSingleCrochet => Phrase.Of($"reverse {new Term("sc")}"),
        StitchSymbol.Picot => Phrase.Of($"picot: {new Term("ch")} 3, {new Term("sl st")} in the first"),
        StitchSymbol.Shell => Phrase.Of($"shell: 5 {new Term("dc")} in one stitch"),
        _ => throw new ArgumentOutOfRangeException(nameof(symbol), symbol, "No name for this stitch."),
    };

    private static Point Turned(Point point, double degrees)
    {
        var (sin, cos) = Math.SinCos(degrees * Math.PI / 180);
        return new Point(point.X * cos - point.Y * sin, point.X * sin + point.Y * cos);
    }
}
