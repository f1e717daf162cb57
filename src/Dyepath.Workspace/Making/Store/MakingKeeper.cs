using System.Collections.Immutable;
using Dyepath.Core.Making.Log;
using Dyepath.Workspace.Keeping;
using Dyepath.Workspace.Store;

namespace Dyepath.Workspace.Making.Store;

/// <summary>Keeps the piece under way: every entry first on this device, then shown, and when the hands pause on the host.</summary>
public sealed class MakingKeeper
{
    private readonly KeptTexts<Piece> _pieces;

    /// <summary>Entries one after another, in the order in which they were tapped.</summary>
    private Task _last = Task.CompletedTask;

    private KeptText<Piece>? _open;
    private string? _wanted;
    private bool _isFull;

    /// <summary>Listens to other tabs and to the page from now on.</summary>
    public MakingKeeper(IMakingShelf shelf, MakingHost host, IDeviceEvents events, TimeProvider? clock = null) =>
        _pieces = new KeptTexts<Piece>(IMakingShelf.Sort, new PieceKeeping(), shelf, host, events, clock ?? TimeProvider.System);

    /// <summary>The open piece, or where it is kept, is another.</summary>
    public event Action? Changed;

    /// <summary>Of the open piece; null where none is open.</summary>
    public string? Id => _open?.Id;

    /// <summary>The open piece; missing where none is open, or it was put away.</summary>
    public Piece? Piece => _open?.State is { Stage: Stage.Open } state ? state.Mine : null;

    /// <summary>Of the open piece, as it is shown; null where none is open.</summary>
    public MakingDocument? Document => _open?.State.Mine?.Making;

    /// <summary>Where the last entry is; failed too where the log is full.</summary>
    public SaveState State => _isFull ? SaveState.Failed : _open?.Shown ?? SaveState.Saved;

    /// <summary>Why something was not kept, or why the host did not take it, in words.</summary>
    public string Why => _isFull ? $"The log of a piece has at most {MakingDocument.MostEntries} entries."
        : _open?.State is not { } state ? ""
        : state is { Stage: Stage.Closed, Mine: not null } ? "This piece was put away in another tab."
        : state is { IsHeld: false, DeviceWhy: { } why } ? why
        : state.Trouble == HostTrouble.Refused ? state.HostWhy : "";

    /// <summary>What was tapped last is in the log, kept or still to be.</summary>
    public bool Counts => !_isFull && Piece is not null;

    /// <summary>The other log in a conflict.</summary>
    public MakingDocument? Theirs => _open?.State.Theirs?.Content.Making;

    /// <summary>The last change is on this device, and nothing is known that would keep it from the host.</summary>
    public bool IsOnItsWay => State is SaveState.Saving or SaveState.OnDevice
        && _open?.State is { IsHeld: true, Trouble: HostTrouble.None or HostTrouble.Missing, Mine.Key: null };

    /// <summary>The piece goes to no host by itself.</summary>
    public bool StaysHere => Piece?.Key is not null;

    /// <summary>The host asks for its access token before it takes anything.</summary>
    public bool NeedsSignIn => _open?.State.Trouble == HostTrouble.SignIn;

    /// <summary>
    /// Opens a piece from this device, or from the host where only that has it. From this device it does not wait for the host.
    /// </summary>
    /// <returns>
    /// <see cref="ServerReply.Refused"/> where it cannot be read, <see cref="ServerReply.Damaged"/> where the host's copy is damaged.
    /// </returns>
    public async Task<ServerReply> OpenAsync(string id)
    {
        _wanted = id;
        var kept = _pieces.Open(id);
        if (kept == _open)
        {
            kept.Tell(new Seen<Piece>(true));
            return ServerReply.Done;
        }
        // What is left of the other piece goes to the host now, not when it is opened again.
        _open?.Tell(new Seen<Piece>(false));
        await kept.UntilAsync(s => s.Stage != Stage.Opening);
        if (_wanted != id)
            return ServerReply.Done;
        Take(kept.State.Mine is null ? null : kept);
        return kept.State.Mine is null ? kept.State.Trouble.Reply() : ServerReply.Done;
    }

