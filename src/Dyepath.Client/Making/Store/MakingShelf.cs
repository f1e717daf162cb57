using System.Collections.Immutable;
using System.Runtime.InteropServices.JavaScript;
using System.Text.Json;
using Dyepath.Client.Store;
using Dyepath.Workspace.Keeping;
using Dyepath.Workspace.Making.Store;
using Dyepath.Workspace.Store;

namespace Dyepath.Client.Making.Store;

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
        var grows = held is not null && held.Writer == copy.Writer && held.Content.IsSameDesign(copy.Content)
            && held.Content.Begins(copy.Content);
        var header = PieceCopy.Of(id, copy);
        var said = "anew";
        if (grows)
            said = await Write(new PieceFound(header, null, copy.Content.Log[held!.Content.Log.Length..]), held.Stamp, _unread);
        if (said == "anew")
            said = await Write(new PieceFound(header, copy.Content.Design, copy.Content.Log), -1, _unread);
        return JsonSerializer.Deserialize(said, MakingJson.Default.CopyWritten)!.Of(copy);
    }

    public async Task<PieceCopy[]> ListAsync() =>
        JsonSerializer.Deserialize(await DeviceStore.OrNot(List()), MakingJson.Default.PieceCopyArray) ?? [];

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
