using System.Collections.Immutable;
using Dyepath.Workspace.Work;

namespace Dyepath.Workspace.Keeping;

/// <summary>
/// Copies of texts on this device, by every tab that wrote one. <see cref="IOException"/> where the device neither reads nor writes.
/// </summary>
public interface IDeviceTexts<T>
    where T : class
{
    /// <summary>The writer that this tab last was, which it forgets when it is closed, and not when it is reloaded.</summary>
    string? LastWriter(string id) => null;

    /// <summary>For <see cref="LastWriter"/>, once this tab is reloaded.</summary>
    void RememberWriter(string id, string writer)
    {
    }

    /// <summary>Every copy of a text; empty where there is none.</summary>
    Task<ImmutableArray<Copy<T>>> ReadAsync(string id);

    /// <summary>
    /// Writes a copy and takes away those that it follows, in one go; durable, and read back, when it returns. What the copies taken away
    /// knew of the host is then in this one.
    /// </summary>
    Task<DeviceWriting<T>> WriteAsync(string id, WriteDevice<T> write);
}

/// <param name="Held">As it was read back; missing where nothing was written, because another tab's copy goes further.</param>
/// <param name="Others">There are copies that it does not follow.</param>
public sealed record DeviceWriting<T>(Copy<T>? Held, bool Others)
    where T : class;

/// <summary>Texts on the host. A failing connection is an answer, never an exception.</summary>
public interface IHostTexts<T>
    where T : class
{
    /// <summary>The text as the host has it, or why there is none.</summary>
    Task<HostSaid<T>> ReadAsync(string id);

    /// <summary>Sends a text in place of that under the ETag; missing, the host should have none.</summary>
    Task<HostSaid<T>> WriteAsync(string id, T content, string? etag, bool leaving);
}

