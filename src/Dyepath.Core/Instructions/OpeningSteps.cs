using System.Collections.Immutable;
using Dyepath.Core.Booklets;
using Dyepath.Core.Edgings;
using Dyepath.Core.Garments;
using Dyepath.Core.Planning;
using Dyepath.Core.Shaping;

namespace Dyepath.Core.Instructions;

/// <summary>
/// What of the garment begins or ends where a row of a shaped piece is shaped, read from the construction's openings and joins.
/// </summary>
internal sealed class OpeningSteps
{
    private readonly PiecePlan _piece;
    private readonly ShapedPiece _shape;
    private readonly Construction _construction;
    private readonly bool _up;
    private readonly int _columns;
    private readonly ImmutableArray<Box> _boxes;

    public OpeningSteps(PatternContext context, PiecePlan piece)
    {
        (_piece, _construction) = (piece, context.Construction);
        _shape = piece.Shape ?? throw new ArgumentException($"The {piece.Name} is not shaped.", nameof(piece));
        _up = context.Plan.Direction == Direction.Up;
        var wide = _shape.LastColumn - _shape.FirstColumn + 1;
        var (columns, rows) = _up ? (wide, _shape.Rows) : (_shape.Rows, wide);
        _columns = columns;
        var edges = new ShapedEdges(_shape, _construction, piece.Id, _up, turned: false, (_, _) => (0, 0));
        _boxes = [.. edges.Cuts.OfType<CutExtent>().Select(cut => Box.Of(cut, columns, rows))];
    }

    /// <summary>What an opening takes out, in places as worn, the right side out; ends included.</summary>
    private sealed record Box(OpeningId Opening, PieceSide Side, int Left, int Right, int Bottom, int Top)
    {
        public static Box Of(CutExtent cut, int columns, int rows)
        {
            var end = cut.Begins + cut.Length - 1;
            return cut.Side switch
            {
                PieceSide.Left => new(cut.Opening, cut.Side, 0, cut.Into - 1, cut.Begins, end),
                PieceSide.Right => new(cut.Opening, cut.Side, columns - cut.Into, columns - 1, cut.Begins, end),
                PieceSide.Top => new(cut.Opening, cut.Side, cut.Begins, end, rows - cut.Into, rows - 1),
                _ => new(cut.Opening, cut.Side, cut.Begins, end, 0, cut.Into - 1),
            };
        }

        public bool Has(int x, int y) => x >= Left && x <= Right && y >= Bottom && y <= Top;
    }

    /// <summary>Said after the foundation chain: which edge of the garment it is; nothing where no cut or seam tells.</summary>
    public Phrase Foundation
    {
        get
        {
            if (_construction.GroupOf(_piece.Id).Gores is { } gores && SeamOf(PieceSide.Left) is { } beside)
                return Phrase.Of($" The chain is the edge of the {beside}, between the {LowerEdge} and the {EdgeWords.Of(gores.Top)}: its end is at the {LowerEdge}, where row 1 begins.");
            if (_boxes.IsEmpty)
                return Phrase.Empty;
            if (_up)
                return Phrase.Of($" The chain is the {LowerEdge}.");
            return SeamOf(PieceSide.Left) is { } seam && (OpeningOf(PieceSide.Left) ?? SeamOf(PieceSide.Top)) is { } above
                ? Phrase.Of($" The chain becomes the edge of the {seam}, between the {LowerEdge} and the {above}: its end is at the {LowerEdge}, where row 1 begins.")
                : Phrase.Empty;
        }
    }

    /// <summary>Said where a part is fastened off; nothing where no seam tells.</summary>
    public Phrase Last =>
        SeamOf(_up ? PieceSide.Top : PieceSide.Right) is { } seam ? Phrase.Of($" The last row is the edge of the {seam}.") : Phrase.Empty;

    /// <summary>
    /// Said after a row, such as <c>Here the armhole ends and the shoulder seam begins.</c>; nothing where the row is not shaped.
    /// </summary>
    /// <param name="row">Of the piece, from 0.</param>
    /// <param name="change">At the row's end.</param>
    public Phrase At(ShapedPart part, int row, RowChange change)
    {
        var run = part.Outline.At(row - part.FirstRow);
        var (leaves, right) = (change.Shorter > 0, change.Edge == RowEdge.Right);
        // The first stitch that is worked no more, or was not until now.
        var column = right ? (leaves ? run.First - 1 : run.First) : leaves ? run.Last + 1 : run.Last;
        if (Find(leaves ? row : row - 1, column) is not { } box)
            return Phrase.Empty;
        var name = PlaceNames.Of(box.Opening);
        var (from, to) = _up ? (box.Bottom, box.Top) : (box.Left, box.Right);
        if (leaves && row == from)
        {
            // A neck that parts a piece worked up ends no seam.
            return (_up && !box.Side.IsUpright()) || SeamOf(_up ? box.Side : PieceSide.Top) is not { } before
                ? Phrase.Of($" Here the {name} begins.") : Phrase.Of($" Here the {before} ends and the {name} begins.");
        }
        if (leaves || row != to + 1)
            return Phrase.Of($" This shapes the {name}.");
        return SeamOf(PieceSide.Top) is { } after
            ? Phrase.Of($" Here the {name} ends and the {after} begins.") : Phrase.Of($" Here the {name} ends.");
    }

    /// <summary>
    /// Said where a part is joined on: what the stitches are that are left between two parts of one row; nothing where they are no
    /// opening's.
    /// </summary>
    /// <param name="row">The first row of the part that is joined on.</param>
    /// <param name="column">Of one of them.</param>
    public Phrase Between(int row, int column) => Find(row, column) is { } box
        ? Phrase.Of($" The stitches left are the lower edge of the {PlaceNames.Of(box.Opening)}.") : Phrase.Empty;

    private string LowerEdge => _construction.Edgings.Any(e => e.Place == EdgingPlace.Hem) ? "hem" : "lower edge";

    private Box? Find(int row, int column)
    {
        column -= _shape.FirstColumn;
        var (x, y) = _up ? (_columns - 1 - column, row) : (row, column);
        return _boxes.FirstOrDefault(b => b.Has(x, y));
    }

    private string? OpeningOf(PieceSide side) => _boxes.FirstOrDefault(b => b.Side == side) is { } box ? PlaceNames.Of(box.Opening) : null;

    /// <summary>The seam that a side is sewn in; null where it is sewn in none.</summary>
    private string? SeamOf(PieceSide side) =>
        _construction.Joins.FirstOrDefault(j => j.Sewn
            && j.First.Concat(j.Second).Any(e => e.Piece == _piece.Id && e.Side == side && e.Stretch != Stretch.Opening)) is { } join
            ? SeamWords.One(join.Id) : null;
}
