using Dyepath.Core.Quantities;

namespace Dyepath.Core.Making.Drift;

/// <summary>
/// What is known of how far the work has run ahead of its plan, and why: phase φ (stitches of yarn; positive when colours come
/// early), bias b, tension a and the gain g of corrections, as a mean and a covariance. Every stitch does a ← ρa + noise,
/// φ ← φ + b + a + g·u. With u known this is linear, so predicting is exact. Derived in docs/making.md. Immutable.
/// </summary>
public sealed class DriftFilter
{
    private const int Size = 4, Phase = 0, OfBias = 1, OfTension = 2, OfGain = 3;

    /// <summary>A reading further from what was expected than this many standard deviations is to be counted again.</summary>
    public const double SurpriseLimit = 3;

    /// <summary>Half the width of a normal's middle 95 %, in standard deviations.</summary>
    public const double Sd95 = 1.959963984540054;

    /// <summary>The first stitch is not placed more exactly than this, in stitches.</summary>
    private const double StartError = 0.05;

    /// <summary>How fast the spread follows the readings: about as many readings as its reciprocal are remembered.</summary>
    private const double Adapting = 0.03;

    /// <summary>Variance of what rounding to whole stitches hides.</summary>
    private const double Rounding = 1.0 / 12;

    private readonly double[] _mean;
    private readonly double[,] _covariance;

    private DriftFilter(DriftModel model, double[] mean, double[,] covariance, double spread) =>
        (Model, _mean, _covariance, Spread) = (model, mean, covariance, spread);

    public DriftModel Model { get; }

    /// <summary>The hands' spread as the readings so far show it.</summary>
    public double Spread { get; }

    /// <summary>Mean phase error in stitches of yarn; positive: colours come early, because stitches took too much.</summary>
    public double PhaseMean => _mean[Phase];

    public double PhaseSd => Math.Sqrt(_covariance[Phase, Phase]);

    public double BiasMean => _mean[OfBias];

    public double BiasSd => Math.Sqrt(_covariance[OfBias, OfBias]);

    public double TensionMean => _mean[OfTension];

    public double TensionSd => Math.Sqrt(_covariance[OfTension, OfTension]);

    public double GainMean => _mean[OfGain];

    public double GainSd => Math.Sqrt(_covariance[OfGain, OfGain]);

    public static DriftFilter Begin(DriftModel model)
    {
        ArgumentNullException.ThrowIfNull(model);
        var covariance = new double[Size, Size];
        covariance[Phase, Phase] = StartError * StartError;
        covariance[OfBias, OfBias] = model.BiasSpread * model.BiasSpread;
        covariance[OfTension, OfTension] = model.Spread * model.Spread;
        covariance[OfGain, OfGain] = model.GainSpread * model.GainSpread;
        return new DriftFilter(model, [0, model.Bias, 0, model.Gain], covariance, model.Spread);
    }

    /// <summary>After more stitches, in [0, 5,000,000], with a correction asked for in [−0.5, 0.5].</summary>
    public DriftFilter Predict(int stitches, double correction = 0)
    {
        Guard.InRange(stitches, 0, 5_000_000, "stitches");
        Guard.InRange(correction, -0.5, 0.5, "of the yarn per stitch");
        (double carried, double left) = Carry(stitches);
        double asked = stitches * correction;
        double[] mean = [.. _mean];
        mean[Phase] += stitches * mean[OfBias] + carried * mean[OfTension] + asked * mean[OfGain];
        mean[OfTension] *= left;

        double[,] covariance = (double[,])_covariance.Clone();
        for (int j = 0; j < Size; j++)
        {
            covariance[Phase, j] += stitches * covariance[OfBias, j] + carried * covariance[OfTension, j] + asked * covariance[OfGain, j];
            covariance[OfTension, j] *= left;
        }
        for (int i = 0; i < Size; i++)
        {
            covariance[i, Phase] += stitches * covariance[i, OfBias] + carried * covariance[i, OfTension] + asked * covariance[i, OfGain];
            covariance[i, OfTension] *= left;
        }
        AddNoise(covariance, stitches);
        return new DriftFilter(Model, mean, covariance, Spread);
    }

    /// <summary>Whether a phase error read in whole stitches is so far from what is expected that it should be read again.</summary>
    public bool AsksForRecount(int reading) =>
        Math.Abs(Nearest(reading) - PhaseMean) > SurpriseLimit * Math.Sqrt(_covariance[Phase, Phase] + Rounding);

