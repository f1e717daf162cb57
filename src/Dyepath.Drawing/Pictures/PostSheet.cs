using System.Collections.Immutable;
using Dyepath.Core.Booklets;
using Dyepath.Drawing.Lists;
using Dyepath.Drawing.Typography;

namespace Dyepath.Drawing.Pictures;

/// <summary>
/// One picture to show a pattern with: what is shown above, and below it the title, the designer and that a computer drew it. Nothing but
/// fabric lies in the outer twentieth, which some screens cut off.
/// </summary>
internal sealed class PostSheet(BookletCover? cover, ColourChart? fabric, int size, Reader reader)
{
    /// <summary>1,080 pixels of a screen, in millimetres.</summary>
    public const double Width = 1_080 * 25.4 / 96;

    /// <summary>Share of the width that is kept free at every edge.</summary>
    public const double SafeShare = 0.055;

    /// <summary>Share of the width that letters are high at least, so that they are read on a phone.</summary>
    public const double SmallestLetters = 0.036;

    /// <summary>Said on every picture, so that nobody takes it for a photo.</summary>
    public string Drawn { get; } = reader.Text("Drawn by computer from the pattern's numbers.");

    private const double LargestTitle = 0.06;

    private const double Leading = 1.35;

    private static double Safe => SafeShare * Width;

    /// <summary>Front and back as worn; missing where the booklet has no garment to show.</summary>
    public Sheet? Cover(double height, string title, string designer) => cover is null ? null
        : Composed(height, title, designer, Sentence, box => Garment(box));

    /// <summary>The fabric from edge to edge; missing where the booklet has no chart of colours.</summary>
    public Sheet? Fabric(double height, string title, string designer) => fabric is null ? null
        : Composed(height, title, designer, OfFabric(title), box => Filled(new Box(0, 0, Width, box.Bottom)));

    /// <summary>The garment, and its fabric beside or below it, whichever the shape has room for.</summary>
    public Sheet? Both(double height, string title, string designer) => cover is null || fabric is null ? null
        : Composed(height, title, designer, $"{Sentence} {OfFabric(title)}", box =>
        {
            if (box.Height <= box.Width)
            {
                var half = (box.Width - Safe) / 2;
                return [.. Garment(box with { Width = half }), .. Cloth(new Box(box.X + half + Safe, box.Y, half, box.Height))];
            }
            var strip = box.Height * 0.36;
            var above = box with { Height = box.Height - strip - Safe / 2 };
            return [.. Garment(above), .. Filled(new Box(0, box.Bottom - strip, Width, strip))];
        });

    /// <summary>What a sighted person sees of the garment.</summary>
    private string Sentence => cover!.Worn[size].Value.Behind is null ? cover.Worn[size].Value.Front.Sentence
        : $"{cover.Worn[size].Value.Front.Sentence} {reader.Text("From the front and from behind.")}";

    private string OfFabric(string title) =>
        reader.Text(Phrase.Of($"The fabric of {Phrase.Named(title)}, stitch by stitch in the colours of its yarn."));

    /// <summary>What is shown, in the room that the words leave, and the words.</summary>
    private Sheet Composed(double height, string title, string designer, string alternative, Func<Box, IEnumerable<Shape>> show)
    {
        var words = Words(title, designer);
        var lines = words.Sum(w => w.Size * Leading);
        var edge = Math.Max(Safe, SafeShare * height);
        var room = new Box(Safe, edge, Width - 2 * Safe, height - 2 * edge - lines - Safe / 2);
        var shapes = ImmutableArray.CreateBuilder<Shape>();
        shapes.AddRange(show(room));
        var y = height - edge - lines;
        foreach (var (text, letters, bold) in words)
        {
            y += letters * Leading;
            shapes.Add(new TextLine(
                new Point(Safe, y - letters * (Leading - 1)), text, new Lettering(letters, bold ? Ink.Black : Ink.Soft, Bold: bold)));
        }
        var paper = new PathBuilder().Rectangle(0, 0, Width, height).With(new Style(Ink.Paper));
        return new Sheet(Width, height, [paper, .. shapes], title, $"{alternative} {Drawn}");
    }

    private List<(string Text, double Size, bool Bold)> Words(string title, string designer)
    {
        var words = new List<(string, double, bool)> { Fitted(title, LargestTitle, bold: true) };
        if (designer.Trim().Length > 0)
            words.Add(Fitted(designer, SmallestLetters * 1.1, bold: false));
        words.Add(Fitted(Drawn, SmallestLetters, bold: false));
        return words;
    }

    /// <summary>As large as it may be and the line lets it; what is too long even at the smallest is cut.</summary>
    private static (string Text, double Size, bool Bold) Fitted(string text, double largest, bool bold)
    {
        var (line, face) = (SafeText.OneLine(text), Typeface.Of(bold));
        var room = Width - 2 * Safe;
        // A screen may have a wider font than the one that is measured.
        double Wide(string words) => 1.1 * face.Width(words, 1);
        var size = Math.Clamp(room / Math.Max(Wide(line), 1e-6), SmallestLetters * Width, largest * Width);
        while (line.Length > 1 && Wide(line) * size > room)
            line = (line.EndsWith('…') ? line[..^2] : line[..^1]).TrimEnd() + "…";
        return (line, size, bold);
    }

    /// <summary>Front and back, in the middle of the room.</summary>
    private IEnumerable<Shape> Garment(Box room) =>
        WornDrawing.Arranged(cover!, size, reader, room, Safe / 2).Select(view => new Group(view.Sheet.Shapes, view.At));

    /// <summary>The fabric, across the room and in its middle where it is not as tall.</summary>
    private IEnumerable<Shape> Cloth(Box room) =>
        [Placed(ColourChartDrawing.Fabric(fabric!, reader, "", new Room(room.Width, room.Height)), room)];

    /// <summary>
    /// From edge to edge: a fabric that is less tall is larger, and its sides lie beyond the picture's. What is cut is shown whole, away
    /// from the edges.
    /// </summary>
    private IEnumerable<Shape> Filled(Box room)
    {
        if (ColourChartDrawing.IsCut(fabric!))
        {
            var top = Math.Max(Safe, room.Y);
            return Cloth(new Box(Safe, top, Width - 2 * Safe, room.Bottom - top));
        }
        var sheet = ColourChartDrawing.Fabric(fabric!, reader, "", new Room(room.Width, room.Height));
        return [Placed(sheet, room, Math.Max(1, room.Height / sheet.Height))];
    }

    private static Group Placed(Sheet sheet, Box room, double scale = 1) => new(
        sheet.Shapes,
        new Point(room.X + (room.Width - scale * sheet.Width) / 2, room.Y + (room.Height - scale * sheet.Height) / 2),
        Scale: scale);
}
