using Bunit;
using Dyepath.Client.Draft;
using Dyepath.Client.Garment;
using Dyepath.Client.Shell;
using Dyepath.Workspace.Tests.Fit;
using Dyepath.Workspace.Work;
using Microsoft.AspNetCore.Components;
using Microsoft.Extensions.DependencyInjection;

namespace Dyepath.Client.Tests.Shell;

public sealed class FindingsListTests : BunitContext
{
    /// <summary>What would help stands beside what is wrong, names no field, and is one press and one undo.</summary>
    [Fact]
    public async Task What_would_help_is_done_by_one_press_and_taken_back_by_one()
    {
        var workbench = FitBench.Open(document =>
        {
            document.Set("garment.neck", "round");
            document.Set("garment.letOff", "6 cm");
        });
        Services.AddWork(workbench);
        var page = Render<FindingsList>(p => p.Add(x => x.Id, "one").Add(x => x.Step, TradeStep.All.Single(s => s.Address == "pattern")));
        var offered = workbench.Outcome!.Findings.SelectMany(f => f.Remedies).Where(r => r.Place == "garment.letOff").ToArray();
        Assert.NotEmpty(offered);
        Assert.DoesNotContain("garment.", page.Find(".findings").TextContent, StringComparison.Ordinal);
        var button = page.FindAll("button").First(b => b.GetAttribute("aria-label") == $"Do this: {offered[0].Text}");
        await page.InvokeAsync(() => button.ClickAsync());
        Assert.Equal(offered[0].Value, $"\"{workbench.Document!.Typed("garment.letOff")}\"");
        Assert.Equal("what would help", workbench.Undoing);
        await page.InvokeAsync(workbench.Undo);
        Assert.Equal("6 cm", workbench.Document.Typed("garment.letOff"));
    }

    /// <summary>A sentence says once what would help: beside its button, and not in front of it too.</summary>
    [Fact]
    public void What_would_help_is_said_once()
    {
        var workbench = FitBench.Open(document =>
        {
            document.Set("garment.neck", "round");
            document.Set("garment.letOff", "6 cm");
        });
        Services.AddWork(workbench);
        var page = Render<FindingsList>(p => p.Add(x => x.Id, "one").Add(x => x.Step, TradeStep.All.Single(s => s.Address == "pattern")));
        foreach (var remedy in workbench.Outcome!.Findings.SelectMany(f => f.Remedies).DistinctBy(r => r.Text))
        {
            var said = page.FindAll(".finding-says, .fit-remedies > li > span").Count(e => e.TextContent.Contains(remedy.Text, StringComparison.Ordinal));
            Assert.Equal(workbench.Outcome.Findings.Sum(f => f.Remedies.Count(r => r.Text == remedy.Text)), said);
        }
    }

    private static void Bands(ProjectDocument document) => document.Set("garment.motif", "bands");

    /// <summary>Garment and Fit tell of one garment: one list, and the panel counts what it has.</summary>
    [Fact]
    public void Garment_and_fit_have_one_list_and_the_panel_its_count()
    {
        var workbench = FitBench.Open(document => document.Set("garment.sleeves.yarn", "variegated"));
        Services.AddWork(workbench);
        var lists = new[] { "garment", "fit" }.Select(step => Render<FindingsList>(p => p.Add(x => x.Id, "one").Add(x => x.Step, TradeStep.All.Single(s => s.Address == step)))
            .FindAll(".finding-says").Select(f => f.TextContent.Replace("Show", "", StringComparison.Ordinal).Replace("Go to Fit", "", StringComparison.Ordinal)
                .Replace("Go to Garment", "", StringComparison.Ordinal).Trim()).ToArray()).ToArray();
        Assert.NotEmpty(lists[0]);
        Assert.Equal(lists[0], lists[1]);
        Assert.Contains(workbench.Outcome!.Findings, f => f.Place.StartsWith("garment.grading", StringComparison.Ordinal) || f.Place.StartsWith("garment.letOff", StringComparison.Ordinal));
        var panel = Render<PanelFindings>(p => p.Add(x => x.Id, "one").Add(x => x.Step, TradeStep.All.Single(s => s.Address == "fit")));
        Assert.StartsWith(lists[0].Length == 1 ? "1 thing to know" : $"{lists[0].Length} things to know", panel.Find("a").TextContent, StringComparison.Ordinal);
        // The panel's counts are those that Fit tells, and what is of a sleeve is called so.
        var counts = Render<KeyFigures>(p => p.Add(k => k.Plan, workbench.Plan!).Add(k => k.Size, workbench.Size!)).Find("dd").TextContent.Split("; ");
        Assert.Equal(workbench.Plan!.Chosen.Counts.Order().Select(c => $"{c}"), counts[0].Split(", "));
        Assert.All(counts[1..], c => Assert.StartsWith("sleeve ", c, StringComparison.Ordinal));
        Assert.Equal("/p/one/fit#findings-title", panel.Find("a").GetAttribute("href"));
    }

