using System.Collections.Immutable;
using Dyepath.Core.Documents;
using Dyepath.Core.Edgings;
using Dyepath.Core.Fabrics;
using Dyepath.Core.Garments;
using Dyepath.Core.Quantities;
using Dyepath.Core.Sizing;

namespace Dyepath.Core.Constructions;

/// <summary>A wrap, scarf or blanket: one rectangle.</summary>
/// <param name="Width">From side to side.</param>
/// <param name="Length">From end to end.</param>
/// <param name="IsBlanket">What the pattern calls it: a blanket, or else a wrap.</param>
public sealed record Wrap(Length Width, Length Length, bool IsBlanket = false) : GarmentShape
{
    public override string Name => IsBlanket ? "blanket" : "wrap";

    public override ImmutableArray<BodyMeasure> Needs => [];

    /// <summary>A blanket may be a baby's.</summary>
    public override Wearers Unsized => IsBlanket ? Wearers.Baby | Wearers.Adult : Wearers.Adult;

    public override ImmutableArray<PlanRule> Rules => [PlanRule.Width, PlanRule.Gauge, PlanRule.Seam];

    private PieceId Piece => IsBlanket ? PieceId.Blanket : PieceId.Wrap;

    public override Construction Construct(GarmentSpec garment) =>
        BorderedPiece.Of(BorderedPiece.Group(Piece, GarmentMeasure.Width, GarmentMeasure.Length));

    public override Length Target(GarmentMeasure measure, TargetContext size) => measure switch
    {
        GarmentMeasure.Width => Width,
        GarmentMeasure.Length => Length,
        _ => throw new ArgumentOutOfRangeException(nameof(measure), measure, "Not a measure of a wrap."),
    };

    internal static GarmentKind Kind { get; } = new(
        "Wrap or scarf", "M4 18h40v12H4zM4 18l-2 2M4 22l-2 2M4 26l-2 2M44 18l2 2M44 22l2 2M44 26l2 2",
        Of("wrap", "A wrap or scarf: one rectangle.", false), Fields("45 cm", "170 cm"), [EdgingPlace.Border]);

    internal static GarmentKind Blanket { get; } = new(
        "Blanket", "M8 8h32v32H8zM11 11h26v26H11z", Of("blanket", "A blanket: one rectangle.", true),
        Fields("100 cm", "120 cm"), [EdgingPlace.Border]);

    private static ImmutableArray<GarmentField> Fields(string width, string length) =>
    [
        new("Measures", "width", "Finished width", First: width), new("Measures", "length", "Finished length", First: length),
    ];

    private static ObjectShape<GarmentSpec> Of(string name, string description, bool isBlanket) => new(name, description, o =>
    {
        GarmentFields.ShapeName(o, name);
        var width = o.Required("width", "Finished width.", Measured.Body, g => ((Wrap)g.Shape).Width);
        var length = o.Required("length", "Finished length.", Measured.Body, g => ((Wrap)g.Shape).Length);
        var spec = GarmentFields.Unsewn(o, name);
        return v => spec(v, new Wrap(width.From(v), length.From(v), isBlanket));
    });
}
