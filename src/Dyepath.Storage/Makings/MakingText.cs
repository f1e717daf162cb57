using Dyepath.Contracts;

namespace Dyepath.Storage.Makings;

/// <summary>The text of a piece under way, to be stored, and what lists show of it.</summary>
/// <param name="Document">UTF-8; stored and given back byte for byte.</param>
/// <param name="Title">The project's.</param>
/// <param name="Size">Name of the size that is made.</param>
/// <param name="Entries">Length of its log.</param>
public sealed record MakingText(byte[] Document, string Title, string Size, int Entries)
{
    /// <summary>Of <see cref="Document"/>.</summary>
    public string Etag { get; } = Etags.Of(Document);
}
