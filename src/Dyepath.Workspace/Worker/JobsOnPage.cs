namespace Dyepath.Workspace.Worker;

/// <summary>
/// Jobs on the page's own thread, where the browser allows no second runtime: the page stands still, and nothing is missing.
/// </summary>
public static class JobsOnPage
{
    /// <summary>Long enough for a frame that says so to be shown before the page stands still.</summary>
    private static readonly TimeSpan Frame = TimeSpan.FromMilliseconds(60);

    /// <summary>Runs a job in the second runtime, or here where there is none.</summary>
    /// <param name="here">Told before the page stands still.</param>
    /// <inheritdoc cref="IJobs.RunAsync"/>
    /// <exception cref="JobException">The job could not be done.</exception>
    /// <exception cref="OperationCanceledException">Cancelled; here, only before it begins.</exception>
    public static async Task<byte[]> RunOrHereAsync(
        this IJobs jobs, string job, string input, Action<double> progress, CancellationToken cancel, Action? here = null)
    {
        ArgumentNullException.ThrowIfNull(jobs);
        try
        {
            return await jobs.RunAsync(job, input, progress, cancel);
        }
        catch (NoWorkerException)
        {
            here?.Invoke();
            return await RunAsync(job, input, progress, cancel);
        }
    }

    /// <summary>Runs a job here.</summary>
    /// <inheritdoc cref="RunOrHereAsync" path="/exception"/>
    public static async Task<byte[]> RunAsync(string job, string input, Action<double> progress, CancellationToken cancel)
    {
        await Task.Delay(Frame, cancel);
        try
        {
            return JobRunner.Run(job, input, new ProgressRelay(progress));
        }
#pragma warning disable CA1031 // As in the second runtime: whatever it is, the job could not be done.
        catch (Exception fault)
#pragma warning restore CA1031
        {
            throw new JobException($"The job {job} could not be done: {fault.Message}", fault);
        }
    }

    /// <summary>At once, while the job is running.</summary>
    private sealed class ProgressRelay(Action<double> progress) : IProgress<double>
    {
        public void Report(double value) => progress(value);
    }
}
