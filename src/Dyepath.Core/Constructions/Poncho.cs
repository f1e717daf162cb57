using System.Collections.Immutable;
using Dyepath.Core.Documents;
using Dyepath.Core.Edgings;
using Dyepath.Core.Fabrics;
using Dyepath.Core.Garments;
using Dyepath.Core.Quantities;
using Dyepath.Core.Sizing;

namespace Dyepath.Core.Constructions;

/// <summary>A poncho: two rectangles joined along the top at either side of a slit neck.</summary>
/// <param name="ArmShare">From the neck out to the side edge, over the body's centre back neck to cuff.</param>
/// <param name="Length">From the shoulder to the lower edge; missing, by rule.</param>
/// <param name="Neck">Between the shoulders.</param>
/// <param name="SideJoin">How far up from the lower edge the sides are joined; missing: they are open.</param>
public sealed record Poncho(double ArmShare, Length? Length, Neck Neck, Length? SideJoin) : GarmentShape
{
    /// <summary>Ends above the wrist, so that hands are free (0.7 to 0.9 is common; common practice, no source).</summary>
    private const double UsualArmShare = 0.8;

    /// <summary>Over the centre back neck to cuff, so that it covers the hip (common practice, no source).</summary>
    private const double UsualLength = 0.85;

    public override string Name => "poncho";

    public override ImmutableArray<BodyMeasure> Needs =>
        [BodyMeasure.CentreBackNeckToCuff, .. SideJoin is null ? [] : ImmutableArray.Create(BodyMeasure.Bust, BodyMeasure.UpperArm)];

    public override ImmutableArray<BodyMeasure> Wishes => [BodyMeasure.Head];

    public override ImmutableArray<PlanRule> Rules =>
    [
        PlanRule.WristToWrist, PlanRule.Length, .. Neck.Rules,
        .. SideJoin is null ? ImmutableArray<PlanRule>.Empty : [PlanRule.ArmholeDepth],
        PlanRule.Locked, PlanRule.Gauge, PlanRule.Seam,
    ];

    internal static GarmentKind Kind { get; } = new(
        "Poncho", "M4 12h15l5 4 5-4h15v26H4zM19 12h10", Document(),
        [
            new("Measures", "armShare", "Neck to side edge, of neck to cuff", FieldKind.Share, Usual: "80 %", Hint: "70 to 90 % leaves the hands free."),
            new("Measures", "length", "From shoulder to lower edge", Usual: "by the arm"),
            new("Measures", "sideJoin", "Sides joined from the lower edge for", Usual: "open"),
            .. NeckChoice.Slit.Fields,
        ],
        Places);

    private static ImmutableArray<EdgingPlace> Places => [EdgingPlace.Hem, EdgingPlace.Neck];

    public override Construction Construct(GarmentSpec garment) => new(
        [Panels()],
        SideJoin is null ? ShoulderedBody.ShoulderJoins : ShoulderedBody.Joins,
        [ShoulderedBody.Shoulders, .. SideJoin is null ? [] : ImmutableArray.Create(ShoulderedBody.Sides)],
        SideJoin is null
            ? [HemAndSides, .. Neck.Edgings]
            : [ShoulderedBody.Hem, .. Neck.Edgings])
    {
        Worn = [new(PieceId.Front)],
    };

    public override Length Target(GarmentMeasure measure, TargetContext size)
    {
        ArgumentNullException.ThrowIfNull(size);
        return measure switch
        {
            GarmentMeasure.WristToWrist => 2 * ArmShare * size.Body[BodyMeasure.CentreBackNeckToCuff],
            GarmentMeasure.Length => LengthOf(size.Body),
            GarmentMeasure.NeckWidth => Neck.Target(measure, size)!.Value,
            GarmentMeasure.ArmholeDepth => LengthOf(size.Body) - SideJoin!.Value,
            _ => throw new ArgumentOutOfRangeException(nameof(measure), measure, "Not a measure of a poncho."),
        };
    }

