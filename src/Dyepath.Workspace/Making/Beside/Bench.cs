using System.Collections.Immutable;
using Dyepath.Core.Making.Drift;
using Dyepath.Core.Making.Log;
using Dyepath.Core.Making.Work;
using Dyepath.Core.Measuring;
using Dyepath.Core.Projects;
using Dyepath.Workspace.Making.Store;
using Dyepath.Workspace.Work;

namespace Dyepath.Workspace.Making.Beside;

/// <summary>
/// The piece in hand: what its log leads to, and what every tap does. A tap is first kept, with what she is told in answer, then shown;
/// one that comes while another is being kept waits its turn.
/// </summary>
public sealed class Bench(MakingKeeper keeper, IDevice device, Planner planner, Faults faults) : IDisposable
{
    private MakingDocument? _shown;
    private ImmutableArray<Entry> _applied = [];
    private Task _last = Task.CompletedTask;
    private bool _unmeasured;
    private int _layings;
    private bool _begun;

    /// <summary>Something that the page shows is another.</summary>
    public event Action? Changed;

    /// <summary>Missing until the design is worked out, or where it cannot be; <see cref="Why"/> then says why.</summary>
    public BesideView? View { get; private set; }

    /// <summary>Where the maker is; missing as <see cref="View"/> is.</summary>
    public MakingState? State { get; private set; }

    /// <summary>The design is being worked out.</summary>
    public bool IsLaying { get; private set; }

    /// <summary>Why there is nothing to be made, in words.</summary>
    public string Why { get; private set; } = "";

    /// <summary>The usual ones until <see cref="Open"/> has read those of this device.</summary>
    public BesideSettings Settings { get; private set; } = new();

    /// <summary>A reading that should be taken twice, and what it came with.</summary>
    public (EntryKind Kind, int Phase, int? To)? Doubted { get; private set; }

    /// <summary>Nothing is worked yet, and the maker's own yarn is not counted.</summary>
    public bool IsOpening => !_unmeasured && keeper.Document is { Log.IsEmpty: true, Counted.IsEmpty: true };

    /// <summary>Rows run from left to right: by her own choice, else as the pattern says.</summary>
    public bool LeftHook => Settings.LeftHook ?? View?.Project.Edition.Hand == Core.Booklets.Hand.Left;

    /// <summary>Begins to follow the keeper and lays out the open piece.</summary>
    public void Open()
    {
        Settings = BesideSettings.Read(device.Kept(BesideSettings.Name));
        keeper.Changed += Follow;
        Follow();
    }

    public void Dispose()
    {
        keeper.Changed -= Follow;
        // What is still being laid out comes too late.
        _layings++;
        device.Hush();
        device.StayAwake(false);
    }

    /// <summary>Takes other settings and keeps them on this device.</summary>
    public void Set(BesideSettings settings)
    {
        Settings = settings;
        device.Keep(BesideSettings.Name, settings.Write());
        device.StayAwake(settings.StaysAwake && State is { IsDone: false });
        Changed?.Invoke();
    }

    /// <summary>Begins without counting: with the pattern's own yarn.</summary>
    public void GoUnmeasured()
    {
        _unmeasured = true;
        Changed?.Invoke();
    }

    /// <summary>Keeps what was counted, with the design as it is or worked out anew for these counts.</summary>
    public Task MeasuredAsync(ImmutableArray<ImmutableArray<int>> repeats, bool anew) => keeper.Document is { Log.IsEmpty: true } document
        ? keeper.BeginAnewAsync(document with
        {
            Counted = repeats,
            Project = anew ? OwnYarn.Rederive(document.Project, repeats) : document.Project,
        })
        : Task.CompletedTask;

    /// <summary>The part to go on with when this one is finished, the next ones first; null when all are.</summary>
    public int? NextPart
    {
        get
        {
            if (State is not { } state)
                return null;
            var parts = state.Order.Parts.Length;
            return Enumerable.Range(1, parts).Select(i => (state.PartIndex + i) % parts)
                .Where(i => state.Progress[i].Step < state.Order.Parts[i].Steps.Length).Select(i => (int?)i).FirstOrDefault();
        }
    }

    /// <summary>Finishes the row, run or step at hand; where the part is finished, goes on with the next one.</summary>
    /// <param name="phase">How far off the row's or run's end was; missing, she did not look.</param>
    public Task FinishAsync(int? phase = null, bool twice = false)
    {
        if (State is not { } state)
            return Task.CompletedTask;
        if (state.IsPartDone)
            return NextPart is { } next ? DoAsync(EntryKind.Part, to: next + 1) : Task.CompletedTask;
        var did = state.Row is null ? EntryKind.Step : Settings.ByRuns && !state.Runs.IsEmpty ? EntryKind.Run : EntryKind.Row;
        return did == EntryKind.Step ? DoAsync(did) : ReadAsync(did, phase, twice);
    }

