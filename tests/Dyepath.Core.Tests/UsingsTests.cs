using System.Runtime.CompilerServices;

namespace Dyepath.Core.Tests;

/// <summary>What the build and the check of whitespace do not look at: usings stand in order, those of System first.</summary>
public sealed class UsingsTests
{
    [Fact]
    public void Usings_stand_in_order() => Assert.DoesNotContain(Sources(), file => !IsInOrder(File.ReadLines(file)));

    [Theory]
    [InlineData("using System.Text;", "using CsCheck;", "using Dyepath.Core;", "using static System.Math;", "using Plan = Dyepath.Core.Planning.Plan;", true)]
    [InlineData("using CsCheck;", "using System.Text;", "", "", "", false)]
    [InlineData("using Dyepath.Web;", "using Dyepath.Core;", "", "", "", false)]
    [InlineData("using static System.Math;", "using Dyepath.Core;", "", "", "", false)]
    public void The_rule_sees_what_it_forbids(string first, string second, string third, string fourth, string fifth, bool isInOrder) =>
        Assert.Equal(isInOrder, IsInOrder([first, second, third, fourth, fifth]));

    private static readonly string[] Folders = ["src", "tests", "bench"];

    private static bool IsInOrder(IEnumerable<string> lines)
    {
        (int Kind, bool IsOther, string Name)[] usings =
        [
            .. lines.TakeWhile(l => !l.StartsWith("namespace", StringComparison.Ordinal))
                .Where(l => l.StartsWith("using ", StringComparison.Ordinal) && l.EndsWith(';') && !l.Contains('(', StringComparison.Ordinal)).Select(Key),
        ];
        return usings.SequenceEqual(usings.OrderBy(u => u.Kind).ThenBy(u => u.IsOther).ThenBy(u => u.Name, StringComparer.OrdinalIgnoreCase));
    }

    private static (int Kind, bool IsOther, string Name) Key(string line)
    {
        var name = line["using ".Length..^1];
        var isStatic = name.StartsWith("static ", StringComparison.Ordinal);
        if (isStatic)
            name = name["static ".Length..];
        return (
            name.Contains('=', StringComparison.Ordinal) ? 2 : isStatic ? 1 : 0,
            name != "System" && !name.StartsWith("System.", StringComparison.Ordinal), name);
    }

    private static IEnumerable<string> Sources([CallerFilePath] string here = "")
    {
        var root = Path.GetFullPath(Path.Combine(Path.GetDirectoryName(here)!, "../.."));
        return Folders
            .SelectMany(folder => Directory.EnumerateFiles(Path.Combine(root, folder), "*.cs", SearchOption.AllDirectories))
            .Where(f => !f.Contains("/obj/", StringComparison.Ordinal) && !f.Contains("/bin/", StringComparison.Ordinal));
    }
}
