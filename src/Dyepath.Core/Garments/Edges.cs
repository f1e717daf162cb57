using System.Collections.Immutable;
using Dyepath.Core.Edgings;

namespace Dyepath.Core.Garments;

/// <summary>
/// A side of a piece as it is worn, seen from outside, its hem or cuff at the bottom. Places along the left and the right side count from
/// the bottom up, along the bottom and the top from left to right.
/// </summary>
public enum PieceSide
{
    /// <summary>Hem or cuff.</summary>
    Bottom,

    /// <summary>At the right seen from outside: of a front, at the wearer's left.</summary>
    Right,

    /// <summary>At the shoulders, of what hangs from them.</summary>
    Top,

    /// <summary>At the left seen from outside: of a front, at the wearer's right.</summary>
    Left,
}

/// <summary>What follows from which side of a piece an edge is.</summary>
public static class PieceSides
{
    /// <summary>The left or the right one.</summary>
    public static bool IsUpright(this PieceSide side) => side is PieceSide.Left or PieceSide.Right;

    /// <summary>Its places are stitches, or else row ends.</summary>
    public static bool RunsAlongStitches(this PieceSide side, Direction direction) => side.IsUpright() == (direction == Direction.Sideways);

    /// <summary>The side that it becomes when the piece is turned over, left for right.</summary>
    public static PieceSide Mirrored(this PieceSide side) => side switch
    {
        PieceSide.Left => PieceSide.Right,
        PieceSide.Right => PieceSide.Left,
        _ => side,
    };

    /// <summary>The side that meets it where its places begin.</summary>
    public static PieceSide AtBeginning(this PieceSide side) => side.IsUpright() ? PieceSide.Bottom : PieceSide.Left;

    /// <summary>The side that meets it where its places end.</summary>
    public static PieceSide AtEnd(this PieceSide side) => side.IsUpright() ? PieceSide.Top : PieceSide.Right;
}

/// <summary>Which stretch of a side.</summary>
public enum Stretch
{
    /// <summary>From end to end of the side.</summary>
    Whole,

    /// <summary>From the side's beginning to the opening's.</summary>
    BeforeOpening,

    /// <summary>What an opening takes of the side, or its edge where it is cut.</summary>
    Opening,

    /// <summary>From the opening's end to the side's.</summary>
    AfterOpening,

    /// <summary>Of an opening that is cut: from its beginning to the middle of its lower edge.</summary>
    FirstHalf,

    /// <summary>From that middle to the opening's end.</summary>
    SecondHalf,
}

/// <summary>A stretch of a piece's side, and which way it is gone along.</summary>
/// <param name="Piece">Which piece of the garment.</param>
/// <param name="Side">As worn, seen from outside.</param>
/// <param name="Stretch">All of the side unless said otherwise.</param>
/// <param name="Opening">Needed where <paramref name="Stretch"/> speaks of one.</param>
/// <param name="Backwards">From its end to its beginning.</param>
public sealed record PieceEdge(
    PieceId Piece, PieceSide Side, Stretch Stretch = Stretch.Whole, OpeningId? Opening = null, bool Backwards = false)
{
    /// <summary>An opening at the side's beginning that is left out of the stretch, where the garment has it.</summary>
    public OpeningId? Above { get; init; }

    /// <summary>
    /// What is sewn along it is sewn in once the seams at its ends are closed, and takes nothing from the stretches beside it.
    /// </summary>
    public bool IsFilled => Stretch is Stretch.FirstHalf or Stretch.SecondHalf;

    /// <summary>The same stretch, gone along the other way.</summary>
    public PieceEdge Reverse() => this with { Backwards = !Backwards };
}

/// <summary>Edges that meet: sewn, or the join of rounds.</summary>
/// <param name="Id">Which join of the garment.</param>
/// <param name="First">One edge, or several gone along one after the other.</param>
/// <param name="Second">The edge that meets it, gone along the same way.</param>
/// <param name="Kind">Sewn unless said otherwise.</param>
public sealed record Join(SeamId Id, ImmutableArray<PieceEdge> First, ImmutableArray<PieceEdge> Second, JoinKind Kind = JoinKind.Seam)
{
    /// <summary>Hides stitches or rows of both edges.</summary>
    public bool Sewn => Kind == JoinKind.Seam;
}

/// <summary>How edges meet.</summary>
public enum JoinKind
{
    /// <summary>Sewn: hides stitches or rows of both edges.</summary>
    Seam,

