using System.Text.Json;
using Dyepath.Core.Projects;
using Json.Schema;

namespace Dyepath.Core.Tests.Projects;

/// <summary>The JSON Schema, judged by an independent library.</summary>
internal static class DocumentSchema
{
    private static readonly JsonSchema Schema = JsonSchema.FromText(ProjectSchema.Write());

    private static readonly JsonDocumentOptions Lenient = new() { AllowTrailingCommas = true, CommentHandling = JsonCommentHandling.Skip };

    public static bool Allows(string json)
    {
        using var document = JsonDocument.Parse(json, Lenient);
        return Schema.Evaluate(document.RootElement).IsValid;
    }
}
