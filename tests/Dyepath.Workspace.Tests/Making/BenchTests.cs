using Dyepath.Core.Making.Log;
using Dyepath.Core.Making.Order;
using Dyepath.Workspace.Making.Beside;
using Dyepath.Workspace.Making.Store;
using Dyepath.Workspace.Tests.Work;
using Dyepath.Workspace.Work;
using Dyepath.Workspace.Worker;
using static Dyepath.Workspace.Tests.Making.MakingBench;
using HookBench = Dyepath.Workspace.Making.Beside.Bench;

namespace Dyepath.Workspace.Tests.Making;

/// <summary>The piece in hand, without a page: what a tap keeps, shows, says and buzzes.</summary>
public sealed class BenchTests : IDisposable
{
    private static readonly MakingOrder Order = BesideView.TryOpen(Demo(), out _)!.Order;

    /// <summary>Steps before the first row.</summary>
    private static readonly int Before = Order.Parts[0].Steps.TakeWhile(s => s is not RowStep).Count();

    private readonly DeviceHere _device = new();
    private readonly HostHere _host = new();
    private readonly PhoneHere _phone = new();
    private readonly Faults _faults = new();
    private MakingKeeper _keeper = null!;

    public void Dispose() => _host.Dispose();

    private IEnumerable<Entry> Log => _device.Kept[Id].Content.Log;

    [Fact]
    public Task A_tap_finishes_the_step_or_the_row_at_hand_and_back_takes_it_back() => InPage(async () =>
    {
        using var bench = await Opened(Demo());
        for (var i = 0; i < Before; i++)
            await bench.FinishAsync();
        Assert.All(Log, e => Assert.Equal(EntryKind.Step, e.Kind));
        Assert.Equal(0, bench.State!.Row!.Row);
        await bench.FinishAsync(phase: 0);
        Assert.Equal((EntryKind.Row, 0), (Log.Last().Kind, Log.Last().Phase!.Value));
        Assert.Equal(1, bench.State.Row!.Row);
        // What is new is seen, wherever she had scrolled to.
        Assert.Equal(Before + 1, _phone.Topped);
        await bench.BackAsync();
        Assert.Equal(EntryKind.Back, Log.Last().Kind);
        Assert.Equal(0, bench.State.Row!.Row);
    });

    /// <summary>What she was told goes into the log with the row that it answers, and what the log leads to is what she saw.</summary>
    [Fact]
    public Task What_she_is_told_is_kept_with_the_row() => InPage(async () =>
    {
        using var bench = await Opened(AtFirstRow());
        await bench.FinishAsync(phase: 2);
        var said = Log.Last().Said;
        Assert.Equal(Dyepath.Core.Making.Work.SaidAdvice.Of(bench.State!.Drift!.Advice!), said);
        Assert.NotEqual(0, said!.Work ?? said.Hold);
        Assert.All(Log.SkipLast(1), e => Assert.Null(e.Said));
        await bench.BackAsync();
        Assert.Null(Log.Last().Said);
    });

    [Fact]
    public Task At_the_very_beginning_there_is_nothing_to_take_back() => InPage(async () =>
    {
        using var bench = await Opened(Demo());
        await bench.BackAsync();
        Assert.Empty(_device.Kept[Id].Content.Log);
    });

    /// <summary>Long where a row ends, short where a run does.</summary>
    [Fact]
    public Task Run_by_run_a_tap_finishes_a_run_and_buzzes_short_until_the_row_ends() => InPage(async () =>
    {
        _phone.Texts[BesideSettings.Name] = new BesideSettings { ByRuns = true, Speaks = true }.Write();
        using var bench = await Opened(AtFirstRow());
        var runs = bench.State!.Runs.Length;
        for (var i = 0; i < runs; i++)
            await bench.FinishAsync();
        Assert.Equal(Enumerable.Repeat(EntryKind.Run, runs), Log.TakeLast(runs).Select(e => e.Kind));
        Assert.Equal([.. Enumerable.Repeat(false, runs - 1), true], _phone.Buzzed);
        Assert.Equal(1, bench.State.Row!.Row);
        Assert.Equal(runs, _phone.Said.Count);
        Assert.Equal(BesideWords.Spoken(bench.View!, bench.State, byRuns: true), _phone.Said[^1]);
        await bench.FinishRowAsync();
        Assert.Equal((EntryKind.Row, 2), (Log.Last().Kind, bench.State.Row!.Row));
    });

