using Dyepath.Core.Making.Log;
using Dyepath.Workspace.Keeping;
using Dyepath.Workspace.Making.Store;
using Dyepath.Workspace.Store;
using static Dyepath.Workspace.Tests.Making.MakingBench;

namespace Dyepath.Workspace.Tests.Making;

public sealed class MakingKeeperTests : IDisposable
{
    private readonly DeviceHere _device = new();
    private readonly HostHere _host = new();
    private readonly HandClock _clock = new();
    private ShelfHere _tab = null!;

    public void Dispose() => _host.Dispose();

    [Fact]
    public Task An_entry_is_on_the_device_before_it_is_in_the_log_and_goes_to_the_host_when_the_hands_pause() => InPage(async () =>
    {
        var keeper = await Opened(Demo(), project: "p1");
        await Until(() => keeper.State == SaveState.Saved);
        Assert.Equal("p1", _host.Projects[Id]);
        var puts = Puts();
        List<(int Log, int Device)> seen = [];
        keeper.Changed += () => seen.Add((keeper.Document!.Log.Length, _device.Kept[Id].Content.Log.Length));
        Assert.True(await keeper.AppendAsync(Row(1)));
        Assert.True(await keeper.AppendAsync(Row(2)));
        Assert.All(seen, s => Assert.True(s.Device >= s.Log));
        Assert.Equal(SaveState.OnDevice, keeper.State);
        _clock.Pass(TimeSpan.FromSeconds(3.9));
        Assert.Equal(puts, Puts());
        _clock.Pass(TimeSpan.FromSeconds(0.2));
        await Until(() => keeper.State == SaveState.Saved);
        Assert.Equal(puts + 1, Puts());
        Assert.Equal([1, 2], Numbers(_host.Read(Id).Log));
        Assert.True(_device.Kept[Id].IsSent);
    });

    [Fact]
    public Task Taps_faster_than_the_device_keep_their_order_and_each_writes_one_entry() => InPage(async () =>
    {
        var keeper = await Opened(Demo());
        await Until(() => keeper.State == SaveState.Saved);
        _device.Written.Clear();
        var taps = Enumerable.Range(1, 40).Select(n => keeper.AppendAsync(Row(n))).ToArray();
        Assert.All(await Task.WhenAll(taps), Assert.True);
        Assert.Equal(Enumerable.Range(1, 40), Numbers(_device.Kept[Id].Content.Log));
        Assert.Equal(Enumerable.Range(1, 40), Numbers(keeper.Document!.Log));
        Assert.Equal(Enumerable.Repeat(1, 40), _device.Written);
    });

    [Fact]
    public Task A_time_is_kept_as_it_is_written() => InPage(async () =>
    {
        var keeper = await Opened(Demo());
        await keeper.AppendAsync(new Entry(EntryKind.Row, Now.AddTicks(12_345)));
        Assert.Equal(Now.AddMilliseconds(1), keeper.Document!.Log[0].At);
    });

    [Fact]
    public Task What_another_device_did_is_taken_when_the_page_is_seen_again() => InPage(async () =>
    {
        var keeper = await Opened(Demo(1, 2));
        await Until(() => keeper.State == SaveState.Saved);
        _host.Put(Id, Demo(1, 2, 3, 4));
        var asked = _host.Asked.Count;
        _clock.Pass(TimeSpan.FromHours(1));
        Assert.Equal(asked, _host.Asked.Count);
        _tab.Seen!(true);
        var project = keeper.Document!.Project;
        await Until(() => keeper.Document!.Log.Length == 4);
        Assert.Same(project, keeper.Document!.Project);
        await Until(() => keeper.State == SaveState.Saved);
        Assert.Equal([1, 2, 3, 4], Numbers(_device.Kept[Id].Content.Log));
        Assert.Equal(HostHere.Etag(_host.Texts[Id]), _device.Kept[Id].Etag);
    });

    [Fact]
    public Task What_the_host_has_not_got_yet_is_sent_after_what_it_has() => InPage(async () =>
    {
        _host.Put(Id, Demo(1));
        var keeper = await Opened(Demo(1, 2, 3));
        await Until(() => keeper.State == SaveState.Saved);
        Assert.Equal([1, 2, 3], Numbers(_host.Read(Id).Log));
    });

