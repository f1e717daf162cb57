using System.Collections.Immutable;
using Dyepath.Core.Constructions;
using Dyepath.Core.Edgings;
using Dyepath.Core.Fabrics;
using Dyepath.Core.Garments;
using Dyepath.Core.Planning;
using Dyepath.Core.Projects;
using Dyepath.Core.Quantities;
using Dyepath.Core.Sizing;
using Dyepath.Core.Swatches;

namespace Dyepath.Core.Tests.Garments;

/// <summary>The demo's project, and changes to it.</summary>
internal static class TestProjects
{
    public static Project Tideline { get; } = ProjectReader.Read(DemoProject.Utf8).Project!;

    public static BoxyTop Top(this Project project) => (BoxyTop)project.Garment.Shape;

    public static Project With(this Project project, Func<GarmentSpec, GarmentSpec> change) =>
        project with { Garment = change(project.Garment) };

    public static Project WithTop(this Project project, Func<BoxyTop, BoxyTop> change) =>
        project.With(g => g with { Shape = change((BoxyTop)g.Shape) });

    /// <summary>Worked up no few counts serve nine sizes as a customer accepts them, so that uneven widths are allowed there.</summary>
    public static Project Directed(this Project project, Direction direction) => project.With(g => g with
    {
        Direction = direction,
        Grading = direction == Direction.Up ? g.Grading with { UnevenWidths = true, SeveralLeans = true } : g.Grading,
    });

    public static Project Sleeved(this Project project, bool pooled) =>
        project.WithTop(t => t with { Sleeves = t.Sleeves! with { Pooled = pooled } });

    public static Project WithoutSleeves(this Project project) => project
        .WithTop(t => t with { Sleeves = null })
        .With(g => g with { Edgings = [.. g.Edgings.Where(e => e.Where != EdgingPlace.Cuffs)] });

    public static Project Fixed(this Project project, ImmutableArray<FixedNumber> locked, ImmutableArray<FixedNumber> overrides) =>
        project with { Sizes = project.Sizes with { Locked = locked, Overrides = overrides } };

    public static Plan Planned(this Project project)
    {
        var result = GarmentPlanner.Plan(project, TestContext.Current.CancellationToken);
        Assert.True(result.HasPlan, string.Join("\n", result.Reasons));
        return result.Plan;
    }

    public static PlanResult Tried(this Project project) => GarmentPlanner.Plan(project, TestContext.Current.CancellationToken);

    public static Length Cm(double centimetres) => Length.FromCentimetres(centimetres);

    /// <summary>A garment's starter in a yarn whose period is even, 22 stitches, or odd, 19, at the gauge of the stitch.</summary>
    public static Project Begun(string garment, string stitch, bool even, Direction direction)
    {
        var project = StarterDocument.Of(Repertoire.All.First(k => k.Name == garment));
        int[] sections = even ? [6, 5, 7, 4] : [5, 4, 6, 4];
        var rows = stitch switch { "dc" => 8, "hdc" => 11, _ => 16 };
        return project with
        {
            Yarn = project.Yarn with { Counted = [project.Yarn.Counted[0] with { Repeats = [.. Enumerable.Repeat(sections.ToImmutableArray(), 3)] }] },
            Fabric = project.Fabric with
            {
                Stitch = FabricStitch.All.First(s => s.Id == stitch),
                Swatch = project.Fabric.Swatch with { Worked = new Gauge(14, rows, Cm(10)), YarnUsed = [] },
                SectionStitches = [.. sections],
            },
            Garment = project.Garment with { Direction = direction },
        };
    }
}
