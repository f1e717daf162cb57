using System.Runtime.CompilerServices;
using System.Text.RegularExpressions;

namespace Dyepath.Core.Tests;

/// <summary>What docs/glossary.md and CONTRIBUTING.md name is there.</summary>
public sealed partial class GlossaryTests
{
    [Fact]
    public void Every_type_of_the_glossary_is_declared()
    {
        var named = Type().Matches(File.ReadAllText(Path.Combine(Root(), "docs/glossary.md"))).Select(m => m.Groups[1].Value).ToHashSet();
        Assert.True(named.Count > 30);
        var declared = Directory.EnumerateFiles(Path.Combine(Root(), "src"), "*.cs", SearchOption.AllDirectories)
            .SelectMany(file => Declaration().Matches(File.ReadAllText(file))).Select(m => m.Groups[1].Value).ToHashSet();
        Assert.Empty(named.Except(declared));
    }

    /// <summary>Paths with a folder; of code they begin below <c>src/Dyepath</c>.</summary>
    [Fact]
    public void Every_file_that_contributing_names_is_there() => Assert.DoesNotContain(
        CodePath().Matches(File.ReadAllText(Path.Combine(Root(), "CONTRIBUTING.md"))).Select(m => m.Groups[1].Value),
        path => !new[] { path, $"src/Dyepath.{path}", $"src/Dyepath.Client/{path}", $"src/Dyepath.Workspace/{path}" }
            .Any(p => Path.Exists(Path.Combine(Root(), p))));

    private static string Root([CallerFilePath] string here = "") => Path.GetFullPath(Path.Combine(Path.GetDirectoryName(here)!, "../.."));

    [GeneratedRegex(@"\| `(\w+)` \|$", RegexOptions.Multiline)]
    private static partial Regex Type();

    [GeneratedRegex(@"\b(?:class|record struct|record|struct|enum|interface) (\w+)")]
    private static partial Regex Declaration();

    [GeneratedRegex(@"`((?:\w[\w.-]*/)+[\w.-]*)`")]
    private static partial Regex CodePath();
}
