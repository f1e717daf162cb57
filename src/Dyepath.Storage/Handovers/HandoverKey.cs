using System.Buffers.Text;
using System.Security.Cryptography;
using System.Text;

namespace Dyepath.Storage.Handovers;

/// <summary>
/// What opens a handover: 256 random bits, of which the store keeps the SHA-256 alone. Who reads the store or a backup learns
/// no key, and looking a key up by its hash takes a time that says nothing of how near a guess came.
/// </summary>
public static class HandoverKey
{
    private const int Bytes = 32;

    public static string New() => Base64Url.EncodeToString(RandomNumberGenerator.GetBytes(Bytes));

    internal static string Hash(string key) => Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(key)));
}
