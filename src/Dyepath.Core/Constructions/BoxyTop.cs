using System.Collections.Immutable;
using Dyepath.Core.Documents;
using Dyepath.Core.Edgings;
using Dyepath.Core.Fabrics;
using Dyepath.Core.Findings;
using Dyepath.Core.Garments;
using Dyepath.Core.Quantities;
using Dyepath.Core.Sizing;

namespace Dyepath.Core.Constructions;

/// <summary>A boxy pullover or tunic: two rectangular panels, a neck, and perhaps rectangular sleeves.</summary>
/// <param name="BustEase">All round, beyond the bust.</param>
/// <param name="HipEase">All round, beyond the hip.</param>
/// <param name="BelowWaist">Body length is the chart's back waist length plus this.</param>
/// <param name="HipBelowWaist">A body that hangs at least this far below the waist reaches the hip, and hip plus ease counts too.</param>
/// <param name="Neck">Between the shoulders.</param>
/// <param name="UpperArmEase">Armhole depth is the larger of the chart's and half of upper arm plus this.</param>
/// <param name="Sleeves">Missing: none, so that the armholes can be edged.</param>
public sealed record BoxyTop(
    Ease BustEase,
    Length HipEase,
    Length BelowWaist,
    Length HipBelowWaist,
    Neck Neck,
    Length UpperArmEase,
    SleeveSpec? Sleeves) : GarmentShape
{
    /// <summary>What the pattern calls it: a tunic, or else a pullover.</summary>
    public bool IsTunic { get; init; }

    public override string Name => IsTunic ? "tunic" : "pullover";

    public override ImmutableArray<BodyMeasure> Needs =>
    [
        .. Girth.Needs, BodyMeasure.BackWaistLength, BodyMeasure.ArmholeDepth, BodyMeasure.UpperArm,
        .. Sleeves is null ? Array.Empty<BodyMeasure>() : [BodyMeasure.CentreBackNeckToCuff],
    ];

    public override ImmutableArray<BodyMeasure> Wishes => Neck.Wishes;

    public override ImmutableArray<PlanRule> Rules =>
    [
        PlanRule.Body, PlanRule.Width, PlanRule.Length, PlanRule.ArmholeDepth, .. Neck.Rules, PlanRule.SleeveWidth,
        PlanRule.SleeveLength, PlanRule.Locked, PlanRule.Gauge, PlanRule.Seam,
    ];

    public override string? PlainPiecesField => Sleeves is { Pooled: false } ? "sleeves.yarn" : Neck.PlainPiecesField;

    internal static GarmentKind Pullover { get; } = new(
        "Pullover", "M13 14h22v22H13zM13 14H3v9h10M35 14h10v9H35M19 14h10",
        Document("pullover", "A boxy pullover: two panels, a neck, perhaps sleeves.", false, 12), Fields("12 cm"), Places);

    internal static GarmentKind Tunic { get; } = new(
        "Tunic", "M14 9h20v32H14zM14 9H5v8h9M34 9h9v8h-9M19 9h10",
        Document("tunic", "A boxy tunic: a pullover that reaches over the hip.", true, 30), Fields("30 cm"), Places);

    private static ImmutableArray<EdgingPlace> Places =>
        [EdgingPlace.Hem, EdgingPlace.Neck, EdgingPlace.Shoulder, EdgingPlace.Armholes, EdgingPlace.Cuffs];

    private static ImmutableArray<GarmentField> Fields(string belowWaist) =>
    [
        .. TopFields.EaseAndLengths(belowWaist),
        TopFields.UpperArmEaseField,
        .. NeckChoice.Any.Fields,
        new("Sleeves", "sleeves", "Sleeves", FieldKind.Sleeves),
    ];

    private BodyGirth Girth => new(BustEase, HipEase, BelowWaist >= HipBelowWaist);

    public override Construction Construct(GarmentSpec garment)
    {
        ArgumentNullException.ThrowIfNull(garment);
        return new Construction(
            [Panels(), .. Sleeves is { } sleeves ? [RectangularSleeves.Group(sleeves)] : ImmutableArray<PieceGroup>.Empty, .. Neck.Pieces],
            [.. Neck.Joined(ShoulderedBody.Joins), .. Sleeves is null ? [] : RectangularSleeves.Joins(PieceId.Front, PieceId.Front)],
            [
                Neck.Shoulders,
                .. Neck.Filling,
                .. Sleeves is null
                    ? ImmutableArray.Create(ShoulderedBody.Sides)
                    :
                    [
                        .. RectangularSleeves.Sewing,
                    ],
            ],
            [
                ShoulderedBody.Hem, .. Neck.Edgings,
                Sleeves is null
                    ? ShoulderedBody.Armholes
                    : RectangularSleeves.Cuffs,
            ])
        {
            Worn = [new(PieceId.Front), .. Neck.Worn, .. Sleeves is null ? [] : RectangularSleeves.Worn(PieceId.Front, PieceId.Front)],
        };
    }

    public override Length Target(GarmentMeasure measure, TargetContext size)
    {
        ArgumentNullException.ThrowIfNull(size);
        var body = size.Body;
        return measure switch
        {
            GarmentMeasure.Width => Girth.Target(body),
            GarmentMeasure.Length => body[BodyMeasure.BackWaistLength] + BelowWaist,
            GarmentMeasure.ArmholeDepth => ShoulderedBody.ArmholeDepth(body, UpperArmEase),
            GarmentMeasure.SleeveWidth => 2 * size.Finished[GarmentMeasure.ArmholeDepth],
            GarmentMeasure.SleeveLength =>
                body[BodyMeasure.CentreBackNeckToCuff] - size.Finished[GarmentMeasure.Width] / 4 - Sleeves!.ShorterBy,
            _ => Neck.Target(measure, size) ?? throw new ArgumentOutOfRangeException(nameof(measure), measure, "Not a measure of a boxy top."),
        };
    }

    public override ImmutableArray<WornFit> Worn(TargetContext size)
    {
        ArgumentNullException.ThrowIfNull(size);
        var (body, finished) = (size.Body, size.Finished);
        var neck = finished[GarmentMeasure.NeckWidth];
        return
        [
            .. Neck.Fits(size),
            ShoulderedBody.ShoulderFit(finished[GarmentMeasure.Width] / 4 - neck / 2, BodyMeasure.Bust, size),
            .. Girth.Worn(finished[GarmentMeasure.Width], body),
            .. Sleeves is null
                ? ImmutableArray<WornFit>.Empty
                :
                [
                    new(
                        FitPart.Sleeve, finished[GarmentMeasure.SleeveWidth], BodyMeasure.UpperArm, body[BodyMeasure.UpperArm],
                        "garment.upperArmEase", Mend.UpperArmEase),
                ],
        ];
    }

    public override Length? Floor(GarmentMeasure measure, TargetContext size)
    {
        ArgumentNullException.ThrowIfNull(size);
        return measure == GarmentMeasure.Width ? Girth.Floor(size.Body) : null;
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
                HalfOf = GarmentMeasure.SleeveWidth,
            },
        ],
    };

    private static ObjectShape<GarmentSpec> Document(string name, string description, bool isTunic, double belowWaistCentimetres) =>
        new(name, description, o =>
    {
        GarmentFields.ShapeName(o, name);
        var ease = TopFields.BustEase(o, g => ((BoxyTop)g.Shape).BustEase, "loose");
        var hipEase = TopFields.HipEase(o, g => ((BoxyTop)g.Shape).HipEase);
        var below = TopFields.BelowWaist(o, g => ((BoxyTop)g.Shape).BelowWaist, belowWaistCentimetres);
        var hip = TopFields.HipBelowWaist(o, g => ((BoxyTop)g.Shape).HipBelowWaist);
        var form = NeckChoice.Any.FormField(o, g => ((BoxyTop)g.Shape).Neck);
        var neck = NeckChoice.Any.Document(o, form, g => ((BoxyTop)g.Shape).Neck);
        var arm = TopFields.UpperArmEase(o, g => ((BoxyTop)g.Shape).UpperArmEase);
        var sleeves = o.OptionalObject(
            "sleeves", "Rectangular sleeves.", RectangularSleeves.Shape, g => ((BoxyTop)g.Shape).Sleeves, "none, so that the armholes can be edged");
        var spec = GarmentFields.Turned(o, ["front", "back", "sleeve"], Places, sleeves, (v, edgings, faults) =>
        {
            if (form.TryFrom(v, out var f))
                Neck.EdgingIsThere(v.Place, f, edgings, faults);
        });
        return v => spec(v, new BoxyTop(
            ease.From(v), hipEase.From(v), below.From(v), hip.From(v), neck(v), arm.From(v), sleeves.From(v))
        {
            IsTunic = isTunic,
        });
    });
}
