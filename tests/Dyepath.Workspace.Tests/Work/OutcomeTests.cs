using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;
using Dyepath.Core.Booklets;
using Dyepath.Core.Findings;
using Dyepath.Core.Planning;
using Dyepath.Core.Projects;
using Dyepath.Workspace.Work;

namespace Dyepath.Workspace.Tests.Work;

/// <summary>What a document's faults are told as, and what is measured in spite of them.</summary>
public sealed class OutcomeTests
{
    private static ProjectReading Read(string text) => ProjectReader.Read(Encoding.UTF8.GetBytes(text));

    [Fact]
    public void What_is_wrong_with_a_document_is_told_in_the_pages_words_and_what_is_wanted_first()
    {
        var document = Documents.Demo();
        document.Set("yarn.ball.length", "much");
        document.Set("yarn.sections[1].colour", null);
        document.Set("sizes", new JsonObject());
        var outcome = Outcome.Read(document);
        Assert.Equal(["yarn.sections[1].colour", "yarn.ball.length", "sizes"], outcome.Findings.Select(f => f.Place));
        Assert.All(outcome.Findings, f => Assert.Equal(FindingLevel.Fault, f.Level));
        Assert.Equal(outcome.Reading.Faults.OrderBy(FaultWords.Rank).Select(FaultWords.Of), outcome.Findings.Select(f => f.Text));
        Assert.Equal([true, false, true], outcome.Findings.Select(outcome.IsWanted));
        Assert.False(outcome.IsWanting);
        document.Set("yarn.ball.length", "200 m");
        Assert.True(Outcome.Read(document).IsWanting);
        Assert.Equal((null, null, null, false, null), (outcome.Plan, outcome.Project, outcome.Measured, outcome.IsInfeasible, outcome.Booklet));
        Assert.False(Outcome.Read(Documents.Demo()).IsWanting);
    }

    /// <summary>A yarn is counted before its swatch is worked and its label read; what is wrong in it is not passed over.</summary>
    [Fact]
    public void A_counted_yarn_is_measured_before_there_is_a_swatch_or_a_label()
    {
        var document = Documents.Demo();
        var whole = Outcome.Of(document, TestContext.Current.CancellationToken).Measured!.Natural.Counted!;
        foreach (var place in new[] { "fabric.swatch", "yarn.ball", "yarn.name" })
            document.Set(place, null);
        var outcome = Outcome.Of(document, TestContext.Current.CancellationToken);
        var counted = outcome.Counted?.Natural.Counted;
        // Nothing is said of a swatch that is not there.
        Assert.Null(outcome.Measured);
        Assert.Equal((whole.Sequence.Value, whole.Repeats), (counted!.Sequence.Value, counted.Repeats));
        document.Set("yarn.ball", new JsonObject { ["length"] = "much", ["mass"] = "100 g" });
        Assert.Null(Outcome.Of(document, TestContext.Current.CancellationToken).Counted);
    }

    /// <summary>Yarn and fabric alone are measured where nothing is wrong with them.</summary>
    [Fact]
    public void The_yarn_is_measured_where_only_the_garment_has_faults()
    {
        var text = Documents.Demo().Text;
        Assert.Null(Outcome.YarnAlone(text, Read(text)));
        var garment = Changed("garment.shape", "balloon");
        Assert.Null(Read(garment).Project);
        var alone = Outcome.YarnAlone(garment, Read(garment))!;
        Assert.Equal(Read(text).Project!.Yarn.Sections.Select(s => s.Name), alone.Yarn.Sections.Select(s => s.Name));
        Assert.Equal(Read(text).Project!.Fabric.Stitch, alone.Fabric.Stitch);
        Assert.Equal(StarterDocument.Project.Garment.Shape.Name, alone.Garment.Shape.Name);
        foreach (var wrong in new[] { Changed("yarn.ball.length", "much"), Changed("fabric.stitch", "knots") })
            Assert.Null(Outcome.YarnAlone(wrong, Read(wrong)));
        // Of a text that is none nothing is known, whatever stands beside it.
        var none = Read("no JSON");
        Assert.Equal("document", Assert.Single(none.Faults).Path);
        Assert.Null(Outcome.YarnAlone(text, none));
        Assert.Null(Outcome.YarnAlone("no JSON", Read(garment)));
        var (result, measured) = Outcome.WorkOut(null, alone, null, TestContext.Current.CancellationToken);
        Assert.Null(result);
        Assert.NotNull(measured);
        Assert.Equal((null, null), Outcome.WorkOut(null, null, null, TestContext.Current.CancellationToken));
    }

