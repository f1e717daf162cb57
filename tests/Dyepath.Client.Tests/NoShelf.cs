using Dyepath.Client.Store;

namespace Dyepath.Client.Tests;

/// <summary>A device that has no projects and takes every one.</summary>
internal sealed class NoShelf : IDeviceShelf
{
    public Task<DeviceRecord?> GetAsync(string id) => Task.FromResult<DeviceRecord?>(null);

    public Task<DeviceRecord[]> ListAsync() => Task.FromResult<DeviceRecord[]>([]);

    public Task<DeviceRecord?> PutAsync(DeviceRecord record) => Task.FromResult<DeviceRecord?>(record);

    public Task RemoveAsync(string id) => Task.CompletedTask;

    public Task<bool> PersistAsync() => Task.FromResult(true);

    public void Listen(Action<string> changed, Action online)
    {
    }
}
