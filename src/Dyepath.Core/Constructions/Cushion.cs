using System.Collections.Immutable;
using Dyepath.Core.Documents;
using Dyepath.Core.Edgings;
using Dyepath.Core.Fabrics;
using Dyepath.Core.Garments;
using Dyepath.Core.Quantities;
using Dyepath.Core.Sizing;

namespace Dyepath.Core.Constructions;

/// <summary>A cushion cover: two panels sewn all round over an insert.</summary>
/// <param name="Width">Of the insert.</param>
/// <param name="Height">Of the insert.</param>
public sealed record Cushion(Length Width, Length Height) : GarmentShape
{
    /// <summary>A cover is smaller than its insert, so that it is full (5 %, common practice, no source).</summary>
    private const double OfInsert = 0.95;

    public override string Name => "cushion";

    public override ImmutableArray<BodyMeasure> Needs => [];

    public override ImmutableArray<PlanRule> Rules => [PlanRule.Width, PlanRule.Gauge, PlanRule.Seam];

    internal static GarmentKind Kind { get; } = new(
        "Cushion", "M9 9c10 3 20 3 30 0c-3 10-3 20 0 30c-10-3-20-3-30 0c3-10 3-20 0-30z", Document(),
        [
            new("Measures", "width", "Width of the insert", First: "45 cm"), new("Measures", "height", "Height of the insert", First: "45 cm"),
        ],
        []);

    public override Construction Construct(GarmentSpec garment)
    {
        return new(
            [
                new("panel", [new(PieceId.Front), new(PieceId.Back, MayTurn: true)], new(GarmentMeasure.Width, 1, []),
                    new(GarmentMeasure.Height, 1, []), Working.Turned, true),
            ],
            [
                Join(SeamId.LeftSide, PieceSide.Right, PieceSide.Left), Join(SeamId.RightSide, PieceSide.Left, PieceSide.Right),
                Across(SeamId.LowerSeam, PieceSide.Bottom), Across(SeamId.UpperSeam, PieceSide.Top),
            ],
            [
                new(SewingManner.IntoCover, [SeamId.LeftSide, SeamId.LowerSeam, SeamId.RightSide]),
                new(SewingManner.CloseOver, [SeamId.UpperSeam]),
            ],
            [])
        {
            Worn = [new(PieceId.Front)],
        };

        static Join Join(SeamId id, PieceSide front, PieceSide back) => new(id, [new(PieceId.Front, front)], [new(PieceId.Back, back)]);

        // Seen from outside, left and right of the back lie the other way round.
        static Join Across(SeamId id, PieceSide side) => new(id, [new(PieceId.Front, side)], [new PieceEdge(PieceId.Back, side).Reverse()]);
    }

    public override Length Target(GarmentMeasure measure, TargetContext size) => measure switch
    {
        GarmentMeasure.Width => OfInsert * Width,
        GarmentMeasure.Height => OfInsert * Height,
        _ => throw new ArgumentOutOfRangeException(nameof(measure), measure, "Not a measure of a cushion."),
    };

    private static ObjectShape<GarmentSpec> Document() => new("cushion", "A cushion cover: two panels over an insert.", o =>
    {
        GarmentFields.ShapeName(o, "cushion");
        var width = o.Required("width", "Width of the insert.", Measured.Body, g => ((Cushion)g.Shape).Width);
        var height = o.Required("height", "Height of the insert.", Measured.Body, g => ((Cushion)g.Shape).Height);
        var spec = GarmentFields.Turned(o, ["front", "back"], []);
        return v => spec(v, new Cushion(width.From(v), height.From(v)));
    });
}
