using System.Collections.Immutable;
using Dyepath.Core.Yarns;

namespace Dyepath.Core.Measuring.Taps;

/// <summary>A sequence supposed to lie behind the taps: the colours in turn, each with its usual taps.</summary>
internal sealed record TapCycle(ImmutableArray<byte> Colours, ImmutableArray<double> Lengths)
{
    /// <summary>Most sections looked for.</summary>
    public const int MostSections = ColourRing.MostSections / 2;

    /// <summary>Cycles that are tried on the taps.</summary>
    private const int MostTried = 5;

    public int Count => Colours.Length;

    public double Total => Lengths.Sum();

    /// <summary>Whether the colours read the same from the other end.</summary>
    public bool IsMirrored => Enumerable.Range(0, Count).Any(sum => Enumerable.Range(0, Count).All(j => Colours[j] == Colours[(sum - j +
        Count) % Count]));

    /// <summary>
    /// Cycles that stand in the taps at least once and once again, the likeliest first: colours equal so many runs apart, over a
    /// stretch as long as the cycle.
    /// </summary>
    public static IEnumerable<TapCycle> Candidates(List<TapRun> runs)
    {
        var found = new List<(double Share, TapCycle Cycle)>();
        foreach (var list in new[] { TapRun.Healed(runs), TapRun.Smoothed(runs), runs })
        {
            for (var count = 2; count <= MostSections && 2 * count <= list.Count; count++)
            {
                if (Candidate(list, count) is { } candidate
                    && !found.Any(f => f.Share >= candidate.Share - 0.02 && IsRepeated(f.Cycle, candidate.Cycle)))
                {
                    found.Add(candidate);
                }
            }
        }
        return found.OrderByDescending(f => f.Share).ThenBy(f => f.Cycle.Count).Select(f => f.Cycle).Take(MostTried);
    }

    private static (double Share, TapCycle Cycle)? Candidate(List<TapRun> list, int count)
    {
        int matches = 0, stretch = 0, best = 0, end = 0;
        for (var i = 0; i + count < list.Count; i++)
        {
            stretch = list[i].Colour == list[i + count].Colour ? stretch + 1 : 0;
            matches += stretch > 0 ? 1 : 0;
            if (stretch > best)
                (best, end) = (stretch, i + 1);
        }
        if (best < count)
            return null;
        var start = end - best;
        var lengths = new double[count];
        for (var j = 0; j < count; j++)
        {
            // The record's first and last run are cut.
            var seen = new List<int>();
            for (var i = start + j; i < end + count; i += count)
            {
                if (i > 0 && i + 1 < list.Count)
                    seen.Add(list[i].Length);
            }
            seen.Sort();
            lengths[j] = seen.Count == 0 ? list[start + j].Length : (seen[seen.Count / 2] + seen[(seen.Count - 1) / 2]) / 2.0;
        }
        return ((double)matches / (list.Count - count),
            new([.. Enumerable.Range(start, count).Select(i => list[i].Colour)], [.. lengths]));
    }

    private static bool IsRepeated(TapCycle one, TapCycle other) =>
        other.Count % one.Count == 0 && Enumerable.Range(0, one.Count).Any(turn =>
            Enumerable.Range(0, other.Count).All(j => other.Colours[j] == one.Colours[(j + turn) % one.Count]));
}
