using Dyepath.Core.Making;
using MathNet.Numerics.Statistics;

namespace Dyepath.Core.Tests.Making;

/// <summary>The simulated hands against the closed forms of a stationary first-order autoregression.</summary>
public sealed class HandModelTests
{
    private const double Spread = 0.02;
    private const int Trials = 16_000;

    [Fact]
    public void Known_correlation_is_the_exponential_of_the_memory()
    {
        Assert.Equal(Math.Exp(-0.02), HandModel.Create(0.01, 50).Correlation, 1e-15);
        Assert.Equal(0, HandModel.Create(0.01, 0).Correlation);
        Assert.Equal(0, HandModel.Create(0.01, 1e-3).Correlation);
    }

    [Theory]
    [InlineData(0, 1)]
    [InlineData(2, 1)]
    [InlineData(50, 1)]
    [InlineData(50, 30)]
    [InlineData(400, 83)]
    public void Law_tension_is_stationary_and_correlated_as_the_memory_says(double memory, int apart)
    {
        double[] before = Work(10, memory).Tensions, after = Work(10 + apart, memory).Tensions;
        double rho = Math.Pow(HandModel.Create(Spread, memory).Correlation, apart);
        Assert.Equal(rho, Correlation.Pearson(before, after), 4 * (1 - rho * rho) / Math.Sqrt(Trials));
        Assert.Equal(0, after.Mean(), 4 * Spread / Math.Sqrt(Trials));
        Assert.Equal(Spread, after.StandardDeviation(), 4 * Spread / Math.Sqrt(2 * Trials));
    }

    [Theory]
    [InlineData(0, 83)]
    [InlineData(10, 83)]
    [InlineData(50, 83)]
    [InlineData(50, 7)]
    [InlineData(300, 83)]
    public void Law_the_spread_of_yarn_used_is_the_closed_form(double memory, int stitches)
    {
        // G(n) = σ²[n(1 + ρ)/(1 − ρ) − 2ρ(1 − ρⁿ)/(1 − ρ)²], by summing σ²ρ^|i − j| over all pairs of stitches.
        double rho = HandModel.Create(Spread, memory).Correlation;
        double closed = Spread * Spread *
            (stitches * (1 + rho) / (1 - rho) - 2 * rho * (1 - Math.Pow(rho, stitches)) / ((1 - rho) * (1 - rho)));
        double summed = 0;
        for (int i = 0; i < stitches; i++)
        {
            for (int j = 0; j < stitches; j++) summed += Spread * Spread * Math.Pow(rho, Math.Abs(i - j));
        }
        double measured = Work(stitches, memory).Places.Variance();
        Assert.Equal(1, closed / summed, 1e-9);
        Assert.Equal(1, measured / closed, 4 * Math.Sqrt(2.0 / Trials));
    }

    [Fact]
    public void Law_bias_is_the_mean_of_the_yarn_used()
    {
        double[] places = Work(83, 50, bias: 0.03).Places;
        Assert.Equal(83 * 1.03, places.Mean(), 4 * places.StandardDeviation() / Math.Sqrt(Trials));
    }

    /// <summary>One row worked many times: the last stitch's tension and the yarn used, in stitches.</summary>
    private static (double[] Tensions, double[] Places) Work(int stitches, double memory, double bias = 0)
    {
        PlannedPiece piece = Pieces.Of([5, 4, 6, 7], stitches, 1);
        var group = new TrialGroup(
            piece,
            HandModel.Create(Spread, memory, bias),
            new SimulationSettings { Check = CheckHabit.Never, Seed = 11 },
            vectorised: false);
        double[] tensions = new double[Trials], places = new double[Trials], shares = new double[8], corrections = new double[8];
        for (int first = 0; first < Trials; first += 8)
        {
            group.Work(first, shares, corrections, TestContext.Current.CancellationToken);
            for (int lane = 0; lane < 8; lane++)
                (tensions[first + lane], places[first + lane]) = (group.Tensions[lane] / 1e6, group.Places[lane] / 1e6);
        }
        return (tensions, places);
    }
}
