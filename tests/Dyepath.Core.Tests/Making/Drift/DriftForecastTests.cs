using CsCheck;
using Dyepath.Core.Making;
using Dyepath.Core.Making.Drift;

namespace Dyepath.Core.Tests.Making.Drift;

public sealed class DriftForecastTests
{
    private static readonly PlannedPiece Panel = Pieces.Of([5, 4, 6, 7], 83, 72, turnCost: 0.4, start: 3);

    [Fact]
    public void Known_without_drift_the_rest_is_as_planned()
    {
        DriftFilter begun = DriftFilter.Begin(new DriftModel(0.01, 50).On(Panel, 0.02));
        DriftForecast all = DriftForecast.Of(Panel, 0, begun, advice: null);
        Assert.Equal(Panel.Colours, all.Unchanged.Colours);
        Assert.Equal((0, 72, 72), (all.FirstRow, all.Unchanged.RowShares.Length, all.Unchanged.RowsKept));
        Assert.Null(all.Advised);

        DriftForecast late = DriftForecast.Of(Panel, 83 * 70 + 10, begun, DriftAdvice.For(begun, new DriftPlace(Panel, 83 * 70 + 10)));
        Assert.Equal(Panel.Colours[(83 * 70 + 10)..], late.Unchanged.Colours);
        Assert.Equal(Panel.Colours[(83 * 70 + 10)..], late.Advised!.Colours);
        Assert.Equal((70, 2), (late.FirstRow, late.Unchanged.RowsKept));

        DriftForecast done = DriftForecast.Of(Panel, Panel.Stitches, begun, advice: null);
        Assert.Equal((72, 0), (done.FirstRow, done.Unchanged.Colours.Length + done.Unchanged.RowShares.Length));
    }

    [Fact]
    public void Law_agrees_with_the_mean_maker_worked_stitch_by_stitch()
    {
        int drifted = 0;
        Gen.Select(Gen.Int[-3, 3].Array[1, 8], Gen.Int[5, 80], Gen.Double[0.005, 0.04], Gen.Int[0, 71 * 83], Gen.Double[-0.03, 0.03])
        .Holds(
            (readings, apart, spread, worked, correction) =>
            {
                DriftFilter filter = Told(readings, apart, spread);
                DriftAdvice advice = DriftAdvice.For(filter, new DriftPlace(Panel, worked));
                DriftForecast forecast = DriftForecast.Of(Panel, worked, filter, advice, correction);
                double[] unchanged = [.. Drifting(filter).Take(Panel.Stitches - worked).Select(step => step(correction))];
                Compare(unchanged, worked, forecast.Unchanged);
                if (forecast.Unchanged.RowsKept < forecast.Unchanged.RowShares.Length) drifted++;

                // To the end of this row as it is advised now.
                int left = Math.Min(83 - worked % 83, Panel.Stitches - worked), stitch = 0;
                double[] advised = [.. Drifting(filter).Take(left).Select(step => step(advice.After(stitch++)))];
                if (advice.Kind is DriftAdviceKind.CarryOn or DriftAdviceKind.Correct) Compare(advised, worked, forecast.Advised!);
            },
            seed: 71, cases: 300);
        Assert.True(drifted > 100);
    }

    [Fact]
    public void Law_following_the_advice_keeps_more_rows_than_changing_nothing() =>
        Gen.Select(Gen.Int[-4, 4], Gen.Int[1, 60]).Holds(
            (reading, row) =>
            {
                DriftFilter filter = Told([reading, reading], 80, 0.02);
                DriftForecast forecast = DriftForecast.Of(
                    Panel, row * 83, filter, DriftAdvice.For(filter, new DriftPlace(Panel, row * 83)));
                Assert.True(forecast.Advised!.RowsKept >= forecast.Unchanged.RowsKept);
                // Four stitches off are made good within three rows.
                Assert.True(forecast.Advised.RowsKept >= 69 - row);
            },
            seed: 72, cases: 60);

    /// <summary>Six stitches early, with one less at the edge, are five: the rows until they are made good do not keep their colours.</summary>
    [Fact]
    public void What_is_not_right_yet_is_not_said_to_be()
    {
        DriftFilter six = Told([6, 6], 0, 0.01);
        var skipped = new DriftAdvice { Kind = DriftAdviceKind.SkipEdgeStitch, Phase = 6 };
        DriftForecast.Course advised = DriftForecast.Of(Panel, 83, six, skipped).Advised!;
        Assert.InRange(advised.RowShares[0], 0, 0.6);
        Assert.True(advised.RowsKept < 71);
        Assert.All(advised.RowShares[^60..], share => Assert.InRange(share, DriftForecast.KeptShare, 1));
        var joined = new DriftAdvice { Kind = DriftAdviceKind.Rejoin, Phase = 6, LeftOut = 16 };
        Assert.Equal(71, DriftForecast.Of(Panel, 83, six, joined).Advised!.RowsKept);
    }

    /// <summary>The phase after each further stitch of the mean maker, given the correction of that stitch.</summary>
    private static IEnumerable<Func<double, double>> Drifting(DriftFilter filter)
    {
        double phase = filter.PhaseMean, tension = filter.TensionMean;
        while (true)
        {
            yield return correction =>
            {
                tension *= Math.Exp(-1 / filter.Model.Memory);
                return phase += filter.BiasMean + tension + filter.GainMean * correction;
            };
        }
    }

    /// <summary>A stitch has the colour at its middle, halfway between where the last ended and where it ends.</summary>
    private static void Compare(double[] phases, int worked, DriftForecast.Course course)
    {
        double[] ends = [5, 9, 15, 22];
        int apart = 0;
        for (int i = 1; i < phases.Length; i++)
        {
            int at = worked + i;
            double middle = 3 + at + 0.5 + at / 83 * 0.4 + (phases[i] + phases[i - 1]) / 2;
            middle -= Math.Floor(middle / 22) * 22;
            if (course.Colours[i] != Array.FindIndex(ends, end => middle <= end)) apart++;
        }
        // Middles within rounding of a boundary may fall either way.
        Assert.InRange(apart, 0, 2 + phases.Length / 1_000);

        int[] right = new int[72], all = new int[72];
        for (int i = 0; i < course.Colours.Length; i++)
        {
            all[(worked + i) / 83]++;
            if (course.Colours[i] == Panel.Colours[worked + i]) right[(worked + i) / 83]++;
        }
        double[] shares = [.. Enumerable.Range(0, 72).Where(r => all[r] > 0).Select(r => (double)right[r] / all[r])];
        Assert.Equal(shares, course.RowShares);
        Assert.Equal(shares.Count(share => share >= 0.75), course.RowsKept);
    }

    private static DriftFilter Told(int[] readings, int apart, double spread)
    {
        DriftFilter filter = DriftFilter.Begin(new DriftModel(spread, 50) { Period = 22, BiasSpread = 0.01 });
        foreach (int reading in readings) filter = filter.Predict(apart).Observe(reading);
        return filter;
    }
}
