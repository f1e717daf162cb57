using System.Collections.Immutable;

namespace Dyepath.Workspace.Keeping;

public sealed partial class KeepingMachine<T>
{
    private sealed partial class Turn
    {
        private const int MostMends = 3;

        /// <summary>The same text, but later than every copy of it, so that none of them tells that the host has it.</summary>
        private void GoOnFromCopies()
        {
            var changes = Now.Changes + 1;
            Now = Now with { Changes = changes, Lineage = Now.Lineage.With(Now.Writer, changes), Stamp = Now.Stamp + 1 };
        }

        private void TryOpen()
        {
            if (Now.Found is not { } found)
            {
                OpenPastDevice();
                return;
            }
            if (found.IsEmpty)
            {
                if (Now.HostSaid is { } said)
                    OpenFromHost(said);
                else if (!Now.HostIsBusy)
                    ReadHost(null);
                return;
            }
            // A text that is nowhere else comes before one that the host has, and what this tab wrote itself before the latest.
            var latest = found.Where(c => !found.Any(o => o != c && o.Lineage.Follows(c.Lineage) && !c.Lineage.Follows(o.Lineage)))
                .OrderBy(c => c.IsSent).ThenBy(c => c.Writer != Now.WriterBefore).ThenByDescending(c => c.At).First();
            if (!rules.OpensFromDevice && Now.HostSaid is null && !Now.IsImpatient)
            {
                if (!Now.HostIsBusy)
                    ReadHost(latest.Etag);
                return;
            }
            var answer = Now.HostSaid;
            Now = Now with
            {
                Stage = Stage.Open,
                Mine = latest.Content,
                Edit = 1,
                Stamp = latest.Stamp,
                Lineage = latest.Lineage,
                Etag = latest.Etag,
                Made = latest.Made,
                Includes = latest.IsSent ? [] : latest.Includes,
                SentEdit = latest.IsSent ? 1 : -1,
                Held = latest,
                HeldEdit = 1,
                HeldStamp = latest.Stamp,
                IsDue = !latest.IsSent,
                IsOwn = latest.Writer == Now.WriterBefore,
                Found = null,
                HostSaid = null,
                // Also where the device took so long that the host has not been asked yet.
                AsksHost = latest.Etag is not null && rules.GoesToHost(latest.Content) && Now.HostSaid is null && !Now.HostIsBusy,
            };
            foreach (var copy in found.Where(c => c != latest))
                Meet(copy);
            ForgetWhatWasCleared();
            if (answer is not null)
                Hear(answer);
        }

        /// <summary>
        /// A device that does not answer keeps nobody from what the host has; what it holds is met once it does, as another tab's.
        /// </summary>
        private void OpenPastDevice()
        {
            if (!Now.IsImpatient)
                return;
            if (Now.HostSaid is HostHas<T> has)
                OpenFromHost(has);
            else if (Now.HostSaid is null && !Now.HostIsBusy)
                ReadHost(null);
        }

        private void OpenFromHost(HostSaid<T> said)
        {
            Now = Now with { Found = null, HostSaid = null };
            switch (said)
            {
                case HostHas<T> has:
                    Now = Now with
                    {
                        Stage = Stage.Open,
                        Mine = has.Content,
                        Edit = 1,
                        Stamp = 1,
                        Lineage = Lineage.None.WithHost(has.Etag),
                        Etag = has.Etag,
                        Made = has.Made,
                        SentEdit = 1,
                    };
                    break;
                case HostDidNot<T> not:
                    Now = Now with { Stage = Stage.Closed, Trouble = not.Trouble, HostWhy = not.Why };
                    break;
                default:
                    Now = Now with { Stage = Stage.Closed, Trouble = HostTrouble.Refused };
                    break;
            }
        }

