using System.Collections.Immutable;
using Dyepath.Workspace.Keeping;
using Dyepath.Workspace.Making.Store;
using Dyepath.Workspace.Store;
using Dyepath.Workspace.Tests.Keeping;

namespace Dyepath.Workspace.Tests.Making;

/// <summary>A device's pieces, with as many tabs as ask for them.</summary>
internal sealed class DeviceHere
{
    private readonly Dictionary<string, CopiesHere<Piece>> _copies = [];
    private readonly List<ShelfHere> _tabs = [];

    /// <summary>Of each piece the copy with the longest log.</summary>
    public IReadOnlyDictionary<string, Copy<Piece>> Kept => _copies.Where(c => c.Value.All.Count > 0)
        .ToDictionary(c => c.Key, c => c.Value.All.OrderByDescending(x => x.Content.Log.Length).First());

    /// <summary>It writes nothing, as with a full disk.</summary>
    public bool IsFull { get; set; }

    /// <summary>The number of entries in each thing that was written: of a piece that has only grown, the new ones.</summary>
    public List<int> Written { get; } = [];

    /// <summary>Puts a piece there, as an earlier visit left it.</summary>
    public void Put(string id, Piece piece, string? etag = null)
    {
        Of(id).Clear();
        Of(id).Add(new("0", 1, Lineage.None.With("0", 1), piece, MakingBench.Now)
        {
            Etag = etag,
            IsSent = etag is not null,
            Includes = [],
        });
    }

    public ShelfHere Tab()
    {
        var tab = new ShelfHere(this);
        _tabs.Add(tab);
        return tab;
    }

    internal ImmutableArray<Copy<Piece>> Read(string id) => [.. Of(id).All];

    internal IEnumerable<(string Id, Copy<Piece> Copy)> All => _copies.SelectMany(c => c.Value.All.Select(copy => (c.Key, copy)));

    internal DeviceWriting<Piece> Write(ShelfHere from, string id, WriteDevice<Piece> write)
    {
        if (IsFull)
            throw new IOException("The disk is full.");
        var writing = Of(id).Put(write);
        if (writing.Held is { } held)
        {
            var had = write.Held is { } before && before.Writer == held.Writer && before.Content.IsSameDesign(held.Content) ? before.Content.Log.Length : 0;
            Written.Add(held.Content.Log.Length - had);
            foreach (var tab in _tabs.Where(t => t != from))
                tab.Wrote?.Invoke(id);
        }
        return writing;
    }

    internal void Remove(ShelfHere from, string id)
    {
        _copies.Remove(id);
        foreach (var tab in _tabs.Where(t => t != from))
            tab.Removed?.Invoke(id);
    }

    private CopiesHere<Piece> Of(string id) => _copies.TryGetValue(id, out var copies) ? copies : _copies[id] = new();
}

internal sealed class ShelfHere(DeviceHere device) : IMakingShelf, IDeviceEvents
{
    public Action<string>? Wrote { get; private set; }

    public Action<string>? Removed { get; private set; }

    public Action? Online { get; private set; }

    public Action<bool>? Seen { get; private set; }

    /// <summary>It does not hear of what the other tabs write yet.</summary>
    public bool IsDeaf { get; set; }

    public async Task<ImmutableArray<Copy<Piece>>> ReadAsync(string id)
    {
        ImmutableArray<Copy<Piece>> found = [.. device.Read(id).Select(AsRead)];
        await Task.Yield();
        return found;
    }

    public async Task<DeviceWriting<Piece>> WriteAsync(string id, WriteDevice<Piece> write)
    {
        var writing = device.Write(this, id, write);
        await Task.Yield();
        return writing;
    }

    public Task<PieceCopy[]> ListAsync() => Task.FromResult(device.All.Select(c => PieceCopy.Of(c.Id, c.Copy)).ToArray());

    public Task RemoveAsync(string id)
    {
        device.Remove(this, id);
        return Task.CompletedTask;
    }

    public void ListenTo(string sort, Action<string> wrote, Action<string> removed)
    {
        if (sort == IMakingShelf.Sort)
            (Wrote, Removed) = (id => { if (!IsDeaf) wrote(id); }, removed);
    }

    public void ListenToPage(Action cleared, Action online, Action<bool> seen)
    {
        Online += online;
        Seen += seen;
    }

    /// <summary>Not the object that was written.</summary>
    private static Copy<Piece> AsRead(Copy<Piece> copy)
    {
        var piece = copy.Content;
        return copy with { Content = Piece.Read(piece.Design, piece.Log, piece.ProjectId, piece.Key, piece.BegunAt)! };
    }
}
