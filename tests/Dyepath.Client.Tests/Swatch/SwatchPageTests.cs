using Bunit;
using Dyepath.Client.Making.Beside;
using Dyepath.Client.Swatch;
using Dyepath.Workspace.Making.Beside;
using Dyepath.Workspace.Swatch;
using Dyepath.Workspace.Tests.Making;
using Dyepath.Workspace.Work;
using Microsoft.Extensions.DependencyInjection;

namespace Dyepath.Client.Tests.Swatch;

public class SwatchPageTests : BunitContext
{
    private readonly PhoneHere _phone = new();

    private Workbench Open(Action<ProjectDocument>? change = null)
    {
        var workbench = Documents.OpenDemo(change);
        Services.AddSingleton(workbench);
        Services.AddSingleton<IDevice>(_phone);
        return workbench;
    }

    [Fact]
    public async Task One_more_stitch_is_asked_of_the_hands()
    {
        var workbench = Open();
        var table = Render<TensionTable>();

        await table.InvokeAsync(() => table.Find("[aria-label='One more for foam']").ClickAsync());

        Assert.Equal("[5,4,4,5,4]", workbench.Document!.Node("fabric.sectionStitches")!.ToJsonString());
        Assert.Equal("stitches of foam", workbench.Undoing);
    }

    [Fact]
    public async Task Trying_a_hook_changes_nothing_until_it_is_measured()
    {
        var workbench = Open();
        var before = workbench.Document!.Text;
        var advice = Render<HookAdvicePart>();
        await advice.InvokeAsync(() => advice.Find("#tried-hook").ChangeAsync("6"));

        await advice.InvokeAsync(
            () => advice.FindAll("button").First(b => b.TextContent.StartsWith("Try this hook", StringComparison.Ordinal)).ClickAsync());
        Assert.Equal(before, workbench.Document.Text);

        await advice.InvokeAsync(() => advice.Find("#at-fabric-otherSwatch-worked-stitches").InputAsync("13"));
        Assert.Equal("6 mm", workbench.Document.Typed("fabric.otherSwatch.hook"));
        await advice.InvokeAsync(() => advice.Find("#at-fabric-otherSwatch-worked-stitches").InputAsync(""));
        Assert.Equal(before, workbench.Document.Text);
    }

    [Fact]
    public void Whole_stitches_of_another_yarn_are_no_ground_for_advice()
    {
        // Foam takes three stitches by itself.
        Open(d => d.Set("fabric.sectionStitches", new System.Text.Json.Nodes.JsonArray(5, 4, 18, 5, 4)));
        Assert.Contains("too far apart to be of one yarn", Render<TensionTable>().Markup, StringComparison.Ordinal);
        var advice = Render<HookAdvicePart>();
        Assert.Contains("Count this yarn again", advice.Find(".warning").TextContent, StringComparison.Ordinal);
        Assert.Empty(advice.FindAll(".hooks"));
    }

    [Fact]
    public void Yarn_in_a_stitch_that_is_told_in_two_ways_is_no_ground_for_advice()
    {
        Open(d => d.Set("fabric.swatch.yarnUsed[0].length", "330 cm"));
        var advice = Render<HookAdvicePart>();
        Assert.Contains("Unravel and measure", advice.Find(".warning").TextContent, StringComparison.Ordinal);
        Assert.Empty(advice.FindAll(".hooks"));
    }

    [Fact]
    public void Measurements_that_agree_are() => Assert.Equal(1, Advised());

    private int Advised()
    {
        Open();
        return Render<HookAdvicePart>().FindAll(".hooks").Count;
    }

    [Fact]
    public void Ways_to_the_yarn_of_a_stitch_that_contradict_each_other_are_named()
    {
        Open(d => d.Set("fabric.swatch.yarnUsed[0].length", "330 cm"));

        var ways = Render<YarnWays>();

        Assert.Equal(3, ways.FindAll(".estimate").Count);
        Assert.Contains("8.25 cm of yarn a stitch", ways.Find(".warning").TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public void The_page_stands_without_any_yarn_measured()
    {
        Open(d =>
        {
            d.Set("yarn.counted", null);
            d.Set("yarn.sections[0].length", null);
        });

        var page = Render<SwatchPage>();

        Assert.Contains("Count the yarn", page.Markup, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Hands_from_a_log_are_offered_and_can_be_taken_back()
    {
        _phone.Texts[KeptHands.Name] = new KeptHands("Tideline, M", 0.0123, 40).Write();
        var workbench = Open();
        var offer = Render<HandsFromLog>();
        await offer.InvokeAsync(() => offer.Find("button").ClickAsync());
        Assert.Equal(("1.23 %", "40 stitches"), (workbench.Document!.Typed("fabric.hands.spread"), workbench.Document.Typed("fabric.hands.memory")));
        offer.WaitForAssertion(() => Assert.Empty(offer.FindAll("button")));
        workbench.Undo();
        Assert.Null(workbench.Document.Node("fabric.hands"));
    }
}
