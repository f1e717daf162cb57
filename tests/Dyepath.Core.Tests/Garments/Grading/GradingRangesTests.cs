using System.Collections.Immutable;
using Dyepath.Core.Planning;
using Dyepath.Core.Sizing;
using static Dyepath.Core.Tests.Garments.TestProjects;

namespace Dyepath.Core.Tests.Garments.Grading;

/// <summary>What the grading program can be asked, and what a size, a count and a rise cost by the rules.</summary>
public sealed class GradingRangesTests
{
    private static readonly GradingRules Rules = new(4, Cm(0.5));

    private static readonly GradingSize Size = new(Cm(90));

    private static readonly GradingWay Way = GradingWay.Alone(0, Cm(91), 1, 0);

    /// <summary>Each at both ends of its range and just beyond, named by the part of the problem that it belongs to and in its unit.</summary>
    [Fact]
    public void A_number_out_of_its_range_is_refused()
    {
        Held("sizes", "sizes", 1, SizeChart.MostSizes, n => Of(sizes: [.. Enumerable.Repeat(Size, (int)n)]));
        Held("ways", "ways", 0, 8000, n => Of(ways: [.. Enumerable.Repeat(Way, (int)n)]), below: false);
        Held("rules", "counts", 1, 2 * SizeChart.MostSizes, n => Of(rules: Rules with { MostCounts = (int)n }));
        Held("rules", "cm", 0, 1e5, cm => Of(rules: Rules with { CountSaving = Cm(cm) }));
        Held("rules", "", 1, 1e3, n => Of(rules: Rules with { TooSmall = n }));
        Held("ways", "(number of a chart)", 0, 1999, n => Of(ways: [Way with { Chart = (int)n }]));
        Held("ways", "(number of a chart)", 0, 1999, n => Of(ways: [Way with { SecondChart = (int)n }]));
        Held("ways", "cm", -1e5, 1e5, cm => Of(ways: [Way with { Measure = Cm(cm) }]));
        Held("ways", "cm²", 0, 1e6, cost => Of(ways: [Way with { Penalty = cost }]));
        Held("sizes", "cm", -1e5, 1e5, cm => Of(sizes: [new GradingSize(Cm(cm))]));
        Held("sizes", "", 0.001, 1000, weight => Of(sizes: [Size with { Weight = weight }]), by: 0.0005);
        Held("sizes", "", 0.01, 100, tolerance => Of(sizes: [Size with { Tolerance = tolerance }]), by: 0.005);
        Held("sizes", "(index of a way)", 0, 2, pin => Of(sizes: [Size with { Pinned = (int)pin }], ways: [Way, Way, Way]));

        static GradingProblem Of(ImmutableArray<GradingSize> sizes = default, ImmutableArray<GradingWay> ways = default, GradingRules? rules = null) =>
            new(sizes.IsDefault ? [Size] : sizes, ways.IsDefault ? [Way] : ways, rules ?? Rules);

        static void Held(string name, string unit, double least, double most, Func<double, GradingProblem> create, double by = 1, bool below = true)
        {
            _ = (create(least), create(most));
            foreach (var outside in below ? new[] { least - by, most + by } : [most + by])
            {
                var refused = Assert.ThrowsAny<ArgumentOutOfRangeException>(() => create(outside));
                Assert.Equal(name, refused.ParamName);
                Assert.Contains($"] {unit}.", refused.Message, StringComparison.Ordinal);
            }
        }
    }

    /// <summary>
    /// Squares of centimetres, by hand: 2 too wide are 4, 2 too narrow four times that where too small weighs 4; of a child of half the
    /// size as much as 4 of an adult's; twice where a size weighs 2; penalties beside it.
    /// </summary>
    [Theory]
    [InlineData(92, 1, 1, 0, 4)]
    [InlineData(88, 1, 1, 0, 16)]
    [InlineData(92, 1, 0.5, 0, 16)]
    [InlineData(88, 2, 0.5, 3, 2 * (64 + 3))]
    [InlineData(90, 3, 1, 0.5, 1.5)]
    public void A_size_costs_the_square_of_what_it_is_off(double finished, double weight, double tolerance, double penalty, double cost)
    {
        var size = Size with { Weight = weight, Tolerance = tolerance };
        Assert.Equal(cost, new GradingProblem([size], [Way], Rules with { TooSmall = 4 }).CostOf(size, Cm(finished), penalty), 1e-9);
    }

    /// <summary>Half a centimetre squared in every size, each by its weight.</summary>
    [Fact]
    public void A_count_costs_its_saving_in_every_size() => Assert.Equal(
        0.25 * (1 + 2 + 0.5),
        new GradingProblem([Size, Size with { Weight = 2 }, Size with { Weight = 0.5 }], [Way], Rules).CountCost, 1e-9);

    /// <summary>A centimetre, or half of what lies between targets that are a centimetre apart or more; nothing between two that are both fixed, or where any will do.</summary>
    [Theory]
    [InlineData(1.0, 95, false, false, 1.0)]
    [InlineData(1.0, 91, false, false, 0.5)]
    [InlineData(1.0, 90.7, false, false, 0.0)]
    [InlineData(1.0, 91, true, false, 0.5)]
    [InlineData(1.0, 91, false, true, 0.5)]
    [InlineData(1.0, 95, true, true, null)]
    [InlineData(null, 95, false, false, null)]
    [InlineData(0.0, 95, false, false, 0.0)]
    public void Sizes_rise_by_a_centimetre_or_half_of_what_is_asked(double? least, double larger, bool smallFixed, bool largeFixed, double? rise)
    {
        var (small, large) = (Size with { Pinned = smallFixed ? 0 : null }, new GradingSize(Cm(larger)) { Pinned = largeFixed ? 0 : null });
        var problem = new GradingProblem([small, large], [Way], Rules with { LeastRise = least is { } cm ? Cm(cm) : null });
        Assert.Equal(rise, problem.RiseBetween(small, large)?.Centimetres);
    }
}
