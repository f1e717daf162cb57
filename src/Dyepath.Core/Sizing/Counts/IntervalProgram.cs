namespace Dyepath.Core.Sizing.Counts;

/// <summary>
/// Cuts the sizes, sorted by target, into runs served by one count each. <c>least[g][a]</c> is the least
/// key of the sizes from position a on with at most g runs; a size may instead take a pinned count by
/// itself, which is no run. O(sizes² · candidates) for the runs, O(sizes³) for every number of counts.
/// </summary>
internal sealed class IntervalProgram
{
    private readonly KeyTable _keys;
    private readonly long[] _run;
    private readonly int[] _runRank;
    private readonly long[][] _least;

    public IntervalProgram(KeyTable keys)
    {
        _keys = keys;
        (_run, _runRank) = BestRuns(keys);
        int n = keys.Sizes;
        _least = new long[n + 1][];
        for (int groups = 0; groups <= n; groups++)
        {
            long[] least = _least[groups] = new long[n + 1];
            for (int a = n - 1; a >= 0; a--)
            {
                least[a] = Plus(keys.Base[a], least[a + 1]);
                for (int b = a; groups > 0 && b < n; b++)
                    least[a] = Math.Min(least[a], Plus(_run[a * n + b] + KeyTable.CountUnit, _least[groups - 1][b + 1]));
            }
        }
    }

    /// <summary>The smallest worst cost for at most 0, 1, … counts beside the pinned ones, by the same recurrence on the largest cost.</summary>
    public static double[] LeastWorst(CostTable table)
    {
        int n = table.Sizes.Length;
        double[] run = new double[n * n];
        Array.Fill(run, double.PositiveInfinity);
        for (int rank = 0; rank < table.Ranked.Length; rank++)
        {
            ReadOnlySpan<double> costs = table.Worst.AsSpan(rank * n, n);
            for (int a = 0; a < n; a++)
            {
                double worst = 0;
                for (int b = a; b < n && double.IsFinite(worst); b++)
                {
                    worst = Math.Max(worst, costs[b]);
                    run[a * n + b] = Math.Min(run[a * n + b], worst);
                }
            }
        }

        double[] pinned = new double[n];
        Array.Fill(pinned, double.PositiveInfinity);
        foreach (int rank in table.PinnedRanks)
        {
            for (int a = 0; a < n; a++)
                pinned[a] = Math.Min(pinned[a], table.Worst[rank * n + a]);
        }

        double[] result = new double[n + 1];
        double[] fewer = new double[n + 1];
        for (int groups = 0; groups <= n; groups++)
        {
            double[] least = new double[n + 1];
            for (int a = n - 1; a >= 0; a--)
            {
                least[a] = Math.Max(pinned[a], least[a + 1]);
                for (int b = a; groups > 0 && b < n; b++)
                    least[a] = Math.Min(least[a], Math.Max(run[a * n + b], fewer[b + 1]));
            }

            result[groups] = least[0];
            fewer = least;
        }

        return result;
    }

    /// <summary>
    /// The rank for each position with at most <paramref name="groups"/> runs, or null where that is not
    /// possible. From the smallest target up: the smaller count where several are best, for as many sizes as it stays best.
    /// </summary>
    public int[]? Assign(int groups)
    {
        int n = _keys.Sizes;
        if (_least[groups][0] >= KeyTable.Never)
            return null;
        int[] ranks = new int[n];
        for (int a = 0; a < n;)
        {
            long target = _least[groups][a];
            bool byPin = Plus(_keys.Base[a], _least[groups][a + 1]) == target;
            (int rank, int end) = byPin ? (_keys.BaseRank[a], a) : (int.MaxValue, a);
            for (int b = n - 1; groups > 0 && b >= a; b--)
            {
                long key = Plus(_run[a * n + b] + KeyTable.CountUnit, _least[groups - 1][b + 1]);
                if (key == target && _runRank[a * n + b] < rank)
                    (rank, end, byPin) = (_runRank[a * n + b], b, false);
            }

            ranks.AsSpan(a, end - a + 1).Fill(rank);
            groups -= byPin ? 0 : 1;
            a = end + 1;
        }

        return ranks;
    }

    private static long Plus(long a, long b) => Math.Min(a + b, KeyTable.Never);

    private static (long[] Run, int[] Rank) BestRuns(KeyTable keys)
    {
        int n = keys.Sizes;
        long[] run = new long[n * n];
        int[] best = new int[n * n];
        Array.Fill(run, KeyTable.Never);
        for (int rank = 0; rank < keys.Ranks; rank++)
        {
            ReadOnlySpan<long> costs = keys.Of(rank);
            for (int a = 0; a < n; a++)
            {
                long sum = 0;
                for (int b = a; b < n; b++)
                {
                    sum += costs[b];
                    if (sum >= KeyTable.Never)
                        break;
                    if (sum < run[a * n + b])
                        (run[a * n + b], best[a * n + b]) = (sum, rank);
                }
            }
        }

        return (run, best);
    }
}
