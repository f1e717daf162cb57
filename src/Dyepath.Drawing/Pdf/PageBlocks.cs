using System.Collections.Immutable;
using Dyepath.Core.Booklets;
using Dyepath.Drawing.Lists;
using Dyepath.Drawing.Pictures;

namespace Dyepath.Drawing.Pdf;

/// <summary>Lays a booklet's blocks out on pages.</summary>
internal sealed class PageBlocks(Flow flow, Booklet booklet, Reader reader)
{
    /// <summary>A pixel is not made larger than at 144 to the inch.</summary>
    private const double PhotoPixel = 0.5;

    /// <summary>Lines of a label beyond which it runs into the text of its item.</summary>
    private const int LongestLabel = 6;

    private static readonly Sheet CautionSign = new(
        6,
        6,
        [
            new PathBuilder().Polygon(new Point(3, 0.4), new Point(5.8, 5.4), new Point(0.2, 5.4)).Line(new Point(3, 2), new Point(3, 3.6))
                .With(new Style(null, new Stroke(Ink.Black, 0.45))),
            new Ellipse(new Point(3, 4.5), 0.3, 0.3, new Style(Ink.Black)),
        ],
        "Caution");

    /// <summary>Share of a page.</summary>
    private const double HardlyAnything = 0.3;

    private (Figure Figure, FigureLayout Layout)? _laid;

    public void Write(Section section, int index)
    {
        // A page on which hardly anything stands is gone on with.
        if (section.NewPage && flow.Free < flow.Frame.BodyHeight * (1 - HardlyAnything))
            flow.NextPage();
        flow.Space(26);
        flow.Add(new Begin(Role.Section));
        Heading(Role.Heading, reader.Say(section.Title), flow.Type.Heading, section.Blocks.FirstOrDefault(),
            () => flow.Add(new Landmark(index, reader.Text(section.Title))));
        for (var i = 0; i < section.Blocks.Length; i++)
        {
            if (section.Blocks[i] is Subheading subheading)
            {
                flow.Space(10);
                Heading(Role.Subheading, reader.Say(subheading.Text), flow.Type.Subheading, section.Blocks.ElementAtOrDefault(i + 1));
            }
            else
            {
                Write(section.Blocks[i]);
            }
        }
        flow.Add(new End());
    }

    /// <summary>A heading keeps the first lines of what follows on its page.</summary>
    private void Heading(Role role, ImmutableArray<TextSpan> words, double size, Block? next, Action? landmark = null)
    {
        ImmutableArray<TextSpan> bold = [.. words.Select(span => span with { Strong = true })];
        var lines = TextWrap.Lines(bold, flow.Frame.TextWidth, size);
        flow.Need(lines.Length * size * Flow.Leading + 6 + FirstHeight(next));
        landmark?.Invoke();
        flow.Add(new Begin(role));
        flow.Lines(lines, flow.Left, size);
        flow.Add(new End());
        flow.Use(role == Role.Heading ? 6 : 4);
    }

    private double FirstHeight(Block? block) => block switch
    {
        null => 0,
        Subheading => flow.Type.Subheading * Flow.Leading + 4 * flow.Type.Line,
        Table => TableLayout.FirstHeight(flow.Type),
        Figure figure => Laid(figure).LeastHeight,
        Photo photo => Size(photo).Height,
        Core.Booklets.Caution => 5 * flow.Type.Line,
        _ => 3 * flow.Type.Line + 6,
    };

    /// <summary>A heading asks for the height of the figure after it; charts are too large to be drawn twice.</summary>
    private FigureLayout Laid(Figure figure)
    {
        if (_laid is var (drawn, layout) && ReferenceEquals(drawn, figure))
            return layout;
        var made = new FigureLayout(flow, figure, reader);
        _laid = (figure, made);
        return made;
    }

