using System.Collections.Immutable;
using Dyepath.Core.Documents;
using Dyepath.Core.Edgings;
using Dyepath.Core.Fabrics;
using Dyepath.Core.Garments;
using Dyepath.Core.Quantities;
using Dyepath.Core.Sizing;

namespace Dyepath.Core.Constructions;

/// <summary>A bag: two panels, between them perhaps a gusset, and a strap; gusset and strap of companion yarn.</summary>
/// <param name="Width">Of a panel, from side to side.</param>
/// <param name="Height">Without the top edging, which stands above it.</param>
/// <param name="Gusset">How deep the bag is; 0 for panels that meet.</param>
/// <param name="Strap">From one side of the bag over the shoulder to the other.</param>
/// <param name="StrapWidth">From long edge to long edge.</param>
public sealed record Bag(Length Width, Length Height, Length Gusset, Length Strap, Length StrapWidth) : GarmentShape
{
    /// <summary>Two edges of a strip narrower than this can hardly be sewn (common practice, no source).</summary>
    private static readonly Length ShallowestGusset = Length.FromCentimetres(1.5);

    public override string Name => "bag";

    public override ImmutableArray<BodyMeasure> Needs => [];

    public override ImmutableArray<PlanRule> Rules =>
    [
        PlanRule.Width,
        .. HasGusset ? [PlanRule.GussetLength] : ImmutableArray<PlanRule>.Empty,
        PlanRule.StrapLength, PlanRule.Gauge, PlanRule.Seam,
    ];

    public override string? PlainPiecesField => "strap";

    internal static GarmentKind Kind { get; } = new(
        "Bag", "M9 20h30v22H9zM12 20C12 2 36 2 36 20", Document(),
        [
            new("Measures", "width", "Width", First: "34 cm"), new("Measures", "height", "Height", First: "36 cm"),
            new("Measures", "gusset", "Depth of the gusset", Usual: "6 cm", Hint: "Between front and back, in companion yarn; 0 for none."),
            new("Strap", "strap", "Length of the strap", First: "70 cm", Hint: "In companion yarn; 55 to 75 cm hangs from the shoulder."),
            new("Strap", "strapWidth", "Width of the strap", Usual: "4 cm"),
        ],
        [EdgingPlace.TopEdge]);

    private bool HasGusset => Gusset > Length.Zero;

    public override Construction Construct(GarmentSpec garment) => new(
        [
            new("panel", [new(PieceId.Front), new(PieceId.Back, MayTurn: true)], new(GarmentMeasure.Width, 1, []) { IsFlat = true },
                new(GarmentMeasure.Height, 1, [EdgingPlace.TopEdge]) { IsFlat = true },
                Working.Turned, true),
            .. HasGusset
                ? ImmutableArray.Create(new PieceGroup(
                    "gusset", [new(PieceId.Gusset)],
                    new(GarmentMeasure.GussetDepth, 1, []) { Shortest = new(ShallowestGusset, "garment.gusset", PieceId.Gusset, Mend.DeeperGusset) },
                    // Both of its ends lie in the top edge.
                    new(GarmentMeasure.GussetLength, 1, [EdgingPlace.TopEdge, EdgingPlace.TopEdge]), Working.Turned, false))
                : [],
            new("strap", [new(PieceId.Strap)], new(GarmentMeasure.StrapWidth, 1, []), new(GarmentMeasure.StrapLength, 1, []),
                Working.Turned, false),
        ],
        HasGusset ? GussetJoins : PanelJoins,
        [
            HasGusset
                ? new(SewingManner.AlongThreeSides, [SeamId.GussetToFront, SeamId.GussetToBack])
                : new(SewingManner.IntoCover, [SeamId.LeftSide, SeamId.LowerSeam, SeamId.RightSide]),
            new(SewingManner.HangFrom, []),
        ],
        [
            new(EdgingPlace.TopEdge, 1,
                HasGusset
                    ?
                    [
                        new(EdgeId.Front, Top(PieceId.Front)), new(EdgeId.OneGussetEnd, new(PieceId.Gusset, PieceSide.Bottom)),
                        new(EdgeId.Back, Top(PieceId.Back)), new(EdgeId.OtherGussetEnd, Top(PieceId.Gusset)),
                    ]
                    : [new(EdgeId.Front, Top(PieceId.Front)), new(EdgeId.Back, Top(PieceId.Back))],
                HasGusset ? SeamId.GussetToFront : SeamId.LeftSide),
        ])
    {
        Worn = [new(PieceId.Front)],
    };

