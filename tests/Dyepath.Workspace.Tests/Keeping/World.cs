using System.Collections.Immutable;
using Dyepath.Workspace.Keeping;

namespace Dyepath.Workspace.Tests.Keeping;

/// <summary>
/// Devices, tabs and a host around <see cref="KeepingMachine{T}"/>, in which everything that takes time takes as long as the choices
/// say, fails where they say so, and is cut off where a tab is killed. Written apart from the machine; it knows only what a store, a
/// host with ETags and a person would do.
/// </summary>
internal sealed class World(WordRules rules, Trials trials, byte[] choices)
{
    private readonly KeepingMachine<string> _machine = new(rules);
    private readonly List<Device> _devices = [];
    private readonly List<Tab> _tabs = [];
    private readonly HashSet<string> _history = [];
    private readonly HashSet<int> _kept = [];
    private readonly HashSet<int> _excused = [];
    private readonly List<string> _trace = [];
    private string? _host;
    private bool _away;
    private int _at;
    private int _words;
    private int _names;

    public int Conflicts { get; private set; }

    /// <summary>Does as the choices say, then lets everything come to rest, and checks what was promised.</summary>
    public void Run()
    {
        for (var i = 0; i < trials.Devices; i++)
            _devices.Add(new Device());
        _host = "0";
        _history.Add("0");
        OpenTab(_devices[0]);
        while (_at < choices.Length)
        {
            Step();
            Check();
        }
        _trace.Add("— everything works again —");
        _away = false;
        foreach (var device in _devices)
            device.Refuses = false;
        if (trials.OneChoice)
            EndWithOneChoice();
        Settle();
        _ending = true;
        foreach (var tab in _tabs.ToArray())
            Kill(tab);
        Check();
        foreach (var device in _devices)
            OpenTab(device);
        Settle();
        var found = _history.SelectMany(Words).ToHashSet();
        foreach (var word in _kept)
            Holds(found.Contains(word) || _excused.Contains(word), $"{word} was shown as kept and is gone.");
    }

    private int Next(int below) => _at < choices.Length ? choices[_at++] % below : 0;

    private void Step()
    {
        var what = Next(24);
        var tab = _tabs.Count == 0 ? null : _tabs[Next(_tabs.Count)];
        switch (what)
        {
            case 0 or 1 when tab is not null:
                Type(tab);
                break;
            case 2 when tab is not null && tab.State.Theirs is not null:
                Choose(tab, Next(2) == 0);
                break;
            case 3 when tab is not null && tab.Alarms.Count > 0:
                Ring(tab, Next(tab.Alarms.Count));
                break;
            case 4 when Next(3) == 0:
                _away = !_away;
                _trace.Add(_away ? "the host is away" : "the host is back");
                break;
            case 5 when trials.HostIsEmptied && Next(4) == 0:
                EmptyHost();
                break;
            case 6 when tab is not null && !trials.OneChoice && Next(4) == 0:
                Kill(tab);
                break;
            case 12 when tab is not null && !trials.OneChoice && Next(4) == 0:
                Reload(tab);
                break;
            case 7 or 11 when _tabs.Count < trials.Tabs:
                OpenTab(_devices[Next(_devices.Count)]);
                break;
            case 8 when trials.DevicesFail:
                var refusing = _devices[Next(_devices.Count)];
                refusing.Refuses = !refusing.Refuses;
                _trace.Add(refusing.Refuses ? "a device refuses" : "the device takes again");
                break;
            case 9 when trials.DevicesFail && Next(4) == 0:
                Clear(_devices[Next(_devices.Count)]);
                break;
            case 10 when tab is not null:
                Tell(tab, Next(3) switch { 0 => new Connected<string>(), 1 => new Seen<string>(true), _ => new Seen<string>(false) });
                break;
            default:
                if (tab is not null && tab.Doing.Count > 0)
                    Advance(tab, tab.Doing[Next(tab.Doing.Count)], fails: Next(6) == 0);
                break;
        }
    }

