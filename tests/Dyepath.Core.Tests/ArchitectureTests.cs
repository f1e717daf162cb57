using System.Collections.Immutable;
using System.Reflection;
using ArchUnitNET.Domain;
using ArchUnitNET.Loader;
using static ArchUnitNET.Fluent.ArchRuleDefinition;
using Plan = Dyepath.Core.Planning.Plan;

namespace Dyepath.Core.Tests;

/// <summary>Folders in the order in which they rest on each other (docs/architecture.md): each may use those before it, none after it.</summary>
public sealed class ArchitectureTests
{
    private const string Root = "Dyepath.Core";

    private static readonly Architecture Core = new ArchLoader().LoadAssemblies(typeof(Plan).Assembly).Build();

    public static ImmutableArray<string> Folders { get; } =
    [
        // What everything rests on.
        "Quantities", "Limits", "Findings", "Replays", "Colours",
        // The model: what the designer has, wants and writes down.
        "Yarns", "Fabrics", "Swatches", "Measuring", "Motifs", "Shaping", "Sizing", "Booklets", "Edgings", "Garments", "Documents",
        "Constructions", "Projects",
        // Planning, and its check by other routes.
        "Planning", "Checking",
        // A pattern for another yarn than its own.
        "Adapting",
        // The pattern, and its check as a reader reads it.
        "Instructions", "Reading",
        // What it takes and costs, for the designer alone.
        "Pricing", "Workshops",
        "Making",
    ];

    public static TheoryData<string> EachFolder => [.. Folders];

    [Theory]
    [MemberData(nameof(EachFolder))]
    public void A_folder_uses_only_those_it_rests_on(string folder)
    {
        string[] after = [.. Folders[(Folders.IndexOf(folder) + 1)..]];
        Assert.Empty(after.Length == 0 ? [] : Uses(folder, after));
    }

    /// <summary>The rule sees what there is: planning reads projects, and signatures are not all that is looked at.</summary>
    [Theory]
    [InlineData("Planning", "Projects")]
    [InlineData("Making", "Fabrics")]
    [InlineData("Checking", "Planning")]
    public void A_use_against_the_order_would_be_seen(string folder, string used) => Assert.NotEmpty(Uses(folder, used));

    /// <summary>A new folder has to be put into the order; and the rule above speaks of something.</summary>
    [Fact]
    public void Every_folder_has_its_place_in_the_order() => Assert.Equal(
        Folders.Order(),
        typeof(Plan).Assembly.GetTypes().Select(t => t.Namespace).Where(n => n is not null && n.StartsWith(Root + ".", StringComparison.Ordinal))
            .Select(n => n!.Split('.')[2]).Distinct().Order());

    private static IEnumerable<string> Uses(string folder, params string[] others) =>
        Types().That().ResideInNamespaceMatching(Pattern(folder)).Should()
            .NotDependOnAny(Types().That().ResideInNamespaceMatching(Pattern(others)))
            .Evaluate(Core).Where(r => !r.Passed).Select(r => r.Description);

    private static string Pattern(params string[] folders) => $@"^{Root}\.({string.Join('|', folders)})(\.|$)";
}
