using System.Collections.Immutable;
using System.Text;
using System.Text.Json;
using Dyepath.Client.Store;
using Dyepath.Core.Making.Log;

namespace Dyepath.Client.Making.Store;

/// <summary>
/// Keeps the piece under way: every entry at once on this device, then, when the hands pause, on the host. Logs only grow, so that of
/// two copies the longer one is right as long as it begins with the other; where it does not, both are kept until the maker chooses.
/// </summary>
public sealed class MakingKeeper
{
    /// <summary>After the last entry, before the host is told.</summary>
    public static readonly TimeSpan Quiet = TimeSpan.FromSeconds(4);

    /// <summary>Other devices write at the pace of hands: one who was quicker several times in a row is waited for.</summary>
    private const int MostTries = 4;

    private readonly IMakingShelf _shelf;
    private readonly MakingHost _host;
    private readonly TimeProvider _time;

    /// <summary>Everything that writes on this device, one after another.</summary>
    private Task _last = Task.CompletedTask;

    /// <summary>With which she goes on if she takes the other log.</summary>
    private MakingHeader? _theirHeader;

    /// <summary>Entries that this device has; fewer than the log where it failed to write.</summary>
    private int _onDevice;
    private bool _kept;
    private bool _elsewhere;
    private bool _listening;
    private bool _talking;
    private bool _askAgain;
    private bool _sendAgain;
    private int _changes;

    public MakingKeeper(IMakingShelf shelf, MakingHost host, TimeProvider? time = null) =>
        (_shelf, _host, _time) = (shelf, host, time ?? TimeProvider.System);

    public event Action? Changed;

    /// <summary>Missing where no piece is open, or the open one was put away.</summary>
    public MakingHeader? Header { get; private set; }

    public string? Id => Header?.Id;

    public MakingDocument? Document { get; private set; }

    public SaveState State { get; private set; }

    /// <summary>Why something was not kept, or why the host did not take it, in words.</summary>
    public string Why { get; private set; } = "";

    /// <summary>The other log in a conflict.</summary>
    public MakingDocument? Theirs { get; private set; }

    /// <summary>The host asks for its access token before it takes anything.</summary>
    public bool NeedsSignIn { get; private set; }

    private bool IsSent => Header is { Etag: not null, Differs: false } header && header.Sent == Document?.Log.Length;

    private SaveState Resting => Theirs is not null ? SaveState.Conflict
        : _elsewhere ? SaveState.Elsewhere
        : IsSent ? SaveState.Saved
        : !_kept || _onDevice < Document?.Log.Length ? SaveState.Failed
        : SaveState.OnDevice;

    /// <summary>Opens a piece from this device, or from the host where only that has it. From this device it does not wait for the host.</summary>
    /// <returns><see cref="ServerReply.Refused"/> where it cannot be read.</returns>
    public Task<ServerReply> OpenAsync(string id)
    {
        if (!_listening)
        {
            _listening = true;
            _shelf.Listen(other => _ = InOrder(() => ReloadAsync(other)), () => _ = TalkAsync(ask: true), seen => _ = TalkAsync(ask: seen, leaving: !seen));
        }
        return InOrder(() => Open(id));
    }

    /// <summary>Adds an entry to the log. Calls one after another keep their order.</summary>
    /// <returns>
    /// Whether it is in the log. It is not where another tab went on with the piece (<see cref="SaveState.Elsewhere"/>: the log is then
    /// the one with the other tab's entries), in a conflict, and where the log is full. Where this device fails to write, it is kept
    /// here, tried again with the next one, and sent to the host at once.
    /// </returns>
    public Task<bool> AppendAsync(Entry entry) => InOrder(() => Append(entry));

    /// <summary>Begins with the maker's own yarn counted, or with the design worked out for it.</summary>
    /// <returns>As <see cref="AppendAsync"/>.</returns>
    public Task<bool> BeginAnewAsync(MakingDocument anew) => InOrder(async () =>
    {
        if (Header is not { } header || Document is not { } document || Theirs is not null)
            return false;
        _elsewhere = true;
        if (!await ReplaceAsync(header with { Differs = true }, anew with { Log = document.Log }))
            return false;
        _elsewhere = false;
        Say(Resting);
        _ = TalkWhenQuietAsync();
        return true;
    });

    /// <summary>Ends a conflict with this device's log; the host's is written over.</summary>
    public Task KeepMineAsync() => SettleAsync(mine: true);

