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
