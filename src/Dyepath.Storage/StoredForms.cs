namespace Dyepath.Storage;

/// <summary>What may be stored: the store looks no further into it.</summary>
/// <param name="IsId">Whether a text may be an id.</param>
/// <param name="IsDocument">Whether a text is a JSON object of allowed size, and so can be read back.</param>
public sealed record StoredForms(Func<string, bool> IsId, Func<byte[], bool> IsDocument);
