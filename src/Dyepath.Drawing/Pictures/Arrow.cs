using Dyepath.Core.Colours;
using Dyepath.Drawing.Lists;

namespace Dyepath.Drawing.Pictures;

/// <summary>Arrows drawn as paths: not every font has them.</summary>
internal static class Arrow
{
    /// <summary>A filled slender head at <paramref name="tip"/>, pointing along the unit vector <paramref name="along"/>.</summary>
    public static Outline Head(Point tip, Point along, double length, Srgb colour)
    {
        var side = new Point(-along.Y, along.X) * (length * 0.3);
        var back = tip - along * length;
        return new PathBuilder().Polygon(tip, back + side, back - side).With(new Style(colour));
    }

    public static IEnumerable<Shape> Drawn(Point from, Point to, double head, Stroke stroke)
    {
        var way = to - from;
        var along = way * (1 / way.Length);
        yield return new PathBuilder().Line(from, to - along * (head * 0.6)).With(new Style(null, stroke));
        yield return Head(to, along, head, stroke.Colour);
    }
}
