using System.Collections.Immutable;
using Dyepath.Core.Documents;
using Dyepath.Core.Edgings;
using Dyepath.Core.Fabrics;
using Dyepath.Core.Garments;
using Dyepath.Core.Quantities;
using Dyepath.Core.Sizing;

namespace Dyepath.Core.Constructions;

/// <summary>
/// A wrap or scarf on the bias: a parallelogram, of rows that leave stitches at one edge and go on over chains at the other.
/// </summary>
/// <param name="Width">Along its rows, edging included.</param>
/// <param name="Length">From its first row to its last, edging included.</param>
public sealed record BiasWrap(Length Width, Length Length) : GarmentShape
{
    /// <summary>Stitches by which it moves every two rows: the fewest that leave every other row whole, about half a right angle.</summary>
    private const int Step = 2;

    public override string Name => "bias-wrap";

    public override ImmutableArray<BodyMeasure> Needs => [];

    public override ImmutableArray<PlanRule> Rules => [PlanRule.Width, PlanRule.Bias, PlanRule.Gauge, PlanRule.Seam];

    public override Construction Construct(GarmentSpec garment) => BorderedPiece.Of(
        BorderedPiece.Group(PieceId.Wrap, GarmentMeasure.Width, GarmentMeasure.Length) with { Bias = Step });

    public override Length Target(GarmentMeasure measure, TargetContext size) => measure switch
    {
        GarmentMeasure.Width => Width,
        GarmentMeasure.Length => Length,
        _ => throw new ArgumentOutOfRangeException(nameof(measure), measure, "Not a measure of a wrap."),
    };

    internal static GarmentKind Kind { get; } = new(
        "Wrap on the bias", "M4 10h20l20 28H24z", Document(),
        [
            new("Measures", "width", "Finished width", First: "40 cm", Hint: "Along a row."),
            new("Measures", "length", "Finished length", First: "130 cm", Hint: "From the first row to the last."),
        ],
        [EdgingPlace.Border])
    {
        NeedsCompanion = true,
    };

    private static ObjectShape<GarmentSpec> Document() => new("bias-wrap", "A wrap or scarf on the bias: a parallelogram.", o =>
    {
        GarmentFields.ShapeName(o, "bias-wrap");
        var width = o.Required("width", "Finished width, along a row.", Measured.Body, g => ((BiasWrap)g.Shape).Width);
        var length = o.Required("length", "Finished length, from the first row to the last.", Measured.Body, g => ((BiasWrap)g.Shape).Length);
        var spec = GarmentFields.Unsewn(o, "wrap");
        return v => spec(v, new BiasWrap(width.From(v), length.From(v)));
    });
}
