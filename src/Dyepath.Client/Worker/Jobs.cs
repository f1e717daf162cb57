using System.Runtime.InteropServices.JavaScript;
using Dyepath.Workspace.Worker;

namespace Dyepath.Client.Worker;

/// <summary>
/// Jobs in a second runtime, in a worker of the browser. Cancelling ends the worker: its runtime has one thread, which hears nothing
/// while it computes.
/// </summary>
internal sealed partial class Jobs : IJobs
{
    private const string Module = "dyepath/jobs";

    private Task? _module;
    private int _last;

    /// <summary>A job has begun or ended.</summary>
    public event Action? Changed;

    /// <summary>A job could not be done; whether the second runtime is of another version.</summary>
    public event Action<bool>? Failed;

    public int Running { get; private set; }

    public async Task WarmAsync()
    {
        try
        {
            await Opened();
            Open();
        }
        catch (JSException)
        {
            // The first job says so.
        }
    }

    public async Task<byte[]> RunAsync(string job, string input, Action<double> progress, CancellationToken cancel, string[]? assemblies)
    {
        Running++;
        Changed?.Invoke();
        try
        {
            return await DoAsync(job, input, progress, assemblies ?? [], cancel);
        }
        catch (JobException fault)
        {
            Failed?.Invoke(fault.Message.Contains(Engine.IsOther, StringComparison.Ordinal));
            throw;
        }
        finally
        {
            Running--;
            Changed?.Invoke();
        }
    }

    private async Task<byte[]> DoAsync(string job, string input, Action<double> progress, string[] assemblies, CancellationToken cancel)
    {
        try
        {
            await Opened();
        }
        catch (JSException)
        {
            throw new NoWorkerException($"Jobs cannot be run here, {job} among them.");
        }
        cancel.ThrowIfCancellationRequested();
        var id = ++_last;
        await using var stopping = cancel.Register(() => Stop(id));
        var ended = await Start(id, job, input, progress, assemblies);
        cancel.ThrowIfCancellationRequested();
        return ended switch
        {
            "" => Take(id),
            "no worker" => throw new NoWorkerException($"There is no worker for the job {job}."),
            var fault => throw new JobException($"The job {job} could not be done: {fault}"),
        };
    }

    private async Task Opened()
    {
        var module = _module ??= JSHost.ImportAsync(Module, "../js/jobs.js", CancellationToken.None);
        try
        {
            await module;
        }
        catch (JSException)
        {
            _module = null;
            throw;
        }
    }

    [JSImport("warm", Module)]
    private static partial void Open();

    /// <returns>Empty when it is done; else what kept it from being done.</returns>
    [JSImport("start", Module)]
    private static partial Task<string> Start(
        int id, string job, string input, [JSMarshalAs<JSType.Function<JSType.Number>>] Action<double> progress, string[] assemblies);

    [JSImport("take", Module)]
    private static partial byte[] Take(int id);

    [JSImport("stop", Module)]
    private static partial void Stop(int id);
}
