namespace Dyepath.Core.Sizing.Counts;

/// <summary>
/// Branch and bound for costs without interval structure. Relaxing "each size has exactly one count" with
/// a price per size leaves a problem that is solved by inspection (open the counts that earn most), whose
/// value bounds the plan from below (Cornuéjols, Fisher and Nemhauser 1977, Management Science 23:789–810).
/// Prices are whole numbers, so bounds are exact; they are improved by subgradient steps, and counts whose
/// opening would lift the bound to the best plan known are dropped for good.
/// </summary>
internal sealed class LagrangianSearch
{
    private const int RootSteps = 400;
    private const int NodeSteps = 40;

    private readonly KeyTable _keys;
    private readonly CancellationToken _cancel;
    private readonly List<int> _opened = [];
    private long _best;
    private int[] _bestOpen;

    private LagrangianSearch(KeyTable keys, int[] open, CancellationToken cancel)
    {
        _keys = keys;
        _cancel = cancel;
        _bestOpen = open;
        _best = Value(open);
    }

    /// <summary>The number of nodes looked at, for measurements.</summary>
    public long Nodes { get; private set; }

    /// <summary>The best rank for each position with at most <paramref name="most"/> counts beside the pinned ones.</summary>
    /// <param name="keys">The costs.</param>
    /// <param name="open">A feasible choice of counts to start from; stays the answer unless a strictly better one exists.</param>
    /// <param name="most">How many counts may be opened.</param>
    /// <param name="cancel">Looked at in every node.</param>
    public static int[] Solve(KeyTable keys, int[] open, int most, CancellationToken cancel) => Solve(keys, open, most, out _, cancel);

    /// <inheritdoc cref="Solve(KeyTable, int[], int, CancellationToken)"/>
    public static int[] Solve(KeyTable keys, int[] open, int most, out long nodes, CancellationToken cancel)
    {
        LagrangianSearch search = new(keys, open, cancel);
        long[] prices = new long[keys.Sizes];
        int[] ranks = keys.Serve(open);
        for (int p = 0; p < prices.Length; p++)
            prices[p] = keys.Key[ranks[p] * keys.Sizes + p];
        search.Branch([.. Enumerable.Range(0, keys.Ranks)], [.. keys.Base], most, prices, RootSteps);
        nodes = search.Nodes;
        return keys.Serve(search._bestOpen);
    }

    private long Value(int[] open)
    {
        int[] ranks = _keys.Serve(open);
        long sum = open.Length * KeyTable.CountUnit;
        for (int p = 0; p < ranks.Length; p++)
            sum += _keys.Key[ranks[p] * ranks.Length + p];
        return sum;
    }

    /// <summary>
    /// Searches all plans that open, beside <see cref="_opened"/>, at most <paramref name="most"/> of the
    /// <paramref name="active"/> counts; <paramref name="served"/> is each size's cheapest cost so far.
    /// </summary>
    private void Branch(List<int> active, long[] served, int most, long[] prices, int steps)
    {
        _cancel.ThrowIfCancellationRequested();
        Nodes++;
        long opened = _opened.Count * KeyTable.CountUnit;
        Offer(Sum(served) + opened, []);
        if (most == 0)
            return;
        active.RemoveAll(rank => !Helps(rank, served));
        if (most == 1)
        {
            OpenBestSingle(active, served, opened);
            return;
        }

        prices = [.. prices];
        while (active.Count > 0)
        {
            int chosen = Bound(active, served, most, opened, prices, steps);
            if (chosen < 0)
                return;
            long[] withChosen = [.. served];
            ReadOnlySpan<long> costs = _keys.Of(chosen);
            for (int p = 0; p < withChosen.Length; p++)
                withChosen[p] = Math.Min(withChosen[p], costs[p]);
            active.Remove(chosen);
            _opened.Add(chosen);
            Branch([.. active], withChosen, most - 1, prices, NodeSteps);
            _opened.RemoveAt(_opened.Count - 1);
            _cancel.ThrowIfCancellationRequested();
            steps = NodeSteps;
        }
    }

    private void OpenBestSingle(List<int> active, long[] served, long opened)
    {
        foreach (int rank in active)
        {
            ReadOnlySpan<long> costs = _keys.Of(rank);
            long sum = opened + KeyTable.CountUnit;
            for (int p = 0; p < served.Length; p++)
                sum += Math.Min(served[p], costs[p]);
            Offer(sum, [rank]);
        }
    }

