using System.Collections.Immutable;
using Dyepath.Core.Booklets;
using Dyepath.Core.Colours;
using Dyepath.Drawing.Lists;
using Dyepath.Drawing.Pictures;

namespace Dyepath.Drawing.Pdf;

/// <summary>
/// The front: title, designer, sizes, and the garment as worn or the designer's photo. The contents follow on the next page.
/// </summary>
internal static class CoverPages
{
    private const double Scale = PageFrame.PointsPerMillimetre;

    /// <summary>Height of the strip of the yarn's colours, in millimetres.</summary>
    private const double StripHeight = 3;

    /// <summary>Millimetres between front and back.</summary>
    private const double Between = 8;

    public static void Write(Flow flow, Booklet booklet, Reader reader)
    {
        Text(flow, Role.Title, booklet.Title, flow.Type.Title, strong: true);
        if (booklet.Designer.Length > 0)
            Text(flow, Role.Paragraph, booklet.Designer, flow.Type.Designer, strong: false);
        if (reader.Edition.Label is { } label)
            Text(flow, Role.Paragraph, reader.Text(label), flow.Type.Body, strong: false, Ink.Soft);
        flow.Use(0.6 * flow.Type.Body);
        if (booklet.Cover is { } strip)
            Strip(flow, strip.Colours);
        Text(flow, Role.Paragraph, reader.SizesLine(booklet), flow.Type.Body, strong: false);
        foreach (var own in booklet.Cover?.Own.OfType<OwnWords>() ?? [])
        {
            foreach (var paragraph in BookletParts.Paragraphs(own))
                Text(flow, Role.Paragraph, paragraph, flow.Type.Body, strong: false);
        }
        flow.Use(flow.Type.Body);
        Picture(flow, booklet, reader);
        flow.NextPage();
        Contents(flow, booklet, reader);
    }

    private static void Picture(Flow flow, Booklet booklet, Reader reader)
    {
        var photos = booklet.Cover?.Own.OfType<Photo>().ToArray() ?? [];
        if (photos.Length > 0)
        {
            foreach (var photo in photos)
                Photo(flow, photo);
        }
        else if (booklet.Cover is { } cover)
        {
            Worn(flow, booklet, cover, reader);
        }
        else if (BookletParts.Fabric(booklet) is { } chart)
        {
            var sheet = ColourChartDrawing.Fabric(chart, reader, flow.Frame.TextWidth / Scale, reader.Text("The fabric, drawn from its colour chart."));
            flow.Figure(sheet, flow.Left, flow.Y, Scale);
            flow.Use(sheet.Height * Scale + 20);
        }
    }

    /// <summary>As large as the page lets it be.</summary>
    private static void Photo(Flow flow, Photo photo)
    {
        var room = flow.Free > flow.Frame.BodyHeight / 3 ? flow.Free : flow.Frame.BodyHeight;
        var fit = Math.Min(flow.Frame.FullWidth / photo.Picture.Width, room / photo.Picture.Height);
        flow.Photo(photo, photo.Picture.Width * fit, photo.Picture.Height * fit);
    }

    private static void Worn(Flow flow, Booklet booklet, BookletCover cover, Reader reader)
    {
        var size = reader.OnlySize(booklet) ?? cover.Sample;
        var caption = flow.Type.Caption * Flow.Leading;
        var room = new Box(0, 0, flow.Frame.FullWidth / Scale, (flow.Free - 2 * caption - 8) / Scale);
        var views = WornDrawing.Arranged(cover, size, reader, room, Between);
        // As high on the page as they can be.
        var top = views.Min(view => view.At.Y);
        foreach (var (sheet, at) in views)
            flow.Figure(sheet, flow.Left + at.X * Scale, flow.Y + (at.Y - top) * Scale, Scale);
        flow.Use((views.Max(view => view.At.Y + view.Sheet.Height) - top + 2) * Scale);
        var words = BookletParts.CoverCaption(booklet, reader, size, behind: views.Length > 1);
        Text(flow, Role.Paragraph, words, flow.Type.Caption, strong: false, Ink.Soft);
    }

    /// <summary>The colours in their order, across the page.</summary>
    private static void Strip(Flow flow, ImmutableArray<Srgb> colours)
    {
        var width = flow.Frame.FullWidth / colours.Length;
        for (var i = 0; i < colours.Length; i++)
            flow.Rule(flow.Left + i * width, flow.Y, width, StripHeight * Scale, colours[i]);
        flow.Use(StripHeight * Scale + 0.6 * flow.Type.Body);
    }

    private static void Text(Flow flow, Role role, string text, double size, bool strong, Srgb? colour = null,
        double? width = null)
    {
        flow.Add(new Begin(role));
        flow.Lines(TextWrap.Lines([new TextSpan(text, strong)], width ?? flow.Frame.TextWidth, size), flow.Left, size, colour);
        flow.Add(new End());
    }

    private static void Contents(Flow flow, Booklet booklet, Reader reader)
    {
        var height = flow.Type.Contents * 1.65;
        flow.Need(Math.Min(booklet.Sections.Length * height + 40, flow.Frame.BodyHeight));
        Text(flow, Role.Heading, reader.Text("Contents"), flow.Type.Heading, strong: true);
        flow.Use(4);
        flow.Add(new Begin(Role.Contents));
        for (var i = 0; i < booklet.Sections.Length; i++)
        {
            var title = reader.Text(booklet.Sections[i].Title);
            var lines = TextWrap.Lines([new TextSpan(title, false)], flow.Frame.TextWidth - 40, flow.Type.Contents);
            flow.Need(lines.Length * height);
            flow.Add(new Begin(Role.ContentsEntry));
            flow.Add(new Begin(Role.Paragraph));
            flow.Add(new BeginLink(i, new Box(flow.Left, flow.Y, flow.Frame.TextWidth, lines.Length * height), title));
            for (var line = 0; line < lines.Length; line++)
                flow.Line(Spaced(lines[line]), flow.Left, flow.Y + line * height, flow.Type.Contents);
            var baseline = flow.Y + flow.Type.Contents * (Flow.Leading + 0.62) / 2;
            flow.Add(new PageNumber(i, flow.Left + flow.Frame.TextWidth, baseline, flow.Type.Contents, Ink.Black));
            flow.Add(new End());
            flow.Add(new End());
            flow.Add(new End());
            flow.Use(lines.Length * height - 4);
            flow.Rule(flow.Left, flow.Y, flow.Frame.TextWidth, 0.35, Ink.Line);
            flow.Use(4);
        }
        flow.Add(new End());
    }

    /// <summary>A space parts the words from the page number that follows them.</summary>
    private static ImmutableArray<TextSpan> Spaced(ImmutableArray<TextSpan> line) =>
        line.IsEmpty || line[^1].Text.EndsWith(' ') ? line : [.. line[..^1], line[^1] with { Text = line[^1].Text + " " }];
}
