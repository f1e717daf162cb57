using System.Collections.Immutable;
using Dyepath.Core.Documents;
using Dyepath.Core.Edgings;
using Dyepath.Core.Fabrics;
using Dyepath.Core.Garments;
using Dyepath.Core.Quantities;

namespace Dyepath.Core.Constructions;

/// <summary>Rectangular sleeves of a body whose armholes are slits above its sides: sewn in flat, then closed with the sides.</summary>
internal static class RectangularSleeves
{
    private static readonly Length Shortest = Length.FromCentimetres(3);

    public static ObjectShape<SleeveSpec> Shape { get; } = new("sleeves", "Rectangular sleeves along the armholes.", o =>
    {
        var pooled = o.Optional(
            "yarn", "Worked in the variegated yarn or in the companion yarn.",
            new ChoiceShape<bool>(("variegated", true), ("companion", false)),
            s => s.Pooled, true);
        var shorter = o.Optional("shorterBy", "Taken off a full-length sleeve.", Measured.Step, s => s.ShorterBy, Length.Zero);
        return v => new SleeveSpec(pooled.From(v), shorter.From(v));
    });

    public static ImmutableArray<SewingStep> Sewing { get; } =
    [
        new(SewingManner.SetIn, [SeamId.LeftArmhole, SeamId.RightArmhole]),
        new(SewingManner.FromBottom, [SeamId.LeftSide, SeamId.RightSide, SeamId.LeftSleeve, SeamId.RightSleeve]),
    ];

    public static EdgingEdge Cuffs { get; } = new(
        EdgingPlace.Cuffs, 2, [new(EdgeId.Cuff, new(PieceId.Sleeve, PieceSide.Bottom))], SeamId.LeftSleeve);

    /// <summary>The half of each sleeve before the fold at the shoulder is seen; cuffs point outwards.</summary>
    /// <param name="left">The piece in front at the wearer's left arm.</param>
    /// <param name="right">The same at the right arm.</param>
    public static ImmutableArray<WornPart> Worn(PieceId left, PieceId right) =>
    [
        new(PieceId.Sleeve, Portion.RightHalf, right, PieceSide.Left, 1),
        new(PieceId.Sleeve, Portion.LeftHalf, left, PieceSide.Right, 3),
    ];

    public static PieceGroup Group(SleeveSpec sleeves) => new(
        "sleeve",
        [new(PieceId.Sleeve, 2)],
        new(GarmentMeasure.SleeveWidth, 1, []),
        new(GarmentMeasure.SleeveLength, 1, [EdgingPlace.Cuffs])
        {
            Shortest = new(Shortest, "garment.sleeves.shorterBy", PieceId.Sleeve, Mend.LongerSleeves),
        },
        Working.Turned,
        sleeves.Pooled);

    /// <summary>
    /// Cuff down and outside out, a sleeve's right-hand side lies at the underarm of the back on the left arm, of the front on the right
    /// one: from there its top goes up the one panel to the shoulder and down the other.
    /// </summary>
    /// <param name="left">The piece in front at the wearer's left arm.</param>
    /// <param name="right">The same at the right arm.</param>
    public static ImmutableArray<Join> Joins(PieceId left, PieceId right)
    {
        ImmutableArray<PieceEdge> top = [new PieceEdge(PieceId.Sleeve, PieceSide.Top).Reverse()];
        ImmutableArray<PieceEdge> rightSide = [new PieceEdge(PieceId.Sleeve, PieceSide.Right)];
        ImmutableArray<PieceEdge> leftSide = [new PieceEdge(PieceId.Sleeve, PieceSide.Left)];
        return
        [
            new(SeamId.LeftArmhole,
                [ShoulderedBody.Armhole(PieceId.Back, PieceSide.Left), ShoulderedBody.Armhole(left, PieceSide.Right).Reverse()], top),
            new(SeamId.RightArmhole,
                [ShoulderedBody.Armhole(right, PieceSide.Left), ShoulderedBody.Armhole(PieceId.Back, PieceSide.Right).Reverse()], top),
            new(SeamId.LeftSleeve, rightSide, leftSide),
            new(SeamId.RightSleeve, rightSide, leftSide),
        ];
    }
}

/// <summary>Rectangular sleeves, sewn or picked up along the armhole.</summary>
/// <param name="Pooled">Worked in the variegated yarn, or else in the companion yarn.</param>
/// <param name="ShorterBy">
/// Taken off the full length: chart's centre back neck to cuff, less half the panel's width (so that a wider dropped shoulder shortens it).
/// </param>
public sealed record SleeveSpec(bool Pooled, Length ShorterBy);
