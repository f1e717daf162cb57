using System.Collections.Immutable;
using Dyepath.Core.Edgings;
using Dyepath.Core.Garments;
using Dyepath.Core.Quantities;
using Dyepath.Core.Sizing;

namespace Dyepath.Core.Planning;

/// <summary>The finished measure that a piece's stitches run along, in every size.</summary>
/// <param name="Axis">Along the stitches.</param>
/// <param name="Edges">Sewn edges that hide stitches.</param>
/// <param name="Targets">Finished, edgings and all.</param>
/// <param name="Pins">Counts that are fixed for a size.</param>
internal sealed record StitchMeasure(
    GarmentMeasure Measure, Axis Axis, int Edges, BodySizes? Bodies, ImmutableArray<string> Names, ImmutableArray<Length> Targets,
    ImmutableArray<int?> Pins)
{
    /// <summary>A measure of a child's garment is this large in an adult's (common practice, no source).</summary>
    private static readonly ImmutableDictionary<GarmentMeasure, Length> OfAdult = new Dictionary<GarmentMeasure, Length>
    {
        [GarmentMeasure.Width] = Length.FromCentimetres(100),
        [GarmentMeasure.BackWidth] = Length.FromCentimetres(50),
        [GarmentMeasure.Length] = Length.FromCentimetres(60),
        [GarmentMeasure.PanelWidth] = Length.FromCentimetres(50),
        [GarmentMeasure.WristToWrist] = Length.FromCentimetres(120),
        [GarmentMeasure.SleeveWidth] = Length.FromCentimetres(40),
        [GarmentMeasure.SleeveLength] = Length.FromCentimetres(45),
    }.ToImmutableDictionary();

    /// <summary>Pieces that make up the measure: 2 for a girth of two panels.</summary>
    public int Panels { get; init; } = 1;

    /// <summary>The panels are a front and a back, which may have side bands and may differ.</summary>
    public bool MayDiffer { get; init; }

    /// <summary>The least that is accepted, by size; <c>default</c> where anything is.</summary>
    public ImmutableArray<Length> Floors { get; init; }

    /// <summary>The fewest stitches that a piece can have, by size; <c>default</c> where any will do.</summary>
    public ImmutableArray<int> Fewest { get; init; }

    /// <summary>The edging that lengthens the measure; missing where none does.</summary>
    public EdgingPlace? Edging { get; init; }

    /// <summary>How often the edging lengthens it.</summary>
    public int EdgingTimes { get; init; } = 1;

    /// <summary>What other edgings add to it.</summary>
    public Length Further { get; init; }

    /// <summary>What edgings add to it altogether.</summary>
    /// <param name="rounds">Of the edging that may vary; missing: as wished.</param>
    public Length Edgings(SharedFabric shared, int? rounds = null) =>
        Further + (Edging is { } place ? EdgingTimes * shared.EdgingDepth(place, rounds) : Length.Zero);

    /// <summary>Goes round a body: sizes must become wider, and too little weighs more than too much.</summary>
    public bool IsGirth { get; init; }

    /// <summary>The lean that other pieces of the pattern have; missing where this one is free.</summary>
    public double? Lean { get; init; }

    /// <summary>An error of so many centimetres is to a size what 1 cm is to an adult's; <c>default</c> for adults.</summary>
    public ImmutableArray<double> Tolerances =>
        Bodies is { Wearer: var who } && (who & Wearers.Adult) == 0 && OfAdult.TryGetValue(Measure, out var adult)
            ? [.. Targets.Select(t => Math.Clamp(t / adult, 0.1, 1))]
            : default;
}