    [Theory]
    [InlineData(true, new[] { 1, 2, 3 })]
    [InlineData(false, new[] { 1, 9 })]
    public Task Where_neither_log_goes_on_from_the_other_the_maker_chooses(bool mine, int[] left) => InPage(async () =>
    {
        var keeper = await Opened(Demo(1));
        await Until(() => keeper.State == SaveState.Saved);
        _host.Put(Id, Demo(1, 9));
        await keeper.AppendAsync(Row(2));
        await keeper.AppendAsync(Row(3));
        _tab.Online!();
        await Until(() => keeper.State == SaveState.Conflict);
        Assert.Equal([1, 9], Numbers(keeper.Theirs!.Log));
        Assert.Equal([1, 2, 3], Numbers(keeper.Document!.Log));
        Assert.Equal([1, 9], Numbers(_host.Read(Id).Log));
        Assert.False(await keeper.AppendAsync(Row(4)));
        if (mine)
            keeper.KeepMine();
        else
            keeper.TakeTheirs();
        await Until(() => keeper.State == SaveState.Saved);
        Assert.Null(keeper.Theirs);
        Assert.Equal(left, Numbers(keeper.Document!.Log));
        await Until(() => Numbers(_device.Kept[Id].Content.Log).SequenceEqual(left));
        Assert.Equal(left, Numbers(_host.Read(Id).Log));
        Assert.True(await keeper.AppendAsync(Row(20)));
    });

    [Fact]
    public Task Another_design_under_the_same_id_is_a_conflict_too() => InPage(async () =>
    {
        _host.Put(Id, Demo(1, 2) with { Size = "L" });
        var keeper = await Opened(Demo(1));
        await Until(() => keeper.State == SaveState.Conflict);
        keeper.TakeTheirs();
        await Until(() => keeper.Document!.Size == "L");
        await Until(() => _device.Kept[Id].Content.Making.Size == "L");
    });

    [Fact]
    public Task The_makers_own_count_goes_to_the_host_and_comes_from_it() => InPage(async () =>
    {
        var keeper = await Opened(Demo(1));
        await Until(() => keeper.State == SaveState.Saved);
        var sections = keeper.Document!.Project.Yarn.Sections.Length;
        Assert.True(await keeper.BeginAnewAsync(keeper.Document! with { Counted = [[.. Enumerable.Repeat(7, sections)]] }));
        _clock.Pass(PieceKeeping.Pause);
        await Until(() => keeper.State == SaveState.Saved);
        Assert.Equal(7, _host.Read(Id).Counted[0][0]);
        Assert.Equal([1], Numbers(_host.Read(Id).Log));
        _host.Put(Id, Demo(1, 2) with { Counted = [[.. Enumerable.Repeat(8, sections)]] });
        _tab.Seen!(true);
        await Until(() => keeper.Document!.Log.Length == 2);
        Assert.Equal(8, keeper.Document!.Counted[0][0]);
        Assert.Equal(8, _device.Kept[Id].Content.Making.Counted[0][0]);
    });

    [Fact]
    public Task Without_a_connection_everything_is_kept_and_goes_to_the_host_when_it_is_back() => InPage(async () =>
    {
        _host.IsAway = true;
        var keeper = await Opened(Demo());
        await keeper.AppendAsync(Row(1));
        _clock.Pass(PieceKeeping.Pause);
        await Until(() => Puts() == 2);
        await Until(() => keeper.State == SaveState.OnDevice);
        _host.IsAway = false;
        _tab.Online!();
        await Until(() => keeper.State == SaveState.Saved);
        Assert.Equal([1], Numbers(_host.Read(Id).Log));
    });

    /// <summary>The host was stopped, and the device's own connection was there all the time.</summary>
    [Fact]
    public Task A_host_that_comes_back_unheard_is_found_by_asking_again() => InPage(async () =>
    {
        _host.IsAway = true;
        var keeper = await Opened(Demo());
        await keeper.AppendAsync(Row(1));
        _clock.Pass(PieceKeeping.Pause);
        await Until(() => Puts() == 2);
        await Until(() => keeper is { State: SaveState.OnDevice, IsOnItsWay: false });
        // However long it was asked in vain, it is asked again within half a minute.
        await Until(() => AfterHalfAMinute(() => Puts() >= 7));
        _host.IsAway = false;
        await Until(() => AfterHalfAMinute(() => keeper.State == SaveState.Saved));
        Assert.Equal([1], Numbers(_host.Read(Id).Log));

        bool AfterHalfAMinute(Func<bool> reached)
        {
            _clock.Pass(TimeSpan.FromSeconds(30));
            return reached();
        }
    });

