using System.Collections.Immutable;
using System.Runtime.CompilerServices;
using Dyepath.Core.Edgings;
using Dyepath.Core.Fabrics;
using Dyepath.Core.Garments;
using Dyepath.Core.Motifs;
using Dyepath.Core.Quantities;
using Dyepath.Core.Shaping;

namespace Dyepath.Core.Planning;

/// <summary>Counts of one group of pieces in one size. What lies along the stitches is counted in stitches.</summary>
/// <param name="Graded">Missing where the pieces are plain.</param>
/// <param name="Stitches">Of the first piece's first row.</param>
/// <param name="Openings">Stitches or rows of each opening, what seams hide of it included.</param>
internal sealed record GroupCounts(
    PieceGroup Group, GradedCount? Graded, int Stitches, int Rows, ImmutableDictionary<OpeningId, int> Openings)
{
    /// <summary>Of each piece, where openings are cut into it; none where the pieces are rectangles.</summary>
    public ImmutableArray<CutOutline> Outlines { get; init; } = [];

    /// <summary>Missing where the pieces are plain.</summary>
    /// <param name="piece">Its place in the group.</param>
    public CountFinding? Finding(int piece) => piece == 0 ? Graded?.Front : Graded?.Back;

    /// <summary>Visible plain rows along each side of each piece.</summary>
    public int Bands => Graded?.Bands ?? 0;

    /// <summary>Rows that reach the top of gored pieces; of others all.</summary>
    public int TopRows => Outlines is [{ Parts: [var part] }, ..] && Group.Gores is not null ? part.Outline.FullRows : Rows;

    /// <summary>Stitches of a piece's first row.</summary>
    public int StitchesOf(int piece) => Finding(piece)?.Stitches ?? Stitches;
}

/// <summary>What a garment's pieces measure in one direction, of their construction and gauge alone.</summary>
internal sealed class Layout(SharedFabric shared, Construction construction, Direction direction)
{
    // Outlines are tried by turns, and each is asked for its edges many times.
    private readonly ConditionalWeakTable<CutOutline, Dictionary<PieceId, ShapedEdges>> _edges = [];

    private Layout? _inserts;

    public Direction Direction => direction;

    public Construction Construction => construction;

    public SharedFabric SharedFabric => shared;

    public bool Up => direction == Direction.Up;

    public Axis Across { get; private init; } = direction == Direction.Up ? shared.Stitches(direction) : shared.Rows(direction);

    public Axis Down { get; private init; } = direction == Direction.Up ? shared.Rows(direction) : shared.Stitches(direction);

    /// <summary>As a group's pieces are counted: what fills a corner has rows of its own.</summary>
    public Layout For(PieceGroup group) => group.Fills is null ? this : _inserts ??= new(shared, construction, Direction.Up)
    {
        Across = shared.Stitches(Direction.Up),
        Down = shared.Rows(Direction.Up) with { Step = shared.SingleCrochetHeight },
    };

    /// <summary>Of places along a side.</summary>
    public Axis Along(PieceSide side) => side.IsUpright() ? Down : Across;

    public Axis Of(bool stitches) => Up == stitches ? Across : Down;

    /// <summary>How many ends of the dimension along the stitches, or along the rows, seams take from.</summary>
    public int SewnEnds(PieceGroup group, bool stitches) => construction.SewnEnds(group, across: Up == stitches);

    /// <summary>What edgings add to a measure.</summary>
    /// <param name="rounds">Of the edging that lengthens the group's measure along the stitches; missing: as wished.</param>
    public Length Edgings(PieceDimension dimension, PieceGroup? group = null, int? rounds = null) => dimension.Edgings.Aggregate(
        Length.Zero,
        (depth, place) => depth + shared.EdgingDepth(place, group is not null && Varied(group) == place ? rounds : null));

