using Dyepath.Core.Planning;

namespace Dyepath.Core.Tests.Garments.Grading;

/// <summary>The grading program by trying every choice for every size: written from the rules, and shares nothing with the solver.</summary>
internal static class EveryGrading
{
    private const double Tolerance = 1e-9;

    /// <param name="Cost">Losses and penalties, without what counts cost.</param>
    public sealed record Choice(double Cost, double Worst, double Misfit, int Counts);

    /// <summary>For 1, 2, … counts: the objective and the worst error of the plan, null where there is none.</summary>
    public static (double Cost, double Worst, int Counts)?[] Curve(GradingProblem problem, int most)
    {
        var all = Choices(problem).ToArray();
        var saving = problem.Rules.CountSaving.Centimetres;
        var count = saving * saving * problem.Sizes.Sum(s => s.Weight);
        var curve = new (double, double, int)?[most];
        Choice? made = null;
        for (var k = 1; k <= most; k++)
        {
            if (made is null)
                made = all.Where(c => c.Counts <= k).MinBy(c => c.Cost);
            else
            {
                var better = all.Where(c => c.Counts == k && c.Misfit <= made.Misfit - (k - made.Counts) * saving + Tolerance).MinBy(c => c.Cost);
                if (better is not null && better.Cost + k * count < made.Cost + made.Counts * count - 1e-6)
                    made = better;
            }
            curve[k - 1] = made is null ? null : (made.Cost + made.Counts * count, made.Worst, made.Counts);
        }
        return curve;
    }

    public static bool CanHold(GradingProblem problem) => Choices(problem).Any(c => c.Counts <= problem.Rules.MostCounts);

    /// <summary>Every choice that keeps all rules but the number of counts.</summary>
    private static IEnumerable<Choice> Choices(GradingProblem problem)
    {
        var sizes = Enumerable.Range(0, problem.Sizes.Length).ToArray();
        var each = sizes.Select(s => Own(problem, problem.Sizes[s]).ToArray()).ToArray();
        var at = new int[sizes.Length];
        if (each.Any(e => e.Length == 0))
            yield break;
        while (true)
        {
            var chosen = sizes.Select(s => each[s][at[s]]).ToArray();
            if (Rises(problem, chosen) && OneLean(problem, chosen))
                yield return Measured(problem, chosen);
            var next = 0;
            while (next < at.Length && ++at[next] == each[next].Length)
                at[next++] = 0;
            if (next == at.Length)
                yield break;
        }
    }

    private static IEnumerable<(GradingWay Way, double Finished, double Penalty)> Own(GradingProblem problem, GradingSize size)
    {
        for (var w = 0; w < problem.Ways.Length; w++)
        {
            if (size.Pinned is { } pin ? pin != w : size.Excluded.Contains(w))
                continue;
            var way = problem.Ways[w];
            foreach (var (depth, penalty) in size.Rounds.IsEmpty ? [(0.0, 0.0)] : size.Rounds.Select(r => (r.Depth.Centimetres, r.Penalty)))
            {
                var finished = way.Measure.Centimetres + depth;
                if (size.Pinned is not null || size.Floor is not { } floor || finished > floor.Centimetres - Tolerance)
                    yield return (way, finished, way.Penalty + penalty);
            }
        }
    }

    private static bool Rises(GradingProblem problem, (GradingWay Way, double Finished, double Penalty)[] chosen)
    {
        if (problem.Rules.LeastRise is not { } least)
            return true;
        var sizes = problem.Sizes.Select((s, i) => (s.Target, s.Pinned, chosen[i].Finished, i)).OrderBy(s => s.Target).ThenBy(s => s.i).ToArray();
        for (var p = 1; p < sizes.Length; p++)
        {
            var (small, large) = (sizes[p - 1], sizes[p]);
            if (small.Pinned is not null && large.Pinned is not null)
                continue;
            var apart = (large.Target - small.Target).Centimetres;
            var rise = apart < least.Centimetres - 1e-9 ? 0 : Math.Min(least.Centimetres, apart / 2);
            if (large.Finished - small.Finished < rise - Tolerance)
                return false;
        }
        return true;
    }

    private static bool OneLean(GradingProblem problem, (GradingWay Way, double Finished, double Penalty)[] chosen)
    {
        var leans = chosen.Select(c => c.Way.Lean).OfType<double>().ToArray();
        return problem.Rules.LeanTolerance is not { } tolerance || leans.Length == 0 || leans.Max() <= leans.Min() + tolerance;
    }

    private static Choice Measured(GradingProblem problem, (GradingWay Way, double Finished, double Penalty)[] chosen)
    {
        double cost = 0, worst = 0, misfit = 0;
        for (var s = 0; s < chosen.Length; s++)
        {
            var size = problem.Sizes[s];
            var error = chosen[s].Finished - size.Target.Centimetres;
            var scaled = error / size.Tolerance;
            cost += size.Weight * ((error < 0 ? problem.Rules.TooSmall : 1) * scaled * scaled + chosen[s].Penalty);
            worst = Math.Max(worst, Math.Abs(error));
            misfit = Math.Max(misfit, Math.Abs(scaled));
        }
        return new Choice(cost, worst, misfit, chosen.SelectMany(c => new[] { c.Way.Chart, c.Way.SecondChart }).Distinct().Count());
    }
}
