using System.Text;
using Dyepath.Client.Work;
using Dyepath.Core.Projects;

namespace Dyepath.Client.Tests;

internal static class Documents
{
    /// <summary>The demo as it is edited, laid out as after an edit, so that texts compare.</summary>
    public static ProjectDocument Demo()
    {
        var document = ProjectDocument.TryParse(Encoding.UTF8.GetString(DemoProject.Utf8))!;
        document.Set("title", "Tideline");
        return document;
    }

    public static Workbench OpenDemo(Action<ProjectDocument>? change = null)
    {
        var document = Demo();
        change?.Invoke(document);
        var workbench = new Workbench();
        Assert.True(workbench.Open(document.Text));
        return workbench;
    }
}
