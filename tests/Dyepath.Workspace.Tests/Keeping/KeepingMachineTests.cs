using Dyepath.Workspace.Keeping;

namespace Dyepath.Workspace.Tests.Keeping;

/// <summary>What the machine asks for, and when: the device first, then the host after a pause, other tabs' texts later than its own.</summary>
public sealed class KeepingMachineTests
{
    private readonly KeepingMachine<string> _machine = new(new WordRules(IsLog: false));
    private readonly List<KeepingCommand<string>> _asked = [];
    private KeepingState<string> _now = null!;

    [Fact]
    public void A_new_text_is_written_to_the_device_and_sent_once_the_device_knows_that_it_will_be()
    {
        Begin(_machine.Create("a", "0"));
        Assert.Equal(("0", null, false), One((WriteDevice<string> w) => (w.Copy.Content, w.Copy.Etag, w.Copy.IsSent)));
        // Writers, changes, edits and stamps are counted from 1.
        Assert.Equal((1, 1, true), (_now.Edit, _now.Changes, _now.IsOwn));
        Assert.Equal((Lineage.None.With("a", 1), "a", 1), One((WriteDevice<string> w) => (w.Copy.Lineage, w.Copy.Writer, w.Edit)));
        Held("0");
        Assert.Equal(("0", null, false), One((WriteHost<string> w) => (w.Content, w.Etag, w.Leaving)));
        On(new HostTook<string>("\"0\"", "1"));
        Assert.True(_now.IsSent);
        Assert.True(One((WriteDevice<string> w) => w.Copy is { IsSent: true, Etag: "\"0\"", Made: "1" }));
        Assert.Equal(SaveState.Saved, _now.Shown(new WordRules(false)));
    }

    [Fact]
    public void A_change_is_sent_after_a_quiet_second_under_the_etag_of_the_last()
    {
        Sent();
        On(new Changed<string>("0 1"));
        Assert.Equal(TimeSpan.FromSeconds(1), One((SetAlarm<string> s) => s.After));
        var alarm = One((SetAlarm<string> s) => (s.Kind, s.Number));
        Assert.Equal("0 1", One((WriteDevice<string> w) => w.Copy.Content));
        Held("0 1");
        Assert.DoesNotContain(_asked, c => c is WriteHost<string>);
        // An alarm that was set anew since is of no use.
        On(new Rang<string>(alarm.Kind, alarm.Number - 1));
        Assert.False(_now.IsDue);
        On(new Rang<string>(alarm.Kind, alarm.Number));
        Held("0 1");
        Assert.Equal(("0 1", "\"0\""), One((WriteHost<string> w) => (w.Content, w.Etag)));
    }

    [Fact]
    public void A_page_that_is_left_sends_at_once_and_says_so()
    {
        Sent();
        On(new Changed<string>("0 1"));
        Held("0 1");
        On(new Seen<string>(InView: false));
        Held("0 1");
        Assert.True(One((WriteHost<string> w) => w.Leaving));
        On(new HostTook<string>("\"0 1\"", "1"));
        Held("0 1");
        On(new Seen<string>(InView: true));
        Assert.Contains(_asked, c => c is ReadDevice<string>);
        On(new DeviceHas<string>([_now.Held!]));
        Assert.Contains(_asked, c => c is ReadHost<string>);
    }

    [Fact]
    public void A_connection_that_is_back_asks_the_host_at_once_where_it_knows_the_text()
    {
        Begin(_machine.Create("a", "0"));
        Held("0");
        On(new HostDidNot<string>(HostTrouble.Away));
        On(new Connected<string>());
        Assert.DoesNotContain(_asked, c => c is ReadHost<string>);
        Assert.Contains(_asked, c => c is WriteHost<string>);
        Assert.Equal(0, _now.Tries);
        On(new HostTook<string>("\"0\"", "1"));
        On(new Connected<string>());
        Assert.Contains(_asked, c => c is ReadHost<string>);
    }

