using System.Text;
using System.Text.Json.Nodes;
using Dyepath.Core.Documents;
using Dyepath.Core.Projects;

namespace Dyepath.Core.Tests.Projects;

/// <summary>The demo with one thing wrong, and the fault that must be found there.</summary>
public sealed class ProjectFaultTests
{
    [Theory]
    [InlineData("title", null, "title", FaultKind.Form, "nothing")]
    [InlineData("title", "\"\"", "title", FaultKind.Form, "Write something")]
    [InlineData("title", "\"two\\nlines\"", "title", FaultKind.Form, "on one line")]
    [InlineData("title", "7", "title", FaultKind.Form, "quotation marks")]
    [InlineData("yarn.ball.mass", "\"100 m\"", "yarn.ball.mass", FaultKind.Form, "a mass such as \"100 g\"")]
    [InlineData("yarn.ball.mass", "100", "yarn.ball.mass", FaultKind.Form, "unit in quotation marks")]
    [InlineData("yarn.ball.mass", "\"1 g\"", "yarn.ball", FaultKind.Meaning, "230 m in a gram")]
    [InlineData("yarn.ball.length", "\"1.2 m\"", "yarn.ball.length", FaultKind.Meaning, "one whole sequence, 132.5 cm")]
    [InlineData("yarn.sections.2.length", "\"19.4\"", "yarn.sections[2].length", FaultKind.Form, "a number, then its unit")]
    [InlineData("yarn.sections.2.length", "\"0 cm\"", "yarn.sections[2].length", FaultKind.Meaning, "from 0.1 cm")]
    [InlineData(
        "yarn.sections.2", "{ \"name\": \"foam\", \"colour\": \"#fff\" }", "yarn.sections[2].length", FaultKind.Meaning,
        "Measure this section too")]
    [InlineData("yarn.sections.2.length", null, "yarn.sections[2].spread", FaultKind.Meaning, "Add the section's length")]
    [InlineData(
        "yarn.sections.2.spread", "\"20 cm\"", "yarn.sections[2].spread", FaultKind.Meaning, "at most the section's length, 19.4 cm")]
    [InlineData("yarn.sections.2.name", "\"kelp\"", "yarn.sections[4].colour", FaultKind.Meaning, "names of their own")]
    [InlineData("yarn.sections.2.colour", "\"foam\"", "yarn.sections[2].colour", FaultKind.Form, "#1f4e5f")]
    [InlineData("yarn.sections", "[]", "yarn.sections", FaultKind.Form, "1 to 64 sections")]
    [InlineData("yarn.counted.1.repeats.3", "[5, 4, 3, 5]", "yarn.counted[1].repeats[3]", FaultKind.Meaning, "5 numbers, one for each")]
    [InlineData("yarn.counted.1.repeats.3.0", "2.5", "yarn.counted[1].repeats[3][0]", FaultKind.Form, "a whole number from 0 to 1000")]
    [InlineData("yarn.counted.1.repeats.3", "[0, 0, 0, 0, 0]", "yarn.counted[1].repeats[3]", FaultKind.Meaning, "a sequence of 0 stitches")]
    [InlineData("yarn.counted.1.name", "\"first ball\"", "yarn.counted[1]", FaultKind.Meaning, "\"first ball\" a second time")]
    [InlineData("companion.uses", "[\"seams\", \"seams\"]", "companion.uses[1]", FaultKind.Meaning, "a second time")]
    [InlineData("fabric.stitch", "\"scx\"", "fabric.stitch", FaultKind.Form, "Did you mean \"sc\"?")]
    [InlineData("fabric.sectionStitches", "[5, 4, 3, 9]", "fabric.sectionStitches", FaultKind.Meaning, "5 numbers, one for each")]
    [InlineData(
        "fabric.sectionStitches", "[1000, 1000, 1000, 1000, 1000]", "fabric.sectionStitches", FaultKind.Meaning,
        "a sequence of 5000 stitches")]
    [InlineData("fabric.keeping", "\"free\"", "fabric.sectionStitches", FaultKind.Meaning, "only with \"keeping\": \"counted\"")]
    [InlineData("fabric.turnCost", "\"60 stitches\"", "fabric.turnCost", FaultKind.Meaning, "from -10 stitches to 50 stitches")]
    [InlineData("fabric.swatch.worked.stitches", "0", "fabric.swatch.worked.stitches", FaultKind.Form, "a number from 0.25 to 400")]
    [InlineData("fabric.swatch.worked.stitches", "400", "fabric.swatch.worked.stitches", FaultKind.Meaning, "a stitch 0.05 to 30 cm wide")]
    [InlineData("fabric.swatch.yarnUsed.0.length", null, "fabric.swatch.yarnUsed[0]", FaultKind.Meaning, "neither length nor mass")]
    [InlineData(
        "fabric.swatch.yarnUsed.0.length", "\"3 cm\"", "fabric.swatch.yarnUsed[0].length", FaultKind.Meaning, "0.2 to 300 cm of yarn")]
    [InlineData("fabric.swatch.yarnUsed.1.mass", "\"1 kg\"", "fabric.swatch.yarnUsed[1]", FaultKind.Meaning, "a sequence of 0.32 stitches")]
    [InlineData("garment.shape", "\"tuinc\"", "garment.shape", FaultKind.Form, "Did you mean \"tunic\"?")]
    [InlineData("garment.shape", null, "garment.shape", FaultKind.Form, "nothing")]
    [InlineData("garment.ease", "{ \"category\": \"close\" }", "garment.ease.revision", FaultKind.Form, "\"newer\", \"older\"")]
    [InlineData("garment.ease.category", "\"standard\"", "garment.ease.category", FaultKind.Form, "\"classic\"")]
    [InlineData("garment.ease", "8", "garment.ease", FaultKind.Form, "Write one of the two")]
    [InlineData("garment.neckWdith", "\"25 cm\"", "garment.neckWdith", FaultKind.Form, "Did you mean \"neckWidth\"?")]
    [InlineData("garment.sleeves", null, "garment.edgings[2].where", FaultKind.Meaning, "edge the armholes")]
    [InlineData("garment.edgings.2.where", "\"armholes\"", "garment.edgings[2].where", FaultKind.Meaning, "Edge the cuffs")]
    [InlineData("garment.edgings.2.where", "\"brims\"", "garment.edgings[2].where", FaultKind.Meaning, "\"hem\"")]
    [InlineData("garment.edgings.2.where", "\"neck\"", "garment.edgings[2]", FaultKind.Meaning, "\"neck\" a second time")]
    [InlineData("garment.edgings.1.edging", "\"picott\"", "garment.edgings[1].edging", FaultKind.Meaning, "Did you mean \"picot\"?")]
    [InlineData("companion.uses", "[\"seams\", \"edgings\"]", "garment.sleeves.yarn", FaultKind.Meaning, "serve plain pieces too")]
    [InlineData("garment.starts", "{ \"front\": 4096 }", "garment.starts.front", FaultKind.Form, "a whole number from 0 to 4095")]
    [InlineData("garment.starts", "{ \"hood\": 3 }", "garment.starts.hood", FaultKind.Form, "front, back, sleeve")]
    [InlineData("garment.grading", "{ \"mostCounts\": 41 }", "garment.grading.mostCounts", FaultKind.Form, "from 1 to 40")]
    [InlineData("sizes", null, "sizes", FaultKind.Meaning, "a chart or own sizes")]
    [InlineData("sizes.chart", "\"woman\"", "sizes.chart", FaultKind.Form, "Did you mean \"women\"?")]
    [InlineData("sizes.base", "\"XXL\"", "sizes.base", FaultKind.Meaning, "a size of the pattern: XS, S, M")]
    [InlineData("sizes.names.8", "\"6X\"", "sizes.names[8]", FaultKind.Meaning, "a size of the chart \"women\": XS, S")]
    [InlineData("sizes.names.1", "\"XS\"", "sizes.names[1]", FaultKind.Meaning, "\"XS\" a second time")]
    [InlineData(
        "sizes.own", "[{ \"name\": \"mine\", \"measures\": { \"bust\": \"90 cm\" } }]", "sizes.own", FaultKind.Meaning,
        "either chart or own")]
    [InlineData(
        "sizes.own", "[{ \"name\": \"m\", \"measures\": { \"bust\": \"90 cm\", \"chest\": \"90 cm\" } }]", "sizes.own[0].measures.chest",
        FaultKind.Meaning, "either bust or chest")]
    [InlineData(
        "sizes.own", "[{ \"name\": \"mine\", \"measures\": { \"boost\": \"90 cm\" } }]", "sizes.own[0].measures.boost", FaultKind.Form,
        "Did you mean \"bust\"?")]
    [InlineData(
        "sizes.locked", "[{ \"size\": \"L\", \"what\": \"panelRows\", \"count\": 90 }]", "sizes.locked[0].size", FaultKind.Meaning,
        "the base size, \"M\"")]
    [InlineData(
        "sizes.overrides", "[{ \"size\": \"L\", \"what\": \"panelRows\", \"count\": 5001, \"reason\": \"x\" }]", "sizes.overrides[0].count",
        FaultKind.Form, "from 1 to 5000")]
    [InlineData(
        "sizes.overrides", "[{ \"size\": \"L\", \"what\": \"panelStitches\", \"count\": 1001, \"reason\": \"x\" }]",
        "sizes.overrides[0].count", FaultKind.Form, "from 1 to 1000")]
    [InlineData(
        "sizes.overrides", "[{ \"size\": \"L\", \"what\": \"width\", \"length\": \"99 cm\" }]", "sizes.overrides[0].reason", FaultKind.Form,
        "nothing")]
    [InlineData(
        "sizes.overrides", "[{ \"size\": \"L\", \"what\": \"width\", \"count\": 9, \"reason\": \"x\" }]", "sizes.overrides[0].length",
        FaultKind.Form, "nothing")]
    [InlineData(
        "sizes.overrides", "[{ \"size\": \"Z\", \"what\": \"panelRows\", \"count\": 9, \"reason\": \"x\" }]", "sizes.overrides[0].size",
        FaultKind.Meaning, "a size of the pattern")]
    [InlineData("edition.size", "\"7X\"", "edition.size", FaultKind.Meaning, "a size of the pattern")]
    [InlineData("words.intro", "\"Hello\"", "words.intro", FaultKind.Form, "unknown property")]
    [InlineData("words.notes", "\"a\\u0007b\"", "words.notes", FaultKind.Form, "1 to 8000 characters")]
    public void What_is_wrong_is_found_where_it_is(string edit, string? json, string path, FaultKind kind, string said)
    {
        var fault = Assert.Single(Read(Edited(edit, json)).Faults, f => f.Path == path);
        Assert.Equal(kind, fault.Kind);
        Assert.Contains(said, fault.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void Every_fault_is_listed_at_once()
    {
        var reading = Read("""
            {
              "schemaVersion": 1,
              "title": "",
              "yarn": {
                "name": "x", "ball": { "length": "100 m", "mass": "100 g" },
                "sections": [{ "name": "a", "colour": "red", "length": "30 cm" }, { "name": "b", "colour": "#000", "lenght": "1 cm" }]
              },
              "fabric": { "stitch": "sc" },
              "garment": { "shape": "cowl", "circumference": "130 cm", "working": "spiral", "direction": "sideways" }
            }
            """);
        Assert.Equal(
            [
                ("title", 3), ("yarn.sections[0].colour", 6), ("yarn.sections[1].lenght", 6), ("fabric.swatch", 8), ("garment.height", 9),
                ("garment.direction", 9),
            ],
            reading.Faults.Select(f => (f.Path, f.Line)));
    }

    [Fact]
    public void A_sequence_that_is_known_by_no_way_is_a_fault()
    {
        var demo = Document();
        foreach (var section in demo["yarn"]!["sections"]!.AsArray())
        {
            section!.AsObject().Remove("length");
            section.AsObject().Remove("spread");
        }
        demo["yarn"]!.AsObject().Remove("counted");
        Assert.True(Read(demo.ToJsonString()).IsGood);
        demo["fabric"]!.AsObject().Remove("sectionStitches");
        Assert.Equal("yarn.sections", Assert.Single(Read(demo.ToJsonString()).Faults).Path);
    }

    [Fact]
    public void The_sizes_of_a_whole_chart_are_known_without_names()
    {
        var demo = Document();
        demo["sizes"]!.AsObject().Remove("names");
        Assert.True(Read(demo.ToJsonString()).IsGood);
        demo["sizes"]!["base"] = "6X";
        Assert.Equal("sizes.base", Assert.Single(Read(demo.ToJsonString()).Faults).Path);
    }

    [Fact]
    public void Side_bands_need_a_companion_for_plain_pieces()
    {
        var demo = Document();
        demo["companion"]!["uses"] = new JsonArray("seams", "edgings");
        demo["garment"]!["grading"] = new JsonObject { ["sideBands"] = true };
        var fault = Assert.Single(Read(demo.ToJsonString()).Faults, f => f.Path == "garment.grading.sideBands");
        Assert.Equal(FaultKind.Meaning, fault.Kind);
        Assert.Contains("serve plain pieces too", fault.ToString(), StringComparison.Ordinal);
    }

    private static ProjectReading Read(string json) => ProjectReader.Read(Encoding.UTF8.GetBytes(json));

    private static JsonNode Document() => JsonNode.Parse(DemoProject.Utf8)!;

    /// <summary>The demo with the value at a dotted path replaced, added, or (null) taken out.</summary>
    private static string Edited(string path, string? json)
    {
        var demo = Document();
        var steps = path.Split('.');
        var owner = steps[..^1].Aggregate(demo, (node, step) => node is JsonArray list ? list[int.Parse(step, null)]! : node[step]!);
        if (owner is JsonArray items)
            items[int.Parse(steps[^1], null)] = JsonNode.Parse(json!);
        else if (json is null)
            owner.AsObject().Remove(steps[^1]);
        else
            owner[steps[^1]] = JsonNode.Parse(json);
        return demo.ToJsonString();
    }
}
