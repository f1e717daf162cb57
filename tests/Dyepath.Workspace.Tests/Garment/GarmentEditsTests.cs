using System.Text;
using System.Text.Json.Nodes;
using Dyepath.Core.Constructions;
using Dyepath.Core.Projects;
using Dyepath.Core.Sizing;
using Dyepath.Workspace.Garment;
using Dyepath.Workspace.Work;

namespace Dyepath.Workspace.Tests.Garment;

public sealed class GarmentEditsTests
{
    public static TheoryData<string> Shapes => [.. GarmentShapes.All.Select(s => s.Name)];

    [Theory]
    [MemberData(nameof(Shapes))]
    public void Whatever_becomes_of_the_demo_is_read_and_planned(string shape)
    {
        var document = Demo();
        GarmentShapes.Change(document, shape);
        var outcome = Outcome.Of(document, TestContext.Current.CancellationToken);
        Assert.Empty(outcome.Reading.Faults);
        Assert.NotNull(outcome.Plan);
    }

    /// <summary>Edgings that the new garment has no edge for go with it, such as those of armholes that get sleeves: the document is read.</summary>
    [Theory]
    [MemberData(nameof(Shapes))]
    public void Edged_all_round_it_becomes_any_other_garment(string from)
    {
        foreach (var (to, _) in GarmentShapes.All.Select(s => (s.Name, s)))
        {
            var document = ProjectDocument.TryParse(ProjectWriter.Write(StarterDocument.Of(Repertoire.All.First(k => k.Name == from))))!;
            var edges = GarmentShapes.EdgesOf(from).Select(e => e.Value).Where(e => e is not "shoulder").ToArray();
            document.Set("garment.edgings", new JsonArray([.. edges.Select(e => new JsonObject { ["where"] = e, ["edging"] = "sc" })]));
            GarmentShapes.Change(document, to);
            var armholes = document.Node("garment.edgings")!.AsArray().Any(e => (string)e!["where"]! == "armholes");
            Assert.False(armholes && document.Has("garment.sleeves"), $"{from} to {to}");
        }
    }

    /// <summary>A hem stays; the edge that holds the new garment comes along, once.</summary>
    [Theory]
    [InlineData("off-shoulder-top", "topEdge")]
    [InlineData("skirt", "waist")]
    public void What_holds_the_new_garment_is_there(string shape, string place)
    {
        var document = Demo();
        var hem = document.Count("garment.edgings");
        Assert.True(hem > 0);
        GarmentShapes.Change(document, shape);
        GarmentShapes.Change(document, shape);
        var edgings = document.Node("garment.edgings")!.AsArray();
        Assert.Single(edgings, e => (string)e!["where"]! == place && (string)e["edging"]! == "elastic-casing");
        Assert.Contains(edgings, e => (string)e!["where"]! == "hem");
        document.Set("garment.edgings", null);
        GarmentShapes.Change(document, shape);
        Assert.Equal(1, document.Count("garment.edgings"));
    }

    [Fact]
    public void A_title_that_nobody_has_written_follows_the_garment()
    {
        var document = ProjectDocument.TryParse(ProjectWriter.Write(StarterDocument.Project))!;
        GarmentShapes.Change(document, "cardigan");
        Assert.Equal("My cardigan", document.Title);
        document.Set("title", "Saltmarsh");
        GarmentShapes.Change(document, "vest");
        Assert.Equal("Saltmarsh", document.Title);
    }

    /// <summary>What cannot be made without a companion yarn has one from the choice on, and the designer's own stays.</summary>
    [Theory]
    [InlineData("shawl", true)]
    [InlineData("bag", true)]
    [InlineData("vest", false)]
    public void A_garment_that_needs_a_companion_yarn_has_one_and_plans(string shape, bool needs)
    {
        var document = ProjectDocument.TryParse(ProjectWriter.Write(StarterDocument.Project))!;
        GarmentShapes.Change(document, shape);
        Assert.Equal(needs, document.Has("companion"));
        Assert.NotNull(Outcome.Of(document, TestContext.Current.CancellationToken).Plan);
        document.Set("companion", System.Text.Json.Nodes.JsonNode.Parse("""{ "name": "Gull, solid", "ball": { "length": "150 m", "mass": "50 g" } }"""));
        GarmentShapes.Change(document, shape);
        Assert.Equal("Gull, solid", document.Typed("companion.name"));
    }

    /// <summary>Her own counts are what is planned: nothing of the example stands in their way.</summary>
    [Fact]
    public void A_new_project_follows_its_own_counts()
    {
        var document = ProjectDocument.TryParse(ProjectWriter.Write(StarterDocument.Project))!;
        document.Set("yarn.counted[0].repeats", System.Text.Json.Nodes.JsonNode.Parse("[[6,5,8,5],[6,5,8,5],[6,5,8,5]]"));
        Assert.Equal(24, Outcome.Of(document, TestContext.Current.CancellationToken).Plan!.Sequence.Ring.SequenceUnits);
    }

    [Fact]
    public void A_chart_taken_over_gives_the_same_plan_until_a_number_is_changed()
    {
        var document = Demo();
        var before = Outcome.Of(document, TestContext.Current.CancellationToken).Plan!;
        Assert.True(SizeCharts.TryFind("women", out var chart));
        SizeTable.MakeOwn(document, chart);
        var own = Outcome.Of(document, TestContext.Current.CancellationToken).Plan!;
        Assert.Equal(before.Sizes.Select(s => (s.Name, s.Pieces[0].Stitches, s.Pieces[0].Rows)), own.Sizes.Select(s => (s.Name, s.Pieces[0].Stitches, s.Pieces[0].Rows)));
        document.Set("sizes.own[8].measures.bust", "162 cm");
        document.Set("sizes.own[8].measures.hip", "162 cm");
        var wider = Outcome.Of(document, TestContext.Current.CancellationToken).Plan!;
        Assert.True(wider.Sizes[8].Pieces[0].Width > own.Sizes[8].Pieces[0].Width);
    }

    [Fact]
    public void A_size_left_out_takes_its_own_numbers_along_and_comes_back_in_its_place()
    {
        var document = Demo();
        Assert.True(SizeCharts.TryFind("women", out var chart));
        document.Set("sizes.base", "L");
        SizeTable.Turn(document, chart, "L", wanted: false);
        Assert.Equal(["XS", "S", "M", "1X", "2X", "3X", "4X", "5X"], SizeTable.Names(document));
        Assert.False(document.Has("sizes.base"));
        SizeTable.Turn(document, chart, "L", wanted: true);
        Assert.Equal(Outcome.Of(Demo(), TestContext.Current.CancellationToken).Plan!.Sizes.Select(s => s.Name), Outcome.Of(document, TestContext.Current.CancellationToken).Plan!.Sizes.Select(s => s.Name));
    }

    private static ProjectDocument Demo() => ProjectDocument.TryParse(Encoding.UTF8.GetString(DemoProject.Utf8))!;
}
