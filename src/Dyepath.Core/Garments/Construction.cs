using System.Collections.Immutable;
using Dyepath.Core.Edgings;
using Dyepath.Core.Fabrics;
using Dyepath.Core.Quantities;
using Dyepath.Core.Sizing;

namespace Dyepath.Core.Garments;

/// <summary>
/// How a garment is put together: pieces, what is left open in them, where they are joined and edged. Everything that is planned, written,
/// drawn and checked of a garment is read from here, so that no code outside Constructions depends on a garment's name
/// (docs/constructions.md).
/// </summary>
/// <param name="Groups">In the order in which they are planned and made.</param>
/// <param name="Joins">In the order in which a seam table lists them.</param>
/// <param name="Sewing">In the order in which they are done.</param>
/// <param name="Edgings">Every place that an edging can go to, in the order in which they are worked.</param>
public sealed record Construction(
    ImmutableArray<PieceGroup> Groups,
    ImmutableArray<Join> Joins,
    ImmutableArray<SewingStep> Sewing,
    ImmutableArray<EdgingEdge> Edgings)
{
    /// <summary>What is seen of it from the front, the first part in the middle.</summary>
    public required ImmutableArray<WornPart> Worn { get; init; }

    /// <summary>
    /// What is seen of it from behind, the first part in the middle: a tube's other half, or the back with what hangs beside the front.
    /// Empty where there is no other side, or none that differs.
    /// </summary>
    public ImmutableArray<WornPart> Behind
    {
        get
        {
            if (Worn is [{ Portion: not Portion.Whole }])
                return [Worn[0] with { Portion = Worn[0].Portion == Portion.LeftHalf ? Portion.RightHalf : Portion.LeftHalf }];
            if (Worn.Any(w => w.Piece == PieceId.Back) || !Groups.Any(g => g.Pieces.Any(p => p.Id == PieceId.Back)))
                return [];
            // Seen from behind, the wearer's left is at the left: the half of a sleeve behind its fold lies where the other
            // sleeve's front half did.
            var front = GroupOf(Worn[0].Piece);
            return
            [
                new(PieceId.Back),
                .. Worn.Where(w => !front.Pieces.Any(p => p.Id == w.Piece) && GroupOf(w.Piece).Fills is null)
                    .Select(w => w with { Beside = PieceId.Back }),
            ];
        }
    }

    /// <summary>Groups whose measures and counts may be asked for; those of every other follow from them.</summary>
    public IEnumerable<PieceGroup> Asked => Groups.Where(g => g.Fills is null);

    /// <summary>The edge that holds it on its wearer; missing where it hangs from the shoulders, or is not hung.</summary>
    public HeldEdge? Held { get; init; }

    /// <summary>The body's girth that an edge sits at, by its name in a size; null where no chart has it.</summary>
    public string? GirthAt(EdgingPlace place) => Held is { } held && held.Place == place ? BodyMeasures.Key(held.Girth) : place switch
    {
        EdgingPlace.Hem => BodyMeasures.Key(BodyMeasure.Hip),
        EdgingPlace.Waist => BodyMeasures.Key(BodyMeasure.Waist),
        EdgingPlace.Brim => BodyMeasures.Key(BodyMeasure.Head),
        _ => null,
    };

    /// <summary>Whether other pieces are sewn into what an opening cuts out of a piece.</summary>
    public bool IsFilled(OpeningId opening, PieceId piece) =>
        Groups.Any(g => g.Fills is { } fills && fills.Opening == opening && fills.Into == piece);

    /// <summary>The share of the body's girth that an elastic is cut to at an edge; missing: the edging's own.</summary>
    public double? ShareAt(EdgingPlace place) => Held is { } held && held.Place == place ? held.Share : null;

    /// <summary>
    /// The elastic of an edge, its overlap included; null where the edging takes none, or the body's girth there is not known.
    /// </summary>
    public Length? ElasticAt(EdgingPlace place, Edging edging, ImmutableSortedDictionary<string, Length> body)
    {
        ArgumentNullException.ThrowIfNull(edging);
        ArgumentNullException.ThrowIfNull(body);
        return edging.ElasticShare is not null && GirthAt(place) is { } girth && body.TryGetValue(girth, out var around)
            ? edging.ElasticLength(around, ShareAt(place)) : null;
    }

    /// <exception cref="InvalidOperationException">No group has this piece.</exception>
    public PieceGroup GroupOf(PieceId piece) => Groups.First(g => g.Pieces.Any(p => p.Id == piece));

    /// <summary>Whether a seam runs along any of a side.</summary>
    public bool IsSewn(PieceId piece, PieceSide side) =>
        Joins.Any(j => j.Sewn && j.First.Concat(j.Second).Any(e => e.Piece == piece && e.Side == side));

    /// <summary>
    /// Whether a seam along the side that meets this one reaches the corner: a neck that runs up to a front edge keeps it free.
    /// </summary>
    /// <param name="atEnd">Where the side's places end, or else where they begin.</param>
    public bool IsSewnAt(PieceId piece, PieceSide side, bool atEnd)
    {
        var other = atEnd ? side.AtEnd() : side.AtBeginning();
        // What is open at the bottom of a side is sewn to nothing.
        return IsSewn(piece, other) && !((side.IsUpright() || side == PieceSide.Bottom) && GroupOf(piece).OpeningsOf(piece).Any(
            o => o.Sides.Contains(other) && o.At == (side == other.AtBeginning() ? OpeningAt.Beginning : OpeningAt.End)));
    }

    /// <summary>How many ends of a group's width, or of its height, a seam takes from.</summary>
    public int SewnEnds(PieceGroup group, bool across)
    {
        ArgumentNullException.ThrowIfNull(group);
        PieceSide[] ends = across ? [PieceSide.Left, PieceSide.Right] : [PieceSide.Bottom, PieceSide.Top];
        return ends.Count(side => IsSewn(group.Pieces[0].Id, side));
    }
}

