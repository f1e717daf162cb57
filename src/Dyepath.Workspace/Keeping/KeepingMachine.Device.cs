using System.Collections.Immutable;

namespace Dyepath.Workspace.Keeping;

public sealed partial class KeepingMachine<T>
{
    private sealed partial class Turn
    {
        public void Read(ImmutableArray<Copy<T>> copies)
        {
            Now = Now with { DeviceIsBusy = false, IsLooking = false };
            if (Now.Stage == Stage.Opening)
            {
                Now = Now with { Found = copies };
                return;
            }
            foreach (var copy in copies.Where(c => c.Writer != Now.Writer && !GoesOnFromGivenUp(c)))
                Meet(copy);
            if (Now.IsYielding)
                Settle(mine: false);
            // Whoever took the copy away has it in another, unless the device has lost it.
            if (Now.Held is not null && !copies.Any(c => c.Lineage.Follows(Now.Held.Lineage)))
                Forget();
            ForgetWhatWasCleared();
            // A reading that began before the host answered proves nothing; and neither does an answer from before that reading.
            if (!Now.LooksAgain && Now.Doubted is not null)
                Now = Now with { AsksHost = true };
        }

        /// <summary>
        /// What she gives up is what she saw: a text that has gone on from it since is another's, and no part of her choice.
        /// </summary>
        private bool GoesOnFromGivenUp(Copy<T> copy) =>
            Now is { IsYielding: true, Theirs: { } theirs } && copy.Lineage.Follows(Now.Lineage) && !copy.Lineage.Follows(theirs.Lineage);

        public void Written(DeviceHolds<T> holds)
        {
            Now = Now with { DeviceIsBusy = false, DeviceWhy = null, DeviceRests = false, LooksAgain = Now.LooksAgain || holds.Others };
            var edit = holds.Edit;
            if (edit == -1 && Now.Pending is { } pending)
            {
                var changedMeanwhile = Now.Stamp != holds.Stamp - 1;
                Accept(pending);
                Now = Now with { Pending = null, Stamp = changedMeanwhile ? Now.Stamp + 1 : holds.Stamp };
                edit = Now.Edit;
            }
            // The copies whose place it took may have known more of the host.
            var copy = AsItIs(holds.Copy);
            if (copy.IsSent && edit == Now.Edit && !Now.IsSent)
                Now = Now with { Etag = copy.Etag, Made = copy.Made, SentEdit = edit, Includes = [] };
            else if (!Now.IsSent)
                Now = Now with { Includes = Including([copy.Etag, .. copy.Includes]) };
            if (!Now.IsSent && !WasMine(copy.Content))
                Now = Now with { Earlier = [.. Now.Earlier.Add(copy.Content).TakeLast(MostEarlier)] };
            Now = Now with { Held = holds.Copy, HeldEdit = edit, HeldStamp = holds.Stamp };
            ForgetWhatWasCleared();
            if (!holds.Others && Now.Lineage.HasTooMany)
                Now = Now with { Lineage = Now.Lineage.Shortened(), Stamp = Now.Stamp + 1 };
        }

        public void Ahead()
        {
            // Until something happens: what is ahead is either looked at now, or waits for a choice.
            Now = Now with
            {
                DeviceIsBusy = false,
                LooksAgain = Now.Theirs is null,
                DeviceRests = Now.Pending is null,
                IsElsewhere = Now.IsElsewhere || Now.Pending is not null,
                Pending = null,
            };
        }

        public void NotWritten(string why)
        {
            Now = Now with { DeviceIsBusy = false, IsLooking = false, DeviceWhy = why, DeviceRests = true };
            Alarm(AlarmKind.Device, rules.DeviceRest);
            if (Now.Stage == Stage.Opening)
            {
                Now = Now with { Found = [] };
                return;
            }
            if (Now.Pending is { } pending)
            {
                Accept(pending);
                Now = Now with { Pending = null };
            }
            if (Now.IsYielding)
                Settle(mine: false);
            // The host may take what this device does not.
            Now = Now with { IsDue = true };
        }

        public void Cleared()
        {
            Forget();
            // Whoever signs out may have cleared this device: the host tells.
            var asks = Now.Etag is not null && Now.Trouble != HostTrouble.Away && Now.Mine is not null && rules.GoesToHost(Now.Mine);
            Now = Now with { AwaitsHost = asks, AsksHost = Now.AsksHost || asks };
            Now = Now with { WasCleared = Now.DeviceIsBusy || Now.Stage == Stage.Opening, DeviceRests = false };
        }

        /// <summary>What was read or written before the store was cleared is no longer there.</summary>
        private void ForgetWhatWasCleared()
        {
            if (Now.WasCleared)
                Forget();
            Now = Now with { WasCleared = false };
        }

        private void Forget() => Now = Now with { Held = null, HeldEdit = -1, HeldStamp = -1 };

        /// <summary>Another tab's copy and this tab's text.</summary>
        private void Meet(Copy<T> copy)
        {
            Compare(AsItIs(copy));
            // The other tab gave way, or both have come to the same.
            if (Now.Theirs is { } theirs
                && (theirs.Lineage == Lineage.None ? Now.GoesOnFrom(theirs.Etag) : Now.Lineage.Follows(theirs.Lineage)))
                Now = Now with { Theirs = null, LooksAgain = true, IsDue = true };
        }

