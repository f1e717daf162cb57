using Dyepath.Client.Store;
using Dyepath.Client.Work;
using Dyepath.Contracts;

namespace Dyepath.Client.Shelf;

/// <param name="Waiting">Changed on this device; the host has not got it yet.</param>
public sealed record ShelfEntry(string Id, string Name, DateTimeOffset UpdatedAt, SwatchPicture? Swatch, bool Waiting);

/// <summary>Everything that can be done to projects without opening them, on the host and on this device.</summary>
public sealed class ProjectShelf(ServerShelf server, IDeviceShelf device)
{
    private const string NeedsHost = "The host cannot be reached just now: try again once you are connected.";

    /// <summary>Projects are on this device alone: there is no host, or no connection.</summary>
    public bool Away { get; private set; }

    /// <summary>The host asks for its access token first.</summary>
    public bool NeedsSignIn { get; private set; }

    /// <summary>Newest change first.</summary>
    public async Task<IReadOnlyList<ShelfEntry>> ListAsync(bool archived)
    {
        var answer = await server.ListAsync(archived);
        Away = answer.Reply != ServerReply.Done;
        NeedsSignIn = answer.Reply == ServerReply.SignIn;
        var here = await HereAsync();
        if (answer.Value is not { } stored)
            return [.. here.Where(r => r.Archived == archived).Select(r => new ShelfEntry(r.Id, r.Name, r.UpdatedAt, r.Swatch, true)).OrderByDescending(e => e.UpdatedAt)];
        var waiting = here.Where(r => r.Dirty).ToDictionary(r => r.Id);
        var known = stored.Select(s => s.Id).ToHashSet();
        return
        [
            .. stored.Select(s => waiting.TryGetValue(s.Id, out var mine)
                ? new ShelfEntry(s.Id, mine.Name, mine.UpdatedAt, mine.Swatch ?? s.Swatch, true)
                : new ShelfEntry(s.Id, s.Name, s.UpdatedAt, s.Swatch, false))
                .Concat(waiting.Values.Where(r => r.Etag is null && !known.Contains(r.Id) && r.Archived == archived)
                    .Select(r => new ShelfEntry(r.Id, r.Name, r.UpdatedAt, r.Swatch, true)))
                .OrderByDescending(e => e.UpdatedAt),
        ];
    }

    /// <summary>The document, the latest that can be reached; null with nothing.</summary>
    public async Task<string?> TextAsync(string id) =>
        await device.GetAsync(id) is { Dirty: true, Text: { } mine } ? mine
        : (await server.GetAsync(id)).Value is { } stored ? stored.Text
        : (await device.GetAsync(id))?.Text;

    /// <returns>What went wrong, in words, or null.</returns>
    public async Task<string?> RenameAsync(string id, string name)
    {
        var record = await device.GetAsync(id);
        var stored = record is { Dirty: true } ? null : (await server.GetAsync(id)).Value;
        if ((stored?.Text ?? record?.Text) is not { } text || ProjectDocument.TryParse(text) is not { } document)
            return NeedsHost;
        document.Set("title", name);
        if (stored is not null)
        {
            var answer = await server.SaveAsync(id, document.Text, stored.Etag);
            return answer.Reply switch
            {
                ServerReply.Done => await Forget(record),
                ServerReply.ChangedElsewhere => "It was changed in another place at this moment: try again.",
                ServerReply.Away => NeedsHost,
                _ => answer.Why,
            };
        }
        return await device.PutAsync(record! with { Text = document.Text, Name = name, Dirty = true, UpdatedAt = DateTimeOffset.UtcNow }) is null
            ? "It is being changed in another tab: try again."
            : null;
    }

    public async Task<string?> CopyAsync(string id)
    {
        if (await device.GetAsync(id) is not { Dirty: true } && await server.PostAsync(ApiPaths.Copy(id)) is { Reply: not ServerReply.Away } answer)
            return answer.Reply == ServerReply.Done ? null : answer.Why;
        if (await TextAsync(id) is not { } text || ProjectDocument.TryParse(text) is not { } document)
            return NeedsHost;
        var swatch = (await device.GetAsync(id))?.Swatch;
        document.Set("title", $"{document.Title} (copy)");
        await AddAsync(document, swatch);
        return null;
    }

    public async Task<string?> ArchiveAsync(string id, bool archived)
    {
        if (await device.GetAsync(id) is { Etag: null } alone)
        {
            await device.PutAsync(alone with { Archived = archived });
            return null;
        }
        var answer = await server.PostAsync(archived ? ApiPaths.Archive(id) : ApiPaths.Restore(id));
        return answer.Reply switch { ServerReply.Done => null, ServerReply.Away => NeedsHost, _ => answer.Why };
    }

    public async Task<string?> DeleteAsync(string id)
    {
        var record = await device.GetAsync(id);
        if (record is not { Etag: null })
        {
            var answer = await server.DeleteAsync(id);
            if (answer.Reply is ServerReply.Away)
                return NeedsHost;
            if (answer.Reply is not (ServerReply.Done or ServerReply.Missing))
                return answer.Why;
        }
        if (record is not null)
            await device.RemoveAsync(id);
        return null;
    }

    /// <summary>Puts a document on the shelf without opening it.</summary>
    public async Task<string> AddAsync(ProjectDocument document, SwatchPicture? swatch = null)
    {
        var id = Guid.NewGuid().ToString();
        if ((await server.CreateAsync(id, document.Text)).Reply != ServerReply.Done)
            await device.PutAsync(new DeviceRecord(id, document.Title, document.Text, null, true, 0, false, DateTimeOffset.UtcNow, swatch));
        return id;
    }

    /// <summary>What this device keeps of a project is older than what the host has now.</summary>
    private async Task<string?> Forget(DeviceRecord? record)
    {
        if (record is not null)
            await device.RemoveAsync(record.Id);
        return null;
    }

    private async Task<DeviceRecord[]> HereAsync()
    {
        try
        {
            return await device.ListAsync();
        }
        catch (System.Runtime.InteropServices.JavaScript.JSException)
        {
            // A private window may have no store of its own; the host's projects are still to be had.
            return [];
        }
    }
}
