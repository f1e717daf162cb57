using System.Collections.Immutable;
using Dyepath.Core.Colours;
using Dyepath.Core.Planning;

namespace Dyepath.Drawing.Lists;

/// <summary>Millimetres, x right and y down.</summary>
public readonly record struct Point(double X, double Y)
{
    public static Point operator +(Point a, Point b) => new(a.X + b.X, a.Y + b.Y);

    public static Point operator -(Point a, Point b) => new(a.X - b.X, a.Y - b.Y);

    public static Point operator *(Point a, double factor) => new(a.X * factor, a.Y * factor);

    public double Length => Math.Sqrt(X * X + Y * Y);
}

/// <summary>Millimetres.</summary>
public readonly record struct Box(double X, double Y, double Width, double Height)
{
    public double Right => X + Width;

    public double Bottom => Y + Height;

    public bool Overlaps(Box other) => X < other.Right && other.X < Right && Y < other.Bottom && other.Y < Bottom;

    /// <summary>Whether any of a straight line lies inside.</summary>
    public bool Meets(Point from, Point to)
    {
        var (enters, leaves) = (0.0, 1.0);
        return Narrow(from.X, to.X - from.X, X, Right) && Narrow(from.Y, to.Y - from.Y, Y, Bottom);

        bool Narrow(double start, double way, double low, double high)
        {
            if (way == 0)
                return start > low && start < high;
            var (one, two) = ((low - start) / way, (high - start) / way);
            (enters, leaves) = (Math.Max(enters, Math.Min(one, two)), Math.Min(leaves, Math.Max(one, two)));
            return enters < leaves;
        }
    }
}

/// <param name="Width">Millimetres.</param>
/// <param name="Dash">Length of dash and gap in millimetres; 0 draws a solid line.</param>
public sealed record Stroke(Srgb Colour, double Width, double Dash = 0);

/// <summary>Missing fill or stroke is not drawn.</summary>
public sealed record Style(Srgb? Fill, Stroke? Stroke = null);

public enum Anchor
{
    Start,
    Middle,
    End,
}

/// <param name="Size">Height of the em square in millimetres.</param>
public sealed record Lettering(double Size, Srgb Colour, Anchor Anchor = Anchor.Start, bool Bold = false)
{
    /// <summary>Height of capitals and figures over <see cref="Size"/>, as in Atkinson Hyperlegible.</summary>
    public const double CapHeight = 0.668;

    /// <summary>Baseline at which capitals stand centred on <paramref name="middle"/>.</summary>
    public double BaselineAround(double middle) => middle + Size * CapHeight / 2;
}

/// <summary>One item of a drawing list; knows nothing of the format that it is written in.</summary>
public abstract record Shape;

/// <summary>Lines and cubic curves, open or closed, in one or more parts.</summary>
public sealed record Outline(ImmutableArray<PathStep> Steps, Style Style) : Shape;

public sealed record Ellipse(Point Centre, double RadiusX, double RadiusY, Style Style) : Shape;

/// <param name="At">Where the baseline meets the anchor.</param>
/// <param name="Degrees">Turned clockwise about <paramref name="At"/>.</param>
public sealed record TextLine(Point At, string Text, Lettering Lettering, double Degrees = 0) : Shape;

/// <summary>Texts that share a baseline and a style: the symbols of one chart row.</summary>
public sealed record TextRow(double Baseline, ImmutableArray<(double X, string Text)> Texts, Lettering Lettering) : Shape;

/// <summary>Shapes drawn in their own coordinates: scaled, then turned clockwise, then moved to <paramref name="At"/>.</summary>
public sealed record Group(ImmutableArray<Shape> Shapes, Point At, double Degrees = 0, double Scale = 1) : Shape;

public enum PathVerb
{
    Move,
    Line,
    Curve,
    Close,
}

/// <summary><paramref name="To"/> is where the step ends; the control points serve curves only.</summary>
public readonly record struct PathStep(PathVerb Verb, Point To = default, Point Control1 = default, Point Control2 = default);

/// <summary>A drawing list on a sheet of its own size, with the words that stand for it where it cannot be seen.</summary>
/// <param name="Width">Millimetres.</param>
/// <param name="Height">Millimetres.</param>
public sealed record Sheet(double Width, double Height, ImmutableArray<Shape> Shapes, string Title, string Description = "");
