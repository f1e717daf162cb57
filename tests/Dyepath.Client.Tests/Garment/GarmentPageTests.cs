using Bunit;
using Dyepath.Client.Fit;
using Dyepath.Client.Garment;
using Dyepath.Core.Constructions;
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
        await page.Find("input[value=vest]").ChangeAsync("vest");
        Assert.Equal("vest", workbench.Document!.Typed("garment.shape"));
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
}