    /// <summary>
    /// The edging whose rounds may differ by size, to bring the measure along the stitches nearer to its target. One that lengthens another
    /// measure of other pieces too has the same rounds in every size.
    /// </summary>
    public EdgingPlace? Varied(PieceGroup group)
    {
        var along = group.Along(direction, true);
        foreach (var place in along.Edgings)
        {
            if (shared.EdgingAt(place) is not null && construction.Groups.Where(g => g != group).SelectMany(g => new[] { g.Across, g.Down })
                .Where(d => d.Edgings.Contains(place)).All(d => d.Measure == along.Measure))
                return place;
        }
        return null;
    }

    /// <summary>The finished measure that a count makes.</summary>
    public Length Measure(PieceGroup group, bool stitches, double count, int? rounds = null)
    {
        var (dimension, own) = (group.Along(direction, stitches), For(group));
        return dimension.Pieces * own.Of(stitches).Of(count, own.SewnEnds(group, stitches)) + Edgings(dimension, group, rounds);
    }

    /// <summary>The finished measure of a size's pieces; rows that alternate by a stitch are as wide as their mean.</summary>
    public Length Measure(GroupCounts counts, bool stitches) => (stitches, counts.Graded) switch
    {
        (true, { } graded) when counts is { Group.Form: not null, Outlines: [var outline, ..] } =>
            Measure(counts.Group, true, outline.Columns, graded.Rounds),
        (true, { } graded) => graded.Measure + Edgings(counts.Group.Along(direction, true), counts.Group, graded.Rounds),
        (true, null) => Measure(counts.Group, true, counts.Stitches),
        _ => Measure(counts.Group, false, counts.Rows, counts.Graded?.Rounds),
    };

    /// <summary>The finished measure of a gored group's top.</summary>
    public Length MeasureTop(GroupCounts counts) => Measure(counts.Group, false, counts.TopRows, counts.Graded?.Rounds);

    /// <summary>What the measure of an earlier group adds to a dimension that it is a part of.</summary>
    public Length Beside(PieceDimension dimension, IEnumerable<GroupCounts> groups)
    {
        if (dimension.Beside is not { } measure)
            return Quantities.Length.Zero;
        var counts = groups.First(c => c.Group.Across.Measure == measure || c.Group.Down.Measure == measure);
        return Measure(counts, stitches: counts.Group.Along(direction, true).Measure == measure);
    }

    /// <summary>Stitches or rows of an opening that leaves as much beside it as another piece's does.</summary>
    public int CountBeside(GroupCounts counts, OpeningDesign opening, PieceId piece, IEnumerable<GroupCounts> groups) =>
        PlacesAlong(counts, 0, opening.Sides[0]) - LeftBeside(opening, piece, groups);

    /// <summary>Stitches or rows of another piece's side before the same opening.</summary>
    public int LeftBeside(OpeningDesign opening, PieceId piece, IEnumerable<GroupCounts> groups)
    {
        var other = groups.First(c => c.Group.Pieces.Any(p => p.Id == piece));
        var (side, at) = (opening.Sides[0], other.Group.Pieces.ToList().FindIndex(p => p.Id == piece));
        return other.Group.Opening(opening.Id, piece).Lies(other.Openings[opening.Id], PlacesAlong(other, at, side)).Begins;
    }

    /// <summary>Stitches or rows of a piece along a side.</summary>
    public int PlacesAlong(GroupCounts counts, int piece, PieceSide side) =>
        For(counts.Group).Along(side).AlongStitches ? counts.StitchesOf(piece) : side == PieceSide.Top ? counts.TopRows : counts.Rows;

    /// <summary>Ends of an opening that seams take from, as it lies in the group's first piece.</summary>
    private int SewnEnds(PieceGroup group, OpeningDesign opening)
    {
        var (piece, own) = (group.Pieces[0].Id, group.Openings.First(o => o.Id == opening.Id));
        return own.At switch
        {
            OpeningAt.End => construction.IsSewn(piece, own.Sides[0].AtEnd()) ? 1 : 0,
            OpeningAt.Beginning => construction.IsSewn(piece, own.Sides[0].AtBeginning()) ? 1 : 0,
            _ => 0,
        };
    }

    /// <summary>Edgings that stand inside an opening.</summary>
    private Length Inside(OpeningDesign opening) =>
        (opening.At == OpeningAt.Middle ? 2 : 1) * InsideOnce(opening);

