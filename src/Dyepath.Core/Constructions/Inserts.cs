using System.Collections.Immutable;
using Dyepath.Core.Edgings;
using Dyepath.Core.Fabrics;
using Dyepath.Core.Garments;

namespace Dyepath.Core.Constructions;

/// <summary>Two plain triangles in the lower corners of a front neck that is cut square, so that its edge is a V.</summary>
internal static class Inserts
{
    public static PieceGroup Group { get; } = new(
        "insert", [new(PieceId.LeftInsert), new(PieceId.RightInsert) { Mirrored = true }],
        new(GarmentMeasure.InsertWidth, 1, []), new(GarmentMeasure.InsertHeight, 1, []), Working.Turned, false)
    {
        Fills = new(OpeningId.Neck, PieceId.Front, "garment.neck"),
    };

    /// <summary>
    /// Each from the middle of the cut's lower edge outwards and up to the shoulder. Seen from outside, the wearer's left is at the right.
    /// </summary>
    public static ImmutableArray<Join> Joins { get; } =
    [
        new(SeamId.LeftInsert,
            [Cut(Stretch.SecondHalf)],
            [new(PieceId.LeftInsert, PieceSide.Bottom), new(PieceId.LeftInsert, PieceSide.Right)]),
        new(SeamId.RightInsert,
            [Cut(Stretch.FirstHalf).Reverse()],
            [new PieceEdge(PieceId.RightInsert, PieceSide.Bottom).Reverse(), new(PieceId.RightInsert, PieceSide.Left)]),
    ];

    public static SewingStep Sewing { get; } = new(SewingManner.IntoCorners, [SeamId.LeftInsert, SeamId.RightInsert]);

    /// <summary>From the left shoulder down one slope, up the other, and along the back neck.</summary>
    public static EdgingEdge Edge { get; } = new(
        EdgingPlace.Neck, 1,
        [
            new(EdgeId.LeftNeckSlope, new PieceEdge(PieceId.LeftInsert, PieceSide.Left).Reverse()),
            new(EdgeId.RightNeckSlope, new(PieceId.RightInsert, PieceSide.Right)),
            new(EdgeId.BackNeck, new PieceEdge(PieceId.Back, PieceSide.Top, Stretch.Opening, OpeningId.Neck).Reverse()),
        ],
        SeamId.LeftShoulder);

    public static ImmutableArray<WornPart> Worn { get; } =
    [
        new(PieceId.RightInsert, Beside: PieceId.Front), new(PieceId.LeftInsert, Beside: PieceId.Front),
    ];

    private static PieceEdge Cut(Stretch half) => new(PieceId.Front, PieceSide.Top, half, OpeningId.Neck);
}
