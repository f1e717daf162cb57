using System.Collections.Immutable;
using Dyepath.Core.Documents;
using Dyepath.Core.Edgings;
using Dyepath.Core.Fabrics;
using Dyepath.Core.Findings;
using Dyepath.Core.Garments;
using Dyepath.Core.Quantities;
using Dyepath.Core.Sizing;

namespace Dyepath.Core.Constructions;

/// <summary>
/// A skirt: one panel joined into a tube, straight or widened by gores below the hip, its waist drawn in by a casing or a cord.
/// </summary>
/// <param name="HipEase">Added to the hip, which it has to pass.</param>
/// <param name="Length">From waist to hem, edgings included.</param>
/// <param name="Flare">By how much the hem is wider than the hip; none: straight.</param>
/// <param name="HipDepth">From the waist down to the hip, where gores end.</param>
public sealed record Skirt(Length HipEase, Length Length, Length Flare, Length HipDepth) : GarmentShape
{
    /// <summary>From the waist to the fullest part of the hip (18 to 22 cm in adults; common practice, no source).</summary>
    private static readonly Length UsualHipDepth = Quantities.Length.FromCentimetres(20);

    /// <summary>Below the hip, so that a flare is no frill (common practice, no source).</summary>
    private static readonly Length LeastFlared = Quantities.Length.FromCentimetres(10);

    public override string Name => "skirt";

    public override ImmutableArray<BodyMeasure> Needs => [BodyMeasure.Hip, BodyMeasure.Waist];

    public override ImmutableArray<PlanRule> Rules =>
    [
        PlanRule.Width,
        .. IsFlared ? [PlanRule.HemWidth] : ImmutableArray<PlanRule>.Empty,
        PlanRule.Length, PlanRule.Locked, PlanRule.Gauge, PlanRule.Seam,
    ];

    internal bool IsFlared => Flare > Quantities.Length.Zero;

    internal static GarmentKind Kind { get; } = new(
        "Skirt", "M15 8h18v5l3 27H12l3-27zM15 13h18", Document(),
        [
            new("Ease and lengths", "hipEase", "Ease at the hip", Usual: "6 cm"),
            new("Ease and lengths", "length", "From waist to hem", Usual: "55 cm"),
            new("Ease and lengths", "flare", "Hem wider than the hip by", Usual: "0 cm", Hint: "By gores, worked sideways."),
            new("Ease and lengths", "hipDepth", "From waist to hip", Usual: "20 cm", Hint: "Gores end there."),
        ],
        [EdgingPlace.Waist, EdgingPlace.Hem], [new(EdgingPlace.Waist, EdgingLibrary.ElasticCasing, null)]);

    public override Construction Construct(GarmentSpec garment) => new(
        [
            new("panel", [new(PieceId.Panel)], new(IsFlared ? GarmentMeasure.HemWidth : GarmentMeasure.Width, 1, []),
                new(GarmentMeasure.Length, 1, [EdgingPlace.Waist, EdgingPlace.Hem]), Working.Turned, true)
            {
                Gores = IsFlared ? new(GarmentMeasure.Width, HipDepth, EdgeId.Waist, "garment.flare") : null,
            },
        ],
        [new(SeamId.BackSeam, [new(PieceId.Panel, PieceSide.Right)], [new(PieceId.Panel, PieceSide.Left)])],
        [new(SewingManner.IntoTube, [SeamId.BackSeam])],
        [
            new(EdgingPlace.Waist, 1, [new(EdgeId.Waist, new PieceEdge(PieceId.Panel, PieceSide.Top).Reverse())], SeamId.BackSeam),
            new(EdgingPlace.Hem, 1, [new(EdgeId.Hem, new(PieceId.Panel, PieceSide.Bottom))], SeamId.BackSeam),
        ])
    {
        Held = new(EdgingPlace.Waist, BodyMeasure.Waist),
        Worn = [new(PieceId.Panel, Portion.LeftHalf)],
    };

    public override Length Target(GarmentMeasure measure, TargetContext size)
    {
        ArgumentNullException.ThrowIfNull(size);
        return measure switch
        {
            GarmentMeasure.Width => size.Body[BodyMeasure.Hip] + HipEase,
            GarmentMeasure.HemWidth => size.Body[BodyMeasure.Hip] + HipEase + Flare,
            GarmentMeasure.Length => Length,
            _ => throw new ArgumentOutOfRangeException(nameof(measure), measure, "Not a measure of a skirt."),
        };
    }

    /// <summary>Round the hip, the largest body of the range.</summary>
    public override Length? Floor(GarmentMeasure measure, TargetContext size)
    {
        ArgumentNullException.ThrowIfNull(size);
        return measure == GarmentMeasure.Width ? size.Body.Floor(BodyMeasure.Hip, HipEase) : null;
    }

    public override ImmutableArray<WornFit> Worn(TargetContext size)
    {
        ArgumentNullException.ThrowIfNull(size);
        return
        [
            new(FitPart.Waist, size.Finished[GarmentMeasure.Width], BodyMeasure.Hip, size.Body[BodyMeasure.Hip], "garment.hipEase", Mend.HipEase),
        ];
    }

    public override ImmutableArray<Finding> Faults() => IsFlared && HipDepth + LeastFlared > Length
        ? [new(FindingLevel.Fault, "garment.hipDepth", FormattableString.Invariant($"Below the hip the skirt needs {LeastFlared.Centimetres:0} cm at least to widen in: make it longer, the hip nearer to the waist, or leave the flare out."))]
        : [];

    private static ObjectShape<GarmentSpec> Document() => new("skirt", "A skirt: one panel, straight or flared by gores, drawn in at the waist.", o =>
    {
        GarmentFields.ShapeName(o, "skirt");
        var ease = o.Optional("hipEase", "Added to the hip.", Measured.Ease, g => ((Skirt)g.Shape).HipEase, Quantities.Length.FromCentimetres(6));
        var length = o.Optional("length", "From waist to hem.", Measured.Body, g => ((Skirt)g.Shape).Length, Quantities.Length.FromCentimetres(55));
        var flare = o.Optional(
            "flare", "By how much the hem is wider than the hip. More than none is made by gores: short rows, worked sideways.",
            Measured.Step, g => ((Skirt)g.Shape).Flare, Quantities.Length.Zero);
        var depth = o.Optional("hipDepth", "From the waist down to the hip, where gores end.", Measured.Body, g => ((Skirt)g.Shape).HipDepth, UsualHipDepth);
        var spec = GarmentFields.Turned(o, ["panel"], [EdgingPlace.Waist, EdgingPlace.Hem]);
        return v => spec(v, new Skirt(ease.From(v), length.From(v), flare.From(v), depth.From(v)));
    });
}
