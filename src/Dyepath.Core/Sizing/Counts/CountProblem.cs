using System.Collections.Immutable;
using Dyepath.Core.Quantities;

namespace Dyepath.Core.Sizing.Counts;

/// <summary>
/// Sizes with targets along one dimension, and the stitch counts that could serve them: each size gets
/// one count, and only so many distinct counts may be used.
/// </summary>
public sealed class CountProblem
{
    public const int MostSizes = SizeChart.MostSizes;
    public const int MostCandidates = 4000;

    private const double FarthestCentimetres = 1e5;

    private CountProblem(
        ImmutableArray<SizeTarget> sizes,
        ImmutableArray<CountCandidate> candidates,
        ErrorLoss loss,
        GradingCriterion criterion,
        PenaltyScale penaltyScale) =>
        (Sizes, Candidates, Loss, Criterion, PenaltyScale) = (sizes, candidates, loss, criterion, penaltyScale);

    /// <summary>In the caller's order; targets need not be sorted.</summary>
    public ImmutableArray<SizeTarget> Sizes { get; }

    /// <summary>In the caller's order; measures need not be sorted and may repeat. May be empty.</summary>
    public ImmutableArray<CountCandidate> Candidates { get; }

    public ErrorLoss Loss { get; }

    public GradingCriterion Criterion { get; }

    public PenaltyScale PenaltyScale { get; }

    /// <summary>Checks every number and index.</summary>
    /// <param name="sizes">1 to 40 sizes.</param>
    /// <param name="candidates">0 to 4,000 counts.</param>
    /// <param name="loss">Squared error where absent.</param>
    /// <param name="criterion">What is made small.</param>
    /// <param name="penaltyScale">How penalties enter the total.</param>
    /// <exception cref="ArgumentException">
    /// A number outside the range its type states, an index that is no candidate, or too many of either;
    /// names the element.
    /// </exception>
    public static CountProblem Create(
        ImmutableArray<SizeTarget> sizes,
        ImmutableArray<CountCandidate> candidates,
        ErrorLoss? loss = null,
        GradingCriterion criterion = GradingCriterion.Total,
        PenaltyScale penaltyScale = PenaltyScale.BySizeWeight)
    {
        if (sizes.IsDefault)
            throw new ArgumentNullException(nameof(sizes));
        if (candidates.IsDefault)
            throw new ArgumentNullException(nameof(candidates));
        Guard.InRange(sizes.Length, 1, MostSizes, "sizes", nameof(sizes));
        Guard.InRange(candidates.Length, 0, MostCandidates, "candidates", nameof(candidates));
        if (!Enum.IsDefined(criterion))
            throw new ArgumentOutOfRangeException(nameof(criterion), criterion, "Not a grading criterion.");
        if (!Enum.IsDefined(penaltyScale))
            throw new ArgumentOutOfRangeException(nameof(penaltyScale), penaltyScale, "Not a penalty scale.");
        for (int i = 0; i < candidates.Length; i++)
        {
            GuardLength(candidates[i].Measure, $"{nameof(candidates)}[{i}].{nameof(CountCandidate.Measure)}");
            Guard.InRange(candidates[i].Penalty, 0, 1e9, "units of loss", $"{nameof(candidates)}[{i}].{nameof(CountCandidate.Penalty)}");
        }

        for (int s = 0; s < sizes.Length; s++)
            GuardSize(sizes[s], candidates.Length, $"{nameof(sizes)}[{s}]");
        return new CountProblem(sizes, candidates, loss ?? ErrorLoss.Squared, criterion, penaltyScale);
    }

    /// <summary>The same sizes and counts judged by another criterion.</summary>
    public CountProblem By(GradingCriterion criterion) => Create(Sizes, Candidates, Loss, criterion, PenaltyScale);

    /// <summary>The same problem with one size's pin taken out.</summary>
    /// <exception cref="ArgumentException">The size is not pinned, or there is no such size.</exception>
    public CountProblem WithoutPin(int size)
    {
        Guard.InRange(size, 0, Sizes.Length - 1, "(index of a size)");
        if (Sizes[size].Pinned is null)
            throw new ArgumentException($"Size {size} is not pinned.", nameof(size));
        return new CountProblem(Sizes.SetItem(size, Sizes[size] with { Pinned = null }), Candidates, Loss, Criterion, PenaltyScale);
    }

    internal ErrorLoss LossOf(int size) => Sizes[size].Loss ?? Loss;

    internal Length ErrorOf(int size, int candidate) => Candidates[candidate].Measure - Sizes[size].Target;

    /// <summary>What size and candidate add to the total; infinite where the candidate is not allowed by the loss.</summary>
    internal double TotalOf(int size, int candidate)
    {
        double weight = Sizes[size].Weight;
        double loss = LossOf(size).Of(ErrorOf(size, candidate));
        double penalty = Candidates[candidate].Penalty;
        return PenaltyScale == PenaltyScale.BySizeWeight ? weight * (loss + penalty) : weight * loss + penalty;
    }

    /// <summary>What the criteria that look at the worst size compare; infinite where the candidate is not allowed by the loss.</summary>
    internal double WorstOf(int size, int candidate)
    {
        double loss = LossOf(size).Of(ErrorOf(size, candidate));
        return Criterion == GradingCriterion.WorstError && double.IsFinite(loss)
            ? Math.Abs(ErrorOf(size, candidate).Centimetres)
            : loss + Candidates[candidate].Penalty;
    }

    private static void GuardSize(SizeTarget size, int candidates, string name)
    {
        ArgumentNullException.ThrowIfNull(size, name);
        GuardLength(size.Target, $"{name}.{nameof(SizeTarget.Target)}");
        Guard.InRange(size.Weight, 1e-6, 1e6, "(relative weight)", $"{name}.{nameof(SizeTarget.Weight)}");
        if (size.Excluded.IsDefault)
            throw new ArgumentNullException($"{name}.{nameof(SizeTarget.Excluded)}");
        foreach (int excluded in size.Excluded)
            Guard.InRange(excluded, 0, candidates - 1, "(index of a candidate)", $"{name}.{nameof(SizeTarget.Excluded)}");
        if (size.Pinned is int pinned)
            Guard.InRange(pinned, 0, candidates - 1, "(index of a candidate)", $"{name}.{nameof(SizeTarget.Pinned)}");
    }

    private static void GuardLength(Length length, string name) =>
        Guard.InRange(length.Centimetres, -FarthestCentimetres, FarthestCentimetres, "cm", name);
}
