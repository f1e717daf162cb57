using System.Collections.Immutable;
using Dyepath.Core.Documents;
using Dyepath.Core.Edgings;
using Dyepath.Core.Fabrics;
using Dyepath.Core.Garments;
using Dyepath.Core.Quantities;
using Dyepath.Core.Sizing;

namespace Dyepath.Core.Constructions;

/// <summary>A hat of one piece joined into a tube, its crown narrowed by gores or as wide as the brim, and drawn together.</summary>
/// <param name="Smaller">Share of the head by which it is smaller, so that it holds.</param>
/// <param name="Height">From brim to crown, edging included.</param>
/// <param name="Gored">Short rows narrow the crown.</param>
public sealed record Hat(double Smaller, Length Height, bool Gored) : GarmentShape
{
    /// <summary>A hat is made a little under the head (5 %, common practice, no source).</summary>
    private const double UsualSmaller = 0.05;

    public override string Name => "hat";

    public override ImmutableArray<BodyMeasure> Needs => [BodyMeasure.Head];

    public override ImmutableArray<PlanRule> Rules =>
    [
        PlanRule.Circumference, PlanRule.Height,
        .. Gored ? [PlanRule.CrownEdge] : ImmutableArray<PlanRule>.Empty,
        PlanRule.Locked, PlanRule.Gauge, PlanRule.Seam,
    ];

    internal static GarmentKind Kind { get; } = new(
        "Hat", "M10 36h28v-5H10zM12 31c0-22 24-22 24 0M24 12v-3", Document(),
        [
            new("Measures", "height", "From brim to crown", Usual: "23 cm"),
            new("Measures", "smaller", "Smaller than the head by", FieldKind.Share, Usual: "5 %"),
            new("Measures", "crown", "Crown", FieldKind.Choice, Usual: "drawn", Hint: "Gores are short rows, worked sideways.")
            {
                Choices = [("drawn", "as wide as the brim, drawn together"), ("gored", "narrowed by gores")],
            },
        ],
        [EdgingPlace.Brim]);

    public override Construction Construct(GarmentSpec garment) => new(
        [
            new("panel", [new(PieceId.Panel)], new(GarmentMeasure.Circumference, 1, []),
                new(GarmentMeasure.Height, 1, [EdgingPlace.Brim]), Working.Turned, true)
            {
                Gores = Gored ? new(GarmentMeasure.CrownEdge, Length.Zero, EdgeId.Crown, "garment.crown") { Cone = 1 / (2 * Math.PI) } : null,
            },
        ],
        [new(SeamId.BackSeam, [new(PieceId.Panel, PieceSide.Right)], [new(PieceId.Panel, PieceSide.Left)])],
        [new(SewingManner.IntoTube, [SeamId.BackSeam]), new(SewingManner.DrawTogether, [])],
        [new(EdgingPlace.Brim, 1, [new(EdgeId.Brim, new(PieceId.Panel, PieceSide.Bottom))], SeamId.BackSeam)])
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
            _ => throw new ArgumentOutOfRangeException(nameof(measure), measure, "Not a measure of a hat."),
        };
    }

    public override ImmutableArray<WornFit> Worn(TargetContext size) => [GarmentFit.Brim(size)];

    private static ObjectShape<GarmentSpec> Document() => new("hat", "A hat: one piece, its crown drawn together.", o =>
    {
        GarmentFields.ShapeName(o, "hat");
        var smaller = o.Optional("smaller", "Share of the head by which it is smaller.", Measured.Share, g => ((Hat)g.Shape).Smaller, UsualSmaller);
        var height = o.Optional("height", "From brim to crown.", Measured.Body, g => ((Hat)g.Shape).Height, Length.FromCentimetres(23));
        var gored = o.Optional(
            "crown", "drawn: as wide as the brim, and drawn together; gored: narrowed by gores, which are short rows worked sideways, and what is left drawn together.",
            new ChoiceShape<bool>(("drawn", false), ("gored", true)), g => ((Hat)g.Shape).Gored, false);
        var spec = GarmentFields.Turned(o, ["panel"], [EdgingPlace.Brim]);
        return v => spec(v, new Hat(smaller.From(v), height.From(v), gored.From(v)));
    });
}