    /// <summary>
    /// Everything under way is done, alarms ring, whoever is asked chooses her own text, and whoever comes back to a tab looks at it,
    /// until every tab shows what the host has.
    /// </summary>
    private void Settle()
    {
        for (var round = 0; round < 60; round++)
        {
            foreach (var tab in _tabs.Where(t => t.State.Stage == Stage.Closed).ToArray())
                Kill(tab);
            for (var moves = 0; _tabs.Any(Move); moves++)
                Holds(moves < 3_000, "It never comes to rest.");
            if (_tabs.All(t => t.State.Mine == _host && t.State is { IsSent: true, Theirs: null }))
                return;
            foreach (var tab in _tabs)
                Tell(tab, new Seen<string>(true));
        }
        Holds(false, "It never comes to agree.");
    }

    /// <summary>Of two tabs in a conflict one is asked, while the other goes on writing: then neither is asked any more.</summary>
    private void EndWithOneChoice()
    {
        Deliver();
        if (_tabs.FirstOrDefault(t => t.State.Theirs is not null) is not { } asked)
            return;
        var chooses = _tabs[Next(_tabs.Count)];
        chooses = chooses.State.Theirs is null ? asked : chooses;
        var mine = Next(2) == 0;
        var others = _tabs.Where(t => t != chooses).ToArray();
        Choose(chooses, mine);
        for (var i = mine ? 0 : Next(4); i > 0; i--)
        {
            foreach (var other in others)
            {
                Type(other);
                for (var moves = Next(4); moves > 0; moves--)
                    _ = Move(other, chooses: false) || Move(chooses, chooses: false);
            }
        }
        Deliver();
        foreach (var tab in _tabs)
            Holds(tab.State.Theirs is null, $"{tab.Name} is still asked after {chooses.Name} chose.");
        if (!mine)
            Holds(others.All(t => t.State.Mine == chooses.State.Mine), $"{chooses.Name} went on with something else than the other tab wrote last.");
    }

    /// <summary>Everything that is under way arrives, and nobody is asked.</summary>
    private void Deliver()
    {
        for (var moves = 0; _tabs.Any(t => Move(t, chooses: false)); moves++)
            Holds(moves < 3_000, "It never comes to rest.");
        foreach (var tab in _tabs)
            Tell(tab, new Seen<string>(true));
        for (var moves = 0; _tabs.Any(t => Move(t, chooses: false)); moves++)
            Holds(moves < 3_000, "It never comes to rest.");
    }

    private bool Move(Tab tab) => Move(tab, chooses: true);

    private bool Move(Tab tab, bool chooses)
    {
        if (tab.Doing.Count > 0)
            Advance(tab, tab.Doing[0], fails: false);
        else if (chooses && tab.State.Theirs is not null)
            Choose(tab, mine: true);
        else if (tab.Alarms.Count > 0)
            Ring(tab, 0);
        else
            return false;
        Check();
        return true;
    }

    private void Type(Tab tab)
    {
        if (tab.State.Stage != Stage.Open || tab.State.Pending is not null)
            return;
        // Where one person writes at a time, she goes on where she sees everything that was written and not killed before it was kept.
        if (trials.OneWriter && _tabs.SelectMany(t => new[] { t.State.Mine, t.State.Pending }).OfType<string>()
            .Concat(_devices.SelectMany(d => d.Copies.All.Select(c => c.Content))).Concat(_history).SelectMany(Words).Concat(_kept).Except(Words(tab.State.Mine!)).Any())
            return;
        if (trials.OneWriter && tab.IsUnseen)
            return;
        var isUnseen = tab.IsUnseen;
        var word = ++_words;
        _trace.Add($"{tab.Name} types {word}");
        Tell(tab, new Changed<string>($"{tab.State.Mine} {word}"));
        Holds(!isUnseen || tab.State.Theirs is not null, $"{tab.Name} wrote over what it could not have seen, and nobody is asked.");
        tab.IsUnseen = false;
    }

