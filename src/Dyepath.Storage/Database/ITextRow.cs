namespace Dyepath.Storage.Database;

/// <summary>A row that holds a text.</summary>
internal interface ITextRow
{
    byte[] Document { get; }

    /// <summary>That of the text as it was stored; null where the row does not keep it.</summary>
    string? Etag => null;
}