    [Fact]
    public Task A_tap_that_the_host_will_be_told_of_is_on_its_way() => InPage(async () =>
    {
        var keeper = await Opened(Demo());
        await Until(() => keeper.State == SaveState.Saved);
        Assert.False(keeper.IsOnItsWay);
        await keeper.AppendAsync(Row(1));
        Assert.True(keeper.IsOnItsWay);
        _host.IsAway = true;
        _clock.Pass(PieceKeeping.Pause);
        await Until(() => !keeper.IsOnItsWay);
        Assert.Equal(SaveState.OnDevice, keeper.State);
    });

    [Fact]
    public Task A_piece_that_was_handed_over_is_not_on_its_way() => InPage(async () =>
    {
        var keeper = await Opened(Demo(), key: "k");
        await keeper.AppendAsync(Row(1));
        Assert.Equal((SaveState.OnDevice, false), (keeper.State, keeper.IsOnItsWay));
    });

    [Fact]
    public Task A_page_that_is_left_sends_at_once() => InPage(async () =>
    {
        var keeper = await Opened(Demo());
        await Until(() => keeper.State == SaveState.Saved);
        await keeper.AppendAsync(Row(1));
        _tab.Seen!(false);
        await Until(() => keeper.State == SaveState.Saved);
        Assert.Equal([1], Numbers(_host.Read(Id).Log));
        var asked = _host.Asked.Count;
        _tab.Seen!(false);
        Assert.Equal(asked, _host.Asked.Count);
    });

    [Fact]
    public Task A_host_that_lost_the_piece_gets_it_anew() => InPage(async () =>
    {
        var keeper = await Opened(Demo(1), project: "p1");
        await Until(() => keeper.State == SaveState.Saved);
        _host.Texts.Clear();
        _tab.Seen!(true);
        await Until(() => _host.Texts.ContainsKey(Id));
        Assert.Equal("p1", _host.Projects[Id]);
        await Until(() => keeper.State == SaveState.Saved);
        // And where the loss shows only when something is sent.
        _host.Texts.Clear();
        await keeper.AppendAsync(Row(2));
        _clock.Pass(PieceKeeping.Pause);
        await Until(() => keeper.State == SaveState.Saved);
        Assert.Equal([1, 2], Numbers(_host.Read(Id).Log));
    });

    [Fact]
    public Task A_piece_that_only_the_host_has_is_put_on_this_device() => InPage(async () =>
    {
        _host.Put(Id, Demo(1, 2));
        _host.Projects[Id] = "p1";
        var keeper = Keeper();
        Assert.Equal(ServerReply.Done, await keeper.OpenAsync(Id));
        Assert.Equal(SaveState.Saved, keeper.State);
        Assert.Equal([1, 2], Numbers(_device.Kept[Id].Content.Log));
        Assert.Equal("p1", _device.Kept[Id].Content.ProjectId);
        Assert.Equal(ServerReply.Missing, await Keeper().OpenAsync("0193b5c2-0d60-7000-8000-0000000000a2"));
    });

    [Fact]
    public Task A_piece_that_was_handed_over_never_leaves_by_itself() => InPage(async () =>
    {
        var keeper = await Opened(Demo(), key: "k");
        await keeper.AppendAsync(Row(1));
        _clock.Pass(PieceKeeping.Pause);
        _tab.Seen!(true);
        _tab.Seen!(false);
        _tab.Online!();
        Assert.Empty(_host.Asked);
        Assert.Equal(SaveState.OnDevice, keeper.State);
    });

    [Fact]
    public Task A_tab_follows_another_tab() => InPage(async () =>
    {
        var first = await Opened(Demo(1));
        var project = first.Document!.Project;
        var second = Keeper();
        await second.OpenAsync(Id);
        await second.AppendAsync(Row(2));
        await Until(() => first.Document!.Log.Length == 2);
        // Or the piece would be planned anew at every tap of the other tab.
        Assert.Same(project, first.Document!.Project);
        Assert.True(await first.AppendAsync(Row(3)));
        await Until(() => second.Document!.Log.Length == 3);
        Assert.Equal([1, 2, 3], Numbers(_device.Kept[Id].Content.Log));
    });

