using Dyepath.Core.Limits;

namespace Dyepath.Core.Planning;

/// <summary>
/// The cheapest choice of one option a size in which every size rises as it must and at most so many charts are used. For given charts that
/// is a shortest path over the sizes, solved exactly; which charts are open is decided by branch and bound. The bound puts a price on every
/// use of a chart that is not open yet and hands back the prices of the charts that earn most (docs/decisions/grading-program.md).
/// </summary>
internal sealed class GradingSearch
{
    private const long Never = long.MaxValue / 4;
    private const int RootSteps = 120;
    private const int NodeSteps = 20;

    private enum ChartState : byte
    {
        Undecided,
        Open,
        Closed,
    }

    private readonly GradingTable _table;
    private readonly int _most;
    private readonly Effort _effort;
    private readonly ChartState[] _states;
    private readonly long[][] _values;
    private readonly int[][] _from;
    private readonly int[] _picks;
    private readonly int[] _capacity;
    private readonly int _chainWork;

    /// <summary>How the prices are to move, and which of them: each at most once up and once down.</summary>
    private readonly int[] _changes;

    private readonly List<int> _changed = [];
    private long _left;
    private long _best;
    private int[]? _found;

    private GradingSearch(GradingTable table, int most, long below, long work, Effort effort)
    {
        (_table, _most, _best, _left, _effort) = (table, most, below, work, effort);
        _states = new ChartState[table.Charts];
        _values = [.. table.Options.Select(o => new long[o.Count])];
        _from = [.. table.Options.Select(o => new int[o.Count])];
        _picks = new int[table.Sizes];
        _chainWork = 1 + table.Options.Sum(o => o.Count) / 3;
        _capacity = Capacities();
        _changes = new int[table.Sizes * table.Charts];
    }

    /// <summary>Options by position, or null where nothing costs less than <paramref name="below"/>.</summary>
    /// <param name="work">Steps that may be spent; what is left of them comes back.</param>
    /// <param name="isProven">Whether the whole of what there is was looked through.</param>
    public static int[]? Solve(GradingTable table, int most, long below, ref long work, Effort effort, out long cost, out bool isProven)
    {
        var search = new GradingSearch(table, most, below, work, effort);
        search.Branch(new long[table.Sizes * table.Charts], 0, RootSteps);
        (work, cost, isProven) = (Math.Max(0, search._left), search._best, search._left > 0);
        return search._found;
    }

    private void Branch(long[] prices, int open, int steps)
    {
        List<int> closed = [];
        while (_left > 0)
        {
            var cost = Chain(null, onlyOpen: open == _most);
            if (cost >= _best)
                break;
            var used = Used();
            if (open + used.Count(c => _states[c] == ChartState.Undecided) <= _most)
            {
                Keep(cost);
                break;
            }
            if (!CanServe(open))
                break;
            var chosen = used.Where(c => _states[c] == ChartState.Undecided).MaxBy(c => (UsesOf(c), -c));
            prices = [.. prices];
            if (IsBeaten(prices, open, steps, cost))
                break;
            _states[chosen] = ChartState.Open;
            Branch(prices, open + 1, NodeSteps);
            _states[chosen] = ChartState.Closed;
            closed.Add(chosen);
            steps = NodeSteps;
        }
        foreach (var chart in closed)
            _states[chart] = ChartState.Undecided;
    }

    /// <summary>Raises the bound by moving the prices of charts that are undecided; true where nothing better is left here.</summary>
    private bool IsBeaten(long[] prices, int open, int steps, long relaxed)
    {
        var n = _table.Sizes;
        long highest = long.MinValue;
        double pace = 1;
        var since = 0;
        long[] bestPrices = [.. prices];
        var sums = new long[_table.Charts];
        for (var step = 0; step < steps && _left > 0; step++)
        {
            var bound = Chain(prices, onlyOpen: false);
            int[] picks = [.. _picks];
            Spend(_table.Charts * n / 4);
            Array.Clear(sums);
            for (var p = 0; p < n; p++)
            {
                for (var c = 0; c < sums.Length; c++)
                    sums[c] += _states[c] == ChartState.Undecided ? prices[p * sums.Length + c] : 0;
            }
            int[] top = [.. Enumerable.Range(0, sums.Length).Where(c => sums[c] > 0).OrderByDescending(c => sums[c]).ThenBy(c => c)
                .Take(_most - open)];
            foreach (var c in top)
                bound -= sums[c];
            if (bound >= _best)
                return true;
            if (step % 5 == 0 && top.Length > 0)
                Try(top);
            if (bound > highest)
            {
                (highest, since) = (bound, 0);
                prices.CopyTo(bestPrices, 0);
            }
            else if (++since >= 6)
                (pace, since) = (pace / 2, 0);
            if (!Move(prices, picks, top, pace, Math.Min(_best, relaxed + Math.Max(relaxed, (long)GradingTable.CostUnits * n)) - bound))
                break;
        }
        bestPrices.CopyTo(prices, 0);
        return false;
    }

    /// <summary>
    /// One step along the prices: dearer where a chart is used that no price was handed back for, cheaper where it was for nothing.
    /// </summary>
    private bool Move(long[] prices, int[] picks, int[] top, double pace, long gap)
    {
        var (n, charts) = (_table.Sizes, _table.Charts);
        foreach (var c in top)
        {
            for (var p = 0; p < n; p++)
                Change(p * charts + c, -1);
        }
        for (var p = 0; p < n; p++)
        {
            var options = _table.Options[p];
            Use(p, options.Chart[picks[p]]);
            if (options.SecondChart[picks[p]] != options.Chart[picks[p]])
                Use(p, options.SecondChart[picks[p]]);
        }
        var squares = _changed.Count(at => _changes[at] != 0);
        var move = squares == 0 ? 0 : Math.Max(1, (long)(pace * gap / squares));
        foreach (var at in _changed)
        {
            prices[at] = Math.Clamp(prices[at] + move * _changes[at], 0, (long)1e15);
            _changes[at] = 0;
        }
        _changed.Clear();
        return squares > 0;

        void Use(int p, int chart)
        {
            if (_states[chart] == ChartState.Undecided)
                Change(p * charts + chart, 1);
        }

        void Change(int at, int by)
        {
            _changed.Add(at);
            _changes[at] += by;
        }
    }

