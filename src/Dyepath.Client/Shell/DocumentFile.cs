using System.Text;
using Dyepath.Client.Work;
using Dyepath.Workspace.Shell;
using Dyepath.Workspace.Work;

namespace Dyepath.Client.Shell;

/// <summary>A project's document as a file, whatever else of the page can be shown.</summary>
internal static class DocumentFile
{
    public static void Save(ProjectDocument document) => Save(document.Title, document.Text);

    public static void Save(string name, string text)
    {
        if (OperatingSystem.IsBrowser())
            Page.Download(FileName.Of(name, ".json"), "application/json", Encoding.UTF8.GetBytes(text));
    }
}
