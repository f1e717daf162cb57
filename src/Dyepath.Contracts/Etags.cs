using System.Security.Cryptography;

namespace Dyepath.Contracts;

/// <summary>Names for texts that change with them.</summary>
public static class Etags
{
    /// <summary>Equal for equal texts only: half of the text's SHA-256, in quotes as the header wants it.</summary>
    public static string Of(ReadOnlySpan<byte> document) => $"\"{Convert.ToHexStringLower(SHA256.HashData(document).AsSpan(0, 16))}\"";
}
