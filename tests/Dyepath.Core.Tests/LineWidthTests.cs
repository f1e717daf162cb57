using System.Runtime.CompilerServices;

namespace Dyepath.Core.Tests;

/// <summary>Code and comments are read without scrolling sideways; a sentence in quotes may run on.</summary>
public sealed class LineWidthTests
{
    private const int Widest = 140;

    /// <summary>Folders and files of <c>src</c> that still have wider lines; one that has none any more is taken off the list.</summary>
    private static readonly string[] Wider =
    [
        "Dyepath.Core/Checking/EdgingCheck.cs", "Dyepath.Core/Checking/MeasureCheck.cs",
        "Dyepath.Core/Checking/PlainShape.cs", "Dyepath.Core/Constructions/", "Dyepath.Core/Documents/WrappedShapes.cs",
        "Dyepath.Core/Edgings/Edging.cs", "Dyepath.Core/Edgings/EdgingLibrary.cs", "Dyepath.Core/Edgings/PickUp.cs",
        "Dyepath.Core/Edgings/PickUpWords.cs", "Dyepath.Core/Garments/Construction.cs", "Dyepath.Core/Garments/Edges.cs",
        "Dyepath.Core/Instructions/CareSection.cs", "Dyepath.Core/Instructions/ChartsSection.cs",
        "Dyepath.Core/Instructions/EdgingsSection.cs", "Dyepath.Core/Instructions/MakingUpSection.cs",
        "Dyepath.Core/Instructions/Notions.cs",
        "Dyepath.Core/Instructions/SewingWords.cs", "Dyepath.Core/Instructions/ShapedRowInstructions.cs",
        "Dyepath.Core/Instructions/SizesSection.cs", "Dyepath.Core/Planning/Directions/",
        "Dyepath.Core/Planning/Pieces/EdgingPlanner.cs", "Dyepath.Core/Planning/Plan.cs",
        "Dyepath.Core/Planning/PlanFindings.cs", "Dyepath.Core/Planning/Shapes/CutPlanner.cs",
        "Dyepath.Core/Planning/Shapes/ShapedEdges.cs", "Dyepath.Core/Reading/EdgingComparison.cs",
        "Dyepath.Core/Reading/MaterialLines.cs", "Dyepath.Core/Reading/PieceReader.cs",
        "Dyepath.Core/Reading/TableComparison.cs", "Dyepath.Core/Shaping/EdgeProgram.cs", "Dyepath.Core/Shaping/ShapePlan.cs",
        "Dyepath.Workspace/Garment/GarmentShapes.cs", "Dyepath.Workspace/Garment/RepertoireDrawings.cs",
    ];

    [Fact]
    public void No_line_of_code_is_wider_than_140_columns() =>
        Assert.Empty(WideLines().Where(line => !Wider.Any(w => line.StartsWith(w, StringComparison.Ordinal))));

    [Fact]
    public void What_is_let_off_has_wider_lines()
    {
        var lines = WideLines().ToArray();
        Assert.DoesNotContain(Wider, w => !lines.Any(line => line.StartsWith(w, StringComparison.Ordinal)));
    }

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