    /// <summary>Ends a conflict with the other log; what only this device had is gone.</summary>
    public Task TakeTheirsAsync() => SettleAsync(mine: false);

    /// <summary>Lets go of a piece that is being put away, so that it is not made anew.</summary>
    public Task ForgetAsync(string id) => InOrder(() =>
    {
        if (Id == id)
            (Header, Document, Theirs, _theirHeader) = (null, null, null, null);
        return Task.FromResult(true);
    });

    private async Task<ServerReply> Open(string id)
    {
        if (Id == id)
        {
            _ = TalkAsync(ask: true);
            return ServerReply.Done;
        }
        if (Header is { Key: null } earlier && Document is { } unsent && !IsSent && Theirs is null)
            _ = _host.PutAsync(earlier.Id, earlier.ProjectId, earlier.Etag, MakingWriter.WriteUtf8(unsent));
        (Header, Document, Theirs, _theirHeader, _elsewhere, Why) = (null, null, null, null, false, "");
        KeptMaking? kept;
        try
        {
            kept = await _shelf.GetAsync(id);
        }
        catch (IOException)
        {
            // A private window may have no store of its own; the host's copy is still to be had.
            kept = null;
        }
        catch (JsonException)
        {
            return ServerReply.Refused;
        }
        if (kept is not null)
        {
            if (kept.Read() is not { } making)
                return ServerReply.Refused;
            (Header, Document, _onDevice, _kept) = (kept.Header, making, kept.Entries.Length, true);
            Say(Resting);
            _ = TalkAsync(ask: true);
            return ServerReply.Done;
        }
        var answer = await _host.GetAsync(id);
        NeedsSignIn = answer.Reply == ServerReply.SignIn;
        if (answer.Value is not { } stored)
            return answer.Reply;
        if (Read(stored) is not { } found)
            return ServerReply.Refused;
        var project = (await _host.ListAsync()).Value?.FirstOrDefault(m => m.Id == id)?.ProjectId;
        var here = KeptMaking.Of(id, found, _time.GetUtcNow(), project);
        (Header, Document, _onDevice, _kept) = (here.Header with { Etag = stored.Etag, Sent = found.Log.Length }, found, 0, false);
        await WriteHeaderAsync(Header);
        Say(Resting);
        return ServerReply.Done;
    }

    private async Task<bool> Append(Entry entry)
    {
        if (Header is not { } header || Document is not { } document || Theirs is not null)
            return false;
        if (document.Log.Length >= MakingDocument.MostEntries)
        {
            Fail($"The log of a piece has at most {MakingDocument.MostEntries} entries.");
            return false;
        }
        // As it is written, so that copies compare.
        var log = document.Log.Add(entry with { At = DateTimeOffset.FromUnixTimeMilliseconds(entry.At.ToUnixTimeMilliseconds()) });
        var failed = false;
        try
        {
            if (!await WriteEntriesAsync(header, log))
            {
                _elsewhere = true;
                await ReloadAsync(header.Id);
                return false;
            }
        }
        catch (IOException fault)
        {
            failed = true;
            Why = Keeper.NotKept(fault);
        }
        Document = document with { Log = log };
        _elsewhere = false;
        Say(Resting);
        _ = failed ? TalkAsync(ask: false) : TalkWhenQuietAsync();
        return true;
    }

    /// <summary>Everything that this device does not have yet of a log.</summary>
    private async Task<bool> WriteEntriesAsync(MakingHeader header, ImmutableArray<Entry> log)
    {
        if (!_kept)
        {
            if (!await _shelf.CreateAsync(new KeptMaking(header, log)))
                return false;
            (_kept, _onDevice) = (true, log.Length);
        }
        for (; _onDevice < log.Length; _onDevice++)
        {
            if (!await _shelf.AppendAsync(header.Id, header.Revision, _onDevice, log[_onDevice]))
                return false;
        }
        return true;
    }

    /// <summary>Writes what is known of the host's copy. Where this device cannot, the next exchange finds it out again.</summary>
    private async Task<bool> WriteHeaderAsync(MakingHeader header)
    {
        Header = header;
        try
        {
            return (_kept ? await _shelf.PutHeaderAsync(header) : await WriteEntriesAsync(header, Document!.Log)) || await ReloadAsync(header.Id);
        }
        catch (IOException fault)
        {
            Why = Keeper.NotKept(fault);
            return false;
        }
    }

