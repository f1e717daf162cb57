using Dyepath.Core.Measuring;

namespace Dyepath.Core.Tests.Yarns;

public class CountingPlanTests
{
    private static readonly double[] Ring = [5, 4, 6, 7];
    private static readonly double[] Dye = [0.02, 0.02, 0.02, 0.02];

    // Figures of the planning prototype: C 22, four sections, dye 2 %, memory 50, lean within ½ at 95 %, 83 stitches.
    [Theory]
    [InlineData(0.003, 15, CountingVerdict.CountMore)]
    [InlineData(0.01, 58, CountingVerdict.CountMore)]
    public void Repeats_to_count_for_free_work_at_83_stitches(double spread, int repeats, CountingVerdict verdict)
    {
        var plan = CountingPlan.ForFreeWork(Ring, Dye, new HandsPrior(spread, 50, 0.02), null, 83);

        Assert.Equal(repeats, plan.MoreRepeats);
        Assert.Equal(verdict, plan.Verdict);
        Assert.Contains($"Count {repeats} more repeats", plan.Words, StringComparison.Ordinal);
    }

    [Fact]
    public void Ordinary_hands_are_told_that_no_counting_is_enough()
    {
        var plan = CountingPlan.ForFreeWork(Ring, Dye, new HandsPrior(0.02, 50, 0.02), null, 83);

        Assert.True(plan.MoreRepeats > 200);
        Assert.Equal(CountingVerdict.NotByCounting, plan.Verdict);
        Assert.Contains("work counted, colour by colour, or check as you go", plan.Words, StringComparison.Ordinal);
    }

    [Fact]
    public void Counting_what_was_asked_for_is_then_enough()
    {
        var hands = new HandsPrior(0.003, 50, 0.02);
        var counts = new SimulatedMaker(0.003, 50, 0.02, 4).Count(Ring, 17);
        var few = SequenceEstimator.Estimate(counts[..6], hands);
        var all = SequenceEstimator.Estimate(counts, hands);

        var early = CountingPlan.ForFreeWork(Ring, Dye, hands, few, 83);
        Assert.Equal(CountingVerdict.CountMore, early.Verdict);
        Assert.InRange(early.MoreRepeats, 8, 12);
        var late = CountingPlan.ForFreeWork(Ring, Dye, hands, all, 83);
        Assert.Equal((CountingVerdict.Enough, 0), (late.Verdict, late.MoreRepeats));
        Assert.True(late.LeanError <= 0.5);
    }

    [Fact]
    public void Narrower_work_asks_for_less_counting()
    {
        var hands = new HandsPrior(0.01, 50, 0.02);
        var last = 0;
        foreach (var crossing in (double[])[20, 40, 60, 83, 120])
        {
            var more = CountingPlan.ForFreeWork(Ring, Dye, hands, null, crossing).MoreRepeats;
            Assert.True(more > last);
            last = more;
        }
    }

    [Theory]
    [InlineData(0.02, 1)]
    [InlineData(0.02, 5)]
    [InlineData(0.005, 8)]
    public void The_closed_form_for_one_section_agrees_with_the_mean_of_simulated_counts(double spread, int repeats)
    {
        var hands = new HandsPrior(spread, 50, 0.02);
        double simulated = 0, closed = 0;
        for (var trial = 0; trial < 3_000; trial++)
        {
            // Every trial has another fraction of a stitch: the closed form is the mean over them.
            var maker = new SimulatedMaker(spread, 50, 0.02, (ulong)trial);
            var ring = Enumerable.Range(0, 4).Select(_ => 4 + 4 * maker.Uniform()).ToArray();
            var error = maker.Count(ring, repeats).Average(row => row[2]) - ring[2];
            simulated += error * error;
            closed += CountingPlan.SectionVariance(ring, Dye, hands, 2, repeats);
        }

        Assert.InRange(simulated / closed, 0.92, 1.08);
    }

    [Fact]
    public void Clear_whole_numbers_need_no_more_counting_and_halves_serve_either_way()
    {
        var hands = new HandsPrior(0.01, 50, 0.02);
        var counts = new SimulatedMaker(0.01, 50, 0.02, 11).Count([5.0, 4.5, 6.3, 7.0], 12);
        var plan = CountingPlan.ForCountedWork(SequenceEstimator.Estimate(counts, hands), Dye, [5, 4, 6, 9]);

        Assert.Equal(CountingVerdict.Enough, plan[0].Verdict);
        Assert.True(plan[0].ProbabilityRight > 0.95);
        Assert.True(plan[1].EitherServes);
        Assert.Equal(CountingVerdict.AnotherIsNearer, plan[3].Verdict);
        Assert.True(plan[3].ProbabilityRight < 0.05);
    }

    [Fact]
    public void A_doubtful_whole_number_asks_for_more_counting()
    {
        var hands = new HandsPrior(0.01, 50, 0.02);
        var counts = new SimulatedMaker(0.01, 50, 0.02, 11).Count([5.25, 4.75, 6.25, 7.25], 2);
        var plan = CountingPlan.ForCountedWork(SequenceEstimator.Estimate(counts, hands), Dye, [5, 5, 6, 7]);

        Assert.Contains(plan, s => s.Verdict == CountingVerdict.CountMore && s.MoreRepeats is > 0 and < 60);
    }

    [Fact]
    public void Arguments_out_of_range_are_refused_by_name()
    {
        var hands = HandsPrior.Default;
        Assert.Throws<ArgumentOutOfRangeException>("crossing", () => CountingPlan.ForFreeWork(Ring, Dye, hands, null, 0));
        Assert.Throws<ArgumentOutOfRangeException>("crossing", () => CountingPlan.ForFreeWork(Ring, Dye, hands, null, double.NaN));
        Assert.Throws<ArgumentOutOfRangeException>("tolerance", () => CountingPlan.ForFreeWork(Ring, Dye, hands, null, 50, 0));
        Assert.Throws<ArgumentOutOfRangeException>("confidence", () => CountingPlan.ForFreeWork(Ring, Dye, hands, null, 50, 1, 1));
        Assert.Throws<ArgumentOutOfRangeException>("repeats", () => CountingPlan.SequenceVariance(Ring, Dye, hands, 0));
        Assert.Throws<ArgumentOutOfRangeException>("sections", () => CountingPlan.SequenceVariance([5, 0], [0, 0], hands, 2));
        Assert.Throws<ArgumentOutOfRangeException>("dye", () => CountingPlan.SequenceVariance([5], [double.NaN], hands, 2));
        Assert.Throws<ArgumentException>("dye", () => CountingPlan.SequenceVariance(Ring, [0.02], hands, 3));
    }
}
