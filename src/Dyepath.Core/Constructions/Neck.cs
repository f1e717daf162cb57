using System.Collections.Immutable;
using System.Globalization;
using Dyepath.Core.Documents;
using Dyepath.Core.Edgings;
using Dyepath.Core.Garments;
using Dyepath.Core.Quantities;
using Dyepath.Core.Sizing;

namespace Dyepath.Core.Constructions;

/// <summary>How a neck is left open or cut.</summary>
public enum NeckForm
{
    /// <summary>Left open between two shoulder seams.</summary>
    Slit,

    /// <summary>A slit so wide that the shoulders beside it are short.</summary>
    Boat,

    /// <summary>A small slit; the wearer's left shoulder is left open beside it, and buttoned.</summary>
    Buttoned,

    /// <summary>Cut straight down and across.</summary>
    Square,

    /// <summary>Cut along half an ellipse.</summary>
    Round,

    /// <summary>Cut to a point in front; the back is not cut.</summary>
    V,

    /// <summary>Cut square in front, its lower corners filled with plain triangles up to the lines of a V; the back is not cut.</summary>
    VInsert,
}

/// <summary>The neck of a garment whose front and back meet at the shoulders.</summary>
/// <param name="Form">How it is left open or cut.</param>
/// <param name="Width">Of the base size, after its edging; missing, by rule.</param>
public sealed record Neck(NeckForm Form, Length? Width)
{
    /// <summary>Added to the width per size above the base, taken off below it.</summary>
    public Length Step { get; init; } = UsualStep;

    /// <summary>It opens in front, so that no head has to pass.</summary>
    public bool InFront { get; init; }

    /// <summary>Of one that is cut, from the shoulder in front, after its edging; missing, by rule.</summary>
    public Length? Depth { get; init; }

    /// <summary>The same at the back.</summary>
    public Length? BackDepth { get; init; }

    /// <summary>
    /// How far the edge of one that is cut may lie off its place before the motif gives way; missing, as far as every size comes out well.
    /// </summary>
    public Length? LetOff { get; init; }

    /// <summary>What the document calls each form, and what the form field says of it.</summary>
    internal static ImmutableArray<(NeckForm Form, string Word, string Label)> Forms { get; } =
    [
        (NeckForm.Slit, "slit", "a slit between the shoulders"), (NeckForm.Boat, "boat", "boat: a wide slit"),
        (NeckForm.Buttoned, "buttoned", "small, left shoulder buttoned"), (NeckForm.Square, "square", "square, cut"),
        (NeckForm.Round, "round", "round, cut in steps"), (NeckForm.V, "v", "V, cut in steps"),
        (NeckForm.VInsert, "v-insert", "V, square cut filled with plain inserts"),
    ];

    internal static readonly Length UsualStep = Length.FromCentimetres(0.5);

    private const string Field = "garment.neckWidth";

    /// <summary>An adult's boat neck over the cross back: it leaves 5 to 6 cm of either shoulder (common practice, no source).</summary>
    private const double BoatOfCrossBack = 0.72;

    /// <summary>What a boat neck has to leave of both shoulders together, so that it stays on (common practice, no source).</summary>
    private static readonly Length LeastBesideBoat = Length.FromCentimetres(3);

    /// <param name="Adult">In centimetres (common practice, no source).</param>
    /// <param name="OfHead">A child's, over its head (common practice, no source).</param>
    /// <param name="Profile">What is cut out; missing: nothing.</param>
    private sealed record Style(Extent Adult, Extent OfHead, ImmutableArray<CutPoint>? Profile)
    {
        /// <summary>What the width field says of it where it is left out, but for an adult's centimetres.</summary>
        public string? UsualWidth { get; init; }

        /// <summary>The line of its edge where inserts fill a part of what is cut out; missing: <see cref="Profile"/>.</summary>
        public ImmutableArray<CutPoint>? Edge { get; init; }
    }

    /// <param name="Depth">In front.</param>
    /// <param name="Back">Depth at the back; none where it is not cut.</param>
    private readonly record struct Extent(double Width, double Depth = 0, double? Back = null);

    /// <summary>A child's neck that opens in front need not pass the head (common practice, no source).</summary>
    private const double OpenOfHead = 0.3;

