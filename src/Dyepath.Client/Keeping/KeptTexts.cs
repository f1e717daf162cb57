namespace Dyepath.Client.Keeping;

/// <summary>
/// The texts of one sort that this tab keeps: the one in view, and those that were left before everything of them was kept, until it is.
/// What happens to the device, the connection or the page is told to all of them.
/// </summary>
public sealed class KeptTexts<T>(KeepingRules<T> rules, IDeviceTexts<T> device, IHostTexts<T> host, TimeProvider clock)
    where T : class
{
    private readonly Dictionary<string, KeptText<T>> _kept = new(StringComparer.Ordinal);

    /// <summary>The text that is on the page; kept here as long as it is.</summary>
    public string? InView { get; set; }

    public KeptText<T> Open(string id)
    {
        LetGo();
        if (_kept.TryGetValue(id, out var known) && known.State.Stage != Stage.Closed)
            return known;
        var kept = _kept[id] = new KeptText<T>(id, rules, device, host, clock);
        kept.Open();
        return kept;
    }

    public KeptText<T> Create(string id, T content)
    {
        LetGo();
        var kept = _kept[id] = new KeptText<T>(id, rules, device, host, clock);
        kept.Create(content);
        return kept;
    }

    /// <summary>The text that was put away for ever is kept no longer.</summary>
    public void Forget(string id) => _kept.Remove(id);

    public void Tell(string id, KeepingEvent<T> happened)
    {
        if (_kept.TryGetValue(id, out var kept))
            kept.Tell(happened);
    }

    public void TellAll(Func<KeepingEvent<T>> happened)
    {
        foreach (var kept in _kept.Values.ToArray())
            kept.Tell(happened());
    }

    /// <summary>Texts of which everything is kept, and which nobody looks at.</summary>
    private void LetGo()
    {
        foreach (var (id, kept) in _kept
            .Where(k => k.Key != InView && k.Value.State is { IsAtRest: true, IsSent: true } or { Stage: Stage.Closed }).ToArray())
            _kept.Remove(id);
    }
}
