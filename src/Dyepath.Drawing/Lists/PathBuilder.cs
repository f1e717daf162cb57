using System.Collections.Immutable;

namespace Dyepath.Drawing.Lists;

/// <summary>Collects the steps of an <see cref="Outline"/>.</summary>
internal sealed class PathBuilder
{
    private readonly ImmutableArray<PathStep>.Builder _steps = ImmutableArray.CreateBuilder<PathStep>();

    public bool IsEmpty => _steps.Count == 0;

    public PathBuilder Line(Point from, Point to)
    {
        _steps.Add(new PathStep(PathVerb.Move, from));
        _steps.Add(new PathStep(PathVerb.Line, to));
        return this;
    }

    public PathBuilder Curve(Point from, Point control1, Point control2, Point to)
    {
        _steps.Add(new PathStep(PathVerb.Move, from));
        return CurveOn(control1, control2, to);
    }

    /// <summary>Goes on from where the last step ended.</summary>
    public PathBuilder CurveOn(Point control1, Point control2, Point to)
    {
        _steps.Add(new PathStep(PathVerb.Curve, to, control1, control2));
        return this;
    }

    public PathBuilder Polygon(params ReadOnlySpan<Point> corners)
    {
        for (var i = 0; i < corners.Length; i++)
            _steps.Add(new PathStep(i == 0 ? PathVerb.Move : PathVerb.Line, corners[i]));
        _steps.Add(new PathStep(PathVerb.Close));
        return this;
    }

    public PathBuilder Rectangle(double x, double y, double width, double height) =>
        Polygon(new Point(x, y), new Point(x + width, y), new Point(x + width, y + height), new Point(x, y + height));

    public Outline With(Style style) => new(_steps.ToImmutable(), style);
}