    [Fact]
    public Task Settings_are_kept_and_hold_at_once() => InPage(async () =>
    {
        using var bench = await Opened(AtFirstRow());
        Assert.True(_phone.IsAwake);
        bench.Set(new BesideSettings { StaysAwake = false, Buzzes = false, LeftHook = true });
        Assert.False(_phone.IsAwake);
        Assert.True(bench.LeftHook);
        Assert.Equal(new BesideSettings { StaysAwake = false, Buzzes = false, LeftHook = true }, BesideSettings.Read(_phone.Texts[BesideSettings.Name]));
        await bench.FinishAsync();
        Assert.Empty(_phone.Buzzed);
        Assert.Empty(_phone.Said);
        bench.Set(new BesideSettings());
        Assert.True(_phone.IsAwake);
        Assert.False(bench.LeftHook);
        bench.Speak();
        Assert.Equal([BesideWords.Spoken(bench.View!, bench.State!, byRuns: false)], _phone.Said);
    });

    /// <summary>A reading that the row before makes unlikely is asked for once more, and taken when it is said again.</summary>
    [Fact]
    public Task A_reading_far_off_is_doubted_until_it_is_said_twice() => InPage(async () =>
    {
        using var bench = await Opened(AtFirstRow());
        for (var i = 0; i < 4; i++)
            await bench.FinishAsync(phase: 0);
        var entries = Log.Count();
        await bench.FinishAsync(phase: 9);
        Assert.Equal((EntryKind.Row, 9, null), bench.Doubted!.Value);
        Assert.Equal(entries, Log.Count());
        bench.CountAgain();
        Assert.Null(bench.Doubted);
        await bench.FinishAsync(phase: 9);
        await bench.FinishAsync(phase: 9, twice: true);
        Assert.Null(bench.Doubted);
        Assert.Equal(9, Log.Last().Phase);
        Assert.Equal(entries + 1, Log.Count());
    });

    /// <summary>A rows' end as planned is no phase off; where no colour is so long, nothing can be told.</summary>
    [Fact]
    public Task What_a_rows_end_tells_is_how_far_colours_are_off() => InPage(async () =>
    {
        using var bench = await Opened(AtFirstRow());
        var end = Dyepath.Core.Making.Drift.RowEnd.Looks(bench.State!.Part.Planned!, 0, 0);
        Assert.Equal(0, bench.PhaseOf(end.Colour, end.Count));
        Assert.Equal(1, Math.Abs(bench.PhaseOf(end.Colour, end.Count + 1)!.Value));
        Assert.Null(bench.PhaseOf(end.Colour, 40));
    });

    [Fact]
    public Task A_part_that_is_finished_goes_on_with_the_next_and_round_to_what_was_left_out() => InPage(async () =>
    {
        var parts = Order.Parts.Length;
        using var bench = await Opened(Demo() with { Log = [.. Done(0)] });
        Assert.True(bench.State!.IsPartDone);
        Assert.Equal(1, bench.NextPart);
        await bench.FinishAsync();
        Assert.Equal((EntryKind.Part, 2), (Log.Last().Kind, Log.Last().To!.Value));
        Assert.Equal(1, bench.State.PartIndex);

        // From the last part, whatever is still to be done comes next, from the first on.
        using var last = await Opened(Demo() with { Log = [new Entry(EntryKind.Part, Now, To: parts), .. Done(parts - 1)] });
        Assert.Equal(0, last.NextPart);
        Entry[] all = [.. Enumerable.Range(0, parts).SelectMany(p => Done(p).Prepend(new Entry(EntryKind.Part, Now, To: p + 1)))];
        using var done = await Opened(Demo() with { Log = [.. all] });
        Assert.True(done.State!.IsDone);
        Assert.Null(done.NextPart);
        await done.FinishAsync();
        Assert.Equal(all.Length, Log.Count());
    });

