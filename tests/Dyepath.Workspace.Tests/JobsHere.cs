using Dyepath.Workspace.Worker;

namespace Dyepath.Workspace.Tests;

/// <summary>Does jobs where it is called, without a second runtime.</summary>
internal sealed class JobsHere : IJobs
{
    public Task WarmAsync() => Task.CompletedTask;

    public Task<byte[]> RunAsync(string job, string input, Action<double> progress, CancellationToken cancel, string[]? assemblies)
    {
        try
        {
            return Task.FromResult(JobRunner.Run(job, input, new Share(progress)));
        }
        catch (Exception fault)
        {
            return Task.FromException<byte[]>(new JobException($"The job {job} could not be done.", fault));
        }
    }

    private sealed class Share(Action<double> told) : IProgress<double>
    {
        public void Report(double value) => told(value);
    }
}
