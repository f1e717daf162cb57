using System.Text;
using System.Text.Json.Nodes;
using Dyepath.Core.Garments;
using Dyepath.Core.Planning;
using Dyepath.Core.Projects;
using Dyepath.Workspace.Work;

namespace Dyepath.Workspace.Tests.Fit;

/// <summary>The demo on a workbench, and its rulers.</summary>
internal static class FitBench
{
    public static ProjectDocument Demo() => ProjectDocument.TryParse(Encoding.UTF8.GetString(DemoProject.Utf8))!;

    public static Workbench Open(Action<ProjectDocument>? change = null)
    {
        var document = Demo();
        change?.Invoke(document);
        var workbench = Documents.Workbench();
        Assert.True(workbench.Open(document.Text));
        return workbench;
    }

    public static PlanResult Plan(ProjectDocument document)
    {
        var reading = ProjectReader.Read(Encoding.UTF8.GetBytes(document.Text));
        Assert.True(reading.Project is not null, string.Join("\n", reading.Faults));
        return GarmentPlanner.Plan(reading.Project, TestContext.Current.CancellationToken);
    }

    /// <summary>Worked up no few counts serve nine sizes as a customer accepts them: uneven widths are allowed.</summary>
    public static ProjectDocument Uneven()
    {
        var document = Demo();
        document.Set("garment.grading", new JsonObject { ["unevenWidths"] = true, ["severalLeans"] = true });
        return document;
    }

    public static FitRuler Ruler(Direction direction) => Plan(direction == Direction.Up ? Uneven() : Demo()).Options.Single(o => o.Direction == direction).Ruler;
}