    private void Choose(Tab tab, bool mine)
    {
        var theirs = tab.State.Theirs!;
        tab.Left = mine ? null : theirs;
        _excused.UnionWith(Words(mine ? theirs.Content : tab.State.Mine!).Except(Words(mine ? tab.State.Mine! : theirs.Content)));
        _trace.Add($"{tab.Name} chooses {(mine ? "hers" : "the other")}");
        Tell(tab, new Chose<string>(mine));
    }

    private void Ring(Tab tab, int index)
    {
        var alarm = tab.Alarms[index];
        tab.Alarms.RemoveAt(index);
        tab.IsUnseen &= alarm.Kind != AlarmKind.Glance;
        Tell(tab, new Rang<string>(alarm.Kind, alarm.Number));
    }

    private void EmptyHost()
    {
        _trace.Add("the host loses everything");
        ExcuseWhatGoesWith(() =>
        {
            _host = null;
            _history.Clear();
        });
        _lost = true;
    }

    private bool _lost;
    private int _made;
    private bool _ending;

    private string Made => $"{_made}";

    private void Clear(Device device)
    {
        _trace.Add("a device's store is cleared");
        ExcuseWhatGoesWith(device.Copies.Clear);
        foreach (var tab in _tabs.Where(t => t.Device == device))
            Tell(tab, new DeviceCleared<string>());
    }

    /// <summary>What was nowhere else goes with a store or a killed tab, and with nothing else.</summary>
    private void ExcuseWhatGoesWith(Action loss)
    {
        var before = Somewhere();
        loss();
        before.ExceptWith(Somewhere());
        _excused.UnionWith(before);
    }

    /// <summary>Every word that is in a tab, on a device, or among the texts that the host has had.</summary>
    private HashSet<int> Somewhere() => [.. _history.Concat(_tabs.SelectMany(t => new[] { t.State.Mine, t.State.Pending, t.State.Theirs?.Content }).OfType<string>())
        .Concat(_devices.SelectMany(d => d.Copies.All.Select(c => c.Content))).Distinct().SelectMany(Words)];

    private void OpenTab(Device device, string? before = null)
    {
        var tab = new Tab($"tab {++_names}", device) { LastWriter = before };
        _tabs.Add(tab);
        _trace.Add($"{tab.Name} is opened on device {_devices.IndexOf(device) + 1}");
        Take(tab, _machine.Open($"w{_names:000}", before), null);
    }

    /// <summary>A tab that is reloaded remembers which copies were its own.</summary>
    private void Reload(Tab tab)
    {
        Kill(tab);
        if (_tabs.Contains(tab))
            return;
        _trace.Add($"{tab.Name} is reloaded");
        OpenTab(tab.Device, tab.LastWriter);
    }

    private void Kill(Tab tab)
    {
        // What is on its way when a tab is killed may go on at another device before this one hears of it.
        if (trials is { OneWriter: true, Devices: > 1 } && !(tab.State.IsSent && tab.State.HeldStamp == tab.State.Stamp) && tab.State.Mine is not null && !_ending)
            return;
        _trace.Add($"{tab.Name} is killed");
        var shown = tab.State.Mine is null ? (SaveState?)null : tab.Shown(rules);
        void End()
        {
            _tabs.Remove(tab);
            // What has left the tab arrives or does not; the other tabs may not hear of it.
            foreach (var doing in tab.Doing.Where(d => !d.IsDone && d.Command is WriteHost<string> or WriteDevice<string>))
            {
                if (Next(2) == 0)
                    Effect(tab, doing, isHeard: Next(2) == 0);
            }
        }
        // A tab that says that it is kept loses nothing by its end, unless the host lost it afterwards.
        if (shown is SaveState.OnDevice || (shown is SaveState.Saved && !_lost))
            End();
        else
            ExcuseWhatGoesWith(End);
    }