/// <summary>An edge that is wider than the body there, and holds only once an elastic or a cord draws it in.</summary>
/// <param name="Place">The edge, by its edging.</param>
/// <param name="Girth">Of the body, where it sits.</param>
/// <param name="Share">The drawn edge over that girth, as an elastic is cut; missing: the edging's own.</param>
public sealed record HeldEdge(EdgingPlace Place, BodyMeasure Girth, double? Share = null);

/// <summary>Pieces of one size, worked alike.</summary>
/// <param name="Name">Counts that are fixed by hand are named by it: <c>panelStitches</c>, <c>panelRows</c>.</param>
/// <param name="Pieces">At least one; counts of the group hold for each.</param>
/// <param name="Across">From side to side as worn.</param>
/// <param name="Down">From bottom to top as worn.</param>
/// <param name="Working">Turned, or how rounds follow each other.</param>
/// <param name="Pooled">Worked in the variegated yarn, or else in the companion yarn.</param>
public sealed record PieceGroup(
    string Name, ImmutableArray<PieceDesign> Pieces, PieceDimension Across, PieceDimension Down, Working Working, bool Pooled)
{
    /// <summary>As they lie in the group's first piece; <see cref="OpeningsOf"/> has them for the others.</summary>
    public ImmutableArray<OpeningDesign> Openings { get; init; } = [];

    /// <summary>Its pieces have one count even where the designer lets front and back differ.</summary>
    public bool Alike { get; init; }

    /// <summary>
    /// How far the edge of a cut may lie off its place before the motif gives way there instead; missing: <see cref="UsualLetOff"/>, or
    /// less where a size's measure would come out poorly.
    /// </summary>
    public Length? LetOff { get; init; }

    /// <summary>3 cm.</summary>
    public static Length UsualLetOff { get; } = Length.FromCentimetres(3);

    /// <summary>Of each of its pieces; missing for rectangles. A group has a form or openings that are cut, not both.</summary>
    public PieceForm? Form { get; init; }

    /// <summary>
    /// Stitches by which its pieces move leftwards as worked with every two rows, an even number; 0: upright. Its count along the stitches
    /// is then the mean of those two rows, which differ by as many.
    /// </summary>
    public int Bias { get; init; }

    /// <summary>
    /// Short rows that leave its top narrower than its bottom; missing: both are alike. A group with gores has no form and no cuts.
    /// </summary>
    public GoreDesign? Gores { get; init; }

    /// <summary>
    /// Plain triangles that fill the corners of an opening cut straight, the group's first piece that at the wearer's left; their counts
    /// follow from the cut. They are worked up from their bottom in single crochet, whatever the garment's direction and stitch.
    /// </summary>
    public CornerFill? Fills { get; init; }

    /// <summary>The side of one of its pieces along which rows decrease.</summary>
    public PieceSide SlopeOf(PieceId piece) =>
        Pieces.First(p => p.Id == piece).Mirrored ? PieceSide.Right : PieceSide.Left;

    /// <summary>Which way its pieces are worked.</summary>
    /// <param name="direction">Of the garment.</param>
    public Direction WorkedIn(Direction direction) => Fills is null ? direction : Direction.Up;

    /// <summary>Its upright sides are slopes: stitches and row ends by turns.</summary>
    public bool IsSloped => Form is not null || Bias > 0;

    /// <summary>
    /// Its rows are shaped: they follow a form, move sideways, some stop short of the top, or an opening is cut into them.
    /// </summary>
    public bool IsShaped => IsSloped || Gores is not null || Openings.Any(o => o.Cut is not null);

    /// <summary>
    /// The measures that its openings are planned by, along their sides and into the pieces, and that of a gored top which does not close.
    /// </summary>
    public IEnumerable<GarmentMeasure> OpeningMeasures =>
        Openings.SelectMany(o => o.BesideAs is null ? (o.Cut?.Depths.Values ?? []).Prepend(o.Measure) : o.Cut?.Depths.Values ?? [])
            .Concat(Gores is { Cone: null } gores ? [gores.Edge] : []).Distinct();

    /// <summary>Openings as they lie in one of its pieces.</summary>
    public IEnumerable<OpeningDesign> OpeningsOf(PieceId piece) =>
        Pieces.First(p => p.Id == piece).Mirrored ? Openings.Select(o => o.Mirrored()) : Openings;

    /// <inheritdoc cref="OpeningsOf"/>
    public OpeningDesign Opening(OpeningId id, PieceId piece) => OpeningsOf(piece).First(o => o.Id == id);

    /// <summary>The dimension that a direction counts in stitches, or the other one.</summary>
    public PieceDimension Along(Direction direction, bool stitches) => (WorkedIn(direction) == Direction.Up) == stitches ? Across : Down;
}