        public void Hear(HostSaid<T> said)
        {
            var (replaced, sending) = (Now.WasReplaced, Now.SendingEdit);
            if (said is not HostDidNot<T> { Trouble: HostTrouble.SignIn })
                Now = Now with { AwaitsHost = false };
            Now = Now with
            {
                HostIsBusy = false,
                SendingEdit = null,
                WasReplaced = false,
                Doubted = said is HostHas<T> ? Now.Doubted : null,
            };
            switch (said)
            {
                case HostHas<T> has:
                    Now = Now with { Trouble = HostTrouble.None, Tries = 0 };
                    Meet(has);
                    break;
                case HostIsUnreadable<T>:
                    Now = Now with { Trouble = HostTrouble.Refused, HostWhy = "The host’s copy cannot be read." };
                    break;
                case HostTook<T> when replaced:
                    Now = Now with { AsksHost = true };
                    break;
                case HostTook<T> took:
                    Now = Now with
                    {
                        Etag = took.Etag,
                        Made = took.Made,
                        Includes = [],
                        Earlier = [],
                        SentEdit = sending == Now.Edit ? Now.Edit : -1,
                        IntendedEdit = -1,
                        Trouble = HostTrouble.None,
                        Tries = 0,
                    };
                    Restamp();
                    break;
                case HostHasAnother<T>:
                    // Another tab may know that text for its own.
                    Now = Now with { Trouble = HostTrouble.None, LooksAgain = Now.DeviceWhy is null, AsksHost = true };
                    break;
                case HostDidNot<T> { Trouble: HostTrouble.Missing } when sending is null || Now.Etag is not null:
                    // It no longer has what it once had: it is made anew there.
                    if (Now.Etag is not null)
                        Restamp();
                    // A copy of before would say that the host has it; where it does not say when, only what follows it tells otherwise.
                    if (Now is { Etag: not null, Made: null })
                        GoOnFromCopies();
                    Now = Now with
                    {
                        Trouble = HostTrouble.Missing,
                        Etag = null,
                        Made = null,
                        AskedMade = null,
                        LostMades = [.. Now.LostMades.Concat(new[] { Now.Made, Now.AskedMade }.OfType<string>()).Distinct()
                            .TakeLast(MostIncluded)],
                        SentEdit = -1,
                        IntendedEdit = -1,
                        IsDue = true,
                        // It may be nowhere else by now.
                        Theirs = Now.Theirs is { IsSent: true } lost ? lost with { IsSent = false, Made = null } : Now.Theirs,
                    };
                    break;
                case HostDidNot<T> { Trouble: HostTrouble.Damaged } damaged when Now.Tries < MostMends:
                    Now = Now with
                    {
                        Trouble = HostTrouble.Damaged,
                        HostWhy = damaged.Why,
                        SentEdit = -1,
                        IntendedEdit = -1,
                        IsDue = true,
                        Tries = Now.Tries + 1,
                    };
                    GoOnFromCopies();
                    break;
                case HostDidNot<T> not:
                    Now = Now with { Trouble = not.Trouble, HostWhy = not.Why, Tries = Now.Tries + 1 };
                    // A host that was stopped comes back without any word of it to a device whose own connection was there all the time.
                    if (not.Trouble is HostTrouble.Busy or HostTrouble.Missing or HostTrouble.Away)
                        Alarm(AlarmKind.Send, not.After ?? rules.Rest(Now.Tries));
                    break;
            }
        }

        /// <summary>The host's text and this tab's.</summary>
        private void Meet(HostHas<T> host)
        {
            // The same answer as before, and meanwhile no tab of this device knew that text for its own.
            var isSure = Now.DeviceWhy is not null || Now.Doubted?.Etag == host.Etag;
            Now = Now with { Doubted = null };
            if (Now.Pending is not null)
            {
                // What is being written goes on from the present text.
                Now = Now with { AsksHost = true };
                return;
            }
            var theirs = Now.Theirs is { IsSent: true } ? null : Now.Theirs;
            var other = new OtherText<T>(host.Content, Now.Lineage, host.Etag, host.Made, true, []);
            if (rules.Same(Now.Mine!, host.Content))
            {
                if (Now.Etag != host.Etag || Now.Made != host.Made || !Now.IsSent)
                    Take(other);
                Now = Now with { Theirs = theirs };
                return;
            }
            if (!Now.IsSent && (Now.GoesOnFrom(host.Etag) || WasMine(host.Content)))
            {
                if (Now.Etag != host.Etag || Now.Made != host.Made)
                    Now = Now with { Includes = Including(Now.Etag), Etag = host.Etag, Made = host.Made, Stamp = Now.Stamp + 1 };
                Now = Now with { Theirs = theirs, IsDue = true };
                return;
            }
            if (Now.AskedEtag != Now.Etag)
            {
                Now = Now with { AsksHost = true };
                return;
            }
            var joined = rules.Join(Now.Mine!, host.Content);
            if (joined is not null && rules.Same(joined, Now.Mine!))
                Now = Now with
                {
                    Etag = host.Etag,
                    Made = host.Made,
                    Includes = [],
                    SentEdit = -1,
                    Theirs = theirs,
                    IsDue = true,
                    Stamp = Now.Stamp + 1,
                };
            else if (joined is not null || (Now.IsSent && (Now.Made is null || host.Made is null || Now.Made == host.Made)))
            {
                Take(other with { Lineage = Now.Lineage.WithHost(host.Etag) });
                Now = Now with { Theirs = theirs };
            }
            else if (!isSure)
                Now = Now with { Doubted = host, LooksAgain = true };
            else
            {
                // Also where the host lost this text and got another device's: it is nowhere but here.
                if (Now.IsSent)
                    Now = Now with { SentEdit = -1, Etag = null, Made = null, Stamp = Now.Stamp + 1 };
                var known = theirs ?? (Now.Theirs?.Etag == host.Etag ? Now.Theirs : null);
                Now = Now with { Theirs = known ?? other with { Lineage = Lineage.None } };
            }
        }
    }
}