    private Style Of => Form switch
    {
        NeckForm.Slit when InFront => new(
            // It need not pass the head: 16 to 20 cm is common.
            new(18), new(0.3), null),
        NeckForm.Slit => new(
            // 23 to 30 cm is common for an adult; a child's is 21 cm for a baby's head of 46, 24 for 53.
            new(26), new(0.46), null)
        {
            UsualWidth = "26 cm, or by the head",
        },
        NeckForm.Boat => new(
            // 28 to 34 cm is common for an adult.
            new(30), new(0.46), null)
        {
            UsualWidth = "0.72 of the cross back",
        },
        NeckForm.Buttoned => new(
            // 16 to 20 cm is common for a neck that need not pass the head; a child's is 0.3 of its head.
            new(20), new(0.32), null),
        NeckForm.Square => new(
            // 18 to 22 cm wide, 10 to 14 deep in front and 2 to 3 at the back are common for an adult.
            new(20, 12, 2.5), new(0.34, 0.16, 0.04), Cut.Square),
        NeckForm.Round => new(
            // 18 to 22 cm wide, 8 to 12 deep in front and 2 to 3 at the back are common for an adult.
            new(20, 10, 2.5), new(0.36, 0.18, 0.04), HalfEllipse),
        NeckForm.V => new(
            // 18 to 22 cm wide and 18 to 24 deep are common for an adult.
            new(20, 20), new(0.36, 0.28), Point),
        NeckForm.VInsert => new(
            new(20, 20), new(0.36, 0.28), Cut.Square)
        {
            Edge = Point,
        },
        _ => throw new InvalidOperationException($"No neck {Form}."),
    };

    /// <summary>Straight from either end to a point in the middle.</summary>
    private static ImmutableArray<CutPoint> Point { get; } = [new(0, 0), new(0.5, 1), new(1, 0)];

    private static ImmutableArray<CutPoint> HalfEllipse { get; } =
    [
        .. Enumerable.Range(0, 17).Select(i => i / 16.0)
            .Select(along => new CutPoint(along, Math.Sqrt(Math.Max(0, 1 - Math.Pow(2 * along - 1, 2))))),
    ];

    /// <summary>
    /// At the outer end of an open shoulder its band is sewn down, so that the armhole holds (common practice, no source).
    /// </summary>
    internal static readonly Length SewnDown = Length.FromCentimetres(1);

    /// <summary>Inserts fill a part of what is cut out.</summary>
    internal bool IsFilled => Of.Edge is not null;

    private bool IsButtoned => Form == NeckForm.Buttoned;

    internal bool IsCut => Of.Profile is not null;

    internal bool IsCutAtBack => Of.Adult.Back is not null;

    /// <summary>Its measures where the document leaves them out, as the form's fields say them; a child's are by its head.</summary>
    internal (string Width, string Depth, string BackDepth) SayUsual => (
        Of.UsualWidth ?? Centimetres(Of.Adult.Width), Centimetres(Of.Adult.Depth), Centimetres(Of.Adult.Back ?? 0));

    private static string Centimetres(double length) => string.Create(CultureInfo.InvariantCulture, $"{length:0.#} cm");

    internal ImmutableArray<PlanRule> Rules => IsCut ? [PlanRule.Neck, PlanRule.Motif] : [PlanRule.NeckWidth];

    internal OpeningDesign Opening => new(
        OpeningId.Neck, [PieceSide.Top], OpeningAt.Middle, GarmentMeasure.NeckWidth, EdgingPlace.Neck, Field)
    {
        NeverUnder = Width is null && !InFront,
        Cut = Of.Profile is { } profile && (!InFront || IsCutAtBack) ? new(Depths, profile)
        {
            Fields = DepthFields,
            ByRule = BackDepth is null ? [GarmentMeasure.BackNeckDepth] : [],
        } : null,
    };

    /// <summary>Of the right front; that of the left one is its mirror.</summary>
    internal OpeningDesign FrontOpening => new(
        OpeningId.Neck, [PieceSide.Top], OpeningAt.End, GarmentMeasure.FrontNeck, EdgingPlace.Neck, Field)
    {
        BesideAs = PieceId.Back,
        Cut = Of.Profile is { } profile ? new(
            ImmutableSortedDictionary<PieceId, GarmentMeasure>.Empty
                .Add(PieceId.RightFront, GarmentMeasure.NeckDepth).Add(PieceId.LeftFront, GarmentMeasure.NeckDepth),
            Cut.FirstHalf(profile)) : null,
    };

    private static ImmutableDictionary<GarmentMeasure, string> DepthFields { get; } = ImmutableDictionary<GarmentMeasure, string>.Empty
        .Add(GarmentMeasure.NeckDepth, "garment.neckDepth").Add(GarmentMeasure.BackNeckDepth, "garment.backNeckDepth");

