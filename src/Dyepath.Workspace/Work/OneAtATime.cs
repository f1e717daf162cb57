using System.Diagnostics;

namespace Dyepath.Workspace.Work;

/// <summary>
/// Long computing of which only the last order counts. An order that comes while another is being done gives it a moment to end by
/// itself, since ending it by force ends the runtime that does it, and then stops it.
/// </summary>
public sealed class OneAtATime : IDisposable
{
    internal static readonly TimeSpan Grace = TimeSpan.FromMilliseconds(400);

    private Running? _running;
    private int _turn;

    /// <exception cref="OperationCanceledException">A later order came, or <see cref="Stop"/>.</exception>
    public async Task<T> RunAsync<T>(Func<CancellationToken, Task<T>> work)
    {
        ArgumentNullException.ThrowIfNull(work);
        var turn = ++_turn;
        while (_running is { } before)
        {
            if (Grace - before.Since.Elapsed is var left && left > TimeSpan.Zero)
                await Task.WhenAny(before.Ended.Task, Task.Delay(left));
            await before.StopAsync();
            Check(turn);
        }
        using var running = _running = new Running();
        try
        {
            var done = await work(running.Cancel.Token);
            Check(turn);
            return done;
        }
        finally
        {
            _running = null;
            running.Ended.SetResult();
        }
    }

    /// <summary>Stops what is being done, at once.</summary>
    public void Stop()
    {
        _turn++;
        if (_running is { } running)
            running.Cancel.Cancel();
    }

    public void Dispose() => Stop();

    private void Check(int turn)
    {
        if (turn != _turn)
            throw new OperationCanceledException();
    }

    private sealed class Running : IDisposable
    {
        public CancellationTokenSource Cancel { get; } = new();

        public Stopwatch Since { get; } = Stopwatch.StartNew();

        public TaskCompletionSource Ended { get; } = new();

        public Task StopAsync()
        {
            if (!Ended.Task.IsCompleted)
                Cancel.Cancel();
            return Ended.Task;
        }

        public void Dispose() => Cancel.Dispose();
    }
}
