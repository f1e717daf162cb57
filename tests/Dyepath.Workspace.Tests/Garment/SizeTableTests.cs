using Dyepath.Core.Sizing;
using Dyepath.Workspace.Fit;
using Dyepath.Workspace.Garment;
using Dyepath.Workspace.Work;

namespace Dyepath.Workspace.Tests.Garment;

/// <summary>The sizes that a pattern is written for: some of a chart, all of it, or the designer's own.</summary>
public sealed class SizeTableTests
{
    private static readonly SizeChart Women = SizeCharts.All.Single(c => c.Id == "women");

    [Fact]
    public void A_size_that_is_taken_out_goes_with_what_was_fixed_for_it()
    {
        var document = Documents.Demo();
        FitEdits.Pin(document, Core.Garments.Direction.Up, "M", "panelRows", 80, "");
        FitEdits.Pin(document, Core.Garments.Direction.Up, "L", "panelRows", 82, "");
        document.Set("sizes.locked", System.Text.Json.Nodes.JsonNode.Parse("""[{ "size": "M", "what": "length", "length": "60 cm" }]"""));
        SizeTable.Turn(document, Women, "M", wanted: false);
        Assert.Equal(["XS", "S", "L", "1X", "2X", "3X", "4X", "5X"], SizeTable.Names(document));
        Assert.Equal("", document.Typed("sizes.base"));
        Assert.Equal((1, "L"), (document.Count("sizes.overrides"), document.Typed("sizes.overrides[0].size")));
        Assert.Equal(0, document.Count("sizes.locked"));
        // Back in its place, in the chart's order.
        SizeTable.Turn(document, Women, "M", wanted: true);
        Assert.False(document.Has("sizes.names"));
        SizeTable.Turn(document, Women, "S", wanted: false);
        SizeTable.Turn(document, Women, "M", wanted: false);
        SizeTable.Turn(document, Women, "S", wanted: true);
        Assert.Equal(["XS", "S", "L", "1X", "2X", "3X", "4X", "5X"], SizeTable.Names(document));
        Assert.Equal("L", document.Typed("sizes.overrides[0].size"));
    }

    /// <summary>The middle of the sizes moves as they come and go; the sample that was made does not.</summary>
    [Theory]
    [InlineData("S M L", "1X 2X 3X", "M", "M")]
    [InlineData("XS S", "M L 1X", "S", "")]
    [InlineData("S M L", "XS", "M", "")]
    public void A_further_size_leaves_the_sample_the_sample(string names, string added, string sample, string said)
    {
        var document = Documents.Demo();
        document.Set("sizes.base", null);
        document.Set("sizes.names", new System.Text.Json.Nodes.JsonArray([.. names.Split(' ').Select(n => System.Text.Json.Nodes.JsonValue.Create(n))]));
        Assert.Equal(sample, SizeTable.Base(document));
        foreach (var name in added.Split(' '))
        {
            SizeTable.Turn(document, Women, name, wanted: true);
            Assert.Equal(sample, SizeTable.Base(document));
        }
        // What the middle one is by itself is not written down.
        if (said.Length > 0)
            Assert.Equal(said, document.Typed("sizes.base"));
        var plan = Outcome.Of(document, TestContext.Current.CancellationToken).Plan!;
        Assert.Equal(sample, plan.Project.Sizes.Base ?? plan.Sizes[plan.Sizes.Length / 2].Name);
    }

    [Fact]
    public void Own_sizes_come_and_go_and_the_sample_stays()
    {
        var document = Documents.Demo();
        document.Set("sizes.base", null);
        document.Set("sizes.names", System.Text.Json.Nodes.JsonNode.Parse("""["S", "M", "L"]"""));
        SizeTable.MakeOwn(document, Women);
        SizeTable.AddOwn(document);
        SizeTable.AddOwn(document);
        SizeTable.AddOwn(document);
        Assert.Equal(["S", "M", "L", "size 4", "size 5", "size 6"], SizeTable.Called(document));
        Assert.Equal("M", SizeTable.Base(document));
        SizeTable.RemoveOwn(document, 0);
        Assert.Equal("M", SizeTable.Base(document));
        SizeTable.RenameOwn(document, 0, "Middle");
        Assert.Equal(("Middle", "Middle"), (document.Typed("sizes.base"), SizeTable.Base(document)));
        SizeTable.RemoveOwn(document, 0);
        // The sample itself is gone, and so is what was said of it.
        Assert.Equal(("", "size 5"), (document.Typed("sizes.base"), SizeTable.Base(document)));
    }