    [Fact]
    public Task A_piece_that_could_not_be_begun_does_not_appear_later() => InPage(async () =>
    {
        (_device.IsFull, _host.IsAway) = (true, true);
        var keeper = Keeper();
        var (id, why) = await keeper.CreateAsync(Piece.Of(Demo(), Now));
        Assert.Null(id);
        Assert.Contains("The disk is full.", why, StringComparison.Ordinal);
        (_device.IsFull, _host.IsAway) = (false, false);
        _clock.Pass(TimeSpan.FromMinutes(1));
        _tab.Online!();
        _tab.Seen!(true);
        for (var turns = 0; turns < 20; turns++)
            await Task.Yield();
        Assert.Empty(_device.Kept);
        Assert.Empty(_host.Texts);
    });

    [Fact]
    public Task A_piece_that_was_just_begun_hears_of_the_other_tabs() => InPage(async () =>
    {
        var first = Keeper();
        var tab = _tab;
        var (id, _) = await first.CreateAsync(Piece.Of(Demo(1), Now));
        Assert.NotNull(tab.Wrote);
        var second = Keeper();
        await second.OpenAsync(id!);
        Assert.True(await second.AppendAsync(Row(2)));
        await Until(() => first.ReadAsync(id!) is { IsCompletedSuccessfully: true, Result.Log.Length: 2 });
    });

    [Fact]
    public Task The_project_of_a_piece_is_asked_for_once() => InPage(async () =>
    {
        _host.Put(Id, Demo(1));
        _host.Projects[Id] = "p1";
        var keeper = Keeper();
        await keeper.OpenAsync(Id);
        for (var log = 2; log < 5; log++)
        {
            _host.Put(Id, Demo([.. Enumerable.Range(1, log)]));
            _tab.Seen!(true);
            await Until(() => keeper.Document!.Log.Length == log && keeper.State == SaveState.Saved);
        }
        Assert.Equal("p1", keeper.Piece!.ProjectId);
        Assert.Single(_host.Asked, a => a == $"GET {Dyepath.Contracts.ApiPaths.Makings}");
    });

    [Fact]
    public Task A_piece_that_is_damaged_on_the_host_is_not_said_to_be_out_of_reach() => InPage(async () =>
    {
        _host.Put(Id, Demo(1));
        _host.IsDamaged = true;
        Assert.Equal(ServerReply.Damaged, await Keeper().OpenAsync(Id));
    });

    [Fact]
    public Task Of_two_tabs_that_tap_at_once_the_second_is_told_and_shows_what_the_first_did() => InPage(async () =>
    {
        var first = await Opened(Demo(1));
        var tab = _tab;
        var second = Keeper();
        await second.OpenAsync(Id);
        tab.IsDeaf = true;
        Assert.True(await second.AppendAsync(Row(2)));
        Assert.False(await first.AppendAsync(Row(3)));
        Assert.Equal(SaveState.Elsewhere, first.State);
        Assert.Equal([1, 2], Numbers(first.Document!.Log));
        Assert.True(await first.AppendAsync(Row(3)));
        Assert.NotEqual(SaveState.Elsewhere, first.State);
        Assert.Equal([1, 2, 3], Numbers(_device.Kept[Id].Content.Log));
    });

    [Fact]
    public Task A_log_that_another_tab_wrote_anew_is_not_gone_on_with_blindly() => InPage(async () =>
    {
        var first = await Opened(Demo(1, 2));
        await Until(() => first.State == SaveState.Saved);
        var tab = _tab;
        var second = Keeper();
        await second.OpenAsync(Id);
        tab.IsDeaf = true;
        _host.Put(Id, Demo(1, 9));
        _tab.Seen!(true);
        // Another device's maker has chosen: what the host had of this one is taken the place of.
        await Until(() => Numbers(second.Document!.Log).SequenceEqual([1, 9]));
        await Until(() => Numbers(_device.Kept[Id].Content.Log).SequenceEqual([1, 9]));
        // Both logs are two long.
        Assert.False(await first.AppendAsync(Row(3)));
        Assert.Equal([1, 9], Numbers(first.Document!.Log));
    });

    [Fact]
    public Task A_piece_put_away_in_another_tab_is_not_made_anew() => InPage(async () =>
    {
        var keeper = await Opened(Demo(1));
        await Until(() => keeper.State == SaveState.Saved);
        _host.Texts.Clear();
        await _device.Tab().RemoveAsync(Id);
        await Until(() => keeper.State == SaveState.Failed);
        Assert.Contains("put away", keeper.Why, StringComparison.Ordinal);
        Assert.False(await keeper.AppendAsync(Row(2)));
        _tab.Seen!(true);
        Assert.Empty(_host.Texts);
        Assert.Empty(_device.Kept);
    });

