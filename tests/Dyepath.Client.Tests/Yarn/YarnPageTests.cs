using System.Text.Json.Nodes;
using Bunit;
using Dyepath.Client.Yarn;
using Dyepath.Workspace.Work;
using Dyepath.Workspace.Yarn;
using Microsoft.AspNetCore.Components.Web;
using Microsoft.Extensions.DependencyInjection;

namespace Dyepath.Client.Tests.Yarn;

public class YarnPageTests : BunitContext
{
    /// <summary>The starter document with a hook of her own: no longer the sample, and its counts still the example's.</summary>
    private static string Edited
    {
        get
        {
            var document = ProjectDocument.TryParse(Core.Projects.ProjectWriter.Write(Core.Projects.StarterDocument.Project))!;
            document.Set("fabric.swatch.hook", "6 mm");
            return document.Text;
        }
    }

    private Workbench Open(Action<ProjectDocument>? change = null)
    {
        var workbench = Documents.OpenDemo(change);
        Services.AddSingleton(workbench);
        return workbench;
    }

    [Fact]
    public async Task Of_very_many_repeats_the_last_are_shown_and_the_earlier_when_asked_for()
    {
        var workbench = Open(d => d.Set("yarn.counted[0].repeats", new JsonArray([.. Enumerable.Range(0, 200).Select(i => (JsonNode)new JsonArray(5, 4, i == 7 ? 5_000 : 3, 5, 4))])));
        var grid = Render<CountGrid>(p => p.Add(g => g.Ball, 0));
        Assert.Equal(121, grid.FindAll("tbody tr:not(.beside)").Count);
        Assert.Equal("5000", grid.Find($"#{Client.Fields.Field.IdOf("yarn.counted[0].repeats[7][2]")}").GetAttribute("value"));
        Assert.Contains("Of 200 repeats you see the last 120, and those that something is said of.", grid.Markup, StringComparison.Ordinal);
        await grid.InvokeAsync(() => grid.Find(".row button").ClickAsync());
        Assert.Equal(200, grid.FindAll("tbody tr:not(.beside)").Count);
        Assert.Equal("Tideline", workbench.Document!.Title);
    }

    /// <summary>A new project renamed by its designer still follows the example's counts.</summary>
    [Fact]
    public async Task The_example_s_counts_are_said_to_be_the_example_s_until_the_yarn_is_counted()
    {
        var workbench = Documents.Workbench();
        Services.AddWork(workbench);
        Assert.True(workbench.Open(Edited));
        var page = Render<YarnPage>();
        workbench.Set("yarn.name", "Harbour", "name");
        page.WaitForAssertion(() => Assert.Equal(2, page.FindAll(".said.warning").Count(p => p.TextContent.Contains("still the example's", StringComparison.Ordinal))));
        await page.InvokeAsync(
            () => page.FindAll("button").Single(b => b.TextContent == "Count this yarn from the beginning…").ClickAsync());
        Assert.True(workbench.Document!.Has("yarn.counted"));
        await page.InvokeAsync(() => page.FindAll("button").Single(b => b.TextContent == "Leave them for now").ClickAsync());
        Assert.DoesNotContain("Counting", page.Find("h1").TextContent, StringComparison.Ordinal);
        await page.InvokeAsync(
            () => page.FindAll("button").Single(b => b.TextContent == "Count this yarn from the beginning…").ClickAsync());
        await page.InvokeAsync(() => page.FindAll("button").Single(b => b.TextContent == "Take them out, and count").ClickAsync());
        Assert.False(workbench.Document!.Has("yarn.counted"));
        workbench.Undo();
        Assert.True(workbench.Document.Has("yarn.counted"));
        Assert.Contains("Counting", page.Find("h1").TextContent, StringComparison.Ordinal);
    }

