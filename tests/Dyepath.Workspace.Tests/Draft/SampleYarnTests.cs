using System.Text.Json.Nodes;
using Dyepath.Core.Projects;
using Dyepath.Workspace.Draft;
using Dyepath.Workspace.Work;

namespace Dyepath.Workspace.Tests.Draft;

/// <summary>A new design has nothing of a yarn that looks like hers, and a sample never stays beside something of her own.</summary>
public sealed class SampleYarnTests
{
    [Fact]
    public void A_new_design_only_waits_for_yarn_and_swatch()
    {
        var document = ProjectDocument.TryParse(NewDesign.Write("Shorewalk"))!;
        Assert.Equal("Shorewalk", document.Title);
        Assert.Equal((0, false, false), (document.Count("yarn.sections"), document.Has("yarn.counted"), document.Has("fabric.swatch")));
        var outcome = Outcome.Read(document);
        Assert.True(outcome.IsWanting);
        // The colours first, the swatch of them next, the label last.
        Assert.Equal(["yarn.sections", "fabric.swatch", "yarn.ball"], outcome.Findings.Select(f => f.Place));
        Assert.All(outcome.Findings, f => Assert.True(outcome.IsWanted(f)));
        Assert.False(SampleYarn.IsIn(document));
        Assert.True(SampleYarn.HasRoom(document));
    }

    [Fact]
    public void The_sample_is_planned_and_taken_out_without_a_trace()
    {
        var document = ProjectDocument.TryParse(NewDesign.Write("Shorewalk"))!;
        var before = document.Text;
        SampleYarn.Pour(document);
        Assert.True(SampleYarn.IsIn(document));
        Assert.False(SampleYarn.HasRoom(document));
        Assert.NotNull(Outcome.Of(document, TestContext.Current.CancellationToken).Plan);
        SampleYarn.TakeOut(document);
        Assert.Equal(before, document.Text);
    }

    /// <summary>Each thing that she may put in first, and that it alone stays.</summary>
    [Theory]
    [InlineData("fabric.swatch.hook", "4 mm")]
    [InlineData("fabric.swatch.worked.stitches", 17)]
    [InlineData("fabric.swatch.worked.rows", 19)]
    [InlineData("fabric.swatch.blocked.stitches", 17)]
    [InlineData("yarn.ball.length", "300 m")]
    [InlineData("yarn.ball.mass", "50 g")]
    [InlineData("yarn.category", 1)]
    public void All_of_it_goes_with_the_first_thing_of_her_own(string place, object value)
    {
        using var workbench = Documents.Workbench();
        Assert.True(workbench.Open(NewDesign.Write("Shorewalk")));
        workbench.Edit("the sample yarn", SampleYarn.Pour);
        Assert.False(workbench.IsSampleGone);
        workbench.Set(place, JsonValue.Create(value), "what is hers");
        var document = workbench.Document!;
        var own = ProjectDocument.TryParse(NewDesign.Write("Shorewalk"))!;
        own.Set(place, JsonValue.Create(value));
        Assert.True(JsonNode.DeepEquals(own.Root, document.Root), document.Text);
        Assert.True(workbench.IsSampleGone);
        // Nothing of the sample's garment stays in view as an earlier state of hers.
        Assert.Null(workbench.Plan);
        workbench.Undo();
        Assert.True(SampleYarn.IsIn(workbench.Document!));
        Assert.False(workbench.IsSampleGone);
    }

    /// <summary>What is no measure of yarn or swatch may be tried on the sample.</summary>
    [Fact]
    public void Garment_sizes_and_names_leave_it_in()
    {
        using var workbench = Documents.Workbench();
        Assert.True(workbench.Open(NewDesign.Write("Shorewalk")));
        workbench.Edit("the sample yarn", SampleYarn.Pour);
        workbench.Set("yarn.name", "Harbour", "name");
        workbench.Set("garment.neck", "square", "neck");
        workbench.Set("fabric.stitch", "hdc", "stitch");
        Assert.True(SampleYarn.IsIn(workbench.Document!));
    }

    /// <summary>A yarn that only begins like the sample, such as a starter document that was edited by hand, is nobody's to take out.</summary>
    [Fact]
    public void A_document_that_differs_from_it_anywhere_is_left_alone()
    {
        using var workbench = Documents.Workbench();
        Assert.True(workbench.Open(ProjectWriter.Write(StarterDocument.Project)));
        workbench.Document!.Set("fabric.swatch.hook", "6 mm");
        workbench.Set("yarn.sections[0].length", "30 cm", "length");
        Assert.Equal((4, true), (workbench.Document!.Count("yarn.sections"), workbench.Document.Has("yarn.counted")));
        Assert.False(workbench.IsSampleGone);
    }
}
