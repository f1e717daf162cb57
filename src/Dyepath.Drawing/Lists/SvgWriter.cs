using System.Globalization;
using System.Text;
using Dyepath.Core.Limits;
using Dyepath.Core.Planning;
using Dyepath.Drawing.Typography;

namespace Dyepath.Drawing.Lists;

/// <summary>Writes a sheet as SVG: text stays text, everything to a hundredth of a millimetre, the same bytes every time.</summary>
internal static class SvgWriter
{
    private const string Fonts = "'Atkinson Hyperlegible','Segoe UI',Roboto,'Helvetica Neue',Arial,sans-serif";

    /// <summary>What it takes to write one symbol, or one step of an outline.</summary>
    private const long StepsOfShape = 30;

    /// <param name="id">Unique on the page: the title and description are found by it.</param>
    public static string Write(Sheet sheet, string id, Effort effort)
    {
        var svg = new StringBuilder();
        svg.Append(CultureInfo.InvariantCulture, $"<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 {Number(sheet.Width)} {Number(sheet.Height)}\"");
        svg.Append(CultureInfo.InvariantCulture, $" width=\"{Number(sheet.Width)}mm\" height=\"{Number(sheet.Height)}mm\" role=\"img\"");
        svg.Append(CultureInfo.InvariantCulture, $" aria-labelledby=\"{id}-t{(sheet.Description.Length > 0 ? $" {id}-d" : "")}\"");
        svg.Append(CultureInfo.InvariantCulture, $" font-family=\"{Fonts}\" stroke-linecap=\"round\" stroke-linejoin=\"round\">");
        svg.Append(CultureInfo.InvariantCulture, $"<title id=\"{id}-t\">{SafeText.Markup(sheet.Title)}</title>");
        if (sheet.Description.Length > 0)
            svg.Append(CultureInfo.InvariantCulture, $"<desc id=\"{id}-d\">{SafeText.Markup(sheet.Description)}</desc>");
        foreach (var shape in sheet.Shapes)
            Append(svg, shape, effort);
        return svg.Append("</svg>").ToString();
    }

    private static void Append(StringBuilder svg, Shape shape, Effort effort)
    {
        effort.Spend(StepsOfShape * (shape switch { Outline outline => outline.Steps.Length, TextRow row => row.Texts.Length, _ => 1 }));
        switch (shape)
        {
            case Outline outline:
                svg.Append("<path d=\"");
                AppendSteps(svg, outline);
                svg.Append('"');
                AppendStyle(svg, outline.Style);
                svg.Append("/>");
                break;
            case Ellipse e:
                svg.Append(CultureInfo.InvariantCulture, $"<ellipse cx=\"{Number(e.Centre.X)}\" cy=\"{Number(e.Centre.Y)}\" rx=\"{Number(e.RadiusX)}\" ry=\"{Number(e.RadiusY)}\"");
                AppendStyle(svg, e.Style);
                svg.Append("/>");
                break;
            case TextLine text:
                svg.Append(CultureInfo.InvariantCulture, $"<text x=\"{Number(text.At.X)}\" y=\"{Number(text.At.Y)}\"");
                if (text.Degrees != 0)
                    svg.Append(CultureInfo.InvariantCulture, $" transform=\"rotate({Number(text.Degrees)} {Number(text.At.X)} {Number(text.At.Y)})\"");
                AppendLettering(svg, text.Lettering);
                svg.Append('>').Append(SafeText.Markup(text.Text)).Append("</text>");
                break;
            case TextRow row:
                AppendRow(svg, row);
                break;
            case Group group:
                svg.Append(CultureInfo.InvariantCulture, $"<g transform=\"translate({Number(group.At.X)} {Number(group.At.Y)})");
                if (group.Degrees != 0)
                    svg.Append(CultureInfo.InvariantCulture, $"rotate({Number(group.Degrees)})");
                if (group.Scale != 1)
                    svg.Append(CultureInfo.InvariantCulture, $"scale({group.Scale:0.####})");
                svg.Append("\">");
                foreach (var inner in group.Shapes)
                    Append(svg, inner, effort);
                svg.Append("</g>");
                break;
            default:
                throw new NotSupportedException($"No SVG for {shape.GetType().Name}.");
        }
    }