    private void Tell(Tab tab, KeepingEvent<string> happened)
    {
        if (happened is DeviceHolds<string> holds)
            tab.LastWriter = holds.Copy.Writer;
        if (happened is Seen<string> { InView: true })
            tab.IsUnseen = false;
        if (happened is DeviceHas<string> has && tab.State.Stage == Stage.Opening)
            tab.Own = has.Copies.FirstOrDefault(c => c.Writer == tab.LastWriter && !c.IsSent && !has.Copies.Any(o => o != c && o.Lineage.Follows(c.Lineage)))?.Content;
        Take(tab, _machine.On(tab.State, happened), happened);
    }

    private void Take(Tab tab, (KeepingState<string> State, ImmutableArray<KeepingCommand<string>> Commands) next, KeepingEvent<string>? happened)
    {
        var before = tab.State;
        var had = before?.Theirs is not null;
        tab.State = next.State;
        if (next.Commands.OfType<ShowText<string>>().Any())
            Shows(tab, before!, happened);
        if (before?.Stage == Stage.Opening && tab.State.Stage == Stage.Open && tab.Own is { } own)
            Holds(!Words(own).Except(Words(tab.State.Mine!)).Any(), $"{tab.Name} wrote “{own}” before it was reloaded, and shows “{tab.State.Mine}” as hers.");
        foreach (var command in next.Commands)
        {
            switch (command)
            {
                case SetAlarm<string> alarm:
                    tab.Alarms.RemoveAll(a => a.Kind == alarm.Kind);
                    tab.Alarms.Add(alarm);
                    break;
                case ShowText<string>:
                    break;
                default:
                    tab.Doing.Add(new Doing(command));
                    break;
            }
        }
        if (!had && tab.State.Theirs is { } theirs)
        {
            Conflicts++;
            _trace.Add($"{tab.Name} is asked: “{tab.State.Mine}” or “{theirs.Content}”");
            Holds(!trials.OneWriter, "A conflict without two writers.");
        }
        GoesOn(before, next.State, next.Commands, happened);
        Holds(tab.Doing.Count(d => d.Command is ReadDevice<string> or WriteDevice<string>) <= 1, "Two things at once on one device.");
        Holds(tab.Doing.Count(d => d.Command is ReadHost<string> or WriteHost<string>) <= 1, "Two questions at once to the host.");
    }

    /// <summary>What is counted only grows, what is asked for is of the state as it is, and a state agrees with itself.</summary>
    private void GoesOn(
        KeepingState<string>? before, KeepingState<string> now, ImmutableArray<KeepingCommand<string>> commands, KeepingEvent<string>? happened)
    {
        if (now.Mine is not { } mine || now.Stage != Stage.Open)
            return;
        Holds(!now.IsSent || now.Etag == rules.EtagOf(mine), $"“{mine}” counts as sent under {now.Etag}.");
        Holds(now.Earlier.Length <= 24, "Too many earlier texts are remembered.");
        foreach (var write in commands.OfType<WriteHost<string>>())
            Holds((write.Content, write.Etag) == (mine, now.Etag) && now.SendingEdit == now.Edit, "Something else is sent than what is in view.");
        foreach (var write in commands.OfType<WriteDevice<string>>())
        {
            Holds(write.Copy.Writer == now.Writer && write.Yields == rules.KeepsFirst, "A copy is written in another tab's name.");
            Holds(now.Pending is { } pending
                ? (write.Copy.Content, write.Edit, write.Stamp, write.Copy.IsSent) == (pending, -1, now.Stamp + 1, false)
                : (write.Copy.Content, write.Edit, write.Stamp, write.Copy.IsSent) == (mine, now.Edit, now.Stamp, now.IsSent), "A copy says something else than what is in view.");
            Holds((write.Copy.Etag, write.Copy.Made) == (now.Etag, now.Made) && write.Copy.Includes.SequenceEqual(now.Includes), "A copy knows the host otherwise.");
        }
        if (before is not { Stage: Stage.Open, Mine: { } was })
            return;
        Holds(now.Stamp >= before.Stamp && now.Edit >= before.Edit && now.Changes >= before.Changes, $"A count went back by {happened}.");
        Holds(now.Alarms.All(a => a.Value >= before.Alarms.GetValueOrDefault(a.Key)), "An alarm has a number that one had before.");
        Holds(rules.Same(was, mine) || now.Edit > before.Edit, $"“{was}” became “{mine}” under one number.");
        var says = (now.Etag, now.Made, now.IsSent, now.Lineage, string.Join(' ', now.Includes));
        var said = (before.Etag, before.Made, before.IsSent, before.Lineage, string.Join(' ', before.Includes));
        Holds(says == said || now.Stamp > before.Stamp || happened is DeviceHolds<string>, $"A copy would say something else under one stamp, by {happened}.");
    }

