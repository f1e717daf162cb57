using System.Collections.Immutable;
using System.Globalization;
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

    /// <summary>From the middle of a row's number to its arrow, and the arrow's length.</summary>
    private const double ArrowFrom = 2;
    private const double ArrowLength = 3;
    private const double Tick = 1.6;

    private static readonly Lettering Label = new(4, Ink.Black, Anchor.Middle);
    private static readonly Stroke WorkedInto = new(Ink.Line, 0.9);
    private static readonly Stroke Dashes = new(Ink.Soft, 0.3, 1.5);
    private static readonly Stroke Bracket = new(Ink.Black, 0.35);

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
        foreach (var (x, y) in Marks(chart))
        {
            Guard.InRange(x, -Furthest, Furthest, "stitches", nameof(chart));
            Guard.InRange(y, -Furthest, Furthest, "rows", nameof(chart));
        }
        var hand = reader.LeftHanded ? -1 : 1;
        var shapes = ImmutableArray.CreateBuilder<Shape>();
        var (left, top, right, bottom) = (double.MaxValue, double.MaxValue, double.MinValue, double.MinValue);
        foreach (var line in chart.Lines)
        {
            var (from, to) = (Place(line.FromX, line.FromY), Place(line.ToX, line.ToY));
            shapes.Add(new PathBuilder().Line(from, to).With(new Style(null, line.Dashed ? Dashes : WorkedInto)));
            Include(from);
            Include(to);
        }
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
            Write(label.Text, Place(label.X, label.Y));
        foreach (var row in chart.Rows)
        {
            var at = Place(row.X, row.Y);
            Write(row.Number.ToString(CultureInfo.InvariantCulture), new Point(at.X, Label.BaselineAround(at.Y)));
            var along = row.Way switch
            {
                ChartWay.Left => new Point(-hand, 0),
                ChartWay.Right => new Point(hand, 0),
                ChartWay.Up => new Point(0, -1),
                ChartWay.Down => new Point(0, 1),
                _ => throw new ArgumentOutOfRangeException(nameof(chart), row.Way, "No such way."),
            };
            var tip = at + along * (ArrowFrom + ArrowLength);
            shapes.AddRange(Arrow.Drawn(at + along * ArrowFrom, tip, 1.6, Bracket));
            Include(tip);
        }
        if (chart.Repeat is { } repeat)
        {
            var (from, to) = (Place(repeat.From, repeat.Y), Place(repeat.To, repeat.Y));
            var up = new Point(0, -Tick);
            shapes.Add(new PathBuilder().Line(from + up, from).Line(from, to).Line(to, to + up).With(new Style(null, Bracket)));
            Write(
                reader.Text(repeat.Stitches == 1 ? Phrase.Of($"repeat: {repeat.Stitches} stitch") : Phrase.Of($"repeat: {repeat.Stitches} stitches")),
                (from + to) * 0.5 + new Point(0, 4.4));
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

        void Write(string text, Point at)
        {
            shapes.Add(new TextLine(at, text, Label));
            var half = Typeface.Regular.Width(text, Label.Size) / 2;
            Include(new Point(at.X - half, at.Y - Label.Size));
            Include(new Point(at.X + half, at.Y + 1));
        }

        void Include(Point point)
        {
            (left, right) = (Math.Min(left, point.X), Math.Max(right, point.X));
            (top, bottom) = (Math.Min(top, point.Y), Math.Max(bottom, point.Y));
        }
    }

    /// <summary>Places of everything but symbols.</summary>
    private static IEnumerable<(double X, double Y)> Marks(SymbolChart chart) =>
    [
        .. chart.Labels.Select(l => (l.X, l.Y)),
        .. chart.Rows.Select(r => (r.X, r.Y)),
        .. chart.Lines.SelectMany(l => new[] { (l.FromX, l.FromY), (l.ToX, l.ToY) }),
        .. chart.Repeat is { } repeat ? [(repeat.From, repeat.Y), (repeat.To, repeat.Y)] : (ReadOnlySpan<(double, double)>)[],
    ];

    private static KeyEntry Entry(StitchSymbol symbol, Reader reader)
    {
        const double size = 8;
        var name = reader.Text(Name(symbol));
        var (side, up) = StitchSymbols.Reach(symbol);
        var scale = Math.Min(0.75, (size - 0.6) / Math.Max(2 * side, up));
        var sign = new Sheet(
            size, size, [new Group(StitchSymbols.Of(symbol), new Point(size / 2, size / 2 + up * scale / 2), 0, scale)],
            reader.Text(Phrase.Of($"Mark for {Phrase.Named(name)}")));
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
        StitchSymbol.Picot => Phrase.Of($"picot: {new Term("ch")} 3, {new Term("sl st")} in the {new Term("sc")} just made"),
        StitchSymbol.Shell => Phrase.Of($"5 {new Term("dc")} in one stitch"),
        StitchSymbol.VStitch => Phrase.Of($"V-stitch: {new Term("dc")}, {new Term("ch")} 1 and {new Term("dc")} in one stitch"),
        StitchSymbol.CrossedCluster => Phrase.Of($"cluster of 2 {new Term("hdc")}, crossed"),
        StitchSymbol.BackLoopSingleCrochet => Phrase.Of($"{new Term("sc")} in the back loop"),
        StitchSymbol.BackLoopHalfDoubleSlipStitch => Phrase.Of($"{new Term("hdc")} {new Term("sl st")} in the back loop"),
        StitchSymbol.Strands => Phrase.Of($"bunch of strands, knotted in"),
    };

    private static Point Turned(Point point, double degrees)
    {
        var (sin, cos) = Math.SinCos(degrees * Math.PI / 180);
        return new Point(point.X * cos - point.Y * sin, point.X * sin + point.Y * cos);
    }
}
