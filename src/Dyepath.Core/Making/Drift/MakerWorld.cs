using Dyepath.Core.Planning;
using Dyepath.Core.Quantities;

namespace Dyepath.Core.Making.Drift;

/// <summary>The makers that a simulation draws, and how often things go wrong for them. Each default is a value to use as it is.</summary>
public sealed record MakerWorld
{
    /// <summary>Hands alike in all makers; <see cref="HandModel.Bias"/> is what all have, before <see cref="LargestBias"/>.</summary>
    public HandModel Hands { get; init; } = HandModel.Create(0.01, 50);

    /// <summary>Each maker's own bias is uniform within ± this, in [0, 0.2].</summary>
    public double LargestBias { get; init => field = Guard.InRange(value, 0, 0.2, "of the yarn per stitch", nameof(LargestBias)); } = MadeWell.LargestBias;

    /// <summary>Each maker's hands make a part of the correction that she means: normal about this, in [0, 2].</summary>
    public double Gain { get; init => field = Guard.InRange(value, 0, 2, "of the correction", nameof(Gain)); } = MadeWell.Gain;

    /// <summary>Its standard deviation, in [0, 1].</summary>
    public double GainSpread { get; init => field = Guard.InRange(value, 0, 1, "of the correction", nameof(GainSpread)); } = MadeWell.GainSpread;

    /// <summary>See <see cref="SimulationSettings.DyeVariation"/>.</summary>
    public double Dye { get; init => field = Guard.InRange(value, 0, 0.5, "of the section's length", nameof(Dye)); } = 0.02;

    /// <summary>Readings that are one stitch off, in [0, 1].</summary>
    public double Misreads { get; init => field = Guard.InRange(value, 0, 1, "of the readings", nameof(Misreads)); } = MadeWell.Misreads;

    /// <summary>Stitches missed or doubled, alike often, in [0, 0.1].</summary>
    public double Slips { get; init => field = Guard.InRange(value, 0, 0.1, "of the stitches", nameof(Slips)); } = 0.0005;

    /// <summary>A row that under half matches, as she sees it, is ripped back, at most this often, in [0, 10].</summary>
    public int MostRipBacks { get; init => field = Guard.InRange(value, 0, 10, "times a row", nameof(MostRipBacks)); } = 2;

    /// <summary>
    /// As <see cref="DriftPlace.Turn"/>: what makers who are advised can do with a turning chain, as exactly as with their stitches.
    /// </summary>
    public double Turn { get; init => field = Guard.InRange(value, 0, 5, "stitches", nameof(Turn)); }

    /// <summary>Whether they may skip or add an edge stitch where a row begins.</summary>
    public bool EdgeStitch { get; init; }

    /// <summary>As <see cref="DriftPlace.HookStep"/>; in them it is normal about this, with half of it for a standard deviation.</summary>
    public double HookStep { get; init => field = Guard.InRange(value, 0, 0.5, "of the yarn per stitch", nameof(HookStep)); }

    /// <summary>The world without what <see cref="TensionSimulation"/> leaves out.</summary>
    public static MakerWorld Plain(HandModel hands, double dye) => new()
    {
        Hands = hands,
        LargestBias = 0,
        Gain = 1,
        GainSpread = 0,
        Dye = dye,
        Misreads = 0,
        Slips = 0,
        MostRipBacks = 0,
    };

    /// <summary>Makers as a filter believes this one to be.</summary>
    /// <param name="filter">What is known of her.</param>
    /// <param name="hands">As <see cref="HandModel.LargestCorrection"/>.</param>
    /// <param name="dye">As <see cref="Dye"/>.</param>
    public static MakerWorld Of(DriftFilter filter, double hands, double dye)
    {
        ArgumentNullException.ThrowIfNull(filter);
        return new MakerWorld
        {
            Hands = HandModel.Create(filter.Spread, filter.Model.Memory, Math.Clamp(filter.BiasMean, -0.5, 0.5), hands),
            LargestBias = Math.Min(filter.BiasSd * Math.Sqrt(3), 0.2),
            Gain = Math.Clamp(filter.GainMean, 0, 2),
            GainSpread = Math.Min(filter.GainSd, 1),
            Dye = dye,
            Misreads = filter.Model.Misreads,
            Slips = filter.Model.Slips,
        };
    }

    /// <summary>The filter's parameters: those of makers in general, not of this one.</summary>
    public DriftModel Model(PlannedPiece piece) =>
        new DriftModel(Math.Max(Hands.Spread, 0.0001), Hands.Memory)
        {
            Bias = Hands.Bias,
            BiasSpread = LargestBias / Math.Sqrt(3),
            Gain = Gain,
            GainSpread = GainSpread,
            Misreads = Misreads,
            Slips = Slips,
        }.On(piece, Dye);
}
