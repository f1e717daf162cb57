using Dyepath.Contracts;
using Dyepath.Storage.Database;

namespace Dyepath.Storage.Projects;

internal sealed class ProjectRow : ITextRow
{
    public required string Id { get; init; }

    public required string Name { get; set; }

    public bool Archived { get; set; }

    public required DateTimeOffset CreatedAt { get; init; }

    /// <summary>
    /// Made anew with the row, also by a restored backup, so that a device knows whether this store has lost what it once had.
    /// </summary>
    public string? Made { get; init; } = Guid.NewGuid().ToString("N");

    public required DateTimeOffset UpdatedAt { get; set; }

    public required string Etag { get; set; }

    public int LastVersion { get; set; }

    /// <summary><see cref="SwatchPicture"/> as JSON.</summary>
    public string? Swatch { get; set; }

    /// <summary>The text as it was sent, in UTF-8.</summary>
    public required byte[] Document { get; set; }
}
