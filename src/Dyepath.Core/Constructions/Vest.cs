using System.Collections.Immutable;
using Dyepath.Core.Documents;
using Dyepath.Core.Edgings;
using Dyepath.Core.Fabrics;
using Dyepath.Core.Findings;
using Dyepath.Core.Garments;
using Dyepath.Core.Quantities;
using Dyepath.Core.Sizing;

namespace Dyepath.Core.Constructions;

/// <summary>A sleeveless vest: front and back with square armholes, and a neck.</summary>
/// <param name="BustEase">All round, beyond the bust.</param>
/// <param name="HipEase">All round, beyond the hip.</param>
/// <param name="BelowWaist">Body length is the chart's back waist length plus this.</param>
/// <param name="HipBelowWaist">A body that hangs at least this far below the waist reaches the hip, and hip plus ease counts too.</param>
/// <param name="Neck">Between the shoulders.</param>
/// <param name="UpperArmEase">Armhole depth is the larger of the chart's and half of upper arm plus this.</param>
public sealed record Vest(
    Ease BustEase, Length HipEase, Length BelowWaist, Length HipBelowWaist, Neck Neck, Length UpperArmEase) : GarmentShape
{
    public override string Name => "vest";

    public override ImmutableArray<BodyMeasure> Needs =>
    [
        .. Girth.Needs, BodyMeasure.BackWaistLength, BodyMeasure.ArmholeDepth, BodyMeasure.UpperArm, BodyMeasure.CrossBack,
        BodyMeasure.Head,
    ];

    public override ImmutableArray<PlanRule> Rules =>
    [
        PlanRule.Width, PlanRule.Length, PlanRule.ArmholeDepth, PlanRule.ArmholeInset, .. Neck.Rules,
        PlanRule.Locked, PlanRule.Gauge, PlanRule.Seam,
    ];

    public override string? PlainPiecesField => Neck.PlainPiecesField;

    internal static GarmentKind Kind { get; } = new(
        "Vest", "M13 16h4V8h4v7h6V8h4v8h4v24H13z", Document(),
        [
            .. TopFields.EaseAndLengths("15 cm"), TopFields.UpperArmEaseField,
            .. NeckChoice.Sleeveless.Fields,
        ],
        [EdgingPlace.Hem, EdgingPlace.Neck, EdgingPlace.Armholes]);

    private BodyGirth Girth => new(BustEase, HipEase, BelowWaist >= HipBelowWaist);

    public override Construction Construct(GarmentSpec garment) => new(
        [Panels(), .. Neck.Pieces],
        Neck.Joined(ShoulderedBody.Joins),
        [ShoulderedBody.Shoulders, .. Neck.Filling, ShoulderedBody.Sides],
        [ShoulderedBody.Hem, .. Neck.Edgings, ShoulderedBody.Armholes])
    {
        Worn = [new(PieceId.Front), .. Neck.Worn],
    };

    public override Length Target(GarmentMeasure measure, TargetContext size)
    {
        ArgumentNullException.ThrowIfNull(size);
        var body = size.Body;
        return measure switch
        {
            GarmentMeasure.Width => Girth.Target(body),
            GarmentMeasure.Length => body[BodyMeasure.BackWaistLength] + BelowWaist,
            GarmentMeasure.ArmholeDepth => ShoulderedBody.ArmholeDepth(body, UpperArmEase),
            GarmentMeasure.ArmholeInset => ArmholeInset(size),
            _ => Neck.Target(measure, size) ?? throw new ArgumentOutOfRangeException(nameof(measure), measure, "Not a measure of a vest."),
        };
    }

    /// <summary>What counts of neck and armhole may take of a shoulder beyond what is wished for (common practice, no source).</summary>
    private static readonly Length ForCounts = Length.FromCentimetres(1);

    /// <summary>Up to the cross back, or as far as the neck leaves a shoulder.</summary>
    private Length ArmholeInset(TargetContext size)
    {
        var half = size.Finished[GarmentMeasure.Width] / 2;
        var shoulder = GarmentFit.LeastShoulder(size.Wearer) + ForCounts;
        var besideNeck = half - Neck.Target(GarmentMeasure.NeckWidth, size)!.Value - 2 * shoulder;
        return Length.Max(Length.Zero, Length.Min(half - size.Body[BodyMeasure.CrossBack], besideNeck) / 2);
    }

    public override Length? Floor(GarmentMeasure measure, TargetContext size)
    {
        ArgumentNullException.ThrowIfNull(size);
        return measure == GarmentMeasure.Width ? Girth.Floor(size.Body) : null;
    }

    public override ImmutableArray<WornFit> Worn(TargetContext size)
    {
        ArgumentNullException.ThrowIfNull(size);
        var (body, finished) = (size.Body, size.Finished);
        var neck = finished[GarmentMeasure.NeckWidth];
        var (depth, inset) = (finished[GarmentMeasure.ArmholeDepth], finished[GarmentMeasure.ArmholeInset]);
        return
        [
            .. Neck.Fits(size),
            ShoulderedBody.ShoulderFit(finished[GarmentMeasure.Width] / 4 - inset - neck / 2, BodyMeasure.CrossBack, size),
            new(FitPart.Armhole, 2 * (depth + inset), BodyMeasure.UpperArm, body[BodyMeasure.UpperArm], "garment.upperArmEase", Mend.UpperArmEase),
            .. Girth.Worn(finished[GarmentMeasure.Width], body),
        ];
    }

    public override WornFit? Passes(OpeningId opening, TargetContext size) => opening == OpeningId.Neck ? Neck.Passes(size) : null;

    public override ImmutableArray<Finding> Faults() => BustEase.Faults("garment.ease");

    private PieceGroup Panels() => new(
        "panel",
        [new(PieceId.Front), new(PieceId.Back, MayTurn: true)],
        new(GarmentMeasure.Width, 2, []),
        new(GarmentMeasure.Length, 1, [EdgingPlace.Hem]),
        Working.Turned,
        true)
    {
        LetOff = Neck.LetOff,
        Openings =
        [
            Neck.Opening,
            new(OpeningId.Armhole, [PieceSide.Left, PieceSide.Right], OpeningAt.End, GarmentMeasure.ArmholeDepth, EdgingPlace.Armholes, "garment.belowWaist")
            {
                Cut = new(Depths, Cut.Square),
            },
        ],
    };

    private static ImmutableSortedDictionary<PieceId, GarmentMeasure> Depths => ImmutableSortedDictionary<PieceId, GarmentMeasure>.Empty
        .Add(PieceId.Front, GarmentMeasure.ArmholeInset).Add(PieceId.Back, GarmentMeasure.ArmholeInset);

    private static ObjectShape<GarmentSpec> Document() => new("vest", "A sleeveless vest: square armholes, a neck.", o =>
    {
        GarmentFields.ShapeName(o, "vest");
        var ease = TopFields.BustEase(o, g => ((Vest)g.Shape).BustEase, "classic");
        var hipEase = TopFields.HipEase(o, g => ((Vest)g.Shape).HipEase);
        var below = TopFields.BelowWaist(o, g => ((Vest)g.Shape).BelowWaist, 15);
        var hip = TopFields.HipBelowWaist(o, g => ((Vest)g.Shape).HipBelowWaist);
        var form = NeckChoice.Sleeveless.FormField(o, g => ((Vest)g.Shape).Neck);
        var neck = NeckChoice.Sleeveless.Document(o, form, g => ((Vest)g.Shape).Neck);
        var arm = TopFields.UpperArmEase(o, g => ((Vest)g.Shape).UpperArmEase);
        var spec = GarmentFields.Turned(o, ["front", "back"], [EdgingPlace.Hem, EdgingPlace.Neck, EdgingPlace.Armholes]);
        return v => spec(v, new Vest(ease.From(v), hipEase.From(v), below.From(v), hip.From(v), neck(v), arm.From(v)));
    });
}
