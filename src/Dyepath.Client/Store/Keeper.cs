using Dyepath.Client.Work;
using Dyepath.Contracts;

namespace Dyepath.Client.Store;

/// <summary>Where the open project's latest change is.</summary>
public enum SaveState
{
    /// <summary>On the host and on this device.</summary>
    Saved,
    Saving,

    /// <summary>On this device; the host gets it when it can be reached.</summary>
    OnDevice,

    /// <summary>Another tab or device has changed the project too: the designer chooses.</summary>
    Conflict,

    /// <summary>Neither the host nor this device took it; <see cref="Keeper.Why"/> says what they said.</summary>
    Failed,

    /// <summary>Of a piece: another tab went on with it first, so that the last entry was not taken.</summary>
    Elsewhere,
}

/// <summary>
/// Keeps the open project: every change at once on this device, then on the host. Nothing is overwritten that this tab has not
/// read: where another tab or device was quicker, both texts are kept until the designer chooses.
/// </summary>
public sealed class Keeper
{
    private static readonly TimeSpan Quiet = TimeSpan.FromMilliseconds(700);
    private static readonly TimeSpan Again = TimeSpan.FromSeconds(15);

    private readonly Workbench _workbench;
    private readonly IDeviceShelf _device;
    private readonly ServerShelf _server;
    private DeviceRecord? _record;
    private bool _writing;
    private bool _sending;
    private bool _dirtyOnDevice;
    private int _edits;
    private bool _persisted;
    private bool _listening;

    public Keeper(Workbench workbench, IDeviceShelf device, ServerShelf server)
    {
        (_workbench, _device, _server) = (workbench, device, server);
        _workbench.Edited += Edited;
    }

    public event Action? Changed;

    public string? Id => _record?.Id;

    public SaveState State { get; private set; }

    /// <summary>Why saving failed, in the host's words.</summary>
    public string Why { get; private set; } = "";

    /// <summary>The other text in a conflict.</summary>
    public StoredText? Theirs { get; private set; }

    /// <summary>The page has no host: projects live on this device alone.</summary>
    public bool Alone { get; private set; }

    /// <summary>The host asks for its access token before it takes anything.</summary>
    public bool NeedsSignIn { get; private set; }

    /// <summary>Opens a project from wherever its latest text is.</summary>
    public async Task<ServerReply> OpenAsync(string id)
    {
        if (!_listening)
        {
            _listening = true;
            _device.Listen(other => _ = ChangedInOtherTab(other), () => _ = Send());
        }
        if (Id == id && _workbench.Document is not null)
            return ServerReply.Done;
        _record = null;
        Theirs = null;
        var mine = await _device.GetAsync(id);
        var answer = await _server.GetAsync(id);
        if (answer.Value is { } stored)
        {
            if (mine is { Dirty: true, Text: { } text })
            {
                _record = mine;
                if (!_workbench.Open(text))
                    return ServerReply.Refused;
                if (mine.Etag == stored.Etag || text == stored.Text)
                {
                    Say(SaveState.Saving);
                    _ = Send();
                }
                else
                    Conflict(stored);
                return ServerReply.Done;
            }
            if (!_workbench.Open(stored.Text))
                return ServerReply.Refused;
            _record = Describe(id, mine?.Revision ?? 0) with { Text = stored.Text, Etag = stored.Etag };
            await Write();
            Say(SaveState.Saved);
            return ServerReply.Done;
        }
        Alone = answer.Reply == ServerReply.Away;
        if (mine?.Text is not { } kept)
            return answer.Reply;
        if (!_workbench.Open(kept))
            return ServerReply.Refused;
        // The host no longer has what it once had: it is made anew there.
        _record = answer.Reply == ServerReply.Missing ? mine with { Etag = null, Dirty = true } : mine;
        Say(SaveState.OnDevice);
        _ = Send();
        return ServerReply.Done;
    }

    /// <summary>Puts a new project on this device and, where there is one, on the host.</summary>
    /// <returns>Its id.</returns>
    public async Task<string> CreateAsync(string text)
    {
        var id = Guid.NewGuid().ToString();
        _workbench.Open(text);
        Theirs = null;
        _record = Describe(id, 0) with { Dirty = true };
        await Write();
        Say(SaveState.OnDevice);
        await Send();
        return id;
    }

    /// <summary>Ends a conflict with this tab's text; the other stays among the host's versions.</summary>
    public Task KeepMine() => Settle(Theirs?.Etag, _workbench.Document?.Text);

    /// <summary>Ends a conflict with the other text; this tab's can be had back by undo.</summary>
    public Task TakeTheirs()
    {
        if (Theirs is { } theirs)
            _workbench.Replace(theirs.Text, "taking the other version", saved: true);
        return Settle(Theirs?.Etag, Theirs?.Text);
    }

    /// <summary>Ends a conflict by keeping this tab's text as a project of its own.</summary>
    /// <returns>The new project's id.</returns>
    public async Task<string> KeepBoth()
    {
        var mine = ProjectDocument.TryParse(_workbench.Document!.Text)!;
        mine.Set("title", $"{mine.Title} (my copy)");
        var (theirs, record) = (Theirs!, _record!);
        if (await _device.GetAsync(record.Id) is { } latest)
            await _device.PutAsync(latest with { Text = theirs.Text, Etag = theirs.Etag, Dirty = false });
        return await CreateAsync(mine.Text);
    }

