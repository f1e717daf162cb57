using System.Collections.Immutable;
using Dyepath.Core.Booklets;
using Dyepath.Drawing.Lists;
using Dyepath.Drawing.Pictures;

namespace Dyepath.Drawing.Pdf;

/// <summary>Title, designer, sizes, the fabric and the contents.</summary>
internal static class CoverPages
{
    private const double TitleSize = 30;
    private const double DesignerSize = 14;
    private const double ContentsSize = 11;

    public static void Write(Flow flow, Booklet booklet, Reader reader)
    {
        Text(flow, Role.Title, booklet.Title, TitleSize, strong: true);
        if (booklet.Designer.Length > 0)
            Text(flow, Role.Paragraph, booklet.Designer, DesignerSize, strong: false);
        flow.Use(2);
        Text(flow, Role.Paragraph, reader.SizesLine(booklet), Flow.BodySize, strong: false);
        flow.Use(14);
        if (BookletParts.Fabric(booklet) is { } chart)
            Fabric(flow, ColourChartDrawing.Fabric(chart, reader, flow.Frame.TextWidth / PageFrame.PointsPerMillimetre, "The fabric, drawn from its colour chart."));
        Contents(flow, booklet, reader);
        flow.NextPage();
    }

    private static void Text(Flow flow, Role role, string text, double size, bool strong)
    {
        flow.Add(new Begin(role));
        flow.Lines(TextWrap.Lines([new TextSpan(text, strong)], flow.Frame.TextWidth, size), Flow.Left, size);
        flow.Add(new End());
    }

    private static void Fabric(Flow flow, Sheet sheet)
    {
        var (width, height) = (sheet.Width * PageFrame.PointsPerMillimetre, sheet.Height * PageFrame.PointsPerMillimetre);
        flow.Add(new Begin(Role.Figure, sheet.Title, new Box(Flow.Left, flow.Y, width, height)));
        flow.Add(new Draw(sheet, Flow.Left, flow.Y, PageFrame.PointsPerMillimetre));
        flow.Add(new End());
        flow.Use(height + 20);
    }

    private static void Contents(Flow flow, Booklet booklet, Reader reader)
    {
        const double height = ContentsSize * 1.65;
        flow.Need(Math.Min(booklet.Sections.Length * height + 40, flow.Frame.BodyHeight));
        Text(flow, Role.Heading, "Contents", 16, strong: true);
        flow.Use(4);
        flow.Add(new Begin(Role.Contents));
        for (var i = 0; i < booklet.Sections.Length; i++)
        {
            var title = reader.Text(booklet.Sections[i].Title);
            var lines = TextWrap.Lines([new TextSpan(title, false)], flow.Frame.TextWidth - 40, ContentsSize);
            flow.Need(lines.Length * height);
            flow.Add(new Begin(Role.ContentsEntry));
            flow.Add(new Begin(Role.Paragraph));
            flow.Add(new BeginLink(i, new Box(Flow.Left, flow.Y, flow.Frame.TextWidth, lines.Length * height), title));
            for (var line = 0; line < lines.Length; line++)
                flow.Line(Spaced(lines[line]), Flow.Left, flow.Y + line * height, ContentsSize);
            flow.Add(new PageNumber(
                i, Flow.Left + flow.Frame.TextWidth, flow.Y + ContentsSize * (Flow.Leading + 0.62) / 2, ContentsSize, Ink.Black));
            flow.Add(new End());
            flow.Add(new End());
            flow.Add(new End());
            flow.Use(lines.Length * height - 4);
            flow.Rule(Flow.Left, flow.Y, flow.Frame.TextWidth, 0.35, Ink.Line);
            flow.Use(4);
        }
        flow.Add(new End());
    }

    /// <summary>A space parts the words from the page number that follows them.</summary>
    private static ImmutableArray<TextSpan> Spaced(ImmutableArray<TextSpan> line) =>
        line.IsEmpty || line[^1].Text.EndsWith(' ') ? line : [.. line[..^1], line[^1] with { Text = line[^1].Text + " " }];
}
