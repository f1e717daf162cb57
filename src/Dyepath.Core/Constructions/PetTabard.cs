using System.Collections.Immutable;
using Dyepath.Core.Documents;
using Dyepath.Core.Edgings;
using Dyepath.Core.Fabrics;
using Dyepath.Core.Garments;
using Dyepath.Core.Quantities;
using Dyepath.Core.Sizing;

namespace Dyepath.Core.Constructions;

/// <summary>
/// A pet's tabard: one rectangle over the back, one under the chest, a slit for the head, and openings for the forelegs at the sides.
/// </summary>
/// <param name="Chest">Girth behind the forelegs.</param>
/// <param name="Ease">All round, beyond the chest.</param>
/// <param name="Length">From the neck to the hem.</param>
/// <param name="LegOpening">From the shoulder seam down each side.</param>
/// <param name="Head">Girth at the widest place that the neck has to pass.</param>
public sealed record PetTabard(Length Chest, Length Ease, Length Length, Length LegOpening, Length Head) : GarmentShape
{
    public override string Name => "pet-tabard";

    public override ImmutableArray<BodyMeasure> Needs => [];

    public override ImmutableArray<PlanRule> Rules =>
        [PlanRule.Width, PlanRule.Length, PlanRule.NeckWidth, PlanRule.LegOpening, PlanRule.Gauge, PlanRule.Seam];

    internal static GarmentKind Kind { get; } = new(
        "Pet's tabard", "M8 18h24l6-6 4 4-3 6v16h-4v-8H14v8h-4zM14 18v12h14V18", Document(),
        [
            new("Measures", "chest", "Round the chest", First: "48 cm", Hint: "Measured behind the forelegs."),
            new("Measures", "chestEase", "Ease at the chest", Usual: "4 cm"),
            new("Measures", "length", "From neck to hem", First: "34 cm"),
            new("Measures", "legOpening", "Leg openings, from the shoulder", First: "14 cm"),
            new("Measures", "head", "Round the head", First: "36 cm", Hint: "At its widest: the neck has to pass it."),
        ],
        Places);

    private static ImmutableArray<EdgingPlace> Places => [EdgingPlace.Hem, EdgingPlace.Neck, EdgingPlace.LegOpenings];

    public override Construction Construct(GarmentSpec garment) => new(
        [
            new("panel", [new(PieceId.Front), new(PieceId.Back, MayTurn: true)], new(GarmentMeasure.Width, 2, []),
                new(GarmentMeasure.Length, 1, [EdgingPlace.Hem]), Working.Turned, true)
            {
                Openings =
                [
                    new(OpeningId.Neck, [PieceSide.Top], OpeningAt.Middle, GarmentMeasure.NeckWidth, EdgingPlace.Neck, "garment.head")
                    {
                        NeverUnder = true,
                    },
                    new(OpeningId.LegOpening, [PieceSide.Left, PieceSide.Right], OpeningAt.End, GarmentMeasure.LegOpening,
                        EdgingPlace.LegOpenings, "garment.legOpening"),
                ],
            },
        ],
        ShoulderedBody.JoinsBelow(OpeningId.LegOpening, PieceId.Front, PieceId.Front),
        [ShoulderedBody.Shoulders, ShoulderedBody.Sides],
        [
            ShoulderedBody.Hem, ShoulderedBody.Neck(corners: 2),
            ShoulderedBody.AtSides(EdgingPlace.LegOpenings, OpeningId.LegOpening, PieceId.Front),
        ])
    {
        Worn = [new(PieceId.Back)],
    };

    public override Length Target(GarmentMeasure measure, TargetContext size)
    {
        ArgumentNullException.ThrowIfNull(size);
        return measure switch
        {
            GarmentMeasure.Width => Chest + Ease,
            GarmentMeasure.Length => Length,
            GarmentMeasure.NeckWidth => GarmentFit.SlitFor(HeadOf(size.Body)),
            GarmentMeasure.LegOpening => LegOpening,
            _ => throw new ArgumentOutOfRangeException(nameof(measure), measure, "Not a measure of a pet's tabard."),
        };
    }

    public override ImmutableArray<WornFit> Worn(TargetContext size)
    {
        ArgumentNullException.ThrowIfNull(size);
        var (head, finished) = (HeadOf(size.Body), size.Finished);
        var body = size.Body with { Measures = size.Body.Measures.SetItem(BodyMeasures.Key(BodyMeasure.Head), head) };
        return
        [
            GarmentFit.Head(finished[GarmentMeasure.NeckWidth], body, "garment.head"),
        ];
    }

    /// <summary>A size of the designer's own may say its own.</summary>
    private Length HeadOf(BodyOfSize body) => body.Has(BodyMeasure.Head) ? body[BodyMeasure.Head] : Head;

    private static ObjectShape<GarmentSpec> Document() => new("pet-tabard", "A pet's tabard: two rectangles, a slit neck, and leg openings at the sides.", o =>
    {
        GarmentFields.ShapeName(o, "pet-tabard");
        var chest = o.Required("chest", "Girth of the chest behind the forelegs.", Measured.Body, g => ((PetTabard)g.Shape).Chest);
        var ease = o.Optional("chestEase", "Added to the chest.", Measured.Ease, g => ((PetTabard)g.Shape).Ease, Quantities.Length.FromCentimetres(4));
        var length = o.Required("length", "From the neck to the hem.", Measured.Body, g => ((PetTabard)g.Shape).Length);
        var legs = o.Required("legOpening", "From the shoulder seam down each side.", Measured.Body, g => ((PetTabard)g.Shape).LegOpening);
        var head = o.Required("head", "Girth of the head at its widest, which the neck has to pass.", Measured.Body, g => ((PetTabard)g.Shape).Head);
        var spec = GarmentFields.Turned(o, ["front", "back"], Places);
        return v => spec(v, new PetTabard(chest.From(v), ease.From(v), length.From(v), legs.From(v), head.From(v)));
    });
}
