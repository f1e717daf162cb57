using CsCheck;
using Dyepath.Core.Quantities;
using Dyepath.Core.Sizing.Counts;

namespace Dyepath.Core.Tests.Sizing.Counts;

public class TradeOffTests
{
    /// <summary>By hand: one count in the middle leaves 15; two or three leave two neighbours on one count, 5; four leave 0.4.</summary>
    private static readonly CountProblem ByHand = CountProblem.Create(
        [.. new[] { 10.0, 20, 30, 40 }.Select(cm => new SizeTarget(Length.FromCentimetres(cm)))],
        [.. new[] { 10.0, 15, 20, 25, 30.4, 35, 39.6, 16, 34, 24 }.Select(cm => new CountCandidate(Length.FromCentimetres(cm)))]);

    [Fact]
    public void Known_worst_errors_of_four_even_sizes() => Assert.Equal(
        [15, 5, 5, 0.4], ByHand.TradeOff().ByCounts.Select(r => r.Plan!.WorstError.Centimetres));

    [Theory]
    [InlineData(1, 0.5, 4)]
    [InlineData(5, 0.5, 2)]
    [InlineData(0, 2.4, 2)]
    [InlineData(0, 2.3, 4)]
    [InlineData(0, 11, 1)]
    [InlineData(20, 0, 1)]
    public void Known_the_knee_is_where_a_further_count_buys_too_little(double enough, double worth, int expected)
    {
        KneeRule rule = new(Length.FromCentimetres(enough), Length.FromCentimetres(worth));
        Assert.Equal(expected, ByHand.TradeOff().Recommended(rule).Plan!.CountsAllowed);
    }

    [Fact]
    public void Law_the_worst_error_never_rises_and_totals_are_the_least_at_that_error() =>
        Instances.Any(6, 7).Holds(
            problem =>
            {
                Length before = Length.FromMetres(1000);
                foreach ((CountResult result, int counts) in problem.TradeOff().ByCounts.Select((r, k) => (r, k + 1)))
                {
                    if (result.Plan is not { } plan)
                        continue;
                    Assert.True(plan.WorstError <= before);
                    before = plan.WorstError;
                    Assert.Equal(BruteForce.Solve(problem.By(GradingCriterion.WorstError), counts)!.Value.Total, plan.TotalLoss, 1e-9 * (1 + plan.TotalLoss));
                }
            },
            seed: 0xb1, cases: 200);

    [Fact]
    public void Invalid_a_curve_without_any_plan_recommends_the_reason()
    {
        TradeOff curve = CountProblem.Create([new SizeTarget(Length.Zero)], []).TradeOff();
        Assert.Equal(NoPlanReason.SizeHasNoCandidate, curve.Recommended(KneeRule.Default).NoPlan!.Reason);
        Assert.Throws<ArgumentOutOfRangeException>(() => curve.Recommended(new KneeRule(Length.FromCentimetres(-1), Length.Zero)));
    }
}
