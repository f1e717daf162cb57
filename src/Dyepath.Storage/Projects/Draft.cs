using System.Security.Cryptography;
using Dyepath.Contracts;

namespace Dyepath.Storage.Projects;

/// <summary>A text to be stored, and what the shelf shows of it.</summary>
/// <param name="Document">UTF-8; stored and given back byte for byte.</param>
public sealed record Draft(byte[] Document, string Name, SwatchPicture? Swatch)
{
    /// <summary>Equal for equal texts only: half of the text's SHA-256, in quotes as the header wants it.</summary>
    public string Etag { get; } = EtagOf(Document);

    public static string EtagOf(ReadOnlySpan<byte> document) => $"\"{Convert.ToHexStringLower(SHA256.HashData(document).AsSpan(0, 16))}\"";
}
