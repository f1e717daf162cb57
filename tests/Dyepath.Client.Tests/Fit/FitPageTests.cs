using Bunit;
using Dyepath.Client.Fit;
using Dyepath.Core.Planning;
using Dyepath.Workspace.Fit;
using Dyepath.Workspace.Tests.Fit;
using Dyepath.Workspace.Work;
using Microsoft.AspNetCore.Components.Web;
using Microsoft.Extensions.DependencyInjection;

namespace Dyepath.Client.Tests.Fit;

public sealed class FitPageTests : BunitContext
{
    private Workbench _workbench = null!;

    private async Task<IRenderedComponent<FitPage>> Open(Action<ProjectDocument>? change = null)
    {
        Services.AddWork(_workbench = FitBench.Open(change));
        var page = Render<FitPage>();
        // The other direction is worked out beside; what the hand does meanwhile would wait for it.
        page.WaitForState(() => !page.Markup.Contains("Working it out", StringComparison.Ordinal), TimeSpan.FromSeconds(30));
        await page.InvokeAsync(() => { });
        return page;
    }

    [Fact]
    public async Task Every_size_and_the_serving_counts_stand_on_the_ruler()
    {
        var page = await Open();
        Assert.Equal(_workbench.Plan!.Sizes.Select(s => s.Name), page.FindAll(".fit-size").Select(s => s.TextContent));
        Assert.Equal(9, page.FindAll(".fit-link").Count);
        var serving = page.FindAll(".fit-count.serves > span").Select(s => s.TextContent);
        Assert.Equal(_workbench.Plan.Chosen.Counts.Select(c => $"{c}"), serving);
        Assert.Contains(DirectionWords.Why(_workbench.Plan), page.Markup);
    }

