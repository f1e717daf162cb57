using Dyepath.Core.Projects;
using Dyepath.Workspace.Work;

namespace Dyepath.Workspace.Draft;

/// <summary>A design as it is begun: a garment and sizes to change, and nothing of what only the designer knows, yarn and swatch.</summary>
public static class NewDesign
{
    /// <summary>The document's text.</summary>
    public static string Write(string title)
    {
        var document = ProjectDocument.TryParse(ProjectWriter.Write(StarterDocument.Project with { Title = title }))!;
        SampleYarn.TakeOut(document);
        return document.Text;
    }
}
