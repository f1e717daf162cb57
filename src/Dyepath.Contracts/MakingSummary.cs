namespace Dyepath.Contracts;

/// <summary>A piece under way, as the host keeps it.</summary>
/// <param name="Id">A GUID or 26 letters and digits, chosen where the piece was begun.</param>
/// <param name="Title">Of the document that it was begun with.</param>
/// <param name="Size">Name of the one size that is made.</param>
/// <param name="ProjectId">The project that it was begun from, which may be gone since; missing where it came from nobody's shelf.</param>
/// <param name="Entries">Length of its log.</param>
/// <param name="UpdatedAt">When the text was last changed; in whole milliseconds.</param>
/// <param name="Etag">The text's ETag as in the header, quotes included; send it back as If-Match.</param>
public sealed record MakingSummary(
    string Id, string Title, string Size, string? ProjectId, int Entries, DateTimeOffset UpdatedAt, string Etag)
{
    /// <summary>As of a <see cref="ProjectSummary"/>.</summary>
    public string? Made { get; init; }
}