    [Fact]
    public Task Before_the_first_stitch_her_own_yarn_is_asked_for_unless_she_begins_without() => InPage(async () =>
    {
        using var bench = await Opened(Demo());
        Assert.True(bench.IsOpening);
        bench.GoUnmeasured();
        Assert.False(bench.IsOpening);
        using var again = await Opened(Demo());
        await again.MeasuredAsync([[6, 4, 3, 5, 4], [6, 4, 3, 5, 4]], anew: false);
        await Until(() => again.View?.Own is not null);
        Assert.False(again.IsOpening);
        Assert.Equal(22, again.View!.Own!.Sequence);
        Assert.Equal([[6, 4, 3, 5, 4], [6, 4, 3, 5, 4]], _keeper.Document!.Counted.Select(r => r.ToArray()));
        // Once something is worked, the yarn is what it was.
        using var begun = await Opened(AtFirstRow());
        Assert.False(begun.IsOpening);
        await begun.MeasuredAsync([[6, 4, 3, 5, 4]], anew: false);
        Assert.Empty(_keeper.Document!.Counted);
    });

    [Fact]
    public Task What_another_tab_tapped_is_followed_and_another_log_is_gone_through_anew() => InPage(async () =>
    {
        using var bench = await Opened(AtFirstRow());
        await _keeper.AppendAsync(new Entry(EntryKind.Row, Now, Phase: 0));
        Assert.Equal(1, bench.State!.Row!.Row);
        await bench.FinishAsync(phase: 0);
        Assert.Equal(2, bench.State.Row!.Row);
        // What an entry leads to is what the whole log leads to.
        var whole = Dyepath.Core.Making.Work.MakingState.Begin(bench.View!.Order, bench.View.Own).Apply(_keeper.Document!.Log);
        Assert.Equal(whole.Row!.Row, bench.State.Row.Row);
        Assert.Equal(whole.Drift!.Filter.PhaseMean, bench.State.Drift!.Filter.PhaseMean);
    });

    [Fact]
    public Task What_fails_to_be_laid_out_keeps_its_place_and_is_reported() => InPage(async () =>
    {
        using var bench = await Opened(Demo(), new JobsThatFail(new InvalidOperationException("divided by nothing")));
        Assert.Equal(("It could not be laid out just now. Your place is kept; open the piece again.", false), (bench.Why, bench.IsLaying));
        await Until(() => _faults.Last is not null);
        Assert.Equal("divided by nothing", _faults.Last!.Message);
        using var known = await Opened(Demo(), new JobsThatFail(new JobException("none")));
        Assert.Equal("It could not be worked out just now. The piece is kept as it is: open the page anew to try again.", known.Why);
    });

    [Fact]
    public Task What_is_laid_out_after_the_page_was_left_is_let_go() => InPage(async () =>
    {
        var jobs = new JobsInHand();
        var bench = await Begun(Demo(), jobs);
        await Until(() => jobs.Asked == 1);
        Assert.True(bench.IsLaying);
        bench.Dispose();
        jobs.Finish(0);
        await Task.Delay(30, TestContext.Current.CancellationToken);
        Assert.Null(bench.View);
        Assert.False(_phone.IsAwake);
    });

