using Dyepath.Core.Garments;
using Dyepath.Core.Planning;
using Dyepath.Core.Shaping;

namespace Dyepath.Core.Checking;

/// <summary>
/// A shaped piece laid out stitch by stitch as it is worn, and its edges counted by looking along the lines from each side: how far every
/// line is empty. The yarn is followed row by row.
/// </summary>
internal sealed class PlainShape
{
    private readonly PiecePlan _piece;
    private readonly Construction _construction;
    private readonly bool _up;
    private readonly Dictionary<(int X, int Y), (ShapedPart Part, int Row, int Column)> _stitches = [];
    private readonly Dictionary<(int Part, int Row), double> _begins = [];

    public PlainShape(PiecePlan piece, Construction construction, bool up)
    {
        (_piece, _construction, _up) = (piece, construction, up);
        var right = piece.Shape!.Parts.Min(p => Enumerable.Range(0, p.Rows).Min(r => p.Outline.At(r).First));
        var across = ShapeCheck.Width(piece);
        (Wide, High) = up ? (across, piece.Rows) : (piece.Rows, across);
        double place = 0;
        foreach (var part in piece.Shape.Parts)
        {
            for (var row = part.FirstRow; row < part.FirstRow + part.Rows; row++)
            {
                var run = part.Outline.At(row - part.FirstRow);
                place = row > part.FirstRow || part.Continues
                    ? place + piece.TurnCost
                    : piece.Start + row * (piece.Stitches + piece.TurnCost) + (row % 2 == 0 ? run.First : piece.Stitches - 1 - run.Last);
                _begins[(part.Index, row)] = place;
                place += run.Units;
                for (var column = run.First; column <= run.Last; column++)
                {
                    var (x, y) = up ? (Wide - 1 - (column - right), row) : (row, column - right);
                    _stitches[(piece.WrongSideOut ? Wide - 1 - x : x, y)] = (part, row, column);
                }
            }
        }
    }

    public int Wide { get; }

    public int High { get; }

    public bool Has(int x, int y) => _stitches.ContainsKey((x, y));

    /// <summary>How far a line of the piece is empty from a side inwards; all of it where it is empty.</summary>
    private int Empty(PieceSide side, int line)
    {
        var depth = side.IsUpright() ? Wide : High;
        var empty = 0;
        while (empty < depth && !(side switch
        {
            PieceSide.Left => Has(empty, line),
            PieceSide.Right => Has(Wide - 1 - empty, line),
            PieceSide.Top => Has(line, High - 1 - empty),
            _ => Has(line, empty),
        }))
            empty++;
        return empty;
    }

    /// <summary>Lines of the piece that go out to a side.</summary>
    public int Reaching(PieceSide side) => Enumerable.Range(0, Lines(side)).Count(line => Empty(side, line) == 0);

    private int Lines(PieceSide side) => side.IsUpright() ? High : Wide;

    /// <summary>Where an opening lies along its side, and how deep it goes; null where nothing is cut.</summary>
    public (int From, int To, int Into)? Cut(OpeningDesign opening, PieceSide side)
    {
        if (opening.Cut is null)
            return null;
        var depths = Enumerable.Range(0, Lines(side)).Select(line => Empty(side, line)).ToArray();
        var (from, to) = (0, depths.Length);
        if (opening.At == OpeningAt.End)
        {
            from = to;
            while (from > 0 && depths[from - 1] > 0)
                from--;
        }
        else if (opening.At == OpeningAt.Beginning)
        {
            to = 0;
            while (to < depths.Length && depths[to] > 0)
                to++;
        }
        else
        {
            // Between what is worked at either side; what is empty up to the corners is another opening's.
            var whole = Enumerable.Range(0, to).Where(i => depths[i] == 0).ToArray();
            var gap = Enumerable.Range(1, whole.Length - 1).FirstOrDefault(i => whole[i] > whole[i - 1] + 1);
            (from, to) = gap == 0 ? (0, 0) : (whole[gap - 1] + 1, whole[gap]);
        }
        return from == to ? null : (from, to, depths[from..to].Max());
    }

    /// <summary>
    /// Places along a side of a form: those that face it, and along an upright side those of the slopes below and above it, where what
    /// the lowest and the highest line leave out has one place each that faces down or up.
    /// </summary>
    public int Along(PieceSide side) => side.IsUpright()
        ? High + Empty(side, 0) + Empty(side, High - 1)
        : Wide - Empty(PieceSide.Left, side == PieceSide.Top ? High - 1 : 0) - Empty(PieceSide.Right, side == PieceSide.Top ? High - 1 : 0);