    /// <summary>Single characters share one element with a list of places; longer symbols need one element each.</summary>
    private static void AppendRow(StringBuilder svg, TextRow row)
    {
        var texts = row.Texts.Select(t => (t.X, Text: SafeText.OneLine(t.Text))).ToArray();
        if (texts.All(t => t.Text.Length == 1))
        {
            svg.Append(CultureInfo.InvariantCulture, $"<text y=\"{Number(row.Baseline)}\" x=\"");
            svg.AppendJoin(' ', texts.Select(t => Number(t.X))).Append('"');
            AppendLettering(svg, row.Lettering);
            svg.Append('>').Append(SafeText.Markup(string.Concat(texts.Select(t => t.Text)))).Append("</text>");
            return;
        }
        svg.Append("<g");
        AppendLettering(svg, row.Lettering);
        svg.Append('>');
        foreach (var (x, text) in texts)
            svg.Append(CultureInfo.InvariantCulture, $"<text x=\"{Number(x)}\" y=\"{Number(row.Baseline)}\">{SafeText.Markup(text)}</text>");
        svg.Append("</g>");
    }

    /// <summary>Relative steps in whole hundredths, so that rounding never adds up along a path.</summary>
    private static void AppendSteps(StringBuilder svg, Outline outline)
    {
        var (startX, startY, x, y) = (0L, 0L, 0L, 0L);
        foreach (var step in outline.Steps)
        {
            var (toX, toY) = (Hundredths(step.To.X), Hundredths(step.To.Y));
            switch (step.Verb)
            {
                case PathVerb.Move:
                    svg.Append('M').Append(Decimal(toX)).Append(' ').Append(Decimal(toY));
                    (startX, startY) = (toX, toY);
                    break;
                case PathVerb.Line when toY == y:
                    svg.Append('h').Append(Decimal(toX - x));
                    break;
                case PathVerb.Line when toX == x:
                    svg.Append('v').Append(Decimal(toY - y));
                    break;
                case PathVerb.Line:
                    svg.Append('l').Append(Decimal(toX - x)).Append(' ').Append(Decimal(toY - y));
                    break;
                case PathVerb.Curve:
                    svg.Append('C').AppendJoin(' ', Number(step.Control1.X), Number(step.Control1.Y), Number(step.Control2.X),
                        Number(step.Control2.Y), Decimal(toX), Decimal(toY));
                    break;
                case PathVerb.Close:
                    svg.Append('z');
                    (toX, toY) = (startX, startY);
                    break;
            }
            (x, y) = (toX, toY);
        }
    }

    private static void AppendStyle(StringBuilder svg, Style style)
    {
        svg.Append(CultureInfo.InvariantCulture, $" fill=\"{(style.Fill is { } fill ? fill.ToString() : "none")}\"");
        if (style.Stroke is not { } stroke)
            return;
        svg.Append(CultureInfo.InvariantCulture, $" stroke=\"{stroke.Colour}\" stroke-width=\"{Number(stroke.Width)}\"");
        if (stroke.Dash > 0)
            svg.Append(CultureInfo.InvariantCulture, $" stroke-dasharray=\"{Number(stroke.Dash)}\"");
    }

    private static void AppendLettering(StringBuilder svg, Lettering lettering)
    {
        svg.Append(CultureInfo.InvariantCulture, $" font-size=\"{Number(lettering.Size)}\" fill=\"{lettering.Colour}\"");
        if (lettering.Anchor != Anchor.Start)
            svg.Append(CultureInfo.InvariantCulture, $" text-anchor=\"{(lettering.Anchor == Anchor.Middle ? "middle" : "end")}\"");
        if (lettering.Bold)
            svg.Append(" font-weight=\"700\"");
    }

    private static string Number(double value) => Decimal(Hundredths(value));

    private static long Hundredths(double value) => (long)Math.Round(value * 100, MidpointRounding.AwayFromZero);

    private static string Decimal(long hundredths) => (hundredths / 100m).ToString("0.##", CultureInfo.InvariantCulture);
}
