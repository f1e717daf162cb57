using System.Runtime.InteropServices.JavaScript;

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

    public async Task<byte[]> RunAsync(string job, string input, Action<double> progress, CancellationToken cancel, string[]? assemblies)
    {
        Running++;
        Changed?.Invoke();
        try
        {
            await (_module ??= JSHost.ImportAsync(Module, "../js/jobs.js", CancellationToken.None));
            cancel.ThrowIfCancellationRequested();
            var id = ++_last;
            await using var stopping = cancel.Register(() => Stop(id));
            await Start(id, job, input, progress, assemblies ?? []);
            return Take(id);
        }
        catch (JSException fault)
        {
            cancel.ThrowIfCancellationRequested();
            Failed?.Invoke(fault.Message.Contains(Engine.IsOther, StringComparison.Ordinal));
            throw new JobException($"The job {job} could not be done.", fault);
        }
        finally
        {
            Running--;
            Changed?.Invoke();
        }
    }

    [JSImport("start", Module)]
    private static partial Task Start(
        int id, string job, string input, [JSMarshalAs<JSType.Function<JSType.Number>>] Action<double> progress, string[] assemblies);

    [JSImport("take", Module)]
    private static partial byte[] Take(int id);

    [JSImport("stop", Module)]
    private static partial void Stop(int id);
}
