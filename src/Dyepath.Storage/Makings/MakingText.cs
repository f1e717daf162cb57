using Dyepath.Contracts;

namespace Dyepath.Storage.Makings;

/// <summary>The text of a piece under way, to be stored, and what lists show of it.</summary>
/// <param name="Document">UTF-8; stored and given back byte for byte.</param>
/// <param name="Entries">Length of its log.</param>
public sealed record MakingText(byte[] Document, string Title, string Size, int Entries)
{
    public string Etag { get; } = Etags.Of(Document);
}