    [Theory]
    [InlineData("women", "bust")]
    [InlineData("men", "chest")]
    [InlineData("child", "chest")]
    [InlineData("baby", "chest")]
    public void A_chart_calls_the_girth_as_its_pattern_does(string chart, string word)
    {
        var document = Documents.Demo();
        SizeTable.UseChart(document, chart);
        Assert.Equal(word, SizeTable.BustWord(document));
    }

    [Fact]
    public void Own_sizes_call_it_as_they_name_it()
    {
        var document = Documents.Demo();
        SizeTable.MakeOwn(document, Women);
        Assert.Equal("bust", SizeTable.BustWord(document));
        document.Set("sizes.own", System.Text.Json.Nodes.JsonNode.Parse("""[{ "name": "One", "measures": { "chest": "90 cm" } }]"""));
        Assert.Equal("chest", SizeTable.BustWord(document));
    }

    [Fact]
    public void All_sizes_of_a_chart_are_said_by_saying_none_and_the_last_one_stays()
    {
        var document = Documents.Demo();
        document.Set("sizes.names", null);
        var all = Women.Sizes.Select(s => s.Name).ToArray();
        SizeTable.Turn(document, Women, all[0], wanted: false);
        Assert.Equal(all[1..], SizeTable.Names(document));
        SizeTable.Turn(document, Women, all[0], wanted: true);
        Assert.False(document.Has("sizes.names"));
        foreach (var name in all)
            SizeTable.Turn(document, Women, name, wanted: false);
        Assert.Equal([all[^1]], SizeTable.Names(document));
    }

    [Fact]
    public void A_charts_sizes_become_her_own_number_by_number_and_go_with_the_next_chart()
    {
        var document = Documents.Demo();
        document.Set("sizes.names", System.Text.Json.Nodes.JsonNode.Parse("""["S", "M"]"""));
        SizeTable.MakeOwn(document, Women);
        Assert.Equal((2, "S", "M"), (document.Count("sizes.own"), document.Typed("sizes.own[0].name"), document.Typed("sizes.own[1].name")));
        Assert.False(document.Has("sizes.chart") || document.Has("sizes.names"));
        var bust = Women.Sizes.Single(s => s.Name == "M").Measurements.Single(m => m.Measure == BodyMeasure.Bust).Range.Middle.Centimetres;
        Assert.Equal(FormattableString.Invariant($"{bust:0.##} cm"), document.Typed("sizes.own[1].measures.bust"));
        Assert.Equal("M", document.Typed("sizes.base"));
        var outcome = Outcome.Of(document, TestContext.Current.CancellationToken);
        Assert.Equal(["S", "M"], outcome.Plan!.Sizes.Select(s => s.Name));

        FitEdits.Pin(document, Core.Garments.Direction.Up, "M", "panelRows", 80, "");
        document.Set("sizes.locked", System.Text.Json.Nodes.JsonNode.Parse("""[{ "size": "M", "what": "length", "length": "60 cm" }]"""));
        SizeTable.UseChart(document, "men");
        Assert.Equal("""{"chart":"men"}""", document.Node("sizes")!.ToJsonString());
    }

    [Fact]
    public void Without_names_a_whole_chart_becomes_her_own()
    {
        var document = Documents.Demo();
        document.Set("sizes.names", null);
        SizeTable.MakeOwn(document, Women);
        Assert.Equal(Women.Sizes.Length, document.Count("sizes.own"));
    }

    /// <summary>Measures that a garment here is planned by; a head or a foot is measured for what is not to the body.</summary>
    [Fact]
    public void Every_measure_that_a_garment_with_sizes_needs_is_in_the_table() => Assert.All(
        [BodyMeasure.Bust, BodyMeasure.Waist, BodyMeasure.Hip, BodyMeasure.UpperArm, BodyMeasure.ArmholeDepth, BodyMeasure.CentreBackNeckToCuff],
        m => Assert.Contains(m, SizeTable.Used));
}