    private async Task Settle(string? etag, string? text)
    {
        if (_record is not { } record || text is null)
            return;
        Theirs = null;
        var latest = await _device.GetAsync(record.Id);
        _record = Describe(record.Id, latest?.Revision ?? 0) with { Etag = etag is { Length: > 0 } ? etag : record.Etag, Dirty = true };
        State = SaveState.Saving;
        await Write();
        await Send();
    }

    private void Edited()
    {
        _edits++;
        _dirtyOnDevice = true;
        if (State != SaveState.Conflict)
            Say(SaveState.Saving);
        _ = WriteThenSend();
    }

    private async Task WriteThenSend()
    {
        if (_writing || _record is null)
            return;
        _writing = true;
        while (_dirtyOnDevice && _record is { } record)
        {
            _dirtyOnDevice = false;
            _record = Describe(record.Id, record.Revision) with { Etag = record.Etag, Dirty = true };
            await Write();
        }
        _writing = false;
        if (!_persisted)
        {
            _persisted = true;
            await _device.PersistAsync();
        }
        var edits = _edits;
        await Task.Delay(Quiet);
        if (edits == _edits)
            await Send();
    }

    private async Task Write()
    {
        if (_record is not { } record || State == SaveState.Conflict)
            return;
        try
        {
            if (await _device.PutAsync(record) is { } written)
            {
                // Meanwhile another project may have been opened.
                if (_record?.Id == record.Id)
                    _record = written;
            }
            else if (await _device.GetAsync(record.Id) is { Text: { } text } other)
            {
                if (text == record.Text)
                    _record = record with { Revision = other.Revision, Etag = other.Etag };
                else
                    Conflict(new StoredText(text, other.Etag ?? ""));
            }
        }
        catch (System.Runtime.InteropServices.JavaScript.JSException fault)
        {
            // A full disk or a private window: the host may still take it.
            Why = NotKept(fault);
        }
    }

    private async Task Send()
    {
        if (_sending || _record is not { Dirty: true, Text: { } text } record || State == SaveState.Conflict)
            return;
        _sending = true;
        var answer = record.Etag is { } etag
            ? await _server.SaveAsync(record.Id, text, etag)
            : await _server.CreateAsync(record.Id, text);
        _sending = false;
        if (_record?.Id != record.Id)
            return;
        Alone = answer.Reply == ServerReply.Away && record.Etag is null;
        NeedsSignIn = answer.Reply == ServerReply.SignIn;
        switch (answer.Reply)
        {
            case ServerReply.Done when answer.Value is { } summary:
                var unchanged = _record.Text == text;
                _record = _record with { Etag = summary.Etag, Dirty = !unchanged, UpdatedAt = summary.UpdatedAt, Swatch = summary.Swatch };
                await Write();
                if (State == SaveState.Conflict)
                    break;
                Say(unchanged ? SaveState.Saved : SaveState.Saving);
                if (!unchanged)
                    await Send();
                break;
            case ServerReply.ChangedElsewhere:
                if ((await _server.GetAsync(record.Id)).Value is { } theirs)
                {
                    if (theirs.Text == _record.Text)
                        await Settle(theirs.Etag, theirs.Text);
                    else
                        Conflict(theirs);
                }
                break;
            case ServerReply.Missing when record.Etag is not null:
                // Removed there meanwhile: it is made anew.
                _record = _record with { Etag = null };
                await Send();
                break;
            case ServerReply.Refused:
                Why = answer.Why;
                Say(SaveState.Failed);
                break;
            default:
                Say(SaveState.OnDevice);
                if (!Alone)
                    _ = SendLater();
                break;
        }
    }

    private async Task SendLater()
    {
        var edits = _edits;
        await Task.Delay(Again);
        if (edits == _edits && State == SaveState.OnDevice)
            await Send();
    }

    private async Task ChangedInOtherTab(string id)
    {
        if (_record is not { } mine || mine.Id != id || await _device.GetAsync(id) is not { Text: { } text } other
            || other.Revision <= mine.Revision || _record != mine)
        {
            return;
        }
        if (text == mine.Text)
            _record = other;
        else if (!mine.Dirty && !_dirtyOnDevice)
        {
            _record = other;
            _workbench.Replace(text, "the change made in another tab", saved: true);
            Say(SaveState.Saved);
        }
        else
            Conflict(new StoredText(text, other.Etag ?? ""));
    }

    /// <summary>In words, why this device wrote nothing.</summary>
    internal static string NotKept(Exception fault) =>
        $"This device did not keep it ({fault.Message.Split('\n')[0]}).";

    private void Conflict(StoredText theirs)
    {
        Theirs = theirs;
        Say(SaveState.Conflict);
    }

    private DeviceRecord Describe(string id, int revision) => new(
        id, _workbench.Document!.Title, _workbench.Document.Text, null, false, revision, false, DateTimeOffset.UtcNow, Picture());

    private SwatchPicture? Picture() => _workbench.Plan is { } plan ? ShelfPicture.Of(plan) : null;

    private void Say(SaveState state)
    {
        State = state;
        Changed?.Invoke();
    }
}
