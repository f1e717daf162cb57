using System.Collections.Immutable;
using System.Globalization;
using Dyepath.Core.Booklets;
using Dyepath.Core.Colours;
using Dyepath.Drawing.Lists;
using Dyepath.Drawing.Pictures;
using Dyepath.Drawing.Typography;

namespace Dyepath.Drawing.Pdf;

/// <summary>Fills pages from the top down and records what to write.</summary>
internal sealed class Flow
{
    /// <summary>Distance of baselines over the size of type.</summary>
    public const double Leading = 1.4;

    private readonly List<PageOp> _ops = [];
    private readonly string _runningTitle;
    private bool _atTop;

    /// <param name="runningTitle">At the foot of every page but the first, as far as it fits on one line.</param>
    /// <param name="edition">Follows the title, always whole; empty, the title stands alone.</param>
    public Flow(PageFrame frame, string runningTitle, string edition = "")
    {
        Frame = frame;
        var size = frame.Type.Footer;
        var after = edition.Length == 0 ? "" : $" · {edition}";
        var room = frame.TextWidth - 4 * size - Typeface.Regular.Width(after, size);
        var first = TextWrap.Lines([new TextSpan(runningTitle, false)], room, size)[0];
        _runningTitle = string.Concat(first.Select(span => span.Text)).TrimEnd() + after;
        NextPage();
    }

    public PageFrame Frame { get; }

    public IReadOnlyList<PageOp> Ops => _ops;

    public int Page { get; private set; }

    public double Y { get; private set; }

    public TypeScale Type => Frame.Type;

    public double Left => Frame.Left;

    public double Free => Frame.Bottom - Y;

    public void Add(PageOp op) => _ops.Add(op);

    public void NextPage()
    {
        _ops.Add(new NewPage());
        Page++;
        Y = Frame.Top;
        _atTop = true;
        if (Page > 1)
            Footer();
    }

    /// <summary>Goes to the next page where less than <paramref name="height"/> is free; true if it did.</summary>
    public bool Need(double height)
    {
        if (_atTop || height <= Free)
            return false;
        NextPage();
        return true;
    }

    /// <summary>Goes on at another height of the same page, for what stands side by side.</summary>
    public void Back(double y) => Y = y;

    /// <summary>Leaves room, but not at the top of a page.</summary>
    public void Space(double height)
    {
        if (!_atTop)
            Y += height;
    }

    public void Use(double height)
    {
        Y += height;
        _atTop = false;
    }

    /// <summary>Words of one line, its top at <paramref name="top"/>.</summary>
    public void Line(ImmutableArray<TextSpan> spans, double x, double top, double size, Srgb? colour = null)
    {
        foreach (var span in spans)
        {
            var face = Typeface.Of(span.Strong);
            _ops.Add(new Words(x, top + size * (Leading + 0.62) / 2, span.Text, face, size, colour ?? Ink.Black));
            x += face.Width(span.Text, size);
        }
    }

    /// <summary>Lines that may go on on the next page, never with one line alone on either.</summary>
    public void Lines(ImmutableArray<ImmutableArray<TextSpan>> lines, double x, double size, Srgb? colour = null)
    {
        var height = size * Leading;
        var left = lines.Length;
        foreach (var line in lines)
        {
            var together = left == lines.Length || left == 2 ? Math.Min(left, left == 3 ? 3 : 2) : 1;
            Need(together * height);
            Line(line, x, Y, size, colour);
            Use(height);
            left--;
        }
    }

    /// <summary>A drawing with the words that stand for it, its top at <paramref name="top"/>; the height is not used up.</summary>
    public void Figure(Sheet sheet, double x, double top, double scale, string? alternative = null)
    {
        _ops.Add(new Begin(Role.Figure, alternative ?? sheet.Title, new Box(x, top, sheet.Width * scale, sheet.Height * scale)));
        _ops.Add(new Draw(sheet, x, top, scale));
        _ops.Add(new End());
    }

    /// <summary>A photograph of so many points, on this page where it fits.</summary>
    public void Photo(Photo photo, double width, double height)
    {
        Need(height);
        var box = new Box(Left, Y, width, height);
        _ops.Add(new Begin(Role.Figure, photo.Alternative, box));
        _ops.Add(new Show(photo.Picture, box));
        _ops.Add(new End());
        Use(height);
        Space(12);
    }

    /// <summary>A filled rectangle that is not part of the text.</summary>
    public void Rule(double x, double y, double width, double height, Srgb colour)
    {
        var fill = new PathBuilder().Rectangle(0, 0, width, height).With(new Style(colour));
        _ops.Add(new Begin(Role.Artifact));
        _ops.Add(new Draw(new Sheet(width, height, [fill], ""), x, y, 1));
        _ops.Add(new End());
    }

    private void Footer()
    {
        var baseline = Frame.Bottom + 0.46 * Frame.Left;
        var number = Page.ToString(CultureInfo.InvariantCulture);
        var right = Frame.Left + Frame.TextWidth - Typeface.Regular.Width(number, Type.Footer);
        _ops.Add(new Begin(Role.Artifact));
        _ops.Add(new Words(Frame.Left, baseline, _runningTitle, Typeface.Regular, Type.Footer, Ink.Soft));
        _ops.Add(new Words(right, baseline, number, Typeface.Regular, Type.Footer, Ink.Soft));
        _ops.Add(new End());
    }
}
