using System.Collections.Immutable;

namespace Dyepath.Core.Measuring.Taps;

/// <summary>How one section follows the one before it.</summary>
internal enum SectionStep
{
    /// <summary>The record begins with it.</summary>
    First,

    /// <summary>The next of the cycle.</summary>
    Next,

    /// <summary>The next but one: a section is missing between them.</summary>
    Skip,

    /// <summary>Any other.</summary>
    Jump,

    /// <summary>The order of the sections is the other way round from here on.</summary>
    Flip,
}

/// <summary>One section as it was tapped.</summary>
/// <param name="Section">Index in the cycle.</param>
/// <param name="IsBackwards">The cycle is passed from its other end.</param>
/// <param name="Taps">How many.</param>
/// <param name="First">Index of its first tap.</param>
internal readonly record struct TappedSection(int Section, bool IsBackwards, int Taps, int First, SectionStep Step);

/// <summary>
/// The cheapest reading of the taps as a cycle's sections in turn. A misread tap, a count unlike the usual one, a missing section, a jump
/// and a turn each have their price, in the logarithm of how seldom they are.
/// </summary>
internal static class TapAlignment
{
    /// <summary>Share of taps that are misread: an assumption, no source.</summary>
    public const double Misreads = 0.03;

    private const double MisreadCost = 4;
    private const double LargestLengthCost = 9;
    private const double SkipCost = 9;
    private const double JumpCost = 13;

    /// <summary>Runs that one section may have: three misread taps within it make seven.</summary>
    private const int MostRuns = 7;

    /// <summary>The sections in the order of the taps, and what they cost.</summary>
    public static (double Cost, ImmutableArray<TappedSection> Sections) Of(IReadOnlyList<TapRun> runs, TapCycle cycle, HandsPrior hands)
    {
        var count = cycle.Count;
        var states = cycle.IsMirrored ? count : 2 * count;
        var doubt = new CountDoubt(hands, Misreads);
        var variance = cycle.Lengths.Select(doubt.Variance).ToArray();
        var costs = new double[(runs.Count + 1) * states];
        var back = new (int State, int Runs, SectionStep Step)[costs.Length];
        Array.Fill(costs, double.PositiveInfinity);
        var least = new (double Cost, int State)[runs.Count + 1];
        Span<int> ofColour = stackalloc int[256];
        for (var end = 1; end <= runs.Count; end++)
        {
            least[end] = (double.PositiveInfinity, -1);
            ofColour.Clear();
            var taps = 0;
            for (var k = 1; k <= Math.Min(MostRuns, end); k++)
            {
                var begin = end - k;
                ofColour[runs[begin].Colour] += runs[begin].Length;
                taps += runs[begin].Length;
                for (var state = 0; state < states; state++)
                {
                    var j = state % count;
                    var misread = taps - ofColour[cycle.Colours[j]];
                    if (misread > Math.Max(1, taps / 2))
                        continue;
                    var over = taps - cycle.Lengths[j];
                    // What is cut may be short.
                    var isCut = begin == 0 || end == runs.Count;
                    var own = MisreadCost * misread
                        + (isCut && over < 0 ? 0 : Math.Min(over * over / (2 * variance[j]), LargestLengthCost));
                    var (before, from, step) = Before(costs, least, begin, state, count, states);
                    var cost = before + own;
                    if (cost >= costs[end * states + state])
                        continue;
                    costs[end * states + state] = cost;
                    back[end * states + state] = (from, k, step);
                }
            }
            for (var state = 0; state < states; state++)
            {
                if (costs[end * states + state] < least[end].Cost)
                    least[end] = (costs[end * states + state], state);
            }
        }
        if (runs.Count == 0 || double.IsInfinity(least[^1].Cost))
            return (double.PositiveInfinity, []);
        return (least[^1].Cost, Path(runs, back, least[^1].State, count, states));
    }

    private static (double Cost, int From, SectionStep Step) Before(
        double[] costs, (double Cost, int State)[] least, int begin, int state, int count, int states)
    {
        if (begin == 0)
            return (0, -1, SectionStep.First);
        var (j, backwards) = (state % count, state >= count);
        var side = backwards ? count : 0;
        var way = backwards ? 1 : -1;
        var last = side + (j + way + count) % count;
        var best = (Cost: costs[begin * states + last], From: last, Step: SectionStep.Next);
        if (count > 2)
        {
            var skipped = side + (j + 2 * way + 2 * count) % count;
            if (costs[begin * states + skipped] + SkipCost < best.Cost)
                best = (costs[begin * states + skipped] + SkipCost, skipped, SectionStep.Skip);
        }
        if (least[begin].State >= 0 && least[begin].Cost + JumpCost < best.Cost)
        {
            best = (least[begin].Cost + JumpCost, least[begin].State,
                least[begin].State >= count == backwards ? SectionStep.Jump : SectionStep.Flip);
        }
        return best;
    }

    private static ImmutableArray<TappedSection> Path(
        IReadOnlyList<TapRun> runs, (int State, int Runs, SectionStep Step)[] back, int state, int count, int states)
    {
        var path = new List<TappedSection>();
        for (var end = runs.Count; end > 0;)
        {
            var (from, k, step) = back[end * states + state];
            var first = runs[end - k].First;
            var taps = runs[end - 1].First + runs[end - 1].Length - first;
            path.Add(new TappedSection(state % count, state >= count, taps, first, step));
            (end, state) = (end - k, from);
        }
        path.Reverse();
        return [.. path];
    }
}