    private ImmutableSortedDictionary<PieceId, GarmentMeasure> Depths => new[]
    {
        (Piece: PieceId.Front, Measure: GarmentMeasure.NeckDepth, Has: !InFront),
        (Piece: PieceId.Back, Measure: GarmentMeasure.BackNeckDepth, Has: IsCutAtBack),
    }.Where(d => d.Has).ToImmutableSortedDictionary(d => d.Piece, d => d.Measure);

    /// <summary>
    /// Corners of one that is cut are edges of their own; those of a slit can take extra stitches. Beside an open shoulder the neck's
    /// edging is no round, and the front's shoulder has a band with buttonholes, which lies on the back.
    /// </summary>
    internal ImmutableArray<EdgingEdge> Edgings => IsFilled ? [Inserts.Edge] : !IsButtoned ? [ShoulderedBody.Neck(corners: IsCut ? 0 : 2)]
        :
        [
            ShoulderedBody.Neck(corners: 1) with { Begins = null, OpensAt = OpenEnd.LeftShoulder },
            new(EdgingPlace.Shoulder, 1, [new(EdgeId.FrontLeftShoulder, OpenShoulder.First[0])], null)
            {
                Closes = (PieceId.Front, PieceId.Back),
            },
        ];

    /// <summary>Whether a form leaves an edge open that others close; a shoulder has an edge of its own only where it is open.</summary>
    /// <param name="word">The document's; a slit where it is none of its words.</param>
    internal static bool OpensWith(string word, EdgingPlace place)
    {
        var form = place == EdgingPlace.Shoulder ? NeckForm.Buttoned : Forms.FirstOrDefault(f => f.Word == word).Form;
        return new Neck(form, null).Edgings.Any(e => e.Place == place && e.IsOpen);
    }

    private static Join OpenShoulder { get; } = ShoulderedBody.Joins.First(j => j.Id == SeamId.LeftShoulder);

    /// <inheritdoc cref="GarmentShape.PlainPiecesField"/>
    internal string? PlainPiecesField => IsFilled ? "neck" : null;

    /// <summary>Pieces beside front and back that belong to it.</summary>
    internal ImmutableArray<PieceGroup> Pieces => IsFilled ? [Inserts.Group] : [];

    /// <summary>What is sewn for it once the shoulders are.</summary>
    internal ImmutableArray<SewingStep> Filling => IsFilled ? [Inserts.Sewing] : [];

    /// <summary>What is seen of it in front.</summary>
    internal ImmutableArray<WornPart> Worn => IsFilled ? Inserts.Worn : [];

    internal ImmutableArray<Join> Joined(ImmutableArray<Join> joins) =>
        IsFilled ? [.. joins, .. Inserts.Joins]
        : IsButtoned ? [.. joins.Select(j => j.Id == SeamId.LeftShoulder ? j with { Kind = JoinKind.Opening } : j)] : joins;

    internal SewingStep Shoulders =>
        IsButtoned ? ShoulderedBody.Shoulders with { Seams = [SeamId.RightShoulder] } : ShoulderedBody.Shoulders;

    /// <summary>A shoulder can be edged where it is left open.</summary>
    internal static void EdgingIsThere(Place garment, NeckForm form, ImmutableArray<EdgingChoice> edgings, FaultList faults)
    {
        for (var i = 0; i < edgings.Length; i++)
        {
            if (edgings[i].Where == EdgingPlace.Shoulder && form != NeckForm.Buttoned)
            {
                faults.Meaning(
                    garment.Member("edgings").Item(i).Member("where"), "neck, where the shoulder is sewn", "Write \"where\": \"neck\".");
            }
        }
    }

    /// <summary>Null for what is no measure of a neck.</summary>
    internal Length? Target(GarmentMeasure measure, TargetContext size) => measure switch
    {
        GarmentMeasure.NeckWidth => WidthOf(size),
        GarmentMeasure.NeckDepth when IsCut => Depth ?? Usual(size, s => s.Depth),
        GarmentMeasure.BackNeckDepth when IsCut => BackDepth ?? Usual(size, s => s.Back ?? 0),
        _ => null,
    };

    private Length WidthOf(TargetContext size)
    {
        if (Width is { } own)
            return own + Step * size.Step;
        var usual = InFront && IsChild(size) ? size.Body[BodyMeasure.Head] * OpenOfHead : Usual(size, s => s.Width);
        if (!IsChild(size))
        {
            usual = Form == NeckForm.Boat && size.Body.Has(BodyMeasure.CrossBack)
                ? BoatOfCrossBack * size.Body[BodyMeasure.CrossBack]
                : usual + Step * size.Step;
        }
        return !InFront && size.Body.Has(BodyMeasure.Head) ? Length.Max(usual, Least(size)) : usual;
    }