    /// <summary>The picture beside a text is no change of it: it goes to the host where it is worth a sending, with the text as it is.</summary>
    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void What_is_redrawn_is_shown_and_sent_only_where_it_is_worth_it(bool sends)
    {
        Sent();
        var edit = _now.Edit;
        On(new Redrawn<string>("0", sends));
        Assert.Equal((edit, sends), (_now.Edit, _now.IsRedrawn));
        Assert.Equal(sends, _asked.OfType<SetAlarm<string>>().Any(s => s.Kind == AlarmKind.Send && s.After == TimeSpan.FromSeconds(1)));
        On(new Rang<string>(AlarmKind.Send, _now.Alarms.GetValueOrDefault(AlarmKind.Send)));
        Assert.Equal(sends, _asked.Any(c => c is WriteHost<string>));
        // Of another text it is too late.
        var mine = _now.Mine;
        On(new Redrawn<string>("other", true));
        Assert.Equal(mine, _now.Mine);
    }

    [Fact]
    public void A_host_that_does_not_take_it_is_asked_again_after_ever_longer_rests()
    {
        Begin(_machine.Create("a", "0"));
        Held("0");
        foreach (var (seconds, trouble) in new[] { (2, HostTrouble.Away), (5, HostTrouble.Busy), (15, HostTrouble.Away), (30, HostTrouble.Away), (30, HostTrouble.Away) })
        {
            On(new HostDidNot<string>(trouble, "why"));
            Assert.Equal(TimeSpan.FromSeconds(seconds), One((SetAlarm<string> s) => s.After));
            Assert.Equal((trouble, "why"), (_now.Trouble, _now.HostWhy));
            On(new Rang<string>(AlarmKind.Send, _now.Alarms[AlarmKind.Send]));
            Assert.Contains(_asked, c => c is WriteHost<string>);
        }
        On(new HostDidNot<string>(HostTrouble.Busy, After: TimeSpan.FromMinutes(7)));
        Assert.Equal(TimeSpan.FromMinutes(7), One((SetAlarm<string> s) => s.After));
        On(new Rang<string>(AlarmKind.Send, _now.Alarms[AlarmKind.Send]));
        // What it refuses is not asked of it again by itself, and neither is what waits for her to sign in.
        On(new HostDidNot<string>(HostTrouble.Refused, "too large"));
        Assert.DoesNotContain(_asked, c => c is SetAlarm<string>);
        On(new Changed<string>("0 1"));
        Assert.Equal(HostTrouble.None, _now.Trouble);
    }

    [Fact]
    public void A_device_that_refuses_rests_ten_seconds_and_the_host_takes_it_meanwhile()
    {
        Begin(_machine.Create("a", "0"));
        On(new DeviceFailed<string>("The disk is full."));
        Assert.Equal((AlarmKind.Device, TimeSpan.FromSeconds(10)), One((SetAlarm<string> s) => (s.Kind, s.After)));
        Assert.Equal("The disk is full.", _now.DeviceWhy);
        Assert.Contains(_asked, c => c is WriteHost<string>);
        Assert.DoesNotContain(_asked, c => c is WriteDevice<string>);
        On(new Rang<string>(AlarmKind.Device, _now.Alarms[AlarmKind.Device]));
        Assert.Contains(_asked, c => c is WriteDevice<string>);
        Held("0");
        Assert.Null(_now.DeviceWhy);
    }

    [Fact]
    public void What_another_tab_wrote_and_has_not_sent_is_shown_at_once_and_left_for_it_to_send_ten_seconds()
    {
        Sent();
        On(new OtherTabWrote<string>());
        On(new DeviceHas<string>([Copy("b", "0 2", _now.Lineage.With("b", 1))]));
        Assert.Equal(("0 2", false), One((ShowText<string> s) => (s.Content, s.Chosen)));
        Assert.Contains(_asked.OfType<SetAlarm<string>>(), s => s.Kind == AlarmKind.Send && s.After == TimeSpan.FromSeconds(10));
        // A change by hand within the half second of a glance was made to the text before.
        Assert.Contains(_asked.OfType<SetAlarm<string>>(), s => s.Kind == AlarmKind.Glance && s.After == TimeSpan.FromMilliseconds(500));
        Assert.NotNull(_now.Unseen);
        On(new Rang<string>(AlarmKind.Glance, _now.Alarms[AlarmKind.Glance]));
        Assert.Null(_now.Unseen);
    }