    [Fact]
    public Task Where_the_device_does_not_write_that_is_said_and_nothing_is_lost() => InPage(async () =>
    {
        _host.IsAway = true;
        var keeper = await Opened(Demo(1));
        _device.IsFull = true;
        Assert.True(await keeper.AppendAsync(Row(2)));
        await Until(() => keeper.State == SaveState.Failed);
        Assert.Contains("The disk is full.", keeper.Why, StringComparison.Ordinal);
        Assert.Equal([1, 2], Numbers(keeper.Document!.Log));
        _host.IsAway = false;
        Assert.True(await keeper.AppendAsync(Row(3)));
        await Until(() => keeper.State == SaveState.Saved);
        Assert.Equal([1, 2, 3], Numbers(_host.Read(Id).Log));
        Assert.Equal([1], Numbers(_device.Kept[Id].Content.Log));
        _device.IsFull = false;
        Assert.True(await keeper.AppendAsync(Row(4)));
        Assert.Equal([1, 2, 3, 4], Numbers(_device.Kept[Id].Content.Log));
    });

    [Fact]
    public Task Entries_that_the_device_did_not_take_and_another_tabs_are_not_mixed() => InPage(async () =>
    {
        _host.IsAway = true;
        var first = await Opened(Demo(1));
        var second = Keeper();
        await second.OpenAsync(Id);
        _device.IsFull = true;
        await first.AppendAsync(Row(2));
        _device.IsFull = false;
        await second.AppendAsync(Row(9));
        await Until(() => first.State == SaveState.Conflict);
        Assert.Equal([1, 9], Numbers(first.Theirs!.Log));
        first.KeepMine();
        await Until(() => Numbers(_device.Kept[Id].Content.Log).SequenceEqual([1, 2]));
        await Until(() => Numbers(second.Document!.Log).SequenceEqual([1, 2]));
    });

    private int Puts() => _host.Asked.Count(a => a.StartsWith("PUT", StringComparison.Ordinal));

    private MakingKeeper Keeper() =>
        new(_tab = _device.Tab(), new MakingHost(_host.Client()), _tab, _clock);

    private async Task<MakingKeeper> Opened(MakingDocument making, string? project = null, string? key = null)
    {
        _device.Put(Id, Piece.Of(making, Now, project, key));
        var keeper = Keeper();
        Assert.Equal(ServerReply.Done, await keeper.OpenAsync(Id));
        return keeper;
    }

    [Fact]
    public Task A_full_log_takes_no_more_and_says_so() => InPage(async () =>
    {
        _host.IsAway = true;
        var keeper = await Opened(Demo() with { Log = [.. Enumerable.Range(0, MakingDocument.MostEntries - 1).Select(n => new Entry(EntryKind.Row, Now.AddSeconds(n)))] });
        await Until(() => keeper.State == SaveState.OnDevice);
        Assert.Equal("", keeper.Why);
        Assert.True(await keeper.AppendAsync(new Entry(EntryKind.Row, Now)));
        Assert.False(await keeper.AppendAsync(new Entry(EntryKind.Row, Now)));
        Assert.Equal((SaveState.Failed, "The log of a piece has at most 20000 entries."), (keeper.State, keeper.Why));
        Assert.Equal(20_000, keeper.Document!.Log.Length);
    });

    [Fact]
    public Task What_is_not_kept_is_said_word_for_word() => InPage(async () =>
    {
        var keeper = new MakingKeeper(_device.Tab(), new MakingHost(_host.Client()), _device.Tab(), _clock);
        Assert.Equal((SaveState.Saved, "", null, null, false, false), (keeper.State, keeper.Why, keeper.Id, keeper.Piece, keeper.StaysHere, keeper.NeedsSignIn));
        Assert.False(await keeper.AppendAsync(Row(1)));
        var open = await Opened(Demo(1));
        await Until(() => open.State == SaveState.Saved);
        Assert.NotNull(open.Piece);
        (_device.IsFull, _host.IsAway) = (true, true);
        Assert.True(await open.AppendAsync(Row(2)));
        Assert.Equal("This device did not keep it: The disk is full..", open.Why);
        _tab.Removed!(Id);
        Assert.Equal(("This piece was put away in another tab.", null), (open.Why, open.Piece));
        Assert.NotNull(open.Document);
        open.Forget("another");
        Assert.Equal(Id, open.Id);
        open.Forget(Id);
        Assert.Equal((null, null), (open.Id, open.Document));
    });
}
