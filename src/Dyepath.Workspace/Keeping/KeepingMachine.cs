using System.Collections.Immutable;

namespace Dyepath.Workspace.Keeping;

/// <summary>
/// How a text is kept on this device, between tabs, and on the host: an event and a state in, a state and commands out. It has no clock,
/// waits for nothing and does nothing by itself. What it promises, and how that is tried, is in docs/reliability.md.
/// </summary>
public sealed partial class KeepingMachine<T>(KeepingRules<T> rules)
    where T : class
{
    /// <summary>Opens a text from wherever its latest state is.</summary>
    /// <param name="writer">A name that no tab has had before.</param>
    /// <param name="before">The name this tab had before it was reloaded, where it was.</param>
    public (KeepingState<T> State, ImmutableArray<KeepingCommand<T>> Commands) Open(string writer, string? before = null)
    {
        var opening = new KeepingState<T>
        {
            Writer = writer,
            WriterBefore = before,
            Stage = Stage.Opening,
            DeviceIsBusy = true,
            IsLooking = true,
        };
        var turn = new Turn(rules, opening);
        turn.Ask(new ReadDevice<T>());
        if (!rules.OpensFromDevice)
            turn.Alarm(AlarmKind.Patience, rules.Patience);
        return turn.End();
    }

    /// <summary>Keeps a text that is nowhere yet.</summary>
    public (KeepingState<T> State, ImmutableArray<KeepingCommand<T>> Commands) Create(string writer, T content)
    {
        var turn = new Turn(rules, new KeepingState<T>
        {
            Writer = writer,
            Stage = Stage.Open,
            Mine = content,
            Edit = 1,
            Stamp = 1,
            Changes = 1,
            Lineage = Lineage.None.With(writer, 1),
            IsDue = true,
            IsOwn = true,
        });
        turn.GoOn();
        return turn.End();
    }

    /// <summary>What a state becomes by an event, and what is then asked for. A closed text stays closed.</summary>
    public (KeepingState<T> State, ImmutableArray<KeepingCommand<T>> Commands) On(KeepingState<T> state, KeepingEvent<T> happened)
    {
        ArgumentNullException.ThrowIfNull(state);
        if (state.Stage == Stage.Closed)
            return (state, []);
        var turn = new Turn(rules, state);
        switch (happened)
        {
            case DeviceHas<T> has: turn.Read(has.Copies); break;
            case DeviceHolds<T> holds: turn.Written(holds); break;
            case DeviceIsAhead<T>: turn.Ahead(); break;
            case DeviceFailed<T> failed: turn.NotWritten(failed.Why); break;
            case DeviceCleared<T>: turn.Cleared(); break;
            case OtherTabWrote<T>: turn.Set(turn.Now with { LooksAgain = true }); break;
            case PutAwayElsewhere<T>:
                turn.Set(turn.Now with { Stage = Stage.Closed, Theirs = null, IsYielding = false, Pending = null });
                break;
            case HostSaid<T> said when turn.Now.Stage == Stage.Opening:
                turn.Set(turn.Now with { HostIsBusy = false, HostSaid = said });
                break;
            case HostSaid<T> said: turn.Hear(said); break;
            case Changed<T> changed: turn.Edit(changed.Content); break;
            case Redrawn<T> redrawn when turn.Now.Stage == Stage.Open: turn.Redraw(redrawn); break;
            case Rang<T> rang when turn.Now.Alarms.GetValueOrDefault(rang.Kind) == rang.Number: turn.Ring(rang.Kind); break;
            case Connected<T>:
                turn.Set(turn.Now with
                {
                    Tries = 0,
                    IsDue = true,
                    DeviceRests = false,
                    AsksHost = turn.Now.Etag is not null,
                });
                break;
            case Seen<T> seen:
                turn.Set(turn.Now with
                {
                    Unseen = seen.InView ? null : turn.Now.Unseen,
                    IsDue = true,
                    DeviceRests = false,
                    IsLeaving = !seen.InView,
                    LooksAgain = turn.Now.LooksAgain || seen.InView,
                    AsksHost = seen.InView && turn.Now.Etag is not null,
                });
                break;
            case Chose<T> chose: turn.Choose(chose.Mine); break;
        }
        turn.GoOn();
        return turn.End();
    }

    /// <summary>One event's way through: the state as it changes, and what is asked for.</summary>
    private sealed partial class Turn(KeepingRules<T> rules, KeepingState<T> state)
    {
        private readonly ImmutableArray<KeepingCommand<T>>.Builder _commands = ImmutableArray.CreateBuilder<KeepingCommand<T>>();

        public KeepingState<T> Now { get; private set; } = state;

        public void Set(KeepingState<T> state) => Now = state;

        public void Ask(KeepingCommand<T> command) => _commands.Add(command);

        public (KeepingState<T>, ImmutableArray<KeepingCommand<T>>) End() => (Now, _commands.ToImmutable());

        public void Alarm(AlarmKind kind, TimeSpan after)
        {
            var number = Now.Alarms.GetValueOrDefault(kind) + 1;
            Now = Now with { Alarms = Now.Alarms.SetItem(kind, number) };
            Ask(new SetAlarm<T>(kind, number, after));
        }

        public void ReadHost(string? etag)
        {
            Now = Now with { HostIsBusy = true, AsksHost = false, AskedEtag = etag };
            Ask(new ReadHost<T>());
        }

        public void Ring(AlarmKind kind) => Now = kind switch
        {
            AlarmKind.Send => Now with { IsDue = true },
            AlarmKind.Device => Now with { DeviceRests = false },
            AlarmKind.Glance => Now with { Unseen = null },
            _ => Now with { IsImpatient = true },
        };

        public void Edit(T content)
        {
            if (Now.Stage != Stage.Open)
                return;
            if (rules.KeepsFirst)
            {
                // In a conflict there is nothing to go on from.
                if (Now.Theirs is null && Now.Pending is null)
                    Now = Now with { Pending = content };
                return;
            }
            var unseen = Now.Unseen is { } replaced && Now.Theirs is null && rules.WritesOver(replaced.Content, Now.Mine!, content)
                ? replaced : null;
            if (unseen is not null)
                PutBack(unseen);
            Accept(content);
            Now = Now with { DeviceRests = false, Theirs = unseen?.Other ?? Now.Theirs };
        }

        /// <summary>
        /// Goes on from the text before another tab's took its place: a change to the same place, by whoever could not see that, is a
        /// conflict.
        /// </summary>
        private void PutBack(Replaced<T> replaced) => Now = Now with
        {
            Lineage = replaced.Lineage,
            Etag = replaced.Etag,
            Made = replaced.Made,
            Includes = replaced.Includes,
            SentEdit = -1,
            IntendedEdit = -1,
        };

        public void Redraw(Redrawn<T> redrawn)
        {
            if (!rules.Same(Now.Mine!, redrawn.Content))
                return;
            Now = Now with { Mine = redrawn.Content };
            if (!Now.IsSent || !redrawn.Sends)
                return;
            Now = Now with { IsRedrawn = true };
            Alarm(AlarmKind.Send, rules.Quiet);
        }

        /// <summary>A change by hand holds.</summary>
        private void Accept(T content)
        {
            var changes = Now.Changes + 1;
            Now = Now with
            {
                Mine = content,
                Edit = Now.Edit + 1,
                Changes = changes,
                Lineage = Now.Lineage.With(Now.Writer, changes),
                Stamp = Now.Stamp + 1,
                IsElsewhere = false,
                IsOwn = true,
                Unseen = null,
                Yielded = null,
                IsDue = false,
                Tries = 0,
                Trouble = Now.Trouble == HostTrouble.Refused ? HostTrouble.None : Now.Trouble,
            };
            Alarm(AlarmKind.Send, rules.Quiet);
        }

        /// <summary>A text that came from elsewhere is in view from now on.</summary>
        private void Take(OtherText<T> other, bool chosen = false)
        {
            var same = rules.Same(Now.Mine!, other.Content);
            var edit = same ? Now.Edit : Now.Edit + 1;
            var content = same ? Now.Mine! : GoneOn(other.Content);
            Now = Now with
            {
                Mine = content,
                Edit = edit,
                Lineage = other.Lineage,
                Etag = other.Etag,
                Made = other.Made,
                Includes = other.IsSent ? [] : other.Includes,
                SentEdit = other.IsSent ? edit : -1,
                Stamp = Now.Stamp + 1,
                WasReplaced = Now.SendingEdit is not null,
                Earlier = [],
                Yielded = null,
                Unseen = same ? Now.Unseen : null,
                IsOwn = same ? Now.IsOwn : chosen,
                // A change that was made to another text.
                Pending = same ? Now.Pending : null,
                IsElsewhere = Now.IsElsewhere || (!same && Now.Pending is not null),
            };
            if (!other.IsSent)
                Alarm(AlarmKind.Send, rules.Deference);
            if (!same)
                Ask(new ShowText<T>(content, chosen));
        }

        /// <summary>What goes on from this tab's text is put to it, so that what stays the same is not worked out anew.</summary>
        private T GoneOn(T other) => rules.Join(Now.Mine!, other) is { } joined && rules.Same(joined, other) ? joined : other;

        /// <summary>The device's copy is to say something else than it did.</summary>
        private void Restamp() => Now = Now with { Stamp = Now.Stamp + 1 };

        private ImmutableArray<string> Including(params IEnumerable<string?> etags) =>
            [.. Now.Includes.Concat(etags.OfType<string>()).Where(e => e != Now.Etag).Distinct().TakeLast(MostIncluded)];

        private const int MostIncluded = 32;

        private const int MostEarlier = 24;

        /// <summary>A text that this tab's goes on from.</summary>
        private bool WasMine(T content) => Now.Earlier.Any(e => rules.Same(e, content));

        public void Choose(bool mine)
        {
            // The other tab may have gone on with its text since.
            if (mine || Now.DeviceWhy is not null)
                Settle(mine);
            else
                Now = Now with { IsYielding = Now.Theirs is not null, LooksAgain = true, DeviceRests = false };
        }

        private void Settle(bool mine)
        {
            Now = Now with { IsYielding = false };
            if (Now.Theirs is not { } theirs)
                return;
            var changes = Now.Changes + 1;
            var lineage = Now.Lineage.And(theirs.Lineage).With(Now.Writer, changes);
            if (mine)
            {
                Now = Now with
                {
                    Etag = theirs.IsSent ? theirs.Etag : Now.Etag,
                    Made = theirs.IsSent ? theirs.Made : Now.Made,
                    Includes = theirs.IsSent ? [] : Including([theirs.Etag, .. theirs.Includes]),
                    SentEdit = -1,
                    Lineage = lineage,
                    WasReplaced = Now.SendingEdit is not null,
                };
                Restamp();
            }
            else
            {
                var yielding = new Yielding(Now.Lineage, theirs.Lineage);
                Take(theirs with
                {
                    Lineage = lineage,
                    Includes = [.. theirs.Includes.Concat(Including(Now.Etag)).Distinct().TakeLast(MostIncluded)],
                }, chosen: true);
                Now = Now with { Yielded = yielding.Taken == Lineage.None ? null : yielding };
            }
            Now = Now with
            {
                Changes = changes,
                Theirs = null,
                IsElsewhere = false,
                IsDue = true,
                LooksAgain = true,
                DeviceRests = false,
                IntendedEdit = -1,
            };
        }

        /// <summary>Whatever is to be done next is asked for.</summary>
        public void GoOn()
        {
            if (Now.Stage == Stage.Opening)
                TryOpen();
            if (Now.Stage != Stage.Open)
                return;
            GoOnWithHost();
            GoOnWithDevice();
        }

        private void GoOnWithHost()
        {
            if (Now.HostIsBusy || !rules.GoesToHost(Now.Mine!))
                return;
            if (Now.AsksHost && !Now.LooksAgain && !Now.IsLooking && Now.Pending is null)
            {
                ReadHost(Now.Etag);
                return;
            }
            if (Now.IsSent)
            {
                if (Now is { IsDue: true, IsRedrawn: true })
                    Send();
                Now = Now with { IsDue = false };
            }
            var deviceIsOff = Now.DeviceWhy is not null;
            if (!Now.IsDue || Now.Theirs is not null || Now.Pending is not null
                || (!deviceIsOff && (!Now.IsHeld || Now.LooksAgain || Now.IsLooking)))
                return;
            if (rules.SaysWhatItSends && Now.IntendedEdit != Now.Edit)
            {
                Now = Now with { Includes = Including(rules.EtagOf(Now.Mine!)), IntendedEdit = Now.Edit };
                Restamp();
            }
            if (rules.SaysWhatItSends && !deviceIsOff && Now.HeldStamp != Now.Stamp)
                return;
            Send();
        }

        private void Send()
        {
            Ask(new WriteHost<T>(Now.Mine!, Now.Etag, Now.IsLeaving));
            Now = Now with
            {
                HostIsBusy = true,
                IsDue = false,
                SendingEdit = Now.Edit,
                WasReplaced = false,
                IsLeaving = false,
                IsRedrawn = false,
            };
        }

        private void GoOnWithDevice()
        {
            if (Now.DeviceIsBusy)
                return;
            if (Now.LooksAgain)
            {
                Now = Now with { DeviceIsBusy = true, IsLooking = true, LooksAgain = false };
                Ask(new ReadDevice<T>());
            }
            else if (Now.Pending is { } pending)
                Write(pending, Now.Lineage.With(Now.Writer, Now.Changes + 1), isSent: false, edit: -1, Now.Stamp + 1);
            else if (Now.HeldStamp != Now.Stamp && Now.Unseen is null && !Now.DeviceRests && !Now.AwaitsHost)
                Write(Now.Mine!, Now.Lineage, Now.IsSent, Now.Edit, Now.Stamp);
        }

        private void Write(T content, Lineage lineage, bool isSent, int edit, int stamp)
        {
            var copy = new Copy<T>(Now.Writer, stamp, lineage, content, default)
            {
                Etag = Now.Etag,
                Made = Now.Made,
                IsSent = isSent,
                Includes = Now.Includes,
            };
            Ask(new WriteDevice<T>(copy, Now.Held, edit, stamp, rules.KeepsFirst));
            Now = Now with { DeviceIsBusy = true };
        }
    }
}
