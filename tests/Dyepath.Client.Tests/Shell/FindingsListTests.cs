using Bunit;
using Dyepath.Client.Shell;
using Dyepath.Workspace.Tests.Fit;
using Dyepath.Workspace.Work;

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
}
