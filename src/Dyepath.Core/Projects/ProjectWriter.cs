using System.Text;
using Dyepath.Core.Documents;
using Dyepath.Core.Projects.Description;

namespace Dyepath.Core.Projects;

/// <summary>
/// Writes project documents: fields in a fixed order, what equals its default left out, every number in the shortest
/// form that reads back the same. Units are chosen anew, so that lengths in eighths of an inch stay in inches.
/// </summary>
public static class ProjectWriter
{
    /// <summary>The document as text; a project that <see cref="ProjectReader"/> accepts reads back equal.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The project holds a choice that the document has no word for.</exception>
    public static string Write(Project project)
    {
        ArgumentNullException.ThrowIfNull(project);
        return DocumentPrinter.PrintWithin(ProjectDescription.Project.Write(project), ProjectReader.MostBytes);
    }

    /// <inheritdoc cref="Write"/>
    /// <returns>UTF-8 without byte order mark.</returns>
    public static byte[] WriteUtf8(Project project) => Encoding.UTF8.GetBytes(Write(project));
}
