using Bunit;
using Dyepath.Client.Draft;
using Dyepath.Client.Shell;
using Dyepath.Client.Yarn;
using Dyepath.Workspace.Draft;
using Dyepath.Workspace.Work;
using Microsoft.Extensions.DependencyInjection;

namespace Dyepath.Client.Tests.Yarn;

/// <summary>A designer who begins, with her own yarn or with the sample, as she sees it.</summary>
public sealed class FirstColoursTests : BunitContext
{
    private readonly Workbench _workbench = Documents.Workbench();

    public FirstColoursTests()
    {
        Services.AddWork(_workbench);
        Assert.True(_workbench.Open(NewDesign.Write("Shorewalk")));
    }

    private static TradeStep Step(string address) => TradeStep.All.Single(s => s.Address == address);

    [Fact]
    public async Task Her_first_colours_are_hers_and_what_comes_next_is_said()
    {
        var page = Render<YarnPage>();
        var list = Render<FindingsList>(p => p.Add(x => x.Id, "one").Add(x => x.Step, Step("yarn")));
        Assert.Empty(page.FindAll(".said.fault, .said.warning"));
        list.WaitForAssertion(() => Assert.Equal("Wanted first", list.Find("h2").TextContent));
        Assert.StartsWith("Put in the colours of your yarn", list.Find(".finding-says").TextContent, StringComparison.Ordinal);
        await page.InvokeAsync(() => page.FindAll("button").Single(b => b.TextContent == "Put in the first colour").ClickAsync());
        await page.InvokeAsync(() => page.Find("#at-yarn-sections-0-name").InputAsync("deep teal"));
        await page.InvokeAsync(() => page.FindAll("button").Single(b => b.TextContent == "Add a section").ClickAsync());
        await page.InvokeAsync(() => page.Find("#at-yarn-sections-1-name").InputAsync("murk"));
        Assert.Equal(("#008080", false), (_workbench.Document!.Typed("yarn.sections[0].colour"), _workbench.Document.Has("yarn.sections[1].colour")));
        // A colour that is not picked yet is wanted, and nothing is wrong with it; nobody is told that two greys look alike.
        list.WaitForAssertion(() => Assert.Equal("Pick this colour by eye, or type a plain name such as teal or mustard, or # and six digits, such as #1f4e5f.",
            list.FindAll(".finding-says")[0].TextContent.Replace("Show", "", StringComparison.Ordinal).Trim()));
        Assert.Equal("false", page.Find("#at-yarn-sections-1-colour").GetAttribute("aria-invalid"));
        Assert.Empty(page.FindAll(".said.fault, .said.warning"));
        Assert.DoesNotContain("Looks much like", page.Markup, StringComparison.Ordinal);
        await page.InvokeAsync(() => page.Find("#at-yarn-sections-1-colour").InputAsync("olive"));
        list.WaitForAssertion(() => Assert.StartsWith("Count how many stitches each colour takes", list.FindAll(".finding-says")[0].TextContent, StringComparison.Ordinal));
        _workbench.Edit("counts", d => d.Set("yarn.counted", System.Text.Json.Nodes.JsonNode.Parse("""[{"name":"first ball","repeats":[[4,3],[4,4]]}]""")));
        // What is counted is estimated before there is a swatch.
        page.WaitForAssertion(() => Assert.Equal(2, page.FindAll(".estimate").Count), TimeSpan.FromSeconds(30));
    }

    [Fact]
    public async Task The_sample_is_marked_and_goes_with_her_first_gauge()
    {
        var page = Render<YarnPage>();
        var notice = Render<SampleNotice>(p => p.Add(x => x.Id, "one").Add(x => x.Step, Step("swatch")));
        Assert.Empty(notice.Markup.Trim());
        await page.InvokeAsync(() => page.FindAll("button").Single(b => b.TextContent == "Look round with a sample yarn").ClickAsync());
        notice.WaitForAssertion(() => Assert.Contains("A sample yarn and its swatch", notice.Markup, StringComparison.Ordinal));
        // Nothing of the sample is hers to change: it is looked at, or taken out.
        Assert.Empty(page.FindAll("[role=slider], #at-yarn-sections-0-name, .counts"));
        page.WaitForState(() => _workbench.Plan is not null, TimeSpan.FromMinutes(1));
        _workbench.Set("fabric.swatch.worked.stitches", 17, "stitches of swatch");
        notice.WaitForAssertion(() => Assert.Contains("The sample yarn is out", notice.Find("[role=status]").TextContent, StringComparison.Ordinal));
        Assert.Equal("/p/one/yarn", notice.Find("a").GetAttribute("href"));
        Assert.Equal(0, _workbench.Document!.Count("yarn.sections"));
        await notice.InvokeAsync(_workbench.Undo);
        notice.WaitForAssertion(() => Assert.Contains("A sample yarn and its swatch", notice.Markup, StringComparison.Ordinal));
        await notice.InvokeAsync(() => notice.Find("button").ClickAsync());
        notice.WaitForAssertion(() => Assert.DoesNotContain("A sample yarn and its swatch", notice.Markup, StringComparison.Ordinal));
        page.WaitForAssertion(() => Assert.Contains("Put in the first colour", page.Markup, StringComparison.Ordinal));
    }

    [Fact]
    public async Task Steps_say_how_far_each_is()
    {
        var panel = Render<GarmentDraft>(p => p.Add(x => x.Id, "one").Add(x => x.Step, Step("fit")));
        panel.WaitForAssertion(() => Assert.Equal("Wanted first", panel.Find("#panel-findings").TextContent));
        // From Fit the way to the colours leads to Yarn.
        Assert.Equal("Go to Yarn", panel.Find(".finding-says a").TextContent);
        Assert.Equal([StepState.Wanting, StepState.Wanting, StepState.Open, StepState.Open, StepState.Open, StepState.Open, StepState.Open], States());
        await panel.InvokeAsync(() => _workbench.Edit("the sample yarn", SampleYarn.Pour));
        panel.WaitForState(() => _workbench is { Plan: not null, IsWorking: false }, TimeSpan.FromMinutes(1));
        // The sample's measures are nobody's, so that neither yarn nor swatch is done.
        Assert.Equal([StepState.Open, StepState.Open], States()[..2]);
        await panel.InvokeAsync(() => _workbench.Set("yarn.ball.mass", "heavy", "mass"));
        panel.WaitForState(() => _workbench is { IsWorking: false }, TimeSpan.FromMinutes(1));
        Assert.Equal(StepState.Wrong, States()[0]);

        StepState[] States() => [.. TradeStep.All.Select(s => s.State(_workbench.Outcome))];
    }
}
