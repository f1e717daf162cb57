using System.Collections.Immutable;
using Dyepath.Core.Limits;

namespace Dyepath.Core.Planning;

/// <summary>Why a grading problem has no plan.</summary>
internal static class GradingConflicts
{
    /// <summary>
    /// Sizes and rules that cannot hold together, none of which can be left out: each is left out in turn, larger sizes first and then the
    /// rules, and stays out where the rest still cannot hold.
    /// </summary>
    /// <param name="problem">One without a plan.</param>
    public static GradingConflict Smallest(GradingProblem problem, Effort effort)
    {
        ArgumentNullException.ThrowIfNull(problem);
        ImmutableSortedSet<int> all = [.. Enumerable.Range(0, problem.Sizes.Length)];
        var kept = new Kept(
            all, [.. all.Where(s => problem.Sizes[s].Pinned is not null)], problem.Rules.LeastRise is not null,
            problem.Sizes.Any(s => s.Floor is not null), true, problem.Rules.LeanTolerance is not null);
        var proven = true;
        // A pin lets its size come below the floor and stand beside another pin, so that what can be left out may change once around.
        for (Kept? before = null; before != kept;)
        {
            before = kept;
            foreach (var size in kept.Sizes.OrderByDescending(s => problem.Sizes[s].Target).ThenByDescending(s => s))
            {
                if (kept.Sizes.Count > 1)
                    Without(k => k with { Sizes = k.Sizes.Remove(size), Pins = k.Pins.Remove(size) });
            }
            foreach (var size in kept.Pins)
                Without(k => k with { Pins = k.Pins.Remove(size) });
            Without(k => k with { MostCounts = false });
            Without(k => k with { OneLean = false });
            Without(k => k with { Floor = false });
            Without(k => k with { Rise = false });
        }
        return new GradingConflict(
            [.. kept.Sizes], [.. kept.Pins], kept.Rise, kept.Floor && kept.Sizes.Any(s => problem.Sizes[s].Floor is not null),
            kept.MostCounts,
            kept.OneLean, proven);

        void Without(Func<Kept, Kept> change)
        {
            var less = change(kept);
            if (less == kept || GradingProgram.CanHold(less.Of(problem), effort, out var isProven))
                return;
            (kept, proven) = (less, proven && isProven);
        }
    }

    private sealed record Kept(
        ImmutableSortedSet<int> Sizes, ImmutableSortedSet<int> Pins, bool Rise, bool Floor, bool MostCounts, bool OneLean)
    {
        public GradingProblem Of(GradingProblem problem) => new(
            [
                .. Sizes.Select(s => problem.Sizes[s] with
                {
                    Pinned = Pins.Contains(s) ? problem.Sizes[s].Pinned : null,
                    Floor = Floor ? problem.Sizes[s].Floor : null,
                }),
            ],
            problem.Ways,
            problem.Rules with
            {
                MostCounts = MostCounts ? problem.Rules.MostCounts : 2 * GradingProblem.MostSizes,
                LeastRise = Rise ? problem.Rules.LeastRise : null,
                LeanTolerance = OneLean ? problem.Rules.LeanTolerance : null,
            });
    }
}