    /// <summary>Stitches or rows that make an opening of a size, as large as it can be along its side.</summary>
    /// <param name="length">Stitches or rows of the side.</param>
    public int Count(PieceGroup group, OpeningDesign opening, Length target, int length)
    {
        var axis = Along(opening.Sides[0]);
        // Centred on its side, so of the same parity.
        var (step, ends) = (opening.At == OpeningAt.Middle ? 2 : axis.AlongStitches ? 1 : 2, SewnEnds(group, opening));
        var count = opening.At == OpeningAt.Middle
            ? axis.NearestLike(target + Inside(opening), 0, length)
            : axis.Nearest(target + Inside(opening), ends, step);
        return opening.NeverUnder && Measure(group, opening, count) < target ? count + step : count;
    }

    /// <summary>The opening as it is finished.</summary>
    public Length Measure(PieceGroup group, OpeningDesign opening, int count) =>
        Along(opening.Sides[0]).Of(count, SewnEnds(group, opening)) - Inside(opening);

    /// <summary>Stitches or rows of an opening's stretch that is cut, as it is wished for.</summary>
    public double Wish(PieceGroup group, OpeningDesign opening, Length target) =>
        (target + Inside(opening)) / Along(opening.Sides[0]).Step + SewnEnds(group, opening) * Along(opening.Sides[0]).Hidden;

    /// <summary>Rows or stitches that it goes into a piece, as is wished for.</summary>
    /// <param name="along">Stitches or rows of its stretch.</param>
    public double WishInto(PieceGroup group, OpeningDesign opening, PieceId piece, Length target, double along)
    {
        var cut = target + InsideOnce(opening);
        // The deeper it is, the more the band takes from its point: a few steps tell.
        for (var step = 0; step < 20 && construction.IsFilled(opening.Id, piece); step++)
            cut = target + OfBand(opening, piece, along, cut);
        return cut / Into(opening).Step + SewnBeside(group, opening);
    }

    /// <summary>How far it goes into a piece as it is finished.</summary>
    /// <param name="along">Stitches or rows of its stretch.</param>
    private Length MeasureInto(PieceGroup group, OpeningDesign opening, PieceId piece, double along, double count)
    {
        var cut = SeenInto(group, opening, count);
        return Quantities.Length.Max(Quantities.Length.Zero, cut - OfBand(opening, piece, along, cut));
    }

    /// <summary>
    /// What the edging takes of a depth: itself, or where it runs down two slopes to a point, which it lifts the more the steeper they are.
    /// </summary>
    private Length OfBand(OpeningDesign opening, PieceId piece, double along, Length depth)
    {
        var half = Along(opening.Sides[0]).Step * along / 2;
        return !construction.IsFilled(opening.Id, piece) || half <= Quantities.Length.Zero ? InsideOnce(opening)
            : InsideOnce(opening) * Math.Sqrt(1 + depth / half * (depth / half));
    }

    /// <summary>
    /// How far the openings of a group's pieces go into them as they are finished; of pieces with one measure on average.
    /// </summary>
    /// <param name="edges">Of each piece.</param>
    public IEnumerable<(GarmentMeasure Measure, Length Depth)> Depths(GroupCounts counts, IReadOnlyList<ShapedEdges> edges) =>
        from cut in CutInto(counts, edges)
        group MeasureInto(counts.Group, cut.Opening, cut.Piece, cut.Along, cut.Places) by cut.Measure into measured
        select (measured.Key, measured.Aggregate(Quantities.Length.Zero, (sum, depth) => sum + depth) / measured.Count());

    /// <summary>How far each opening goes into each piece by itself as it is finished.</summary>
    /// <param name="edges">Of each piece.</param>
    public IEnumerable<(PieceId Piece, GarmentMeasure Measure, Length Depth)> DepthsApart(
        GroupCounts counts, IReadOnlyList<ShapedEdges> edges) =>
        CutInto(counts, edges).Select(i => (i.Piece, i.Measure, MeasureInto(counts.Group, i.Opening, i.Piece, i.Along, i.Places)));

