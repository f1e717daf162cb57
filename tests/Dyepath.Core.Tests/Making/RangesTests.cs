using Dyepath.Core.Making;
using Dyepath.Core.Making.Drift;

namespace Dyepath.Core.Tests.Making;

/// <summary>What can be said of hands, makers and simulations: each in its range, refused by its own name and told in its own unit.</summary>
public sealed class RangesTests
{
    private static readonly DriftModel Model = new(0.01, 50);

    private static readonly PlannedPiece Piece = Pieces.Of([5, 4, 6, 7], 20, 10);

    public static TheoryData<string, double, double, string> Ranges => new()
    {
        { "World.LargestBias", 0, 0.2, "of the yarn per stitch" },
        { "World.Gain", 0, 2, "of the correction" },
        { "World.GainSpread", 0, 1, "of the correction" },
        { "World.Dye", 0, 0.5, "of the section's length" },
        { "World.Misreads", 0, 1, "of the readings" },
        { "World.Slips", 0, 0.1, "of the stitches" },
        { "World.MostRipBacks", 0, 10, "times a row" },
        { "World.Turn", 0, 5, "stitches" },
        { "World.HookStep", 0, 0.5, "of the yarn per stitch" },
        { "Place.LargestCorrection", 0.001, 0.5, "of the yarn per stitch" },
        { "Place.Turn", 0, 5, "stitches" },
        { "Place.HookStep", 0, 0.5, "of the yarn per stitch" },
        { "Model.Bias", -0.5, 0.5, "of the yarn per stitch" },
        { "Model.BiasSpread", 0, 0.5, "of the yarn per stitch" },
        { "Model.Gain", 0, 2, "of the correction" },
        { "Model.GainSpread", 0, 1, "of the correction" },
        { "Model.DyeVariance", 0, 10, "square stitches" },
        { "Model.Misreads", 0, 1, "of the readings" },
        { "Model.Outliers", 0.00001, 0.1, "of the readings" },
        { "Model.Slips", 0, 0.1, "of the stitches" },
        { "Model.Period", 0.01, 1_000_000, "stitches" },
        { "Settings.Trials", 1, 1_000_000, "trials" },
        { "Settings.DyeVariation", 0, 0.5, "of the section's length" },
        { "Settings.GoodShare", 0, 1, "as a share" },
        { "Settings.Workers", 1, 256, "workers" },
    };

    [Theory]
    [MemberData(nameof(Ranges))]
    public void A_value_is_held_to_its_range(string what, double least, double most, string unit)
    {
        foreach (var inside in new[] { least, most })
            Assert.NotNull(Of(what, inside));
        foreach (var outside in new[] { least - 1e-7, most + 1e-7 }.Concat(Of(what, most) is (_, true) ? [least - 1, most + 1] : []))
        {
            if (Of(what, most) is (_, true) && outside != Math.Round(outside))
                continue;
            var refused = Assert.ThrowsAny<ArgumentOutOfRangeException>(() => Of(what, outside));
            Assert.Equal(what[(what.IndexOf('.', StringComparison.Ordinal) + 1)..], refused.ParamName);
            Assert.Contains(unit, refused.Message, StringComparison.Ordinal);
        }
    }

    /// <returns>Whether it is a whole number, too.</returns>
    private static (object Made, bool IsWhole) Of(string what, double value) => what switch
    {
        "World.LargestBias" => (new MakerWorld { LargestBias = value }, false),
        "World.Gain" => (new MakerWorld { Gain = value }, false),
        "World.GainSpread" => (new MakerWorld { GainSpread = value }, false),
        "World.Dye" => (new MakerWorld { Dye = value }, false),
        "World.Misreads" => (new MakerWorld { Misreads = value }, false),
        "World.Slips" => (new MakerWorld { Slips = value }, false),
        "World.MostRipBacks" => (new MakerWorld { MostRipBacks = (int)value }, true),
        "World.Turn" => (new MakerWorld { Turn = value }, false),
        "World.HookStep" => (new MakerWorld { HookStep = value }, false),
        "Place.LargestCorrection" => (new DriftPlace(Piece, 0) { LargestCorrection = value }, false),
        "Place.Turn" => (new DriftPlace(Piece, 0) { Turn = value }, false),
        "Place.HookStep" => (new DriftPlace(Piece, 0) { HookStep = value }, false),
        "Model.Bias" => (Model with { Bias = value }, false),
        "Model.BiasSpread" => (Model with { BiasSpread = value }, false),
        "Model.Gain" => (Model with { Gain = value }, false),
        "Model.GainSpread" => (Model with { GainSpread = value }, false),
        "Model.DyeVariance" => (Model with { DyeVariance = value }, false),
        "Model.Misreads" => (Model with { Misreads = value }, false),
        "Model.Outliers" => (Model with { Outliers = value }, false),
        "Model.Slips" => (Model with { Slips = value }, false),
        "Model.Period" => (Model with { Period = value }, false),
        "Settings.Trials" => (new SimulationSettings { Trials = (int)value }, true),
        "Settings.DyeVariation" => (new SimulationSettings { DyeVariation = value }, false),
        "Settings.GoodShare" => (new SimulationSettings { GoodShare = value }, false),
        "Settings.Workers" => (new SimulationSettings { Workers = (int)value }, true),
        _ => throw new ArgumentOutOfRangeException(nameof(what), what, "Not asked for."),
    };
}
