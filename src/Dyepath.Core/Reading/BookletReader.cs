using System.Collections.Immutable;

namespace Dyepath.Core.Reading;

/// <summary>
/// Reads a booklet's text back as a technical editor would: sizes from its head, every piece's rows counted from their words, every
/// pick-up rule followed, every pair of units compared; never from the plan. Works in US and UK terms, in any units, and for one size.
/// </summary>
public static class BookletReader
{
    /// <exception cref="FormatException">The text has no line of sizes: it is not a booklet's.</exception>
    public static ReadBooklet Read(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        var sections = BookletText.Sections(text);
        const string head = "Sizes: ";
        // Below the title and the designer's name, which may read so too.
        var line = sections.Take(2).SelectMany(s => s.Parts).SelectMany(p => p.Lines)
            .LastOrDefault(l => l.StartsWith(head, StringComparison.Ordinal))
            ?? throw new FormatException("The text has no line that begins with “Sizes: ”.");
        var sizes = SizeLists.Entries(line[head.Length..]);
        var wrong = new List<string>();
        var pieces = sections.Where(s => s.Title == "PIECES").SelectMany(s => new PieceReader(sizes, wrong).Read(s.Parts)).ToImmutableArray();
        var edgings = sections.Where(s => s.Title == "EDGINGS").SelectMany(s => new EdgingReader(sizes, wrong).Read(s.Parts)).ToImmutableArray();
        var tables = sections.SelectMany(s => s.Parts.SelectMany(p => p.Tables.Select(t => (s.Title, p.Heading, t)))).ToImmutableArray();
        var lines = sections.SelectMany(s => s.Parts.SelectMany(p => p.Lines.Select(l => (s.Title, p.Heading, l)))).ToImmutableArray();
        foreach (var (_, _, words) in lines)
            UnitPairs.Check(words, wrong);
        foreach (var (_, _, table) in tables)
            UnitPairs.Check(table, wrong);
        return new ReadBooklet(sizes, pieces, edgings, tables, lines, [.. wrong]);
    }
}
