using System.Collections.Immutable;
using System.Text.Json;
using System.Text.Json.Serialization;
using Dyepath.Core.Making.Log;
using Dyepath.Workspace.Keeping;
using Dyepath.Workspace.Store;

namespace Dyepath.Workspace.Making.Store;

/// <summary>A <see cref="Copy{T}"/> of a piece in the browser's database, without its design and its log.</summary>
public sealed record PieceCopy(
    string Id,
    string Writer,
    int Stamp,
    ImmutableSortedDictionary<string, int> Lineage,
    DateTimeOffset At,
    string Title,
    string Size)
{
    public string? Etag { get; init; }

    public string? Made { get; init; }

    public bool IsSent { get; init; }

    public ImmutableArray<string> Includes { get; init; }

    public string? ProjectId { get; init; }

    public string? Key { get; init; }

    public DateTimeOffset BegunAt { get; init; }

    /// <summary>Length of its log.</summary>
    public int Entries { get; init; }

    /// <summary>When the last entry was made; where there is none, when it was begun.</summary>
    public DateTimeOffset LastAt { get; init; }

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
    const string Sort = "makings";

    /// <summary>All copies of all pieces.</summary>
    Task<PieceCopy[]> ListAsync();

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
