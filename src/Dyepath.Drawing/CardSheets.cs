using System.Collections.Immutable;
using System.Globalization;
using Dyepath.Core.Booklets;
using Dyepath.Core.Limits;
using Dyepath.Core.Workshops;
using Dyepath.Drawing.Html;
using Dyepath.Drawing.Lists;
using Dyepath.Drawing.Pdf;
using Dyepath.Drawing.Pictures;
using Dyepath.Drawing.Typography;
using PdfSharp.Pdf;

namespace Dyepath.Drawing;

/// <summary>A workshop's cards to print: half a page each, two to a page, and the list of what to bring after them.</summary>
public static class CardSheets
{
    private const double Point = PageFrame.PointsPerMillimetre;
    private const double Margin = 11 * Point;
    private const double Gap = 5 * Point;

    /// <summary>Width of a drawing, millimetres.</summary>
    private const double Picture = 78;

    private const double LargestType = 10.5;
    private const double SmallestType = 7.5;

    /// <summary>As a tagged PDF.</summary>
    /// <param name="output">Written to once the whole file is made; not closed.</param>
    /// <exception cref="OperationCanceledException">Cancelled before anything was written.</exception>
    public static void WritePdf(WorkshopCards cards, PageSize paper, Stream output, CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(cards);
        ArgumentNullException.ThrowIfNull(output);
        var effort = new Effort(cancel: cancel);
        var frame = PageFrame.Of(new Print(paper));
        var ops = new List<PageOp>();
        for (var i = 0; i < cards.Cards.Length; i++)
        {
            if (i % 2 == 0)
                ops.Add(new NewPage());
            Card(ops, cards.Cards[i], i, cards.Title, frame);
        }
        KitPage(ops, cards, frame);
        using var document = new PdfDocument();
        document.Info.Title = SafeText.OneLine(cards.Title);
        document.Info.Creator = "Dyepath";
        document.Options.CompressContentStreams = true;
        TaggedPages.Write(document, ops, frame, "en-US", effort);
        using var bytes = new MemoryStream();
        document.Save(bytes, false);
        var file = bytes.GetBuffer().AsSpan(0, (int)bytes.Length);
        PdfUaMark.Set(file);
        output.Write(file);
    }

    /// <summary>As one page of HTML that loads nothing else and runs no script; printed, it is two cards to a page.</summary>
    public static string WriteHtml(WorkshopCards cards)
    {
        ArgumentNullException.ThrowIfNull(cards);
        using var text = new StringWriter(CultureInfo.InvariantCulture);
        var html = new HtmlText(text);
        var effort = new Effort();
        html.Raw("<!doctype html>\n<html lang=\"en-US\">\n<head>\n<meta charset=\"utf-8\">\n<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n");
        html.Raw("<meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; style-src 'unsafe-inline'\">\n");
        html.Element("title", cards.Title).Raw("\n<style>\n").Raw(Style).Raw("</style>\n</head>\n<body>\n").Element("h1", cards.Title).Raw("\n");
        for (var i = 0; i < cards.Cards.Length; i++)
        {
            var card = cards.Cards[i];
            html.Raw("<section class=\"card\">\n").Element("h2", card.Title).Raw("\n");
            if (card.Fabric is { } fabric)
            {
                html.Raw("<figure>").Raw(SvgWriter.Write(CardFabricDrawing.Draw(fabric, card.Caption, Picture), string.Create(CultureInfo.InvariantCulture, $"c{i}"), effort));
                html.Element("figcaption", card.Caption).Raw("</figure>\n");
            }
            foreach (var fact in card.Facts)
                html.Element("p", fact).Raw("\n");
            html.Raw("<ol>\n");
            foreach (var step in card.Steps)
                html.Raw("<li>").Element("strong", step.Heading + ".").Raw(" ").Text(step.Text).Raw("</li>\n");
            html.Raw("</ol>\n");
            foreach (var caution in card.Cautions)
                html.Raw("<p class=\"caution\">").Element("strong", "Mind:").Raw(" ").Text(caution).Raw("</p>\n");
            html.Raw("</section>\n");
        }
        html.Raw("<section class=\"kit\">\n").Element("h2", "What to bring").Raw("\n<ul>\n");
        foreach (var line in cards.Kit)
            html.Element("li", line).Raw("\n");
        html.Raw("</ul>\n</section>\n</body>\n</html>\n");
        return text.ToString();
    }

    private const string Style = """
        body { font: 1rem/1.4 "Atkinson Hyperlegible", "Segoe UI", Roboto, Arial, sans-serif; color: #1d1d1d; background:
            #fff; margin: 1rem auto; max-width: 50rem; padding: 0 1rem; }
        h1 { font-size: 1.5rem; } h2 { font-size: 1.25rem; margin: 0 0 .4rem; }
        .card { border: 1px solid #8a8a8a; padding: .8rem; margin: 0 0 1rem; overflow: hidden; }
        .card p { margin: .15rem 0; } .card ol { margin: .4rem 0; padding-left: 1.4rem; }
        figure { float: right; margin: 0 0 .5rem 1rem; width: 19rem; max-width: 100%; } figure svg { width: 100%; height: auto; }
        figcaption { font-size: .85rem; } .caution { border-left: 4px solid #1d1d1d; padding-left: .5rem; }
        @media print { @page { margin: 11mm; } body { font-size: 8.6pt; line-height: 1.28; margin: 0; max-width: none; padding: 0; }
          h1 { display: none; } h2 { font-size: 12pt; } .card { break-inside: avoid; height: 127mm; box-sizing: border-box; margin: 0 0
              3mm; padding: 3mm; }
          figure { width: 74mm; } .kit { break-before: page; font-size: 11pt; } }

        """;