    /// <summary>Another text is on the page than before.</summary>
    private void Shows(Tab tab, KeepingState<string> before, KeepingEvent<string>? happened)
    {
        var has = happened as DeviceHas<string>;
        // A copy that goes on from this tab's text took its place without a word.
        tab.IsUnseen = !rules.IsLog && has is not null && before.Stage == Stage.Open && before.Theirs is null && before.Yielded is null
            && has.Copies.Any(c => c.Writer != before.Writer && c.Content == tab.State.Mine && c.Lineage.Follows(before.Lineage));
        // Where the device does not answer, what was known before has to do.
        if (tab.Left is not { } left || (has is null && (happened is not Chose<string> || before.DeviceWhy is not null)))
            return;
        tab.Left = null;
        var newest = (has?.Copies ?? [.. tab.Device.Copies.All]).Where(c => c.Writer != before.Writer && left.IsGoneOnWithIn(c)).ToArray();
        Holds(newest.Length == 0 || newest.Any(c => c.Content == tab.State.Mine), $"{tab.Name} went on with “{tab.State.Mine}”; the other is “{newest.FirstOrDefault()?.Content}” by now.");
    }

    /// <summary>What was asked for happens; and, another time, the answer comes.</summary>
    private void Advance(Tab tab, Doing doing, bool fails)
    {
        var isHost = doing.Command is ReadHost<string> or WriteHost<string>;
        // Where the host's answer is lost and another device goes on from what it took, this one has to ask.
        fails = (fails || (isHost && _away)) && !(doing is { IsDone: true, Command: WriteHost<string> } && trials is { OneWriter: true, Devices: > 1 });
        if (!doing.IsDone && !(fails && isHost))
        {
            Effect(tab, doing);
            return;
        }
        tab.Doing.Remove(doing);
        var answer = isHost && fails
            ? new HostDidNot<string>(Next(2) == 0 ? HostTrouble.Away : HostTrouble.Busy)
            : doing.Answer!;
        _trace.Add($"{tab.Name} hears {answer.GetType().Name} of {doing.Command.GetType().Name}");
        Tell(tab, answer);
    }

    private void Effect(Tab tab, Doing doing, bool isHeard = true)
    {
        doing.IsDone = true;
        var device = tab.Device;
        switch (doing.Command)
        {
            case ReadDevice<string>:
                doing.Answer = device.Refuses ? new DeviceFailed<string>("refused") : new DeviceHas<string>([.. device.Copies.All]);
                break;
            case WriteDevice<string> write:
                doing.Answer = device.Refuses ? new DeviceFailed<string>("refused") : Put(tab, device, write, isHeard);
                break;
            case ReadHost<string>:
                doing.Answer = _host is { } text ? new HostHas<string>(text, rules.EtagOf(text), Made) : new HostDidNot<string>(HostTrouble.Missing);
                break;
            case WriteHost<string> write when _host is null && write.Etag is not null:
                doing.Answer = new HostDidNot<string>(HostTrouble.Missing);
                break;
            case WriteHost<string> write when _host is null || write.Content == _host || (write.Etag is { } etag && etag == rules.EtagOf(_host)):
                _made += _host is null ? 1 : 0;
                _host = write.Content;
                _history.Add(_host);
                _trace.Add($"the host has “{_host}” of {tab.Name}");
                doing.Answer = new HostTook<string>(rules.EtagOf(_host), Made);
                break;
            case WriteHost<string>:
                doing.Answer = new HostHasAnother<string>();
                break;
        }
    }

