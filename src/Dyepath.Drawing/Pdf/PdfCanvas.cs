using Dyepath.Core.Booklets;
using Dyepath.Core.Colours;
using Dyepath.Core.Limits;
using Dyepath.Core.Measuring;
using Dyepath.Drawing.Lists;
using Dyepath.Drawing.Typography;
using PdfSharp.Drawing;

namespace Dyepath.Drawing.Pdf;

/// <summary>Draws drawing lists and words on a PDF page.</summary>
internal sealed class PdfCanvas(XGraphics page, PdfFonts fonts, Effort effort)
{
    private readonly Dictionary<Srgb, XSolidBrush> _brushes = [];

    /// <summary>What it takes to draw one symbol, or one step of an outline.</summary>
    private const long StepsOfShape = 100;

    public void Words(double x, double baseline, string text, Typeface face, double size, Srgb colour)
    {
        foreach (var (run, sign) in face.Runs(text))
        {
            page.DrawString(run, fonts.Font(face, sign, size), Brush(colour), x, baseline, XStringFormats.BaseLineLeft);
            x += face.Width(run, size);
        }
    }

    public void Sheet(Sheet sheet, double x, double y, double scale)
    {
        page.Save();
        page.TranslateTransform(x, y);
        page.ScaleTransform(scale);
        foreach (var shape in sheet.Shapes)
            Shape(shape);
        page.Restore();
    }

    public void Picture(JpegPicture picture, Box box)
    {
        using var bytes = new MemoryStream(picture.ToBytes());
        using var image = XImage.FromStream(bytes);
        page.DrawImage(image, box.X, box.Y, box.Width, box.Height);
    }

    private void Shape(Shape shape)
    {
        effort.Spend(StepsOfShape * (shape switch { Outline outline => outline.Steps.Length, TextRow row => row.Texts.Length, _ => 1 }));
        switch (shape)
        {
            case Outline outline:
                Path(outline);
                break;
            case Ellipse e:
                page.DrawEllipse(
                    Pen(e.Style.Stroke), Fill(e.Style), e.Centre.X - e.RadiusX, e.Centre.Y - e.RadiusY, 2 * e.RadiusX, 2 * e.RadiusY);
                break;
            case TextLine text when text.Degrees == 0:
                Anchored(text.At, text.Text, text.Lettering);
                break;
            case TextLine text:
                page.Save();
                page.RotateAtTransform(text.Degrees, new XPoint(text.At.X, text.At.Y));
                Anchored(text.At, text.Text, text.Lettering);
                page.Restore();
                break;
            case TextRow row:
                foreach (var (x, text) in row.Texts)
                    Anchored(new Point(x, row.Baseline), text, row.Lettering);
                break;
            case Group group:
                page.Save();
                page.TranslateTransform(group.At.X, group.At.Y);
                page.RotateTransform(group.Degrees);
                page.ScaleTransform(group.Scale);
                foreach (var inner in group.Shapes)
                    Shape(inner);
                page.Restore();
                break;
            default:
                throw new NotSupportedException($"No PDF for {shape.GetType().Name}.");
        }
    }

    private void Anchored(Point at, string text, Lettering lettering)
    {
        var face = Typeface.Of(lettering.Bold);
        var width = face.Width(text, lettering.Size);
        var x = lettering.Anchor switch
        {
            Anchor.Middle => at.X - width / 2,
            Anchor.End => at.X - width,
            _ => at.X,
        };
        Words(x, at.Y, text, face, lettering.Size, lettering.Colour);
    }

    /// <summary>Closed figures share a path; open ones get their own, since PDFsharp would join them to what comes next.</summary>
    private void Path(Outline outline)
    {
        var path = new XGraphicsPath { FillMode = XFillMode.Winding };
        var (last, open, empty) = (default(Point), false, true);
        foreach (var step in outline.Steps)
        {
            switch (step.Verb)
            {
                case PathVerb.Move:
                    if (open)
                        Finish();
                    break;
                case PathVerb.Line:
                    path.AddLine(last.X, last.Y, step.To.X, step.To.Y);
                    (open, empty) = (true, false);
                    break;
                case PathVerb.Curve:
                    path.AddBezier(
                        last.X, last.Y, step.Control1.X, step.Control1.Y, step.Control2.X, step.Control2.Y, step.To.X, step.To.Y);
                    (open, empty) = (true, false);
                    break;
                case PathVerb.Close:
                    path.CloseFigure();
                    open = false;
                    continue;
            }
            last = step.To;
        }
        if (!empty)
            Finish();

        void Finish()
        {
            page.DrawPath(Pen(outline.Style.Stroke), Fill(outline.Style), path);
            path = new XGraphicsPath { FillMode = XFillMode.Winding };
            (open, empty) = (false, true);
        }
    }

    private static XPen? Pen(Stroke? stroke)
    {
        if (stroke is null)
            return null;
        var pen = new XPen(Colour(stroke.Colour), stroke.Width) { LineCap = XLineCap.Round, LineJoin = XLineJoin.Round };
        if (stroke.Dash > 0)
            pen.DashPattern = [stroke.Dash / stroke.Width, stroke.Dash / stroke.Width];
        return pen;
    }

    private XSolidBrush? Fill(Style style) => style.Fill is { } colour ? Brush(colour) : null;

    private XSolidBrush Brush(Srgb colour)
    {
        if (!_brushes.TryGetValue(colour, out var brush))
            _brushes.Add(colour, brush = new XSolidBrush(Colour(colour)));
        return brush;
    }

    private static XColor Colour(Srgb colour) => XColor.FromArgb(colour.Red, colour.Green, colour.Blue);
}
