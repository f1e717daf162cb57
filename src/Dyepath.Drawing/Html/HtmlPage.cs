using System.Collections.Immutable;
using System.Globalization;
using Dyepath.Core.Booklets;
using Dyepath.Core.Measuring;
using Dyepath.Drawing.Lists;
using Dyepath.Drawing.Pictures;

namespace Dyepath.Drawing.Html;

/// <summary>Cover, contents and sections of a booklet.</summary>
internal sealed class HtmlPage(HtmlText html, Booklet booklet, Reader reader)
{
    /// <summary>Pictures grow with the reader's size of type; a little larger than life at the usual one.</summary>
    private const double RemPerMillimetre = 0.26;

    private int _pictures;

    public void Write()
    {
        Cover();
        Contents();
        html.Raw("<main id=\"pattern\">\n");
        for (var i = 0; i < booklet.Sections.Length; i++)
            WriteSection(booklet.Sections[i], i);
        html.Raw("</main>\n");
    }

    private void Cover()
    {
        html.Raw("<header>\n<h1 dir=\"auto\">").Text(booklet.Title).Raw("</h1>\n");
        if (booklet.Designer.Length > 0)
            html.Raw("<p class=\"designer\" dir=\"auto\">").Text(booklet.Designer).Raw("</p>\n");
        html.Raw("<p class=\"sizes\">").Text(reader.SizesLine(booklet)).Raw("</p>\n");
        if (BookletParts.Fabric(booklet) is { } chart)
        {
            html.Raw("<figure><div class=\"ground\">");
            Svg(ColourChartDrawing.Fabric(chart, reader, 160, "The fabric, drawn from its colour chart."));
            html.Raw("</div></figure>\n");
        }
        html.Raw("</header>\n");
    }

    private void Contents()
    {
        html.Raw("<nav aria-labelledby=\"contents\">\n<h2 id=\"contents\">Contents</h2>\n<ol>\n");
        for (var i = 0; i < booklet.Sections.Length; i++)
            html.Raw($"<li><a href=\"#{Id(booklet.Sections[i], i)}\">").Text(reader.Text(booklet.Sections[i].Title)).Raw("</a></li>\n");
        html.Raw("</ol>\n</nav>\n");
    }

