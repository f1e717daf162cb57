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

    /// <summary>What was believed at the beginning.</summary>
    public DriftModel Model { get; }

    /// <summary>The hands' spread as the readings so far show it.</summary>
    public double Spread { get; }

    /// <summary>Mean phase error in stitches of yarn; positive: colours come early, because stitches took too much.</summary>
    public double PhaseMean => _mean[Phase];

    /// <summary><see cref="PhaseMean"/> from the nearest phase at which all looks as planned, in stitches: within half a period of 0.</summary>
    public double Off => PhaseMean - Math.Round(PhaseMean / Model.Period) * Model.Period;

    /// <summary>Standard deviation of <see cref="PhaseMean"/>, in stitches.</summary>
    public double PhaseSd => Math.Sqrt(_covariance[Phase, Phase]);

    /// <summary>The hands' constant departure from the planned yarn per stitch, relative; positive is looser.</summary>
    public double BiasMean => _mean[OfBias];

    /// <summary>Standard deviation of <see cref="BiasMean"/>.</summary>
    public double BiasSd => Math.Sqrt(_covariance[OfBias, OfBias]);

    /// <summary>The hands' passing departure at this stitch, relative; positive is looser.</summary>
    public double TensionMean => _mean[OfTension];

    /// <summary>Standard deviation of <see cref="TensionMean"/>.</summary>
    public double TensionSd => Math.Sqrt(_covariance[OfTension, OfTension]);

    /// <summary>The part of an asked-for correction that the hands make; 1 is all of it.</summary>
    public double GainMean => _mean[OfGain];

    /// <summary>Standard deviation of <see cref="GainMean"/>.</summary>
    public double GainSd => Math.Sqrt(_covariance[OfGain, OfGain]);

    /// <summary>At the piece's first stitch, before anything is read.</summary>
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
    public DriftFilter Observe(int reading) => Observe(reading, adapts: true, out _);

    /// <param name="reading">As in <see cref="Observe(int)"/>.</param>
    /// <param name="adapts">Whether the spread follows what is read.</param>
    /// <param name="mass">How likely this reading was beforehand.</param>
    internal DriftFilter Observe(int reading, bool adapts, out double mass)
    {
        if (Folded() is { } folded) return folded.Observe(reading, adapts, out mass);
        double off = Nearest(reading) - PhaseMean;
        double variance = _covariance[Phase, Phase];
        double expected = variance + Rounding;
        (mass, double first, double second) = Likelihood(off, Math.Sqrt(variance));
        double explained = mass;
        bool slipped = AsksForRecount(reading);
        if (slipped)
        {
            variance += off * off;
            (explained, first, second) = Likelihood(off, Math.Sqrt(variance));
        }
        double sd = Math.Sqrt(variance), shift = first / explained, shrink = second / explained - shift * shift;

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
        double spread = slipped || !adapts
            ? Spread
            : Math.Clamp(Spread * PortableMath.Exp(Adapting * told * surprise / 2), 0.0001, 0.5);
        return new DriftFilter(Model, mean, covariance, spread);
    }

    /// <summary>
    /// A phase that is less known than one of which nothing is known but that it lies within a period: which of its likenesses it is no
    /// reading tells, so that nothing is learnt from it of what led there. Nothing where it is better known.
    /// </summary>
    private DriftFilter? Folded()
    {
        double part = Model.Period / Math.Sqrt(12) / PhaseSd;
        if (part > 1 - 1e-12) return null;
        double[,] covariance = (double[,])_covariance.Clone();
        covariance[Phase, Phase] *= part * part;
        // Less than in proportion, so that it also ties the phase less to the rest.
        for (int i = 1; i < Size; i++) covariance[i, Phase] = covariance[Phase, i] *= part * part;
        return new DriftFilter(Model, _mean, covariance, Spread);
    }

    /// <summary>
    /// Undoes the work since <paramref name="then"/>: the phase is what it was, but what was learnt of the hands stays.
    /// </summary>
    public DriftFilter RipBackTo(DriftFilter then)
    {
        ArgumentNullException.ThrowIfNull(then);
        return Placed(then.PhaseMean, then._covariance[Phase, Phase]);
    }

    /// <summary>The yarn was joined anew where the plan has it: nothing of what was there before tells of the phase.</summary>
    /// <param name="error">Standard deviation of the phase then, in stitches, in [0, 50].</param>
    public DriftFilter Placed(double error) => Placed(0, Math.Pow(Guard.InRange(error, 0, 50, "stitches"), 2));

    private DriftFilter Placed(double phase, double variance)
    {
        double[] mean = [.. _mean];
        mean[Phase] = phase;
        double[,] covariance = (double[,])_covariance.Clone();
        for (int i = 0; i < Size; i++) covariance[i, Phase] = covariance[Phase, i] = 0;
        covariance[Phase, Phase] = variance;
        return new DriftFilter(Model, mean, covariance, Spread);
    }

    /// <summary>
    /// After something done that takes (positive) or gives back so much yarn beside the plan, in stitches, in [−50, 50]: an edge stitch
    /// added or skipped, a turning chain looser or tighter.
    /// </summary>
    /// <param name="stitches">In the mean.</param>
    /// <param name="error">Its standard deviation, in [0, 50].</param>
    public DriftFilter Shift(double stitches, double error = 0)
    {
        Guard.InRange(stitches, -50, 50, "stitches");
        Guard.InRange(error, 0, 50, "stitches");
        return Added(Phase, stitches, error);
    }

    /// <summary>
    /// After a change of hook that adds so much to the yarn per stitch, relative, in [−0.5, 0.5]; negative for a smaller hook.
    /// </summary>
    /// <param name="step">In the mean.</param>
    /// <param name="error">Its standard deviation, in [0, 0.5].</param>
    public DriftFilter ChangeHook(double step, double error)
    {
        Guard.InRange(step, -0.5, 0.5, "of the yarn per stitch");
        Guard.InRange(error, 0, 0.5, "of the yarn per stitch");
        return Added(OfBias, step, error);
    }

    private DriftFilter Added(int to, double amount, double error)
    {
        double[] mean = [.. _mean];
        mean[to] += amount;
        double[,] covariance = (double[,])_covariance.Clone();
        covariance[to, to] += error * error;
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

    /// <summary>
    /// Mass and moments, about the mean in standard deviations, of the normal under a likelihood that is level over each whole stitch
    /// about <paramref name="off"/>, and the broad outlier everywhere.
    /// </summary>
    private (double Mass, double First, double Second) Likelihood(double off, double sd)
    {
        double mass = Model.Outliers, first = 0, second = Model.Outliers;
        double low = (off - 1.5) / sd, below = NormalCurve.Below(low), density = NormalCurve.Density(low);
        for (int neighbour = -1; neighbour <= 1; neighbour++)
        {
            double weight = neighbour == 0 ? 1 - Model.Misreads : Model.Misreads / 2;
            double high = (off + neighbour + 0.5) / sd, belowHigh = NormalCurve.Below(high), densityHigh = NormalCurve.Density(high);
            double inside = belowHigh - below;
            mass += weight * inside;
            first += weight * (density - densityHigh);
            second += weight * (inside + low * density - high * densityHigh);
            (low, below, density) = (high, belowHigh, densityHigh);
        }
        return (mass, first, second);
    }

    /// <summary>Of the phases that look like the reading, the one next to what is expected.</summary>
    private double Nearest(int reading) => reading + Math.Round((PhaseMean - reading) / Model.Period) * Model.Period;
}
