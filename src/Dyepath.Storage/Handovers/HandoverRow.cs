using Dyepath.Storage.Database;

namespace Dyepath.Storage.Handovers;

internal sealed class HandoverRow : ITextRow
{
    public required string Id { get; init; }

    public required string ProjectId { get; init; }

    public required string Size { get; init; }

    public required DateTimeOffset CreatedAt { get; init; }

    /// <summary>See <see cref="SecretKey"/>.</summary>
    public required string KeyHash { get; init; }

    /// <summary>The piece as it was handed over: a making with an empty log.</summary>
    public required byte[] Document { get; init; }
}