    /// <summary>The join of a round, which hides nothing.</summary>
    Round,

    /// <summary>Buttoned or left open: hides nothing, takes no yarn, and is judged as if what lies between were not there.</summary>
    Opening,
}

/// <summary>How the edges of a step are laid before they are sewn.</summary>
public enum SewingManner
{
    /// <summary>Both pieces flat on each other, sewn from the outer ends to the opening between.</summary>
    AroundOpening,

    /// <summary>One piece's edge set into the opening of others, its middle at their seam.</summary>
    SetIn,

    /// <summary>Both pieces flat on each other, sewn along their edges from the bottom.</summary>
    FromBottom,

    /// <summary>Two edges of one piece, so that it becomes a tube.</summary>
    IntoTube,

    /// <summary>Stretches at the top of two pieces' sides, from where their own seams end up to the top edge.</summary>
    FromSeamsUp,

    /// <summary>All round but for one edge, wrong sides out.</summary>
    IntoCover,

    /// <summary>A strip's long edges along three sides of one piece, then of the other.</summary>
    AlongThreeSides,

    /// <summary>Short pieces that bridge the sides of two pieces, between their marks.</summary>
    Between,

    /// <summary>Triangles into the lower corners of what is cut out of a piece.</summary>
    IntoCorners,

    /// <summary>The ends of a strap inside what is sewn, over its edges: no seam of edges.</summary>
    HangFrom,

    /// <summary>The edge that was left open, once what it covers is inside.</summary>
    CloseOver,

    /// <summary>The upper edge drawn together with a length of yarn: no seam.</summary>
    DrawTogether,
}

/// <summary>Seams that are sewn in one step of the making up.</summary>
/// <param name="Manner">How the edges are laid.</param>
/// <param name="Seams">In the order in which they are sewn.</param>
public sealed record SewingStep(SewingManner Manner, ImmutableArray<SeamId> Seams);

/// <summary>A place for an edging: the edges that it runs along.</summary>
/// <param name="Place">As the document names it.</param>
/// <param name="Copies">How often the garment has it.</param>
/// <param name="Edges">In the order in which they are worked.</param>
/// <param name="Begins">The seam at which the yarn is joined; missing where there is none.</param>
/// <param name="Corners">Corners that can take extra stitches.</param>
/// <param name="PerCorner">Stitches that every corner takes, so that it lies flat.</param>
public sealed record EdgingEdge(
    EdgingPlace Place, int Copies, ImmutableArray<EdgedEdge> Edges, SeamId? Begins, int Corners = 0, int PerCorner = 0)
{
    /// <summary>
    /// Of a pair of bands that overlap, the piece whose band lies on top and has the buttonholes, and the one that has the buttons.
    /// </summary>
    public (PieceId Holes, PieceId Buttons)? Closes { get; init; }

    /// <summary>
    /// Of an edge that is no round, where its rows begin; that of bands follows from what they close.
    /// </summary>
    public OpenEnd? OpensAt { get; init; }

    /// <summary>
    /// Of a pair, the edges of the other one, in the order in which they are worked; empty where the pieces are the same or mirror each
    /// other place by place.
    /// </summary>
    public ImmutableArray<EdgedEdge> Other { get; init; } = [];

    /// <summary>Its ends do not meet, so that it is edged in rows.</summary>
    public bool IsOpen => Closes is not null || OpensAt is not null;

    /// <summary>Edgings worked before it, whose ends lengthen its edge where it begins, or where it ends.</summary>
    public (EdgingPlace? Before, EdgingPlace? After) Over { get; init; }
}

/// <summary>An edge of the garment that an edging runs along, and the piece's side that it is.</summary>
/// <param name="Id">What the maker finds it by.</param>
/// <param name="Edge">Where it is on its piece, gone along in the direction of work.</param>
public sealed record EdgedEdge(EdgeId Id, PieceEdge Edge);

/// <summary>Where an edging begins that is worked in rows.</summary>
public enum OpenEnd
{
    /// <summary>The lower end of the left front's front edge.</summary>
    LowerEndOfLeftFront,

    /// <summary>The upper end of the right front's front edge.</summary>
    UpperEndOfRightFront,

    /// <summary>Of the front neck, the end at the left shoulder.</summary>
    LeftShoulder,

    /// <summary>One vent, on the way to the other.</summary>
    Vent,
}
