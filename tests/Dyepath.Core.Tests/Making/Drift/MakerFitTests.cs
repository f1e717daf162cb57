using System.Collections.Immutable;
using Dyepath.Core.Making;
using Dyepath.Core.Making.Drift;
using MathNet.Numerics.Distributions;
using MathNet.Numerics.Statistics;

namespace Dyepath.Core.Tests.Making.Drift;

public sealed class MakerFitTests
{
    private static readonly PlannedPiece Panel = Pieces.Of([5, 4, 6, 7], 83, 72);

    [Theory]
    [InlineData(0.05, 0, 0)]
    [InlineData(0.05, -0.02, 0.01)]
    [InlineData(0.1, 0.02, -0.02)]
    public void Law_likelihood_agrees_with_a_brute_force_grid(double spread, double correction, double bias)
    {
        var model = new DriftModel(spread, 0) { DyeVariance = 0.001, Slips = 0, Outliers = 1e-5 };
        var normal = new Normal(0, 1, new Random(37));
        for (int maker = 0; maker < 4; maker++)
        {
            // The grid's bias is as good as known. Keeping a normal costs up to a twentieth of a reading's likelihood.
            var grid = new PhaseGrid(model with { Bias = bias, BiasSpread = 1e-7 }, startSd: DriftFilter.Begin(model).PhaseSd);
            List<MakerLog.Entry> entries = [];
            double phase = 0.05 * normal.Sample(), gain = 0.85 + 0.15 * normal.Sample(), expected = 0;
            for (int time = 0; time < 4; time++)
            {
                phase += 25 * (bias + gain * correction) + Math.Sqrt(25 * (spread * spread + model.DyeVariance)) * normal.Sample();
                int reading = (int)Math.Round(phase);
                entries.AddRange([new MakerLog.Worked(25, correction), new MakerLog.Read(reading)]);
                grid.Predict(25, correction);
                expected += Math.Log(grid.Observe(reading));
            }
            Assert.Equal(expected, MakerFit.LogLikelihood([new MakerLog(model, [.. entries])], bias, spread, memory: 0), 0.2);
        }
    }

    [Fact]
    public void Law_likelihood_agrees_with_weighted_makers_stitch_by_stitch()
    {
        // How likely three readings are, as the mean over makers; the likelihood's ratio between hands is what a fit goes by.
        var model = new DriftModel(0.03, 50) { Slips = 0, Outliers = 1e-5 };
        int[] readings = [1, 1, 2];
        ImmutableArray<MakerLog.Entry> entries =
            [.. readings.SelectMany(reading => new MakerLog.Entry[] { new MakerLog.Worked(20, -0.02), new MakerLog.Read(reading) })];
        foreach ((double bias, double spread, double memory) in new[] { (0.0, 0.03, 50.0), (0.03, 0.03, 50.0), (0.02, 0.05, 10.0) })
        {
            var normal = new Normal(0, 1, new Random(29));
            double rho = Math.Exp(-1 / memory), innovation = spread * Math.Sqrt(1 - rho * rho), total = 0;
            for (int maker = 0; maker < 40_000; maker++)
            {
                double phase = 0.05 * normal.Sample(), tension = spread * normal.Sample(), gain = 0.85 + 0.15 * normal.Sample(), weight = 1;
                foreach (int reading in readings)
                {
                    for (int i = 0; i < 20; i++)
                    {
                        tension = rho * tension + innovation * normal.Sample();
                        phase += bias + tension + gain * -0.02;
                    }
                    weight *= PhaseGrid.Likelihood(model, reading, phase);
                }
                total += weight;
            }
            double found = MakerFit.LogLikelihood([new MakerLog(model, entries)], bias, spread, memory);
            Assert.Equal(1, found / Math.Log(total / 40_000), 0.05);
        }
    }

    [Theory]
    [InlineData(CheckHabit.EveryRow, 72, 0.01, 50, 80)]
    [InlineData(CheckHabit.EveryRow, 72, 0.03, 200, 40)]
    [InlineData(CheckHabit.EverySection, 16, 0.03, 50, 30)]
    public void Law_intervals_hold_the_truth_as_often_as_they_say(CheckHabit check, int rows, double spread, double memory, int makers)
    {
        makers = Extent.Of(makers / 3, makers);
        PlannedPiece piece = Pieces.Of([5, 4, 6, 7], 83, rows);
        var world = new MakerWorld { Hands = HandModel.Create(spread, memory) };
        var fits = new MakerFit[makers];
        double[] biases = new double[makers];
        Parallel.For(0, makers, i => (fits[i], biases[i]) = Fitted(piece, world, check, i));
        // 0.95 within three standard deviations of a count of so many.
        double least = 0.95 - 3 * Math.Sqrt(0.95 * 0.05 / makers);
        Assert.True(Held(i => fits[i].Bias, i => biases[i]) >= least);
        Assert.True(Held(i => fits[i].Spread, _ => spread) >= least);
        Assert.True(Held(i => fits[i].Memory, _ => memory) >= least);
        // Three standard errors of a median, by what the intervals say of one log.
        double error = fits.Select(fit => fit.Bias.High - fit.Bias.Low).Median() / 3.92 * 1.25 / Math.Sqrt(makers);
        Assert.Equal(0, Enumerable.Range(0, makers).Select(i => fits[i].Bias.Value - biases[i]).Median(), 3 * error);
        Assert.InRange(fits.Select(fit => fit.Spread.Value).Median() / spread, 0.75, 1.33);
        Assert.InRange(fits.Select(fit => fit.Memory.Value).Median() / memory, 0.5, 2);

        double Held(Func<int, Figure> figure, Func<int, double> truth) =>
            Enumerable.Range(0, makers).Count(i => figure(i).Low <= truth(i) && truth(i) <= figure(i).High) / (double)makers;
    }

