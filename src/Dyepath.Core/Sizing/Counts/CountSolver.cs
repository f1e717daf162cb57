using System.Collections.Immutable;
using Dyepath.Core.Limits;

namespace Dyepath.Core.Sizing.Counts;

/// <summary>One problem solved for any number of counts; what does not depend on the number is computed once.</summary>
internal sealed class CountSolver
{
    private readonly CountProblem _problem;
    private readonly Effort _effort;
    private readonly CostTable _table;
    private readonly double _worstOfPins;
    private readonly NoPlan? _never;
    private IntervalProgram? _total;
    private double[]? _leastWorst;

    public CountSolver(CountProblem problem, Effort? effort = null)
    {
        _problem = problem;
        _effort = effort ??= new Effort();
        effort.Spend((long)problem.Sizes.Length * problem.Candidates.Length);
        _table = new CostTable(problem);
        ImmutableArray<int> pinned = [.. Enumerable.Range(0, problem.Sizes.Length).Where(s => problem.Sizes[s].Pinned is not null)];
        ImmutableArray<int> refused = [.. pinned.Where(s => !MayHave(s, problem.Sizes[s].Pinned!.Value))];
        ImmutableArray<int> without = [.. _table.Sizes.Where((_, p) => !HasCandidate(p)).Order()];
        if (!refused.IsEmpty)
            _never = new NoPlan(NoPlanReason.PinNotAllowed, refused);
        else if (!without.IsEmpty)
            _never = new NoPlan(NoPlanReason.SizeHasNoCandidate, without);
        else
            _worstOfPins = pinned.Select(s => problem.WorstOf(s, problem.Sizes[s].Pinned!.Value)).DefaultIfEmpty(0).Max();
    }

    public bool IsInterval => _table.IsInterval;

    /// <param name="counts">The most distinct counts, pinned ones included; at least 1.</param>
    public CountResult Solve(int counts)
    {
        _effort.Spend(1);
        if (_never is not null)
            return new CountResult(_never);
        int open = Math.Min(counts - _table.PinnedRanks.Length, _table.Sizes.Length);
        if (open < 0)
        {
            return new CountResult(new NoPlan(
                NoPlanReason.PinsUseTooManyCounts,
                [.. Enumerable.Range(0, _problem.Sizes.Length).Where(s => _problem.Sizes[s].Pinned is not null)]));
        }

        int[]? ranks = _table.IsInterval ? SolveByIntervals(open) : SolveBySearch(open);
        return ranks is null
            ? new CountResult(new NoPlan(NoPlanReason.TooFewCounts, []))
            : new CountResult(new CountPlan(_problem, counts, Candidates(ranks)));
    }

    private int[]? SolveByIntervals(int open)
    {
        if (_problem.Criterion == GradingCriterion.Total)
            return (_total ??= Intervals(double.MaxValue)).Assign(open);
        double worst = (_leastWorst ??= IntervalProgram.LeastWorst(_table))[open];
        return double.IsFinite(worst)
            ? Intervals(Math.Max(worst, _worstOfPins)).Assign(open)
            : null;
    }

    private int[]? SolveBySearch(int open)
    {
        double allowed = double.MaxValue;
        List<int>? cover = CoverWithin(allowed, open);
        if (cover is null)
            return null;
        if (_problem.Criterion != GradingCriterion.Total)
            allowed = SmallestWorst(open, ref cover);
        SpendOnTable();
        KeyTable keys = new(_table, allowed);
        int[]? byIntervals = new IntervalProgram(keys).Assign(open);
        int[] start = byIntervals is null ? [.. cover] : [.. byIntervals.Distinct().Except(_table.PinnedRanks)];
        return LagrangianSearch.Solve(keys, start, open, _effort);
    }

    private IntervalProgram Intervals(double worstAllowed)
    {
        SpendOnTable();
        return new IntervalProgram(new KeyTable(_table, worstAllowed));
    }

    /// <summary>For one table of keys and its program by intervals.</summary>
    private void SpendOnTable() => _effort.Spend((long)_table.Sizes.Length * (_table.Sizes.Length + 5) * _table.Ranked.Length / 10);

    /// <summary>By bisection over the costs that occur; the pins' own worst is a floor.</summary>
    private double SmallestWorst(int open, ref List<int> cover)
    {
        double[] levels = [.. _table.Worst.Where(double.IsFinite).Append(_worstOfPins).Where(w => w >= _worstOfPins).Distinct().Order()];
        int low = 0, high = levels.Length - 1;
        while (low < high)
        {
            int middle = (low + high) / 2;
            if (CoverWithin(levels[middle], open) is { } smaller)
                (high, cover) = (middle, smaller);
            else
                low = middle + 1;
        }

        return levels[high];
    }

    private List<int>? CoverWithin(double allowed, int open)
    {
        int n = _table.Sizes.Length;
        _effort.Spend((long)n * _table.Ranked.Length / 5);
        ulong[] masks = new ulong[_table.Ranked.Length];
        for (int rank = 0; rank < masks.Length; rank++)
        {
            for (int p = 0; p < n; p++)
                masks[rank] |= _table.Worst[rank * n + p] <= allowed ? 1UL << p : 0;
        }

        ulong left = (1UL << n) - 1;
        foreach (int rank in _table.PinnedRanks)
            left &= ~masks[rank];
        return CoverSearch.Find(masks, left, open, _effort);
    }

    private ImmutableArray<int> Candidates(int[] ranks)
    {
        int[] candidates = [.. _problem.Sizes.Select(size => size.Pinned ?? -1)];
        for (int p = 0; p < ranks.Length; p++)
            candidates[_table.Sizes[p]] = _table.Ranked[ranks[p]];
        return ImmutableArray.Create(candidates);
    }

    private bool HasCandidate(int position)
    {
        int n = _table.Sizes.Length;
        for (int rank = 0; rank < _table.Ranked.Length; rank++)
        {
            if (double.IsFinite(_table.Total[rank * n + position]))
                return true;
        }

        return false;
    }

    private bool MayHave(int size, int candidate) =>
        !_problem.Sizes[size].Excluded.Contains(candidate) && double.IsFinite(_problem.TotalOf(size, candidate));
}
