using System.Text;
using Dyepath.Core.Measuring;
using Dyepath.Core.Replays;

namespace Dyepath.Core.Booklets;

/// <summary>The booklet as plain text, wrapped for a terminal; the form that <c>BookletReader</c> reads back.</summary>
public static class TextBooklet
{
    private const int LineWidth = 96;

    /// <summary>Begins the further lines of an item, so that a reader can put them together again.</summary>
    private const string Continued = "    ";

    /// <summary>Begins the designer's own words, which may look like any line of the pattern.</summary>
    public const string Own = "> ";

    private const string Unseen = "\u200E\u200F\u061C\uFEFF";

    /// <returns>Lines end with a line feed; pictures appear as their alternative text.</returns>
    /// <exception cref="ArgumentException">The edition is for a size that the booklet does not have.</exception>
    public static string Write(Booklet booklet, Edition edition)
    {
        ArgumentNullException.ThrowIfNull(booklet);
        var wording = new Wording(booklet, edition);
        booklet = booklet.For(edition);
        var text = new StringBuilder();
        var headline = Spaced(booklet.Title);
        text.Append(headline).Append('\n').Append(new string('=', Math.Max(3, headline.Length))).Append('\n');
        if (booklet.Designer.Length > 0)
            text.Append(Spaced(booklet.Designer)).Append('\n');
        if (edition.Label is { } label)
            text.Append(wording.Text(label)).Append('\n');
        text.Append('\n');
        text.Append(wording.Text(Phrase.Plain("Sizes"))).Append(": ").Append(edition.Size ?? Sizes(booklet)).Append('\n');
        foreach (var own in booklet.Cover?.Own ?? [])
            Append(text, own, wording);
        foreach (var section in booklet.Sections)
        {
            var title = wording.Text(section.Title).ToUpperInvariant().Replace("ß", "SS", StringComparison.Ordinal);
            text.Append('\n').Append(title).Append('\n').Append(new string('-', title.Length)).Append('\n');
            foreach (var block in section.Blocks)
                Append(text, block, wording);
        }
        return text.ToString();
    }

    private static string Sizes(Booklet booklet) => booklet.Sizes.Length == 1
        ? booklet.Sizes[0]
        : $"{booklet.Sizes[0]} ({string.Join(", ", booklet.Sizes.Skip(1))})";

    private static void Append(StringBuilder text, Block block, Wording wording)
    {
        switch (block)
        {
            case Subheading heading:
                text.Append('\n').Append("## ").Append(wording.Text(heading.Text)).Append('\n');
                break;
            case Paragraph paragraph:
                Wrapped(text, wording.Text(paragraph.Text), "", Continued);
                break;
            case OwnWords own:
                foreach (var line in own.Text.Split('\n'))
                    Wrapped(text, line, Own, Continued);
                break;
            case Caution caution:
                Wrapped(text, wording.Text(caution.Text), "! ", Continued);
                break;
            case Bullets bullets:
                foreach (var item in bullets.Items)
                    Wrapped(text, wording.Text(item), "- ", Continued);
                break;
            case Steps steps:
                foreach (var step in steps.Items)
                    Wrapped(text, $"{wording.Text(step.Label)}: {wording.Text(step.Text)}", "", Continued);
                break;
            case Table table:
                AppendTable(text, table, wording);
                break;
            case Figure figure:
                Wrapped(text, $"[{wording.Text(Phrase.Plain("Picture"))}: {wording.Text(figure.Caption)} {wording.Text(figure.Alternative)}]", "", Continued);
                break;
            case Photo photo:
                Wrapped(text, $"[{wording.Text(Phrase.Plain("Photo"))}: {photo.Alternative}]", "", Continued);
                break;
            default:
                throw new ArgumentOutOfRangeException(nameof(block), block, "No text for this kind of block.");
        }
    }

    private static void AppendTable(StringBuilder text, Table table, Wording wording)
    {
        var rows = table.ForSize(wording.OnlySize).Select(row => row.Select(wording.Text).ToArray()).ToArray();
        Wrapped(text, wording.Text(table.Caption), "", Continued);
        var widths = Enumerable.Range(0, rows[0].Length).Select(column => rows.Max(row => row[column].Length)).ToArray();
        foreach (var row in rows)
        {
            for (var column = 0; column < row.Length; column++)
                text.Append("  ").Append(column == 0 ? row[column].PadRight(widths[column]) : row[column].PadLeft(widths[column]));
            text.Append('\n');
        }
    }

    /// <summary>
    /// As lines and pages print it: several spaces are one, and marks that only turn the direction of what follows are left out.
    /// </summary>
    internal static string Spaced(string words) => string.Join(' ', Seen(words));

    /// <summary>The words that a line is made of.</summary>
    private static string[] Seen(string words) =>
        string.Concat(words.Where(c => !Unseen.Contains(c))).Split(' ', StringSplitOptions.RemoveEmptyEntries);

    private static void Wrapped(StringBuilder text, string words, string first, string next)
    {
        var lead = first;
        var line = new StringBuilder(lead);
        foreach (var word in Seen(words))
        {
            if (line.Length > lead.Length && line.Length + 1 + word.Length > LineWidth)
            {
                text.Append(line).Append('\n');
                lead = next;
                line.Clear().Append(lead);
            }
            if (line.Length > lead.Length)
                line.Append(' ');
            line.Append(word);
        }
        text.Append(line).Append('\n');
    }
}