    /// <summary>Writes document and log anew.</summary>
    private async Task<bool> ReplaceAsync(MakingHeader header, MakingDocument making)
    {
        try
        {
            var written = header with { Text = KeptMaking.Slim(making), Title = making.Project.Title, Size = making.Size };
            var whole = new KeptMaking(written, making.Log);
            if (!await (_kept ? _shelf.ReplaceAsync(whole, _onDevice) : _shelf.CreateAsync(whole)))
            {
                await ReloadAsync(header.Id);
                return false;
            }
            (Header, Document) = (written with { Revision = header.Revision + (_kept ? 1 : 0) }, making);
            (_onDevice, _kept) = (making.Log.Length, true);
            return true;
        }
        catch (IOException fault)
        {
            Fail(Keeper.NotKept(fault));
            return false;
        }
    }

    /// <summary>Another tab has written.</summary>
    private async Task<bool> ReloadAsync(string id)
    {
        if (Header is not { } header || header.Id != id || Document is not { } mine)
            return false;
        KeptMaking? kept;
        try
        {
            kept = await _shelf.GetAsync(id);
        }
        catch (Exception fault) when (fault is IOException or JsonException)
        {
            return false;
        }
        if (kept is null)
        {
            if (!_kept)
                return false;
            Header = null;
            Fail("This piece was put away in another tab.");
            return false;
        }
        // The same design is not read again, so that it need not be planned again.
        if ((kept.Header.Text == header.Text ? mine with { Log = kept.Entries } : kept.Read()) is not { } theirs)
            return false;
        var shared = Shared(mine.Log, theirs.Log);
        if (shared < mine.Log.Length && shared == theirs.Log.Length && kept.Header.Revision == header.Revision)
        {
            // Only the latest entries, which this device had not taken, are missing there.
            (Header, _onDevice) = (kept.Header, theirs.Log.Length);
        }
        else if (shared == mine.Log.Length || _onDevice == mine.Log.Length)
        {
            // It has grown; or whoever wrote it anew had all of this log before her.
            (Header, Document, _onDevice, _kept) = (kept.Header, theirs, theirs.Log.Length, true);
            if (kept.Header.Revision != header.Revision)
                (Theirs, _theirHeader) = (null, null);
        }
        else
        {
            (Theirs, _theirHeader, _onDevice) = (theirs, kept.Header, theirs.Log.Length);
        }
        Say(Resting);
        return true;
    }

    /// <summary>One exchange with the host at a time; what comes meanwhile is seen to afterwards.</summary>
    private async Task TalkAsync(bool ask, bool leaving = false)
    {
        if (Header is not { Key: null } || Theirs is not null || (!ask && IsSent))
            return;
        if (_talking)
        {
            (_sendAgain, _askAgain) = (true, _askAgain || ask);
            return;
        }
        _talking = true;
        try
        {
            do
            {
                _sendAgain = _askAgain = false;
                if (!ask || await AskAsync())
                    await SendAsync(leaving);
                ask = _askAgain;
            }
            while (_sendAgain);
        }
        finally
        {
            _talking = false;
        }
    }

    /// <returns>Whether what is new here can be sent.</returns>
    private async Task<bool> AskAsync()
    {
        if (Header is not { } header)
            return false;
        if (header.Etag is null)
            return true;
        var answer = await _host.GetAsync(header.Id);
        return Id == header.Id && await FoundAsync(header.Id, answer);
    }

    /// <summary>The host's copy, or that it has none.</summary>
    private async Task<bool> FoundAsync(string id, ServerAnswer<StoredText> answer)
    {
        if (answer.Reply == ServerReply.Missing)
        {
            // The host no longer has what it once had: it is made anew there.
            await InOrder(() => Header is { } header && header.Id == id ? WriteHeaderAsync(header with { Etag = null, Sent = 0 }) : Task.FromResult(false));
            return Theirs is null;
        }
        Told(answer.Reply, answer.Why);
        if (answer.Value is not { } stored)
            return false;
        return stored.Etag == Header?.Etag || await InOrder(() => MeetAsync(id, stored));
    }

