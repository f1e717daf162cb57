using System.Numerics;
using Dyepath.Core.Limits;

namespace Dyepath.Core.Sizing.Counts;

/// <summary>
/// Whether so many counts can serve all sizes when each size allows only some of them: set cover over at
/// most 64 sizes, by depth-first search on the size that fewest counts serve. Only maximal sets are kept,
/// and sizes that pairwise share no count bound the number still needed from below.
/// </summary>
internal sealed class CoverSearch
{
    private readonly (ulong Mask, int Rank)[] _sets;
    private readonly (ulong Mask, int Rank)[][] _serving;
    private readonly ulong[] _sharing;
    private readonly HashSet<(ulong Uncovered, int Most)> _failed = [];
    private readonly Effort _effort;

    private CoverSearch(ulong[] masks, ulong all, Effort effort)
    {
        _effort = effort;
        List<(ulong Mask, int Rank)> kept = [];
        foreach ((ulong mask, int rank) in masks.Select((mask, rank) => (mask & all, rank))
            .OrderByDescending(set => BitOperations.PopCount(set.Item1)).ThenBy(set => set.rank))
        {
            effort.Spend(1 + kept.Count / 5);
            if (!kept.Exists(set => (mask & ~set.Mask) == 0))
                kept.Add((mask, rank));
        }

        _sets = [.. kept];
        _serving = new (ulong, int)[64][];
        _sharing = new ulong[64];
        for (int s = 0; s < 64; s++)
        {
            _serving[s] = [.. _sets.Where(set => (set.Mask >> s & 1) != 0)];
            foreach ((ulong mask, _) in _serving[s])
                _sharing[s] |= mask;
        }
    }

    /// <summary>Ranks of at most <paramref name="most"/> masks that together hold <paramref name="all"/>, or null.</summary>
    public static List<int>? Find(ulong[] masks, ulong all, int most, Effort effort)
    {
        List<int> chosen = [];
        return new CoverSearch(masks, all, effort).Cover(all, most, chosen) ? chosen : null;
    }

    private bool Cover(ulong uncovered, int most, List<int> chosen)
    {
        _effort.Spend(10 + _sets.Length / 5);
        if (uncovered == 0)
            return true;
        if (Needed(uncovered) > most || _failed.Contains((uncovered, most)))
            return false;
        int rarest = -1;
        for (ulong rest = uncovered; rest != 0; rest &= rest - 1)
        {
            int s = BitOperations.TrailingZeroCount(rest);
            if (rarest < 0 || _serving[s].Length < _serving[rarest].Length)
                rarest = s;
        }

        foreach ((ulong mask, int rank) in _serving[rarest].OrderByDescending(set => BitOperations.PopCount(set.Mask & uncovered)))
        {
            chosen.Add(rank);
            if (Cover(uncovered & ~mask, most - 1, chosen))
                return true;
            chosen.RemoveAt(chosen.Count - 1);
        }

        _failed.Add((uncovered, most));
        return false;
    }

    private int Needed(ulong uncovered)
    {
        int apart = 0;
        int largest = 1;
        for (ulong rest = uncovered; rest != 0; apart++)
            rest &= ~(_sharing[BitOperations.TrailingZeroCount(rest)] | (rest & (~rest + 1)));
        foreach ((ulong mask, _) in _sets)
            largest = Math.Max(largest, BitOperations.PopCount(mask & uncovered));
        return Math.Max(apart, (BitOperations.PopCount(uncovered) + largest - 1) / largest);
    }
}
