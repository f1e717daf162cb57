using Dyepath.Contracts;

namespace Dyepath.Storage.Projects;

/// <summary>A text to be stored, and what the shelf shows of it.</summary>
/// <param name="Document">UTF-8; stored and given back byte for byte.</param>
/// <param name="Name">The document's title.</param>
/// <param name="Swatch">Missing: the earlier picture stays.</param>
public sealed record Draft(byte[] Document, string Name, SwatchPicture? Swatch)
{
    /// <summary>Of <see cref="Document"/>.</summary>
    public string Etag { get; } = Etags.Of(Document);
}