    /// <summary>The narrowest that the head passes, by itself or with half of what the panel leaves beside it.</summary>
    private Length Least(TargetContext size)
    {
        if (IsCut)
            return LeastCut(size);
        var slit = GarmentFit.SlitFor(size.Body[BodyMeasure.Head]);
        return IsButtoned ? 2 * (slit + SewnDown) - size.Finished[GarmentMeasure.Width] / 2 : slit;
    }

    /// <summary>
    /// To a millimetre, where it is cut as deep as it is wished for: the wider, the longer its edge. As little as a back is usually cut may
    /// be left out.
    /// </summary>
    private Length LeastCut(TargetContext size)
    {
        var (front, back) = (Target(GarmentMeasure.NeckDepth, size)!.Value, BackDepth ?? Length.Zero);
        var (narrow, wide) = (0, (int)Math.Ceiling(GarmentFit.SlitFor(size.Body[BodyMeasure.Head]).Centimetres * 10));
        while (wide - narrow > 1)
        {
            var middle = (narrow + wide) / 2;
            var passes = GarmentFit.Head(Around(Width(middle), front, back), size.Body, Field).Holds;
            (narrow, wide) = passes ? (narrow, middle) : (middle, wide);
        }
        return Width(wide);

        static Length Width(int millimetres) => Length.FromCentimetres(millimetres / 10.0);
    }

    /// <summary>Half of the way round a cut neck.</summary>
    private Length Around(Length width, Length front, Length back)
    {
        var cut = Opening.Cut! with { Profile = Of.Edge ?? Opening.Cut!.Profile };
        return (Edge(cut, width, front) + Edge(cut, width, back)) / 2;
    }

    private Length Usual(TargetContext size, Func<Extent, double> of) =>
        IsChild(size) ? size.Body[BodyMeasure.Head] * of(Of.OfHead) : Length.FromCentimetres(of(Of.Adult));

    /// <summary>A child's neck follows its head where that is known.</summary>
    private static bool IsChild(TargetContext size) => size.Wearer != Wearers.Adult && size.Body.Has(BodyMeasure.Head);

    /// <summary>Whether the head passes; null where it is not known.</summary>
    internal WornFit? Passes(TargetContext size)
    {
        ArgumentNullException.ThrowIfNull(size);
        if (!size.Body.Has(BodyMeasure.Head))
            return null;
        var finished = size.Finished;
        var width = finished[GarmentMeasure.NeckWidth];
        var around = IsCut ? Around(width, Deep(GarmentMeasure.NeckDepth), Deep(GarmentMeasure.BackNeckDepth)) : width;
        if (IsButtoned)
            around += Length.Max(Length.Zero, finished[GarmentMeasure.Width] / 4 - width / 2 - SewnDown);
        return GarmentFit.Head(around, size.Body, Field);

        Length Deep(GarmentMeasure measure) => finished.TryGetValue(measure, out var depth) ? depth : Length.Zero;
    }

    /// <summary>Body measures that it is held against where they are known.</summary>
    internal ImmutableArray<BodyMeasure> Wishes => Form == NeckForm.Boat ? [BodyMeasure.Head, BodyMeasure.CrossBack] : [BodyMeasure.Head];

    internal ImmutableArray<WornFit> Fits(TargetContext size) => [.. new[] { Passes(size), Stays(size) }.OfType<WornFit>()];

    /// <summary>Whether an adult's boat neck stays on the shoulders; a child's head is nearly as wide as they are.</summary>
    private WornFit? Stays(TargetContext size) => Form != NeckForm.Boat || IsChild(size) || !size.Body.Has(BodyMeasure.CrossBack) ? null
        : new(
            FitPart.ShouldersBesideBoatNeck, size.Body[BodyMeasure.CrossBack] - size.Finished[GarmentMeasure.NeckWidth],
            BodyMeasure.CrossBack, LeastBesideBoat, Field, Mend.NarrowNeck);

    /// <summary>Along the edge of one piece, as smooth as it is wished for.</summary>
    private static Length Edge(Cut cut, Length width, Length depth)
    {
        var points = cut.Edge(OpeningAt.Middle);
        return Length.FromCentimetres(points.Zip(points.Skip(1), (a, b) => Math.Sqrt(
            Math.Pow((b.Along - a.Along) * width.Centimetres, 2) + Math.Pow((b.Into - a.Into) * depth.Centimetres, 2))).Sum());
    }

}
