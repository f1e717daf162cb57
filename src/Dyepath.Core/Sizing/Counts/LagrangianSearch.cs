using Dyepath.Core.Limits;

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
    private const int RootSteps = 1500;
    private const int NodeSteps = 40;

    private readonly KeyTable _keys;
    private readonly Effort _effort;
    private readonly List<int> _opened = [];
    private long _best;
    private int[] _bestOpen;

    private LagrangianSearch(KeyTable keys, int[] open, Effort effort)
    {
        _keys = keys;
        _effort = effort;
        _bestOpen = open;
        _best = Sum(keys.Base, open) + open.Length * KeyTable.CountUnit;
    }

    /// <summary>The best rank for each position with at most <paramref name="most"/> counts beside the pinned ones.</summary>
    /// <param name="keys">The costs.</param>
    /// <param name="open">A feasible choice of counts to start from; stays the answer unless a strictly better one exists.</param>
    /// <param name="most">How many counts may be opened.</param>
    /// <param name="effort">Spent in every step of every node.</param>
    public static int[] Solve(KeyTable keys, int[] open, int most, Effort effort)
    {
        LagrangianSearch search = new(keys, open, effort);
        long[] prices = new long[keys.Sizes];
        int[] ranks = keys.Serve(open);
        for (int p = 0; p < prices.Length; p++)
            prices[p] = keys.Key[ranks[p] * keys.Sizes + p];
        search.Branch([.. Enumerable.Range(0, keys.Ranks)], [.. keys.Base], most, prices, RootSteps);
        return keys.Serve(search._bestOpen);
    }

    /// <summary>
    /// Searches all plans that open, beside <see cref="_opened"/>, at most <paramref name="most"/> of the
    /// <paramref name="active"/> counts; <paramref name="served"/> is each size's cheapest cost so far.
    /// </summary>
    private void Branch(List<int> active, long[] served, int most, long[] prices, int steps)
    {
        _effort.Spend(1 + (long)active.Count * served.Length / 10);
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

        if (_opened.Count > 0 && !CanCover(active, served, most))
            return;
        prices = [.. prices];
        int hardest = HardestToServe(active, served);
        while (!IsBeaten(active, served, most, opened, prices, steps) && MostPromising(active, hardest, prices) is int chosen)
        {
            long[] withChosen = [.. served];
            ReadOnlySpan<long> costs = _keys.Of(chosen);
            for (int p = 0; p < withChosen.Length; p++)
                withChosen[p] = Math.Min(withChosen[p], costs[p]);
            active.Remove(chosen);
            _opened.Add(chosen);
            Branch([.. active], withChosen, most - 1, prices, NodeSteps);
            _opened.RemoveAt(_opened.Count - 1);
            _effort.Spend(1 + (long)active.Count * served.Length / 10);
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
    /// <returns>Whether nothing better than the best plan known is left here.</returns>
    private bool IsBeaten(List<int> active, long[] served, int most, long opened, long[] prices, int steps)
    {
        int n = prices.Length;
        double pace = 1;
        long highest = long.MinValue;
        long[] bestPrices = [.. prices];
        int sinceRise = 0;
        long[] gains = new long[active.Count];
        long[] earned = new long[active.Count];
        int[] order = new int[active.Count];
        int[] used = new int[n];
        for (int step = 0; step < steps; step++)
        {
            int count = active.Count;
            _effort.Spend(1 + (long)count * n / 10 + (long)most * n / 5);
            int earning = 0;
            for (int k = 0; k < count; k++)
            {
                gains[k] = Gain(active[k], prices);
                if (gains[k] < 0)
                    (earned[earning], order[earning++]) = (gains[k], active[k]);
            }

            Array.Sort(earned, order, 0, earning);
            long bound = opened;
            for (int p = 0; p < n; p++)
            {
                bound += Math.Min(prices[p], served[p]);
                used[p] = prices[p] > served[p] ? 1 : 0;
            }

            int open = Math.Min(most, earning);
            int[] selection = order[..open];
            for (int k = 0; k < open; k++)
                bound += earned[k];
            Offer(Sum(served, selection) + opened + open * KeyTable.CountUnit, selection);
            if (bound >= _best)
                return true;
            if (bound > highest)
            {
                (highest, sinceRise) = (bound, 0);
                prices.CopyTo(bestPrices, 0);
            }
            else if (++sinceRise >= 20)
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
            long replaced = open == most ? earned[open - 1] : 0;
            long limit = _best - bound + replaced;
            int at = 0;
            for (int k = 0; k < count; k++)
            {
                if (gains[k] < limit)
                    active[at++] = active[k];
            }

            active.RemoveRange(at, count - at);
            if (active.Count == 0)
                return true;

            // Prices that make every size use exactly one count would have met the best plan above, so squares > 0.
            long move = Math.Max(1, (long)(pace * (_best - bound) / squares));
            for (int p = 0; p < n; p++)
                prices[p] = Math.Clamp(prices[p] + move * (1 - used[p]), 0, KeyTable.Budget);
        }

        bestPrices.CopyTo(prices, 0);
        return false;
    }

    /// <summary>The size still unserved that fewest counts could serve, or −1; one of those counts has to be opened.</summary>
    private int HardestToServe(List<int> active, long[] served)
    {
        int hardest = -1;
        int fewest = int.MaxValue;
        for (int p = 0; p < served.Length; p++)
        {
            if (served[p] < KeyTable.Never)
                continue;
            int serving = active.Count(rank => Serves(rank, p));
            if (serving < fewest)
                (hardest, fewest) = (p, serving);
        }

        return hardest;
    }

    /// <summary>Whether so many of the active counts can serve the sizes still unserved.</summary>
    private bool CanCover(List<int> active, long[] served, int most)
    {
        ulong unserved = 0;
        for (int p = 0; p < served.Length; p++)
            unserved |= served[p] >= KeyTable.Never ? 1UL << p : 0;
        if (unserved == 0)
            return true;
        ulong[] masks = new ulong[active.Count];
        for (int k = 0; k < masks.Length; k++)
        {
            for (int p = 0; p < served.Length; p++)
                masks[k] |= Serves(active[k], p) ? 1UL << p : 0;
        }

        return CoverSearch.Find(masks, unserved, most, _effort) is not null;
    }

    /// <summary>The active count that earns most at these prices, among those that serve <paramref name="size"/> where it is a size.</summary>
    private int? MostPromising(List<int> active, int size, long[] prices)
    {
        int? best = null;
        long least = long.MaxValue;
        foreach (int rank in active)
        {
            if ((size < 0 || Serves(rank, size)) && Gain(rank, prices) is long gain && gain < least)
                (best, least) = (rank, gain);
        }

        return best;
    }

    private bool Serves(int rank, int position) => _keys.Key[rank * _keys.Sizes + position] < KeyTable.Never;

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
