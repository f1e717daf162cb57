using CsCheck;
using Dyepath.Core.Making.Drift;
using MathNet.Numerics.Distributions;
using MathNet.Numerics.Statistics;

namespace Dyepath.Core.Tests.Making.Drift;

public sealed class DriftFilterTests
{
    [Fact]
    public void Known_normal_curve_agrees_with_a_numerics_library()
    {
        for (double x = -9; x <= 9; x += 0.0625)
        {
            Assert.Equal(Normal.CDF(0, 1, x), NormalCurve.Below(x), 2e-15);
            Assert.Equal(Normal.PDF(0, 1, x), NormalCurve.Density(x), 1e-15);
        }
    }

    [Fact]
    public void Law_predicting_in_parts_is_predicting_at_once() =>
        Gen.Select(Gen.Int[0, 90], Gen.Int[0, 90], Gen.Double[0, 200], Gen.Double[-0.06, 0.06], Gen.Int[-2, 2]).Holds(
            (first, then, memory, correction, reading) =>
            {
                DriftFilter start = DriftFilter.Begin(new DriftModel(0.01, memory) { DyeVariance = 0.002 }).Predict(30).Observe(reading);
                DriftFilter parts = start.Predict(first, correction).Predict(then, correction);
                DriftFilter whole = start.Predict(first + then, correction);
                Assert.Equal(whole.PhaseMean, parts.PhaseMean, 1e-10);
                Assert.Equal(whole.PhaseSd, parts.PhaseSd, 1e-10);
                Assert.Equal(whole.TensionMean, parts.TensionMean, 1e-10);
                Assert.Equal(whole.TensionSd, parts.TensionSd, 1e-10);
                Assert.Equal(whole.MeanAfter(7, 0), parts.MeanAfter(7, 0), 1e-10);
            },
            seed: 3, cases: 300);

    [Fact]
    public void Known_prediction_has_the_closed_form_variance()
    {
        // The sum over all pairs of stitches of σ²ρ^|i − j|, n²·(bias's variance + correction's square × gain's variance), and the rest.
        var model = new DriftModel(0.02, 50) { BiasSpread = 0.01, GainSpread = 0.15, Gain = 0.85, DyeVariance = 0.003, Slips = 0.0005 };
        const int stitches = 83;
        double variance = 0.05 * 0.05 + stitches * 0.0035 + stitches * stitches * (0.0001 + 0.03 * 0.03 * 0.15 * 0.15);
        for (int i = 0; i < stitches; i++)
        {
            for (int j = 0; j < stitches; j++) variance += 0.0004 * Math.Exp(-Math.Abs(i - j) / 50.0);
        }
        DriftFilter after = DriftFilter.Begin(model).Predict(stitches, 0.03);
        Assert.Equal(Math.Sqrt(variance), after.PhaseSd, 1e-10);
        Assert.Equal(stitches * 0.03 * 0.85, after.PhaseMean, 1e-12);
    }

    [Fact]
    public void Known_what_is_known_of_the_bias_beforehand_moves_the_phase()
    {
        DriftFilter begun = DriftFilter.Begin(new DriftModel(0.01, 50) { Bias = -0.015, BiasSpread = 0.004 });
        Assert.Equal((-0.015, 0.004), (begun.BiasMean, begun.BiasSd));
        Assert.Equal(-0.015 * 83, begun.Predict(83).PhaseMean, 1e-12);
    }

    [Theory]
    [InlineData(0.01, 0, new[] { 1 })]
    [InlineData(0.05, 0, new[] { 0, 1 })]
    [InlineData(0.05, -0.02, new[] { 1, 0, -1 })]
    [InlineData(0.1, 0.03, new[] { 2, 2, 3 })]
    public void Law_agrees_with_a_brute_force_grid(double spread, double correction, int[] readings)
    {
        // Independent stitches; every combination of phase, bias and gain has its weight.
        var model = new DriftModel(spread, 0) { BiasSpread = 0.01, DyeVariance = 0.001, Slips = 0, Outliers = 1e-5 };
        DriftFilter filter = DriftFilter.Begin(model);
        var grid = new PhaseGrid(model, startSd: filter.PhaseSd);
        foreach (int reading in readings)
        {
            filter = filter.Predict(25, correction).Observe(reading);
            grid.Predict(25, correction);
            grid.Observe(reading);
        }
        (double phase, double phaseSd, double bias, double biasSd) = grid.Moments();
        Assert.Equal(phase, filter.PhaseMean, 0.15 * phaseSd);
        Assert.Equal(1, filter.PhaseSd / phaseSd, 0.1);
        Assert.Equal(bias, filter.BiasMean, 0.15 * biasSd);
        Assert.Equal(1, filter.BiasSd / biasSd, 0.1);
    }