    private static IEnumerable<(PieceId Piece, GarmentMeasure Measure, OpeningDesign Opening, double Along, double Places)> CutInto(
        GroupCounts counts, IReadOnlyList<ShapedEdges> edges) =>
        from opening in counts.Group.Openings
        from depth in opening.Cut?.Depths.AsEnumerable() ?? []
        let at = counts.Group.Pieces.ToList().FindIndex(p => p.Id == depth.Key)
        let own = counts.Group.Opening(opening.Id, depth.Key)
        let along = own.Sides.Select(side => edges[at].Find(own.Id, side)?.Length ?? 0).Max()
        select (depth.Key, depth.Value, opening, (double)along, edges[at].Into(own));

    /// <summary>How far it is seen to go into the piece beside the seam of its side, before its edging.</summary>
    public Length SeenInto(PieceGroup group, OpeningDesign opening, double count) =>
        Into(opening).Step * (count - SewnBeside(group, opening));

    /// <summary>
    /// Width and height of either lower corner of a cut, once what fills it is sewn in: the seam takes as much of the piece all along.
    /// </summary>
    public (Length Width, Length Height) Corner(PieceGroup group, OpeningDesign opening, CutExtent cut) => (
        Along(opening.Sides[0]).Of(cut.Length / 2.0, -1), SeenInto(group, opening, cut.Into) + Into(opening).Of(0, -1));

    private Length InsideOnce(OpeningDesign opening) => opening.Place is { } place ? shared.EdgingDepth(place) : Quantities.Length.Zero;

    private Axis Into(OpeningDesign opening) => Along(opening.Sides[0].IsUpright() ? PieceSide.Top : PieceSide.Left);

    /// <summary>What a seam takes of the side that the opening is on.</summary>
    private int SewnBeside(PieceGroup group, OpeningDesign opening) =>
        construction.IsSewn(group.Pieces[0].Id, opening.Sides[0]) ? Into(opening).Hidden : 0;

    /// <summary>A piece as it is shaped, beginning at a place of the sequence; null for a rectangle.</summary>
    public ShapedPiece? Shape(GroupCounts counts, int piece, int start) =>
        counts.Outlines.IsEmpty || counts.Finding(piece) is not { } finding
            ? null
            : Work(counts, counts.Outlines[piece], finding.TurnCost, start);

    /// <summary>The edges of each piece of a group that is shaped, whatever colour it begins with.</summary>
    public ShapedEdges[] Edges(GroupCounts counts) =>
        [.. counts.Outlines.Select((outline, piece) => Edges(counts, piece, outline))];

    /// <summary>The edges of a piece whose rows follow an outline, whatever colour it begins with.</summary>
    public ShapedEdges Edges(GroupCounts counts, int piece, CutOutline outline)
    {
        var id = counts.Group.Pieces[piece].Id;
        var known = _edges.GetOrCreateValue(outline);
        if (known.TryGetValue(id, out var same))
            return same.With(Slit);
        var edges = new ShapedEdges(outline.Parts, construction, id, Up, turned: false, Slit);
        known.Add(id, edges);
        return edges;

        (int, int) Slit(PieceSide side, OpeningId opening) => Lies(counts, piece, side, opening);
    }

    private ShapedPiece Work(GroupCounts counts, CutOutline outline, double turnCost, int start) =>
        ShapedPiece.Work(new CutPlanner(this).Panel(outline.Units, turnCost, start), outline.Parts, counts.Group.Bias);

    /// <summary>The edges of a shaped piece as it is worn.</summary>
    public ShapedEdges Edges(GroupCounts counts, int piece, ShapedPiece shape, bool turned) => new(
        shape, construction, counts.Group.Pieces[piece].Id, Up, turned, (side, id) => Lies(counts, piece, side, id));

    private (int From, int Length) Lies(GroupCounts counts, int piece, PieceSide side, OpeningId id)
    {
        var count = counts.Openings.GetValueOrDefault(id);
        return (counts.Group.Opening(id, counts.Group.Pieces[piece].Id).Lies(count, PlacesAlong(counts, piece, side)).Begins, count);
    }
}
