using System.Collections.Immutable;
using Dyepath.Workspace.Keeping;
using Dyepath.Workspace.Store;

namespace Dyepath.Workspace.Tests;

/// <summary>A device that has no projects and takes every one.</summary>
internal sealed class NoShelf : IDeviceShelf
{
    public Task<ImmutableArray<Copy<ProjectText>>> ReadAsync(string id) => Task.FromResult(ImmutableArray<Copy<ProjectText>>.Empty);

    public Task<DeviceWriting<ProjectText>> WriteAsync(string id, WriteDevice<ProjectText> write) =>
        Task.FromResult(new DeviceWriting<ProjectText>(write.Copy, false));

    public Task<ProjectCopy[]> ListAsync() => Task.FromResult<ProjectCopy[]>([]);

    public Task RemoveAsync(string id) => Task.CompletedTask;

    public Task ArchiveAsync(string id, bool archived) => Task.CompletedTask;
}

/// <summary>A page to which nothing happens.</summary>
internal sealed class NoEvents : IDeviceEvents
{
    public void ListenTo(string sort, Action<string> wrote, Action<string> removed)
    {
    }

    public void ListenToPage(Action cleared, Action online, Action<bool> seen)
    {
    }
}