/// <param name="Opening">One that is cut in the middle of the top.</param>
/// <param name="Into">The piece that it is cut into.</param>
/// <param name="Field">Where the document asks for it.</param>
public sealed record CornerFill(OpeningId Opening, PieceId Into, string Field);

/// <summary>
/// How a piece that is worked sideways narrows towards its top: row pairs stop short of it, spread evenly, so that a gore
/// opens below the end of each.
/// </summary>
/// <param name="Edge">The finished measure of the top.</param>
/// <param name="Straight">From the top down, what stays as narrow as it.</param>
/// <param name="Top">Which edge of the garment the top is.</param>
/// <param name="Field">Where the document says how wide it is.</param>
public sealed record GoreDesign(GarmentMeasure Edge, Length Straight, EdgeId Top, string Field)
{
    /// <summary>
    /// Of the measure of the bottom, how far below the top the piece has its full width, where the top would close if every row could end
    /// anywhere; it is then as wide as whole steps leave it. Missing: the top has a target, and the piece widens from there to its bottom.
    /// </summary>
    public double? Cone { get; init; }
}

/// <param name="Id">Which piece of the garment.</param>
/// <param name="Copies">How many are made alike.</param>
/// <param name="MayTurn">May be sewn wrong side out where its colours then meet the others' better.</param>
public sealed record PieceDesign(PieceId Id, int Copies = 1, bool MayTurn = false)
{
    /// <summary>Its openings lie as in a mirror beside the group's first piece.</summary>
    public bool Mirrored { get; init; }
}

