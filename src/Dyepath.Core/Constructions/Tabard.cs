using System.Collections.Immutable;
using Dyepath.Core.Documents;
using Dyepath.Core.Edgings;
using Dyepath.Core.Fabrics;
using Dyepath.Core.Findings;
using Dyepath.Core.Garments;
using Dyepath.Core.Quantities;
using Dyepath.Core.Sizing;

namespace Dyepath.Core.Constructions;

/// <summary>
/// A tabard: front and back with a slit neck, held together at the sides by plain tabs; nothing is tied, so that children may wear it.
/// </summary>
/// <param name="BustEase">All round, beyond the chest, tabs counted.</param>
/// <param name="BelowWaist">Length is the chart's back waist length plus this.</param>
/// <param name="Neck">A slit between the shoulders.</param>
/// <param name="TabLength">From front to back.</param>
/// <param name="TabHeight">Along the sides.</param>
public sealed record Tabard(Ease BustEase, Length BelowWaist, Neck Neck, Length TabLength, Length TabHeight) : GarmentShape
{
    /// <summary>The edging of a neck, which stands beside its slit (two or three rounds; common practice, no source).</summary>
    private static readonly Length NeckBand = Length.FromCentimetres(1.5);

    public override string Name => "tabard";

    public override ImmutableArray<BodyMeasure> Needs => [BodyMeasure.Bust, BodyMeasure.BackWaistLength];

    public override ImmutableArray<BodyMeasure> Wishes => [BodyMeasure.Head];

    public override ImmutableArray<PlanRule> Rules =>
        [PlanRule.PanelWidth, PlanRule.Length, .. Neck.Rules, PlanRule.Tabs, PlanRule.Locked, PlanRule.Gauge, PlanRule.Seam];

    public override string? PlainPiecesField => "tabLength";

    internal static GarmentKind Kind { get; } = new(
        "Tabard", "M13 8h6l5 3 5-3h6v32H13zM19 8h10M13 24h-4v6h4M35 24h4v6h-4", Document(),
        [
            new("Ease and lengths", "ease", "How loose at the chest", FieldKind.Ease),
            new("Ease and lengths", "belowWaist", "Hangs below the waist", Usual: "10 cm"),
            .. NeckChoice.Slit.Fields,
            new("Tabs", "tabLength", "Tabs, from front to back", Usual: "3 cm", Hint: "In companion yarn, one at each side."),
            new("Tabs", "tabHeight", "Tabs, along the side", Usual: "5 cm"),
        ],
        [EdgingPlace.Hem, EdgingPlace.Neck, EdgingPlace.Armholes])
    {
        Chart = "child",
    };

    public override Construction Construct(GarmentSpec garment) => new(
        [
            new("panel", [new(PieceId.Front), new(PieceId.Back, MayTurn: true)], new(GarmentMeasure.PanelWidth, 1, []),
                new(GarmentMeasure.Length, 1, [EdgingPlace.Hem]), Working.Turned, true)
            {
                Openings =
                [
                    Neck.Opening,
                    new(OpeningId.Tab, [PieceSide.Left, PieceSide.Right], OpeningAt.Middle, GarmentMeasure.TabJoin, null, "garment.tabHeight"),
                ],
            },
            new("tab", [new(PieceId.Tab, 2)], new(GarmentMeasure.TabLength, 1, []), new(GarmentMeasure.TabHeight, 1, []),
                Working.Turned, false),
        ],
        [
            .. ShoulderedBody.ShoulderJoins,
            // Seen from outside, a tab on the wearer's left has the front at its left-hand side, one on the right has the back there.
            new(SeamId.LeftTabFront, [Tabbed(PieceId.Front, PieceSide.Right)], [new(PieceId.Tab, PieceSide.Left)]),
            new(SeamId.LeftTabBack, [Tabbed(PieceId.Back, PieceSide.Left)], [new(PieceId.Tab, PieceSide.Right)]),
            new(SeamId.RightTabFront, [Tabbed(PieceId.Front, PieceSide.Left)], [new(PieceId.Tab, PieceSide.Right)]),
            new(SeamId.RightTabBack, [Tabbed(PieceId.Back, PieceSide.Right)], [new(PieceId.Tab, PieceSide.Left)]),
        ],
        [
            ShoulderedBody.Shoulders,
            new(SewingManner.Between, [SeamId.LeftTabFront, SeamId.LeftTabBack, SeamId.RightTabFront, SeamId.RightTabBack]),
        ],
        [
            new(EdgingPlace.Hem, 1,
                [
                    new(EdgeId.BackLeftSideBelowTab, Side(PieceId.Back, PieceSide.Left, Stretch.BeforeOpening).Reverse()),
                    new(EdgeId.BackLowerEdge, new(PieceId.Back, PieceSide.Bottom)),
                    new(EdgeId.BackRightSideBelowTab, Side(PieceId.Back, PieceSide.Right, Stretch.BeforeOpening)),
                    new(EdgeId.RightTabLowerEdge, new(PieceId.Tab, PieceSide.Bottom)),
                    new(EdgeId.FrontRightSideBelowTab, Side(PieceId.Front, PieceSide.Left, Stretch.BeforeOpening).Reverse()),
                    new(EdgeId.FrontLowerEdge, new(PieceId.Front, PieceSide.Bottom)),
                    new(EdgeId.FrontLeftSideBelowTab, Side(PieceId.Front, PieceSide.Right, Stretch.BeforeOpening)),
                    new(EdgeId.LeftTabLowerEdge, new(PieceId.Tab, PieceSide.Bottom)),
                ],
                SeamId.LeftTabBack, Corners: 4, PerCorner: 2),
            .. Neck.Edgings,
            new(EdgingPlace.Armholes, 2,
                [
                    new(EdgeId.FrontSideAboveTab, Side(PieceId.Front, PieceSide.Right, Stretch.AfterOpening)),
                    new(EdgeId.BackSideAboveTab, Side(PieceId.Back, PieceSide.Left, Stretch.AfterOpening).Reverse()),
                    new(EdgeId.TabUpperEdge, new PieceEdge(PieceId.Tab, PieceSide.Top).Reverse()),
                ],
                SeamId.LeftTabFront),
        ])
    {
        Worn = [new(PieceId.Front)],
    };

