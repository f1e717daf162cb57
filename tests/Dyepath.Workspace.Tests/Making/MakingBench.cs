using System.Collections.Immutable;
using Dyepath.Core.Making.Log;
using Dyepath.Core.Projects;
using Microsoft.AspNetCore.Components;

namespace Dyepath.Workspace.Tests.Making;

/// <summary>The demo in size M under way, and a clock that is moved by hand.</summary>
internal static class MakingBench
{
    public const string Id = "0193b5c2-0d60-7000-8000-0000000000a1";

    public static DateTimeOffset Now { get; } = new(2026, 3, 1, 12, 0, 0, TimeSpan.Zero);

    public static MakingDocument Demo(params int[] rows) =>
        MakingDocument.Begin(ProjectReader.Read(DemoProject.Utf8).Project!, "M") with { Log = [.. rows.Select(Row)] };

    /// <summary>An entry that is told from others by its number.</summary>
    public static Entry Row(int number) => new(EntryKind.Row, Now.AddSeconds(number), Phase: number % 5 - 2);

    public static IEnumerable<int> Numbers(ImmutableArray<Entry> log) => log.Select(e => (int)(e.At - Now).TotalSeconds);

    /// <summary>On one thread at a time, as in a page.</summary>
    public static Task InPage(Func<Task> work) => Dispatcher.CreateDefault().InvokeAsync(work);

    public static async Task Until(Func<bool> reached)
    {
        for (var i = 0; i < 1_000 && !reached(); i++)
            await Task.Delay(5, TestContext.Current.CancellationToken);
        Assert.True(reached());
    }
}

internal sealed class HandClock : TimeProvider
{
    private readonly List<Alarm> _alarms = [];

    public override DateTimeOffset GetUtcNow() => MakingBench.Now;

    public override ITimer CreateTimer(TimerCallback callback, object? state, TimeSpan dueTime, TimeSpan period)
    {
        var alarm = new Alarm(() => callback(state), dueTime);
        _alarms.Add(alarm);
        return alarm;
    }

    public void Pass(TimeSpan time)
    {
        foreach (var alarm in _alarms.ToArray().Where(a => a.Pass(time)))
            _alarms.Remove(alarm);
    }

    private sealed class Alarm(Action ring, TimeSpan due) : ITimer
    {
        private TimeSpan _left = due;
        private bool _off;

        public bool Pass(TimeSpan time)
        {
            _left -= time;
            if (!_off && _left <= TimeSpan.Zero)
                ring();
            return _off || _left <= TimeSpan.Zero;
        }

        public bool Change(TimeSpan dueTime, TimeSpan period) => true;

        public void Dispose() => _off = true;

        public ValueTask DisposeAsync()
        {
            _off = true;
            return ValueTask.CompletedTask;
        }
    }
}
