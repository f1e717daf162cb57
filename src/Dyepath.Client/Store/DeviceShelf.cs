using System.Collections.Immutable;
using System.Runtime.InteropServices.JavaScript;
using System.Text.Json;
using Dyepath.Workspace.Keeping;
using Dyepath.Workspace.Store;

namespace Dyepath.Client.Store;

/// <summary>In the browser's own database (wwwroot/js/store.js).</summary>
public sealed partial class DeviceShelf : IDeviceShelf
{
    public string? LastWriter(string id) => Writer(id);

    public void RememberWriter(string id, string writer) => Remember(id, writer);

    public async Task<ImmutableArray<Copy<ProjectText>>> ReadAsync(string id)
    {
        var copies = JsonSerializer.Deserialize(await DeviceStore.OrNot(Read(id)), DeviceJson.Default.ProjectCopyArray) ?? [];
        return [.. copies.Select(c => c.Read())];
    }

    public async Task<DeviceWriting<ProjectText>> WriteAsync(string id, WriteDevice<ProjectText> write)
    {
        var json = JsonSerializer.Serialize(ProjectCopy.Of(id, write.Copy), DeviceJson.Plain.ProjectCopy);
        return JsonSerializer.Deserialize(await DeviceStore.OrNot(Write(json)), DeviceJson.Default.CopyWritten)!.Of(write.Copy);
    }

    public async Task<ProjectCopy[]> ListAsync() =>
        JsonSerializer.Deserialize(await DeviceStore.OrNot(List()), DeviceJson.Default.ProjectCopyArray) ?? [];

    public async Task RemoveAsync(string id)
    {
        await DeviceStore.OrNot(Remove(id));
        DeviceStore.Announce(IDeviceShelf.Sort, id, removed: true);
    }

    public Task ArchiveAsync(string id, bool archived) => DeviceStore.OrNot(Archive(id, archived));

    [JSImport("readProject", DeviceStore.Module)]
    private static partial Task<string> Read(string id);

    [JSImport("writeProject", DeviceStore.Module)]
    private static partial Task<string> Write(string json);

    [JSImport("lastWriter", DeviceStore.Module)]
    private static partial string? Writer(string id);

    [JSImport("rememberWriter", DeviceStore.Module)]
    private static partial void Remember(string id, string writer);

    [JSImport("listProjects", DeviceStore.Module)]
    private static partial Task<string> List();

    [JSImport("removeProject", DeviceStore.Module)]
    private static partial Task<bool> Remove(string id);

    [JSImport("archiveProject", DeviceStore.Module)]
    private static partial Task<bool> Archive(string id, bool archived);
}
