using Dyepath.Workspace.Worker;

namespace Dyepath.Workspace.Tests;

/// <summary>Whatever is asked of it ends so; without a fault, as in a browser that allows no second runtime.</summary>
internal sealed class JobsThatFail(Exception? fault = null) : IJobs
{
    public Task WarmAsync() => Task.CompletedTask;

    public Task<byte[]> RunAsync(string job, string input, Action<double> progress, CancellationToken cancel, string[]? assemblies) =>
        Task.FromException<byte[]>(fault ?? new NoWorkerException("none"));
}