    private void WriteSection(Section section, int index)
    {
        var id = Id(section, index);
        html.Raw($"<section id=\"{id}\" aria-labelledby=\"{id}-title\"{(section.NewPage ? " class=\"new-page\"" : "")}>\n");
        html.Raw($"<h2 id=\"{id}-title\">").Spans(reader.Say(section.Title)).Raw("</h2>\n");
        foreach (var block in section.Blocks)
            WriteBlock(block);
        html.Raw("</section>\n");
    }

    private void WriteBlock(Block block)
    {
        switch (block)
        {
            case Subheading heading:
                html.Raw("<h3>").Spans(reader.Say(heading.Text)).Raw("</h3>\n");
                break;
            case Paragraph paragraph:
                html.Raw("<p>").Spans(reader.Say(paragraph.Text)).Raw("</p>\n");
                break;
            case OwnWords own:
                foreach (var paragraph in BookletParts.Paragraphs(own))
                    html.Raw("<p dir=\"auto\">").Text(paragraph).Raw("</p>\n");
                break;
            case Caution caution:
                html.Raw("<div class=\"caution\" role=\"note\"><svg viewBox=\"0 0 24 24\" role=\"img\" aria-label=\"Caution\" fill=\"none\" stroke=\"currentColor\" stroke-width=\"2\">");
                html.Raw("<path d=\"M12 3 22 21H2zM12 10v5M12 17.5v1\"/></svg><p>").Spans(reader.Say(caution.Text)).Raw("</p></div>\n");
                break;
            case Bullets bullets:
                html.Raw("<ul class=\"plain\">\n");
                foreach (var item in bullets.Items)
                    html.Raw("<li>").Spans(reader.Say(item)).Raw("</li>\n");
                html.Raw("</ul>\n");
                break;
            case Steps steps:
                html.Raw("<dl class=\"steps\">\n");
                foreach (var step in steps.Items)
                    html.Raw("<div><dt>").Spans(reader.Say(step.Label)).Raw("</dt><dd>").Spans(reader.Say(step.Text)).Raw("</dd></div>\n");
                html.Raw("</dl>\n");
                break;
            case Table table:
                WriteTable(table);
                break;
            case Figure figure:
                WriteFigure(figure);
                break;
            case Photo photo:
                html.Raw(string.Create(CultureInfo.InvariantCulture, $"<figure class=\"photo\"><img width=\"{photo.Picture.Width}\" height=\"{photo.Picture.Height}\" alt=\""));
                html.Text(photo.Alternative).Raw("\" src=\"data:image/jpeg;base64,").Raw(photo.Picture.Base64).Raw("\"/></figure>\n");
                break;
            default:
                throw new ArgumentOutOfRangeException(nameof(block), block, "No HTML for this kind of block.");
        }
    }

    private void WriteTable(Table table)
    {
        var caption = reader.Text(table.Caption);
        html.Raw("<div class=\"table\" role=\"region\" tabindex=\"0\" aria-label=\"").Text(caption).Raw("\">");
        html.Raw($"<table{(table.PerSizeColumns ? " class=\"by-size\"" : "")}>\n<caption>").Spans(reader.Say(table.Caption)).Raw("</caption>\n");
        var head = true;
        foreach (var row in table.ForSize(reader.OnlySize(booklet)))
        {
            html.Raw(head ? "<thead><tr>" : "<tr>");
            for (var column = 0; column < row.Length; column++)
            {
                var tag = head || column == 0 ? "th" : "td";
                html.Raw(tag == "td" ? "<td>" : $"<th scope=\"{(head ? "col" : "row")}\">").Spans(reader.SayCell(row[column])).Raw($"</{tag}>");
            }
            html.Raw(head ? "</tr></thead>\n<tbody>\n" : "</tr>\n");
            head = false;
        }
        html.Raw("</tbody>\n</table></div>\n");
    }

    private void WriteFigure(Figure figure)
    {
        var caption = reader.Text(figure.Caption);
        var drawn = PictureDrawing.Draw(figure.Picture, caption, reader.Text(figure.Alternative), reader, Room.Screen);
        html.Raw("<figure>\n");
        foreach (var sheet in drawn.Sheets)
        {
            html.Raw($"<div class=\"ground scroll{(figure.Picture is ColourChart ? " chart" : "")}\" role=\"region\" tabindex=\"0\" aria-label=\"").Text(caption).Raw("\"");
            // A container that runs right to left is first seen at its right end, where a right-handed maker begins.
            html.Raw(figure.Picture is ColourChart && !reader.LeftHanded ? " dir=\"rtl\"" : "");
            html.Raw(string.Create(CultureInfo.InvariantCulture, $" style=\"--width:{sheet.Width * RemPerMillimetre:0.#}rem\">"));
            Svg(sheet);
            html.Raw("</div>\n");
        }
        if (!drawn.Key.IsEmpty)
        {
            html.Raw("<ul class=\"key\" aria-label=\"Key\">");
            foreach (var entry in drawn.Key)
            {
                html.Raw("<li>");
                Svg(entry.Sign);
                html.Raw("<span>").Text(entry.Text).Raw("</span></li>");
            }
            html.Raw("</ul>\n");
        }
        html.Raw("<figcaption>").Spans(reader.Say(figure.Caption)).Raw("</figcaption>\n</figure>\n");
    }

    private void Svg(Sheet sheet) => html.Raw(SvgWriter.Write(sheet, string.Create(CultureInfo.InvariantCulture, $"picture{++_pictures}"), reader.Effort));

    /// <summary>The section's own name where it can serve as a fragment, its number otherwise.</summary>
    private string Id(Section section, int index) =>
        section.Id.Length > 0 && section.Id.All(c => char.IsAsciiLetterOrDigit(c) || c == '-')
            && booklet.Sections.Count(s => s.Id == section.Id) == 1
            ? $"section-{section.Id}"
            : string.Create(CultureInfo.InvariantCulture, $"section.{index + 1}");
}
