using System.Globalization;
using Dyepath.Core.Booklets;
using Dyepath.Drawing.Lists;
using Dyepath.Drawing.Pictures;

namespace Dyepath.Drawing.Html;

/// <summary>Cover, contents and sections of a booklet.</summary>
/// <param name="booklet">Blocks for some sizes still told apart, where the edition is for all.</param>
/// <param name="prints">Charts too large for a page have their parts for paper too.</param>
internal sealed class HtmlPage(HtmlText html, Booklet booklet, Reader reader, SizeChoice choice, bool prints)
{
    private readonly HtmlFigures _figures = new(html, reader, choice, prints);

    public void Write()
    {
        Cover();
        Contents();
        html.Raw("<main id=\"pattern\" tabindex=\"-1\">\n");
        var blocks = new HtmlBlocks(html, booklet, reader, choice, _figures);
        for (var i = 0; i < booklet.Sections.Length; i++)
        {
            var section = booklet.Sections[i];
            var id = Id(section, i);
            html.Raw($"<section id=\"{id}\" aria-labelledby=\"{id}-title\"{(section.NewPage ? " class=\"new-page\"" : "")}>\n");
            html.Raw($"<h2 id=\"{id}-title\">").Spans(choice.Say(section.Title)).Raw("</h2>\n");
            blocks.Write(section.Blocks);
            html.Raw("</section>\n");
        }
        html.Raw("</main>\n");
    }

    private void Cover()
    {
        html.Raw("<header>\n<h1 dir=\"auto\">").Text(booklet.Title).Raw("</h1>\n");
        if (booklet.Designer.Length > 0)
            html.Raw("<p class=\"designer\" dir=\"auto\">").Text(booklet.Designer).Raw("</p>\n");
        if (reader.Edition.Label is { } label)
            html.Raw("<p class=\"issue\">").Text(reader.Text(label)).Raw("</p>\n");
        html.Raw("<p class=\"sizes\">").Spans(choice.SizesLine()).Raw("</p>\n");
        choice.Write(html);
        var own = booklet.Cover?.Own ?? [];
        new HtmlBlocks(html, booklet, reader, choice, _figures).Write(own);
        if (own.OfType<Photo>().Any())
        {
            html.Raw("</header>\n");
            return;
        }
        if (booklet.Cover is { } cover)
        {
            Worn(cover);
        }
        else if (BookletParts.Fabric(booklet.For(reader.Edition)) is { } chart)
        {
            html.Raw("<figure class=\"cover\"><div class=\"ground\">");
            _figures.Svg(ColourChartDrawing.Fabric(chart, reader, 160, reader.Text("The fabric, drawn from its colour chart.")));
            html.Raw("</div></figure>\n");
        }
        html.Raw("</header>\n");
    }

    /// <summary>Of the size that is printed, or of the sample; another that is chosen has the same picture, which says its size.</summary>
    private void Worn(BookletCover cover)
    {
        var size = reader.OnlySize(booklet) ?? cover.Sample;
        var views = WornDrawing.Arranged(cover, size, reader, new Box(0, 0, 180, 170), 6);
        var below = views.Length > 1 && views[1].At.X < views[0].At.X + views[0].Sheet.Width;
        html.Raw($"<figure class=\"cover\"><div class=\"ground worn{(below ? " below" : "")}\">");
        foreach (var (sheet, _) in views)
            _figures.Svg(sheet);
        html.Raw("</div>").Element("figcaption", BookletParts.CoverCaption(booklet, reader, size, behind: views.Length > 1)).Raw("</figure>\n");
    }

    private void Contents()
    {
        html.Raw("<nav aria-labelledby=\"contents\">\n<h2 id=\"contents\">").Text(reader.Text("Contents")).Raw("</h2>\n<ol>\n");
        for (var i = 0; i < booklet.Sections.Length; i++)
        {
            html.Raw($"<li><a href=\"#{Id(booklet.Sections[i], i)}\">");
            html.Spans(choice.Say(booklet.Sections[i].Title)).Raw("</a></li>\n");
        }
        html.Raw("</ol>\n</nav>\n");
    }

    /// <summary>The section's own name where it can serve as a fragment, its number otherwise.</summary>
    private string Id(Section section, int index) =>
        section.Id.Length > 0 && section.Id.All(c => char.IsAsciiLetterOrDigit(c) || c == '-')
            && booklet.Sections.Count(s => s.Id == section.Id) == 1
            ? $"section-{section.Id}"
            : string.Create(CultureInfo.InvariantCulture, $"section.{index + 1}");
}
