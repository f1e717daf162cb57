using System.Collections.Immutable;
using System.Runtime.InteropServices.JavaScript;
using System.Text.Json;
using System.Text.Json.Serialization;
using Dyepath.Client.Keeping;
using Dyepath.Client.Store;
using Dyepath.Core.Making.Log;

namespace Dyepath.Client.Making.Store;

/// <summary>A <see cref="Copy{T}"/> of a piece in the browser's database, without its design and its log.</summary>
/// <param name="Entries">Length of its log.</param>
/// <param name="LastAt">When the last entry was made; where there is none, when it was begun.</param>
public sealed record PieceCopy(
    string Id,
    string Writer,
    int Stamp,
    ImmutableSortedDictionary<string, int> Lineage,
    string? Etag,
    string? Made,
    bool IsSent,
    ImmutableArray<string> Includes,
    DateTimeOffset At,
    string? ProjectId,
    string? Key,
    string Title,
    string Size,
    DateTimeOffset BegunAt,
    int Entries,
    DateTimeOffset LastAt)
{
    public static PieceCopy Of(string id, Copy<Piece> copy)
    {
        var (piece, making) = (copy.Content, copy.Content.Making);
        return new(
            id, copy.Writer, copy.Stamp, copy.Lineage.Changes, copy.Etag, copy.Made, copy.IsSent, copy.Includes, copy.At, piece.ProjectId, piece.Key,
            making.Project.Title, making.Size, piece.BegunAt, making.Log.Length, making.Log.IsEmpty ? piece.BegunAt : making.Log[^1].At);
    }

    public Copy<Piece>? Read(string? design, ImmutableArray<Entry> log) => Piece.Read(design, log, ProjectId, Key, BegunAt) is { } piece
        ? new(Writer, Stamp, new Lineage(Lineage), piece, Etag, Made, IsSent, Includes.IsDefault ? [] : Includes, At)
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

/// <summary>In the browser's own database (wwwroot/js/store.js): a tap is one small record.</summary>
public sealed partial class MakingShelf : IMakingShelf
{
    private string[] _unread = [];

    public async Task<ImmutableArray<Copy<Piece>>> ReadAsync(string id)
    {
        var found = JsonSerializer.Deserialize(await DeviceStore.OrNot(Read(id)), MakingJson.Default.PieceFoundArray) ?? [];
        // What cannot be read stays where it is, and hides nothing else.
        var read = found.Select(f => f.Header.Read(f.Design, f.Log.IsDefault ? [] : f.Log)).ToArray();
        _unread = [.. found.Where((f, i) => read[i] is null).Select(f => f.Header.Writer)];
        return [.. read.OfType<Copy<Piece>>()];
    }

    public async Task<DeviceWriting<Piece>> WriteAsync(string id, WriteDevice<Piece> write)
    {
        var (copy, held) = (write.Copy, write.Held);
        var grows = held is not null && held.Writer == copy.Writer && held.Content.IsSameDesign(copy.Content) && held.Content.Begins(copy.Content);
        var header = PieceCopy.Of(id, copy);
        var said = "anew";
        if (grows)
            said = await Write(new PieceFound(header, null, copy.Content.Log[held!.Content.Log.Length..]), held.Stamp, _unread);
        if (said == "anew")
            said = await Write(new PieceFound(header, copy.Content.Design, copy.Content.Log), -1, _unread);
        return JsonSerializer.Deserialize(said, MakingJson.Default.CopyWritten)!.Of(copy);
    }

    public async Task<PieceCopy[]> ListAsync() => JsonSerializer.Deserialize(await DeviceStore.OrNot(List()), MakingJson.Default.PieceCopyArray) ?? [];

    public async Task RemoveAsync(string id)
    {
        await DeviceStore.OrNot(Remove(id));
        DeviceStore.Announce(IMakingShelf.Sort, id, removed: true);
    }

    private static Task<string> Write(PieceFound piece, int had, string[] unread) =>
        DeviceStore.OrNot(Write(JsonSerializer.Serialize(piece, MakingJson.Default.PieceFound), had, unread));

    [JSImport("readPiece", DeviceStore.Module)]
    private static partial Task<string> Read(string id);

    [JSImport("writePiece", DeviceStore.Module)]
    private static partial Task<string> Write(string json, int had, string[] unread);

    [JSImport("listPieces", DeviceStore.Module)]
    private static partial Task<string> List();

    [JSImport("removePiece", DeviceStore.Module)]
    private static partial Task<bool> Remove(string id);
}

/// <param name="Design">Missing where only the log has grown.</param>
/// <param name="Log">All of it, or what is new.</param>
internal sealed record PieceFound(PieceCopy Header, string? Design, ImmutableArray<Entry> Log);

[JsonSourceGenerationOptions(JsonSerializerDefaults.Web, UseStringEnumConverter = true, DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull)]
[JsonSerializable(typeof(PieceFound))]
[JsonSerializable(typeof(PieceFound[]))]
[JsonSerializable(typeof(PieceCopy[]))]
[JsonSerializable(typeof(CopyWritten))]
internal sealed partial class MakingJson : JsonSerializerContext;
