using Dyepath.Contracts;

namespace Dyepath.Storage.Projects;

/// <summary>What reading a stored text led to.</summary>
public abstract record TextReading
{
    private TextReading()
    {
    }

    /// <param name="Document">The very bytes that were stored: they have the ETag.</param>
    /// <param name="Etag">Of <paramref name="Document"/>.</param>
    /// <param name="Swatch">Missing where none was stored.</param>
    /// <param name="Made">Another one than before: this store lost the text meanwhile.</param>
    public sealed record Sound(byte[] Document, string Etag, SwatchPicture? Swatch = null, string? Made = null) : TextReading;

    /// <summary>There is none of this id.</summary>
    public sealed record Missing : TextReading;

    /// <summary>The bytes are not those that were stored, or cannot be read at all.</summary>
    /// <param name="Name">As lists show it.</param>
    /// <param name="Etag">Of the text that was stored.</param>
    /// <param name="UpdatedAt">When that text was stored.</param>
    /// <param name="LastGood">
    /// The newest version that can be read; versions have no ETag of their own, so a changed letter shows in none of them.
    /// </param>
    public sealed record Damaged(string Name, string Etag, DateTimeOffset UpdatedAt, VersionSummary? LastGood = null) : TextReading;
}
