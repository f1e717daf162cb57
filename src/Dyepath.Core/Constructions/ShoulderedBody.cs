using System.Collections.Immutable;
using Dyepath.Core.Edgings;
using Dyepath.Core.Garments;
using Dyepath.Core.Quantities;
using Dyepath.Core.Sizing;

namespace Dyepath.Core.Constructions;

/// <summary>A front and a back that meet at sides and shoulders, with a neck between the shoulders and armholes above the sides.</summary>
internal static class ShoulderedBody
{
    public static ImmutableArray<Join> ShoulderJoins { get; } = ShouldersOf(PieceId.Front, PieceId.Front);

    public static ImmutableArray<Join> Joins { get; } = JoinsBelow(OpeningId.Armhole, PieceId.Front, PieceId.Front);

    public static SewingStep Shoulders { get; } = new(SewingManner.AroundOpening, [SeamId.LeftShoulder, SeamId.RightShoulder]);

    public static SewingStep Sides { get; } = new(SewingManner.FromBottom, [SeamId.LeftSide, SeamId.RightSide]);

    public static EdgingEdge Hem { get; } = new(
        EdgingPlace.Hem, 1,
        [new(EdgeId.Front, new(PieceId.Front, PieceSide.Bottom)), new(EdgeId.Back, new(PieceId.Back, PieceSide.Bottom))], SeamId.LeftSide);

    public static EdgingEdge Armholes { get; } = AtSides(EdgingPlace.Armholes, OpeningId.Armhole, PieceId.Front);

    /// <param name="opening">At the top of the sides; they are joined below it.</param>
    /// <param name="left">The front at the wearer's left, or the only one.</param>
    /// <param name="right">The front at the wearer's right, or the only one.</param>
    public static ImmutableArray<Join> JoinsBelow(OpeningId opening, PieceId left, PieceId right) =>
    [
        new(SeamId.LeftSide, [Below(left, PieceSide.Right, opening)], [Below(PieceId.Back, PieceSide.Left, opening)]),
        new(SeamId.RightSide, [Below(right, PieceSide.Left, opening)], [Below(PieceId.Back, PieceSide.Right, opening)]),
        .. ShouldersOf(left, right),
    ];

    /// <param name="left">The front at the wearer's left, or the only one.</param>
    public static EdgingEdge AtSides(EdgingPlace place, OpeningId opening, PieceId left) => new(
        place, 2,
        [
            new(EdgeId.Front, new(left, PieceSide.Right, Stretch.Opening, opening)),
            new(EdgeId.Back, new PieceEdge(PieceId.Back, PieceSide.Left, Stretch.Opening, opening).Reverse()),
        ],
        SeamId.LeftSide)
    {
        // At the wearer's right the back is met first.
        Other =
        [
            new(EdgeId.Back, new(PieceId.Back, PieceSide.Right, Stretch.Opening, opening)),
            new(EdgeId.Front, new PieceEdge(Opposite(left), PieceSide.Left, Stretch.Opening, opening).Reverse()),
        ],
    };

    private static PieceId Opposite(PieceId left) => left == PieceId.LeftFront ? PieceId.RightFront : left;

    /// <param name="corners">Corners of a slit can take extra stitches; those of a neck that is cut are edges of their own.</param>
    public static EdgingEdge Neck(int corners) => new(
        EdgingPlace.Neck, 1, [new(EdgeId.FrontNeck, NeckOf(PieceId.Front)), new(EdgeId.BackNeck, NeckOf(PieceId.Back))],
        SeamId.LeftShoulder, corners);

    /// <summary>
    /// Along back and two fronts, which open in front; with the outside facing it runs from right to left, the garment upside down.
    /// </summary>
    public static EdgingEdge OpenHem { get; } = new(
        EdgingPlace.Hem, 1,
        [
            new(EdgeId.LeftFront, new(PieceId.LeftFront, PieceSide.Bottom)), new(EdgeId.Back, new(PieceId.Back, PieceSide.Bottom)),
            new(EdgeId.RightFront, new(PieceId.RightFront, PieceSide.Bottom)),
        ],
        null)
    {
        OpensAt = OpenEnd.LowerEndOfLeftFront,
    };

    /// <inheritdoc cref="OpenHem"/>
    public static EdgingEdge OpenNeck { get; } = new(
        EdgingPlace.Neck, 1,
        [
            new(EdgeId.RightFrontNeck, NeckOf(PieceId.RightFront)), new(EdgeId.BackNeck, NeckOf(PieceId.Back)),
            new(EdgeId.LeftFrontNeck, NeckOf(PieceId.LeftFront)),
        ],
        null)
    {
        OpensAt = OpenEnd.UpperEndOfRightFront,
    };

    public static PieceEdge Armhole(PieceId piece, PieceSide side) => new(piece, side, Stretch.Opening, OpeningId.Armhole);

    /// <summary>The larger of the chart's and half of the upper arm and its ease.</summary>
    public static Length ArmholeDepth(BodyOfSize body, Length upperArmEase) =>
        Length.Max(body[BodyMeasure.ArmholeDepth], (body[BodyMeasure.UpperArm] + upperArmEase) / 2);

    /// <summary>Whether enough is left beside the neck to hold it on the shoulders.</summary>
    /// <param name="beside">Fabric beside the neck.</param>
    public static WornFit ShoulderFit(Length beside, BodyMeasure body, TargetContext size) => new(
        FitPart.ShoulderBesideNeck, beside, body, GarmentFit.LeastShoulder(size.Wearer), "garment.neckWidth", Mend.NarrowNeckOrEase);

    private static ImmutableArray<Join> ShouldersOf(PieceId left, PieceId right) =>
    [
        // Seen from outside, the wearer's left shoulder is at the front's right, from the neck on, and at the back's left.
        new(SeamId.LeftShoulder,
            [Shoulder(left, Stretch.AfterOpening).Reverse()], [Shoulder(PieceId.Back, Stretch.BeforeOpening)]),
        new(SeamId.RightShoulder,
            [Shoulder(right, Stretch.BeforeOpening)], [Shoulder(PieceId.Back, Stretch.AfterOpening).Reverse()]),
    ];

    private static PieceEdge Below(PieceId piece, PieceSide side, OpeningId opening) => new(piece, side, Stretch.BeforeOpening, opening);

    private static PieceEdge Shoulder(PieceId piece, Stretch stretch) => new(piece, PieceSide.Top, stretch, OpeningId.Neck);

    private static PieceEdge NeckOf(PieceId piece) => new PieceEdge(piece, PieceSide.Top, Stretch.Opening, OpeningId.Neck).Reverse();
}
