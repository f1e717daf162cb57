using System.Collections.Immutable;
using Dyepath.Core.Colours;
using Dyepath.Core.Planning;

namespace Dyepath.Drawing.Lists;

/// <summary>Millimetres, x right and y down.</summary>
/// <param name="X">Millimetres to the right.</param>
/// <param name="Y">Millimetres down.</param>
public readonly record struct Point(double X, double Y)
{
    /// <summary>Moved by the other, taken as a vector.</summary>
    public static Point operator +(Point a, Point b) => new(a.X + b.X, a.Y + b.Y);

    /// <summary>The vector from the second to the first.</summary>
    public static Point operator -(Point a, Point b) => new(a.X - b.X, a.Y - b.Y);

    /// <summary>The vector so many times as long.</summary>
    public static Point operator *(Point a, double factor) => new(a.X * factor, a.Y * factor);

    /// <summary>Distance from the origin, in millimetres.</summary>
    public double Length => Math.Sqrt(X * X + Y * Y);
}

/// <summary>Millimetres.</summary>
/// <param name="X">The left edge.</param>
/// <param name="Y">The upper edge.</param>
/// <param name="Width">To the right.</param>
/// <param name="Height">Down.</param>
public readonly record struct Box(double X, double Y, double Width, double Height)
{
    /// <summary>The right edge.</summary>
    public double Right => X + Width;

    /// <summary>The lower edge.</summary>
    public double Bottom => Y + Height;

    /// <summary>Whether two boxes share more than an edge.</summary>
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

/// <param name="Colour">Opaque.</param>
/// <param name="Width">Millimetres.</param>
/// <param name="Dash">Length of dash and gap in millimetres; 0 draws a solid line.</param>
public sealed record Stroke(Srgb Colour, double Width, double Dash = 0);

/// <summary>Missing fill or stroke is not drawn.</summary>
/// <param name="Fill">Missing: not filled.</param>
/// <param name="Stroke">Missing: no line.</param>
public sealed record Style(Srgb? Fill, Stroke? Stroke = null);

/// <summary>Which point of a text stands at its place.</summary>
public enum Anchor
{
    /// <summary>Its left end.</summary>
    Start,

    /// <summary>Half of its width.</summary>
    Middle,

    /// <summary>Its right end.</summary>
    End,
}

/// <param name="Size">Height of the em square in millimetres.</param>
/// <param name="Colour">Opaque.</param>
/// <param name="Anchor">The text's left end unless said otherwise.</param>
/// <param name="Bold">The heavier of the two cuts.</param>
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
/// <param name="Steps">Begins with a <see cref="PathVerb.Move"/>.</param>
/// <param name="Style">Of all its parts.</param>
public sealed record Outline(ImmutableArray<PathStep> Steps, Style Style) : Shape;

/// <summary>With its axes across and down.</summary>
/// <param name="Centre">In millimetres.</param>
/// <param name="RadiusX">Half of its width, in millimetres.</param>
/// <param name="RadiusY">Half of its height, in millimetres.</param>
/// <param name="Style">Fill and line.</param>
public sealed record Ellipse(Point Centre, double RadiusX, double RadiusY, Style Style) : Shape;

/// <param name="At">Where the baseline meets the anchor.</param>
/// <param name="Text">One line; nothing is wrapped.</param>
/// <param name="Lettering">Size, colour and anchor.</param>
/// <param name="Degrees">Turned clockwise about <paramref name="At"/>.</param>
public sealed record TextLine(Point At, string Text, Lettering Lettering, double Degrees = 0) : Shape;

/// <summary>Texts that share a baseline and a style: the symbols of one chart row.</summary>
/// <param name="Baseline">Millimetres down.</param>
/// <param name="Texts">Each with its place, in millimetres to the right.</param>
/// <param name="Lettering">Of all its texts.</param>
public sealed record TextRow(double Baseline, ImmutableArray<(double X, string Text)> Texts, Lettering Lettering) : Shape;

/// <summary>Shapes drawn in their own coordinates: scaled, then turned clockwise, then moved to <paramref name="At"/>.</summary>
/// <param name="Shapes">From the back to the front.</param>
/// <param name="At">Where the shapes' origin comes to lie.</param>
/// <param name="Degrees">Clockwise.</param>
/// <param name="Scale">1 leaves them as large as they are.</param>
public sealed record Group(ImmutableArray<Shape> Shapes, Point At, double Degrees = 0, double Scale = 1) : Shape;

/// <summary>How a step of an outline gets to its end.</summary>
public enum PathVerb
{
    /// <summary>Without drawing; begins a part.</summary>
    Move,

    /// <summary>Straight.</summary>
    Line,

    /// <summary>Along a cubic curve with two control points.</summary>
    Curve,

    /// <summary>Straight back to where the part began.</summary>
    Close,
}

/// <summary><paramref name="To"/> is where the step ends; the control points serve curves only.</summary>
/// <param name="Verb">How it gets there.</param>
/// <param name="To">In millimetres; means nothing for <see cref="PathVerb.Close"/>.</param>
/// <param name="Control1">The control point nearer to the beginning.</param>
/// <param name="Control2">The control point nearer to the end.</param>
public readonly record struct PathStep(PathVerb Verb, Point To = default, Point Control1 = default, Point Control2 = default);

/// <summary>A drawing list on a sheet of its own size, with the words that stand for it where it cannot be seen.</summary>
/// <param name="Width">Millimetres.</param>
/// <param name="Height">Millimetres.</param>
/// <param name="Shapes">From the back to the front.</param>
/// <param name="Title">What the drawing is, in a few words.</param>
/// <param name="Description">What a sighted person sees; empty where the title says it.</param>
public sealed record Sheet(double Width, double Height, ImmutableArray<Shape> Shapes, string Title, string Description = "");