    public override Length Target(GarmentMeasure measure, TargetContext size)
    {
        ArgumentNullException.ThrowIfNull(size);
        return measure switch
        {
            GarmentMeasure.Width => Width,
            GarmentMeasure.Height => Height,
            GarmentMeasure.GussetDepth => Gusset,
            GarmentMeasure.GussetLength => 2 * size.Finished[GarmentMeasure.Height] + size.Finished[GarmentMeasure.Width],
            GarmentMeasure.StrapWidth => StrapWidth,
            GarmentMeasure.StrapLength => Strap + 2 * StrapWidth,
            _ => throw new ArgumentOutOfRangeException(nameof(measure), measure, "Not a measure of a bag."),
        };
    }

    private static PieceEdge Top(PieceId piece) => new PieceEdge(piece, PieceSide.Top).Reverse();

    /// <summary>
    /// The gusset, outside out, goes from the top of the front's left side down, along the bottom, and up its right side.
    /// </summary>
    private static ImmutableArray<Join> GussetJoins { get; } =
    [
        new(SeamId.GussetToFront,
            [
                new PieceEdge(PieceId.Front, PieceSide.Left).Reverse(), new(PieceId.Front, PieceSide.Bottom),
                new(PieceId.Front, PieceSide.Right),
            ],
            [new(PieceId.Gusset, PieceSide.Left)]),
        new(SeamId.GussetToBack,
            [
                new PieceEdge(PieceId.Back, PieceSide.Right).Reverse(), new PieceEdge(PieceId.Back, PieceSide.Bottom).Reverse(),
                new(PieceId.Back, PieceSide.Left),
            ],
            [new(PieceId.Gusset, PieceSide.Right)]),
    ];

    private static ImmutableArray<Join> PanelJoins { get; } =
    [
        new(SeamId.LeftSide, [new(PieceId.Front, PieceSide.Right)], [new(PieceId.Back, PieceSide.Left)]),
        new(SeamId.RightSide, [new(PieceId.Front, PieceSide.Left)], [new(PieceId.Back, PieceSide.Right)]),
        new(SeamId.LowerSeam, [new(PieceId.Front, PieceSide.Bottom)], [new PieceEdge(PieceId.Back, PieceSide.Bottom).Reverse()]),
    ];

    private static ObjectShape<GarmentSpec> Document() => new("bag", "A bag: two panels, a gusset and a strap of companion yarn.", o =>
    {
        GarmentFields.ShapeName(o, "bag");
        var width = o.Required("width", "Width of the panels.", Measured.Body, g => ((Bag)g.Shape).Width);
        var height = o.Required("height", "Height of the panels, without the top edging.", Measured.Body, g => ((Bag)g.Shape).Height);
        var gusset = o.Optional(
            "gusset", "How deep the gusset of companion yarn is, along both sides and the bottom; 0 for none.", Measured.Step, g => ((Bag)g.Shape).Gusset,
            Length.FromCentimetres(6));
        var strap = o.Required("strap", "Length of the strap of companion yarn, without the ends that are sewn on.", Measured.Body, g => ((Bag)g.Shape).Strap);
        var strapWidth = o.Optional("strapWidth", "Width of the strap.", Measured.Body, g => ((Bag)g.Shape).StrapWidth, Length.FromCentimetres(4));
        var spec = GarmentFields.Turned(o, ["front", "back"], [EdgingPlace.TopEdge]);
        return v => spec(v, new Bag(width.From(v), height.From(v), gusset.From(v), strap.From(v), strapWidth.From(v)));
    });
}
