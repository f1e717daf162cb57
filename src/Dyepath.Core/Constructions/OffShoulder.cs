using System.Collections.Immutable;
using Dyepath.Core.Documents;
using Dyepath.Core.Edgings;
using Dyepath.Core.Fabrics;
using Dyepath.Core.Garments;
using Dyepath.Core.Quantities;
using Dyepath.Core.Sizing;

namespace Dyepath.Core.Constructions;

/// <summary>
/// An off-shoulder top or dress: two panels and two sleeves whose upper edges make one round on the shoulders, drawn in by a band or a
/// casing. Its lengths are few and its sizes many.
/// </summary>
/// <param name="BustEase">Added to the bust.</param>
/// <param name="HipEase">Added to the hip, which a dress has to pass.</param>
/// <param name="Length">From the top edge to the hem, edgings included.</param>
/// <param name="SleeveEase">Added to the upper arm.</param>
/// <param name="SleeveLength">From the top edge to the cuff, edgings included.</param>
/// <param name="SleeveJoin">How far down from the top edge each sleeve is sewn to the body.</param>
/// <param name="BandShare">The round of the drawn top edge over the girth of the shoulders.</param>
public sealed record OffShoulder(
    Ease BustEase,
    Length HipEase,
    Length Length,
    Length SleeveEase,
    Length SleeveLength,
    Length SleeveJoin,
    double BandShare) : GarmentShape
{
    /// <summary>How far up from the hem the sides are left open; zero: not at all.</summary>
    public Length Vent { get; init; } = Length.Zero;

    /// <summary>What the pattern calls it: a dress, which reaches the hip, or else a top.</summary>
    public bool IsDress { get; init; }

    /// <summary>An elastic that is a tenth shorter than what it goes round holds without cutting in (common practice, no source).</summary>
    private const double UsualBandShare = 0.9;

    public override string Name => IsDress ? "off-shoulder-dress" : "off-shoulder-top";

    public override ImmutableArray<BodyMeasure> Needs =>
    [
        .. Girth.Needs, BodyMeasure.UpperArm,
    ];

    public override ImmutableArray<BodyMeasure> Wishes => [BodyMeasure.Shoulders];

    public override ImmutableArray<PlanRule> Rules =>
    [
        PlanRule.Body, PlanRule.Width, PlanRule.Length, PlanRule.SleeveWidth, PlanRule.SleeveJoin,
        .. Vent > Length.Zero ? [PlanRule.Vent] : ImmutableArray<PlanRule>.Empty,
        PlanRule.TopEdge, PlanRule.Locked, PlanRule.Gauge, PlanRule.Seam,
    ];

    internal static GarmentKind Top { get; } = new(
        "Off-shoulder top", "M14 16h20v20H14zM14 16l-8 3l3 12l5-3M34 16l8 3l-3 12l-5-3", Document("off-shoulder-top", false, 42),
        Fields("42 cm", false), Places, Drawn)
    {
        Opens = VentsOpen,
    };

    internal static GarmentKind Dress { get; } = new(
        "Off-shoulder dress", "M15 8h18v34H15zM15 8l-8 3l3 12l5-3M33 8l8 3l-3 12l-5-3", Document("off-shoulder-dress", true, 85),
        Fields("85 cm", true), Places, Drawn)
    {
        Opens = VentsOpen,
    };

    /// <summary>Between vents the hem is no round.</summary>
    private static bool VentsOpen(EdgingPlace place, Func<string, string> typed) =>
        place == EdgingPlace.Hem && typed("vent").Any(c => c is >= '1' and <= '9');

    private BodyGirth Girth => new(BustEase, HipEase, IsDress);

    private static ImmutableArray<EdgingChoice> Drawn => [new(EdgingPlace.TopEdge, EdgingLibrary.ElasticCasing, null)];

    private static ImmutableArray<EdgingPlace> Places => [EdgingPlace.TopEdge, EdgingPlace.Hem, EdgingPlace.Cuffs];

    public override Construction Construct(GarmentSpec garment) => new(
        [
            new("panel", [new(PieceId.Front), new(PieceId.Back, MayTurn: true)], new(GarmentMeasure.Width, 2, []),
                new(GarmentMeasure.Length, 1, [EdgingPlace.Hem, EdgingPlace.TopEdge]), Working.Turned, true)
            {
                Openings =
                [
                    Joined("garment.length"),
                    .. HasVents ? [SideVent] : ImmutableArray<OpeningDesign>.Empty,
                ],
                Alike = HasVents,
            },
            new("sleeve", [new(PieceId.Sleeve, 2)], new(GarmentMeasure.SleeveWidth, 1, []),
                new(GarmentMeasure.SleeveLength, 1, [EdgingPlace.Cuffs, EdgingPlace.TopEdge]), Working.Turned, true)
            {
                Openings = [Joined("garment.sleeveLength")],
            },
        ],
        [
            new(SeamId.LeftSide, [AboveVent(PieceId.Front, PieceSide.Right)], [AboveVent(PieceId.Back, PieceSide.Left)]),
            new(SeamId.RightSide, [AboveVent(PieceId.Front, PieceSide.Left)], [AboveVent(PieceId.Back, PieceSide.Right)]),
            // Cuff down and outside out, a sleeve's left-hand side is at the front of the left arm, and at the back of the right one.
            new(SeamId.LeftSleeveFront, [Above(PieceId.Front, PieceSide.Right)], [Above(PieceId.Sleeve, PieceSide.Left)]),
            new(SeamId.LeftSleeveBack, [Above(PieceId.Back, PieceSide.Left)], [Above(PieceId.Sleeve, PieceSide.Right)]),
            new(SeamId.RightSleeveFront, [Above(PieceId.Front, PieceSide.Left)], [Above(PieceId.Sleeve, PieceSide.Right)]),
            new(SeamId.RightSleeveBack, [Above(PieceId.Back, PieceSide.Right)], [Above(PieceId.Sleeve, PieceSide.Left)]),
            new(SeamId.LeftSleeve, [Below(PieceId.Sleeve, PieceSide.Right)], [Below(PieceId.Sleeve, PieceSide.Left)]),
            new(SeamId.RightSleeve, [Below(PieceId.Sleeve, PieceSide.Right)], [Below(PieceId.Sleeve, PieceSide.Left)]),
        ],
        [
            ShoulderedBody.Sides,
            new(SewingManner.FromBottom, [SeamId.LeftSleeve, SeamId.RightSleeve]),
            new(SewingManner.FromSeamsUp, [SeamId.LeftSleeveFront, SeamId.LeftSleeveBack, SeamId.RightSleeveFront, SeamId.RightSleeveBack]),
        ],
        [
            HasVents ? VentedHem : ShoulderedBody.Hem,
            new(EdgingPlace.Cuffs, 2, [new(EdgeId.Cuff, new(PieceId.Sleeve, PieceSide.Bottom))], SeamId.LeftSleeve),
            // With the outside facing it runs from right to left.
            new(EdgingPlace.TopEdge, 1,
                [
                    new(EdgeId.Front, TopOf(PieceId.Front)), new(EdgeId.RightSleeve, TopOf(PieceId.Sleeve)),
                    new(EdgeId.Back, TopOf(PieceId.Back)), new(EdgeId.LeftSleeve, TopOf(PieceId.Sleeve)),
                ],
                SeamId.LeftSleeveFront),
        ])
    {
        Held = new(EdgingPlace.TopEdge, BodyMeasure.Shoulders, Math.Clamp(BandShare, Edging.ShortestShare, Edging.LongestShare)),
        Worn =
        [
            new(PieceId.Front), new(PieceId.Sleeve, Portion.RightHalf, PieceId.Front, PieceSide.Left),
            new(PieceId.Sleeve, Portion.LeftHalf, PieceId.Front, PieceSide.Right),
        ],
    };

    public override Length Target(GarmentMeasure measure, TargetContext size)
    {
        ArgumentNullException.ThrowIfNull(size);
        var body = size.Body;
        return measure switch
        {
            GarmentMeasure.Width => Girth.Target(body),
            GarmentMeasure.Length => Length,
            GarmentMeasure.SleeveWidth => body[BodyMeasure.UpperArm] + SleeveEase,
            GarmentMeasure.SleeveLength => SleeveLength,
            GarmentMeasure.SleeveJoin => SleeveJoin,
            GarmentMeasure.Vent => Vent,
            _ => throw new ArgumentOutOfRangeException(nameof(measure), measure, "Not a measure of an off-shoulder top."),
        };
    }

    public override Length? Floor(GarmentMeasure measure, TargetContext size)
    {
        ArgumentNullException.ThrowIfNull(size);
        return measure == GarmentMeasure.Width ? Girth.Floor(size.Body) : null;
    }

    public override ImmutableArray<WornFit> Worn(TargetContext size)
    {
        ArgumentNullException.ThrowIfNull(size);
        var (body, finished) = (size.Body, size.Finished);
        return
        [
            // What is drawn in must at least reach round what it is drawn in to.
            .. body.Has(BodyMeasure.Shoulders)
                ? [new(FitPart.TopEdge, finished[GarmentMeasure.Width] + 2 * finished[GarmentMeasure.SleeveWidth], BodyMeasure.Shoulders,
                    BandShare * body[BodyMeasure.Shoulders], "garment.bandShare", Mend.EaseOrWiderSleeves)]
                : ImmutableArray<WornFit>.Empty,
            new(
                FitPart.Sleeve, finished[GarmentMeasure.SleeveWidth], BodyMeasure.UpperArm, body[BodyMeasure.UpperArm],
                "garment.sleeveEase", Mend.SleeveEase),
            .. Girth.Worn(finished[GarmentMeasure.Width], body),
        ];
    }

    public override ImmutableArray<Findings.Finding> Faults() =>
    [
        .. BustEase.Faults("garment.ease"),
        .. Vent > Length - SleeveJoin - LeastSewn
            ? [new Findings.Finding(Findings.FindingLevel.Fault, "garment.vent", FormattableString.Invariant(
                $"Vents of {Vent.Centimetres:0.#} cm leave nothing of the sides to sew below the sleeves: make them {(Length - SleeveJoin - LeastSewn).Centimetres:0.#} cm or shorter."))]
            : ImmutableArray<Findings.Finding>.Empty,
    ];

    /// <summary>Of each side, so that front and back hold together (common practice, no source).</summary>
    private static readonly Length LeastSewn = Length.FromCentimetres(15);

    private bool HasVents => Vent > Length.Zero;

    /// <summary>The lower edges of front and back, which are alike, each from vent to vent.</summary>
    private static PieceEdge TopOf(PieceId piece) => new PieceEdge(piece, PieceSide.Top).Reverse();

    private static EdgingEdge VentedHem { get; } = new(
        EdgingPlace.Hem, 2, [new(EdgeId.LowerEdge, new(PieceId.Front, PieceSide.Bottom))], null)
    {
        OpensAt = OpenEnd.Vent,
    };

    private static OpeningDesign SideVent { get; } = new(
        OpeningId.Vent, [PieceSide.Left, PieceSide.Right], OpeningAt.Beginning, GarmentMeasure.Vent, null, "garment.vent");

    private PieceEdge AboveVent(PieceId piece, PieceSide side) => Below(piece, side) with { Above = HasVents ? OpeningId.Vent : null };

    private static PieceEdge Below(PieceId piece, PieceSide side) => new(piece, side, Stretch.BeforeOpening, OpeningId.SleeveJoin);

    private static PieceEdge Above(PieceId piece, PieceSide side) => new(piece, side, Stretch.Opening, OpeningId.SleeveJoin);

    private static OpeningDesign Joined(string field) =>
        new(OpeningId.SleeveJoin, [PieceSide.Left, PieceSide.Right], OpeningAt.End, GarmentMeasure.SleeveJoin, null, field);

    private static ImmutableArray<GarmentField> Fields(string length, bool isDress) =>
    [
        new("Ease and lengths", "ease", "How loose at the bust", FieldKind.Ease),
        .. isDress ? [new GarmentField("Ease and lengths", "hipEase", "Ease at the hip", Usual: "5 cm")] : ImmutableArray<GarmentField>.Empty,
        new("Ease and lengths", "length", "From top edge to hem", Usual: length),
        new("Ease and lengths", "vent", "Vents at the sides", Usual: "none", Hint: "Open from the hem up."),
        new("Sleeves", "sleeveEase", "Ease at the upper arm", Usual: "8 cm"),
        new("Sleeves", "sleeveLength", "From top edge to cuff", Usual: "40 cm"),
        new("Ease and lengths", "bandShare", "Top edge, of the shoulders", FieldKind.Share, Usual: "90 %", Hint: "What the band or the elastic is drawn in to."),
        new("Sleeves", "sleeveJoin", "Sewn to the body for", Usual: "5 cm", Hint: "4 to 6 cm below the top edge is common."),
    ];

    private static ObjectShape<GarmentSpec> Document(string name, bool isDress, double centimetres) => new(
        name, isDress ? "An off-shoulder dress: panels and sleeves with one top edge." : "An off-shoulder top: panels and sleeves with one top edge.", o =>
    {
        GarmentFields.ShapeName(o, name);
        var ease = TopFields.BustEase(o, g => ((OffShoulder)g.Shape).BustEase, "classic");
        var hip = o.Optional("hipEase", "Added to the hip, where a dress has to pass it.", Measured.Ease, g => ((OffShoulder)g.Shape).HipEase, Quantities.Length.FromCentimetres(5));
        var length = o.Optional("length", "From the top edge to the hem.", Measured.Body, g => ((OffShoulder)g.Shape).Length, Quantities.Length.FromCentimetres(centimetres));
        var vent = o.Optional("vent", "How far up from the hem the sides are left open.", Measured.Step, g => ((OffShoulder)g.Shape).Vent, Quantities.Length.Zero);
        var arm = o.Optional("sleeveEase", "Added to the upper arm.", Measured.Ease, g => ((OffShoulder)g.Shape).SleeveEase, Quantities.Length.FromCentimetres(8));
        var sleeve = o.Optional("sleeveLength", "From the top edge to the cuff.", Measured.Body, g => ((OffShoulder)g.Shape).SleeveLength, Quantities.Length.FromCentimetres(40));
        var join = o.Optional("sleeveJoin", "How far down from the top edge each sleeve is sewn to the body.", Measured.Body, g => ((OffShoulder)g.Shape).SleeveJoin, Quantities.Length.FromCentimetres(5));
        var share = o.Optional("bandShare", "The drawn top edge over the girth of the shoulders.", Measured.Share, g => ((OffShoulder)g.Shape).BandShare, UsualBandShare);
        var spec = GarmentFields.Turned(o, ["front", "back", "sleeve"], Places);
        return v => spec(v, new OffShoulder(
            ease.From(v), hip.From(v), length.From(v), arm.From(v), sleeve.From(v), join.From(v), share.From(v))
        {
            IsDress = isDress,
            Vent = vent.From(v),
        });
    });
}
