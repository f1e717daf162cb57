using Dyepath.Drawing.Lists;
using Dyepath.Drawing.Typography;

namespace Dyepath.Drawing.Pictures;

/// <summary>
/// One dimension on the sheet: an arrowed line parallel to what it measures, thin witness lines that lead to it, and
/// its label in a gap of the line, or beside it where the line is too short.
/// </summary>
/// <param name="Away">Unit vector from what is measured towards the line.</param>
/// <param name="Distance">Millimetres between the two.</param>
internal sealed record DimensionLine(Point From, Point To, Point Away, double Distance, string Label)
{
    public const double LabelSize = 3;

    /// <summary>Room between two dimension lines that lie side by side.</summary>
    public const double Lane = 5.5;

    private const double Head = 2.2;

    /// <summary>Words that may reach over the ends of their line; a lane is theirs then as far as they reach.</summary>
    private const double LongestBeside = 32;

    private const double FurthestOut = 1000;

    private static readonly Lettering Lettering = new(LabelSize, Ink.Black, Anchor.Middle);

    /// <summary>Which of <see cref="LabelPlaces"/> its label has.</summary>
    private int LabelPlace { get; init; }

    private Point Start => From + Away * Distance;

    private Point End => To + Away * Distance;

    private double Length => (To - From).Length;

    private double LabelWidth => Typeface.Regular.Width(Label, LabelSize);

    /// <summary>Letters stand upright; longer labels run along the line.</summary>
    private double Degrees => Label.Length <= 2 || (StandsPast && LabelPlace < 2) ? 0 : Upright((To - From) * (1 / Length));

    /// <summary>There is room for its label in a gap of the line.</summary>
    public bool LabelFits => LabelExtent + 2 * Head + 2 <= Length;

    /// <summary>Inside the piece there is no room beside the line: words that it is too short for stand level past its end.</summary>
    private bool StandsPast => Distance == 0 && !LabelFits;

    /// <summary>Its label is more than a letter or a number of the key.</summary>
    public bool HasWords => Label.Length > 2;

    /// <summary>A label that is long, and much longer than its line, belongs in the key.</summary>
    public bool LabelBelongsInKey => HasWords && LabelWidth > Math.Max(Length + 2, LongestBeside);

    private double LabelExtent => Label.Length <= 2 ? LabelSize : LabelWidth;

    /// <summary>Of its place along the line: in the middle, towards the start, towards the end.</summary>
    private int Sideways => LabelPlace switch { 0 => 0, 1 => -1, _ => 1 };

    private Point LabelMiddle
    {
        get
        {
            var (middle, along) = ((Start + End) * 0.5, (To - From) * (1 / Length));
            if (LabelFits)
                return middle + along * (Sideways * (Length - LabelExtent - 2 * Head - 2) / 2);
            var beside = LabelSize * 0.5 + 0.8;
            if (!StandsPast)
            {
                return middle + Away * (Label.Length <= 2 ? Math.Max(LabelWidth, LabelSize) * 0.5 + 1 : beside)
                    + along * (Sideways * (Math.Max(0, LabelExtent - Length) / 2 + 0.8));
            }
            // A line with its heads outside reaches further.
            var past = LabelSize * 0.5 + 1.2 + (IsLong ? 0 : 2 * Head);
            return LabelPlace switch
            {
                0 => End + along * past,
                1 => Start - along * past,
                2 => middle + new Point(along.Y, -along.X) * beside,
                _ => middle - new Point(along.Y, -along.X) * beside,
            };
        }
    }

    /// <summary>The same line with its label in each place that serves, the usual first.</summary>
    public IEnumerable<DimensionLine> LabelPlaces() =>
        Enumerable.Range(0, StandsPast ? 4 : 3).Select(place => this with { LabelPlace = place });

    /// <summary>What its label takes up, with a little room around.</summary>
    public Box LabelBox
    {
        get
        {
            var corners = LabelCorners().ToArray();
            var (x, y) = (corners.Min(c => c.X), corners.Min(c => c.Y));
            return new Box(x, y, corners.Max(c => c.X) - x, corners.Max(c => c.Y) - y);
        }
    }

