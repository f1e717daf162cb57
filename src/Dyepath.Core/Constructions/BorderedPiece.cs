using Dyepath.Core.Edgings;
using Dyepath.Core.Fabrics;
using Dyepath.Core.Garments;

namespace Dyepath.Core.Constructions;

/// <summary>One piece in turned rows with an edging all round, both its measures with the edging.</summary>
internal static class BorderedPiece
{
    /// <param name="sides">Its edges, in the order in which the edging goes round.</param>
    public static Construction Of(PieceGroup group, (EdgeId Lower, EdgeId Right, EdgeId Upper, EdgeId Left) sides, int corners)
    {
        var piece = group.Pieces[0].Id;
        return new(
            [group],
            [],
            [],
            [
                new(EdgingPlace.Border, 1,
                    [
                        new(sides.Lower, new(piece, PieceSide.Bottom)), new(sides.Right, new(piece, PieceSide.Right)),
                        new(sides.Upper, new PieceEdge(piece, PieceSide.Top).Reverse()),
                        new(sides.Left, new PieceEdge(piece, PieceSide.Left).Reverse()),
                    ],
                    null, Corners: corners, PerCorner: 2),
            ])
        {
            Worn = [new(piece)],
        };
    }

    /// <summary>With upright edges and four corners.</summary>
    public static Construction Of(PieceGroup group) =>
        Of(group, (EdgeId.LowerEdge, EdgeId.RightEdge, EdgeId.UpperEdge, EdgeId.LeftEdge), 4);

    public static PieceGroup Group(PieceId piece, GarmentMeasure across, GarmentMeasure down) => new(
        "panel", [new(piece)], new(across, 1, [EdgingPlace.Border, EdgingPlace.Border]), new(down, 1, [EdgingPlace.Border, EdgingPlace.Border]),
        Working.Turned, true);
}
