using System.Collections.Immutable;
using Dyepath.Core.Documents;
using Dyepath.Core.Edgings;
using Dyepath.Core.Fabrics;
using Dyepath.Core.Findings;
using Dyepath.Core.Garments;
using Dyepath.Core.Quantities;
using Dyepath.Core.Sizing;

namespace Dyepath.Core.Constructions;

/// <summary>A boxy cardigan: a back, two fronts whose bands overlap, a neck, and perhaps rectangular sleeves.</summary>
/// <param name="BustEase">All round, beyond the bust, closed.</param>
/// <param name="HipEase">All round, beyond the hip, closed.</param>
/// <param name="BelowWaist">Body length is the chart's back waist length plus this.</param>
/// <param name="HipBelowWaist">A body that hangs at least this far below the waist reaches the hip, and hip plus ease counts too.</param>
/// <param name="Neck">Between the shoulders; it opens in front.</param>
/// <param name="UpperArmEase">Armhole depth is the larger of the chart's and half of upper arm plus this.</param>
/// <param name="Sleeves">Missing: none, so that the armholes can be edged.</param>
public sealed record Cardigan(
    Ease BustEase, Length HipEase, Length BelowWaist, Length HipBelowWaist, Neck Neck, Length UpperArmEase,
    SleeveSpec? Sleeves) : GarmentShape
{
    /// <summary>The band of the wearer's left front has the buttonholes, or else the right one's.</summary>
    public required bool HolesAtLeft { get; init; }

    public override string Name => "cardigan";

    public override ImmutableArray<BodyMeasure> Needs =>
    [
        .. Girth.Needs, BodyMeasure.BackWaistLength, BodyMeasure.ArmholeDepth, BodyMeasure.UpperArm,
        .. Sleeves is null ? Array.Empty<BodyMeasure>() : [BodyMeasure.CentreBackNeckToCuff],
    ];

    public override ImmutableArray<BodyMeasure> Wishes => [BodyMeasure.Head];

    public override ImmutableArray<PlanRule> Rules =>
    [
        PlanRule.Body, PlanRule.Width, PlanRule.Fronts, PlanRule.Length, PlanRule.ArmholeDepth, .. Neck.Rules, PlanRule.Buttonholes,
        PlanRule.SleeveWidth, PlanRule.SleeveLength, PlanRule.Locked, PlanRule.Gauge, PlanRule.Seam,
    ];

    public override string? PlainPiecesField => Sleeves is { Pooled: false } ? "sleeves.yarn" : null;

    internal static GarmentKind Kind { get; } = new(
        "Cardigan", "M13 14h9v22h-9zM26 14h9v22h-9zM13 14H3v9h10M35 14h10v9H35M24 14v22", Document(),
        [
            .. TopFields.EaseAndLengths("12 cm"),
            TopFields.UpperArmEaseField,
            .. NeckChoice.InFront.Fields,
            new("Sleeves", "sleeves", "Sleeves", FieldKind.Sleeves, First: "variegated"),
            new("Front bands", "buttonholes", "Buttonholes in the wearer's", FieldKind.Choice, Usual: "right", Hint: "Women's clothes usually button right over left, men's left over right.")
            {
                Choices = [("right", "right front"), ("left", "left front")],
            },
        ],
        Places, [new(EdgingPlace.Fronts, "button-band", null)]);

    private static ImmutableArray<EdgingPlace> Places =>
        [EdgingPlace.Hem, EdgingPlace.Neck, EdgingPlace.Fronts, EdgingPlace.Armholes, EdgingPlace.Cuffs];

    private BodyGirth Girth => new(BustEase, HipEase, BelowWaist >= HipBelowWaist);

    public override Construction Construct(GarmentSpec garment) => new(
        [Back(), Fronts(), .. Sleeves is { } sleeves ? [RectangularSleeves.Group(sleeves)] : ImmutableArray<PieceGroup>.Empty],
        [
            .. ShoulderedBody.JoinsBelow(OpeningId.Armhole, PieceId.LeftFront, PieceId.RightFront),
            .. Sleeves is null ? [] : RectangularSleeves.Joins(PieceId.LeftFront, PieceId.RightFront),
            // Seen from outside, the wearer's right front lies at the left.
            new(SeamId.FrontOpening, [new(PieceId.RightFront, PieceSide.Right)], [new(PieceId.LeftFront, PieceSide.Left)],
                JoinKind.Opening),
        ],
        [ShoulderedBody.Shoulders, .. Sleeves is null ? [ShoulderedBody.Sides] : RectangularSleeves.Sewing],
        [
            ShoulderedBody.OpenHem, ShoulderedBody.OpenNeck,
            new(EdgingPlace.Fronts, 2, [new(EdgeId.FrontEdge, new(PieceId.RightFront, PieceSide.Right))], null)
            {
                Other = [new(EdgeId.FrontEdge, new PieceEdge(PieceId.LeftFront, PieceSide.Left).Reverse())],
                Closes = HolesAtLeft ? (PieceId.LeftFront, PieceId.RightFront) : (PieceId.RightFront, PieceId.LeftFront),
                Over = (EdgingPlace.Hem, EdgingPlace.Neck),
            },
            Sleeves is null ? ShoulderedBody.AtSides(EdgingPlace.Armholes, OpeningId.Armhole, PieceId.LeftFront) : RectangularSleeves.Cuffs,
        ])
    {
        Worn =
        [
            new(PieceId.RightFront),
            new(PieceId.LeftFront, Portion.Whole, PieceId.RightFront, PieceSide.Right, Between: EdgingPlace.Fronts),
            .. Sleeves is null ? [] : RectangularSleeves.Worn(PieceId.LeftFront, PieceId.RightFront),
        ],
    };

    public override Length Target(GarmentMeasure measure, TargetContext size)
    {
        ArgumentNullException.ThrowIfNull(size);
        var body = size.Body;
        return measure switch
        {
            GarmentMeasure.Width => Girth.Target(body),
            GarmentMeasure.BackWidth => Girth.Target(body) / 2,
            GarmentMeasure.Length => body[BodyMeasure.BackWaistLength] + BelowWaist,
            GarmentMeasure.ArmholeDepth => ShoulderedBody.ArmholeDepth(body, UpperArmEase),
            GarmentMeasure.SleeveWidth => 2 * size.Finished[GarmentMeasure.ArmholeDepth],
            GarmentMeasure.SleeveLength =>
                body[BodyMeasure.CentreBackNeckToCuff] - size.Finished[GarmentMeasure.BackWidth] / 2 - Sleeves!.ShorterBy,
            _ => Neck.Target(measure, size) ?? throw new ArgumentOutOfRangeException(nameof(measure), measure, "Not a measure of a cardigan."),
        };
    }

    public override ImmutableArray<WornFit> Worn(TargetContext size)
    {
        ArgumentNullException.ThrowIfNull(size);
        var (body, finished) = (size.Body, size.Finished);
        return
        [
            new(FitPart.ClosedBody, finished[GarmentMeasure.Width], BodyMeasure.Bust, body[BodyMeasure.Bust], "garment.ease", Mend.BustEase),
            ShoulderedBody.ShoulderFit(
                (finished[GarmentMeasure.BackWidth] - finished[GarmentMeasure.NeckWidth]) / 2, BodyMeasure.Bust, size),
            .. Girth.Hem(finished[GarmentMeasure.Width], body),
            Sleeves is null
                ? new(
                    FitPart.Armhole, 2 * finished[GarmentMeasure.ArmholeDepth], BodyMeasure.UpperArm, body[BodyMeasure.UpperArm],
                    "garment.upperArmEase", Mend.UpperArmEase)
                : new(
                    FitPart.Sleeve, finished[GarmentMeasure.SleeveWidth], BodyMeasure.UpperArm, body[BodyMeasure.UpperArm],
                    "garment.upperArmEase", Mend.UpperArmEase),
        ];
    }

    public override Length? Floor(GarmentMeasure measure, TargetContext size)
    {
        ArgumentNullException.ThrowIfNull(size);
        return measure switch
        {
            GarmentMeasure.BackWidth => Girth.Floor(size.Body) / 2,
            GarmentMeasure.Width => Girth.Floor(size.Body),
            _ => null,
        };
    }

    public override ImmutableArray<Finding> Faults() => BustEase.Faults("garment.ease");

    private PieceGroup Back() => new(
        "panel", [new(PieceId.Back)],
        new(GarmentMeasure.BackWidth, 1, []), new(GarmentMeasure.Length, 1, [EdgingPlace.Hem]), Working.Turned, true)
    {
        LetOff = Neck.LetOff,
        Openings =
        [
            Neck.Opening,
            Armhole([PieceSide.Left, PieceSide.Right]),
        ],
    };

    /// <summary>
    /// Described by the right one; the left one is its mirror. Shaped, they can no more be turned over for the sake of their colours.
    /// </summary>
    private PieceGroup Fronts() => new(
        "front", [new(PieceId.RightFront, MayTurn: !Neck.IsCut), new(PieceId.LeftFront, MayTurn: !Neck.IsCut) { Mirrored = true }],
        new(GarmentMeasure.Width, 2, [EdgingPlace.Fronts]) { Beside = GarmentMeasure.BackWidth },
        new(GarmentMeasure.Length, 1, [EdgingPlace.Hem]), Working.Turned, true)
    {
        LetOff = Neck.LetOff,
        Openings =
        [
            Neck.FrontOpening,
            Armhole([PieceSide.Left]),
        ],
    };

    private static OpeningDesign Armhole(ImmutableArray<PieceSide> sides) =>
        new(OpeningId.Armhole, sides, OpeningAt.End, GarmentMeasure.ArmholeDepth, EdgingPlace.Armholes, "garment.belowWaist")
        {
            HalfOf = GarmentMeasure.SleeveWidth,
        };

    private static ObjectShape<GarmentSpec> Document() => new("cardigan", "A boxy cardigan: a back, two fronts with bands, perhaps sleeves.", o =>
    {
        GarmentFields.ShapeName(o, "cardigan");
        var ease = TopFields.BustEase(o, g => ((Cardigan)g.Shape).BustEase, "loose");
        var hipEase = TopFields.HipEase(o, g => ((Cardigan)g.Shape).HipEase);
        var below = TopFields.BelowWaist(o, g => ((Cardigan)g.Shape).BelowWaist, 12);
        var hip = TopFields.HipBelowWaist(o, g => ((Cardigan)g.Shape).HipBelowWaist);
        var form = NeckChoice.InFront.FormField(o, g => ((Cardigan)g.Shape).Neck);
        var neck = NeckChoice.InFront.Document(o, form, g => ((Cardigan)g.Shape).Neck);
        var arm = TopFields.UpperArmEase(o, g => ((Cardigan)g.Shape).UpperArmEase);
        var sleeves = o.OptionalObject(
            "sleeves", "Rectangular sleeves.", RectangularSleeves.Shape, g => ((Cardigan)g.Shape).Sleeves, "none, so that the armholes can be edged");
        var holes = o.Optional(
            "buttonholes", "The wearer's side whose band lies on top and has the buttonholes.", new ChoiceShape<bool>(("right", false), ("left", true)),
            g => ((Cardigan)g.Shape).HolesAtLeft, false);
        var spec = GarmentFields.Turned(o, ["back", "right front", "left front", "sleeve"], Places, sleeves);
        return v => spec(v, new Cardigan(
            ease.From(v), hipEase.From(v), below.From(v), hip.From(v), neck(v), arm.From(v), sleeves.From(v))
        {
            HolesAtLeft = holes.From(v),
        });
    });
}
