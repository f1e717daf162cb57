using System.Collections.Immutable;
using Dyepath.Core.Documents;
using Dyepath.Core.Edgings;
using Dyepath.Core.Fabrics;
using Dyepath.Core.Garments;
using Dyepath.Core.Motifs;
using Dyepath.Core.Quantities;
using Dyepath.Core.Sizing;

namespace Dyepath.Core.Constructions;

/// <summary>A tube: circumference and height.</summary>
/// <param name="Circumference">All the way round.</param>
/// <param name="Height">From brim to brim.</param>
public sealed record Cowl(Length Circumference, Length Height) : GarmentShape
{
    private static readonly ChoiceShape<Working> CowlWorking = new(
        [.. Enum.GetValues<Working>().Select(working => (MotifNames.Of(working), working))]);

    public override string Name => "cowl";

    public override ImmutableArray<BodyMeasure> Needs => [];

    public override ImmutableArray<PlanRule> Rules => [PlanRule.Circumference, PlanRule.Gauge, PlanRule.Seam];

    public override Construction Construct(GarmentSpec garment)
    {
        ArgumentNullException.ThrowIfNull(garment);
        var sewn = garment.Working == Working.Turned;
        return new Construction(
            [
                new("panel", [new(PieceId.Cowl)], new(GarmentMeasure.Circumference, 1, []),
                    new(GarmentMeasure.Height, 1, [EdgingPlace.Brims, EdgingPlace.Brims]), garment.Working, true),
            ],
            [
                sewn
                    ? new(SeamId.BackSeam, [new(PieceId.Cowl, PieceSide.Right)], [new(PieceId.Cowl, PieceSide.Left)])
                    : new(SeamId.RoundJoin, [new(PieceId.Cowl, PieceSide.Left)], [new(PieceId.Cowl, PieceSide.Right)], JoinKind.Round),
            ],
            sewn ? [new(SewingManner.IntoTube, [SeamId.BackSeam])] : [],
            [
                new(
                    EdgingPlace.Brims, 2, [new(EdgeId.Brim, new(PieceId.Cowl, PieceSide.Bottom))],
                    sewn ? SeamId.BackSeam : SeamId.RoundJoin),
            ])
        {
            // A tube lies flat: half of it is seen.
            Worn = [new(PieceId.Cowl, Portion.LeftHalf)],
        };
    }

    public override Length Target(GarmentMeasure measure, TargetContext size) => measure switch
    {
        GarmentMeasure.Circumference => Circumference,
        GarmentMeasure.Height => Height,
        _ => throw new ArgumentOutOfRangeException(nameof(measure), measure, "Not a measure of a cowl."),
    };

    internal static GarmentKind Kind { get; } = new(
        "Cowl", "M10 16c0-3 28-3 28 0v18c0 4-28 4-28 0zM10 16c0 3 28 3 28 0", Document(),
        [
            new("Measures", "circumference", "Finished circumference", First: "70 cm"),
            new("Measures", "height", "Finished height", First: "28 cm"),
            new("Measures", "working", "How rows follow each other", FieldKind.Working, Hint: "Joined rounds draw slants; turned at each join they can draw argyle without a seam."),
        ],
        [EdgingPlace.Brims]);

    private static ObjectShape<GarmentSpec> Document() => new("cowl", "A cowl: a tube.", o =>
    {
        GarmentFields.ShapeName(o, "cowl");
        var round = o.Required("circumference", "Finished circumference.", Measured.Body, g => ((Cowl)g.Shape).Circumference);
        var height = o.Required("height", "Finished height.", Measured.Body, g => ((Cowl)g.Shape).Height);
        var working = o.Optional(
            "working",
            "How rows follow each other. turned: rows, sewn into a tube; rounds: joined rounds; "
            + "rounds-turned: joined rounds, turned at each join; spiral: one round without joins.",
            CowlWorking, g => g.Working, Working.Rounds);
        var direction = GarmentFields.DirectionField(o);
        var motif = o.Optional(
            "motif",
            $"{GarmentFields.MotifWhat} Left out, it is argyle where rows or rounds are turned, and even in rounds and a spiral, whose lines all run one way.",
            GarmentFields.MotifChoice, g => g.Motif == GarmentFields.UsualMotif(g.Working) ? null : g.Motif, "\"argyle\" or \"even\", by the way of working");
        var grading = GarmentFields.GradingField(o);
        var seams = GarmentFields.SeamsField(o);
        var starts = GarmentFields.StartsField(o, "cowl");
        var edgings = GarmentFields.EdgingsField(o, EdgingPlace.Brims);
        o.Check((v, faults) =>
        {
            if (working.TryFrom(v, out var w) && direction.TryFrom(v, out var d))
                GarmentChecks.RoundsRunUp(v.Place, w, d, faults);
        });
        return v => new GarmentSpec(
            new Cowl(round.From(v), height.From(v)), working.From(v), direction.From(v),
            motif.From(v) ?? GarmentFields.UsualMotif(working.From(v)), grading.From(v), seams.From(v), edgings.From(v))
        {
            Starts = starts.From(v),
        };
    });
}