    /// <summary>
    /// Learns from a phase error read in whole stitches (positive: early). A surprising reading given here has been read twice, and is
    /// taken for a stitch missed or added unawares.
    /// </summary>
    public DriftFilter Observe(int reading)
    {
        double z = Nearest(reading), off = z - PhaseMean;
        double variance = _covariance[Phase, Phase];
        double expected = variance + Rounding;
        bool slipped = AsksForRecount(reading);
        if (slipped) variance += off * off;
        double sd = Math.Sqrt(variance);

        // Moments of the normal under a likelihood that is level over each whole stitch, and the broad outlier everywhere.
        double mass = Model.Outliers, first = 0, second = Model.Outliers;
        for (int neighbour = -1; neighbour <= 1; neighbour++)
        {
            double weight = neighbour == 0 ? 1 - Model.Misreads : Model.Misreads / 2;
            double low = (off + neighbour - 0.5) / sd, high = (off + neighbour + 0.5) / sd;
            double inside = NormalCurve.Below(high) - NormalCurve.Below(low);
            double atLow = NormalCurve.Density(low), atHigh = NormalCurve.Density(high);
            mass += weight * inside;
            first += weight * (atLow - atHigh);
            second += weight * (inside + low * atLow - high * atHigh);
        }
        double shift = first / mass, shrink = second / mass - shift * shift;

        double[] mean = [.. _mean], gains = new double[Size];
        for (int i = 0; i < Size; i++) gains[i] = (i == Phase ? variance : _covariance[i, Phase]) / sd;
        double[,] covariance = (double[,])_covariance.Clone();
        covariance[Phase, Phase] = variance;
        for (int i = 0; i < Size; i++)
        {
            mean[i] += gains[i] * shift;
            for (int j = 0; j < Size; j++) covariance[i, j] += gains[i] * gains[j] * (shrink - 1);
        }

        // What is surprising beyond rounding is laid to the hands' spread; a slip is not.
        double told = (expected - Rounding) / expected;
        double surprise = Math.Min(off * off / expected, SurpriseLimit * SurpriseLimit) - 1;
        double spread = slipped ? Spread : Math.Clamp(Spread * PortableMath.Exp(Adapting * told * surprise / 2), 0.0001, 0.5);
        return new DriftFilter(Model, mean, covariance, spread);
    }

    /// <summary>
    /// Undoes the work since <paramref name="then"/>: the phase is what it was, but what was learnt of the hands stays.
    /// </summary>
    public DriftFilter RipBackTo(DriftFilter then)
    {
        ArgumentNullException.ThrowIfNull(then);
        double[] mean = [.. _mean];
        mean[Phase] = then.PhaseMean;
        double[,] covariance = (double[,])_covariance.Clone();
        for (int i = 0; i < Size; i++) covariance[i, Phase] = covariance[Phase, i] = 0;
        covariance[Phase, Phase] = then._covariance[Phase, Phase];
        return new DriftFilter(Model, mean, covariance, Spread);
    }

    /// <summary>The phase that one level of correction leads to in the mean.</summary>
    internal double MeanAfter(int stitches, double correction) =>
        PhaseMean + stitches * (BiasMean + GainMean * correction) + Carry(stitches).Carried * TensionMean;

    /// <summary>What a tension of 1 adds to the phase over some stitches, Σρ^j, and what is left of it, ρⁿ.</summary>
    private (double Carried, double Left) Carry(int stitches)
    {
        double rho = Model.Correlation;
        double left = stitches == 0 ? 1 : rho == 0 ? 0 : PortableMath.Exp(-stitches / Model.Memory);
        return (rho * (1 - left) / (1 - rho), left);
    }

    private void AddNoise(double[,] covariance, int stitches)
    {
        double rho = Model.Correlation, fresh = Spread * Spread * (1 - rho * rho);
        double phase = 0, both = 0, tension = 0;
        for (int i = 0; i < stitches; i++)
        {
            tension = rho * rho * tension + fresh;
            phase += 2 * rho * both + tension;
            both = rho * both + tension;
        }
        covariance[Phase, Phase] += phase + stitches * (Model.DyeVariance + Model.Slips);
        covariance[Phase, OfTension] += both;
        covariance[OfTension, Phase] += both;
        covariance[OfTension, OfTension] += tension;
    }

    /// <summary>Of the phases that look like the reading, the one next to what is expected.</summary>
    private double Nearest(int reading) => reading + Math.Round((PhaseMean - reading) / Model.Period) * Model.Period;
}
