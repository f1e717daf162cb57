using Dyepath.Workspace.Keeping;

namespace Dyepath.Workspace.Store;

/// <summary>
/// Projects kept on this device, so that nothing waits for a connection. <see cref="IOException"/> where it neither reads nor writes.
/// </summary>
public interface IDeviceShelf : IDeviceTexts<ProjectText>
{
    /// <summary>Under which tabs tell each other of projects.</summary>
    const string Sort = "projects";

    /// <summary>All copies of all projects, without their texts.</summary>
    Task<ProjectCopy[]> ListAsync();

    /// <summary>Takes all copies of a project from this device, for ever.</summary>
    Task RemoveAsync(string id);

    /// <summary>Of a project that is on this device alone: off the shelf, or back on it.</summary>
    Task ArchiveAsync(string id, bool archived);
}
