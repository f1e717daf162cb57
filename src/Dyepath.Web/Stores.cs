using Dyepath.Storage;
using Dyepath.Web.Projects;

namespace Dyepath.Web;

/// <summary>What this program stores.</summary>
internal static class Stores
{
    public static StoredForms Forms { get; } = new(DocumentId.IsValid, document => DocumentText.Read(document).Text is not null);
}
