using Dyepath.Client.Making.Store;
using Dyepath.Core.Making.Log;

namespace Dyepath.Client.Tests.Making;

/// <summary>A device's pieces, with as many tabs as ask for them.</summary>
internal sealed class DeviceHere
{
    private readonly List<ShelfHere> _tabs = [];

    public Dictionary<string, KeptMaking> Kept { get; } = [];

    /// <summary>It writes nothing, as with a full disk.</summary>
    public bool IsFull { get; set; }

    /// <summary>The length of each thing that was written: an entry is one.</summary>
    public List<int> Written { get; } = [];

    public ShelfHere Tab()
    {
        var tab = new ShelfHere(this);
        _tabs.Add(tab);
        return tab;
    }

    internal bool Write(ShelfHere from, string id, int entries, bool may, Func<KeptMaking> what)
    {
        if (IsFull)
            throw new IOException("The disk is full.");
        if (!may)
            return false;
        Written.Add(entries);
        Kept[id] = what();
        Tell(from, id);
        return true;
    }

    internal void Tell(ShelfHere from, string id)
    {
        foreach (var tab in _tabs.Where(t => t != from))
            tab.Changed?.Invoke(id);
    }
}

internal sealed class ShelfHere(DeviceHere device) : IMakingShelf
{
    public Action<string>? Changed { get; private set; }

    public Action? Online { get; private set; }

    public Action<bool>? Seen { get; private set; }

    /// <summary>The other tabs do not hear of what is written yet.</summary>
    public bool IsDeaf { get; set; }

    public async Task<KeptMaking?> GetAsync(string id)
    {
        await Task.Yield();
        return device.Kept.GetValueOrDefault(id);
    }

    public Task<MakingHeader[]> ListAsync() => Task.FromResult(device.Kept.Values.Select(k => k.Header with
    {
        Text = null,
        Entries = k.Entries.Length,
        UpdatedAt = k.Entries.IsEmpty ? k.Header.UpdatedAt : k.Entries[^1].At,
    }).ToArray());

    public Task<bool> CreateAsync(KeptMaking making) =>
        Write(making.Header.Id, making.Entries.Length, !device.Kept.ContainsKey(making.Header.Id), _ => making);

    public Task<bool> AppendAsync(string id, int revision, int n, Entry entry) => Write(
        id, 1, device.Kept.TryGetValue(id, out var kept) && kept.Header.Revision == revision && kept.Entries.Length == n,
        now => now! with { Entries = now.Entries.Add(entry) });

    public Task<bool> PutHeaderAsync(MakingHeader header) => Write(
        header.Id, 0, device.Kept.TryGetValue(header.Id, out var kept) && kept.Header.Revision == header.Revision, now => now! with { Header = header });

    public Task<bool> ReplaceAsync(KeptMaking making, int had) => Write(
        making.Header.Id, making.Entries.Length,
        device.Kept.TryGetValue(making.Header.Id, out var kept) && kept.Header.Revision == making.Header.Revision && kept.Entries.Length == had,
        _ => making with { Header = making.Header with { Revision = making.Header.Revision + 1 } });

    public Task RemoveAsync(string id)
    {
        device.Kept.Remove(id);
        device.Tell(this, id);
        return Task.CompletedTask;
    }

    public void Listen(Action<string> changed, Action online, Action<bool> seen) =>
        (Changed, Online, Seen) = (id => { if (!IsDeaf) changed(id); }, online, seen);

    private async Task<bool> Write(string id, int entries, bool may, Func<KeptMaking?, KeptMaking> what)
    {
        var written = device.Write(this, id, entries, may, () => what(device.Kept.GetValueOrDefault(id)));
        await Task.Yield();
        return written;
    }
}
