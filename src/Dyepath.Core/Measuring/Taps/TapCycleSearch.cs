using System.Collections.Immutable;

namespace Dyepath.Core.Measuring.Taps;

/// <summary>Finds the sequence that explains the taps most cheaply, and whether it is longer than its colours alone say.</summary>
internal static class TapCycleSearch
{
    /// <summary>What a section more has to save: its colour and its length have to be told.</summary>
    private const double SectionCost = 4;

    /// <summary>Cost of a tap, on average, over which the taps are no such sequence: random colours cost several times as much.</summary>
    private const double MostCost = 1;

    /// <summary>Runs on which cycles are compared; more add time and no certainty.</summary>
    private const int MostScreened = 160;

    private const double Significance = 1e-4;

    /// <summary>What one odd count can add to the difference of two sums of squares.</summary>
    private const double OddCount = 16;

    /// <summary>The sequence, the sections as they were tapped, and how many times longer it is than its colours; null where none has
    /// come round.</summary>
    public static (TapCycle Cycle, ImmutableArray<TappedSection> Sections, int Times)? Find(List<TapRun> runs, HandsPrior hands)
    {
        var screened = runs.Count > MostScreened ? runs.GetRange(0, MostScreened) : runs;
        (double Cost, TapCycle? Cycle) best = (double.PositiveInfinity, null);
        foreach (var cycle in TapCycle.Candidates(screened))
        {
            var (cost, sections) = TapAlignment.Of(screened, cycle, hands);
            cost += SectionCost * cycle.Count;
            if (cost < best.Cost)
                best = (cost, Refitted(cycle, sections));
        }
        if (best.Cycle is null)
            return null;
        var taps = runs[^1].First + runs[^1].Length;
        var found = Settled(runs, best.Cycle, hands);
        if (found.Cost > MostCost * taps)
            return null;
        for (var times = 2; times <= 3; times++)
        {
            if (Longer(found.Cycle, found.Sections, times, hands) is { } longer)
            {
                var settled = Settled(runs, longer, hands);
                return (settled.Cycle, settled.Sections, times);
            }
        }
        return (found.Cycle, found.Sections, 1);
    }

    /// <summary>Sections that are whole: neither the record's first and last nor beside a break.</summary>
    public static bool IsWhole(ImmutableArray<TappedSection> sections, int i) =>
        i > 0 && i + 1 < sections.Length && !IsBreak(sections[i].Step) && !IsBreak(sections[i + 1].Step);

    /// <summary>Whether yarn is missing between a section and the one before it.</summary>
    public static bool IsBreak(SectionStep step) => step is SectionStep.Jump or SectionStep.Flip;

    private static (double Cost, TapCycle Cycle, ImmutableArray<TappedSection> Sections) Settled(List<TapRun> runs, TapCycle cycle,
        HandsPrior hands)
    {
        var (_, sections) = TapAlignment.Of(runs, cycle, hands);
        cycle = Refitted(cycle, sections);
        var (cost, settled) = TapAlignment.Of(runs, cycle, hands);
        return (cost, Refitted(cycle, settled), settled);
    }

    private static TapCycle Refitted(TapCycle cycle, ImmutableArray<TappedSection> sections)
    {
        var counts = new List<int>[cycle.Count];
        for (var j = 0; j < counts.Length; j++)
            counts[j] = [];
        for (var i = 0; i < sections.Length; i++)
        {
            if (IsWhole(sections, i))
                counts[sections[i].Section].Add(sections[i].Taps);
        }
        return cycle with { Lengths = [.. counts.Select((taps, j) => Middle(taps) ?? cycle.Lengths[j])] };
    }

    /// <summary>The mean of the middle half, which no miscount moves far; null of none.</summary>
    private static double? Middle(List<int> taps)
    {
        if (taps.Count == 0)
            return null;
        taps.Sort();
        var cut = taps.Count / 4;
        return Math.Max(0.5, taps.Skip(cut).Take(taps.Count - 2 * cut).Average());
    }

    /// <summary>
    /// The symmetry test: the same taps as a list so many times as long, whose parts are alike unless the sequence is longer than its
    /// colours show. Null where they are alike, or too little was tapped to tell.
    /// </summary>
    private static TapCycle? Longer(TapCycle cycle, ImmutableArray<TappedSection> sections, int times, HandsPrior hands)
    {
        var (from, length) = LongestStretch(sections);
        var longer = times * cycle.Count;
        if (length < 2 * longer || longer > TapCycle.MostSections)
            return null;
        var counts = sections.AsSpan(from, length).ToArray().Select(s => s.Taps).ToArray();
        var doubt = new CountDoubt(hands, TapAlignment.Misreads);
        var saved = new CountGroups(counts, cycle.Count, 0, doubt, null).Misfit - new CountGroups(counts, longer, 0, doubt, null).Misfit;
        if (Normal.ChiSquareAbove(Math.Max(0, saved - OddCount), longer - cycle.Count) > Significance)
            return null;
        var lengths = new double[longer];
        for (var j = 0; j < longer; j++)
            lengths[j] = Middle([.. counts.Where((_, n) => n % longer == j)])!.Value;
        return new([.. Enumerable.Range(0, longer).Select(j => cycle.Colours[sections[from + j].Section])], [.. lengths]);
    }

    /// <summary>The longest stretch of whole sections one after another.</summary>
    private static (int From, int Length) LongestStretch(ImmutableArray<TappedSection> sections)
    {
        int from = 0, best = 0, begin = 0;
        for (var i = 0; i < sections.Length; i++)
        {
            if (!IsWhole(sections, i))
                begin = i + 1;
            else if (sections[i].Step != SectionStep.Next)
                begin = i;
            if (i + 1 - begin > best)
                (from, best) = (begin, i + 1 - begin);
        }
        return (from, best);
    }
}
