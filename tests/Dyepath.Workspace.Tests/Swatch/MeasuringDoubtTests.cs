using System.Text.Json.Nodes;
using Dyepath.Core.Projects;
using Dyepath.Workspace.Swatch;
using Dyepath.Workspace.Tests.Fabric;
using Dyepath.Workspace.Work;

namespace Dyepath.Workspace.Tests.Swatch;

/// <summary>No hook is advised from measurements that do not belong to one yarn.</summary>
public sealed class MeasuringDoubtTests
{
    [Fact]
    public void Of_one_yarn_counted_and_measured_there_is_no_doubt() => Assert.Null(Doubt(_ => { }));

    [Fact]
    public void The_examples_counts_are_not_the_makers()
    {
        var example = StarterDocument.Project;
        var document = ProjectDocument.TryParse(ProjectWriter.Write(example))!;
        var outcome = Outcome.Of(document, TestContext.Current.CancellationToken);
        Assert.StartsWith(
            "The counts are still those of the example, not of your yarn.", MeasuringDoubt.BeforeAdvice(outcome.Measured!, outcome.Project!),
            StringComparison.Ordinal);
    }

    /// <summary>A colour that takes five stitches is not asked to take nine of the same yarn.</summary>
    [Fact]
    public void Whole_stitches_far_from_what_a_colour_takes_are_of_another_yarn() => Assert.StartsWith(
        "What a colour takes by itself and what it shall take are too far apart to be of one yarn.",
        Doubt(d => d.Set("fabric.sectionStitches", JsonNode.Parse("[9, 4, 3, 5, 4]"))), StringComparison.Ordinal);

    /// <summary>Unravelled, the demo's stitch took 6.3 cm; at 9 cm counts and lengths say something else.</summary>
    [Fact]
    public void Two_figures_of_the_yarn_in_a_stitch_that_contradict_each_other_are_measured_again() => Assert.StartsWith(
        "The yarn in one stitch comes out in two ways that contradict each other.",
        Doubt(d => d.Set("fabric.swatch.yarnUsed", JsonNode.Parse("""[{ "stitches": 40, "length": "360 cm" }]"""))), StringComparison.Ordinal);

    private static string? Doubt(Action<ProjectDocument> change)
    {
        var document = Demo.Document();
        change(document);
        var outcome = Outcome.Of(document, TestContext.Current.CancellationToken);
        Assert.True(outcome.Measured is not null && outcome.Project is not null, string.Join("\n", outcome.Findings));
        return MeasuringDoubt.BeforeAdvice(outcome.Measured, outcome.Project);
    }
}