/// <summary>A dimension of a piece, and the measure of the finished garment that it makes.</summary>
/// <param name="Measure">Of the finished garment.</param>
/// <param name="Pieces">How many pieces side by side make up the measure: front and back make up a width.</param>
/// <param name="Edgings">Edgings that add to the measure, one for each edge that has one.</param>
public sealed record PieceDimension(GarmentMeasure Measure, int Pieces, ImmutableArray<EdgingPlace> Edgings)
{
    /// <summary>It lies flat and goes round no body, so that sizes may come out alike.</summary>
    public bool IsFlat { get; init; }

    /// <summary>A measure that cannot be made shorter than this, edgings taken off, and where the document says how long it is.</summary>
    public ShortestMeasure? Shortest { get; init; }

    /// <summary>A measure of an earlier group that is a part of this one: a back's width of the width all round.</summary>
    public GarmentMeasure? Beside { get; init; }
}

/// <param name="Length">The shortest that can be made.</param>
/// <param name="Place">Where in the document it can be changed.</param>
/// <param name="What">The piece that would be too short.</param>
/// <param name="Mend">What to do about it.</param>
public sealed record ShortestMeasure(Length Length, string Place, PieceId What, Mend Mend);

/// <summary>Where along its side an opening lies.</summary>
public enum OpeningAt
{
    /// <summary>Centred on its side; an edging stands inside at both ends.</summary>
    Middle,

    /// <summary>Ends where its side ends; an edging stands inside at its beginning.</summary>
    End,

    /// <summary>Begins where its side begins; an edging stands inside at its end.</summary>
    Beginning,
}

/// <summary>A stretch of a side that seams leave open, or that another piece is set into.</summary>
/// <param name="Id">Which opening of the garment.</param>
/// <param name="Sides">The sides of every piece of the group that have it.</param>
/// <param name="At">Where along its side.</param>
/// <param name="Measure">How long it is along its side.</param>
/// <param name="Place">The edging that stands inside it, where there is one.</param>
/// <param name="Field">Where the document says how large it is.</param>
public sealed record OpeningDesign(
    OpeningId Id, ImmutableArray<PieceSide> Sides, OpeningAt At, GarmentMeasure Measure, EdgingPlace? Place, string Field)
{
    /// <summary>Its target is the least that serves, so that it is never made smaller.</summary>
    public bool NeverUnder { get; init; }

    /// <summary>
    /// It is made half as large as this measure of another group, once that one is planned, since that piece is set into it.
    /// </summary>
    public GarmentMeasure? HalfOf { get; init; }

    /// <summary>
    /// Beside it as much of the side is left as beside the same opening in this piece of an earlier group, because
    /// the two are sewn together.
    /// </summary>
    public PieceId? BesideAs { get; init; }

    /// <summary>As it lies in a piece that is the mirror of this one.</summary>
    internal OpeningDesign Mirrored() => this with
    {
        Sides = [.. Sides.Select(s => s.Mirrored())],
        At = (At, Sides[0].IsUpright()) switch
        {
            (OpeningAt.End, false) => OpeningAt.Beginning,
            (OpeningAt.Beginning, false) => OpeningAt.End,
            _ => At,
        },
        Cut = Sides[0].IsUpright() ? Cut : Cut?.Mirrored(),
    };

    /// <summary>Its first place and the one after its last, of so many along its side.</summary>
    internal (int Begins, int Ends) Lies(int count, int all) => At switch
    {
        OpeningAt.Beginning => (0, count),
        OpeningAt.End => (all - count, all),
        _ => ((all - count) / 2, (all - count) / 2 + count),
    };

    /// <summary>What it takes out of the piece; missing: a slit, which takes nothing.</summary>
    public Cut? Cut { get; init; }
}