    public override Length Target(GarmentMeasure measure, TargetContext size)
    {
        ArgumentNullException.ThrowIfNull(size);
        var body = size.Body;
        return measure switch
        {
            GarmentMeasure.PanelWidth => (body[BodyMeasure.Bust] + BustEase.Length) / 2 - TabLength,
            GarmentMeasure.Length => body[BodyMeasure.BackWaistLength] + BelowWaist,
            GarmentMeasure.NeckWidth => Neck.Target(measure, size)!.Value,
            GarmentMeasure.TabJoin => TabHeight,
            GarmentMeasure.TabLength => TabLength,
            GarmentMeasure.TabHeight => size.Finished[GarmentMeasure.TabJoin],
            _ => throw new ArgumentOutOfRangeException(nameof(measure), measure, "Not a measure of a tabard."),
        };
    }

    public override Length? Floor(GarmentMeasure measure, TargetContext size)
    {
        ArgumentNullException.ThrowIfNull(size);
        if (measure != GarmentMeasure.PanelWidth)
            return null;
        var atBust = size.Body.Floor(BodyMeasure.Bust, BustEase.Length) / 2 - TabLength;
        var atShoulders = Neck.Target(GarmentMeasure.NeckWidth, size)!.Value + 2 * (GarmentFit.LeastShoulder(size.Wearer) + NeckBand);
        return Length.Max(atBust, atShoulders);
    }

    public override ImmutableArray<WornFit> Worn(TargetContext size)
    {
        ArgumentNullException.ThrowIfNull(size);
        var (body, finished) = (size.Body, size.Finished);
        var (panel, neck) = (finished[GarmentMeasure.PanelWidth], finished[GarmentMeasure.NeckWidth]);
        return
        [
            .. Neck.Fits(size),
            ShoulderedBody.ShoulderFit((panel - neck) / 2, BodyMeasure.Bust, size),
            new(
                FitPart.FrontBackAndTabs, 2 * (panel + finished[GarmentMeasure.TabLength]), BodyMeasure.Bust, body[BodyMeasure.Bust],
                "garment.ease", Mend.Ease),
        ];
    }

    public override ImmutableArray<Finding> Faults() => BustEase.Faults("garment.ease");

    private static PieceEdge Tabbed(PieceId piece, PieceSide side) => Side(piece, side, Stretch.Opening);

    private static PieceEdge Side(PieceId piece, PieceSide side, Stretch stretch) => new(piece, side, stretch, OpeningId.Tab);

    private static ObjectShape<GarmentSpec> Document() => new("tabard", "A tabard: front and back, a slit neck, and plain tabs at the sides.", o =>
    {
        GarmentFields.ShapeName(o, "tabard");
        var ease = TopFields.BustEase(o, g => ((Tabard)g.Shape).BustEase, "loose");
        var below = TopFields.BelowWaist(o, g => ((Tabard)g.Shape).BelowWaist, 10);
        var neck = NeckChoice.Slit.Document(o, null, g => ((Tabard)g.Shape).Neck);
        var length = o.Optional(
            "tabLength", "How far each tab of companion yarn holds front and back apart.", Measured.Body, g => ((Tabard)g.Shape).TabLength, Length.FromCentimetres(3));
        var height = o.Optional(
            "tabHeight", "How much of each side a tab takes.", Measured.Body, g => ((Tabard)g.Shape).TabHeight, Length.FromCentimetres(5));
        var spec = GarmentFields.Turned(o, ["front", "back"], [EdgingPlace.Hem, EdgingPlace.Neck, EdgingPlace.Armholes]);
        return v => spec(v, new Tabard(ease.From(v), below.From(v), neck(v), length.From(v), height.From(v)));
    });
}
