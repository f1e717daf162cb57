namespace Dyepath.Core.Sizing.Counts;

/// <summary>
/// The sizes left to decide (those without a pin, by target) against the candidates (by measure, then
/// penalty: their <em>rank</em>). Costs lie candidate by candidate, so that runs of sizes are contiguous.
/// </summary>
internal sealed class CostTable
{
    public CostTable(CountProblem problem)
    {
        Problem = problem;
        Sizes = [.. Enumerable.Range(0, problem.Sizes.Length)
            .Where(s => problem.Sizes[s].Pinned is null)
            .OrderBy(s => problem.Sizes[s].Target).ThenBy(s => s)];
        Ranked = [.. Enumerable.Range(0, problem.Candidates.Length)
            .OrderBy(i => problem.Candidates[i].Measure).ThenBy(i => problem.Candidates[i].Penalty).ThenBy(i => i)];
        int[] rankOf = new int[Ranked.Length];
        for (int rank = 0; rank < Ranked.Length; rank++)
            rankOf[Ranked[rank]] = rank;
        PinnedRanks = [.. problem.Sizes.Where(s => s.Pinned is not null).Select(s => rankOf[s.Pinned!.Value]).Distinct().Order()];
        (Total, Worst) = Fill(rankOf);
        IsInterval = SharesConvexLoss() && PenaltiesFollowWeights() && ExclusionsMoveWithTargets(rankOf);
    }

    public CountProblem Problem { get; }

    /// <summary>Indices of the sizes without a pin, by target.</summary>
    public int[] Sizes { get; }

    /// <summary>Candidate indices by rank.</summary>
    public int[] Ranked { get; }

    /// <summary>Ranks of the distinct pinned candidates, ascending: open to every size at no further count.</summary>
    public int[] PinnedRanks { get; }

    /// <summary>[rank · sizes + position]; infinite where the size may not have the candidate.</summary>
    public double[] Total { get; }

    /// <summary>What the worst-size criteria compare, laid out as <see cref="Total"/>; the same array where the total is the criterion.</summary>
    public double[] Worst { get; }

    /// <summary>
    /// Whether, whichever counts are open, sizes served best by one count are neighbours by target
    /// (proved in docs/decisions/grading-program.md).
    /// </summary>
    public bool IsInterval { get; }

    private (double[] Total, double[] Worst) Fill(int[] rankOf)
    {
        int n = Sizes.Length;
        double[] total = new double[Ranked.Length * n];
        double[] worst = Problem.Criterion == GradingCriterion.Total ? total : new double[total.Length];
        for (int rank = 0; rank < Ranked.Length; rank++)
        {
            for (int p = 0; p < n; p++)
            {
                total[rank * n + p] = Problem.TotalOf(Sizes[p], Ranked[rank]);
                if (worst != total)
                    worst[rank * n + p] = Problem.WorstOf(Sizes[p], Ranked[rank]);
            }
        }

        for (int p = 0; p < n; p++)
        {
            foreach (int excluded in Problem.Sizes[Sizes[p]].Excluded)
                total[rankOf[excluded] * n + p] = worst[rankOf[excluded] * n + p] = double.PositiveInfinity;
        }

        return (total, worst);
    }

    private bool SharesConvexLoss()
    {
        if (Sizes.Length == 0)
            return true;
        ErrorLoss loss = Problem.LossOf(Sizes[0]);
        return loss.IsConvex && Sizes.All(s => Problem.LossOf(s) == loss);
    }

    /// <summary>
    /// Whether all sizes weigh a penalty against the loss alike, in the total and, where it caps the choice,
    /// in the worst loss.
    /// </summary>
    private bool PenaltiesFollowWeights()
    {
        if (Problem.PenaltyScale == PenaltyScale.BySizeWeight || Problem.Candidates.Select(c => c.Penalty).Distinct().Count() <= 1)
            return true;
        double[] weights = [.. Sizes.Select(s => Problem.Sizes[s].Weight).Distinct()];
        return weights.Length == 0
            || (weights.Length == 1 && (weights[0] == 1 || Problem.Criterion != GradingCriterion.WorstLoss));
    }

    /// <summary>
    /// Whether each size allows one run of the candidates that anyone allows, and neither end of the run
    /// goes down as targets go up.
    /// </summary>
    private bool ExclusionsMoveWithTargets(int[] rankOf)
    {
        if (Sizes.All(s => Problem.Sizes[s].Excluded.IsEmpty))
            return true;
        bool[][] excluded = [.. Sizes.Select(s =>
        {
            bool[] barred = new bool[Ranked.Length];
            foreach (int candidate in Problem.Sizes[s].Excluded)
                barred[rankOf[candidate]] = true;
            return barred;
        })];
        int[] anyones = [.. Enumerable.Range(0, Ranked.Length).Where(rank => excluded.Any(e => !e[rank]))];
        int low = 0, high = 0;
        foreach (bool[] barred in excluded)
        {
            int first = Array.FindIndex(anyones, rank => !barred[rank]);
            int last = Array.FindLastIndex(anyones, rank => !barred[rank]);
            if (first < low || last < high || anyones[first..(last + 1)].Any(rank => barred[rank]))
                return false;
            (low, high) = (first, last);
        }

        return true;
    }
}
