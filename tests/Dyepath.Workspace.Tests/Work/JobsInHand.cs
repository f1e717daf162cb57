using System.Diagnostics;
using Dyepath.Workspace.Worker;

namespace Dyepath.Workspace.Tests.Work;

/// <summary>Jobs that are done, failed or left lying as the test says.</summary>
internal sealed class JobsInHand : IJobs
{
    private static readonly TimeSpan Patience = TimeSpan.FromMinutes(1);

    private readonly List<(string Job, string Input, TaskCompletionSource<byte[]> Done)> _orders = [];

    public IEnumerable<string> Inputs => _orders.Select(o => o.Input);

    public int Asked => _orders.Count;

    /// <summary>Orders that were cancelled before they were done.</summary>
    public int Stopped { get; private set; }

    public Task WarmAsync() => Task.CompletedTask;

    public Task<byte[]> RunAsync(string job, string input, Action<double> progress, CancellationToken cancel, string[]? assemblies)
    {
        // What waits goes on where the answer is given, so that nothing is left to happen later.
        var done = new TaskCompletionSource<byte[]>();
        _orders.Add((job, input, done));
        cancel.Register(() =>
        {
            if (done.TrySetCanceled(cancel))
                Stopped++;
        });
        return done.Task;
    }

    /// <summary>Waits until so many orders were given: every change waits a moment for the next one.</summary>
    public async Task AskedAsync(int orders)
    {
        for (var begun = Stopwatch.GetTimestamp(); Asked < orders; await Task.Delay(5, TestContext.Current.CancellationToken))
            Assert.True(Stopwatch.GetElapsedTime(begun) < Patience, $"Order {orders} was not given within {Patience.TotalSeconds} s; there are {Asked}.");
    }

    public void Finish(int order) => _orders[order].Done.SetResult(JobRunner.Run(_orders[order].Job, _orders[order].Input, new Progress<double>()));

    public void Fail(int order) => _orders[order].Done.SetException(new JobException("The planner divided by nothing."));

    public void Block(int order) => _orders[order].Done.SetException(new NoWorkerException("none"));
}
