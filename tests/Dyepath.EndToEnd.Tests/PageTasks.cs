using System.Collections.Concurrent;
using System.Text.Json;
using Microsoft.Playwright;

namespace Dyepath.EndToEnd.Tests;

/// <summary>
/// The tasks of a page's thread, in processor time: what holds up typing, whatever else the machine does meanwhile.
/// </summary>
internal sealed class PageTasks
{
    private static readonly TimeSpan Patience = TimeSpan.FromMinutes(2);

    private readonly ICDPSession _session;
    private readonly ConcurrentQueue<JsonElement> _events = new();
    private TaskCompletionSource _complete = new();

    public PageTasks(ICDPSession session)
    {
        _session = session;
        session.Event("Tracing.dataCollected").OnEvent += (_, data) =>
        {
            foreach (var one in data!.Value.GetProperty("value").EnumerateArray())
                _events.Enqueue(one.Clone());
        };
        session.Event("Tracing.tracingComplete").OnEvent += (_, _) => _complete.TrySetResult();
    }

    public Task BeginAsync() => _session.SendAsync("Tracing.start", new() { ["categories"] = "toplevel,disabled-by-default-devtools.timeline,devtools.timeline,__metadata", ["transferMode"] = "ReportEvents" });

    /// <summary>The longest task since the beginning or the last call, in milliseconds of the processor.</summary>
    public async Task<double> TakeAsync()
    {
        _complete = new();
        await _session.SendAsync("Tracing.end");
        if (await Task.WhenAny(_complete.Task, Task.Delay(Patience)) != _complete.Task)
            Assert.Fail($"The trace was ended, and Chromium has not said within {Patience.TotalSeconds} s that it is complete.");
        var events = _events.ToArray();
        _events.Clear();
        var threads = events.Where(e => Text(e, "name") == "thread_name" && Text(e.GetProperty("args"), "name") == "CrRendererMain")
            .Select(e => (e.GetProperty("pid").GetInt64(), e.GetProperty("tid").GetInt64())).ToHashSet();
        var longest = events.Where(e => Text(e, "ph") == "X" && e.TryGetProperty("tdur", out _) && threads.Contains((e.GetProperty("pid").GetInt64(), e.GetProperty("tid").GetInt64())))
            .Select(e => e.GetProperty("tdur").GetDouble() / 1000).DefaultIfEmpty().Max();
        await BeginAsync();
        return longest;
    }

    private static string? Text(JsonElement of, string name) => of.TryGetProperty(name, out var value) && value.ValueKind == JsonValueKind.String ? value.GetString() : null;
}
