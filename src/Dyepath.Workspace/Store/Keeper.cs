using Dyepath.Contracts;
using Dyepath.Core.Planning;
using Dyepath.Workspace.Keeping;
using Dyepath.Workspace.Pattern;
using Dyepath.Workspace.Work;

namespace Dyepath.Workspace.Store;

/// <summary>
/// The projects that this tab keeps, the open one first: what is on the workbench goes to this device and to the host, and back.
/// </summary>
public sealed class Keeper
{
    private const string NoMore = "There is no such project any more.";

    private readonly Workbench _workbench;
    private readonly KeptTexts<ProjectText> _texts;
    private KeptText<ProjectText>? _open;
    private string? _wanted;
    private Plan? _drawn;
    private (Plan Plan, SwatchPicture? Picture)? _pictured;

    /// <summary>Follows the workbench, other tabs and the page from now on.</summary>
    public Keeper(Workbench workbench, IDeviceShelf device, ServerShelf server, IDeviceEvents events, TimeProvider? clock = null)
    {
        _workbench = workbench;
        _texts = new KeptTexts<ProjectText>(IDeviceShelf.Sort, new ProjectKeeping(), device, server, events, clock ?? TimeProvider.System);
        _workbench.Edited += Edited;
        _workbench.Changed += Planned;
    }

    /// <summary>The open project, or where it is kept, is another.</summary>
    public event Action? Changed;

    /// <summary>Of the open project; null where none is open.</summary>
    public string? Id => _open?.Id;

    /// <summary>Where the last change is.</summary>
    public SaveState State => _open?.Shown ?? SaveState.Saved;

    /// <summary>Why something was not kept, in words; empty where everything is.</summary>
    public string Why => _open?.State is not { } state ? ""
        : state is { Stage: Stage.Closed, Mine: not null } ? "This project was deleted in another tab. Copy what you still need from this page."
        : state is { IsHeld: false, DeviceWhy: { } why } ? why
        : state.Trouble is HostTrouble.Refused ? state.HostWhy : "";

    /// <summary>The text is on this device, whatever else is the matter with it.</summary>
    public bool IsOnDevice => _open?.State.IsHeld == true;

    /// <summary>The other text in a conflict.</summary>
    public ProjectText? Theirs => _open?.State.Theirs?.Content;

    /// <summary>
    /// In a conflict, the text on the page was written in this tab; where not, as in one that was opened since, neither is hers more than
    /// the other.
    /// </summary>
    public bool IsOwn => _open?.State.IsOwn == true;

    /// <summary>When the text on the page and the other one were last changed on this device; missing where that is not known.</summary>
    public (DateTimeOffset? Mine, DateTimeOffset? Theirs) ChangedAt => (_open?.State.Held?.At, _open?.State.Theirs?.At);

    /// <summary>Where the text on the page differs from the other one, which is the earlier one of each pair.</summary>
    public IReadOnlyList<Difference> Differences => Theirs is { } theirs && _workbench.Document is { } mine
        ? DocumentDifference.Between(ProjectDocument.TryParse(theirs.Text, mine.Shelf)?.Root, mine.Root) : [];

    /// <summary>The page has no host: projects live on this device alone.</summary>
    public bool Alone => _open?.State is { Trouble: HostTrouble.Away, Etag: null };

    /// <summary>The host asks for its access token before it takes anything.</summary>
    public bool NeedsSignIn => _open?.State.Trouble == HostTrouble.SignIn;

    /// <summary>Opens a project from wherever its latest text is.</summary>
    public async Task<ServerReply> OpenAsync(string id)
    {
        _wanted = id;
        var kept = _texts.Open(id);
        if (kept == _open && _workbench.Document is not null)
            return ServerReply.Done;
        await kept.UntilAsync(s => s.Stage != Stage.Opening);
        if (_wanted != id)
            return ServerReply.Done;
        if (kept.State.Mine is not { } text)
            return kept.State.Trouble.Reply();
        return Take(kept, text) ? ServerReply.Done : ServerReply.Refused;
    }

    /// <summary>What a project that is being opened waits for, in words; empty where it is open.</summary>
    public string WaitsFor => _wanted is not { } id || _texts.Find(id)?.State is not { Stage: Stage.Opening } state ? ""
        : state is { DeviceIsBusy: true, HostIsBusy: true } ? "Neither this device's store nor the host has answered yet"
        : state.DeviceIsBusy ? "This device's store has not answered yet"
        : "The host has not answered yet";

    /// <summary>Puts a new project on this device and, where there is one, on the host.</summary>
    /// <returns>Its id.</returns>
    public async Task<string> CreateAsync(string text)
    {
        var id = _wanted = Guid.NewGuid().ToString();
        _workbench.Open(text);
        var kept = _texts.Create(id, Present());
        Take(kept, null);
        await KeptSomewhere(kept);
        return id;
    }

    /// <summary>Puts a project somewhere without opening it.</summary>
    /// <returns>Its id.</returns>
    public async Task<string> AddAsync(ProjectText text)
    {
        var id = Guid.NewGuid().ToString();
        await KeptSomewhere(_texts.Create(id, text));
        return id;
    }

