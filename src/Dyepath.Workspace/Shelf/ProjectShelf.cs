using System.Collections.Immutable;
using Dyepath.Contracts;
using Dyepath.Workspace.Garment;
using Dyepath.Workspace.Keeping;
using Dyepath.Workspace.Store;
using Dyepath.Workspace.Work;

namespace Dyepath.Workspace.Shelf;

/// <summary>Where the latest text of a project is.</summary>
public enum Whereabouts
{
    /// <summary>The host has it.</summary>
    OnHost,

    /// <summary>Changed on this device; the host has not got it yet.</summary>
    Waiting,

    /// <summary>The host had it, and has it no more; this device still does.</summary>
    OnlyHere,
}

/// <summary>A project as the shelf shows it.</summary>
/// <param name="Id">Of the project.</param>
/// <param name="Name">The document's title.</param>
/// <param name="UpdatedAt">When the text was last changed, on the host or here.</param>
/// <param name="Swatch">Missing where none was drawn yet.</param>
/// <param name="Where">Where its latest text is.</param>
public sealed record ShelfEntry(string Id, string Name, DateTimeOffset UpdatedAt, SwatchPicture? Swatch, Whereabouts Where);

/// <summary>Everything that can be done to projects without opening them, on the host and on this device.</summary>
public sealed class ProjectShelf(ServerShelf server, IDeviceShelf device, Keeper keeper)
{
    private readonly Dictionary<string, (DateTimeOffset At, string Words)> _apart = [];

    internal const string Unread = "It cannot be read: the host cannot be reached just now, or what it has is damaged. Open it to see which.";

    private const string NeedsHost = "The host cannot be reached just now: try again once you are connected.";

    /// <summary>Projects are on this device alone: there is no host, or no connection.</summary>
    public bool Away { get; private set; }

    /// <summary>The host asks for its access token first.</summary>
    public bool NeedsSignIn { get; private set; }

    /// <summary>Why this device keeps nothing, in words; null where it does.</summary>
    public string? DeviceWhy { get; private set; }

    /// <summary>Newest change first. What the host has not got yet is sent.</summary>
    public async Task<IReadOnlyList<ShelfEntry>> ListAsync(bool archived)
    {
        var answer = await server.ListAsync(archived);
        Away = answer.Reply is not (ServerReply.Done or ServerReply.SignIn);
        NeedsSignIn = answer.Reply == ServerReply.SignIn;
        var here = await HereAsync();
        if (answer.Value is not { } stored)
        {
            return [.. here.Values.Where(r => r.Archived == archived)
                .Select(r => new ShelfEntry(r.Id, r.Name, r.At, r.Swatch, Whereabouts.Waiting)).OrderByDescending(e => e.UpdatedAt)];
        }
        var known = stored.Select(s => s.Id).ToHashSet();
        var missing = here.Values.Where(r => !known.Contains(r.Id)).ToArray();
        if (missing.Any(r => r.Etag is not null))
        {
            // They may be on the host's other list; where that one is not to be had, nothing is said of them.
            var there = (await server.ListAsync(!archived)).Value?.Select(s => s.Id).ToHashSet();
            missing = [.. missing.Where(r => !r.IsSent || there?.Contains(r.Id) == false).Where(r => there?.Contains(r.Id) != true)];
        }
        foreach (var waiting in here.Values.Where(r => !r.IsSent))
            keeper.Send(waiting.Id);
        return
        [
            .. stored.Select(s => here.TryGetValue(s.Id, out var mine) && !mine.IsSent
                ? new ShelfEntry(s.Id, mine.Name, mine.At, mine.Swatch ?? s.Swatch, Whereabouts.Waiting)
                : new ShelfEntry(s.Id, s.Name, s.UpdatedAt, s.Swatch, Whereabouts.OnHost))
                .Concat(missing.Where(r => r.Archived == archived)
                    .Select(r => new ShelfEntry(r.Id, r.Name, r.At, r.Swatch, r.IsSent ? Whereabouts.OnlyHere : Whereabouts.Waiting)))
                .OrderByDescending(e => e.UpdatedAt),
        ];
    }

    /// <summary>Of projects that are titled alike, what tells each apart: its garment and yarn, by the project's id.</summary>
    public async Task<IReadOnlyDictionary<string, string>> TellApartAsync(IReadOnlyList<ShelfEntry> entries)
    {
        ArgumentNullException.ThrowIfNull(entries);
        var alike = entries.GroupBy(e => e.Name).Where(group => group.Count() > 1).SelectMany(group => group).ToArray();
        var told = await Task.WhenAll(alike.Select(async entry => (entry.Id, Words: await ApartAsync(entry))));
        return told.Where(t => t.Words is not null).ToDictionary(t => t.Id, t => t.Words!);
    }

    /// <summary>Read once, as long as the project stays as it is.</summary>
    private async Task<string?> ApartAsync(ShelfEntry entry)
    {
        if (_apart.TryGetValue(entry.Id, out var known) && known.At == entry.UpdatedAt)
            return known.Words;
        if (await TextAsync(entry.Id) is not { } text || ProjectDocument.TryParse(text) is not { } document)
            return null;
        var words = Apart(document);
        _apart[entry.Id] = (entry.UpdatedAt, words);
        return words;
    }

