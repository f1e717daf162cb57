using System.Text;
using Dyepath.Core.Planning;
using Dyepath.Core.Projects;
using Dyepath.Workspace.Work;

namespace Dyepath.Workspace.Tests.Fabric;

/// <summary>The demo, with changes to its document.</summary>
internal static class Demo
{
    public static ProjectDocument Document() => ProjectDocument.TryParse(Encoding.UTF8.GetString(DemoProject.Utf8))!;

    public static Plan Plan(Action<ProjectDocument>? change = null)
    {
        var document = Document();
        change?.Invoke(document);
        return Planned(document);
    }

    public static Plan Planned(ProjectDocument document)
    {
        var outcome = Outcome.Of(document, TestContext.Current.CancellationToken);
        Assert.True(outcome.Plan is not null, string.Join("\n", outcome.Findings));
        return outcome.Plan;
    }
}
