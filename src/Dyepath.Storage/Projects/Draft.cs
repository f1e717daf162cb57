using Dyepath.Contracts;

namespace Dyepath.Storage.Projects;

/// <summary>A text to be stored, and what the shelf shows of it.</summary>
/// <param name="Document">UTF-8; stored and given back byte for byte.</param>
public sealed record Draft(byte[] Document, string Name, SwatchPicture? Swatch)
{
    public string Etag { get; } = Etags.Of(Document);
}