    /// <summary>The pattern's hand holds until she chooses; the voice and its pace are hers; a piece that is done lets the screen go dark.</summary>
    [Fact]
    public Task Hand_voice_and_screen_are_as_she_and_the_pattern_say() => InPage(async () =>
    {
        var left = AtFirstRow();
        left = left with { Project = left.Project with { Edition = left.Project.Edition with { Hand = Core.Booklets.Hand.Left } } };
        _phone.Texts[BesideSettings.Name] = new BesideSettings { Speaks = true, Rate = 1.5, Voice = "Shore" }.Write();
        var bench = await Opened(left);
        Assert.True(bench.LeftHook);
        bench.Set(bench.Settings with { LeftHook = false });
        Assert.False(bench.LeftHook);
        await bench.FinishAsync();
        Assert.Equal((1.5, "Shore"), _phone.Voiced);
        Assert.True(_phone.IsAwake);
        Assert.Equal(0, _phone.Hushed);
        bench.Dispose();
        Assert.Equal((1, false), (_phone.Hushed, _phone.IsAwake));
        Entry[] all = [.. Enumerable.Range(0, Order.Parts.Length).SelectMany(p => Done(p).Prepend(new Entry(EntryKind.Part, Now, To: p + 1)))];
        using var done = await Opened(Demo() with { Log = [.. all] });
        done.Set(new BesideSettings { StaysAwake = true });
        Assert.False(_phone.IsAwake);
    });

    /// <summary>Whoever only looks at a step or row changes nothing; a tap while the design is laid out does nothing.</summary>
    [Fact]
    public Task Before_the_design_is_laid_out_nothing_can_be_finished() => InPage(async () =>
    {
        var jobs = new JobsInHand();
        using var bench = await Begun(AtFirstRow(), jobs);
        await Until(() => jobs.Asked == 1);
        await bench.FinishAsync();
        await bench.BackAsync();
        bench.Speak();
        Assert.Equal((null, null, null), (bench.NextPart, bench.PhaseOf(0, 1), bench.State));
        Assert.Equal(Before, Log.Count());
        Assert.Empty(_phone.Said);
        // What another tab did meanwhile is there once it is laid out.
        await _keeper.AppendAsync(new Entry(EntryKind.Row, Now, Phase: 0));
        Assert.Null(bench.State);
        jobs.Finish(0);
        await Until(() => bench.State is not null);
        Assert.Equal(1, bench.State!.Row!.Row);
        Assert.False(bench.IsLaying);
    });

    /// <summary>A doubted reading is forgotten by whatever is done instead; the same log in other order is gone through anew.</summary>
    [Fact]
    public Task What_is_done_instead_of_a_doubted_reading_ends_the_doubt() => InPage(async () =>
    {
        using var bench = await Opened(AtFirstRow());
        for (var i = 0; i < 4; i++)
            await bench.FinishAsync(phase: 0);
        var changed = 0;
        bench.Changed += () => changed++;
        await bench.FinishAsync(phase: 9);
        Assert.NotNull(bench.Doubted);
        Assert.True(changed > 0, "the page shows the doubt");
        await bench.BackAsync();
        Assert.Null(bench.Doubted);
        Assert.Equal(3, bench.State!.Row!.Row);
        changed = 0;
        bench.GoUnmeasured();
        bench.CountAgain();
        Assert.Equal(2, changed);
    });

    private static MakingDocument AtFirstRow() => Demo() with { Log = [.. Enumerable.Range(0, Before).Select(_ => new Entry(EntryKind.Step, Now))] };

    private static IEnumerable<Entry> Done(int part) =>
        Order.Parts[part].Steps.Select(s => new Entry(s is RowStep ? EntryKind.Row : EntryKind.Step, Now));

    private async Task<HookBench> Opened(MakingDocument making, IJobs? jobs = null)
    {
        var bench = await Begun(making, jobs ?? new JobsHere());
        await Until(() => !bench.IsLaying);
        return bench;
    }

    private async Task<HookBench> Begun(MakingDocument making, IJobs jobs)
    {
        _device.Put(Id, Piece.Of(making, Now, null, null));
        var tab = _device.Tab();
        _keeper = new MakingKeeper(tab, new MakingHost(_host.Client()), tab, new HandClock());
        await _keeper.OpenAsync(Id);
        var bench = new HookBench(_keeper, _phone, new Planner(jobs, _faults), _faults);
        bench.Open();
        return bench;
    }
}
