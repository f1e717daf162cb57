using System.Text;
using Dyepath.Client.Work;
using Dyepath.Core.Garments;
using Dyepath.Core.Planning;
using Dyepath.Core.Projects;

namespace Dyepath.Client.Tests.Fit;

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

    public static FitRuler Ruler(Direction direction) => Plan(Demo()).Options.Single(o => o.Direction == direction).Ruler;
}
