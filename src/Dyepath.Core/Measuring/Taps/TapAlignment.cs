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
    private const double JumpCost = 12;

    /// <summary>Runs that one section may have: three misread taps within it make seven.</summary>
    private const int MostRuns = 7;

    /// <summary>A section that is cut may have any length up to its whole: what it costs beside one of its usual length.</summary>
    private const double CutCost = 1.5;

    /// <summary>The sections in the order of the taps, and what they cost.</summary>
    public static (double Cost, ImmutableArray<TappedSection> Sections) Of(IReadOnlyList<TapRun> runs, TapCycle cycle, HandsPrior hands)
    {
        var count = cycle.Count;
        var states = cycle.IsMirrored ? count : 2 * count;
        var doubt = new CountDoubt(hands, Misreads);
        var variance = cycle.Lengths.Select(doubt.Variance).ToArray();
        // Once with the last section whole, once with it cut: only what is cut is followed by a jump.
        var whole = new Readings(runs.Count, states);
        var cut = new Readings(runs.Count, states);
        Span<int> ofColour = stackalloc int[256];
        for (var end = 1; end <= runs.Count; end++)
        {
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
                    var length = Math.Min(over * over / (2 * variance[j]), LargestLengthCost);
                    var ofCut = MisreadCost * misread + (over < 0 ? Math.Min(length, CutCost) : length);
                    var ofWhole = begin == 0 || end == runs.Count ? ofCut : MisreadCost * misread + length;
                    var (before, from, step) = Follows(whole, begin, state, count);
                    whole.Offer(end, state, before + ofWhole, (from, k, step));
                    cut.Offer(end, state, before + ofCut, (from, k, step));
                    if (begin == 0 || cut.Least[begin].State < 0)
                        continue;
                    var (least, jumped) = cut.Least[begin];
                    step = jumped >= count == state >= count ? SectionStep.Jump : SectionStep.Flip;
                    whole.Offer(end, state, least + JumpCost + ofCut, (jumped, k, step));
                    cut.Offer(end, state, least + JumpCost + ofCut, (jumped, k, step));
                }
            }
            whole.Close(end);
            cut.Close(end);
        }
        if (runs.Count == 0 || whole.Least[^1].State < 0)
            return (double.PositiveInfinity, []);
        return (whole.Least[^1].Cost, Path(runs, whole, cut, count));
    }

    private static (double Cost, int From, SectionStep Step) Follows(Readings whole, int begin, int state, int count)
    {
        if (begin == 0)
            return (0, -1, SectionStep.First);
        var (j, backwards) = (state % count, state >= count);
        var side = backwards ? count : 0;
        var way = backwards ? 1 : -1;
        var last = side + (j + way + count) % count;
        var best = (Cost: whole.Cost(begin, last), From: last, Step: SectionStep.Next);
        var skipped = side + (j + 2 * way + 2 * count) % count;
        if (count > 2 && whole.Cost(begin, skipped) + SkipCost < best.Cost)
            best = (whole.Cost(begin, skipped) + SkipCost, skipped, SectionStep.Skip);
        return best;
    }

    private static ImmutableArray<TappedSection> Path(IReadOnlyList<TapRun> runs, Readings whole, Readings cut, int count)
    {
        var path = new List<TappedSection>();
        var (readings, state) = (whole, whole.Least[^1].State);
        for (var end = runs.Count; end > 0;)
        {
            var (from, k, step) = readings.Back(end, state);
            var first = runs[end - k].First;
            var taps = runs[end - 1].First + runs[end - 1].Length - first;
            path.Add(new TappedSection(state % count, state >= count, taps, first, step));
            readings = step is SectionStep.Jump or SectionStep.Flip ? cut : whole;
            (end, state) = (end - k, from);
        }
        path.Reverse();
        return [.. path];
    }

    /// <summary>The cheapest reading of the runs up to each place, by the section that ends there.</summary>
    private sealed class Readings
    {
        private readonly int _states;
        private readonly double[] _costs;
        private readonly (int State, int Runs, SectionStep Step)[] _back;

        public Readings(int runs, int states)
        {
            _states = states;
            _costs = new double[(runs + 1) * states];
            _back = new (int, int, SectionStep)[_costs.Length];
            Array.Fill(_costs, double.PositiveInfinity);
            Least = new (double, int)[runs + 1];
        }

        /// <summary>By the place, once it is closed; the state is −1 where nothing ends there.</summary>
        public (double Cost, int State)[] Least { get; }

        public double Cost(int end, int state) => _costs[end * _states + state];

        public (int State, int Runs, SectionStep Step) Back(int end, int state) => _back[end * _states + state];

        public void Offer(int end, int state, double cost, (int State, int Runs, SectionStep Step) back)
        {
            if (cost < _costs[end * _states + state])
                (_costs[end * _states + state], _back[end * _states + state]) = (cost, back);
        }

        public void Close(int end)
        {
            Least[end] = (double.PositiveInfinity, -1);
            for (var state = 0; state < _states; state++)
            {
                if (Cost(end, state) < Least[end].Cost)
                    Least[end] = (Cost(end, state), state);
            }
        }
    }
}