    private static void Card(List<PageOp> ops, WorkshopCard card, int at, string title, PageFrame frame)
    {
        var top = at % 2 == 0 ? Margin : frame.Height / 2 + Gap;
        var bottom = at % 2 == 0 ? frame.Height / 2 - Gap : frame.Height - Margin;
        var size = LargestType;
        while (size > SmallestType && !Laid(null, card, at, title, frame, (top, bottom), size))
            size -= 0.25;
        if (at % 2 == 0)
        {
            ops.Add(new Begin(Role.Artifact));
            var cut = new PathBuilder().Line(new Point(0, 0), new Point(frame.Width / Point, 0)).With(new Style(null, new
                Stroke(Ink.Line, 0.2, 2)));
            ops.Add(new Draw(new Sheet(frame.Width / Point, 1, [cut], "Cut here"), 0, frame.Height / 2, Point));
        }
        Laid(ops, card, at, title, frame, (top, bottom), size);
    }

    /// <summary>Lays a card out, and writes it where there is something to write to.</summary>
    /// <returns>Whether it ends above the bottom.</returns>
    private static bool Laid(List<PageOp>? ops, WorkshopCard card, int at, string title, PageFrame frame,
        (double Top, double Bottom) room, double size)
    {
        var (left, right) = (Margin, frame.Width - Margin);
        var (y, bottom) = room;
        ops?.Add(new Landmark(at, card.Title));
        var text = new Column(ops, size);
        y = text.Write(Role.Heading, [new TextSpan(card.Title, true)], left, right, y, 1.5 * size);
        var column = right;
        var under = y;
        if (card.Fabric is { } fabric)
        {
            var sheet = CardFabricDrawing.Draw(fabric, card.Caption, Picture);
            var x = right - Picture * Point;
            ops?.Add(new Begin(Role.Figure, $"{sheet.Title}. {card.Caption}", new Box(x, y, Picture * Point, sheet.Height * Point)));
            ops?.Add(new Draw(sheet, x, y, Point));
            ops?.Add(new End());
            under = text.Write(Role.Paragraph, [new TextSpan(card.Caption, false)], x, right, y + sheet.Height * Point + 2, 0.88 * size);
            foreach (var caution in card.Cautions)
                under = text.Write(Role.Paragraph, [new TextSpan("Mind: ", true), new TextSpan(caution, false)], x, right, under +
                    0.4 * size, 0.95 * size);
            column = x - Gap;
        }
        foreach (var fact in card.Facts)
            y = text.Write(Role.Paragraph, [new TextSpan(fact, false)], left, column, y, size);
        y += 0.3 * size;
        for (var i = 0; i < card.Steps.Length; i++)
        {
            var step = card.Steps[i];
            var number = string.Create(CultureInfo.InvariantCulture, $"{i + 1}. ");
            y = text.Write(Role.Paragraph, [new TextSpan($"{number}{step.Heading}. ", true), new TextSpan(step.Text, false)], left, column, y + 0.25 * size, size);
        }
        var end = Math.Max(y, under);
        text.Write(Role.Paragraph, [new TextSpan(title, false)], left, right, bottom - 0.95 * size, 0.8 * size);
        return end <= bottom - 1.2 * size;
    }

    private static void KitPage(List<PageOp> ops, WorkshopCards cards, PageFrame frame)
    {
        ops.Add(new NewPage());
        ops.Add(new Landmark(cards.Cards.Length, "What to bring"));
        var text = new Column(ops, 11);
        var y = text.Write(Role.Heading, [new TextSpan($"{cards.Title}: what to bring", true)], Margin, frame.Width - Margin, Margin, 18);
        foreach (var line in cards.Kit)
            y = text.Write(Role.Paragraph, [new TextSpan($"– {line}", false)], Margin, frame.Width - Margin, y + 5, 11);
    }

    /// <summary>Text written one paragraph below the other.</summary>
    private sealed class Column(List<PageOp>? ops, double usual)
    {
        private const double Leading = 1.26;

        /// <returns>Where the next one may begin.</returns>
        public double Write(Role role, ImmutableArray<TextSpan> spans, double left, double right, double y, double size)
        {
            ops?.Add(new Begin(role));
            foreach (var line in TextWrap.Lines(spans, right - left, size))
            {
                y += size * Leading;
                var x = left;
                foreach (var span in line)
                {
                    ops?.Add(new Pdf.Words(x, y - size * (Leading - 1), span.Text, Typeface.Of(span.Strong), size, Ink.Black));
                    x += Typeface.Of(span.Strong).Width(span.Text, size);
                }
            }
            ops?.Add(new End());
            return role == Role.Heading ? y + 0.3 * usual : y;
        }
    }
}