/// <summary>What an opening takes out of its piece, so that rows are shaped: how deep it goes, and along which line.</summary>
/// <param name="Depths">How far it goes into each piece, finished, from the side that it is on; a piece that is not named has a slit.</param>
/// <param name="Profile">
/// Corners of its edge, by rising <see cref="CutPoint.Along"/>; the edge comes in straight where the first is not at depth 0, and in the
/// middle of a side it goes out straight where the last is not.
/// </param>
public sealed record Cut(ImmutableSortedDictionary<PieceId, GarmentMeasure> Depths, ImmutableArray<CutPoint> Profile)
{
    /// <summary>Where the document says each of <see cref="Depths"/>; one that is missing follows from other measures.</summary>
    public ImmutableDictionary<GarmentMeasure, string> Fields { get; init; } = ImmutableDictionary<GarmentMeasure, string>.Empty;

    /// <summary>Those of <see cref="Depths"/> that nobody asked for: they follow a rule.</summary>
    public ImmutableHashSet<GarmentMeasure> ByRule { get; init; } = [];

    /// <summary>Some of its edge runs neither straight in nor straight along, so that it is cut in steps.</summary>
    public bool IsSloped => Profile.Zip(Profile.Skip(1)).Any(p => p.First.Along != p.Second.Along && p.First.Into != p.Second.Into);

    /// <summary>Its edge runs straight from either end to a point between them.</summary>
    public bool IsPointed => Profile is [{ Along: 0, Into: 0 }, { Along: > 0 and < 1 }, { Along: 1, Into: 0 }];

    /// <summary>Straight in, along, and where it does not reach the end of its side straight out again.</summary>
    public static ImmutableArray<CutPoint> Square { get; } = [new(0, 1), new(1, 1)];

    /// <summary>What is cut to one side of the middle, where the other half belongs to another piece.</summary>
    internal static ImmutableArray<CutPoint> FirstHalf(ImmutableArray<CutPoint> profile) =>
        [.. profile.Where(p => p.Along < 0.5).Select(p => p with { Along = 2 * p.Along }), new(1, profile.Max(p => p.Into))];

    /// <summary>Gone along from the other end.</summary>
    internal Cut Mirrored() => this with { Profile = [.. Profile.Reverse().Select(p => p with { Along = 1 - p.Along })] };

    /// <summary>
    /// From the beginning of the opening to its end, the straight ways in and out included, but none where the side itself begins or ends.
    /// </summary>
    internal ImmutableArray<CutPoint> Edge(OpeningAt at)
    {
        var first = at == OpeningAt.Beginning || Profile[0] is { Along: 0, Into: 0 } ? Profile : Profile.Insert(0, new CutPoint(0, 0));
        return at == OpeningAt.End || first[^1] is { Along: 1, Into: 0 } ? first : first.Add(new CutPoint(1, 0));
    }
}

/// <param name="Along">Share of the opening's length from its beginning, 0 to 1.</param>
/// <param name="Into">Share of its depth, 0 to 1.</param>
public readonly record struct CutPoint(double Along, double Into);

/// <summary>How much of a piece is seen.</summary>
public enum Portion
{
    /// <summary>All of it.</summary>
    Whole,

    /// <summary>The half at the left, as the piece lies by itself.</summary>
    LeftHalf,

    /// <summary>The half at the right, as the piece lies by itself.</summary>
    RightHalf,
}

/// <summary>A piece as it hangs on its wearer, seen from the front.</summary>
/// <param name="Piece">Which piece is seen.</param>
/// <param name="Portion">How much of it is seen.</param>
/// <param name="Beside">The part that it hangs beside, at the top; missing for the first one.</param>
/// <param name="Side">Of that part, as it is seen.</param>
/// <param name="Turns">Quarter turns clockwise out of the way that it hangs by itself.</param>
/// <param name="Between">An edging that lies between the two, where they overlap by it.</param>
public sealed record WornPart(
    PieceId Piece, Portion Portion = Portion.Whole, PieceId? Beside = null, PieceSide Side = PieceSide.Right, int Turns = 0,
    EdgingPlace? Between = null);
