using Bunit;
using Dyepath.Client.Fit;
using Dyepath.Client.Garment;
using Dyepath.Core.Constructions;
using Dyepath.Core.Planning;
using Dyepath.Workspace.Garment;
using Dyepath.Workspace.Work;
using Microsoft.Extensions.DependencyInjection;

namespace Dyepath.Client.Tests.Garment;

public sealed class GarmentPageTests : BunitContext
{
    private Workbench Open()
    {
        var workbench = Documents.OpenDemo();
        Services.AddWork(workbench);
        return workbench;
    }

    /// <summary>First the pictogram, then the garment as worn; the choice is named by its title all the while.</summary>
    [Fact]
    public async Task Every_garment_is_drawn_and_can_be_chosen()
    {
        var workbench = Open();
        var page = Render<KindChoice>(choice => choice.Add(c => c.Shape, "tunic"));
        page.WaitForAssertion(() => Assert.Equal(Repertoire.All.Length, page.FindAll(".kind-picture").Count), TimeSpan.FromMinutes(1));
        Assert.Empty(page.FindAll(".pictogram"));
        Assert.Equal(Repertoire.All.Select(kind => kind.Title), page.FindAll(".kind b").Select(title => title.TextContent));
        // A skirt is seen from both sides; a cushion lies beside a scale bar.
        Assert.Equal(2, page.FindAll(".kind").Single(k => k.QuerySelector("b")!.TextContent == "Skirt").QuerySelectorAll("g").Length);
        Assert.Contains(" cm", page.FindAll(".kind").Single(k => k.QuerySelector("b")!.TextContent == "Cushion").QuerySelector("text")!.TextContent, StringComparison.Ordinal);
        await page.InvokeAsync(() => page.Find("input[value=vest]").ChangeAsync("vest"));
        Assert.Equal("vest", workbench.Document!.Typed("garment.shape"));
    }

    /// <summary>A project that cannot be planned has no shown size, and its tiles are of its own chart all the same.</summary>
    [Fact]
    public void Without_a_plan_the_tiles_are_of_the_document_s_chart()
    {
        var workbench = Documents.OpenDemo(d =>
        {
            SizeTable.UseChart(d, "child");
            d.Set("garment.motif", "bands");
        });
        Services.AddWork(workbench);
        Assert.Null(workbench.Plan);
        var page = Render<KindChoice>(choice => choice.Add(c => c.Shape, "tunic"));
        page.WaitForAssertion(() => Assert.NotEmpty(page.FindAll(".kind-picture")), TimeSpan.FromMinutes(1));
        Assert.Contains("in size 6, ", page.Find(".hint").TextContent, StringComparison.Ordinal);
        page.WaitForAssertion(() => Assert.Matches(@"^[5-8]\d(\.\d)? cm round", page.FindAll(".kind").Single(k => k.QuerySelector("b")!.TextContent == "Pullover").QuerySelector("span.hint")!.TextContent), TimeSpan.FromMinutes(1));
    }

    [Theory]
    [InlineData("women", "bust", "chest")]
    [InlineData("men", "chest", "bust")]
    [InlineData("child", "chest", "bust")]
    public void The_page_calls_the_girth_as_the_chart_does(string chart, string word, string other)
    {
        var workbench = Documents.OpenDemo(d => SizeTable.UseChart(d, chart));
        Services.AddWork(workbench);
        var page = Render<GarmentPage>();
        Assert.Contains(page.FindAll("label"), l => l.TextContent == $"How loose at the {word}");
        Assert.Contains(page.FindAll("[aria-label='Measures of the chart'] [scope=row]"), c => c.TextContent == word);
        Assert.DoesNotContain(page.FindAll("h1, h2, label, th, p, li").Select(e => e.TextContent), t => System.Text.RegularExpressions.Regex.IsMatch(t, $@"\b{other}\b"));
    }

    [Fact]
    public void The_garment_is_seen_from_the_front_and_from_behind()
    {
        Open();
        var worn = Render<AsWorn>();
        Assert.Equal(["From the front", "From behind"], worn.FindAll("figcaption").Select(c => c.TextContent));
        var names = worn.FindAll("[role=img]").Select(drawing => drawing.GetAttribute("aria-label")!).ToArray();
        Assert.StartsWith("Seen from behind", names[1], StringComparison.Ordinal);
        Assert.All(names, name => Assert.Contains("size M", name, StringComparison.Ordinal));
    }

