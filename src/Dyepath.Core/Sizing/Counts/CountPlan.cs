using System.Collections.Immutable;
using Dyepath.Core.Quantities;

namespace Dyepath.Core.Sizing.Counts;

/// <summary>What one size gets.</summary>
/// <param name="Candidate">Index of the count in the problem's list.</param>
/// <param name="Error">Measure less target: positive where the size comes out too large.</param>
public readonly record struct SizeChoice(int Candidate, Length Error);

/// <summary>A count for every size: the best one under the problem's criterion.</summary>
public sealed class CountPlan
{
    internal CountPlan(CountProblem problem, int countsAllowed, ImmutableArray<int> candidates)
    {
        CountsAllowed = countsAllowed;
        Sizes = [.. candidates.Select((candidate, size) => new SizeChoice(candidate, problem.ErrorOf(size, candidate)))];
        Counts = [.. candidates.Distinct().OrderBy(i => problem.Candidates[i].Measure).ThenBy(i => i)];
        double squares = 0;
        foreach (SizeChoice choice in Sizes)
        {
            WorstError = Length.Max(WorstError, Length.Max(choice.Error, -choice.Error));
            squares += choice.Error.Centimetres * choice.Error.Centimetres;
        }

        RmsError = Length.FromCentimetres(Math.Sqrt(squares / Sizes.Length));
        TotalLoss = candidates.Select((candidate, size) => problem.TotalOf(size, candidate)).Sum();
        Objective = problem.Criterion == GradingCriterion.Total
            ? TotalLoss
            : candidates.Select((candidate, size) => problem.WorstOf(size, candidate)).Max();
    }

    /// <summary>The most distinct counts that the plan was allowed to use.</summary>
    public int CountsAllowed { get; }

    /// <summary>In the problem's order of sizes.</summary>
    public ImmutableArray<SizeChoice> Sizes { get; }

    /// <summary>The distinct candidates used, by measure.</summary>
    public ImmutableArray<int> Counts { get; }

    /// <summary>The criterion's value, in units of the loss, or in cm for <see cref="GradingCriterion.WorstError"/>.</summary>
    public double Objective { get; }

    /// <summary>Σ of weighted losses and penalties, whatever the criterion; units of the loss.</summary>
    public double TotalLoss { get; }

    /// <summary>The largest |error|, never negative.</summary>
    public Length WorstError { get; }

    /// <summary>Root of the mean squared error over sizes, each size counted once; rounded to a nanometre.</summary>
    public Length RmsError { get; }
}
