using System.Runtime.InteropServices.JavaScript;
using System.Text.Json;
using Dyepath.Client.Store;
using Dyepath.Core.Making.Log;

namespace Dyepath.Client.Making.Store;

/// <summary>
/// Pieces under way on this device. What is written is durable when a method returns; <see cref="IOException"/> where the device
/// neither reads nor writes.
/// </summary>
public interface IMakingShelf
{
    /// <summary>With its whole log.</summary>
    Task<KeptMaking?> GetAsync(string id);

    /// <summary>All of them, without their texts, with the lengths of their logs.</summary>
    Task<MakingHeader[]> ListAsync();

    /// <returns>False where the id is taken.</returns>
    Task<bool> CreateAsync(KeptMaking making);

    /// <summary>Writes one entry, never the whole log.</summary>
    /// <param name="revision">Of the header that was read.</param>
    /// <param name="n">Its place in the log, from 0.</param>
    /// <returns>False where, in another tab, the log has grown, was written anew or was put away.</returns>
    Task<bool> AppendAsync(string id, int revision, int n, Entry entry);

    /// <summary>Writes what is known of the host's copy.</summary>
    /// <returns>False where document or log were written anew in another tab.</returns>
    Task<bool> PutHeaderAsync(MakingHeader header);

    /// <summary>Writes document and log anew in one go; the next revision is then the header's.</summary>
    /// <param name="had">Entries that this device is known to have of it.</param>
    /// <returns>False where another tab has written meanwhile: nothing is changed then.</returns>
    Task<bool> ReplaceAsync(KeptMaking making, int had);

    Task RemoveAsync(string id);

    /// <param name="changed">Another tab has written a piece.</param>
    /// <param name="online">The connection is back.</param>
    /// <param name="seen">The page is in view, or no longer.</param>
    void Listen(Action<string> changed, Action online, Action<bool> seen);
}

/// <summary>In the browser's own database (wwwroot/js/store.js).</summary>
public sealed partial class MakingShelf : IMakingShelf
{
    private const string Makings = "makings";

    private bool _asked;

    public async Task<KeptMaking?> GetAsync(string id) =>
        await Or(Get(id)) is { } json ? JsonSerializer.Deserialize(json, MakingJson.Default.KeptMaking) : null;

    public async Task<MakingHeader[]> ListAsync() => JsonSerializer.Deserialize(await Or(List()), MakingJson.Default.MakingHeaderArray) ?? [];

    public Task<bool> CreateAsync(KeptMaking making) => Told(making.Header.Id, Add(JsonSerializer.Serialize(making, MakingJson.Default.KeptMaking)));

    public async Task<bool> AppendAsync(string id, int revision, int n, Entry entry)
    {
        var written = await Told(id, AddTap(id, revision, n, JsonSerializer.Serialize(entry, MakingJson.Default.Entry)));
        if (!_asked)
        {
            // Some browsers ask the maker first; the tap does not wait for her answer.
            _asked = true;
            _ = DeviceShelf.Persist();
        }
        return written;
    }

    public Task<bool> PutHeaderAsync(MakingHeader header) => Told(header.Id, Put(JsonSerializer.Serialize(header, MakingJson.Default.MakingHeader)));

    public Task<bool> ReplaceAsync(KeptMaking making, int had) =>
        Told(making.Header.Id, Replace(JsonSerializer.Serialize(making, MakingJson.Default.KeptMaking), had));

    public Task RemoveAsync(string id) => Told(id, Remove(id));

    public void Listen(Action<string> changed, Action online, Action<bool> seen)
    {
        DeviceShelf.ListenTo(Makings, changed, online);
        Watch(seen);
    }

    /// <summary>Tells the other tabs.</summary>
    private static async Task<bool> Told(string id, Task<bool> writing)
    {
        var written = await Or(writing);
        if (written)
            DeviceShelf.Announce(Makings, id);
        return written;
    }

    private static async Task<T> Or<T>(Task<T> work)
    {
        try
        {
            return await work;
        }
        catch (JSException fault)
        {
            throw new IOException(fault.Message.Split('\n')[0], fault);
        }
    }

    [JSImport("getMaking", DeviceShelf.Module)]
    private static partial Task<string?> Get(string id);

    [JSImport("listMakings", DeviceShelf.Module)]
    private static partial Task<string> List();

    [JSImport("addMaking", DeviceShelf.Module)]
    private static partial Task<bool> Add(string json);

    [JSImport("addTap", DeviceShelf.Module)]
    private static partial Task<bool> AddTap(string id, int revision, int n, string json);

    [JSImport("putMaking", DeviceShelf.Module)]
    private static partial Task<bool> Put(string json);

    [JSImport("replaceMaking", DeviceShelf.Module)]
    private static partial Task<bool> Replace(string json, int had);

    [JSImport("removeMaking", DeviceShelf.Module)]
    private static partial Task<bool> Remove(string id);

    [JSImport("watch", DeviceShelf.Module)]
    private static partial void Watch([JSMarshalAs<JSType.Function<JSType.Boolean>>] Action<bool> seen);
}
