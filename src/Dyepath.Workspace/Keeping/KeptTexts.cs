namespace Dyepath.Workspace.Keeping;

/// <summary>
/// The texts of one sort that this tab keeps: the one in view, and those that were left before everything of them was kept, until it is.
/// What happens to the device, the connection or the page is told to all of them, and what other tabs do to one of them to that one.
/// </summary>
public sealed class KeptTexts<T>
    where T : class
{
    private readonly KeepingRules<T> _rules;
    private readonly IDeviceTexts<T> _device;
    private readonly IHostTexts<T> _host;
    private readonly TimeProvider _clock;
    private readonly Dictionary<string, KeptText<T>> _kept = new(StringComparer.Ordinal);

    /// <param name="sort">Under which the tabs tell each other of these texts.</param>
    public KeptTexts(
        string sort, KeepingRules<T> rules, IDeviceTexts<T> device, IHostTexts<T> host, IDeviceEvents events, TimeProvider clock)
    {
        ArgumentNullException.ThrowIfNull(events);
        (_rules, _device, _host, _clock) = (rules, device, host, clock);
        events.ListenTo(sort, id => Tell(id, new OtherTabWrote<T>()), id => Tell(id, new PutAwayElsewhere<T>()));
        events.ListenToPage(() => TellAll(new DeviceCleared<T>()), () => TellAll(new Connected<T>()), seen => TellAll(new Seen<T>(seen)));
    }

    /// <summary>The text that is on the page; kept here as long as it is.</summary>
    public string? InView { get; set; }

    /// <summary>The text that is kept already, or one that is now looked for.</summary>
    public KeptText<T> Open(string id)
    {
        LetGo();
        if (_kept.TryGetValue(id, out var known) && known.State.Stage != Stage.Closed)
            return known;
        var kept = _kept[id] = new KeptText<T>(id, _rules, _device, _host, _clock);
        kept.Open();
        return kept;
    }

    /// <summary>A text that is kept already, or being opened.</summary>
    public KeptText<T>? Find(string id) => _kept.GetValueOrDefault(id);

    /// <summary>Keeps a text that is nowhere yet.</summary>
    public KeptText<T> Create(string id, T content)
    {
        LetGo();
        var kept = _kept[id] = new KeptText<T>(id, _rules, _device, _host, _clock);
        kept.Create(content);
        return kept;
    }

    /// <summary>The text was put away for ever: it is kept no longer, and never made anew.</summary>
    public void Forget(string id)
    {
        Tell(id, new PutAwayElsewhere<T>());
        _kept.Remove(id);
    }

    private void Tell(string id, KeepingEvent<T> happened)
    {
        if (_kept.TryGetValue(id, out var kept))
            kept.Tell(happened);
    }

    private void TellAll(KeepingEvent<T> happened)
    {
        foreach (var kept in _kept.Values.ToArray())
            kept.Tell(happened);
    }

    /// <summary>Texts of which everything is kept, and which nobody looks at.</summary>
    private void LetGo()
    {
        foreach (var (id, kept) in _kept
            .Where(k => k.Key != InView && k.Value.State is { IsAtRest: true, IsSent: true } or { Stage: Stage.Closed }).ToArray())
            _kept.Remove(id);
    }
}
