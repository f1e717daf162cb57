using Dyepath.Core.Quantities;
using Dyepath.Core.Yarns;

namespace Dyepath.Core.Making.Drift;

/// <summary>What is believed of a maker and her yarn before the first stitch. Relative figures are of the planned yarn.</summary>
public sealed record DriftModel
{
    /// <param name="spread">See <see cref="HandModel.Spread"/>; in [0.0001, 0.5].</param>
    /// <param name="memory">See <see cref="HandModel.Memory"/>.</param>
    public DriftModel(double spread, double memory)
    {
        Spread = Guard.InRange(spread, 0.0001, 0.5, "of the yarn per stitch");
        Memory = memory;
        Correlation = HandModel.Create(spread, memory).Correlation;
    }

    /// <summary>Where the filter begins; it goes on to learn from what is read.</summary>
    public double Spread { get; private init; }

    /// <summary>Stitches; see <see cref="HandModel.Memory"/>.</summary>
    public double Memory { get; private init; }

    /// <summary>ρ, of one stitch's tension with the next one's, from <see cref="Memory"/>.</summary>
    public double Correlation { get; private init; }

    /// <summary>
    /// The maker's constant departure from the plan as far as it is known beforehand, in [−0.5, 0.5]; positive is looser. Two counted
    /// sequences of the maker's own yarn give an estimate of it.
    /// </summary>
    public double Bias { get; init => field = Guard.InRange(value, -0.5, 0.5, "of the yarn per stitch", nameof(Bias)); }

    /// <summary>Standard deviation of the maker's constant departure about <see cref="Bias"/>, in [0, 0.5].</summary>
    public double BiasSpread { get; init => field = Guard.InRange(value, 0, 0.5, "of the yarn per stitch", nameof(BiasSpread)); } = 0.01;

    /// <summary>How much of the correction that was asked for the hands make, in [0, 2].</summary>
    public double Gain { get; init => field = Guard.InRange(value, 0, 2, "of the correction", nameof(Gain)); } = 0.85;

    /// <summary>Standard deviation of <see cref="Gain"/> between makers, in [0, 1].</summary>
    public double GainSpread { get; init => field = Guard.InRange(value, 0, 1, "of the correction", nameof(GainSpread)); } = 0.15;

    /// <summary>Variance that uneven dye adds to the phase with every stitch, in square stitches, in [0, 10].</summary>
    public double DyeVariance { get; init => field = Guard.InRange(value, 0, 10, "square stitches", nameof(DyeVariance)); }

    /// <summary>Chance that a reading is one stitch off, either way alike, in [0, 1].</summary>
    public double Misreads { get; init => field = Guard.InRange(value, 0, 1, "of the readings", nameof(Misreads)); } = 0.03;

    /// <summary>Likelihood of a reading that follows from nothing else, in [0.00001, 0.1]: the broad outlier.</summary>
    public double Outliers { get; init => field = Guard.InRange(value, 0.00001, 0.1, "of the readings", nameof(Outliers)); } = 0.001;

    /// <summary>Stitches missed or doubled, in [0, 0.1] of all stitches.</summary>
    public double Slips { get; init => field = Guard.InRange(value, 0, 0.1, "of the stitches", nameof(Slips)); } = 0.0005;

    /// <summary>Phases that differ by this many stitches look alike, in [0.01, 1,000,000].</summary>
    public double Period { get; init => field = Guard.InRange(value, 0.01, 1_000_000, "stitches", nameof(Period)); } = 1_000_000;

    /// <summary>
    /// The yarn's part of the model: period, and the variance of a section's length of relative standard deviation
    /// <paramref name="dye"/> spread over its stitches, Σ(dye·L)²/ΣL.
    /// </summary>
    public DriftModel On(PlannedPiece piece, double dye)
    {
        ArgumentNullException.ThrowIfNull(piece);
        Guard.InRange(dye, 0, 0.5, "of the section's length");
        double squares = piece.Ring.Stretches.Sum(s => (double)s.Micro * s.Micro);
        return this with
        {
            Period = ColourRing.ToUnits((long)piece.Period),
            DyeVariance = dye * dye * squares / piece.Ring.Total / PlannedPiece.Stitch,
        };
    }

    /// <summary>The same yarn and readings with hands of which all but the gain is known.</summary>
    internal DriftModel Of(double spread, double memory, double bias)
    {
        var hands = new DriftModel(spread, memory);
        return this with { Spread = spread, Memory = memory, Correlation = hands.Correlation, Bias = bias, BiasSpread = 0 };
    }
}