    private KeepingEvent<string> Put(Tab tab, Device device, WriteDevice<string> write, bool isHeard)
    {
        var writing = device.Copies.Put(write);
        if (writing.Held is not { } copy)
            return new DeviceIsAhead<string>();
        _trace.Add($"the device has “{copy.Content}” of {tab.Name}{(copy.IsSent ? ", which the host has" : "")}");
        foreach (var other in _tabs.Where(t => isHeard && t.Device == device && t != tab))
            Tell(other, new OtherTabWrote<string>());
        return new DeviceHolds<string>(copy, write.Edit, write.Stamp, writing.Others);
    }

    /// <summary>What a tab says of its text is so.</summary>
    private void Check()
    {
        foreach (var tab in _tabs.Where(t => t.State.Stage == Stage.Open))
        {
            var (mine, shown) = (tab.State.Mine!, tab.Shown(rules));
            if (shown is SaveState.Saved && !_lost)
                Holds(_history.Contains(mine), $"{tab.Name} says “{mine}” is saved; the host never had it.");
            // Or in a copy of what another tab wrote on from it, by way of the host.
            var isKept = tab.State.IsHeld
                && tab.Device.Copies.All.Any(c => c.Content == mine || c.Lineage.Follows(tab.State.Held!.Lineage)
                    || c.Lineage.Changes.ContainsKey($"@{rules.EtagOf(mine)}"));
            if (shown is SaveState.OnDevice)
                Holds(isKept, $"{tab.Name} says “{mine}” is on this device; it is not.");
            if (shown is SaveState.Saved or SaveState.OnDevice || (shown is SaveState.Conflict && isKept))
                _kept.UnionWith(Words(mine));
        }
        if (_kept.Count == 0)
            return;
        var somewhere = Somewhere();
        foreach (var word in _kept.Where(w => !somewhere.Contains(w) && !_excused.Contains(w)))
            Holds(false, $"{word} was shown as kept and is nowhere.");
    }

    private static IEnumerable<int> Words(string text) => text.Split(' ').Select(w => int.Parse(w, null));

    private void Holds(bool so, string otherwise)
    {
        if (!so)
            throw new BrokenPromiseException($"{otherwise}\n{string.Join('\n', _trace.Take(60).Concat(_trace.Skip(60).TakeLast(25)))}");
    }

    private sealed class Device
    {
        public CopiesHere<string> Copies { get; } = new();

        public bool Refuses { get; set; }
    }

    private sealed class Tab(string name, Device device)
    {
        public string Name => name;

        public Device Device => device;

        public KeepingState<string> State { get; set; } = null!;

        /// <summary>Who wrote this tab's last copy; it outlives a reload.</summary>
        public string? LastWriter { get; set; }

        /// <summary>What this tab wrote before it was reloaded, where that is on the device alone.</summary>
        public string? Own { get; set; }

        /// <summary>What another tab wrote took the place of this tab's text a moment ago.</summary>
        public bool IsUnseen { get; set; }

        /// <summary>The text with which she wants to go on instead of hers.</summary>
        public OtherText<string>? Left { get; set; }

        public List<Doing> Doing { get; } = [];

        public List<SetAlarm<string>> Alarms { get; } = [];

        public SaveState Shown(WordRules rules) => State.Shown(rules);
    }

    private sealed class Doing(KeepingCommand<string> command)
    {
        public KeepingCommand<string> Command => command;

        public bool IsDone { get; set; }

        public KeepingEvent<string>? Answer { get; set; }
    }
}

/// <summary>What may happen in a world.</summary>
/// <param name="OneWriter">Nobody writes where she does not see everything that was kept.</param>
/// <param name="OneChoice">No tab is killed, and at the end one choice has to be enough for all.</param>
internal sealed record Trials(int Devices, int Tabs, bool DevicesFail, bool HostIsEmptied, bool OneWriter, bool OneChoice = false);

internal sealed class BrokenPromiseException(string message) : Exception(message);