    /// <summary>The boxes stay while one of them says no number, and what is said of it has the width of all of them.</summary>
    [Theory]
    [InlineData("many")]
    [InlineData("400")]
    public void A_wrong_number_of_rounds_takes_no_box_away(string rounds)
    {
        var workbench = Open();
        workbench.Set("garment.edgings[0].rounds", int.TryParse(rounds, out var number) ? number : rounds, "rounds");
        var edgings = Render<EdgingsEditor>(editor => editor.Add(e => e.Shape, "tunic"));
        edgings.WaitForAssertion(() => Assert.Single(edgings.FindAll(".edging-row > .field-said > .fault")), TimeSpan.FromSeconds(30));
        Assert.Empty(edgings.FindAll(".field .fault"));
        var said = edgings.FindAll(".edging-row > .field-said").Single(f => f.QuerySelector(".fault") is not null);
        Assert.Contains(said.Id!, edgings.Find("#at-garment-edgings-0-rounds").GetAttribute("aria-describedby")!.Split(' '));
        Assert.Single(edgings.FindAll("#at-garment-edgings-0-fewestRounds"));
        Assert.Single(edgings.FindAll("#at-garment-edgings-0-mostRounds"));
    }

    /// <summary>Every field that the document has for grading and rounds has a place on a page.</summary>
    [Fact]
    public void Grading_and_rounds_have_all_their_fields()
    {
        var workbench = Open();
        var means = Render<FitOptions>();
        foreach (var field in new[] { "mostCounts", "forgiveness", "clarity", "severalLeans", "unevenWidths", "alternatingRows", "halfStitchTurn", "sideBands", "unequalPanels" })
            Assert.Single(means.FindAll($"#{Client.Fields.Field.IdOf($"garment.grading.{field}")}"));
        workbench.Set("garment.edgings[0].rounds", null, "rounds");
        var edgings = Render<EdgingsEditor>(editor => editor.Add(e => e.Shape, "tunic"));
        foreach (var field in new[] { "rounds", "fewestRounds", "mostRounds" })
            Assert.Single(edgings.FindAll($"#{Client.Fields.Field.IdOf($"garment.edgings[0].{field}")}"));
    }

    /// <summary>A depth is asked for where something is cut, and what the form has by itself is said in the empty box.</summary>
    [Fact]
    public void Only_what_the_necks_form_has_is_asked_for()
    {
        var workbench = Open();
        workbench.Set("garment.neck", "v", "neck");
        var page = Render<GarmentPage>();
        Assert.Equal("20 cm", page.Find($"#{Id("neckDepth")}").GetAttribute("placeholder"));
        Assert.Empty(page.FindAll($"#{Id("backNeckDepth")}"));
        workbench.Set("garment.neck", "round", "neck");
        page.WaitForAssertion(() => Assert.Equal("10 cm", page.Find($"#{Id("neckDepth")}").GetAttribute("placeholder")));
        Assert.Equal("2.5 cm", page.Find($"#{Id("backNeckDepth")}").GetAttribute("placeholder"));
        workbench.Set("garment.neckDepth", "9 cm", "depth");
        workbench.Set("garment.neck", null, "neck");
        // What was typed is not lost, and is said to count for nothing.
        page.WaitForAssertion(() => Assert.Contains("does not count", page.Find($"#{Id("neckDepth")}-hint").TextContent, StringComparison.Ordinal));
        Assert.Empty(page.FindAll($"#{Id("backNeckDepth")}"));

        static string Id(string field) => Client.Fields.Field.IdOf($"garment.{field}");
    }

    /// <summary>Where the swatch cannot be right, no yarn is promised.</summary>
    [Fact]
    public void Figures_that_rest_on_a_wrong_measure_say_so()
    {
        var plan = Open().Plan!;
        var fabric = plan.Project.Fabric;
        var key = Render<Client.Draft.KeyFigures>(k => k.Add(f => f.Plan, plan).Add(f => f.Size, plan.Sizes[0]));
        Assert.Contains("enough for 19 makers in 20", key.Markup, StringComparison.Ordinal);
        var wrong = GarmentPlanner.Plan(
            plan.Project with { Fabric = fabric with { Swatch = fabric.Swatch with { HookMillimetres = 25 } } },
            Xunit.TestContext.Current.CancellationToken).Plan!;
        Assert.True(wrong.IsDoubtful);
        key.Render(k => k.Add(f => f.Plan, wrong).Add(f => f.Size, wrong.Sizes[0]));
        Assert.DoesNotContain("19 makers", key.Markup, StringComparison.Ordinal);
        Assert.Contains("No yarn is told before it is mended.", key.Markup, StringComparison.Ordinal);
    }
}