    /// <summary>Adds an entry to the log. Calls one after another keep their order.</summary>
    /// <returns>
    /// Whether it is in the log. It is not where another tab went on with the piece (<see cref="SaveState.Elsewhere"/>: the log is then
    /// the one with the other tab's entries), in a conflict, and where the log is full. Where this device fails to write, it is kept
    /// here, tried again with the next one, and sent to the host at once.
    /// </returns>
    public Task<bool> AppendAsync(Entry entry) => ChangeAsync(piece => piece.Log.Length >= MakingDocument.MostEntries
        ? null
        // As it is written, so that copies compare.
        : piece.With(piece.Log.Add(entry with { At = DateTimeOffset.FromUnixTimeMilliseconds(entry.At.ToUnixTimeMilliseconds()) })));

    /// <summary>Begins with the maker's own yarn counted, or with the design worked out for it.</summary>
    /// <returns>As <see cref="AppendAsync"/>.</returns>
    public Task<bool> BeginAnewAsync(MakingDocument anew) => ChangeAsync(piece => piece.With(anew with { Log = piece.Log }));

    /// <summary>Ends a conflict with this device's log; the host's is written over.</summary>
    public void KeepMine() => _open?.Tell(new Chose<Piece>(Mine: true));

    /// <summary>Ends a conflict with the other log; what only this device had is gone.</summary>
    public void TakeTheirs() => _open?.Tell(new Chose<Piece>(Mine: false));

    /// <summary>Puts a new piece on this device; where the device keeps nothing, on the host.</summary>
    /// <returns>Its id; or why there is none, in words.</returns>
    public async Task<(string? Id, string? Why)> CreateAsync(Piece piece)
    {
        var id = Guid.NewGuid().ToString();
        var kept = _pieces.Create(id, piece);
        await kept.UntilAsync(s => s.IsHeld || s.IsSent
            || (s.DeviceWhy is not null && (piece.Key is not null || s.Trouble is not (HostTrouble.None or HostTrouble.Missing))));
        if (kept.State.IsHeld || kept.State.IsSent)
            return (id, null);
        var why = kept.State.DeviceWhy;
        // Or it would be tried again, and appear when nobody looks for it any more.
        _pieces.Forget(id);
        return (null, why);
    }

    /// <summary>The latest that can be reached; null with nothing.</summary>
    public async Task<Piece?> ReadAsync(string id)
    {
        var kept = _pieces.Open(id);
        await kept.UntilAsync(s => s.Stage != Stage.Opening);
        return kept.State.Mine;
    }

    /// <summary>Lets go of a piece that is being put away, so that it is not made anew.</summary>
    public void Forget(string id)
    {
        _pieces.Forget(id);
        if (Id == id)
            Take(null);
    }

    private Task<bool> ChangeAsync(Func<Piece, Piece?> change)
    {
        var mine = AfterAsync(_last);
        _last = mine;
        return mine;

        async Task<bool> AfterAsync(Task before)
        {
            // What went wrong before is told where it went wrong.
            await before.ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing | ConfigureAwaitOptions.ContinueOnCapturedContext);
            return await MakeAsync(change);
        }
    }

    private async Task<bool> MakeAsync(Func<Piece, Piece?> change)
    {
        if (_open is not { State: { Stage: Stage.Open, Theirs: null, Mine: { } piece } before } kept)
            return false;
        var next = change(piece);
        _isFull = next is null;
        if (next is null)
        {
            Say();
            return false;
        }
        kept.Tell(new Changed<Piece>(next));
        await kept.UntilAsync(s => s.Pending is null);
        return kept.State.Changes > before.Changes;
    }

    private void Take(KeptText<Piece>? kept)
    {
        if (_open is { } last)
            last.Changed -= Say;
        (_open, _pieces.InView, _isFull) = (kept, kept?.Id, false);
        if (kept is not null)
            kept.Changed += Say;
        Say();
    }

    private void Say() => Changed?.Invoke();
}
