using Dyepath.Storage.Database;

namespace Dyepath.Storage.Handovers;

internal sealed class MakerLogRow : ITextRow
{
    public required string Id { get; init; }

    public required string ProjectId { get; init; }

    /// <summary>Missing since that was revoked.</summary>
    public string? HandoverId { get; init; }

    /// <summary>As the maker's device calls the piece.</summary>
    public required string MakingId { get; init; }

    public required string Size { get; init; }

    public required DateTimeOffset ReceivedAt { get; init; }

    public required int Entries { get; init; }

    public required int Bytes { get; init; }

    /// <summary>The whole making as it was sent, in UTF-8.</summary>
    public required byte[] Document { get; init; }
}