    /// <summary>The panel of a project that was only just opened tells what one that had a plan before tells.</summary>
    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public async Task What_cannot_be_planned_is_told_beside_the_garment_with_what_would_help(bool after)
    {
        var workbench = FitBench.Open(after ? null : Bands);
        if (after)
        {
            workbench.Edit("motif", Bands);
            for (var waited = 0; workbench.IsWorking && waited < 600; waited++)
                await Task.Delay(100, Xunit.TestContext.Current.CancellationToken);
        }
        Services.AddWork(workbench);
        Assert.Equal(after, workbench.Plan is not null);
        var panel = Render<GarmentDraft>(p => p.Add(x => x.Id, "one").Add(x => x.Step, TradeStep.All.Single(s => s.Address == "fit")));
        var said = panel.FindAll(".finding-says").Select(f => f.TextContent).ToArray();
        Assert.Equal(2, said.Length);
        Assert.StartsWith("Worked up: No count from ", said[0], StringComparison.Ordinal);
        Assert.StartsWith("Worked sideways: No count from ", said[1], StringComparison.Ordinal);
        var motif = panel.FindAll(".findings button").First(b => b.GetAttribute("aria-label")!.Contains("argyle diamonds", StringComparison.Ordinal));
        await panel.InvokeAsync(() => motif.ClickAsync());
        panel.WaitForAssertion(() => Assert.Empty(panel.FindAll(".finding-says")), TimeSpan.FromMinutes(1));
        Assert.Equal("argyle", workbench.Document!.Typed("garment.motif"));
    }

    /// <summary>Why nothing can be planned stands once on a page, with its direction, and its box leads there.</summary>
    [Fact]
    public void Why_nothing_can_be_planned_stands_once()
    {
        var workbench = FitBench.Open(Bands);
        Services.AddWork(workbench);
        Services.GetRequiredService<NavigationManager>().NavigateTo("/p/one/garment");
        var list = Render<FindingsList>(p => p.Add(x => x.Id, "one").Add(x => x.Step, TradeStep.All.Single(s => s.Address == "garment")));
        var page = Render<GarmentPage>();
        Assert.Equal(2, list.FindAll(".finding-says").Count(f => f.TextContent.Contains("No count from ", StringComparison.Ordinal)));
        Assert.Empty(page.FindAll(".said").Where(f => f.TextContent.Contains("No count from ", StringComparison.Ordinal)));
        var field = page.Find("#at-garment-motif-said");
        Assert.StartsWith("With this nothing can be planned", field.TextContent.Trim(), StringComparison.Ordinal);
        Assert.EndsWith("/p/one/garment#findings-title", field.QuerySelector("a")!.GetAttribute("href"), StringComparison.Ordinal);
        Assert.NotEmpty(list.FindAll(".fit-remedies button"));
    }

    /// <summary>A box tells by itself what was typed into it.</summary>
    [Fact]
    public void What_was_typed_wrongly_stands_beside_its_box()
    {
        Services.AddWork(FitBench.Open(document => document.Set("garment.neckWidth", "wide")));
        Services.GetRequiredService<NavigationManager>().NavigateTo("/p/one/garment");
        Assert.Contains("wide", Render<GarmentPage>().Find("#at-garment-neckWidth-said").TextContent, StringComparison.Ordinal);
    }
}
