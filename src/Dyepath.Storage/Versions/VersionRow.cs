using Dyepath.Storage.Database;

namespace Dyepath.Storage.Versions;

internal sealed class VersionRow : ITextRow
{
    public required string ProjectId { get; init; }

    public required int Number { get; init; }

    public required DateTimeOffset SavedAt { get; init; }

    /// <summary>Not thinned by age.</summary>
    public bool Kept { get; init; }

    /// <summary>The number under which it was published: such a text stays until that is taken back.</summary>
    public int? Edition { get; init; }

    public required int Bytes { get; init; }

    public required byte[] Document { get; init; }
}