    /// <summary>All that it draws as lines; where its label stands in the line, on both sides of that.</summary>
    public IEnumerable<(Point From, Point To)> Strokes()
    {
        if (Distance > 1)
        {
            yield return (From + Away * 0.8, Start + Away);
            yield return (To + Away * 0.8, End + Away);
        }
        if (Length <= 0.01)
            yield break;
        var along = (To - From) * (1 / Length);
        var (start, end) = IsLong
            ? (Start + along * (Head * 0.6), End - along * (Head * 0.6))
            : (Start - along * (Head * 2), End + along * (Head * 2));
        if (!LabelFits)
        {
            yield return (start, end);
            yield break;
        }
        var gap = along * (LabelExtent / 2 + 0.8);
        yield return (start, LabelMiddle - gap);
        yield return (LabelMiddle + gap, end);
    }

    /// <summary>Where its witness lines would run, however far out it lay.</summary>
    public IEnumerable<(Point From, Point To)> Witnesses() =>
        [(From + Away * 0.8, From + Away * FurthestOut), (To + Away * 0.8, To + Away * FurthestOut)];

    /// <summary>Its arrow heads stand inside it.</summary>
    private bool IsLong => Length > 2 * Head + 1;

    /// <summary>Place on the axis that runs away from what is measured.</summary>
    public double LanePlace => Start.X * Away.X + Start.Y * Away.Y;

    public bool SharesLane(DimensionLine other)
    {
        if (Away.X * other.Away.X + Away.Y * other.Away.Y < 0.99 || Math.Abs(LanePlace - other.LanePlace) >= Lane)
            return false;
        var along = new Point(-Away.Y, Away.X);
        var (a, b) = (Span(this), Span(other));
        return a.Low < b.High && b.Low < a.High;

        (double Low, double High) Span(DimensionLine line)
        {
            var from = line.From.X * along.X + line.From.Y * along.Y;
            var to = line.To.X * along.X + line.To.Y * along.Y;
            // Words that are longer than their line reach over its ends.
            var reach = line.LabelFits || line.Label.Length <= 2 ? 0 : Math.Max(0, (line.LabelWidth - line.Length) / 2 + 1);
            return (Math.Min(from, to) - reach, Math.Max(from, to) + reach);
        }
    }

    public IEnumerable<Point> Corners()
    {
        yield return Start + Away;
        yield return End + Away;
        foreach (var corner in LabelCorners())
            yield return corner;
    }

    private IEnumerable<Point> LabelCorners()
    {
        var reach = Math.Max(LabelWidth, LabelSize) / 2 + 0.5;
        var (sin, cos) = Math.SinCos(Degrees * Math.PI / 180);
        var along = new Point(cos, sin) * reach;
        var across = new Point(-sin, cos) * (LabelSize / 2 + 0.3);
        yield return LabelMiddle + along + across;
        yield return LabelMiddle - along - across;
        yield return LabelMiddle + along - across;
        yield return LabelMiddle - along + across;
    }

    public IEnumerable<Shape> Draw()
    {
        var lines = new PathBuilder();
        foreach (var (from, to) in Strokes())
            lines.Line(from, to);
        if (Length > 0.01)
        {
            var along = (To - From) * (1 / Length);
            yield return Arrow.Head(Start, along * (IsLong ? -1 : 1), Head, Ink.Soft);
            yield return Arrow.Head(End, along * (IsLong ? 1 : -1), Head, Ink.Soft);
        }
        if (!lines.IsEmpty)
            yield return lines.With(new Style(null, Ink.Fine));
        yield return LabelLine(LabelMiddle, Label, Degrees, Lettering);
    }

    /// <summary>A text whose capitals stand centred on <paramref name="middle"/>, turned about it.</summary>
    public static TextLine LabelLine(Point middle, string text, double degrees, Lettering lettering)
    {
        var (sin, cos) = Math.SinCos(degrees * Math.PI / 180);
        var down = lettering.BaselineAround(0);
        return new TextLine(middle + new Point(-sin * down, cos * down), text, lettering, degrees);
    }

    /// <summary>Angle of a line so that words along it are never upside down; upright lines read upwards.</summary>
    public static double Upright(Point along)
    {
        var degrees = Math.Atan2(along.Y, along.X) * 180 / Math.PI;
        if (degrees > 89.9)
            degrees -= 180;
        return degrees < -90.1 ? degrees + 180 : degrees;
    }
}