    [Fact]
    public void Law_a_second_piece_narrows_what_the_first_left_open()
    {
        var world = new MakerWorld { Hands = HandModel.Create(0.03, 50) };
        MakerLog log = Log(Panel, world, CheckHabit.EveryRow, 3, out _);
        MakerFit one = MakerFit.Of(log)!, two = MakerFit.Of(log, log)!;
        Assert.Equal(2 * one.Readings, two.Readings);
        Assert.True(two.Bias.High - two.Bias.Low < one.Bias.High - one.Bias.Low);
        Assert.True(two.Spread.High / two.Spread.Low < one.Spread.High / one.Spread.Low);
        Assert.Equal(one.Spread.Value, two.Spread.Value, 0.3 * one.Spread.Value);
    }

    [Fact]
    public void Law_the_bias_is_that_of_the_first_hook()
    {
        var world = new MakerWorld { Hands = HandModel.Create(0.01, 50), LargestBias = 0.08, HookStep = 0.04, Turn = 0.5, EdgeStitch = true };
        int changed = 0, held = 0;
        for (int i = 0; i < 30; i++)
        {
            MakerLog log = Log(Panel, world, CheckHabit.EveryRow, i, out double bias);
            if (!log.Entries.Any(entry => entry is MakerLog.HookChanged)) continue;
            changed++;
            Figure found = MakerFit.Of(log)!.Bias;
            if (found.Low <= bias && bias <= found.High) held++;
        }
        Assert.True(changed >= 5 && held >= 0.8 * changed, $"{held} of {changed}");
    }

    [Fact]
    public void Too_few_readings_give_no_figures()
    {
        var model = new DriftModel(0.01, 50);
        Assert.Null(MakerFit.Of());
        Assert.Null(MakerFit.Of(new MakerLog(model, [])));
        MakerLog.Entry[] read = [new MakerLog.Worked(83, 0), new MakerLog.Read(0)];
        Assert.Null(MakerFit.Of(new MakerLog(model, [.. Enumerable.Repeat(read, MakerFit.FewestReadings - 1).SelectMany(e => e)])));
    }

    [Fact]
    public void Extreme_a_log_that_never_drifts_leaves_the_spread_open_below()
    {
        MakerLog.Entry[] read = [new MakerLog.Worked(83, 0), new MakerLog.Read(0)];
        MakerFit fit = MakerFit.Of(
            new MakerLog(new DriftModel(0.01, 50) { Slips = 0 }, [.. Enumerable.Repeat(read, 60).SelectMany(e => e)]))!;
        Assert.Equal(0.0005, fit.Spread.Low, 1e-9);
        Assert.InRange(fit.Bias.Value, -0.001, 0.001);
        Assert.True(fit.Spread.High < 0.05);
    }

    [Fact]
    public void Known_a_simplex_climbs_a_curved_ridge()
    {
        // Rosenbrock's valley, upside down.
        static double Ridge(double[] x) => -(100 * Math.Pow(x[1] - x[0] * x[0], 2) + Math.Pow(1 - x[0], 2));
        (double[] at, double value) = Simplex.Maximise(Ridge, [[-1.2, 1], [-1, 1], [-1.2, 1.2]], 1e-12);
        Assert.Equal(1, at[0], 1e-4);
        Assert.Equal(1, at[1], 1e-4);
        Assert.Equal(0, value, 1e-8);
    }

    private static (MakerFit Fit, double Bias) Fitted(PlannedPiece piece, MakerWorld world, CheckHabit check, int maker) =>
        (MakerFit.Of(Log(piece, world, check, maker, out double bias))!, bias);

    private static MakerLog Log(PlannedPiece piece, MakerWorld world, CheckHabit check, int maker, out double bias)
    {
        var trial = new MakerTrial(piece, world, new MakerPolicy(check, Steering.Advice), seed: 9, maker) { Log = [] };
        trial.Work();
        bias = trial.FirstBias;
        return new MakerLog(world.Model(piece), [.. trial.Log]);
    }
}