        private void Compare(Copy<T> copy)
        {
            if (Now.Lineage.Follows(copy.Lineage))
            {
                KnowsOf(copy);
                return;
            }
            if (copy.Lineage.Follows(Now.Lineage))
            {
                Adopt(copy);
                return;
            }
            if (Now.Yielded is { } yielded && copy.Lineage.Follows(yielded.Taken) && !copy.Lineage.Follows(yielded.Given))
            {
                // The other tab has not heard yet that this one gave way, and goes on writing.
                Take(Of(copy, Now.Lineage.And(copy.Lineage)) with { Includes = [.. copy.Includes, .. Including(Now.Etag)] });
                Now = Now with { Yielded = yielded with { Taken = copy.Lineage } };
                return;
            }
            var both = Now.Lineage.And(copy.Lineage);
            if (rules.Same(Now.Mine!, copy.Content))
            {
                if (copy.IsSent && !Now.IsSent)
                    Take(Of(copy, both));
                else
                    Now = Now with
                    {
                        Lineage = both,
                        Includes = Now.IsSent ? Now.Includes : Including([copy.Etag, .. copy.Includes]),
                        Stamp = Now.Stamp + 1,
                    };
            }
            else if (rules.Join(Now.Mine!, copy.Content) is { } joined)
            {
                var theirs = rules.Same(joined, copy.Content);
                if (theirs)
                    Take(Of(copy, both) with { Includes = [.. copy.Includes, .. Including(Now.Etag)] });
                else
                    Now = Now with { Lineage = both, Includes = Including([copy.Etag, .. copy.Includes]), Stamp = Now.Stamp + 1 };
            }
            else if (copy.GoesOnFrom(rules.EtagOf(Now.Mine!)))
            {
                // What this tab has is in it by way of the host.
                Adopt(copy);
            }
            else if (!Now.IsSent && (WasMine(copy.Content) || Now.GoesOnFrom(rules.EtagOf(copy.Content))))
                Now = Now with
                {
                    Lineage = both,
                    Includes = Now.Theirs is null ? Now.Includes : Including([copy.Etag, .. copy.Includes]),
                    Stamp = Now.Stamp + 1,
                };
            else if (Now.Theirs?.IsGoneOnWithIn(copy) == true)
                Now = Now with { Theirs = Of(copy, copy.Lineage) };
            else if ((Now.IsSent || copy.IsSent) && !rules.KeepsFirst)
            {
                // What the other tab has not sent yet is its own to settle; what the host has, it tells.
                if (copy.IsSent && copy.Etag != Now.Etag)
                    Now = Now with { AsksHost = true, AskedMade = copy.Made };
            }
            else if (Now.Theirs is null)
                Now = Now with { Theirs = Of(copy, copy.Lineage) };
        }

        private static OtherText<T> Of(Copy<T> copy, Lineage lineage) =>
            new(copy.Content, lineage, copy.Etag, copy.Made, copy.IsSent, copy.Includes, copy.At);

        /// <summary>A copy may say that the host has it, from before the host lost it.</summary>
        private Copy<T> AsItIs(Copy<T> copy) =>
            copy.Made is not null && Now.LostMades.Contains(copy.Made)
                ? copy with { IsSent = false, Etag = null, Made = null, Includes = [.. copy.Includes, copy.Etag!] } : copy;

        /// <summary>A copy that is in this tab's text may know more of the host.</summary>
        private void KnowsOf(Copy<T> copy)
        {
            if (Now.IsSent)
                return;
            if (copy.IsSent && copy.Lineage.Follows(Now.Lineage))
            {
                var isTold = Now.Held?.Writer == copy.Writer && Now is { IsHeld: true, WasCleared: false }
                    && rules.Same(Now.Mine!, copy.Content);
                Take(Of(copy, Now.Lineage));
                // That copy says so already: whoever only follows has nothing to write.
                if (isTold)
                    Now = Now with { Held = copy, HeldEdit = Now.Edit, HeldStamp = Now.Stamp };
            }
            else if (copy.Includes.Append(copy.Etag).Any(e => e is not null && !Now.GoesOnFrom(e)))
                Now = Now with { Includes = Including([copy.Etag, .. copy.Includes]), Stamp = Now.Stamp + 1 };
        }

        /// <summary>Goes on from another tab's copy.</summary>
        private void Adopt(Copy<T> copy)
        {
            var hasOwn = Now.Held?.Writer == Now.Writer;
            var before = Now.Unseen ?? new(Now.Mine!, Now.Lineage, Now.Etag, Now.Made, Now.Includes, Of(copy, copy.Lineage));
            var unseen = Now.Theirs is null && copy.Lineage.Follows(before.Lineage) && !rules.Same(before.Content, copy.Content)
                && !rules.KeepsFirst;
            Take(Of(copy, copy.Lineage));
            // A third text goes on being another.
            var theirs = Now.Theirs is { } other && other.Lineage != Lineage.None && !copy.Lineage.Follows(other.Lineage) ? other : null;
            Now = Now with { Theirs = theirs, LooksAgain = Now.LooksAgain || theirs != Now.Theirs, DeviceRests = false };
            Now = Now with { Unseen = unseen ? before with { Other = Of(copy, copy.Lineage) } : null };
            if (unseen)
                Alarm(AlarmKind.Glance, rules.Glance);
            // This tab's own copy, where there still is one, is written anew, or it would stay as it was.
            if (!hasOwn || unseen)
                Now = Now with { Held = copy, HeldEdit = Now.Edit, HeldStamp = Now.Stamp };
        }
    }
}
