using System.Collections.Immutable;
using System.Globalization;
using Dyepath.Core.Booklets;
using Dyepath.Core.Colours;
using Dyepath.Core.Yarns;
using Dyepath.Drawing.Lists;
using Dyepath.Drawing.Typography;

namespace Dyepath.Drawing.Pictures;

/// <summary>Draws the colour sequence as a ruler: sections to scale along the yarn, a tick for every stitch.</summary>
internal static class YarnRulerDrawing
{
    private const double Edge = 4;
    private const double BarTop = 5;
    private const double BarHeight = 9;

    public static DrawnPicture Draw(YarnRuler ruler, string title, string description, Room room)
    {
        if (ruler.Units.Length != ruler.Key.Length || ruler.Units.Length == 0 || ruler.Units.Any(u => !(u > 0 && double.IsFinite(u))))
            throw new ArgumentException("A ruler needs a finite length above 0 for each of its colours.", nameof(ruler));
        var total = ruler.Units.Sum();
        var scale = Math.Min(14, (room.Width - 2 * Edge) / total);
        var shapes = ImmutableArray.CreateBuilder<Shape>();
        var at = 0.0;
        for (var i = 0; i < ruler.Units.Length; i++)
        {
            shapes.AddRange(Section(ruler.Key[i], ruler.Units[i], Edge + at * scale, ruler.Units[i] * scale));
            at += ruler.Units[i];
        }
        shapes.AddRange(Ticks(total, scale));
        return new DrawnPicture(
            [new Sheet(total * scale + 2 * Edge, 24, shapes.ToImmutable(), title, description)], ColourKeySigns.Of(ruler.Key));
    }

    private static IEnumerable<Shape> Section(SequenceColour colour, double units, double left, double width)
    {
        yield return new PathBuilder().Rectangle(left, BarTop, width, BarHeight).With(new Style(colour.Colour, Ink.Fine));
        var middle = left + width / 2;
        var sign = ColourKeySigns.Symbol(colour);
        var symbol = new Lettering(Math.Min(4, width / (0.75 * Math.Max(1, sign.Length))), Contrast.InkOn(colour.Colour), Anchor.Middle);
        yield return new TextLine(new Point(middle, symbol.BaselineAround(BarTop + BarHeight / 2)), sign, symbol);
        var count = units.ToString("0.#", CultureInfo.InvariantCulture);
        if (Typeface.Regular.Width(count, 2.8) < width)
            yield return new TextLine(new Point(middle, BarTop - 1.4), count, new Lettering(2.8, Ink.Black, Anchor.Middle));
    }

    private static IEnumerable<Shape> Ticks(double total, double scale)
    {
        const double top = BarTop + BarHeight + 0.6;
        var every = scale >= 0.8 ? 1 : scale >= 0.16 ? 5 : 50;
        var numbered = every * (scale * every * 5 >= 6 ? 5 : 10);
        var ticks = new PathBuilder().Line(new Point(Edge, top), new Point(Edge + total * scale, top));
        for (var stitch = 0; stitch <= total; stitch += every)
        {
            var x = Edge + stitch * scale;
            ticks.Line(new Point(x, top), new Point(x, top + (stitch % numbered == 0 ? 2.6 : 1.4)));
            if (stitch % numbered == 0)
                yield return new TextLine(
                    new Point(x, top + 5.6), stitch.ToString(CultureInfo.InvariantCulture), new Lettering(2.6, Ink.Black, Anchor.Middle));
        }
        yield return ticks.With(new Style(null, Ink.Fine));
    }
}