    public override ImmutableArray<WornFit> Worn(TargetContext size)
    {
        ArgumentNullException.ThrowIfNull(size);
        var (body, finished) = (size.Body, size.Finished);
        var (across, neck) = (finished[GarmentMeasure.WristToWrist], finished[GarmentMeasure.NeckWidth]);
        return
        [
            .. Neck.Fits(size),
            ShoulderedBody.ShoulderFit((across - neck) / 2, BodyMeasure.CentreBackNeckToCuff, size),
            .. SideJoin is null
                ? []
                : ImmutableArray.Create<WornFit>(
                    new(FitPart.JoinedSides, 2 * across, BodyMeasure.Bust, body[BodyMeasure.Bust], "garment.armShare", Mend.LargerArmShare),
                    new(
                        FitPart.Armhole, 2 * finished[GarmentMeasure.ArmholeDepth], BodyMeasure.UpperArm, body[BodyMeasure.UpperArm],
                        "garment.sideJoin", Mend.JoinLessOfSides)),
        ];
    }

    private Length LengthOf(BodyOfSize body) => Length ?? UsualLength * body[BodyMeasure.CentreBackNeckToCuff];

    /// <summary>
    /// Sides that are open are edged with the hem, from the wearer's left shoulder down the back, and up the front again.
    /// </summary>
    private static EdgingEdge HemAndSides { get; } = new(
        EdgingPlace.Hem, 1,
        [
            new(EdgeId.BackLeftSide, new PieceEdge(PieceId.Back, PieceSide.Left).Reverse()),
            new(EdgeId.BackLowerEdge, new(PieceId.Back, PieceSide.Bottom)),
            new(EdgeId.BackRightSide, new(PieceId.Back, PieceSide.Right)),
            new(EdgeId.FrontRightSide, new PieceEdge(PieceId.Front, PieceSide.Left).Reverse()),
            new(EdgeId.FrontLowerEdge, new(PieceId.Front, PieceSide.Bottom)),
            new(EdgeId.FrontLeftSide, new(PieceId.Front, PieceSide.Right)),
        ],
        SeamId.LeftShoulder, Corners: 4, PerCorner: 2);

    private PieceGroup Panels() => new(
        "panel",
        [new(PieceId.Front), new(PieceId.Back, MayTurn: true)],
        new(GarmentMeasure.WristToWrist, 1, SideJoin is null ? [EdgingPlace.Hem, EdgingPlace.Hem] : []) { IsFlat = true },
        new(GarmentMeasure.Length, 1, [EdgingPlace.Hem]),
        Working.Turned,
        true)
    {
        Openings = SideJoin is null
            ? [Neck.Opening]
            :
            [
                Neck.Opening,
                new(OpeningId.Armhole, [PieceSide.Left, PieceSide.Right], OpeningAt.End, GarmentMeasure.ArmholeDepth, null, "garment.sideJoin"),
            ],
    };

    private static ObjectShape<GarmentSpec> Document() => new("poncho", "A poncho: two rectangles and a slit neck.", o =>
    {
        GarmentFields.ShapeName(o, "poncho");
        var share = o.Optional(
            "armShare", "From the neck out to the side edge, over centre back neck to cuff.", Measured.Share, g => ((Poncho)g.Shape).ArmShare, UsualArmShare);
        var length = o.Optional(
            "length", "From the shoulder to the lower edge.", Measured.Body, g => ((Poncho)g.Shape).Length, "0.85 of centre back neck to cuff");
        var join = o.Optional(
            "sideJoin", "How far up from the lower edge the sides are joined.", Measured.Body, g => ((Poncho)g.Shape).SideJoin, "the sides are open");
        var neck = NeckChoice.Slit.Document(o, null, g => ((Poncho)g.Shape).Neck);
        var spec = GarmentFields.Turned(o, ["front", "back"], Places);
        return v => spec(v, new Poncho(share.From(v), length.From(v), neck(v), join.From(v)));
    });
}
