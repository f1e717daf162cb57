using System.Security.Cryptography;

namespace Dyepath.Storage.Backup;

/// <summary>
/// The hashes of a backup's lines. Each is taken over the one before and the line, so that a changed, swapped, dropped or added line
/// shows where it stands, and the last one is the whole file's. They tell accidents, not forgery: whoever can write a backup can
/// hash it too.
/// </summary>
internal sealed class BackupChain
{
    private byte[] _last = [];

    /// <param name="rest">The line behind its hash, without its end.</param>
    public string Next(ReadOnlySpan<byte> rest)
    {
        _last = SHA256.HashData([.. _last, .. rest]);
        return Convert.ToHexStringLower(_last);
    }
}
