using Dyepath.Storage.Database;

namespace Dyepath.Storage.Makings;

internal sealed class MakingRow : ITextRow
{
    public required string Id { get; init; }

    public required string Title { get; init; }

    public required string Size { get; init; }

    /// <summary>No foreign key: a piece may be begun from a project that this host never had, and outlives it.</summary>
    public string? ProjectId { get; init; }

    public required int Entries { get; init; }

    /// <summary>As of a project.</summary>
    public string? Made { get; init; } = Guid.NewGuid().ToString("N");

    public required DateTimeOffset UpdatedAt { get; init; }

    public required string Etag { get; init; }

    /// <summary>The text as it was sent, in UTF-8.</summary>
    public required byte[] Document { get; init; }
}
