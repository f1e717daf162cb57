using Dyepath.Core.Documents;
using Dyepath.Core.Projects.Description;

namespace Dyepath.Core.Projects;

/// <summary>The document's JSON Schema (2020-12), from the same description as reading and writing.</summary>
/// <remarks>It says everything but the ranges of quantities with units and what fields must agree on.</remarks>
public static class ProjectSchema
{
    /// <summary>JSON text, the same for every call.</summary>
    public static string Write()
    {
        var definitions = new SchemaDefinitions();
        var root = ProjectDescription.Project.Schema(definitions);
        return DocumentPrinter.Print(ObjectNode.Of(
        [
            ("$schema", new TextNode("https://json-schema.org/draft/2020-12/schema")),
            ("title", new TextNode(FormattableString.Invariant($"Dyepath project document, version {Project.SchemaVersion}"))),
            .. root.Members.Select(m => (m.Name, m.Value)),
            ("$defs", definitions.All),
        ]));
    }
}
