using System.Collections.Immutable;
using System.Globalization;
using Dyepath.Core.Booklets;
using Dyepath.Drawing.Lists;
using Dyepath.Drawing.Pictures;

namespace Dyepath.Drawing.Html;

/// <summary>Pictures with their keys and captions: for the screen as large as they are, for paper in parts that fit a page.</summary>
/// <param name="prints">Has the parts for paper too.</param>
internal sealed class HtmlFigures(HtmlText html, Reader reader, SizeChoice choice, bool prints)
{
    /// <summary>Pictures grow with the reader's size of type; a little larger than life at the usual one.</summary>
    private const double RemPerMillimetre = 0.28;

    /// <summary>What both A4 and Letter have within the margins of the style sheet, less a heading and the key.</summary>
    private static readonly Room Paper = new(176, 215);

    private int _pictures;
    private int _captions;

    public void Write(Figure figure)
    {
        var caption = string.Create(CultureInfo.InvariantCulture, $"caption{++_captions}");
        var drawn = Draw(figure, reader, Room.Screen);
        var inParts = prints && figure.Picture is ColourChart && drawn.Sheets.Any(s => s.Width > Paper.Width || s.Height > Paper.Height);
        html.Raw($"<figure{(inParts ? " class=\"in-parts\"" : "")}>\n");
        Key(drawn.Key);
        if (inParts)
        {
            OnScreen(figure, drawn, caption, ForWhom.Everyone, "unprinted");
            OnPaper(Draw(figure, reader, Paper));
        }
        else if (figure.Picture is not ColourChart && BySize(figure, drawn) is { Length: > 0 } bySize)
        {
            OnScreen(figure, drawn, caption, new ForWhom(true, false, null));
            foreach (var (whom, picture) in bySize)
                OnScreen(figure, picture, caption, whom);
        }
        else
        {
            OnScreen(figure, drawn, caption, ForWhom.Everyone);
        }
        html.Raw($"<figcaption id=\"{caption}\">").Spans(choice.Say(figure.Caption)).Raw("</figcaption>\n</figure>\n");
    }

    public void Svg(Sheet sheet) =>
        html.Raw(SvgWriter.Write(sheet, string.Create(CultureInfo.InvariantCulture, $"picture{++_pictures}"), reader.Effort));

    private static DrawnPicture Draw(Figure figure, Reader reader, Room room) =>
        PictureDrawing.Draw(figure.Picture, reader.Text(figure.Caption), reader.Text(figure.Alternative), reader, room);

    /// <summary>The picture for each size alone, where it says something else to one of them than to all; the key is the same.</summary>
    private (ForWhom For, DrawnPicture Drawn)[] BySize(Figure figure, DrawnPicture forAll)
    {
        var all = forAll.Sheets.Select(Compared).ToArray();
        (ForWhom For, DrawnPicture Drawn)[] each =
            [.. choice.EachSize().Select(size => (size.For, Draw(figure, size.Reader, Room.Screen)))];
        return each.Any(one => !one.Drawn.Sheets.Select(Compared).SequenceEqual(all)) ? each : [];
    }

    private string Compared(Sheet sheet) => SvgWriter.Write(sheet, "compared", reader.Effort);

    private void OnScreen(Figure figure, DrawnPicture drawn, string caption, ForWhom whom, string classes = "")
    {
        html.Raw($"<div{whom.Attributes(classes)}>\n");
        foreach (var sheet in drawn.Sheets)
        {
            html.Raw($"<div class=\"ground scroll{(figure.Picture is ColourChart ? " chart" : "")}\" role=\"region\" tabindex=\"0\" aria-labelledby=\"{caption}\"");
            // A container that runs right to left is first seen at its right end.
            html.Raw(figure.Picture is ColourChart chart && IsBegunAtRight(chart) ? " dir=\"rtl\"" : "");
            html.Raw(string.Create(CultureInfo.InvariantCulture, $" style=\"--width:{sheet.Width * RemPerMillimetre:0.#}rem\">"));
            Svg(sheet);
            html.Raw("</div>\n");
        }
        html.Raw("</div>\n");
    }

    /// <summary>
    /// Whether the first row lies nearer to the picture's right end; where it fills the width, whether it is worked from there.
    /// </summary>
    private bool IsBegunAtRight(ColourChart chart)
    {
        var before = chart.RowOffsets[0] - chart.RowOffsets.Min();
        int[] ends = [.. chart.RowOffsets.Zip(chart.RowUnits, (offset, units) => offset + 2 * units)];
        var after = ends.Max() - ends[0];
        return reader.LeftHanded ? after < before : before <= after;
    }

    private void OnPaper(DrawnPicture drawn)
    {
        html.Raw("<div class=\"paper\" hidden=\"\">\n");
        foreach (var sheet in drawn.Sheets)
        {
            html.Raw("<div class=\"part\">");
            Svg(sheet);
            html.Element("p", sheet.Title).Raw("</div>\n");
        }
        html.Raw("</div>\n");
    }

    private void Key(ImmutableArray<KeyEntry> key)
    {
        if (key.IsEmpty)
            return;
        html.Raw("<ul class=\"key\" aria-label=\"").Text(reader.Text("Key")).Raw("\">");
        foreach (var entry in key)
        {
            html.Raw("<li>");
            Svg(entry.Sign);
            html.Raw("<span>").Text(entry.Text).Raw("</span></li>");
        }
        html.Raw("</ul>\n");
    }
}
