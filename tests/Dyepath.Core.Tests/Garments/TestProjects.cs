using System.Collections.Immutable;
using Dyepath.Core.Edgings;
using Dyepath.Core.Garments;
using Dyepath.Core.Planning;
using Dyepath.Core.Projects;
using Dyepath.Core.Quantities;
using Dyepath.Core.Sizing;

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

    public static Project Directed(this Project project, Direction direction) => project.With(g => g with { Direction = direction });

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
}
