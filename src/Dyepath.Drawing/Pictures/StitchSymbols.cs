using System.Collections.Immutable;
using Dyepath.Core.Booklets;
using Dyepath.Drawing.Lists;

namespace Dyepath.Drawing.Pictures;

/// <summary>
/// The marks of the common international set, foot at the origin, upwards is −y; shapes as docs/symbols.md describes them.
/// </summary>
internal static class StitchSymbols
{
    /// <summary>Millimetres of one stitch width.</summary>
    public const double StitchWidth = 7;

    /// <summary>Millimetres of one row of single crochet.</summary>
    public const double RowHeight = 8;

    /// <summary>Degrees by which the stems of a V lean.</summary>
    private const double VLean = 28;

    private static readonly Style Drawn = new(null, new Stroke(Ink.Black, 0.45));
    private static readonly Style Filled = new(Ink.Black);

    public static ImmutableArray<Shape> Of(StitchSymbol symbol) => symbol switch
    {
        StitchSymbol.Chain => [Oval(new Point(0, -1.3), Drawn)],
        StitchSymbol.SlipStitch => [new Ellipse(new Point(0, -1.1), 1.1, 1.1, Filled)],
        StitchSymbol.SingleCrochet => [Plus(new Point(0, -3))],
        StitchSymbol.HalfDoubleCrochet => [Post(7, 0)],
        StitchSymbol.DoubleCrochet => [Post(10, 1)],
        StitchSymbol.TrebleCrochet => [Post(13, 2)],
        StitchSymbol.ReverseSingleCrochet => [Plus(new Point(0, -3)), Wave()],
        StitchSymbol.Picot => [.. Picot()],
        StitchSymbol.Shell => [.. Shell()],
        StitchSymbol.VStitch => [.. VStitch()],
        StitchSymbol.CrossedCluster => [Crossed()],
        StitchSymbol.BackLoopSingleCrochet => [Plus(new Point(0, -3.4)), BackLoop()],
        StitchSymbol.BackLoopHalfDoubleSlipStitch => [.. YarnOverSlipStitch(), BackLoop()],
        StitchSymbol.Strands => [Strands(), new Ellipse(new Point(0, -2.6), 1.3, 0.9, Filled)],
    };

    /// <summary>How far a mark reaches from its foot: to either side, and up.</summary>
    public static (double Side, double Up) Reach(StitchSymbol symbol) => symbol switch
    {
        StitchSymbol.Chain => (2.8, 2.6),
        StitchSymbol.SlipStitch => (1.2, 2.3),
        StitchSymbol.SingleCrochet => (2.4, 5.6),
        StitchSymbol.HalfDoubleCrochet => (2.2, 7.2),
        StitchSymbol.DoubleCrochet => (2.2, 10.2),
        StitchSymbol.TrebleCrochet => (2.2, 13.2),
        StitchSymbol.ReverseSingleCrochet => (2.4, 8),
        StitchSymbol.Picot => (3.6, 7.4),
        StitchSymbol.Shell => (9.4, 10.2),
        StitchSymbol.VStitch => (6.7, 10.8),
        StitchSymbol.CrossedCluster => (StitchWidth / 2 + 0.3, 8.2),
        StitchSymbol.BackLoopSingleCrochet => (2.4, 6),
        StitchSymbol.BackLoopHalfDoubleSlipStitch => (2, 5.2),
        StitchSymbol.Strands => (2.6, 13.2),
    };

    private static Ellipse Oval(Point centre, Style style) => new(centre, 2.5, 1.2, style);

    private static Outline Plus(Point centre) => new PathBuilder()
        .Line(new Point(centre.X, centre.Y - 2.3), new Point(centre.X, centre.Y + 2.3))
        .Line(new Point(centre.X - 2.3, centre.Y), new Point(centre.X + 2.3, centre.Y))
        .With(Drawn);

    /// <summary>A capital T; one short slash across the stem for each yarn over beyond the first.</summary>
    private static Outline Post(double height, int slashes)
    {
        var path = new PathBuilder()
            .Line(new Point(0, -0.4), new Point(0, -height))
            .Line(new Point(-2, -height), new Point(2, -height));
        for (var i = 0; i < slashes; i++)
        {
            var middle = -height * 0.7 + i * 2.1;
            path.Line(new Point(-1.4, middle - 0.8), new Point(1.4, middle + 0.8));
        }
        return path.With(Drawn);
    }

    /// <summary>Two stems from two feet, crossed below one bar.</summary>
    private static Outline Crossed() => new PathBuilder()
        .Line(new Point(-StitchWidth / 2, -0.4), new Point(1.6, -8))
        .Line(new Point(StitchWidth / 2, -0.4), new Point(-1.6, -8))
        .Line(new Point(-2.4, -8), new Point(2.4, -8))
        .With(Drawn);

    /// <summary>Below a mark: its foot stands in the back loop alone.</summary>
    private static Outline BackLoop() => new PathBuilder()
        .Curve(new Point(-1.9, -1), new Point(-1.1, 0.2), new Point(1.1, 0.2), new Point(1.9, -1))
        .With(Drawn);

    /// <summary>The dot of a slip stitch under the bar of a half double.</summary>
    private static IEnumerable<Shape> YarnOverSlipStitch()
    {
        yield return new Ellipse(new Point(0, -2.4), 1.1, 1.1, Filled);
        yield return new PathBuilder().Line(new Point(0, -2.4), new Point(0, -4.8)).Line(new Point(-1.7, -4.8), new Point(1.7, -4.8))
            .With(Drawn);
    }

    /// <summary>Three strands from a knot.</summary>
    private static Outline Strands() => new PathBuilder()
        .Line(new Point(0, 0), new Point(0, -13))
        .Curve(new Point(0, -2.6), new Point(-0.4, -6), new Point(-2.4, -8), new Point(-2.2, -13))
        .Curve(new Point(0, -2.6), new Point(0.4, -6), new Point(2.4, -8), new Point(2.2, -13))
        .With(Drawn);

    private static Outline Wave() => new PathBuilder()
        .Curve(new Point(-2.2, -6.8), new Point(-1.2, -8.4), new Point(-0.8, -8.0), new Point(0, -7))
        .CurveOn(new Point(0.8, -6), new Point(1.2, -5.8), new Point(2.2, -7.2))
        .With(Drawn);

    /// <summary>Three ovals in a ring, closed by a dot.</summary>
    private static IEnumerable<Shape> Picot()
    {
        yield return new Ellipse(new Point(0, -0.9), 0.7, 0.7, Filled);
        yield return new Group([new Ellipse(new Point(0, 0), 1.9, 0.9, Drawn)], new Point(-1.9, -3.2), 60);
        yield return new Group([new Ellipse(new Point(0, 0), 1.9, 0.9, Drawn)], new Point(0, -6), 0);
        yield return new Group([new Ellipse(new Point(0, 0), 1.9, 0.9, Drawn)], new Point(1.9, -3.2), 120);
    }

    private static IEnumerable<Shape> Shell()
    {
        for (var i = -2; i <= 2; i++)
            yield return new Group([Post(9.6, 1)], new Point(0, 0), i * 27);
    }

    /// <summary>Two slashed stems from one foot, an oval between their tops.</summary>
    private static IEnumerable<Shape> VStitch()
    {
        yield return new Group([Post(9.6, 1)], new Point(0, 0), -VLean);
        yield return new Ellipse(new Point(0, -9.6), 1.9, 0.9, Drawn);
        yield return new Group([Post(9.6, 1)], new Point(0, 0), VLean);
    }
}
