using System.Collections.Immutable;
using Dyepath.Core.Quantities;
using Dyepath.Core.Sizing;

namespace Dyepath.Core.Planning;

/// <summary>A way in which a size can be made: its stitch counts, and the measure that they give without edgings.</summary>
/// <param name="Chart">
/// The stitch count that has to be charted, by a number of the caller's from 0; ways that differ in plain bands alone share it.
/// </param>
/// <param name="SecondChart">Of the other panel; <paramref name="Chart"/> where both are alike.</param>
/// <param name="Measure">Within ±1 km.</param>
/// <param name="Lean">
/// Size of the lean, at least 0; missing where no lean binds the way, as a count fixed by hand without the motif.
/// </param>
/// <param name="Penalty">What the way costs beside its error, for each size, in [0, 1e6] cm².</param>
internal sealed record GradingWay(int Chart, int SecondChart, Length Measure, double? Lean, double Penalty)
{
    public const int MostCharts = 2000;

    public static GradingWay Alone(int chart, Length measure, double? lean, double penalty) => new(chart, chart, measure, lean, penalty);
}

/// <summary>An edging of so many rounds.</summary>
/// <param name="Depth">What it adds to the finished measure, at all its edges together; at least 0.</param>
/// <param name="Penalty">What departing from the wished rounds costs, in [0, 1e6] cm².</param>
internal sealed record GradingRounds(int Rounds, Length Depth, double Penalty);

/// <summary>A size as the grading program sees it.</summary>
/// <param name="Target">Finished measure that is aimed at, edgings and all.</param>
internal sealed record GradingSize(Length Target)
{
    /// <summary>How much its loss counts against the others', in [0.001, 1000].</summary>
    public double Weight { get; init; } = 1;

    /// <summary>An error of so many centimetres is to this size what 1 cm is to an adult's measure; in [0.01, 100].</summary>
    public double Tolerance { get; init; } = 1;

    /// <summary>The least finished measure that is accepted; a size that is fixed by hand may come below it.</summary>
    public Length? Floor { get; init; }

    /// <summary>The way that was fixed by hand.</summary>
    public int? Pinned { get; init; }

    /// <summary>Ways that this size may not have.</summary>
    public ImmutableHashSet<int> Excluded { get; init; } = [];

    /// <summary>What the edging may be; empty where no edging changes the measure.</summary>
    public ImmutableArray<GradingRounds> Rounds { get; init; } = [];
}

/// <summary>What holds for all sizes together.</summary>
/// <param name="MostCounts">Distinct stitch counts that may be charted, at least 1.</param>
/// <param name="CountSaving">
/// What a further count has to take off the worst error, at a tolerance of 1; a count is charged its square for every size, too.
/// </param>
internal sealed record GradingRules(int MostCounts, Length CountSaving)
{
    /// <summary>
    /// By how much a size must be larger than the next smaller one whose target is smaller; where the targets are nearer than twice this,
    /// half of what lies between them, and where they are nearer than this, nothing: a customer who falls between two such sizes finds
    /// hers in either. Zero: never smaller. Missing: any.
    /// </summary>
    public Length? LeastRise { get; init; }

    /// <summary>How far the leans of one pattern may differ; missing: as they come.</summary>
    public double? LeanTolerance { get; init; }

    /// <summary>The loss of an error is its square, in cm²; times this where the size comes out too small. At least 1.</summary>
    public double TooSmall { get; init; } = 1;
}

/// <summary>
/// Sizes, the ways in which they can be made, and the rules for all of them together; docs/decisions/grading-program.md states
/// the program.
/// </summary>
internal sealed record GradingProblem
{
    public const int MostSizes = SizeChart.MostSizes;
    public const int MostWays = 8000;

    /// <exception cref="ArgumentException">A number outside the range that its type states, or an index that is no way.</exception>
    public GradingProblem(ImmutableArray<GradingSize> sizes, ImmutableArray<GradingWay> ways, GradingRules rules)
    {
        ArgumentNullException.ThrowIfNull(rules);
        Guard.InRange(sizes.Length, 1, MostSizes, "sizes", nameof(sizes));
        Guard.InRange(ways.Length, 0, MostWays, "ways", nameof(ways));
        Guard.InRange(rules.MostCounts, 1, 2 * MostSizes, "counts", nameof(rules));
        Guard.InRange(rules.CountSaving.Centimetres, 0, 1e5, "cm", nameof(rules));
        Guard.InRange(rules.TooSmall, 1, 1e3, "", nameof(rules));
        foreach (var way in ways)
        {
            Guard.InRange(way.Chart, 0, GradingWay.MostCharts - 1, "(number of a chart)", nameof(ways));
            Guard.InRange(way.SecondChart, 0, GradingWay.MostCharts - 1, "(number of a chart)", nameof(ways));
            Guard.InRange(way.Measure.Centimetres, -1e5, 1e5, "cm", nameof(ways));
            Guard.InRange(way.Penalty, 0, 1e6, "cm²", nameof(ways));
        }
        foreach (var size in sizes)
        {
            Guard.InRange(size.Target.Centimetres, -1e5, 1e5, "cm", nameof(sizes));
            Guard.InRange(size.Weight, 1e-3, 1e3, "", nameof(sizes));
            Guard.InRange(size.Tolerance, 0.01, 100, "", nameof(sizes));
            if (size.Pinned is { } pin)
                Guard.InRange(pin, 0, ways.Length - 1, "(index of a way)", nameof(sizes));
        }
        (Sizes, Ways, Rules) = (sizes, ways, rules);
    }

    /// <summary>In the pattern's order; targets need not be sorted.</summary>
    public ImmutableArray<GradingSize> Sizes { get; init; }

    public ImmutableArray<GradingWay> Ways { get; init; }

    public GradingRules Rules { get; init; }

    /// <summary>What one count costs, in cm²: the square of the saving that is asked of it, in every size.</summary>
    public double CountCost => Math.Pow(Rules.CountSaving.Centimetres, 2) * Sizes.Sum(s => s.Weight);

    /// <summary>What a size costs, in cm².</summary>
    /// <param name="finished">Edgings and all.</param>
    /// <param name="penalties">Of its way and its rounds together, in cm².</param>
    public double CostOf(GradingSize size, Length finished, double penalties)
    {
        var error = (finished - size.Target).Centimetres / size.Tolerance;
        return size.Weight * (error * error * (error < 0 ? Rules.TooSmall : 1) + penalties);
    }

    /// <summary>What a size's measure must be more than that of the next smaller one; null where any will do.</summary>
    public Length? RiseBetween(GradingSize smaller, GradingSize larger) =>
        Rules.LeastRise is not { } least || (smaller.Pinned is not null && larger.Pinned is not null)
            ? null
            : larger.Target - smaller.Target is var apart && apart < least ? Length.Zero : Length.Min(least, apart / 2);
}