    /// <summary>Brings another copy and this one together where one goes on from the other.</summary>
    /// <returns>Whether what is new here can be sent.</returns>
    private async Task<bool> MeetAsync(string id, StoredText stored)
    {
        if (Header is not { } header || header.Id != id || Document is not { } mine || Theirs is not null)
            return false;
        if (Read(stored) is not { } theirs)
        {
            Why = "The host's copy of this piece cannot be read.";
            Say(Resting);
            return false;
        }
        var shared = Shared(mine.Log, theirs.Log);
        var next = header with { Etag = stored.Etag, Sent = theirs.Log.Length };
        var same = KeptMaking.Slim(theirs) == header.Text;
        // Where this device has changed nothing since it had the host's copy, what was begun anew elsewhere holds.
        var follows = header is { Etag: not null, Differs: false } && shared == mine.Log.Length;
        if (!(same || follows) || shared < Math.Min(mine.Log.Length, theirs.Log.Length))
        {
            (Theirs, _theirHeader) = (theirs, next with { Differs = false });
            Say(Resting);
            return false;
        }
        next = next with { Differs = false };
        if (same && shared == theirs.Log.Length)
            return await WriteHeaderAsync(next) || Theirs is null;
        // Where another tab has written meanwhile, both are looked at again.
        return await ReplaceAsync(next, same ? mine with { Log = theirs.Log } : theirs) || State != SaveState.Failed;
    }

    private async Task SendAsync(bool leaving)
    {
        for (var tries = 0; tries < MostTries; tries++)
        {
            if (Header is not { } header || Document is not { } document || Theirs is not null)
                return;
            if (IsSent)
            {
                Say(Resting);
                return;
            }
            if (Resting == SaveState.OnDevice)
                Say(SaveState.Saving);
            var answer = await _host.PutAsync(header.Id, header.ProjectId, header.Etag, MakingWriter.WriteUtf8(document), leaving);
            if (Id != header.Id)
                return;
            switch (answer.Reply)
            {
                case ServerReply.Done when answer.Value is { } summary:
                    Told(ServerReply.Done, "");
                    await InOrder(() => Id != header.Id ? Task.FromResult(false) : WriteHeaderAsync(Header! with
                    {
                        Etag = summary.Etag,
                        Sent = document.Log.Length,
                        // Counted anew while it was on its way?
                        Differs = Header.Differs && Header.Revision != header.Revision,
                    }));
                    Say(Resting);
                    return;
                case ServerReply.ChangedElsewhere:
                case ServerReply.Missing when header.Etag is not null:
                    var found = await _host.GetAsync(header.Id);
                    if (Id != header.Id || !await FoundAsync(header.Id, found))
                        return;
                    break;
                default:
                    Told(answer.Reply, answer.Why);
                    return;
            }
        }
        Say(Resting);
    }

    private async Task TalkWhenQuietAsync()
    {
        var changes = ++_changes;
        await Task.Delay(Quiet, _time);
        if (changes == _changes)
            await TalkAsync(ask: false);
    }

    private async Task SettleAsync(bool mine)
    {
        await InOrder(async () =>
        {
            if (Document is not { } document || Theirs is not { } theirs || _theirHeader is not { } header
                || !await ReplaceAsync(mine ? header with { Differs = true } : header, mine ? document : theirs))
            {
                return false;
            }
            (Theirs, _theirHeader, _elsewhere) = (null, null, false);
            Say(Resting);
            return true;
        });
        await TalkAsync(ask: false);
    }

    private void Told(ServerReply reply, string why)
    {
        NeedsSignIn = reply == ServerReply.SignIn;
        if (Resting != SaveState.Failed)
            Why = why;
        if (reply != ServerReply.Done)
            Say(Resting);
    }

    private static MakingDocument? Read(StoredText stored) => MakingReader.Read(Encoding.UTF8.GetBytes(stored.Text)).Making;

    /// <summary>How many entries two logs begin with alike.</summary>
    private static int Shared(ImmutableArray<Entry> one, ImmutableArray<Entry> other)
    {
        var most = Math.Min(one.Length, other.Length);
        for (var i = 0; i < most; i++)
        {
            if (one[i] != other[i])
                return i;
        }
        return most;
    }

    /// <summary>Work that waits for other work in order would wait for ever.</summary>
    private async Task<T> InOrder<T>(Func<Task<T>> work)
    {
        var turn = new TaskCompletionSource(TaskCreationOptions.RunContinuationsAsynchronously);
        var before = _last;
        _last = turn.Task;
        await before;
        try
        {
            return await work();
        }
        finally
        {
            turn.SetResult();
        }
    }

    private void Fail(string why)
    {
        Why = why;
        Say(SaveState.Failed);
    }

    private void Say(SaveState state)
    {
        State = state;
        Changed?.Invoke();
    }
}
