using System.Text;
using Dyepath.Client.Work;

namespace Dyepath.Client.Shell;

/// <summary>The open document as a file, whatever else of the page can be shown.</summary>
internal static class DocumentFile
{
    public static void Save(ProjectDocument document)
    {
        if (OperatingSystem.IsBrowser())
            Page.Download(FileName.Of(document.Title, ".json"), "application/json", Encoding.UTF8.GetBytes(document.Text));
    }
}
