using System.Collections.Immutable;
using Dyepath.Core.Adapting;
using Dyepath.Core.Colours;
using Dyepath.Core.Constructions;
using Dyepath.Core.Planning;
using Dyepath.Core.Projects;
using Dyepath.Core.Quantities;
using Dyepath.Core.Yarns;

namespace Dyepath.Core.Tests.Adapting;

/// <summary>Patterns, and readers who bring their own yarn.</summary>
internal static class Readers
{
    /// <summary>The demo, all that was counted of its yarn written down as one ball's.</summary>
    public static Project Demo { get; } = OneBall(ProjectReader.Read(DemoProject.Utf8).Project!);

    private static readonly Lazy<Plan> Planned = new(() => PlanOf(Demo));

    /// <summary>Twelve colours that nobody takes for each other.</summary>
    private static readonly (string Name, string Colour)[] Shades =
    [
        ("night", "#101c48"), ("lemon", "#f4e24a"), ("brick", "#a43a2c"), ("mint", "#a6e8c8"), ("plum", "#5c1f58"), ("chalk", "#f6f4ee"),
        ("moss", "#4a6a20"), ("sky", "#78b8f0"), ("tar", "#1a1a1a"), ("peach", "#f6b48e"), ("sea", "#0e7c78"), ("rose", "#e0508c"),
    ];

    /// <summary>The tunic Tideline in nine sizes.</summary>
    public static Plan Tideline => Planned.Value;

    private static Project OneBall(Project project) => project with
    {
        Yarn = project.Yarn with { Counted = [new CountedBall("both", [.. project.Yarn.Counted.SelectMany(ball => ball.Repeats)])] },
    };

    public static Plan PlanOf(Project project) =>
        GarmentPlanner.Plan(project, TestContext.Current.CancellationToken).Plan ?? throw new InvalidOperationException("It has no plan.");

    public static Plan PlanOf(string garment) => PlanOf(StarterDocument.Of(Repertoire.All.First(kind => kind.Name == garment)));

    /// <summary>The designer herself: her own yarn as she wrote it down, in the order in which it is worked.</summary>
    public static OwnMaterials Designer(Project project)
    {
        Assert.False(project.Yarn.FromOtherEnd);
        return new(new OwnYarnCount(
            project.Yarn.Name, project.Yarn.Sections, [.. project.Yarn.Counted.SelectMany(ball => ball.Repeats)]));
    }

    /// <summary>A yarn in other colours, of which so many stitches were counted in every repeat.</summary>
    public static OwnMaterials Counted(params int[] stitches) => Counted(6, stitches);

    public static OwnMaterials Counted(int repeats, int[] stitches) => new(new OwnYarnCount(
        "own", Sections(stitches.Length), [.. Enumerable.Repeat(stitches.ToImmutableArray(), repeats)]));

    /// <summary>The same, each repeat as it was counted.</summary>
    public static OwnMaterials Repeats(params int[][] repeats) => new(new OwnYarnCount(
        "own", Sections(repeats[0].Length), [.. repeats.Select(r => r.ToImmutableArray())]));

    public static ImmutableArray<YarnSection> Sections(int count) =>
        [.. Shades.Take(count).Select(s => new YarnSection(s.Name, Srgb.Parse(s.Colour)))];

    public static Adaptation Adapt(this Plan plan, string size, OwnMaterials own)
    {
        var result = Adapter.Adapt(plan, size, own, TestContext.Current.CancellationToken);
        Assert.True(result.Adaptation is not null, string.Join("; ", result.Faults.Select(f => $"{f.Place}: {f.Text}")));
        return result.Adaptation;
    }

    public static Length Cm(double centimetres) => Length.FromCentimetres(centimetres);

    /// <summary>What differs in the work of two sizes: stitches, rows, beginnings and rounds.</summary>
    public static IEnumerable<string> Differences(SizePlan one, SizePlan other)
    {
        foreach (var (a, b) in one.Pieces.Zip(other.Pieces))
        {
            if ((a.Id, a.Stitches, a.Rows, a.Copies, a.WrongSideOut) != (b.Id, b.Stitches, b.Rows, b.Copies, b.WrongSideOut)
                || a.Start != b.Start || !a.RowStitches.SequenceEqual(b.RowStitches) || a.Shape?.WidestRow != b.Shape?.WidestRow)
                yield return $"{a.Name}: {a.Stitches} × {a.Rows} from {a.Start}, or {b.Stitches} × {b.Rows} from {b.Start}";
        }
        foreach (var (a, b) in one.Edgings.Zip(other.Edgings))
        {
            if ((a.Where, a.Rounds) != (b.Where, b.Rounds))
                yield return $"{a.Where}: {a.Rounds} rounds, or {b.Rounds}";
        }
    }
}
