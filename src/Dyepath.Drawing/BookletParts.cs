using Dyepath.Core.Booklets;
using Dyepath.Core.Instructions;
using Dyepath.Core.Limits;
using Dyepath.Drawing.Typography;

namespace Dyepath.Drawing;

/// <summary>What every form of a booklet reads out of it alike.</summary>
internal static class BookletParts
{
    /// <summary>As an edition prints it, where its charts are not too many to be drawn.</summary>
    /// <exception cref="TooMuchWorkException">They are.</exception>
    public static Booklet Sized(Booklet booklet, Edition edition)
    {
        booklet = booklet.For(edition);
        var stitches = booklet.Sections.SelectMany(s => s.Blocks).OfType<Figure>().Select(f => f.Picture).OfType<ColourChart>()
            .Sum(c => (long)c.Cells.Length);
        return stitches <= BookletSize.MostChartStitches ? booklet : throw new TooMuchWorkException(EffortPart.Pattern);
    }

    /// <summary>The first colour chart stands for the fabric, on the cover.</summary>
    public static ColourChart? Fabric(Booklet booklet) =>
        booklet.Sections.SelectMany(s => s.Blocks).OfType<Figure>().Select(f => f.Picture).OfType<ColourChart>().FirstOrDefault();

    /// <summary>What the garment on the cover is, where the booklet has more sizes than the one that is drawn.</summary>
    /// <param name="behind">It is seen from behind, too.</param>
    public static string CoverCaption(Booklet booklet, Reader reader, int size, bool behind)
    {
        var name = Phrase.Named(reader.SizeName(booklet.Sizes[size]));
        return reader.Text((booklet.Sizes.Length > 1, behind) switch
        {
            (true, true) => Phrase.Of($"{name} from the front and from behind, drawn from the pattern's own numbers."),
            (true, false) => Phrase.Of($"{name}, drawn from the pattern's own numbers."),
            (false, true) => Phrase.Plain("Drawn from the front and from behind from the pattern's own numbers."),
            (false, false) => Phrase.Plain("Drawn from the pattern's own numbers."),
        });
    }

    /// <summary>The designer's words, a paragraph for each line that is not empty.</summary>
    public static IEnumerable<string> Paragraphs(OwnWords own) =>
        SafeText.Lines(own.Text).Split('\n', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);
}