    /// <summary>Both tabs came to the same text, and the other one's is on the host: nothing is left to be sent.</summary>
    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void The_same_text_of_two_tabs_is_no_conflict_and_known_to_the_host_where_either_is(bool sent)
    {
        Begin(_machine.Create("a", "0"));
        Held("0");
        On(new HostDidNot<string>(HostTrouble.Away));
        On(new OtherTabWrote<string>());
        var copy = Copy("b", "0", Lineage.None.With("b", 1)) with { IsSent = sent, Etag = sent ? "\"0\"" : null };
        On(new DeviceHas<string>([_now.Held!, copy]));
        Assert.Equal(("0", null, sent), (_now.Mine, _now.Theirs, _now.IsSent));
        Assert.True(_now.Lineage.Follows(copy.Lineage) && _now.Lineage.Follows(Lineage.None.With("a", 1)));
        Assert.Equal(sent ? "\"0\"" : null, _now.Etag);
        Assert.DoesNotContain(_asked, c => c is ShowText<string>);
    }

    [Fact]
    public void The_same_text_stays_known_to_the_host_where_this_tab_has_sent_it()
    {
        Sent();
        On(new OtherTabWrote<string>());
        On(new DeviceHas<string>([_now.Held!, Copy("b", "0", Lineage.None.With("b", 1)) with { Etag = "\"old\"" }]));
        Assert.True(_now.IsSent);
        Assert.Equal(("\"0\"", 0), (_now.Etag, _now.Includes.Length));
        Assert.True(_now.Lineage.Follows(Lineage.None.With("b", 1)));
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void In_a_conflict_her_choice_is_kept_sent_and_no_longer_asked(bool mine)
    {
        Begin(_machine.Create("a", "0 1"));
        Held("0 1");
        On(new HostDidNot<string>(HostTrouble.Away));
        On(new OtherTabWrote<string>());
        var other = Copy("b", "0 2", Lineage.None.With("b", 1));
        On(new DeviceHas<string>([_now.Held!, other]));
        Assert.Equal(("0 1", "0 2"), (_now.Mine, _now.Theirs?.Content));
        On(new Chose<string>(mine));
        if (!mine)
        {
            Assert.Contains(_asked, c => c is ReadDevice<string>);
            On(new DeviceHas<string>([_now.Held!, other]));
            Assert.Equal(("0 2", true), One((ShowText<string> s) => (s.Content, s.Chosen)));
        }
        Assert.Equal((mine ? "0 1" : "0 2", null), (_now.Mine, _now.Theirs));
        Assert.True(_now.Lineage.Follows(other.Lineage) && _now.Lineage.Follows(Lineage.None.With("a", 1)));
        for (var i = 0; i < 4 && !_asked.Any(c => c is WriteHost<string>); i++)
        {
            if (_asked.Any(c => c is ReadDevice<string>))
                On(new DeviceHas<string>([other]));
            else
                Held(_now.Mine!);
        }
        Assert.Equal(_now.Mine, One((WriteHost<string> w) => w.Content));
    }

    /// <summary>A host that was emptied has nothing, and is given the text again as a new one.</summary>
    [Fact]
    public void What_the_host_lost_is_sent_to_it_anew()
    {
        Sent();
        On(new Seen<string>(InView: true));
        On(new DeviceHas<string>([_now.Held!]));
        Assert.Contains(_asked, c => c is ReadHost<string>);
        On(new HostDidNot<string>(HostTrouble.Missing));
        Assert.Equal((null, null, false), (_now.Etag, _now.Made, _now.IsSent));
        Assert.Contains("1", _now.LostMades);
        for (var i = 0; i < 4 && !_asked.Any(c => c is WriteHost<string>); i++)
            Held("0");
        Assert.Equal(("0", null), One((WriteHost<string> w) => (w.Content, w.Etag)));
    }

    [Fact]
    public void What_is_put_away_in_another_tab_is_neither_written_nor_sent_any_more()
    {
        Sent();
        On(new PutAwayElsewhere<string>());
        Assert.Equal(Stage.Closed, _now.Stage);
        On(new Changed<string>("0 1"));
        On(new Connected<string>());
        Assert.Empty(_asked);
        Assert.Equal("0", _now.Mine);
    }

    [Fact]
    public void A_device_that_is_silent_is_waited_for_three_seconds_and_then_the_host_is_asked()
    {
        Begin(_machine.Open("a"));
        Assert.Contains(_asked, c => c is ReadDevice<string>);
        Assert.Equal((AlarmKind.Patience, TimeSpan.FromSeconds(3)), One((SetAlarm<string> s) => (s.Kind, s.After)));
        On(new Rang<string>(AlarmKind.Patience, _now.Alarms[AlarmKind.Patience]));
        Assert.Contains(_asked, c => c is ReadHost<string>);
        On(new HostHas<string>("0", "\"0\"", "1"));
        Assert.Equal((Stage.Open, "0", true, "\"0\""), (_now.Stage, _now.Mine, _now.IsSent, _now.Etag));
    }

    /// <summary>What is nowhere else comes before what the host has; of two of a kind her own before the latest.</summary>
    [Fact]
    public void Of_several_copies_the_unsent_one_then_her_own_then_the_latest_is_opened()
    {
        var at = DateTimeOffset.UnixEpoch;
        var sent = Copy("b", "sent", Lineage.None.With("b", 1)) with { IsSent = true, Etag = "\"sent\"", At = at.AddDays(3) };
        var own = Copy("before", "own", Lineage.None.With("before", 1)) with { At = at };
        var latest = Copy("c", "latest", Lineage.None.With("c", 1)) with { At = at.AddDays(2) };
        var earlier = Copy("d", "earlier", Lineage.None.With("d", 1)) with { At = at.AddDays(1) };
        var gone = Copy("e", "gone on from", Lineage.None) with { At = at.AddDays(9) };
        Assert.Equal("own", Opened(sent, earlier, own, latest));
        Assert.Equal("latest", Opened(sent, earlier, latest, gone));
        Assert.Equal("sent", Opened(sent));

        string? Opened(params Copy<string>[] copies)
        {
            Begin(_machine.Open("a", "before"));
            On(new DeviceHas<string>([.. copies]));
            On(new HostDidNot<string>(HostTrouble.Away));
            return _now.Mine;
        }
    }

    [Fact]
    public void What_is_nowhere_is_closed_with_the_hosts_reason()
    {
        Begin(_machine.Open("a"));
        On(new DeviceHas<string>([]));
        Assert.Contains(_asked, c => c is ReadHost<string>);
        On(new HostDidNot<string>(HostTrouble.Missing, "It is not there."));
        Assert.Equal((Stage.Closed, HostTrouble.Missing, "It is not there."), (_now.Stage, _now.Trouble, _now.HostWhy));
    }

    /// <summary>A host's copy that is damaged is written over with the device's, three times at most.</summary>
    [Fact]
    public void What_is_damaged_on_the_host_is_mended_three_times_and_no_oftener()
    {
        Sent();
        for (var i = 0; i < 3; i++)
        {
            On(new HostDidNot<string>(HostTrouble.Damaged, "damaged"));
            Assert.Equal((i + 1, HostTrouble.Damaged, false), (_now.Tries, _now.Trouble, _now.IsSent));
            for (var k = 0; k < 4 && !_asked.Any(c => c is WriteHost<string>); k++)
                Held("0");
            Assert.Contains(_asked, c => c is WriteHost<string>);
        }
        On(new HostDidNot<string>(HostTrouble.Damaged, "damaged"));
        Held("0");
        Assert.DoesNotContain(_asked, c => c is WriteHost<string>);
    }

    /// <summary>Of two logs the longer goes on from the shorter: it is kept on the device as what follows the host's, and sent.</summary>
    [Fact]
    public void A_log_that_goes_on_from_the_hosts_is_sent_under_the_hosts_etag()
    {
        var machine = new KeepingMachine<string>(new WordRules(IsLog: true));
        void Tell(KeepingEvent<string> happened) => Begin(machine.On(_now, happened));
        Begin(machine.Open("a"));
        var copy = Copy("b", "0 1 2", Lineage.None.With("b", 3)) with { Etag = "\"0\"", Made = "1" };
        Tell(new DeviceHas<string>([copy]));
        Assert.Equal((Stage.Open, "0 1 2"), (_now.Stage, _now.Mine));
        Assert.Contains(_asked, c => c is ReadHost<string>);
        Tell(new HostHas<string>("0 1", "\"0 1\"", "1"));
        Assert.Equal(("0 1 2", "\"0 1\"", null), (_now.Mine, _now.Etag, _now.Theirs));
        // The device is told which of the host's texts this one follows.
        var write = Assert.Single(_asked.OfType<WriteDevice<string>>());
        Assert.Equal(("\"0 1\"", false), (write.Copy.Etag, write.Copy.IsSent));
        Assert.Equal(("0 1 2", "\"0 1\""), One((WriteHost<string> w) => (w.Content, w.Etag)));
        Tell(new DeviceHolds<string>(write.Copy, write.Edit, write.Stamp, Others: false));
        Tell(new HostTook<string>("\"0 1 2\"", "1"));
        write = Assert.Single(_asked.OfType<WriteDevice<string>>());
        Assert.Equal(("\"0 1 2\"", true), (write.Copy.Etag, write.Copy.IsSent));
        // What another device did since is gone on from.
        Tell(new DeviceHolds<string>(write.Copy, write.Edit, write.Stamp, Others: false));
        Tell(new Seen<string>(InView: true));
        Tell(new DeviceHas<string>([write.Copy]));
        Tell(new HostHas<string>("0 1 2 3", "\"0 1 2 3\"", "1"));
        Assert.Equal(("0 1 2 3", true), (_now.Mine, _now.IsSent));
        Assert.Equal("0 1 2 3", One((ShowText<string> s) => s.Content));
    }

    /// <summary>A log's entry holds once the device has it, and is refused where another tab went on first.</summary>
    [Fact]
    public void An_entry_that_came_second_is_refused_and_the_other_tabs_is_looked_at()
    {
        var machine = new KeepingMachine<string>(new WordRules(IsLog: true));
        void Tell(KeepingEvent<string> happened) => Begin(machine.On(_now, happened));
        Begin(machine.Create("a", "0"));
        var write = Assert.Single(_asked.OfType<WriteDevice<string>>());
        Tell(new DeviceHolds<string>(write.Copy, write.Edit, write.Stamp, Others: false));
        Tell(new Changed<string>("0 1"));
        Assert.Equal(("0", "0 1"), (_now.Mine, _now.Pending));
        Assert.True(One((WriteDevice<string> w) => w.Yields));
        Tell(new DeviceIsAhead<string>());
        Assert.Equal(("0", null, true), (_now.Mine, _now.Pending, _now.IsElsewhere));
        Assert.Contains(_asked, c => c is ReadDevice<string>);
        Tell(new DeviceHas<string>([Copy("b", "0 2", _now.Lineage.With("b", 1))]));
        Assert.Equal("0 2", _now.Mine);
        if (_asked.OfType<WriteDevice<string>>().FirstOrDefault() is { } anew)
            Tell(new DeviceHolds<string>(anew.Copy, anew.Edit, anew.Stamp, Others: false));
        Tell(new Changed<string>("0 2 3"));
        write = _asked.OfType<WriteDevice<string>>().Last();
        Tell(new DeviceHolds<string>(write.Copy, write.Edit, write.Stamp, Others: false));
        Assert.Equal(("0 2 3", null, false), (_now.Mine, _now.Pending, _now.IsElsewhere));
    }

    /// <summary>What is sent once says so once: the next sending is no leaving, no redrawing and no text that was replaced.</summary>
    [Fact]
    public void What_a_sending_was_for_is_done_with_it()
    {
        Sent();
        On(new Changed<string>("0 1"));
        Held("0 1");
        On(new Seen<string>(InView: false));
        Held("0 1");
        Assert.True(One((WriteHost<string> w) => w.Leaving));
        Assert.Equal((_now.Edit, true, false, false, false), (_now.SendingEdit!.Value, _now.HostIsBusy, _now.IsDue, _now.IsLeaving, _now.WasReplaced));
        On(new HostTook<string>("\"0 1\"", "1"));
        Assert.Equal((null, false, 0), (_now.SendingEdit, _now.HostIsBusy, _now.Tries));
        Held("0 1");
        On(new Redrawn<string>("0 1", Sends: true));
        On(new Rang<string>(AlarmKind.Send, _now.Alarms[AlarmKind.Send]));
        Assert.False(One((WriteHost<string> w) => w.Leaving));
        Assert.False(_now.IsRedrawn);
        On(new HostTook<string>("\"0 1\"", "1"));
        On(new Rang<string>(AlarmKind.Send, _now.Alarms[AlarmKind.Send]));
        Assert.DoesNotContain(_asked, c => c is WriteHost<string>);
    }

    /// <summary>While a text is on its way, hers goes on: what the host then has is an earlier one, and the later is sent after it.</summary>
    [Fact]
    public void What_is_typed_while_another_text_is_on_its_way_is_sent_after_it()
    {
        Begin(_machine.Create("a", "0"));
        Held("0");
        On(new Changed<string>("0 1"));
        Held("0 1");
        On(new HostTook<string>("\"0\"", "1"));
        Assert.Equal(("0 1", "\"0\"", false, true), (_now.Mine, _now.Etag, _now.IsSent, _now.Earlier.IsEmpty));
        Held("0 1");
        Assert.DoesNotContain(_asked, c => c is WriteHost<string>);
        On(new Rang<string>(AlarmKind.Send, _now.Alarms[AlarmKind.Send]));
        Held("0 1");
        Assert.Equal(("0 1", "\"0\""), One((WriteHost<string> w) => (w.Content, w.Etag)));
    }

    /// <summary>Of what a copy knows of the host, the latest 32 names are taken over; of texts gone through, 24 are remembered.</summary>
    [Fact]
    public void No_more_is_remembered_than_is_of_use()
    {
        Begin(_machine.Create("a", "0"));
        Held("0");
        On(new HostDidNot<string>(HostTrouble.Away));
        On(new OtherTabWrote<string>());
        string[] names = [.. Enumerable.Range(0, 40).Select(n => $"\"x{n}\"")];
        On(new DeviceHas<string>([_now.Held!, Copy("b", "0", Lineage.None) with { Includes = [.. names], Etag = "\"last\"" }]));
        Assert.Equal(32, _now.Includes.Length);
        Assert.Equal(names[^32..], _now.Includes);
        Held("0");
        for (var i = 1; i <= 30; i++)
        {
            On(new Changed<string>($"0 {i}"));
            if (_asked.OfType<WriteDevice<string>>().LastOrDefault() is { } write)
                On(new DeviceHolds<string>(write.Copy, write.Edit, write.Stamp, Others: false));
        }
        Assert.Equal(Enumerable.Range(7, 24).Select(n => $"0 {n}"), _now.Earlier);
    }

    /// <summary>A device that is emptied is written again: at once where the host cannot have said anything, else once it has answered.</summary>
    [Fact]
    public void A_device_that_is_cleared_waits_for_the_host_only_where_that_knows_the_text()
    {
        Begin(_machine.Create("a", "0"));
        Held("0");
        On(new HostDidNot<string>(HostTrouble.Away));
        Held("0");
        On(new DeviceCleared<string>());
        Assert.Equal((false, null, -1, -1), (_now.AwaitsHost, _now.Held, _now.HeldEdit, _now.HeldStamp));
        Assert.Equal("0", One((WriteDevice<string> w) => w.Copy.Content));
        Sent();
        On(new DeviceCleared<string>());
        Assert.True(_now.AwaitsHost);
        Assert.DoesNotContain(_asked, c => c is WriteDevice<string>);
        Assert.Contains(_asked, c => c is ReadHost<string>);
        On(new HostDidNot<string>(HostTrouble.SignIn));
        Assert.True(_now.AwaitsHost);
        Assert.DoesNotContain(_asked, c => c is WriteDevice<string>);
        On(new Connected<string>());
        On(new HostHas<string>("0", "\"0\"", "1"));
        Assert.False(_now.AwaitsHost);
        Assert.Equal("0", One((WriteDevice<string> w) => w.Copy.Content));
        // What was being written when it was cleared is not there either.
        On(new DeviceCleared<string>());
        Assert.True(_now.WasCleared);
    }

    /// <summary>A device that fails while a text is opened is as good as empty: the host is asked.</summary>
    [Fact]
    public void A_device_that_fails_to_be_read_leaves_the_host()
    {
        Begin(_machine.Open("a"));
        On(new DeviceFailed<string>("refused"));
        Assert.Contains(_asked, c => c is ReadHost<string>);
        Assert.Equal("refused", _now.DeviceWhy);
        On(new HostIsUnreadable<string>());
        Assert.Equal((Stage.Closed, HostTrouble.Refused), (_now.Stage, _now.Trouble));
        Sent();
        On(new Connected<string>());
        On(new HostIsUnreadable<string>());
        Assert.Equal((HostTrouble.Refused, "The host’s copy cannot be read.", "0"), (_now.Trouble, _now.HostWhy, _now.Mine));
    }

    /// <summary>The host's text is another, as no tab of this device knows: after a second look it is a conflict, and before that none.</summary>
    [Fact]
    public void Another_text_of_the_host_is_doubted_once_before_it_is_a_conflict()
    {
        Begin(_machine.Create("a", "0"));
        Held("0");
        On(new HostHasAnother<string>());
        On(new DeviceHas<string>([_now.Held!]));
        Assert.Contains(_asked, c => c is ReadHost<string>);
        On(new HostHas<string>("9", "\"9\"", "1"));
        Assert.Equal((null, "\"9\""), (_now.Theirs, _now.Doubted?.Etag));
        Assert.Contains(_asked, c => c is ReadDevice<string>);
        On(new DeviceHas<string>([_now.Held!]));
        Assert.Contains(_asked, c => c is ReadHost<string>);
        On(new HostHas<string>("9", "\"9\"", "1"));
        Assert.Equal(("9", "\"9\"", "1", true), (_now.Theirs!.Content, _now.Theirs.Etag, _now.Theirs.Made, _now.Theirs.IsSent));
        Assert.Equal((Lineage.None, "0"), (_now.Theirs.Lineage, _now.Mine));
        On(new Chose<string>(Mine: true));
        Assert.Equal((null, "\"9\"", "1", false), (_now.Theirs, _now.Etag, _now.Made, _now.IsSent));
        for (var i = 0; i < 4 && !_asked.Any(c => c is WriteHost<string>); i++)
        {
            if (_asked.Any(c => c is ReadDevice<string>))
                On(new DeviceHas<string>([_now.Held!]));
            else
                Held("0");
        }
        Assert.Equal(("0", "\"9\""), One((WriteHost<string> w) => (w.Content, w.Etag)));
    }

    /// <summary>A text that this tab had sent before, and of which it has not heard, is gone on from.</summary>
    [Fact]
    public void An_earlier_text_of_this_tab_on_the_host_is_gone_on_from()
    {
        Begin(_machine.Create("a", "0"));
        Held("0");
        On(new Changed<string>("0 1"));
        Held("0 1");
        On(new HostDidNot<string>(HostTrouble.Away));
        On(new Connected<string>());
        Held("0 1");
        On(new HostHasAnother<string>());
        On(new DeviceHas<string>([_now.Held!]));
        On(new HostHas<string>("0", "\"0\"", "1"));
        Assert.Equal(("0 1", "\"0\"", "1", null), (_now.Mine, _now.Etag, _now.Made, _now.Theirs));
        for (var i = 0; i < 4 && !_asked.Any(c => c is WriteHost<string>); i++)
            Held("0 1");
        Assert.Equal(("0 1", "\"0\""), One((WriteHost<string> w) => (w.Content, w.Etag)));
    }

    /// <summary>A text that the host has by now.</summary>
    private void Sent()
    {
        Begin(_machine.Create("a", "0"));
        Held("0");
        On(new HostTook<string>("\"0\"", "1"));
        Held("0");
        Assert.True(_now.IsSent && _now.IsAtRest);
    }

    /// <summary>The device holds what it was last asked to write, time and again until nothing more is written.</summary>
    private void Held(string content)
    {
        for (var i = 0; i < 4 && _asked.OfType<WriteDevice<string>>().LastOrDefault() is { } write; i++)
        {
            Assert.Equal(content, write.Copy.Content);
            On(new DeviceHolds<string>(write.Copy, write.Edit, write.Stamp, Others: false));
            if (_asked.Any(c => c is WriteHost<string>))
                return;
        }
    }

    private static Copy<string> Copy(string writer, string text, Lineage lineage) => new(writer, 1, lineage, text, default) { IsSent = false, Includes = [] };

    private void Begin((KeepingState<string> State, System.Collections.Immutable.ImmutableArray<KeepingCommand<string>> Commands) turn)
    {
        _now = turn.State;
        _asked.Clear();
        _asked.AddRange(turn.Commands);
    }

    private void On(KeepingEvent<string> happened) => Begin(_machine.On(_now, happened));

    private TValue One<TCommand, TValue>(Func<TCommand, TValue> of) => of(Assert.Single(_asked.OfType<TCommand>()));
}
