using System.Collections.Immutable;
using Dyepath.Core.Making.Drift;
using Dyepath.Core.Making.Log;

namespace Dyepath.Core.Making.Work;

/// <summary>What a making log says of the maker's hands: what was worked under which correction, and what was read.</summary>
public static class HandsLog
{
    /// <summary>One log a part that is worked in the variegated yarn; what was taken back is left out.</summary>
    public static ImmutableArray<MakerLog> Of(MakingState state)
    {
        ArgumentNullException.ThrowIfNull(state);
        var states = new Stack<MakingState>();
        for (var at = state; at is not null; at = at.Before)
            states.Push(at);
        var entries = new Dictionary<int, ImmutableArray<MakerLog.Entry>.Builder>();
        var before = states.Pop();
        foreach (var after in states)
        {
            // Steps between the rows leave the drift as it was.
            if (before.PartIndex == after.PartIndex && before.Drift is { } from && after.Drift is { } to && !ReferenceEquals(from, to))
            {
                if (!entries.TryGetValue(before.PartIndex, out var log))
                    entries.Add(before.PartIndex, log = ImmutableArray.CreateBuilder<MakerLog.Entry>());
                Add(log, from, to, after.Last!);
            }
            before = after;
        }
        return
        [
            .. entries.OrderBy(part => part.Key)
                .Select(part => new MakerLog(
                    state.Progress[part.Key].Drift!.Filter.Model, part.Value.Take(MakerLog.MostEntries).ToImmutableArray())),
        ];
    }

    private static void Add(ImmutableArray<MakerLog.Entry>.Builder log, DriftTrack from, DriftTrack to, Entry entry)
    {
        foreach (var (stitches, correction) in to.Worked > from.Worked ? from.Stretches(to.Worked) : [])
        {
            if (stitches > 0)
                log.Add(new MakerLog.Worked(stitches, correction));
        }
        if (to.Reading is { } phase)
            log.Add(new MakerLog.Read(phase));
        switch (entry.Kind)
        {
            case EntryKind.Edge:
                log.Add(new MakerLog.Shifted(entry.To!.Value, 0));
                break;
            case EntryKind.Turn:
                log.Add(new MakerLog.Shifted(entry.To!.Value * MakerRemedies.TurnGives, MakerRemedies.TurnError));
                break;
            case EntryKind.Hook:
                var (step, error) = MakerRemedies.Hook(from, entry.To!.Value);
                log.Add(new MakerLog.HookChanged(step, error));
                break;
            case EntryKind.Ball:
                log.Add(new MakerLog.Shifted(0, Math.Min(50, from.Filter.Model.Period)));
                log.Add(new MakerLog.HookChanged(0, MakerRemedies.BallError));
                break;
            case EntryKind.Knot:
            case EntryKind.Join:
            case EntryKind.At when to.Worked < from.Worked:
                // Other yarn, or any number of rows back: where the colours are then is read anew.
                log.Add(new MakerLog.Shifted(0, Math.Min(50, from.Filter.Model.Period)));
                break;
        }
    }
}