    /// <summary>The rest of the row at once, in work run by run.</summary>
    public Task FinishRowAsync() => DoAsync(EntryKind.Row);

    /// <summary>Keeps a reading, unless it is so far off that it is doubted: then <see cref="Doubted"/> has it.</summary>
    /// <param name="to">For <see cref="EntryKind.Look"/>: how many runs of the row are worked.</param>
    public Task ReadAsync(EntryKind did, int? phase, bool twice = false, int? to = null)
    {
        if (!twice && phase is { } read && State!.AsksForRecount(did, read, to ?? 0))
        {
            Doubted = (did, read, to);
            Changed?.Invoke();
            return Task.CompletedTask;
        }
        Doubted = null;
        return DoAsync(did, phase, to);
    }

    /// <summary>Drops the doubted reading, so that it can be taken again.</summary>
    public void CountAgain()
    {
        Doubted = null;
        Changed?.Invoke();
    }

    /// <summary>Takes back the last entry; does nothing at the very beginning.</summary>
    public Task BackAsync() => State is { Before: not null } ? DoAsync(EntryKind.Back) : Task.CompletedTask;

    /// <summary>Keeps one entry after those that are still being kept, then shows what it leads to.</summary>
    public Task DoAsync(EntryKind did, int? phase = null, int? to = null)
    {
        Doubted = null;
        return _last = AfterAsync(_last);

        async Task AfterAsync(Task before)
        {
            await before;
            var at = DateTimeOffset.FromUnixTimeMilliseconds(DateTimeOffset.UtcNow.ToUnixTimeMilliseconds());
            var entry = new Entry(did, at, phase, to);
            if (!await keeper.AppendAsync(State?.Answered(entry) ?? entry))
                return;
            Follow();
            device.Top();
            if (Settings.Buzzes && did is EntryKind.Row or EntryKind.Run or EntryKind.Step)
                device.Buzz(did != EntryKind.Run || State is { Here.Run: 0 });
            if (Settings.Speaks)
                Speak();
        }
    }

    /// <summary>Says aloud what is to be done now.</summary>
    public void Speak()
    {
        if (View is { } view && State is { } state)
            device.Speak(BesideWords.Spoken(view, state, Settings.ByRuns), Settings.Rate, Settings.Voice);
    }

    /// <summary>The phase that a row's end tells; null where no such end can be.</summary>
    public int? PhaseOf(int colour, int count) => State is { Row: { } row, Part.Planned: { } planned, Drift: { } drift }
        ? DriftReading.AtRowEnd(planned, row.Row, colour, count, drift.WorkTo(planned.StitchesBefore(row.Row + 1)).Filter.PhaseMean)
        : null;

    /// <summary>Applies what is new in the log; where it is another log, all of it.</summary>
    private void Follow()
    {
        if (keeper.Document is not { } document)
            return;
        if (_shown is not { } shown || !ReferenceEquals(shown.Project, document.Project) || shown.Counted != document.Counted)
        {
            _shown = document;
            (View, Why, State, _applied, IsLaying) = (null, "", null, [], true);
            Changed?.Invoke();
            faults.Watch(() => LayAsync(document));
            return;
        }
        if (!IsLaying)
            Apply(document);
    }

    private async Task LayAsync(MakingDocument document)
    {
        var laying = ++_layings;
        try
        {
            var (view, why) = await BesideView.OpenAsync(document, planner);
            if (laying != _layings)
                return;
            (View, Why, IsLaying) = (view, why, false);
        }
        catch
        {
            if (laying == _layings)
            {
                (Why, IsLaying) = ("It could not be laid out just now. Your place is kept; open the piece again.", false);
                Changed?.Invoke();
            }
            throw;
        }
        if (!_begun)
            device.StayAwake(Settings.StaysAwake);
        _begun = true;
        // Meanwhile a tap of another tab may have come.
        Apply(keeper.Document ?? document);
    }

    private void Apply(MakingDocument document)
    {
        if (View is { } view)
        {
            var goesOn = State is not null && document.Log.Length >= _applied.Length
                && (_applied.IsEmpty || document.Log[_applied.Length - 1] == _applied[^1]);
            State = (goesOn ? State! : MakingState.Begin(view.Order, view.Own)).Apply(document.Log.Skip(goesOn ? _applied.Length : 0));
            _applied = document.Log;
        }
        _shown = document;
        Changed?.Invoke();
    }
}