    /// <summary>A colour more, without a length so far, makes nobody's counts of the example's.</summary>
    [Fact]
    public async Task A_colour_that_is_added_leaves_the_example_s_counts_the_example_s()
    {
        var workbench = Documents.Workbench();
        Services.AddWork(workbench);
        Assert.True(workbench.Open(Edited));
        var page = Render<YarnPage>();
        workbench.Edit("a section added", SectionEdits.Add);
        page.WaitForState(() => !workbench.IsWorking, TimeSpan.FromSeconds(30));
        await page.InvokeAsync(() => { });
        Assert.Single(page.FindAll("button"), b => b.TextContent == "Count this yarn from the beginning…");
        workbench.Set("yarn.sections[4].colour", "#808000", "colour");
        workbench.Set("yarn.sections[4].length", "20 cm", "length");
        page.WaitForAssertion(() => Assert.Equal(5, page.FindAll(".estimate").Count), TimeSpan.FromSeconds(30));
        Assert.Equal("not counted yet", page.FindAll(".estimate .words")[4].TextContent);
        Assert.DoesNotContain(page.FindAll(".estimate"), e => e.TextContent.Contains("sure", StringComparison.Ordinal));
        Assert.DoesNotContain("Worked counted", page.Find(".advice").TextContent, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public async Task A_repeat_is_added_beside_the_table_of_counts(bool otherEnd)
    {
        var workbench = Open(d => d.Set("yarn.fromOtherEnd", otherEnd ? true : null));
        var grid = Render<CountGrid>(p => p.Add(g => g.Ball, 0));
        var before = workbench.Document!.Count("yarn.counted[0].repeats");
        await grid.InvokeAsync(() => grid.Find("#add-repeat").ClickAsync());
        await grid.InvokeAsync(() => grid.Find("#next-in-grid").ChangeAsync("many"));
        Assert.Contains("whole number", grid.Find(".said.fault").TextContent, StringComparison.Ordinal);
        Assert.Equal(before, workbench.Document.Count("yarn.counted[0].repeats"));
        for (var i = 0; i < 5; i++)
        {
            var name = workbench.Document.Typed($"yarn.sections[{(otherEnd ? 4 - i : i)}].name");
            Assert.Equal($"Repeat {before + 1}, {name}", grid.Find("#next-in-grid").GetAttribute("aria-label"));
            await grid.InvokeAsync(() => grid.Find("#next-in-grid").ChangeAsync($"{i + 3}"));
        }
        Assert.Equal(otherEnd ? "[7,6,5,4,3]" : "[3,4,5,6,7]", workbench.Document.Node($"yarn.counted[0].repeats[{before}]")!.ToJsonString());
        Assert.Empty(grid.FindAll("#next-in-grid"));
    }

    /// <summary>Lengths let expect a number; it is no count, and would lead the eye.</summary>
    [Fact]
    public async Task Nothing_is_usual_before_a_repeat_is_counted()
    {
        var workbench = Open(d => d.Set("yarn.counted", null));
        var desk = Render<CountDesk>(p => p.Add(d => d.Ball, 0));
        desk.WaitForState(() => workbench.Outcome?.Measured is not null, TimeSpan.FromSeconds(30));
        Assert.DoesNotContain("usually", desk.Markup, StringComparison.Ordinal);
        foreach (var count in (int[])[5, 4, 3, 5, 4])
        {
            await desk.InvokeAsync(() => desk.Find("#next-count").InputAsync($"{count}"));
            await desk.InvokeAsync(() => desk.Find("#next-count").KeyDownAsync(new KeyboardEventArgs { Key = "Enter" }));
        }
        desk.WaitForAssertion(() => Assert.Contains("usually", desk.Find(".hint").TextContent, StringComparison.Ordinal), TimeSpan.FromSeconds(30));
    }

    [Fact]
    public async Task Every_boundary_is_a_slider_that_says_where_it_stands()
    {
        var workbench = Open();
        var ruler = Render<YarnRuler>();

        var sliders = ruler.FindAll("[role=slider]");
        Assert.Equal(5, sliders.Count);
        Assert.Equal("at 31.8 cm: deep water 31.8 cm, shallows 25 cm", sliders[0].GetAttribute("aria-valuetext"));

        await ruler.InvokeAsync(() => ruler.FindAll("[role=slider]")[0].KeyDownAsync(new KeyboardEventArgs { Key = "ArrowRight" }));
        Assert.Equal("31.9 cm", workbench.Document!.Typed("yarn.sections[0].length"));
        await ruler.InvokeAsync(
            () => ruler.Find("[role=slider]").KeyDownAsync(new KeyboardEventArgs { Key = "ArrowLeft", ShiftKey = true }));
        Assert.Equal(("30.9 cm", "25.9 cm"), (workbench.Document!.Typed("yarn.sections[0].length"), workbench.Document.Typed("yarn.sections[1].length")));
        Assert.Equal("end of deep water", workbench.Undoing);
        workbench.Undo();
        Assert.Equal("31.8 cm", workbench.Document.Typed("yarn.sections[0].length"));
    }

    [Fact]
    public void Colours_that_look_alike_are_told_beside_the_one()
    {
        Open(d => d.Set("yarn.sections[4].colour", "#b08d66"));

        var table = Render<SectionTable>();

        Assert.Contains("Looks much like wet sand to any eyes; they meet along the yarn", table.Find(".beside .warning").TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task One_key_counts_one_colour()
    {
        var workbench = Open();
        var desk = Render<CountDesk>(p => p.Add(d => d.Ball, 0));
        Assert.Contains("deep water", desk.Find(".which").TextContent, StringComparison.Ordinal);

        foreach (var digit in (string[])["5", "4", "3"])
            await desk.InvokeAsync(() => desk.Find("#next-count").InputAsync(digit));

        Assert.Equal("[5,4,3]", workbench.Document!.Node("yarn.counted[0].repeats[8]")!.ToJsonString());
        Assert.Contains("wet sand", desk.Find(".which").TextContent, StringComparison.Ordinal);
        await desk.InvokeAsync(() => desk.Find("#next-count").KeyDownAsync(new KeyboardEventArgs { Key = "Backspace" }));
        Assert.Equal("[5,4]", workbench.Document.Node("yarn.counted[0].repeats[8]")!.ToJsonString());
    }

    [Fact]
    public void A_missed_count_is_told_in_its_row()
    {
        Open(d => new CountSheet(d, 0).TakeOut(3, 3));

        var grid = Render<CountGrid>(p => p.Add(g => g.Ball, 0));

        Assert.Contains("wet sand seems to be missing", grid.Find("tr.beside").TextContent, StringComparison.Ordinal);
        Assert.Equal("at-yarn-counted-0-repeats-3", grid.Find("tr.noted").Id);
    }

    [Fact]
    public void The_estimate_does_not_wait_for_a_garment()
    {
        var workbench = Open(d => d.Set("garment", null));
        Assert.Null(workbench.Outcome!.Project);

        var estimate = Render<CountEstimate>();

        Assert.Equal(5, estimate.FindAll(".estimate").Count);
        Assert.Contains("Enough is counted", estimate.Find(".advice").TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public void The_page_stands_while_the_document_has_faults()
    {
        Open(d => d.Set("yarn.sections[1].length", "long"));

        var page = Render<YarnPage>();

        Assert.Equal("true", page.Find("#at-yarn-sections-1-length").GetAttribute("aria-invalid"));
        Assert.Equal(3, page.FindAll("[role=slider]").Count);
    }
}