    private void Write(Block block)
    {
        switch (block)
        {
            case Paragraph paragraph:
                Paragraph(reader.Say(paragraph.Text));
                break;
            case OwnWords own:
                foreach (var paragraph in BookletParts.Paragraphs(own))
                    Paragraph([new TextSpan(paragraph, false)]);
                break;
            case Caution caution:
                Caution(reader.Say(caution.Text));
                break;
            case Bullets bullets:
                Listed(bullets.Items.Select(item => (Label: ImmutableArray.Create(new TextSpan("•", false)), Body: reader.Say(item))), 14,
                    ruled: false);
                break;
            case Steps steps:
                var items = steps.Items.Select(step => (
                    Label: ImmutableArray.CreateRange(reader.Say(step.Label), span => span with { Strong = true }),
                    Body: reader.Say(step.Text))).ToArray();
                var widest = items.Select(item => TextWrap.Width(item.Label, flow.Type.Body)).DefaultIfEmpty(0).Max();
                Listed(items, Math.Min(widest + 12, flow.Frame.TextWidth * 0.3), ruled: true);
                break;
            case Table table:
                new TableLayout(flow, table, booklet, reader).Write();
                break;
            case Figure figure:
                Laid(figure).Write();
                break;
            case Photo photo:
                Picture(photo);
                break;
            default:
                throw new ArgumentOutOfRangeException(nameof(block), block, "No page layout for this kind of block.");
        }
    }

    private void Paragraph(ImmutableArray<TextSpan> words)
    {
        flow.Add(new Begin(Role.Paragraph));
        flow.Lines(TextWrap.Lines(words, flow.Frame.TextWidth, flow.Type.Body), flow.Left, flow.Type.Body);
        flow.Add(new End());
        flow.Space(6);
    }

    private void Picture(Photo photo)
    {
        var (width, height) = Size(photo);
        flow.Space(6);
        flow.Photo(photo, width, height);
    }

    /// <summary>As wide as the text at most, and never over half a page high, so that its words stay near.</summary>
    private (double Width, double Height) Size(Photo photo)
    {
        var (width, height) = (photo.Picture.Width * PhotoPixel, photo.Picture.Height * PhotoPixel);
        var fit = Math.Min(1, Math.Min(flow.Frame.TextWidth / width, flow.Frame.BodyHeight / 2 / height));
        return (width * fit, height * fit);
    }

    private void Caution(ImmutableArray<TextSpan> words)
    {
        const double indent = 30;
        const double sign = 17;
        var lines = TextWrap.Lines(words, flow.Frame.TextWidth - indent, flow.Type.Body);
        flow.Space(4);
        flow.Need(Math.Min(lines.Length * flow.Type.Line, flow.Frame.BodyHeight));
        var height = Math.Max(lines.Length * flow.Type.Line, sign + 2);
        flow.Rule(flow.Left, flow.Y, 1.5, Math.Min(height, flow.Free), Ink.Black);
        flow.Figure(CautionSign, flow.Left + 8, flow.Y, sign / CautionSign.Width);
        flow.Add(new Begin(Role.Paragraph));
        flow.Lines(lines, flow.Left + indent, flow.Type.Body);
        flow.Add(new End());
        flow.Use(Math.Max(0, height - lines.Length * flow.Type.Line));
        flow.Space(10);
    }

    /// <summary>Items with their labels in a column of their own.</summary>
    private void Listed(IEnumerable<(ImmutableArray<TextSpan> Label, ImmutableArray<TextSpan> Body)> items, double indent, bool ruled)
    {
        flow.Add(new Begin(Role.List));
        foreach (var (label, body) in items)
        {
            var labels = TextWrap.Lines(label, indent - (ruled ? 8 : 0), flow.Type.Body);
            var isLongLabel = labels.Length > LongestLabel;
            var lines = TextWrap.Lines(
                isLongLabel ? [.. label, new TextSpan(" ", false), .. body] : body, flow.Frame.TextWidth - indent, flow.Type.Body);
            if (isLongLabel)
                labels = [];
            flow.Need(Math.Max(labels.Length, Math.Min(lines.Length, 3)) * flow.Type.Line);
            flow.Add(new Begin(Role.Item));
            flow.Add(new Begin(Role.ItemLabel));
            for (var i = 0; i < labels.Length; i++)
                flow.Line(labels[i], flow.Left, flow.Y + i * flow.Type.Line, flow.Type.Body);
            flow.Add(new End());
            flow.Add(new Begin(Role.ItemBody));
            flow.Lines(lines, flow.Left + indent, flow.Type.Body);
            flow.Add(new End());
            flow.Add(new End());
            flow.Use(Math.Max(0, labels.Length - lines.Length) * flow.Type.Line + 2);
            if (ruled)
                flow.Rule(flow.Left, flow.Y, flow.Frame.TextWidth, 0.4, Ink.Line);
            flow.Space(ruled ? 3 : 0);
        }
        flow.Add(new End());
        flow.Space(6);
    }
}