    /// <summary>
    /// Raises the lower bound by moving <paramref name="prices"/>, dropping counts from
    /// <paramref name="active"/> that cannot be in a better plan.
    /// </summary>
    /// <returns>The count to branch on, or −1 when nothing better is left here.</returns>
    private int Bound(List<int> active, long[] served, int most, long opened, long[] prices, int steps)
    {
        int n = prices.Length;
        double pace = 1;
        long highest = long.MinValue;
        long[] bestPrices = [.. prices];
        int branch = -1;
        int sinceRise = 0;
        long[] gains = new long[active.Count];
        int[] order = new int[active.Count];
        int[] used = new int[n];
        for (int step = 0; step < steps; step++)
        {
            int count = active.Count;
            for (int k = 0; k < count; k++)
            {
                gains[k] = Gain(active[k], prices);
                order[k] = k;
            }

            Array.Sort(order, 0, count, Comparer<int>.Create((a, b) => gains[a] != gains[b] ? gains[a].CompareTo(gains[b]) : a.CompareTo(b)));
            int open = 0;
            long bound = opened;
            for (int p = 0; p < n; p++)
            {
                bound += Math.Min(prices[p], served[p]);
                used[p] = prices[p] > served[p] ? 1 : 0;
            }

            for (; open < Math.Min(most, count) && gains[order[open]] < 0; open++)
                bound += gains[order[open]];
            int[] selection = [.. order.Take(open).Select(k => active[k])];
            Offer(Sum(served, selection) + opened + open * KeyTable.CountUnit, selection);
            if (bound >= _best)
                return -1;
            if (bound > highest)
            {
                (highest, sinceRise) = (bound, 0);
                prices.CopyTo(bestPrices, 0);
                branch = active[order[0]];
            }
            else if (++sinceRise >= 8)
            {
                (pace, sinceRise) = (pace / 2, 0);
            }

            long squares = 0;
            foreach (int rank in selection)
            {
                ReadOnlySpan<long> costs = _keys.Of(rank);
                for (int p = 0; p < n; p++)
                    used[p] += prices[p] > costs[p] ? 1 : 0;
            }

            for (int p = 0; p < n; p++)
                squares += (1 - used[p]) * (1 - used[p]);
            long replaced = open == most ? gains[order[open - 1]] : 0;
            long limit = _best - bound + replaced;
            int at = 0;
            for (int k = 0; k < count; k++)
            {
                if (gains[k] < limit)
                    active[at++] = active[k];
            }

            active.RemoveRange(at, count - at);
            if (active.Count == 0)
                return -1;

            // Prices that make every size use exactly one count would have met the best plan above, so squares > 0.
            long move = Math.Max(1, (long)(pace * (_best - bound) / squares));
            for (int p = 0; p < n; p++)
                prices[p] = Math.Clamp(prices[p] + move * (1 - used[p]), 0, KeyTable.Budget);
        }

        bestPrices.CopyTo(prices, 0);
        return active.Contains(branch) ? branch : active[0];
    }

    private long Gain(int rank, long[] prices)
    {
        ReadOnlySpan<long> costs = _keys.Of(rank);
        long gain = KeyTable.CountUnit;
        for (int p = 0; p < prices.Length; p++)
            gain += Math.Min(0, costs[p] - prices[p]);
        return gain;
    }

    private bool Helps(int rank, long[] served)
    {
        ReadOnlySpan<long> costs = _keys.Of(rank);
        for (int p = 0; p < served.Length; p++)
        {
            if (costs[p] < served[p])
                return true;
        }

        return false;
    }

    private static long Sum(long[] keys)
    {
        long sum = 0;
        foreach (long key in keys)
            sum += key;
        return sum;
    }

    private long Sum(long[] served, int[] also)
    {
        long sum = 0;
        for (int p = 0; p < served.Length; p++)
        {
            long least = served[p];
            foreach (int rank in also)
                least = Math.Min(least, _keys.Key[rank * served.Length + p]);
            sum += least;
        }

        return sum;
    }

    private void Offer(long value, int[] also)
    {
        if (value >= _best)
            return;
        _best = value;
        _bestOpen = [.. _opened, .. also];
    }
}
