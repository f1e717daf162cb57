using Dyepath.Core.Quantities;

namespace Dyepath.Core.Making.Drift;

/// <summary>The makers that a simulation draws, and how often things go wrong for them. Each default is a value to use as it is.</summary>
public sealed record MakerWorld
{
    /// <summary>Hands alike in all makers; <see cref="HandModel.Bias"/> is what all have, before <see cref="LargestBias"/>.</summary>
    public HandModel Hands { get; init; } = HandModel.Create(0.01, 50);

    /// <summary>Each maker's own bias is uniform within ± this, in [0, 0.2].</summary>
    public double LargestBias { get; init => field = Guard.InRange(value, 0, 0.2, "of the yarn per stitch", nameof(LargestBias)); } = 0.02;

    /// <summary>Each maker's hands make a part of the correction that she means: normal about this, in [0, 2].</summary>
    public double Gain { get; init => field = Guard.InRange(value, 0, 2, "of the correction", nameof(Gain)); } = 0.85;

    /// <summary>Its standard deviation, in [0, 1].</summary>
    public double GainSpread { get; init => field = Guard.InRange(value, 0, 1, "of the correction", nameof(GainSpread)); } = 0.15;

    /// <summary>See <see cref="SimulationSettings.DyeVariation"/>.</summary>
    public double Dye { get; init => field = Guard.InRange(value, 0, 0.5, "of the section's length", nameof(Dye)); } = 0.02;

    /// <summary>Readings that are one stitch off, in [0, 1].</summary>
    public double Misreads { get; init => field = Guard.InRange(value, 0, 1, "of the readings", nameof(Misreads)); } = 0.03;

    /// <summary>Stitches missed or doubled, alike often, in [0, 0.1].</summary>
    public double Slips { get; init => field = Guard.InRange(value, 0, 0.1, "of the stitches", nameof(Slips)); } = 0.0005;

    /// <summary>A row that under half matches, as she sees it, is ripped back, at most this often, in [0, 10].</summary>
    public int MostRipBacks { get; init => field = Guard.InRange(value, 0, 10, "times a row", nameof(MostRipBacks)); } = 2;

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

    /// <summary>What a filter is told: how makers are in general, not how this one is.</summary>
    public DriftModel Model(PlannedPiece piece) =>
        new DriftModel(Math.Max(Hands.Spread, 0.0001), Hands.Memory)
        {
            BiasSpread = LargestBias / Math.Sqrt(3),
            Gain = Gain,
            GainSpread = GainSpread,
            Misreads = Misreads,
            Slips = Slips,
        }.On(piece, Dye);
}
