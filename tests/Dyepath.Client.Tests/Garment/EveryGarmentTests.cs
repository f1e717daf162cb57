using Bunit;
using Dyepath.Client.Draft;
using Dyepath.Client.Fit;
using Dyepath.Client.Garment;
using Dyepath.Core.Constructions;
using Dyepath.Core.Projects;
using Dyepath.Workspace.Draft;
using Dyepath.Workspace.Work;

namespace Dyepath.Client.Tests.Garment;

/// <summary>The pages that show a garment's measures, for every garment that there is.</summary>
public sealed class EveryGarmentTests : BunitContext
{
    public static TheoryData<string> Names => [.. Repertoire.All.Select(kind => kind.Name)];

    [Theory]
    [MemberData(nameof(Names))]
    public void Its_form_its_ruler_and_its_drawing_are_shown(string name)
    {
        var workbench = Documents.Workbench();
        Services.AddWork(workbench);
        Assert.True(workbench.Open(ProjectWriter.Write(StarterDocument.Of(Repertoire.All.Single(kind => kind.Name == name)))));
        var plan = workbench.Plan!;
        var form = Render<GarmentPage>();
        var measures = form.FindAll("[aria-label='Finished measures by size'] [scope=row]").Select(cell => cell.TextContent).ToArray();
        Assert.Equal(plan.Sizes[0].Finished.Keys.Select(measure => MeasureWords.Of(measure, plan.Project.Garment.Shape)), measures);
        Assert.Distinct(measures);
        Assert.All(measures, words => Assert.Equal(words.ToLowerInvariant(), words));
        Assert.NotEmpty(Render<FitPage>().FindAll(".fit-size"));
        var figures = Render<KeyFigures>(key => key.Add(k => k.Plan, plan).Add(k => k.Size, workbench.Size!));
        Assert.Contains("enough for 19 makers in 20", figures.Markup, StringComparison.Ordinal);
        // One count, one number: the panel's are those that Fit tells, and others go by their piece's name.
        var counts = figures.Find("dd").TextContent.Split("; ");
        Assert.Equal(plan.Chosen.Counts.Order(), counts[0].Split(", ").Select(int.Parse));
        Assert.All(counts[1..], other => Assert.Contains(plan.Sizes[0].Pieces, p => p.Pooled && other.StartsWith($"{p.Name} ", StringComparison.Ordinal)));
    }
}
