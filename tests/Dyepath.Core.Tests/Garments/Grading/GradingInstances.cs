using System.Collections.Immutable;
using CsCheck;
using Dyepath.Core.Planning;
using Dyepath.Core.Quantities;

namespace Dyepath.Core.Tests.Garments.Grading;

/// <summary>Random grading problems with every kind of constraint. Measures are odd micrometres, so that ties are rare.</summary>
internal static class GradingInstances
{
    private static readonly Gen<Length> Measures = Gen.Int[0, 200_000].Select(um => Length.FromMillimetres(um / 1000.0));

    private static readonly Gen<double?> Leans = Gen.Frequency(
        (1, Gen.OneOf<double?>(new double?[] { null })), (9, Gen.OneOf<double?>(0.5, 1.0, 1.1, 1.5)));

    private static readonly Gen<GradingRounds> Rounds = Gen.Select(Gen.Int[1, 9], Gen.Int[0, 40_000], Gen.Int[0, 300])
        .Select((rounds, depth, penalty) => new GradingRounds(rounds, Length.FromMillimetres(depth / 1000.0), penalty / 97.0));

    private static readonly Gen<GradingRules> Rules = Gen.Select(
            Gen.Int[1, 4], Gen.OneOf(0, 2.5, 5, 20), Gen.OneOf<double?>(null, 0, 4, 10, 30), Gen.OneOf<double?>(null, 0, 0.2), Gen.OneOf(1.0, 4))
        .Select((most, saving, rise, lean, tooSmall) => new GradingRules(most, Length.FromMillimetres(saving))
        {
            LeastRise = rise is { } least ? Length.FromMillimetres(least) : null,
            LeanTolerance = lean,
            TooSmall = tooSmall,
        });

    public static Gen<GradingProblem> Small(int mostSizes, int mostWays) =>
        Gen.Select(Ways(mostWays), Rules).SelectMany((ways, rules) =>
            Sizes(ways.Length).Array[1, mostSizes].Select(sizes => new GradingProblem([.. sizes], ways, rules)));

    private static Gen<ImmutableArray<GradingWay>> Ways(int most) =>
        Gen.Select(Gen.Int[0, 4], Gen.Int[0, 4], Gen.Bool, Measures, Leans, Gen.Int[0, 800])
            .Select((chart, second, unequal, measure, lean, penalty) =>
                new GradingWay(chart, unequal ? second : chart, measure, lean, penalty / 101.0))
            .Array[1, most].Select(ways => ways.ToImmutableArray());

    private static Gen<GradingSize> Sizes(int ways) => Gen.Select(
            Measures, Gen.OneOf(1.0, 1, 0.5, 3), Gen.OneOf(1.0, 1, 0.6), Gen.Frequency((2, Gen.Const(-1.0)), (1, Gen.OneOf(5.0, 40))),
            Gen.Frequency((5, Gen.Const(-1)), (1, Gen.Int[0, ways - 1])), Gen.Int[0, ways - 1].Array[0, ways / 2], Rounds.Array[0, 3])
        .Select((target, weight, tolerance, below, pin, excluded, rounds) => new GradingSize(target)
        {
            Weight = weight,
            Tolerance = tolerance,
            Floor = below < 0 ? null : target - Length.FromMillimetres(below),
            Pinned = pin < 0 ? null : pin,
            Excluded = [.. excluded],
            Rounds = [.. rounds],
        });
}
