using Dyepath.Core.Projects;
using Dyepath.Storage;

namespace Dyepath.Web;

/// <summary>What this program stores.</summary>
internal static class Stores
{
    /// <summary>What ids and documents have to look like.</summary>
    public static StoredForms Forms { get; } = new(DocumentId.IsValid, document => ProjectReader.FindNoObject(document) is null);
}