    /// <summary>
    /// Words, pictures and edition are no part of what is planned: what was worked out stays, and is what working it out anew gives, to the
    /// last number and sentence. Whatever else changes is worked out.
    /// </summary>
    [Theory]
    [InlineData("title", "\"Another\"", true)]
    [InlineData("designer", "\"Somebody\"", true)]
    [InlineData("words.notes", "\"Count twice.\"", true)]
    [InlineData("edition.number", "2", true)]
    [InlineData("edition.date", "\"2026-12-01\"", true)]
    [InlineData("edition.language", "\"German\"", true)]
    [InlineData("edition.terms", "\"UK\"", true)]
    [InlineData("edition.hand", "\"left\"", true)]
    [InlineData("edition.size", "\"M\"", true)]
    [InlineData("edition.units", "\"in\"", false)]
    [InlineData("yarn.sections[0].colour", "\"#123456\"", false)]
    [InlineData("fabric.swatch.hook", "\"5 mm\"", false)]
    [InlineData("sizes.base", "\"L\"", false)]
    public void What_planning_does_not_read_leaves_the_plan(string place, string value, bool same)
    {
        var document = Documents.Demo();
        var earlier = Outcome.Of(document, TestContext.Current.CancellationToken);
        document.Set(place, JsonNode.Parse(value));
        var read = Outcome.Read(document);
        Assert.NotNull(read.Project);
        var reworded = read.Reworded(earlier);
        Assert.Equal(same, reworded is not null);
        if (reworded is null)
            return;
        var anew = Outcome.Of(document, TestContext.Current.CancellationToken);
        Assert.Equal(PlanText(anew), PlanText(reworded));
        Assert.Equal(anew.Findings, reworded.Findings);
        Assert.Equal(TextBooklet.Write(anew.Booklet!, anew.Project!.Edition), TextBooklet.Write(reworded.Booklet!, reworded.Project!.Edition));
        Assert.Equal(anew.Measured!.YarnPerStitch.PerUnit, reworded.Measured!.YarnPerStitch.PerUnit);

        static string PlanText(Outcome outcome)
        {
            using var stream = new MemoryStream();
            using (var json = new Utf8JsonWriter(stream))
                PlanJson.Write(json, outcome.Plan!);
            return Encoding.UTF8.GetString(stream.ToArray());
        }
    }

    /// <summary>The second runtime is told whether there is a whole project; its searches make the same plan again.</summary>
    [Fact]
    public async Task Searches_made_elsewhere_lead_to_the_same()
    {
        var document = Documents.Demo();
        var orders = new List<string>();
        var outcome = await Outcome.Read(document).WorkedOutAsync(document, Search);
        var here = Outcome.Of(document, TestContext.Current.CancellationToken);
        Assert.Equal(here.Plan!.Sizes.Select(s => (s.Pieces[0].Stitches, s.Pieces[0].Rows)), outcome.Plan!.Sizes.Select(s => (s.Pieces[0].Stitches, s.Pieces[0].Rows)));
        Assert.Equal(here.Findings.Select(f => f.Text), outcome.Findings.Select(f => f.Text));
        Assert.NotNull(outcome.Booklet);
        Assert.StartsWith("whole\n{", Assert.Single(orders), StringComparison.Ordinal);
        document.Set("garment.shape", "balloon");
        var alone = await Outcome.Read(document).WorkedOutAsync(document, Search);
        Assert.StartsWith("yarn\n{", orders[^1], StringComparison.Ordinal);
        Assert.Equal(here.Measured!.YarnPerStitch.PerUnit, alone.Measured!.YarnPerStitch.PerUnit);
        Assert.Null(alone.Plan);
        document.Set("yarn.ball.length", "much");
        var read = Outcome.Read(document);
        Assert.Same(read, await read.WorkedOutAsync(document, Search));
        Assert.Equal(2, orders.Count);

        Task<byte[]> Search(string order)
        {
            orders.Add(order);
            return Task.FromResult(PlanJob.Run(order, new Progress<double>()));
        }
    }

    private static string Changed(string place, string value)
    {
        var document = Documents.Demo();
        document.Set(place, value);
        return document.Text;
    }
}