    /// <summary>These charts opened beside those that are open.</summary>
    private void Try(int[] charts)
    {
        foreach (var c in charts)
            _states[c] = ChartState.Open;
        var cost = Chain(null, onlyOpen: true);
        if (cost < _best)
            Keep(cost);
        foreach (var c in charts)
            _states[c] = ChartState.Undecided;
    }

    private void Keep(long cost)
    {
        _best = cost;
        _found = [.. _picks];
    }

    /// <summary>
    /// The cheapest path over all sizes, its options in <see cref="_picks"/>; <see cref="Never"/> where there is none. Of equals the
    /// smaller measures are taken.
    /// </summary>
    private long Chain(long[]? prices, bool onlyOpen)
    {
        Spend(_chainWork);
        var (n, charts) = (_table.Sizes, _table.Charts);
        var last = 0;
        for (var p = 0; p < n; p++)
        {
            var options = _table.Options[p];
            var (values, from) = (_values[p], _from[p]);
            var (least, leastAt, next) = (p == 0 ? 0 : Never, -1, 0);
            var before = p == 0 ? null : _table.Options[p - 1];
            var rise = _table.Rise[p];
            for (var i = 0; i < values.Length; i++)
            {
                while (before is not null && next < before.Count && (rise is null || before.Finished[next] <= options.Finished[i] - rise))
                {
                    if (_values[p - 1][next] < least)
                        (least, leastAt) = (_values[p - 1][next], next);
                    next++;
                }
                var (a, b) = (options.Chart[i], options.SecondChart[i]);
                if (least >= Never || !MayUse(a, onlyOpen) || !MayUse(b, onlyOpen))
                {
                    values[i] = Never;
                    continue;
                }
                var value = least + options.Cost[i];
                if (prices is not null)
                {
                    value += _states[a] == ChartState.Undecided ? prices[p * charts + a] : 0;
                    value += b != a && _states[b] == ChartState.Undecided ? prices[p * charts + b] : 0;
                }
                (values[i], from[i]) = (value, leastAt);
            }
        }
        var end = _values[n - 1];
        for (var i = 1; i < end.Length; i++)
        {
            if (end[i] < end[last])
                last = i;
        }
        if (end.Length == 0 || end[last] >= Never)
            return Never;
        var cost = end[last];
        for (var p = n - 1; p >= 0; p--)
            (_picks[p], last) = (last, _from[p][last]);
        return cost;
    }

    private bool MayUse(int chart, bool onlyOpen) =>
        _states[chart] == ChartState.Open || (!onlyOpen && _states[chart] == ChartState.Undecided);

    private int[] Used() =>
        [.. _picks.SelectMany((pick, p) => new[] { _table.Options[p].Chart[pick], _table.Options[p].SecondChart[pick] }).Distinct()];

    private int UsesOf(int chart) => _picks.Where((pick, p) => _table.Options[p].Chart[pick] == chart
        || _table.Options[p].SecondChart[pick] == chart).Count();

    /// <summary>Whether the charts that are open, with those of the others that can serve most sizes, could serve them all.</summary>
    private bool CanServe(int open)
    {
        var served = 0;
        List<int> others = [];
        for (var c = 0; c < _states.Length; c++)
        {
            if (_states[c] == ChartState.Open)
                served += _capacity[c];
            else if (_states[c] == ChartState.Undecided)
                others.Add(_capacity[c]);
        }
        return served + others.OrderDescending().Take(_most - open).Sum() >= _table.Sizes;
    }

    /// <summary>
    /// How many sizes a chart could serve at most while sizes rise: with each size's rises up to it taken off, finished measures never fall
    /// along a pattern, so that it is the longest such row of one option a size.
    /// </summary>
    private int[] Capacities()
    {
        var capacity = new int[_table.Charts];
        if (_table.Rise.Skip(1).Any(r => r is null))
        {
            Array.Fill(capacity, _table.Sizes);
            return capacity;
        }
        Spend(_chainWork);
        var ends = new List<long>[_table.Charts];
        long risen = 0;
        for (var p = 0; p < _table.Sizes; p++)
        {
            risen += _table.Rise[p] ?? 0;
            var options = _table.Options[p];
            for (var i = options.Count - 1; i >= 0; i--)
            {
                Add(ends[options.Chart[i]] ??= [], options.Finished[i] - risen);
                if (options.SecondChart[i] != options.Chart[i])
                    Add(ends[options.SecondChart[i]] ??= [], options.Finished[i] - risen);
            }
        }
        for (var c = 0; c < capacity.Length; c++)
            capacity[c] = ends[c]?.Count ?? 0;
        return capacity;

        // The smallest end of a row of each length; measures of one size come falling, so that no row takes two of them.
        static void Add(List<long> ends, long measure)
        {
            var at = 0;
            while (at < ends.Count && ends[at] <= measure)
                at++;
            if (at == ends.Count)
                ends.Add(measure);
            else
                ends[at] = measure;
        }
    }

    private void Spend(long steps)
    {
        _left -= steps;
        _effort.Spend(steps);
    }
}