    /// <summary>Such as <c>Cardigan in Harbour</c>.</summary>
    internal static string Apart(ProjectDocument document)
    {
        var kind = GarmentShapes.All.FirstOrDefault(k => k.Name == document.Typed("garment.shape"))?.Title ?? "No garment yet";
        return document.Typed("yarn.name") is { Length: > 0 } yarn ? $"{kind} in {yarn}" : kind;
    }

    /// <summary>A title that no project of the shelf has: the next number behind it, from 2.</summary>
    public static string FreeTitle(string title, IEnumerable<string> taken)
    {
        var names = taken.ToHashSet(StringComparer.OrdinalIgnoreCase);
        return names.Contains(title)
            ? Enumerable.Range(2, names.Count).Select(n => FormattableString.Invariant($"{title} {n}")).First(name => !names.Contains(name))
            : title;
    }

    /// <summary>The document, the latest that can be reached; null with nothing.</summary>
    public async Task<string?> TextAsync(string id) => (await ReadAsync(id))?.Text;

    /// <returns>What went wrong, in words, or null.</returns>
    public Task<string?> RenameAsync(string id, string name) => keeper.ChangeAsync(id, text =>
    {
        var document = ProjectDocument.TryParse(text);
        document?.Set("title", name);
        return document?.Text;
    });

    /// <summary>Puts a copy on the shelf under a title that says so; returns what went wrong, in words, or null.</summary>
    public async Task<string?> CopyAsync(string id)
    {
        if (await ReadAsync(id) is not { } text)
            return Unread;
        if (ProjectDocument.TryParse(text.Text) is not { } document)
            return "What is stored under this name is not a project document.";
        document.Set("title", $"{document.Title} (copy)");
        await keeper.AddAsync(new ProjectText(document.Text, document.Title, text.Swatch));
        return null;
    }

    /// <summary>Takes a project off the shelf, or puts it back; returns what went wrong, in words, or null.</summary>
    public async Task<string?> ArchiveAsync(string id, bool archived)
    {
        var answer = await server.PostAsync(archived ? ApiPaths.Archive(id) : ApiPaths.Restore(id));
        if (answer.Reply == ServerReply.Done)
            return null;
        if (answer.Reply is ServerReply.Missing or ServerReply.Away && (await HereAsync()).TryGetValue(id, out var mine)
            && (mine.Etag is null || answer.Reply == ServerReply.Missing))
        {
            return await OnDeviceAsync(() => device.ArchiveAsync(id, archived));
        }
        return answer.Reply is ServerReply.Away or ServerReply.Busy ? NeedsHost : answer.Why;
    }

    /// <summary>Gives the host again what it lost.</summary>
    public Task<string?> PutBackAsync(string id) => keeper.SendAsync(id);

    /// <summary>For ever, from the host and from this device.</summary>
    public async Task<string?> DeleteAsync(string id)
    {
        var mine = (await HereAsync()).GetValueOrDefault(id);
        if ((await server.DeleteAsync(id)).WhyStillThere(wasSent: mine is not { Etag: null }) is { } why)
            return why;
        // Also where the device has no copy, as the page may have one.
        keeper.Forget(id);
        return mine is null ? null : await RemoveHereAsync(id);
    }

    /// <summary>From this device alone: the host has it no more.</summary>
    public async Task<string?> RemoveHereAsync(string id)
    {
        keeper.Forget(id);
        return await OnDeviceAsync(() => device.RemoveAsync(id));
    }

    /// <summary>Puts a document on the shelf without opening it.</summary>
    public Task<string> AddAsync(ProjectDocument document, SwatchPicture? swatch = null) =>
        keeper.AddAsync(new ProjectText(document.Text, document.Title, swatch));

    private static async Task<string?> OnDeviceAsync(Func<Task> work)
    {
        try
        {
            await work();
            return null;
        }
        catch (IOException fault)
        {
            return $"This device did not do it: {fault.Message}.";
        }
    }

    /// <summary>To be looked at: nothing is sent by it.</summary>
    private async Task<ProjectText?> ReadAsync(string id)
    {
        var copies = ImmutableArray<Copy<ProjectText>>.Empty;
        try
        {
            copies = await device.ReadAsync(id);
        }
        catch (IOException)
        {
            // The host may have it.
        }
        var mine = copies.OrderBy(c => c.IsSent).ThenByDescending(c => c.At).FirstOrDefault();
        return mine is { IsSent: false } ? mine.Content
            : (await server.ReadAsync(id)) is HostHas<ProjectText> { Content: var stored } ? stored with { Swatch = mine?.Content.Swatch }
            : mine?.Content;
    }

    /// <summary>Of each project the copy that matters most: one that the host has not got, else the latest.</summary>
    private async Task<IReadOnlyDictionary<string, ProjectCopy>> HereAsync()
    {
        try
        {
            var copies = await device.ListAsync();
            DeviceWhy = null;
            return copies.GroupBy(c => c.Id).ToDictionary(c => c.Key, c => c.OrderBy(x => x.IsSent).ThenByDescending(x => x.At).First());
        }
        catch (IOException fault)
        {
            // A private window may have no store of its own; the host's projects are still to be had.
            DeviceWhy = fault.Message;
            return new Dictionary<string, ProjectCopy>();
        }
    }
}
