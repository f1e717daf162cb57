using Dyepath.Core.Making.Drift;
using MathNet.Numerics.Distributions;

namespace Dyepath.Core.Tests.Making.Drift;

/// <summary>Bayes by brute force for hands without memory: a weight for every phase, bias and gain on a grid.</summary>
internal sealed class PhaseGrid
{
    private const int Phases = 401, Biases = 31, Gains = 9;
    private const double Step = 0.04;

    private readonly DriftModel _model;
    private readonly double[,][] _weights = new double[Biases, Gains][];

    public PhaseGrid(DriftModel model, double startSd)
    {
        _model = model;
        for (int b = 0; b < Biases; b++)
        {
            for (int g = 0; g < Gains; g++)
            {
                double prior = Normal.PDF(model.Bias, model.BiasSpread, Bias(b)) * Normal.PDF(model.Gain, model.GainSpread, Gain(g));
                _weights[b, g] = [.. Enumerable.Range(0, Phases).Select(p => prior * Normal.PDF(0, startSd, Phase(p)))];
            }
        }
    }

    /// <summary>A stitch more or less is level, elsewhere the outlier.</summary>
    public static double Likelihood(DriftModel model, int reading, double phase)
    {
        double off = Math.Abs(reading - phase);
        return model.Outliers + (off < 0.5 ? 1 - model.Misreads : off < 1.5 ? model.Misreads / 2 : 0);
    }

    public void Predict(int stitches, double correction)
    {
        double sd = Math.Sqrt(stitches * (_model.Spread * _model.Spread + _model.DyeVariance));
        for (int b = 0; b < Biases; b++)
        {
            for (int g = 0; g < Gains; g++)
            {
                double shift = stitches * (Bias(b) + Gain(g) * correction);
                double[] kernel = [.. Enumerable.Range(0, 2 * Phases - 1).Select(d => Normal.PDF(shift, sd, (d - Phases + 1) * Step))];
                double[] before = _weights[b, g], after = new double[Phases];
                for (int p = 0; p < Phases; p++)
                {
                    if (before[p] < 1e-14) continue;
                    for (int q = 0; q < Phases; q++) after[q] += before[p] * kernel[q - p + Phases - 1];
                }
                _weights[b, g] = after;
            }
        }
    }

    /// <returns>How likely the reading was beforehand.</returns>
    public double Observe(int reading)
    {
        double before = Total();
        foreach (double[] weights in _weights)
        {
            // Averaged over the cell, so that the likelihood's steps fall where they belong.
            for (int p = 0; p < Phases; p++)
                weights[p] *= Enumerable.Range(0, 8).Average(i => Likelihood(_model, reading, Phase(p) + (i - 3.5) / 8 * Step));
        }
        return Total() / before;
    }

    public (double Phase, double PhaseSd, double Bias, double BiasSd) Moments()
    {
        double total = 0, phase = 0, phase2 = 0, bias = 0, bias2 = 0;
        for (int b = 0; b < Biases; b++)
        {
            for (int g = 0; g < Gains; g++)
            {
                for (int p = 0; p < Phases; p++)
                {
                    double w = _weights[b, g][p];
                    total += w;
                    phase += w * Phase(p);
                    phase2 += w * Phase(p) * Phase(p);
                    bias += w * Bias(b);
                    bias2 += w * Bias(b) * Bias(b);
                }
            }
        }
        (phase, phase2, bias, bias2) = (phase / total, phase2 / total, bias / total, bias2 / total);
        return (phase, Math.Sqrt(phase2 - phase * phase), bias, Math.Sqrt(bias2 - bias * bias));
    }

    private double Total()
    {
        double total = 0;
        foreach (double[] weights in _weights) total += weights.Sum();
        return total;
    }

    private double Bias(int b) => _model.Bias + (b - Biases / 2) * 8 * _model.BiasSpread / (Biases - 1);

    private double Gain(int g) => _model.Gain + (g - Gains / 2) * 6 * _model.GainSpread / (Gains - 1);

    private static double Phase(int p) => (p - Phases / 2) * Step;
}
