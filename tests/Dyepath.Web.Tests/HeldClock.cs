namespace Dyepath.Web.Tests;

/// <summary>Tells the system's moment, but no stretch of time passes by it: what waits, waits until the test lets it go on.</summary>
internal sealed class HeldClock : TimeProvider
{
    private readonly TaskCompletionSource _goOn = new(TaskCreationOptions.RunContinuationsAsynchronously);

    public void LetGoOn() => _goOn.SetResult();

    public override long GetTimestamp() => 0;

    public override ITimer CreateTimer(TimerCallback callback, object? state, TimeSpan dueTime, TimeSpan period)
    {
        var timer = new HeldTimer();
        _ = FireAsync();
        return timer;

        async Task FireAsync()
        {
            await _goOn.Task;
            if (!timer.IsDisposed)
                callback(state);
        }
    }

    private sealed class HeldTimer : ITimer
    {
        private volatile bool _isDisposed;

        public bool IsDisposed => _isDisposed;

        public bool Change(TimeSpan dueTime, TimeSpan period) => throw new NotSupportedException("What waits here waits once.");

        public void Dispose() => _isDisposed = true;

        public ValueTask DisposeAsync()
        {
            Dispose();
            return ValueTask.CompletedTask;
        }
    }
}
