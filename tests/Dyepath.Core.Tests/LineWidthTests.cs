using System.Runtime.CompilerServices;

namespace Dyepath.Core.Tests;

/// <summary>Code and comments are read without scrolling sideways; a sentence in quotes may run on.</summary>
public sealed class LineWidthTests
{
    private const int Widest = 140;

    [Fact]
    public void No_line_of_code_is_wider_than_140_columns() => Assert.Empty(WideLines());

    [Theory]
    [InlineData("say(\"a sentence of words\", more);", "say(\"\", more);")]
    [InlineData("var one = two;", "var one = two;")]
    [InlineData("'\"'", "'\"'")]
    public void What_is_in_quotes_does_not_count(string line, string without) => Assert.Equal(without, WithoutWords(line));

    /// <summary>Such as <c>Dyepath.Core/Planning/Plan.cs:12</c>; what the database tools write is left out.</summary>
    private static IEnumerable<string> WideLines() =>
        from file in Directory.EnumerateFiles(Source(), "*.cs", SearchOption.AllDirectories)
        let path = Path.GetRelativePath(Source(), file)
        where !new[] { "/obj/", "/bin/", "/Migrations/" }.Any(folder => path.Contains(folder, StringComparison.Ordinal))
        from line in Numbered(File.ReadLines(file))
        where WithoutWords(line.Text).Length > Widest
        select $"{path}:{line.Number}";

    private static IEnumerable<(int Number, string Text)> Numbered(IEnumerable<string> lines) => lines.Select((text, i) => (i + 1, text));

    /// <summary>All from the first quotation mark to the last is taken for words, so that a sentence with numbers in it is one.</summary>
    private static string WithoutWords(string line)
    {
        var (first, last) = (line.IndexOf('"', StringComparison.Ordinal), line.LastIndexOf('"'));
        return first < 0 || last == first ? line : line[..first] + "\"\"" + line[(last + 1)..];
    }

    private static string Source([CallerFilePath] string here = "") => Path.GetFullPath(Path.Combine(Path.GetDirectoryName(here)!, "../../src"));
}