    /// <summary>Changes a project that need not be open.</summary>
    /// <param name="change">The new text; null where this one cannot be changed.</param>
    /// <returns>What went wrong, in words, or null.</returns>
    public async Task<string?> ChangeAsync(string id, Func<string, string?> change)
    {
        var kept = _texts.Open(id);
        await kept.UntilAsync(s => s.Stage != Stage.Opening);
        if (kept.State.Mine is not { } mine)
            return kept.State.Trouble == HostTrouble.Missing ? NoMore : "The host cannot be reached just now: try again once you are connected.";
        if (change(mine.Text) is not { } text)
            return "What is stored under this name is not a project document.";
        kept.Tell(new Changed<ProjectText>(ProjectText.Of(text) with { Swatch = mine.Swatch }));
        if (kept == _open)
            _workbench.Replace(text, "the new name", saved: true);
        await KeptSomewhere(kept);
        return kept.State is { Stage: Stage.Closed } ? NoMore
            : kept.State is { Theirs: not null } ? "It was changed in another place too: open it and choose."
            : kept.State is { IsHeld: false, IsSent: false, DeviceWhy: { } why } ? why : null;
    }

    /// <summary>Sends what this device has of a project and the host has not, as if it had been opened.</summary>
    public void Send(string id)
    {
        _texts.Open(id);
    }

    /// <summary>Gives the host what this device has of a project, and waits for its answer.</summary>
    /// <returns>What went wrong, in words, or null.</returns>
    public async Task<string?> SendAsync(string id)
    {
        var kept = _texts.Open(id);
        await kept.UntilAsync(s => s.Stage != Stage.Opening);
        kept.Tell(new Seen<ProjectText>(true));
        await kept.UntilAsync(s => s is { HostIsBusy: false, AsksHost: false }
            && (s.Stage == Stage.Closed || s.IsSent || s.Theirs is not null
                // What the host answered before it was asked now is no answer.
                || s is { IsDue: false, Trouble: not (HostTrouble.None or HostTrouble.Missing) }));
        return kept.State switch
        {
            { IsSent: true } => null,
            { Theirs: not null } => "The host has another text of it: open it and choose.",
            { Trouble: HostTrouble.Refused, HostWhy: var why } => why,
            { Trouble: HostTrouble.SignIn } => "The host asks for its access token first.",
            _ => "The host cannot be reached just now. It is sent when it can.",
        };
    }

    /// <summary>Lets go of a project that was removed, so that it is not made anew.</summary>
    public void Forget(string id)
    {
        _texts.Forget(id);
        if (Id == id)
            (_open, _texts.InView) = (null, null);
    }

    /// <summary>The open text is nowhere but in this page: it is lost with the tab.</summary>
    public bool IsNowhere => State == SaveState.Failed;

    /// <summary>Ends a conflict with this tab's text. The other stays among the host's versions, where the host had it.</summary>
    public void KeepMine() => _open?.Tell(new Chose<ProjectText>(Mine: true));

    /// <summary>Ends a conflict with the other text; this tab's can be had back by undo.</summary>
    public void TakeTheirs() => _open?.Tell(new Chose<ProjectText>(Mine: false));

    /// <summary>Ends a conflict by keeping this tab's text as a project of its own, which is then the open one.</summary>
    /// <returns>The new project's id.</returns>
    public async Task<string> KeepBoth()
    {
        var conflicted = _open!;
        var mine = ProjectDocument.TryParse(_workbench.Document!.Text)!;
        mine.Set("title", $"{mine.Title} (my copy)");
        var id = await CreateAsync(mine.Text);
        conflicted.Tell(new Chose<ProjectText>(Mine: false));
        return id;
    }

    /// <summary>Or put away meanwhile: then there is nothing to wait for.</summary>
    private static Task KeptSomewhere(KeptText<ProjectText> kept) => kept.UntilAsync(
        s => s.IsSent || s.IsHeld || s.Theirs is not null || s.Stage == Stage.Closed
            || (s.DeviceWhy is not null && s.Trouble is not (HostTrouble.None or HostTrouble.Missing)));

    private bool Take(KeptText<ProjectText> kept, ProjectText? text)
    {
        if (_open is { } last)
        {
            last.Changed -= Say;
            last.Replaced -= Replace;
        }
        (_open, _texts.InView) = (null, null);
        if (text is not null && !_workbench.Open(text.Text))
            return false;
        (_open, _texts.InView) = (kept, kept.Id);
        kept.Changed += Say;
        kept.Replaced += Replace;
        Say();
        return true;
    }

    private void Edited() => _open?.Tell(new Changed<ProjectText>(Present()));

    /// <summary>The picture follows the plan, which comes after the text.</summary>
    private void Planned()
    {
        if (_workbench is not { IsStale: false, Plan: { } plan, Document: not null } || ReferenceEquals(_drawn, plan)
            || _open?.State.Mine is not { } mine)
            return;
        _drawn = plan;
        if (Present() is { } now && now.Text == mine.Text)
            _open.Tell(new Redrawn<ProjectText>(now, Sends: mine.Swatch is null));
    }

    private void Replace(ShowText<ProjectText> show) => _workbench.Replace(
        show.Content.Text, show.Chosen ? "taking the other version" : "the change made in another place", saved: true);

    private ProjectText Present()
    {
        var document = _workbench.Document!;
        return new ProjectText(document.Text, document.Title, Picture());
    }

    /// <summary>Made once a plan, not at every key.</summary>
    private SwatchPicture? Picture()
    {
        if (_workbench.Plan is not { } plan)
            return null;
        if (!ReferenceEquals(_pictured?.Plan, plan))
            _pictured = (plan, ShelfPicture.Of(plan));
        return _pictured!.Value.Picture;
    }

    private void Say() => Changed?.Invoke();
}
