using System.Collections.Immutable;
using CsCheck;
using Dyepath.Core.Quantities;
using Dyepath.Core.Sizing.Counts;

namespace Dyepath.Core.Tests.Sizing.Counts;

/// <summary>Random grading problems. Lengths are whole millimetres or whole 5 cm, so that ties occur.</summary>
internal static class Instances
{
    public static readonly ErrorLoss TooSmallHurtsMore = ErrorLoss.Convex(
        "too small hurts three times", e => Math.Max(e.Centimetres, -3 * e.Centimetres));

    public static readonly ErrorLoss Capped = ErrorLoss.General(
        "squared, no worse than 4", e => Math.Min(e.Centimetres * e.Centimetres, 4));

    /// <summary>Squared error that does not promise to be convex, so that it goes by branch and bound.</summary>
    public static readonly ErrorLoss SquaredBySearch = ErrorLoss.General("squared", e => e.Centimetres * e.Centimetres);

    private static readonly Gen<GradingCriterion> Criterion = Gen.OneOf(Enum.GetValues<GradingCriterion>());

    private static readonly Gen<Length> Lengths = Gen.Frequency(
        (3, Gen.Int[0, 200].Select(mm => Length.FromMillimetres(mm))),
        (1, Gen.Int[0, 4].Select(step => Length.FromCentimetres(5 * step))));

    private static readonly Gen<double> Penalties = Gen.Frequency((1, Gen.Const(0.0)), (1, Gen.Int[0, 40].Select(p => p / 4.0)));

    private static readonly Gen<double> Weights = Gen.OneOf(1.0, 1, 0.25, 2, 7);

    private static readonly Gen<ErrorLoss> ConvexLoss = Gen.OneOf(
        ErrorLoss.Squared,
        ErrorLoss.Absolute,
        TooSmallHurtsMore,
        ErrorLoss.Squared.Within(Length.FromCentimetres(-3), Length.FromCentimetres(5)));

    /// <summary>Sizes sharing a convex loss, penalties scaled by weight, some pins.</summary>
    public static Gen<CountProblem> Interval(int mostSizes, int mostCandidates) =>
        Gen.Select(Candidates(mostCandidates), ConvexLoss, Criterion).SelectMany((candidates, loss, criterion) =>
            Gen.Select(Lengths, Weights, Pins(candidates.Length))
                .Select((target, weight, pin) => new SizeTarget(target, weight) { Pinned = pin })
                .Array[1, mostSizes]
                .Select(sizes => CountProblem.Create([.. sizes], candidates, loss, criterion)));

    /// <summary>Anything: losses and exclusions by size, penalties unscaled.</summary>
    public static Gen<CountProblem> Any(int mostSizes, int mostCandidates)
    {
        Gen<ErrorLoss?> own = Gen.OneOf<ErrorLoss?>(null, null, ErrorLoss.Absolute, Capped, TooSmallHurtsMore);
        Gen<ErrorLoss> shared = Gen.OneOf(ErrorLoss.Squared, Capped);
        Gen<PenaltyScale> scale = Gen.OneOf(PenaltyScale.BySizeWeight, PenaltyScale.Unscaled);
        return Gen.Select(Candidates(mostCandidates), shared, Criterion, scale).SelectMany((candidates, loss, criterion, penalties) =>
            Gen.Select(Lengths, Weights, Pins(candidates.Length), own, Gen.Int[0, candidates.Length - 1].Array[0, candidates.Length / 2])
                .Select((target, weight, pin, sizeLoss, excluded) =>
                    new SizeTarget(target, weight) { Pinned = pin, Loss = sizeLoss, Excluded = [.. excluded] })
                .Array[1, mostSizes]
                .Select(sizes => CountProblem.Create([.. sizes], candidates, loss, criterion, penalties)));
    }

    /// <summary>The same problem, but solved by branch and bound (only for squared error).</summary>
    public static CountProblem BySearch(CountProblem problem) =>
        CountProblem.Create(problem.Sizes, problem.Candidates, SquaredBySearch, problem.Criterion, problem.PenaltyScale);

    /// <summary>
    /// A realistic large case: sizes spread over a metre, counts every few millimetres with penalties, each
    /// size refusing a share of the counts.
    /// </summary>
    public static CountProblem Large(
        int sizes, int candidates, double refused, int seed, GradingCriterion criterion = GradingCriterion.Total)
    {
        Random random = new(seed);
        CountCandidate[] counts = [.. Enumerable.Range(0, candidates)
            .Select(i => new CountCandidate(Length.FromMillimetres(300 + 1200.0 * i / candidates), random.Next(0, 8)))];
        return CountProblem.Create(
            [.. Enumerable.Range(0, sizes).Select(s => new SizeTarget(
                Length.FromMillimetres(400 + 1000 * s / sizes + random.Next(0, 20)), random.Next(1, 5))
            {
                Excluded = [.. Enumerable.Range(0, candidates).Where(_ => random.NextDouble() < refused)],
            })],
            [.. counts],
            criterion: criterion);
    }

    private static Gen<ImmutableArray<CountCandidate>> Candidates(int most) =>
        Gen.Select(Lengths, Penalties, (measure, penalty) => new CountCandidate(measure, penalty))
            .Array[1, most].Select(ImmutableArray.Create);

    private static Gen<int?> Pins(int candidates) => Gen.Frequency(
        (6, Gen.Const((int?)null)),
        (1, Gen.Int[0, candidates - 1].Select(i => (int?)i)));
}