    /// <summary>Places along what an opening cuts out: those that look the way of its side, and the upright ones at its ends.</summary>
    public (int Along, int AtBeginning, int AtEnd) Places(OpeningDesign opening, PieceSide side)
    {
        var (from, to, _) = Cut(opening, side)!.Value;
        var (begin, end) = (0, 0);
        // Where the opening begins or ends with its side, nothing stands beside it there.
        var before = opening.At == OpeningAt.Beginning ? Empty(side, from) : 0;
        for (var line = from; line < to; line++)
        {
            var depth = Empty(side, line);
            begin += Math.Max(0, depth - before);
            end += Math.Max(0, before - depth);
            before = depth;
        }
        return (to - from, begin, opening.At == OpeningAt.End ? end : end + before);
    }

    /// <summary>Whether a seam along another side reaches the corner at which a side begins, or ends.</summary>
    private bool IsSewnAtCorner(PieceSide side, bool atEnd)
    {
        var other = atEnd ? side.AtEnd() : side.AtBeginning();
        // Places along the left and the right count upwards, along the others to the right.
        var last = side is PieceSide.Top or PieceSide.Right;
        return _construction.Joins.Any(j => j.Sewn
            && j.First.AddRange(j.Second).Any(e => e.Piece == _piece.Id && e.Side == other && ReachesCorner(e)));

        bool ReachesCorner(PieceEdge edge) => edge.Stretch == Stretch.Whole
            || edge.Stretch == (last ? Stretch.AfterOpening : Stretch.BeforeOpening)
            || (edge.Stretch == Stretch.Opening && ReachesEnd(edge, last));
    }

    private bool ReachesEnd(PieceEdge edge, bool last) =>
        _construction.GroupOf(_piece.Id).Opening(edge.Opening!.Value, _piece.Id).At == (last ? OpeningAt.End : OpeningAt.Beginning);

    /// <summary>Lines of a side before, after or without an opening at which the piece goes out to it.</summary>
    private IEnumerable<int> Straight(PieceEdge edge)
    {
        var opening = edge.Opening is { } id ? _construction.GroupOf(_piece.Id).Opening(id, _piece.Id) : null;
        var slit = opening is null ? null : _piece.Opening(opening.Id);
        var (from, to) = opening is null ? (0, 0) : Cut(opening, edge.Side) is { } cut ? (cut.From, cut.To) : (slit!.First - 1, slit.Last);
        return Enumerable.Range(0, Lines(edge.Side)).Where(line => Empty(edge.Side, line) == 0 && edge.Stretch switch
        {
            Stretch.BeforeOpening => line < from,
            Stretch.AfterOpening => line >= to,
            Stretch.Opening => line >= from && line < to,
            _ => true,
        });
    }

    /// <summary>The same without those that a seam across either corner hides; where something is cut out at a corner, none does.</summary>
    public int[] Visible(PieceEdge edge, SeamChoice seams)
    {
        var lines = Straight(edge).ToArray();
        var hidden = edge.Side.IsUpright() == _up ? seams.HiddenRows : seams.HiddenStitches;
        var (from, to) = (0, lines.Length);
        if (lines is [0, ..] && IsSewnAtCorner(edge.Side, false))
            from = Math.Min(hidden, to);
        if (lines.Length > 0 && lines[^1] == Lines(edge.Side) - 1 && IsSewnAtCorner(edge.Side, true))
            to = Math.Max(from, to - hidden);
        return lines[from..to];
    }

    /// <summary>Along the yarn: the stitch that is seen so far from an edge, and the one that would follow it beyond.</summary>
    public (double Seen, double Beyond) Beside(PieceSide side, int line, int hiddenStitches, int hiddenRows)
    {
        var (x, y) = side switch
        {
            PieceSide.Left => (0, line),
            PieceSide.Right => (Wide - 1, line),
            PieceSide.Top => (line, High - 1),
            _ => (line, 0),
        };
        var (part, row, column) = _stitches[(x, y)];
        var worked = _piece.WrongSideOut ? side.Mirrored() : side;
        if (side.IsUpright() == _up)
        {
            var inwards = worked is PieceSide.Right or PieceSide.Bottom ? 1 : -1;
            return (At(part, row, column + inwards * hiddenStitches), At(part, row, column + inwards * (hiddenStitches - 1)));
        }
        var back = worked is PieceSide.Top or PieceSide.Right ? -1 : 1;
        var seen = row + back * hiddenRows;
        return (At(part, seen, column), At(part, seen - back, column));
    }

    /// <summary>Where a stitch lies, or would lie if the part went on as it ended or began.</summary>
    private double At(ShapedPart part, int row, int column)
    {
        var (first, last) = (part.FirstRow, part.FirstRow + part.Rows - 1);
        var near = Math.Clamp(row, first, last);
        var run = part.Outline.At(near - first);
        var begin = _begins[(part.Index, near)] + (row - near) * (run.Units + _piece.TurnCost);
        return begin + (row % 2 == 0 ? column - run.First : run.Last - column);
    }
}
