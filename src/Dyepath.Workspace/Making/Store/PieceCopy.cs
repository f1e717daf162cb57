using System.Collections.Immutable;
using System.Text.Json;
using System.Text.Json.Serialization;
using Dyepath.Core.Making.Log;
using Dyepath.Workspace.Keeping;
using Dyepath.Workspace.Store;

namespace Dyepath.Workspace.Making.Store;

/// <summary>A <see cref="Copy{T}"/> of a piece in the browser's database, without its design and its log.</summary>
/// <param name="Id">Of the piece.</param>
/// <param name="Writer">The tab that wrote the copy.</param>
/// <param name="Stamp">See <see cref="Copy{T}.Stamp"/>.</param>
/// <param name="Lineage">See <see cref="Keeping.Lineage.Changes"/>.</param>
/// <param name="At">When it was written.</param>
/// <param name="Title">The project's.</param>
/// <param name="Size">Name of the size that is made.</param>
public sealed record PieceCopy(
    string Id,
    string Writer,
    int Stamp,
    ImmutableSortedDictionary<string, int> Lineage,
    DateTimeOffset At,
    string Title,
    string Size)
{
    /// <summary>See <see cref="Copy{T}.Etag"/>.</summary>
    public string? Etag { get; init; }

    /// <summary>See <see cref="Copy{T}.Made"/>.</summary>
    public string? Made { get; init; }

    /// <summary>See <see cref="Copy{T}.IsSent"/>.</summary>
    public bool IsSent { get; init; }

    /// <summary>See <see cref="Copy{T}.Includes"/>.</summary>
    public ImmutableArray<string> Includes { get; init; }

    /// <summary>See <see cref="Piece.ProjectId"/>.</summary>
    public string? ProjectId { get; init; }

    /// <summary>See <see cref="Piece.Key"/>.</summary>
    public string? Key { get; init; }

    /// <summary>See <see cref="Piece.BegunAt"/>.</summary>
    public DateTimeOffset BegunAt { get; init; }

    /// <summary>Length of its log.</summary>
    public int Entries { get; init; }

    /// <summary>When the last entry was made; where there is none, when it was begun.</summary>
    public DateTimeOffset LastAt { get; init; }

    /// <summary>What is kept of a copy beside its design and its log.</summary>
    public static PieceCopy Of(string id, Copy<Piece> copy)
    {
        var (piece, making) = (copy.Content, copy.Content.Making);
        return new(id, copy.Writer, copy.Stamp, copy.Lineage.Changes, copy.At, making.Project.Title, making.Size)
        {
            Etag = copy.Etag,
            Made = copy.Made,
            IsSent = copy.IsSent,
            Includes = copy.Includes,
            ProjectId = piece.ProjectId,
            Key = piece.Key,
            BegunAt = piece.BegunAt,
            Entries = making.Log.Length,
            LastAt = making.Log.IsEmpty ? piece.BegunAt : making.Log[^1].At,
        };
    }

    /// <summary>The copy again; null where its design cannot be read.</summary>
    public Copy<Piece>? Read(string? design, ImmutableArray<Entry> log) => Piece.Read(design, log, ProjectId, Key, BegunAt) is { } piece
        ? new(Writer, Stamp, new Lineage(Lineage), piece, At)
        {
            Etag = Etag,
            Made = Made,
            IsSent = IsSent,
            Includes = Includes.IsDefault ? [] : Includes,
        }
        : null;
}

/// <summary>Pieces under way on this device. <see cref="IOException"/> where it neither reads nor writes.</summary>
public interface IMakingShelf : IDeviceTexts<Piece>
{
    /// <summary>Under which tabs tell each other of pieces.</summary>
    const string Sort = "makings";

    /// <summary>All copies of all pieces.</summary>
    Task<PieceCopy[]> ListAsync();

    /// <summary>Takes all copies of a piece from this device, for ever.</summary>
    Task RemoveAsync(string id);
}

/// <param name="Design">Missing where only the log has grown.</param>
/// <param name="Log">All of it, or what is new.</param>
internal sealed record PieceFound(PieceCopy Header, string? Design, ImmutableArray<Entry> Log);

[JsonSourceGenerationOptions(
    JsonSerializerDefaults.Web, UseStringEnumConverter = true, DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull)]
[JsonSerializable(typeof(PieceFound))]
[JsonSerializable(typeof(PieceFound[]))]
[JsonSerializable(typeof(PieceCopy[]))]
[JsonSerializable(typeof(CopyWritten))]
internal sealed partial class MakingJson : JsonSerializerContext;