    [Fact]
    public void Law_agrees_with_weighted_makers_stitch_by_stitch()
    {
        // A hundred thousand makers drawn from the prior, worked stitch by stitch, weighted by how well they explain three readings.
        var model = new DriftModel(0.03, 50) { BiasSpread = 0.01, Slips = 0, Outliers = 1e-5 };
        int[] readings = [1, 1, 2];
        DriftFilter filter = DriftFilter.Begin(model);
        double startSd = filter.PhaseSd;
        foreach (int reading in readings) filter = filter.Predict(20, -0.02).Observe(reading);

        var normal = new Normal(0, 1, new Random(17));
        double rho = model.Correlation, innovation = 0.03 * Math.Sqrt(1 - rho * rho), total = 0;
        double[] firsts = new double[4], seconds = new double[4];
        for (int maker = 0; maker < 100_000; maker++)
        {
            double phase = startSd * normal.Sample(), bias = 0.01 * normal.Sample(), tension = 0.03 * normal.Sample();
            double gain = 0.85 + 0.15 * normal.Sample(), weight = 1;
            foreach (int reading in readings)
            {
                for (int i = 0; i < 20; i++)
                {
                    tension = rho * tension + innovation * normal.Sample();
                    phase += bias + tension + gain * -0.02;
                }
                weight *= PhaseGrid.Likelihood(model, reading, phase);
                if (weight < 1e-12) break;
            }
            double[] state = [phase, bias, tension, gain];
            total += weight;
            for (int i = 0; i < 4; i++)
            {
                firsts[i] += weight * state[i];
                seconds[i] += weight * state[i] * state[i];
            }
        }
        double[] means = [filter.PhaseMean, filter.BiasMean, filter.TensionMean, filter.GainMean];
        double[] sds = [filter.PhaseSd, filter.BiasSd, filter.TensionSd, filter.GainSd];
        for (int i = 0; i < 4; i++)
        {
            double mean = firsts[i] / total, sd = Math.Sqrt(seconds[i] / total - mean * mean);
            Assert.Equal(mean, means[i], 0.15 * sd);
            Assert.Equal(1, sds[i] / sd, 0.1);
        }
    }

    [Fact]
    public void A_surprising_reading_asks_for_a_recount_and_is_believed_the_second_time()
    {
        DriftFilter filter = DriftFilter.Begin(new DriftModel(0.01, 50)).Predict(20).Observe(0).Predict(10);
        Assert.False(filter.AsksForRecount(1));
        Assert.True(filter.AsksForRecount(3));
        DriftFilter believed = filter.Observe(3);
        Assert.InRange(believed.PhaseMean, 2, 3.5);
        // A slip says nothing of the hands.
        Assert.Equal(filter.Spread, believed.Spread);
        Assert.Equal(filter.BiasMean, believed.BiasMean, 0.01);
    }

    [Fact]
    public void A_phase_a_whole_period_off_looks_the_same()
    {
        DriftFilter filter = DriftFilter.Begin(new DriftModel(0.01, 50) { Period = 22 }).Predict(40);
        Assert.Equal(filter.Observe(1).PhaseMean, filter.Observe(23).PhaseMean, 1e-12);
        Assert.Equal(filter.Observe(1).PhaseMean, filter.Observe(-21).PhaseMean, 1e-12);
    }

    [Theory]
    [InlineData(0.01, 0.03)]
    [InlineData(0.04, 0.01)]
    public void Law_the_spread_goes_from_what_was_told_towards_what_is(double told, double real)
    {
        var normal = new Normal(0, 1, new Random(23));
        double[] learnt = new double[12];
        for (int maker = 0; maker < learnt.Length; maker++)
        {
            DriftFilter filter = DriftFilter.Begin(new DriftModel(told, 10) { Slips = 0 });
            double phase = 0, rho = filter.Model.Correlation, tension = real * normal.Sample();
            for (int row = 0; row < 72; row++)
            {
                for (int i = 0; i < 83; i++)
                {
                    tension = rho * tension + real * Math.Sqrt(1 - rho * rho) * normal.Sample();
                    phase += tension;
                }
                filter = filter.Predict(83).Observe((int)Math.Round(phase));
            }
            learnt[maker] = filter.Spread;
        }
        double log = Math.Log(learnt.Median() / told) / Math.Log(real / told);
        // One piece takes it at least half way.
        Assert.InRange(log, 0.5, 1.3);
    }

