using System.Collections.Immutable;
using Dyepath.Bench;
using Dyepath.Core.Constructions;
using Dyepath.Core.Fabrics;
using Dyepath.Core.Garments;
using Dyepath.Core.Planning;
using Dyepath.Core.Projects;
using Dyepath.Core.Quantities;
using Dyepath.Core.Tests.Garments;
using static Dyepath.Core.Tests.Garments.TestProjects;

namespace Dyepath.Core.Tests.Constructions;

/// <summary>
/// What is cut out of a garment grows with its sizes or stays, as it is asked to. A larger size may have a centimetre less, which is not
/// seen (common practice, no source), and what is said of it: worked sideways a neck in the middle of its rows goes by pairs at either
/// side, and neighbours whose rows are not alike cannot have the same one.
/// </summary>
public sealed class GradedCutsTests
{
    private static readonly GarmentMeasure[] Cuts =
    [
        GarmentMeasure.NeckWidth, GarmentMeasure.NeckDepth, GarmentMeasure.BackNeckDepth, GarmentMeasure.FrontNeck,
        GarmentMeasure.ArmholeDepth, GarmentMeasure.ArmholeInset,
    ];

    private const double Unseen = 1.001;

    public static TheoryData<string, string, string> Begun =>
    [
        .. from starter in Starter.All
            where starter.Chart is not null && starter.Kind.Name is "vest" or "cardigan" or "pullover" or "tunic"
            where Extent.IsWhole || (starter.Neck == "v" && starter.Kind.Name is "vest" or "cardigan")
            select (starter.Kind.Name, starter.Neck!, starter.Chart!),
    ];

    /// <summary>Begun in any chart no depth falls, and no width by more than the pair of rows in which its neighbours differ.</summary>
    [Theory]
    [MemberData(nameof(Begun))]
    public void Begun_in_any_chart_no_size_has_less_than_a_smaller_one(string garment, string neck, string chart)
    {
        var starter = Starter.Of(Repertoire.All.First(k => k.Name == garment), chart).First(s => s.Neck == neck);
        var plan = GarmentPlanner.Plan(starter.Project(), TestContext.Current.CancellationToken).Plan!;
        var pair = 2 * plan.RowHeight.Centimetres + 0.001;
        foreach (var (measure, falls) in Falls(plan))
        {
            var alongRows = measure is GarmentMeasure.NeckWidth or GarmentMeasure.FrontNeck == (plan.Direction == Direction.Sideways);
            Assert.True(falls <= (alongRows ? pair : Unseen), Told(plan, measure));
            Assert.True(falls <= Unseen || IsLeftOpen(plan, measure) || IsSaid(plan, measure), $"{Told(plan, measure)}, and nothing is said of it");
        }
    }

    /// <summary>Where other outlines of a size keep within an inch of what is asked for, those are taken with which no size falls.</summary>
    [Theory]
    [InlineData("vest", "women", NeckForm.V, Direction.Sideways, new[] { 4, 3, 4, 3 })]
    [InlineData("vest", "women", NeckForm.V, Direction.Up, new[] { 4, 3, 4, 3 })]
    [InlineData("vest", "women", NeckForm.V, Direction.Up, new[] { 5, 6, 4, 7 })]
    [InlineData("vest", "men", NeckForm.Round, Direction.Up, new[] { 4, 3, 4, 3 })]
    [InlineData("vest", "women", NeckForm.Square, Direction.Up, new[] { 4, 3, 4, 3 })]
    [InlineData("vest", "women", NeckForm.Round, Direction.Sideways, new[] { 6, 7, 6 })]
    [InlineData("cardigan", "women", NeckForm.V, Direction.Up, new[] { 4, 3, 4, 3 })]
    [InlineData("cardigan", "women", NeckForm.V, Direction.Sideways, new[] { 8, 9, 8, 6 })]
    [InlineData("pullover", "women", NeckForm.V, Direction.Sideways, new[] { 5, 6, 4, 7 })]
    public void Outlines_are_taken_with_which_no_size_falls(string garment, string chart, NeckForm form, Direction direction, int[] sections)
    {
        var plan = Of(garment, chart, form, direction, sections).Planned();
        Assert.All(Falls(plan), f => Assert.True(f.By <= Unseen, Told(plan, f.Measure)));
        // Nor is a size taken farther from what it asks for than comes out well.
        Assert.All(plan.Sizes, s => Assert.All(
            Cuts.Where(m => s.Target.TryGetValue(m, out var wanted) && wanted > Length.Zero && s.Finished[m] > Length.Zero),
            m => Assert.InRange((s.Finished[m] - s.Target[m]).Centimetres, -2.541, 2.541)));
    }

    /// <summary>By how much a larger size has less at most, where no less is asked for.</summary>
    private static IEnumerable<(GarmentMeasure Measure, double By)> Falls(Plan plan) =>
        from measure in Cuts.Where(plan.Sizes[0].Target.ContainsKey)
        let falls = plan.Sizes.Zip(plan.Sizes.Skip(1)).Where(s => s.Second.Target[measure] >= s.First.Target[measure])
            .Select(s => (s.First.Finished[measure] - s.Second.Finished[measure]).Centimetres)
        select (measure, falls.DefaultIfEmpty(0).Max());

    private static bool IsSaid(Plan plan, GarmentMeasure measure) => plan.Findings.Any(f => f.Text.StartsWith(
        $"{GarmentMeasures.Words(measure)} is not graded evenly: ", StringComparison.OrdinalIgnoreCase));

    /// <summary>What is cut out of no piece goes by rows alone, of which nothing is said under 1.5 cm (common practice, no source).</summary>
    private static bool IsLeftOpen(Plan plan, GarmentMeasure measure) => measure == GarmentMeasure.NeckWidth
        && !plan.Construction.Groups[0].Openings.Any(o => o.Measure == measure && o.Cut is not null);

    private static string Told(Plan plan, GarmentMeasure measure) => FormattableString.Invariant(
        $"{measure}: {string.Join(" ", plan.Sizes.Select(s => $"{s.Finished[measure].Centimetres:0.0}"))}");

    private static Project Of(string garment, string chart, NeckForm form, Direction direction, int[] sections)
    {
        var project = TestProjects.Begun(garment, "sc", true, direction);
        return project with
        {
            Yarn = project.Yarn with
            {
                Sections = [.. sections.Select((n, i) => project.Yarn.Sections[i % 4] with { Name = $"colour {i}", Length = Cm(6.2 * n) })],
                Counted = [project.Yarn.Counted[0] with { Repeats = [.. Enumerable.Repeat(sections.ToImmutableArray(), 3)] }],
            },
            Fabric = project.Fabric with { SectionStitches = [.. sections] },
            Garment = project.Garment with
            {
                Shape = project.Garment.Shape switch
                {
                    Vest vest => vest with { Neck = vest.Neck with { Form = form } },
                    Cardigan cardigan => cardigan with { Neck = cardigan.Neck with { Form = form } },
                    BoxyTop top => top with { Neck = top.Neck with { Form = form } },
                    var other => other,
                },
            },
            Sizes = project.Sizes with { Chart = chart, Sizes = [], Base = null },
        };
    }
}