/// <summary>
/// Does what <see cref="KeepingMachine{T}"/> asks for, and tells it what came of it. It decides nothing. It is used from one thread, as a
/// page has.
/// </summary>
public sealed class KeptText<T>
    where T : class
{
    /// <summary>A device that takes longer keeps nothing: what holds its store up may never end.</summary>
    private static readonly TimeSpan LongestWait = TimeSpan.FromSeconds(30);

    private readonly KeepingMachine<T> _machine;
    private readonly KeepingRules<T> _rules;
    private readonly IDeviceTexts<T> _device;
    private readonly IHostTexts<T> _host;
    private readonly TimeProvider _clock;
    private readonly Queue<KeepingEvent<T>> _heard = new();
    private readonly List<(Func<KeepingState<T>, bool> When, TaskCompletionSource Then)> _waiting = [];
    private bool _telling;
    private bool _remembered;

    /// <summary>Does nothing until <see cref="Open"/> or <see cref="Create"/>.</summary>
    public KeptText(string id, KeepingRules<T> rules, IDeviceTexts<T> device, IHostTexts<T> host, TimeProvider clock)
    {
        (Id, _rules, _device, _host, _clock) = (id, rules, device, host, clock);
        _machine = new KeepingMachine<T>(rules);
        State = new KeepingState<T> { Writer = "" };
    }

    /// <summary>What the page may show of the state is another.</summary>
    public event Action? Changed;

    /// <summary>Another text is in view from now on, which came from elsewhere.</summary>
    public event Action<ShowText<T>>? Replaced;

    /// <summary>Of the text, on this device and on the host alike.</summary>
    public string Id { get; }

    /// <summary>As the machine last left it.</summary>
    public KeepingState<T> State { get; private set; }

    /// <summary>What the page says of where the last change is.</summary>
    public SaveState Shown => State.Shown(_rules);

    /// <summary>Begins to look for the text on this device and on the host.</summary>
    public void Open() => Take(_machine.Open(NewWriter(_clock), _device.LastWriter(Id)));

    /// <summary>Begins with a text that is nowhere yet.</summary>
    public void Create(T content) => Take(_machine.Create(NewWriter(_clock), content));

    /// <summary>What is heard while something else is being told waits its turn.</summary>
    public void Tell(KeepingEvent<T> happened)
    {
        _heard.Enqueue(happened);
        if (_telling)
            return;
        _telling = true;
        try
        {
            while (_heard.TryDequeue(out var next))
                Take(_machine.On(State, next));
        }
        finally
        {
            _telling = false;
        }
    }

    /// <summary>Waits until the state is such.</summary>
    public Task UntilAsync(Func<KeepingState<T>, bool> when)
    {
        if (when(State))
            return Task.CompletedTask;
        var then = new TaskCompletionSource(TaskCreationOptions.RunContinuationsAsynchronously);
        _waiting.Add((when, then));
        return then.Task;
    }

    /// <summary>Begins with the time, so that older names sort first; not to be guessed, so that no two tabs share one.</summary>
    private static string NewWriter(TimeProvider clock) => $"{clock.GetUtcNow().ToUnixTimeMilliseconds():x12}{Guid.NewGuid():N}";

    private void Take((KeepingState<T> State, ImmutableArray<KeepingCommand<T>> Commands) next)
    {
        var before = Visible;
        State = next.State;
        foreach (var command in next.Commands)
            _ = DoAsync(command);
        foreach (var show in next.Commands.OfType<ShowText<T>>())
            Replaced?.Invoke(show);
        foreach (var waiting in _waiting.Where(w => w.When(State)).ToArray())
        {
            _waiting.Remove(waiting);
            waiting.Then.SetResult();
        }
        if (before != Visible)
            Changed?.Invoke();
    }

    /// <summary>What a page may show of the state.</summary>
    private (SaveState, Stage, T?, T?, bool, string?, HostTrouble, string) Visible =>
        (Shown, State.Stage, State.Mine, State.Theirs?.Content, State.IsHeld, State.DeviceWhy, State.Trouble, State.HostWhy);

    private async Task DoAsync(KeepingCommand<T> command)
    {
        switch (command)
        {
            case SetAlarm<T> alarm:
                await Task.Delay(alarm.After, _clock);
                Tell(new Rang<T>(alarm.Kind, alarm.Number));
                break;
            case ReadHost<T> or WriteHost<T>:
                Tell(await AskHostAsync(command));
                break;
            case ReadDevice<T> or WriteDevice<T>:
                Tell(await AskDeviceAsync(command));
                break;
        }
    }

    private async Task<KeepingEvent<T>> AskHostAsync(KeepingCommand<T> command)
    {
        try
        {
            return command is WriteHost<T> write
                ? await _host.WriteAsync(Id, write.Content, write.Etag, write.Leaving) : await _host.ReadAsync(Id);
        }
#pragma warning disable CA1031 // Whatever goes wrong, the machine hears of it, or it would wait for ever.
        catch (Exception fault)
#pragma warning restore CA1031
        {
            Faults.Log(fault);
            return new HostDidNot<T>(HostTrouble.Busy);
        }
    }

    private async Task<KeepingEvent<T>> AskDeviceAsync(KeepingCommand<T> command)
    {
        try
        {
            if (command is not WriteDevice<T> write)
                return new DeviceHas<T>(await _device.ReadAsync(Id).WaitAsync(LongestWait, _clock));
            var now = write with { Copy = write.Copy with { At = _clock.GetUtcNow() } };
            var writing = await _device.WriteAsync(Id, now).WaitAsync(LongestWait, _clock);
            if (writing.Held is not null && !_remembered)
            {
                _device.RememberWriter(Id, write.Copy.Writer);
                _remembered = true;
            }
            return writing.Held is { } held ? new DeviceHolds<T>(held, write.Edit, write.Stamp, writing.Others) : new DeviceIsAhead<T>();
        }
        catch (TimeoutException)
        {
            return new DeviceFailed<T>("This device did not keep it: it does not answer.");
        }
        catch (IOException fault)
        {
            return new DeviceFailed<T>($"This device did not keep it: {fault.Message}.");
        }
#pragma warning disable CA1031 // As above.
        catch (Exception fault)
#pragma warning restore CA1031
        {
            Faults.Log(fault);
            return new DeviceFailed<T>("This device did not keep it: something went wrong in this page.");
        }
    }
}