    [Fact]
    public void Ripping_back_restores_the_phase_and_keeps_what_was_learnt()
    {
        DriftFilter then = DriftFilter.Begin(new DriftModel(0.01, 50)).Predict(83).Observe(0);
        DriftFilter now = then.Predict(83).Observe(3);
        DriftFilter back = now.RipBackTo(then);
        Assert.Equal((then.PhaseMean, then.PhaseSd), (back.PhaseMean, back.PhaseSd));
        Assert.Equal((now.BiasMean, now.BiasSd), (back.BiasMean, back.BiasSd));
    }

    [Fact]
    public void What_is_done_at_the_edge_and_with_another_hook_is_known()
    {
        DriftFilter then = DriftFilter.Begin(new DriftModel(0.01, 50)).Predict(83).Observe(1);
        DriftFilter shifted = then.Shift(-0.4, 0.1);
        Assert.Equal(then.PhaseMean - 0.4, shifted.PhaseMean, 1e-12);
        Assert.Equal(Math.Sqrt(then.PhaseSd * then.PhaseSd + 0.01), shifted.PhaseSd, 1e-12);
        Assert.Equal((then.BiasMean, then.BiasSd), (shifted.BiasMean, shifted.BiasSd));
        DriftFilter hooked = then.ChangeHook(-0.04, 0.02);
        Assert.Equal(then.BiasMean - 0.04, hooked.BiasMean, 1e-12);
        Assert.Equal(Math.Sqrt(then.BiasSd * then.BiasSd + 0.0004), hooked.BiasSd, 1e-12);
        Assert.Equal(then.PhaseMean, hooked.PhaseMean);
    }

    [Fact]
    public void Invalid_values_are_named()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => new DriftModel(double.NaN, 50));
        DriftFilter filter = DriftFilter.Begin(new DriftModel(0.01, 50));
        Assert.Throws<ArgumentOutOfRangeException>(() => filter.Predict(-1));
        Assert.Throws<ArgumentOutOfRangeException>(() => filter.Predict(1, double.NaN));
    }

    /// <summary>After long work without a look, a reading tells where within a period the colours are, and no more.</summary>
    [Theory]
    [InlineData(3_000)]
    [InlineData(30_000)]
    [InlineData(300_000)]
    public void A_reading_after_long_work_places_the_colours_within_their_period(int stitches)
    {
        DriftFilter lost = DriftFilter.Begin(new DriftModel(0.02, 50) { Period = 22, BiasSpread = 0.0115 }).Predict(stitches);
        Assert.True(lost.PhaseSd > 11);
        DriftFilter found = lost.Observe(-2);
        double off = found.PhaseMean + 2;
        Assert.Equal(0, off - Math.Round(off / 22) * 22, 0.1);
        Assert.True(found.PhaseSd < 1.2, $"{found.PhaseSd}");
        // It may be any number of periods on: little is learnt of the bias.
        Assert.InRange(found.BiasSd, 0.0115 / 2, 0.0115);
    }

    /// <summary>The ends of every documented range are in it, and what lies a little beyond is refused.</summary>
    [Fact]
    public void Invalid_values_are_those_beyond_the_documented_ranges()
    {
        Assert.Equal(0.0001, new DriftModel(0.0001, 50).Spread);
        Assert.Equal(0.5, new DriftModel(0.5, 50).Spread);
        Assert.Throws<ArgumentOutOfRangeException>(() => new DriftModel(0.00009, 50));
        Assert.Throws<ArgumentOutOfRangeException>(() => new DriftModel(0.51, 50));
        var filter = DriftFilter.Begin(new DriftModel(0.01, 50));
        Assert.Equal(filter.PhaseMean + 50, filter.Shift(50, 50).PhaseMean, 1e-9);
        Assert.Equal(filter.PhaseMean - 50, filter.Shift(-50).PhaseMean, 1e-9);
        Assert.Throws<ArgumentOutOfRangeException>(() => filter.Shift(50.1));
        Assert.Throws<ArgumentOutOfRangeException>(() => filter.Shift(-50.1));
        Assert.Throws<ArgumentOutOfRangeException>(() => filter.Shift(0, 50.1));
        Assert.Throws<ArgumentOutOfRangeException>(() => filter.Shift(0, -0.1));
    }
}
