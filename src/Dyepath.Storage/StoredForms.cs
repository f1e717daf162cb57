using Dyepath.Storage.Faults;

namespace Dyepath.Storage;

/// <summary>What may be stored: the store looks no further into it.</summary>
/// <param name="IsId">Whether a text may be an id.</param>
/// <param name="IsDocument">Whether a text is a JSON object of allowed size, and so can be read back.</param>
public sealed record StoredForms(Func<string, bool> IsId, Func<byte[], bool> IsDocument)
{
    /// <summary>The text as it was stored, or null where none was.</summary>
    /// <exception cref="StoreException">It is damaged.</exception>
    internal byte[]? Sound(byte[]? document) =>
        document is null || IsDocument(document) ? document : throw new StoreException(StoreFault.Damaged);
}
