using System.Collections.Immutable;
using Dyepath.Core.Documents;
using Dyepath.Core.Edgings;
using Dyepath.Core.Fabrics;
using Dyepath.Core.Garments;
using Dyepath.Core.Quantities;
using Dyepath.Core.Sizing;

namespace Dyepath.Core.Constructions;

/// <summary>
/// A triangle in steps: straight along the top, to a point below. Worked up, rows grow from the point to the full wingspan; worked
/// sideways, they grow from one tip to the full depth and shrink again.
/// </summary>
/// <param name="Wingspan">From tip to tip, edging included.</param>
/// <param name="Depth">From the upper edge to the point, edging included.</param>
public sealed record Shawl(Length Wingspan, Length Depth) : GarmentShape
{
    public override string Name => "shawl";

    public override ImmutableArray<BodyMeasure> Needs => [];

    public override ImmutableArray<PlanRule> Rules => [PlanRule.Width, PlanRule.Steps, PlanRule.Gauge, PlanRule.Seam];

    public override Construction Construct(GarmentSpec garment) => BorderedPiece.Of(
        BorderedPiece.Group(PieceId.Shawl, GarmentMeasure.Wingspan, GarmentMeasure.Depth) with
        {
            Form = new([new(0.5, 0), new(1, 1), new(0, 1)], "garment.wingspan"),
        },
        (EdgeId.Point, EdgeId.RightSlope, EdgeId.UpperEdge, EdgeId.LeftSlope), 3);

    public override Length Target(GarmentMeasure measure, TargetContext size) => measure switch
    {
        GarmentMeasure.Wingspan => Wingspan,
        GarmentMeasure.Depth => Depth,
        _ => throw new ArgumentOutOfRangeException(nameof(measure), measure, "Not a measure of a shawl."),
    };

    internal static GarmentKind Kind { get; } = new(
        "Shawl", "M4 12h40v4h-4v4h-4v4h-4v4h-4v4h-8v-4h-4v-4h-4v-4H8v-4H4z", Document(),
        [
            new("Measures", "wingspan", "Wingspan", First: "160 cm", Hint: "From tip to tip."),
            new("Measures", "depth", "Depth", First: "65 cm", Hint: "From the upper edge to the point."),
        ],
        [EdgingPlace.Border])
    {
        NeedsCompanion = true,
    };

    private static ObjectShape<GarmentSpec> Document() => new("shawl", "A shawl: a triangle in steps.", o =>
    {
        GarmentFields.ShapeName(o, "shawl");
        var wingspan = o.Required("wingspan", "Finished wingspan, from tip to tip.", Measured.Body, g => ((Shawl)g.Shape).Wingspan);
        var depth = o.Required("depth", "Finished depth, from the upper edge to the point.", Measured.Body, g => ((Shawl)g.Shape).Depth);
        var spec = GarmentFields.Unsewn(o, "shawl");
        return v => spec(v, new Shawl(wingspan.From(v), depth.From(v)));
    });
}
