using System.Collections.Immutable;
using Dyepath.Core.Quantities;

namespace Dyepath.Core.Planning;

/// <summary>What one size may be, by finished measure. Costs are whole millionths of a cm², so that sums are exact in any order.</summary>
internal sealed class GradingOptions(int count)
{
    public long[] Finished { get; } = new long[count];

    public long[] Cost { get; } = new long[count];

    /// <summary>Size of the error over the tolerance, in nanometres.</summary>
    public long[] Misfit { get; } = new long[count];

    public int[] Way { get; } = new int[count];

    /// <summary>Index of the edging's rounds, or −1.</summary>
    public int[] Rounds { get; } = new int[count];

    public int[] Chart { get; } = new int[count];

    public int[] SecondChart { get; } = new int[count];

    public int Count => Finished.Length;
}

/// <summary>The sizes by target, each with what it may be.</summary>
internal sealed class GradingTable
{
    /// <summary>Of a cost's unit in a square centimetre.</summary>
    public const double CostUnits = 1e6;

    private const double MostCost = 1e15;

    private GradingTable(int[] order, GradingOptions[] options, long?[] rise, int charts) =>
        (Order, Options, Rise, Charts) = (order, options, rise, charts);

    /// <summary>Index of the size at each position.</summary>
    public int[] Order { get; }

    public GradingOptions[] Options { get; }

    /// <summary>By how many nanometres a position must be larger than the one before it; null where any will do.</summary>
    public long?[] Rise { get; }

    public int Charts { get; }

    public int Sizes => Order.Length;

    /// <param name="from">The smallest lean that is taken.</param>
    /// <param name="to">The largest.</param>
    /// <param name="misfit">The largest misfit that is taken, in nanometres.</param>
    public static GradingTable Of(GradingProblem problem, double from, double to, long misfit)
    {
        int[] order = [.. Enumerable.Range(0, problem.Sizes.Length).OrderBy(s => problem.Sizes[s].Target).ThenBy(s => s)];
        var rise = new long?[order.Length];
        for (var p = 1; p < order.Length; p++)
            rise[p] = problem.RiseBetween(problem.Sizes[order[p - 1]], problem.Sizes[order[p]])?.Nanometres;
        var charts = problem.Ways.IsEmpty ? 0 : problem.Ways.Max(w => Math.Max(w.Chart, w.SecondChart)) + 1;
        return new GradingTable(order, [.. order.Select(s => OptionsOf(problem, s, from, to, misfit))], rise, charts);
    }

    /// <summary>The leans that one pattern may have together: from the first to the second, each range reaching as far as it may.</summary>
    public static ImmutableArray<(double From, double To)> LeansOf(GradingProblem problem)
    {
        if (problem.Rules.LeanTolerance is not { } tolerance)
            return [(double.NegativeInfinity, double.PositiveInfinity)];
        double[] leans = [.. problem.Ways.Select(w => w.Lean).OfType<double>().Distinct().Order()];
        if (leans.Length == 0)
            return [(0, 0)];
        var ranges = ImmutableArray.CreateBuilder<(double From, double To)>();
        foreach (var from in leans)
        {
            var to = leans.Last(l => l <= from + tolerance);
            if (ranges.Count == 0 || ranges[^1].To < to)
                ranges.Add((from, to));
        }
        return ranges.ToImmutable();
    }

    private static GradingOptions OptionsOf(GradingProblem problem, int at, double from, double to, long misfit)
    {
        var size = problem.Sizes[at];
        ImmutableArray<GradingRounds> rounds = size.Rounds.IsEmpty ? [new(0, Length.Zero, 0)] : size.Rounds;
        var found = new List<(long Finished, long Cost, long Misfit, int Way, int Rounds)>();
        for (var w = 0; w < problem.Ways.Length; w++)
        {
            if (size.Pinned is { } pin ? w != pin : size.Excluded.Contains(w))
                continue;
            var way = problem.Ways[w];
            if (way.Lean is { } lean && (lean < from || lean > to))
                continue;
            for (var r = 0; r < rounds.Length; r++)
            {
                var finished = way.Measure + rounds[r].Depth;
                if (size.Pinned is null && finished < size.Floor)
                    continue;
                var off = MisfitOf(size, finished);
                if (off > misfit)
                    continue;
                var cost = Math.Round(CostUnits * problem.CostOf(size, finished, way.Penalty + rounds[r].Penalty));
                found.Add((finished.Nanometres, (long)Math.Min(cost, MostCost), off, w, size.Rounds.IsEmpty ? -1 : r));
            }
        }
        var options = new GradingOptions(found.Count);
        var i = 0;
        foreach (var option in found.OrderBy(o => o.Finished).ThenBy(o => o.Cost).ThenBy(o => o.Way).ThenBy(o => o.Rounds))
        {
            (options.Finished[i], options.Cost[i], options.Misfit[i], options.Way[i], options.Rounds[i]) = option;
            (options.Chart[i], options.SecondChart[i]) = (problem.Ways[option.Way].Chart, problem.Ways[option.Way].SecondChart);
            i++;
        }
        return options;
    }

    public static long MisfitOf(GradingSize size, Length finished) =>
        (long)Math.Round(Math.Abs((finished - size.Target).Nanometres) / size.Tolerance);
}
