using System.Collections.Immutable;
using System.Text.RegularExpressions;
using Dyepath.Core.Booklets;

namespace Dyepath.Core.Reading;

/// <summary>A table as printed: its head, then rows of as many cells.</summary>
/// <param name="Head">One cell a column.</param>
/// <param name="Rows">Each with as many cells as the head.</param>
public sealed record ReadTable(ImmutableArray<string> Head, ImmutableArray<ImmutableArray<string>> Rows);

/// <summary>One titled part of a section, or what stands before the first.</summary>
/// <param name="Heading">Empty before the first subheading.</param>
/// <param name="Lines">Unwrapped; tables apart.</param>
internal sealed record TextPart(string Heading, ImmutableArray<string> Lines, ImmutableArray<ReadTable> Tables);

/// <summary>A booklet's text taken apart: sections by their titles, in them parts, in them whole lines and tables.</summary>
internal static partial class BookletText
{
    public static ImmutableArray<(string Title, ImmutableArray<TextPart> Parts)> Sections(string text)
    {
        var lines = Unwrapped(text);
        var sections = ImmutableArray.CreateBuilder<(string, ImmutableArray<TextPart>)>();
        var (title, body) = ("", new List<string>());
        for (var i = 0; i < lines.Count; i++)
        {
            if (i + 1 < lines.Count && Rule().IsMatch(lines[i + 1]))
            {
                sections.Add((title, Parts(body)));
                (title, body) = (lines[i], []);
                i++;
                continue;
            }
            body.Add(lines[i]);
        }
        sections.Add((title, Parts(body)));
        return sections.ToImmutable();
    }

    /// <summary>A continuation is indented by four spaces.</summary>
    private static List<string> Unwrapped(string text)
    {
        var lines = new List<string>();
        foreach (var line in text.Split('\n'))
        {
            if (line.StartsWith("    ", StringComparison.Ordinal) && lines.Count > 0)
                lines[^1] += " " + line.Trim(' ');
            else
                lines.Add(line);
        }
        return lines;
    }

    private static ImmutableArray<TextPart> Parts(List<string> body)
    {
        var parts = ImmutableArray.CreateBuilder<TextPart>();
        var (heading, lines, tables, table) = ("", new List<string>(), new List<ReadTable>(), new List<ImmutableArray<string>>());
        foreach (var line in body)
        {
            if (line.StartsWith("  ", StringComparison.Ordinal))
            {
                table.Add([.. Gap().Split(line.Trim(' '))]);
                continue;
            }
            EndTable();
            if (line.StartsWith("## ", StringComparison.Ordinal))
            {
                parts.Add(new TextPart(heading, [.. lines], [.. tables]));
                (heading, lines, tables) = (line[3..], [], []);
            }
            else if (line.Length > 0)
            {
                lines.Add(line);
            }
        }
        EndTable();
        parts.Add(new TextPart(heading, [.. lines], [.. tables]));
        return parts.ToImmutable();

        void EndTable()
        {
            if (table.Count > 0)
                tables.Add(new ReadTable(table[0], [.. table.Skip(1)]));
            table = [];
        }
    }

    [GeneratedRegex("^(-{3,}|={3,})$")]
    private static partial Regex Rule();

    [GeneratedRegex(" {2,}")]
    private static partial Regex Gap();
}
