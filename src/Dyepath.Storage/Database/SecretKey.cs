using System.Buffers.Text;
using System.Security.Cryptography;
using System.Text;

namespace Dyepath.Storage.Database;

/// <summary>
/// What opens a handover or a device's session: 256 random bits, of which the store keeps the SHA-256 alone. Who reads the
/// store or a backup learns no key, and looking a key up by its hash takes a time that says nothing of how near a guess came.
/// </summary>
public static class SecretKey
{
    private const int Bytes = 32;

    /// <summary>Letters, digits, - and _ of a key.</summary>
    private const int Length = 43;

    /// <summary>Not to be guessed: 43 letters, digits, - and _.</summary>
    public static string New() => Base64Url.EncodeToString(RandomNumberGenerator.GetBytes(Bytes));

    /// <summary>Whether a text has a key's form; any other opens nothing.</summary>
    public static bool HasForm(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        return text.Length == Length && text.All(c => char.IsAsciiLetterOrDigit(c) || c is '-' or '_');
    }

    internal static string Hash(string key) => Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(key)));
}
