using System.Runtime.InteropServices.JavaScript;
using System.Text.Json;

namespace Dyepath.Client.Store;

/// <summary>Projects kept on this device, so that nothing waits for a connection.</summary>
public interface IDeviceShelf
{
    Task<DeviceRecord?> GetAsync(string id);

    /// <summary>All of them, without their texts.</summary>
    Task<DeviceRecord[]> ListAsync();

    /// <summary>Durable when it returns.</summary>
    /// <returns>The record with its new revision; null where another tab has written since this one read.</returns>
    Task<DeviceRecord?> PutAsync(DeviceRecord record);

    Task RemoveAsync(string id);

    /// <summary>Asks the browser not to clear what is kept here when it wants room.</summary>
    Task<bool> PersistAsync();

    /// <param name="changed">Another tab has written a project.</param>
    /// <param name="online">The connection is back.</param>
    void Listen(Action<string> changed, Action online);
}

/// <summary>In the browser's own database (wwwroot/js/store.js).</summary>
public sealed partial class DeviceShelf : IDeviceShelf
{
    public const string Module = "dyepath/store";

    private const string Projects = "projects";

    public async Task<DeviceRecord?> GetAsync(string id) =>
        await Get(id) is { } json ? JsonSerializer.Deserialize(json, DeviceJson.Default.DeviceRecord) : null;

    public async Task<DeviceRecord[]> ListAsync() => JsonSerializer.Deserialize(await List(), DeviceJson.Default.DeviceRecordArray) ?? [];

    public async Task<DeviceRecord?> PutAsync(DeviceRecord record)
    {
        var revision = await Put(JsonSerializer.Serialize(record, DeviceJson.Plain.DeviceRecord), record.Revision);
        if (revision < 0)
            return null;
        Announce(Projects, record.Id);
        return record with { Revision = revision };
    }

    public async Task RemoveAsync(string id)
    {
        await Remove(id);
        Announce(Projects, id);
    }

    public Task<bool> PersistAsync() => Persist();

    public void Listen(Action<string> changed, Action online) => ListenTo(Projects, changed, online);

    [JSImport("get", Module)]
    private static partial Task<string?> Get(string id);

    [JSImport("list", Module)]
    private static partial Task<string> List();

    [JSImport("put", Module)]
    private static partial Task<int> Put(string json, int expected);

    [JSImport("remove", Module)]
    private static partial Task<bool> Remove(string id);

    [JSImport("persist", Module)]
    internal static partial Task<bool> Persist();

    [JSImport("announce", Module)]
    internal static partial void Announce(string what, string id);

    [JSImport("listen", Module)]
    internal static partial void ListenTo(
        string what, [JSMarshalAs<JSType.Function<JSType.String>>] Action<string> changed, [JSMarshalAs<JSType.Function>] Action online);
}
