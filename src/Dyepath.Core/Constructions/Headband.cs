using System.Collections.Immutable;
using Dyepath.Core.Documents;
using Dyepath.Core.Edgings;
using Dyepath.Core.Fabrics;
using Dyepath.Core.Garments;
using Dyepath.Core.Quantities;
using Dyepath.Core.Sizing;

namespace Dyepath.Core.Constructions;

/// <summary>A headband or ear warmer: one strip joined into a ring.</summary>
/// <param name="Smaller">Share of the head by which it is smaller, so that it holds.</param>
/// <param name="Height">From edge to edge, edgings included.</param>
public sealed record Headband(double Smaller, Length Height) : GarmentShape
{
    /// <summary>With no crown to hold it, it is made smaller than a hat (2.5 to 5 cm under the head; common practice, no source).</summary>
    private const double UsualSmaller = 0.08;

    /// <summary>So that it covers the ears (9 to 12 cm; common practice, no source).</summary>
    private static readonly Length UsualHeight = Length.FromCentimetres(11);

    public override string Name => "headband";

    public override ImmutableArray<BodyMeasure> Needs => [BodyMeasure.Head];

    public override ImmutableArray<PlanRule> Rules =>
        [PlanRule.Circumference, PlanRule.Height, PlanRule.Locked, PlanRule.Gauge, PlanRule.Seam];

    internal static GarmentKind Kind { get; } = new(
        "Headband or ear warmer", "M8 20c0-4 32-4 32 0v9c0 4-32 4-32 0zM8 20c0 4 32 4 32 0", Document(),
        [
            new("Measures", "height", "From edge to edge", Usual: "11 cm", Hint: "9 to 12 cm cover the ears."),
            new("Measures", "smaller", "Smaller than the head by", FieldKind.Share, Usual: "8 %"),
        ],
        [EdgingPlace.Brims]);

    public override Construction Construct(GarmentSpec garment) => new(
        [
            new("panel", [new(PieceId.Panel)], new(GarmentMeasure.Circumference, 1, []),
                new(GarmentMeasure.Height, 1, [EdgingPlace.Brims, EdgingPlace.Brims]), Working.Turned, true),
        ],
        [new(SeamId.BackSeam, [new(PieceId.Panel, PieceSide.Right)], [new(PieceId.Panel, PieceSide.Left)])],
        [new(SewingManner.IntoTube, [SeamId.BackSeam])],
        [new(EdgingPlace.Brims, 2, [new(EdgeId.Brim, new(PieceId.Panel, PieceSide.Bottom))], SeamId.BackSeam)])
    {
        Worn = [new(PieceId.Panel, Portion.LeftHalf)],
    };

    public override Length Target(GarmentMeasure measure, TargetContext size)
    {
        ArgumentNullException.ThrowIfNull(size);
        return measure switch
        {
            GarmentMeasure.Circumference => size.Body[BodyMeasure.Head] * (1 - Smaller),
            GarmentMeasure.Height => Height,
            _ => throw new ArgumentOutOfRangeException(nameof(measure), measure, "Not a measure of a headband."),
        };
    }

    public override ImmutableArray<WornFit> Worn(TargetContext size) => [GarmentFit.Brim(size)];

    private static ObjectShape<GarmentSpec> Document() => new("headband", "A headband or ear warmer: one strip, joined into a ring.", o =>
    {
        GarmentFields.ShapeName(o, "headband");
        var smaller = o.Optional(
            "smaller", "Share of the head by which it is smaller.", Measured.Share, g => ((Headband)g.Shape).Smaller, UsualSmaller);
        var height = o.Optional("height", "From edge to edge.", Measured.Body, g => ((Headband)g.Shape).Height, UsualHeight);
        var spec = GarmentFields.Turned(o, ["panel"], [EdgingPlace.Brims]);
        return v => spec(v, new Headband(smaller.From(v), height.From(v)));
    });
}