    /// <summary>Whether it can be put on is to be seen before it is asked: each part, what it has to pass, and what it has to spare.</summary>
    [Fact]
    public async Task What_the_body_needs_is_held_against_what_the_shown_size_has()
    {
        var page = await Open();
        var plan = _workbench.Plan!;
        var size = plan.Sizes[_workbench.ShownSize];
        var table = page.FindAll("table.fit-errors").Single(t => t.TextContent.Contains($"Held against the body, size {size.Name}", StringComparison.Ordinal));
        Assert.Equal(size.Worn.Length, table.QuerySelectorAll("tbody tr").Length);
        var neck = table.QuerySelectorAll("tbody tr").Single(r => r.TextContent.Contains("Neck opening, all round", StringComparison.Ordinal));
        // What it stretches by is no part of what it is.
        Assert.Equal(["Part", "Held against", "Has to be at least", "As made", "May stretch by", "To spare"], table.QuerySelectorAll("thead th").Select(h => h.TextContent));
        Assert.DoesNotContain("stretched", neck.TextContent, StringComparison.Ordinal);
        Assert.Contains("head", neck.TextContent, StringComparison.Ordinal);
        Assert.Contains(" to spare", neck.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_point_of_the_curve_allows_as_many_counts()
    {
        var page = await Open();
        await page.InvokeAsync(() => page.FindAll(".fit-curve button")[3].ClickAsync());
        Assert.Equal("4", _workbench.Document!.Typed("garment.grading.mostCounts"));
    }

    [Fact]
    public async Task Arrow_keys_take_the_next_count_in_hand()
    {
        var page = await Open();
        int Now() => int.Parse(page.Find(".fit-counts").GetAttribute("aria-valuenow")!);
        var before = Now();
        await page.InvokeAsync(() => page.Find(".fit-counts").KeyDownAsync(new KeyboardEventArgs { Key = "ArrowRight" }));
        Assert.Equal(before + 1, Now());
        await page.InvokeAsync(() => page.Find(".fit-counts").KeyDownAsync(new KeyboardEventArgs { Key = "Home" }));
        Assert.Equal(1, Now());
    }

    /// <summary>One number, one error: the table of counts says of the count that a size is on what the table of errors says.</summary>
    [Fact]
    public async Task A_size_on_its_count_has_the_error_that_the_plan_has()
    {
        var page = await Open();
        var plan = _workbench.Plan!;
        var measure = plan.Chosen.Ruler.Measure;
        var chosen = page.FindAll(".fit-byhand select option[selected]").Select(o => o.TextContent.Split(": ")[1]).ToArray();
        Assert.Equal(plan.Sizes.Select(s => FitWords.Error(s.Finished[measure] - s.Target[measure], plan.Project.Edition.Units)), chosen);
    }

    [Fact]
    public async Task A_count_is_fixed_only_with_a_reason()
    {
        var page = await Open();
        await page.InvokeAsync(() => page.FindAll(".fit-size")[0].KeyDownAsync(new KeyboardEventArgs { Key = "ArrowRight" }));
        Assert.Contains("worked sideways until you release it", page.Find(".fit-pin").TextContent);
        Assert.Empty(page.FindAll(".fit-pin .fault"));
        await page.InvokeAsync(() => page.Find(".fit-pin").SubmitAsync());
        Assert.False(_workbench.Document!.Has(FitEdits.Overrides));
        Assert.Contains("Not fixed yet", page.Find(".fit-pin .said.fault").TextContent);
        Assert.Equal("true", page.Find("#fit-reason").GetAttribute("aria-invalid"));
        await page.InvokeAsync(() => page.Find("#fit-reason").InputAsync("longer in the sample"));
        await page.InvokeAsync(() => page.Find(".fit-pin").SubmitAsync());
        Assert.Equal("longer in the sample", _workbench.Document.Typed($"{FitEdits.Overrides}[0].reason"));
        Assert.Equal("sideways", _workbench.Document.Typed("garment.direction"));
        Assert.Empty(page.FindAll(".fit-pin"));
    }

    /// <summary>What is typed stays until it is put right, and what a number comes to is said before it is fixed.</summary>
    [Fact]
    public async Task What_is_no_count_is_said_and_a_count_says_what_it_comes_to()
    {
        var page = await Open();
        await page.InvokeAsync(() => page.Find("[aria-label='Rows of a panel of size M']").ChangeAsync("abc"));
        Assert.Equal("abc", page.Find("[aria-label='Rows of a panel of size M']").GetAttribute("value"));
        Assert.Contains("“abc” is no count", page.Find(".fit-byhand .said.fault").TextContent);
        await page.InvokeAsync(() => page.Find("[aria-label='Rows of a panel of size M']").ChangeAsync("7"));
        Assert.Empty(page.FindAll(".fit-byhand .said.fault"));
        var size = _workbench.Plan!.Sizes.Single(s => s.Name == "M");
        var rows = HandCount.Of(_workbench.Plan).Single(c => c.What == "panelRows").Propose(_workbench.Plan, size, 7);
        Assert.Contains("Size M on 7 rows of a panel", page.Find(".fit-pin").TextContent);
        Assert.Contains(FitWords.Error(rows.Error, _workbench.Plan.Project.Edition.Units), page.Find(".fit-pin").TextContent);
        Assert.Contains("half of what is asked", page.Find(".fit-pin .said.warning").TextContent);
        await page.InvokeAsync(() => page.Find("[aria-label='Rows of a panel of size M']").ChangeAsync($"{size.Pieces[0].Rows + 2}"));
        Assert.Empty(page.FindAll(".fit-pin .said.warning"));
        await page.InvokeAsync(() => page.FindAll(".fit-pin button")[1].ClickAsync());
        Assert.Equal($"{size.Pieces[0].Rows}", page.Find("[aria-label='Rows of a panel of size M']").GetAttribute("value"));
    }

    [Fact]
    public async Task While_the_ruler_is_worked_out_that_is_said_and_messages_are_those_of_before()
    {
        var jobs = new Dyepath.Workspace.Tests.Work.JobsInHand();
        _workbench = Documents.Workbench(jobs);
        Services.AddWork(_workbench, jobs);
        Assert.True(_workbench.Open(FitBench.Demo().Text));
        var page = Render<FitPage>();
        Assert.Contains("Working it out", page.Find(".lead").TextContent);
        Assert.DoesNotContain("are described", page.Markup);
        await Task.CompletedTask;
    }

    [Fact]
    public async Task A_line_is_pulled_to_another_count()
    {
        var page = await Open();
        await page.InvokeAsync(() => page.FindAll(".fit-size")[0].PointerDownAsync(new PointerEventArgs { ClientX = 100 }));
        await page.InvokeAsync(() => page.Find(".fit-sheet").PointerMoveAsync(new PointerEventArgs { ClientX = 100 + 45 }));
        await page.InvokeAsync(() => page.Find(".fit-sheet").PointerUpAsync(new PointerEventArgs { ClientX = 100 + 45 }));
        Assert.Contains("Size XS on 93 stitches", page.Find(".fit-pin").TextContent);
    }

    [Fact]
    public async Task Where_no_count_makes_the_motif_remedies_are_deeds()
    {
        var page = await Open(d => d.Set("garment.motif", "bands"));
        Assert.Contains("nearest to the motif", page.Markup);
        await page.InvokeAsync(() => page.FindAll(".fit-remedies button").First(b => b.TextContent == "Take this motif").ClickAsync());
        Assert.NotEqual("bands", _workbench.Document!.Typed("garment.motif"));
    }
}
