using Dyepath.Storage.Database;

namespace Dyepath.Storage.Sessions;

internal sealed class SessionRow
{
    public required string Id { get; init; }

    /// <summary>See <see cref="SecretKey"/>.</summary>
    public required string KeyHash { get; init; }

    /// <summary>Of the access token that was given.</summary>
    public required string TokenMark { get; init; }

    public required string Device { get; init; }

    public required DateTimeOffset SignedInAt { get; init; }

    public required DateTimeOffset SeenAt { get; init; }
}
