using Dyepath.Core.Instructions;
using Dyepath.Drawing.Typography;

namespace Dyepath.Drawing;

/// <summary>What every form of a booklet reads out of it alike.</summary>
internal static class BookletParts
{
    /// <summary>The first colour chart stands for the fabric, on the cover.</summary>
    public static ColourChart? Fabric(Booklet booklet) =>
        booklet.Sections.SelectMany(s => s.Blocks).OfType<Figure>().Select(f => f.Picture).OfType<ColourChart>().FirstOrDefault();

    /// <summary>The designer's words, a paragraph for each line that is not empty.</summary>
    public static IEnumerable<string> Paragraphs(OwnWords own) =>
        SafeText.Lines(own.Text).Split('\n', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);
}
