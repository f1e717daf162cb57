namespace Dyepath.Core.Sizing.Counts;

/// <summary>
/// Costs as whole numbers, so that sums are exact in any order and ties are ties. One key holds the cost
/// in steps of at most 2⁻⁴³ of the total that one count for all would cost (which no best plan exceeds),
/// times one more than the number of sizes, leaving room for one unit per distinct count: among equal costs
/// the plan with fewer counts has the smaller key.
/// </summary>
internal sealed class KeyTable
{
    /// <summary>Not allowed; 40 of them still add up within 64 bits.</summary>
    public const long Never = 1L << 56;

    /// <summary>No feasible plan's key exceeds this; products with 40 × 40 stay within 64 bits.</summary>
    public const long Budget = 1L << 50;

    /// <summary>What opening one more count adds to a key.</summary>
    public const long CountUnit = 1;

    /// <param name="table">The costs.</param>
    /// <param name="worstAllowed">Pairs of size and candidate whose <see cref="CostTable.Worst"/> exceeds it are not allowed.</param>
    public KeyTable(CostTable table, double worstAllowed)
    {
        Sizes = table.Sizes.Length;
        Ranks = table.Ranked.Length;
        double[] cost = new double[table.Total.Length];
        for (int k = 0; k < cost.Length; k++)
            cost[k] = table.Worst[k] <= worstAllowed ? table.Total[k] : double.PositiveInfinity;
        double bound = UpperBound(cost, table.PinnedRanks);
        long span = Sizes + 1;

        // A power of two, so that whole-number costs stay whole.
        double scale = bound > 0 ? Math.ScaleB(1, Math.Clamp(Math.ILogB((Budget / span - Sizes) / bound), -1000, 60)) : 1;
        Key = new long[cost.Length];
        for (int k = 0; k < cost.Length; k++)
            Key[k] = cost[k] <= bound ? (long)Math.Round(cost[k] * scale) * span : Never;

        Base = new long[Sizes];
        BaseRank = new int[Sizes];
        Array.Fill(Base, Never);
        foreach (int rank in table.PinnedRanks)
        {
            for (int p = 0; p < Sizes; p++)
            {
                if (Key[rank * Sizes + p] < Base[p])
                    (Base[p], BaseRank[p]) = (Key[rank * Sizes + p], rank);
            }
        }
    }

    public int Sizes { get; }

    public int Ranks { get; }

    /// <summary>[rank · sizes + position].</summary>
    public long[] Key { get; }

    /// <summary>By position: the cheapest pinned count, which needs no opening; <see cref="Never"/> without pins.</summary>
    public long[] Base { get; }

    /// <summary>The rank behind <see cref="Base"/>.</summary>
    public int[] BaseRank { get; }

    public ReadOnlySpan<long> Of(int rank) => Key.AsSpan(rank * Sizes, Sizes);

    /// <summary>The best rank for each position when only <paramref name="open"/> and the pinned counts are open; ties to the smaller.</summary>
    public int[] Serve(IEnumerable<int> open)
    {
        long[] best = [.. Base];
        int[] ranks = [.. BaseRank];
        foreach (int rank in open)
        {
            for (int p = 0; p < Sizes; p++)
            {
                long key = Key[rank * Sizes + p];
                if (key < best[p] || (key == best[p] && rank < ranks[p]))
                    (best[p], ranks[p]) = (key, rank);
            }
        }

        return ranks;
    }

    /// <summary>
    /// A total that the best plan does not exceed: that of the best single count (a pinned one where there
    /// are pins, since those are open whatever else is), or else of every size at its worst.
    /// </summary>
    private double UpperBound(double[] cost, int[] pinnedRanks)
    {
        double best = double.PositiveInfinity;
        IEnumerable<int> singles = pinnedRanks.Length > 0 ? pinnedRanks : Enumerable.Range(0, Ranks);
        foreach (int rank in singles)
        {
            double sum = 0;
            for (int p = 0; p < Sizes && sum < best; p++)
                sum += cost[rank * Sizes + p];
            best = Math.Min(best, sum);
        }

        if (double.IsFinite(best))
            return best;
        double worst = 0;
        for (int p = 0; p < Sizes; p++)
        {
            double most = 0;
            for (int rank = 0; rank < Ranks; rank++)
            {
                if (double.IsFinite(cost[rank * Sizes + p]))
                    most = Math.Max(most, cost[rank * Sizes + p]);
            }

            worst += most;
        }

        return worst;
    }
}
