using System.Collections.Immutable;
using Dyepath.Core.Garments;
using Dyepath.Core.Shaping;
using Dyepath.Core.Yarns;

namespace Dyepath.Core.Planning;

/// <summary>A side of a stitch at which the piece ends, as worn.</summary>
/// <param name="X">Of the stitch, from the piece's left.</param>
/// <param name="Y">From its bottom.</param>
/// <param name="Facing">Which way it looks.</param>
/// <param name="Cut">Index of the cut beside it; −1 where the piece's full width or height ends.</param>
internal readonly record struct EdgeFace(int X, int Y, PieceSide Facing, int Cut);

/// <summary>What a cut takes out, in places as worn.</summary>
/// <param name="Begins">Along its side.</param>
/// <param name="Into">From its side inwards.</param>
internal sealed record CutExtent(OpeningId Opening, PieceSide Side, int Begins, int Length, int Into);

/// <summary>
/// The edge of a shaped piece as it is worn, followed once round: what of it belongs to which side and to which cut, and the stitches
/// beside it. Cuts are what is missing of the full rectangle, told apart by the sides that they open. What a form leaves out at a corner is
/// no cut: the slope along it belongs to the upright side that it meets. Nor is what short rows leave: the rows beside it close over it, so
/// that places along the top count the rows that reach it.
/// </summary>
internal sealed class ShapedEdges
{
    private readonly ShapedPiece? _worked;
    private readonly int _firstColumn;
    private readonly Construction _construction;
    private readonly PieceId _id;
    private readonly bool _up;
    private readonly bool _turned;
    private readonly bool _gored;
    private readonly short[] _cells;
    private readonly Func<PieceSide, OpeningId, (int From, int Length)> _slit;

    // Most outlines that are tried are only asked what they cut out.
    private readonly Lazy<ImmutableArray<EdgeFace>> _round;
    private readonly Lazy<HashSet<EdgeFace>> _sewn;

    /// <summary>Columns as worn that reach the top of a gored piece.</summary>
    private readonly Lazy<int[]> _reach;

    private readonly Dictionary<(PieceSide Side, int Cut), EdgeFace[]> _sides = [];

    /// <param name="turned">Worn wrong side out.</param>
    /// <param name="slit">Where an opening lies along a side of which it takes nothing out.</param>
    public ShapedEdges(
        ShapedPiece piece, Construction construction, PieceId id, bool up, bool turned,
        Func<PieceSide, OpeningId, (int From, int Length)> slit)
        : this([.. piece.Parts.Select(p => new PartOutline(p.FirstRow, p.Outline))], construction, id, up, turned, slit) =>
        _worked = piece;

    /// <summary>Of a piece whose stitches have no colours yet: <see cref="Read"/> cannot be asked of it.</summary>
    /// <inheritdoc cref="ShapedEdges(ShapedPiece, Construction, PieceId, bool, bool, Func{PieceSide, OpeningId, ValueTuple{int, int}})"/>
    public ShapedEdges(
        ImmutableArray<PartOutline> parts, Construction construction, PieceId id, bool up, bool turned,
        Func<PieceSide, OpeningId, (int From, int Length)> slit)
    {
        (_construction, _id, _up, _turned, _slit) = (construction, id, up, turned, slit);
        _gored = construction.GroupOf(id).Gores is not null;
        _firstColumn = parts.Min(p => p.Outline.FirstColumn);
        var (wide, high) = (
            parts.Max(p => p.Outline.LastColumn) - _firstColumn + 1, parts.Max(p => p.FirstRow + p.Outline.Rows));
        (Columns, Rows) = up ? (wide, high) : (high, wide);
        _cells = new short[Columns * Rows];
        foreach (var part in parts)
        {
            foreach (var run in part.Outline.ByRow())
            {
                var (first, last) = (Index(part.FirstRow + run.FromRow, run.First), Index(part.FirstRow + run.FromRow, run.Last));
                var along = up ? 1 : Columns;
                for (var cell = Math.Min(first, last); cell <= Math.Max(first, last); cell += along)
                    _cells[cell] = Worked;
            }
        }
        Cuts = Missing();
        _round = new(() => [.. Followed().Where(f => f.Cut != Closed)]);
        _reach = new(() => [.. Round.Where(f => f.Facing == PieceSide.Top).Select(f => f.X).Order()]);
        _sewn = new(Sewn);
    }

    private ShapedEdges(ShapedEdges same, Func<PieceSide, OpeningId, (int From, int Length)> slit)
    {
        (_worked, _firstColumn, _construction, _id) = (same._worked, same._firstColumn, same._construction, same._id);
        (_up, _turned, _gored, _cells, _round, _reach) = (same._up, same._turned, same._gored, same._cells, same._round, same._reach);
        (Columns, Rows, Cuts, _sides, _slit, _sewn) = (same.Columns, same.Rows, same.Cuts, same._sides, slit, new(Sewn));
    }

    /// <summary>The same edges, where openings that take nothing out lie elsewhere.</summary>
    public ShapedEdges With(Func<PieceSide, OpeningId, (int From, int Length)> slit) => new(this, slit);

    private HashSet<EdgeFace> Sewn() =>
    [
        .. _construction.Joins.Where(j => j.Sewn).SelectMany(j => j.First.Concat(j.Second))
            .Where(e => e.Piece == _id && !e.IsFilled).SelectMany(Faces),
    ];

    private ImmutableArray<EdgeFace> Round => _round.Value;

    private const short Worked = -1;

    /// <summary>Cut of the faces that meet where short rows left something.</summary>
    private const int Closed = -4;

    /// <summary>Cut of the faces along what a form leaves out beside an upright side.</summary>
    private static int SlopeOf(PieceSide side) => side switch { PieceSide.Left => -2, PieceSide.Right => -3, _ => int.MinValue };

    public int Columns { get; }

    public int Rows { get; }

    /// <summary>A cut that meets another, or opens sides that no opening has, has no <see cref="CutExtent"/>.</summary>
    public ImmutableArray<CutExtent?> Cuts { get; }

    /// <summary>How far an opening goes into the piece, on average of its sides; 0 for a slit.</summary>
    public double Into(OpeningDesign opening) =>
        opening.Sides.Select(side => Find(opening.Id, side)).OfType<CutExtent>().Select(c => (double)c.Into).DefaultIfEmpty(0).Average();

    public CutExtent? Find(OpeningId opening, PieceSide side) => Cuts.FirstOrDefault(c => c?.Opening == opening && c.Side == side);

    /// <summary>Stretches of an edge in its order, seams that meet its ends taken off.</summary>
    /// <param name="hidden">Stitches, and rows, that a seam takes.</param>
    public ImmutableArray<EdgeRun> Runs(PieceEdge edge, (int Stitches, int Rows) hidden)
    {
        var faces = Faces(edge);
        var (from, to) = (0, faces.Count);
        if (to > 0)
        {
            from = Math.Min(HiddenAt(faces[0], faces, hidden), to);
            faces.Reverse();
            to = Math.Max(from, to - HiddenAt(faces[0], faces, hidden));
            faces.Reverse();
        }
        var runs = ImmutableArray.CreateBuilder<EdgeRun>();
        for (var i = from; i < to;)
        {
            var first = faces[i];
            var end = i + 1;
            while (end < to && faces[end].Facing == first.Facing && Inside(faces[end]) == Inside(first)
                && Math.Abs(Along(faces[end]) - Along(faces[end - 1])) == 1)
                end++;
            var (one, other) = (Along(first), Along(faces[end - 1]));
            var backwards = other < one || (one == other && edge.Backwards);
            runs.Add(new EdgeRun(_id, first.Facing, Math.Min(one, other), end - i, AlongStitches(first.Facing), backwards)
            {
                Inside = Inside(first),
            });
            i = end;
        }
        return runs.ToImmutable();
    }

    /// <summary>Stitches along a run in its order, as a seam, or the join of a round, leaves them to be seen.</summary>
    public ImmutableArray<SeamStitch> Read(EdgeRun run, (int Stitches, int Rows) hidden)
    {
        var stitches = Enumerable.Range(run.From, run.Count).Select(at => Stitch(Face(run, at), hidden));
        return [.. run.Backwards ? stitches.Reverse() : stitches];
    }

    public bool AlongStitches(PieceSide side) => !side.IsUpright() == _up;

    /// <summary>Where the edge turns, in places from the bottom's left, against the clock; between two of them it is straight.</summary>
    public IEnumerable<(int X, int Y)> Corners() => CornersOf(Round).SkipLast(1);

    /// <summary>The same along what an opening cuts out.</summary>
    public IEnumerable<(int X, int Y)> CornersOf(CutExtent cut) => CornersOf([.. Round.Where(f => f.Cut == Cuts.IndexOf(cut))]);

    private static IEnumerable<(int X, int Y)> CornersOf(ImmutableArray<EdgeFace> faces)
    {
        for (var i = 0; i < faces.Length; i++)
        {
            if (i == 0 || faces[i].Facing != faces[i - 1].Facing)
                yield return Begin(faces[i]);
        }
        yield return End(faces[^1]);

        static (int, int) Begin(EdgeFace face) => face.Facing switch
        {
            PieceSide.Bottom => (face.X, face.Y),
            PieceSide.Right => (face.X + 1, face.Y),
            PieceSide.Top => (face.X + 1, face.Y + 1),
            _ => (face.X, face.Y + 1),
        };

        static (int, int) End(EdgeFace face) => face.Facing switch
        {
            PieceSide.Bottom => (face.X + 1, face.Y),
            PieceSide.Right => (face.X + 1, face.Y + 1),
            PieceSide.Top => (face.X, face.Y + 1),
            _ => (face.X, face.Y),
        };
    }

    /// <summary>From the beginning of the edge to its end, what seams hide of it included.</summary>
    private List<EdgeFace> Faces(PieceEdge edge)
    {
        List<EdgeFace> faces;
        if (edge.Opening is not { } id || edge.Stretch == Stretch.Whole)
            faces = [.. OfSide(edge.Side, -1)];
        else if (Find(id, edge.Side) is { } extent)
        {
            faces = edge.Stretch switch
            {
                Stretch.BeforeOpening => [.. OfSide(edge.Side, -1).Where(f => Along(f) < extent.Begins)],
                Stretch.AfterOpening => [.. OfSide(edge.Side, -1).Where(f => Along(f) >= extent.Begins + extent.Length)],
                Stretch.FirstHalf or Stretch.SecondHalf => HalfOf(edge, OfSide(edge.Side, Cuts.IndexOf(extent))),
                _ => [.. OfSide(edge.Side, Cuts.IndexOf(extent))],
            };
        }
        else
        {
            var side = OfSide(edge.Side, -1);
            var (from, length) = _slit(edge.Side, id);
            faces = edge.Stretch switch
            {
                Stretch.BeforeOpening => [.. side.Where(f => Along(f) < from)],
                Stretch.AfterOpening => [.. side.Where(f => Along(f) >= from + length)],
                _ => [.. side.Where(f => Along(f) >= from && Along(f) < from + length)],
            };
        }
        if (edge.Backwards)
            faces.Reverse();
        return faces;
    }

    /// <summary>What is cut out up to the middle of what looks the way of its side, or from there on.</summary>
    private static List<EdgeFace> HalfOf(PieceEdge edge, EdgeFace[] faces)
    {
        var lower = faces.Where(f => f.Facing == edge.Side).ToArray();
        var middle = Array.IndexOf(faces, lower[lower.Length / 2]);
        return [.. edge.Stretch == Stretch.FirstHalf ? faces[..middle] : faces[middle..]];
    }

    /// <summary>In the direction of the side.</summary>
    private EdgeFace[] OfSide(PieceSide side, int cut)
    {
        if (!_sides.TryGetValue((side, cut), out var faces))
        {
            faces = [.. Round.Where(f => cut >= 0 ? f.Cut == cut : f.Cut == -1 ? f.Facing == side : f.Cut == SlopeOf(side))];
            if (side is PieceSide.Top or PieceSide.Left)
                Array.Reverse(faces);
            _sides.Add((side, cut), faces);
        }
        return faces;
    }

    /// <summary>What a seam that meets an edge at its end hides of it.</summary>
    private int HiddenAt(EdgeFace end, List<EdgeFace> faces, (int Stitches, int Rows) hidden)
    {
        if (hidden == (0, 0))
            return 0;
        var at = Round.IndexOf(end);
        var meets = new[] { Round[(at + 1) % Round.Length], Round[(at + Round.Length - 1) % Round.Length] }
            .Any(f => (faces.Count == 1 || f != faces[1]) && _sewn.Value.Contains(f)
                && AlongStitches(f.Facing) != AlongStitches(end.Facing));
        if (!meets)
            return 0;
        return AlongStitches(end.Facing) ? hidden.Stitches : hidden.Rows;
    }

    private SeamStitch Stitch(EdgeFace face, (int Stitches, int Rows) hidden)
    {
        var (row, column) = WorkedAt(face.X, face.Y);
        var part = _worked!.Parts.First(p => p.Outline.Has(row - p.FirstRow, column));
        var (path, at) = (part.Path, row - part.FirstRow);
        var side = _turned ? face.Facing.Mirrored() : face.Facing;
        var far = hidden.Stitches * ColourRing.Unit;
        if (!AlongStitches(side))
        {
            return side is PieceSide.Right or PieceSide.Bottom
                ? new SeamStitch(path.FromRight(at, far), path.FromRight(at, far - ColourRing.Unit))
                : new SeamStitch(path.FromLeft(at, far), path.FromLeft(at, far - ColourRing.Unit));
        }
        var step = side is PieceSide.Top or PieceSide.Right ? -1 : 1;
        var seen = Math.Clamp(at + step * hidden.Rows, 0, path.Rows - 1);
        return new SeamStitch(At(seen), At(seen - step));

        // Beyond its rows a part goes on in the columns of its first or last one.
        long At(int r) => path.FromRight(r, (column - path.FirstColumns[Math.Clamp(r, 0, path.Rows - 1)]) * ColourRing.Unit);
    }

    private EdgeFace Face(EdgeRun run, int at) => run.Side switch
    {
        PieceSide.Bottom => new(at, run.Inside, run.Side, -1),
        PieceSide.Top when _gored => new(_reach.Value[at], Rows - 1, run.Side, -1),
        PieceSide.Top => new(at, Rows - 1 - run.Inside, run.Side, -1),
        PieceSide.Left => new(run.Inside, at, run.Side, -1),
        _ => new(Columns - 1 - run.Inside, at, run.Side, -1),
    };

    private int Along(EdgeFace face) => face.Facing.IsUpright() ? face.Y
        : face.Facing == PieceSide.Top && _gored ? Array.BinarySearch(_reach.Value, face.X) : face.X;

    private int Inside(EdgeFace face) => face.Facing switch
    {
        PieceSide.Bottom => face.Y,
        PieceSide.Top => Rows - 1 - face.Y,
        PieceSide.Left => face.X,
        _ => Columns - 1 - face.X,
    };

    private int Index(int row, int column)
    {
        column -= _firstColumn;
        var (x, y) = _up ? (Columns - 1 - column, row) : (row, column);
        return y * Columns + (_turned ? Columns - 1 - x : x);
    }

    private (int Row, int Column) WorkedAt(int x, int y)
    {
        if (_turned)
            x = Columns - 1 - x;
        return _up ? (y, _firstColumn + Columns - 1 - x) : (x, _firstColumn + y);
    }

    private bool Has(int x, int y) => x >= 0 && x < Columns && y >= 0 && y < Rows && _cells[y * Columns + x] == Worked;

    /// <summary>
    /// What is missing of the rectangle: in the cells its number from 1, or that of its slope where a form leaves it out.
    /// </summary>
    private ImmutableArray<CutExtent?> Missing()
    {
        var cuts = ImmutableArray.CreateBuilder<CutExtent?>();
        var open = new Stack<int>();
        var formed = _construction.GroupOf(_id).IsSloped;
        for (var first = _cells.AsSpan().IndexOf((short)0); first >= 0; first = _cells.AsSpan().IndexOf((short)0))
        {
            var (left, right, bottom, top) = (int.MaxValue, 0, int.MaxValue, 0);
            // What a form leaves out of a line lies at its left or at its right.
            var side = IsWorkedBefore(first) ? PieceSide.Right : PieceSide.Left;
            var mark = (short)(_gored ? Closed : !formed ? cuts.Count + 1 : SlopeOf(side));
            open.Push(first);
            while (open.TryPop(out var at))
            {
                var (x, y) = (at % Columns, at / Columns);
                var line = _cells.AsSpan(y * Columns, Columns);
                if (line[x] != 0)
                    continue;
                var from = line[..x].LastIndexOfAnyExcept((short)0) + 1;
                var to = line[x..].IndexOfAnyExcept((short)0) is >= 0 and var end ? x + end : Columns;
                line[from..to].Fill(mark);
                (left, right, bottom, top) = (Math.Min(left, from), Math.Max(right, to - 1), Math.Min(bottom, y), Math.Max(top, y));
                foreach (var beside in (ReadOnlySpan<int>)[y - 1, y + 1])
                {
                    for (x = from; beside >= 0 && beside < Rows && x < to; x++)
                    {
                        if (_cells[beside * Columns + x] == 0 && (x == from || _cells[beside * Columns + x - 1] != 0))
                            open.Push(beside * Columns + x);
                    }
                }
            }
            if (!formed && !_gored)
                cuts.Add(Extent((left, right, bottom, top)));
        }
        return cuts.ToImmutable();
    }

    private bool IsWorkedBefore(int cell) => _cells.AsSpan(cell / Columns * Columns, cell % Columns).Contains(Worked);

    private CutExtent? Extent((int Left, int Right, int Bottom, int Top) box)
    {
        var opens = (Left: box.Left == 0, Right: box.Right == Columns - 1, Bottom: box.Bottom == 0, Top: box.Top == Rows - 1);
        var (wide, high) = (box.Right - box.Left + 1, box.Top - box.Bottom + 1);
        foreach (var opening in _construction.GroupOf(_id).OpeningsOf(_id).Where(o => o.Cut is not null))
        {
            foreach (var side in opening.Sides)
            {
                var found = (side, opening.At, opens) switch
                {
                    (PieceSide.Top, OpeningAt.Middle, (false, false, false, true))
                        or (PieceSide.Top, OpeningAt.Beginning, (true, false, false, true))
                        or (PieceSide.Top, OpeningAt.End, (false, true, false, true)) =>
                        new CutExtent(opening.Id, side, box.Left, wide, high),
                    (PieceSide.Left, OpeningAt.End, (true, false, false, true))
                        or (PieceSide.Right, OpeningAt.End, (false, true, false, true)) =>
                        new CutExtent(opening.Id, side, box.Bottom, high, wide),
                    _ => null,
                };
                if (found is not null)
                    return found;
            }
        }
        return null;
    }

    /// <summary>Against the clock from the bottom's left on: bottom, right, top, left.</summary>
    private IEnumerable<EdgeFace> Followed()
    {
        // Where two stitches touch at a corner alone, the edge comes by twice: first along the lower one, then along the upper one.
        var touched = new HashSet<(int, int)>();
        var first = (X: Enumerable.Range(0, Columns).First(x => Has(x, 0)), Y: 0);
        var corner = first;
        do
        {
            var (x, y) = corner;
            var (lowerLeft, lowerRight, upperLeft, upperRight) = (Has(x - 1, y - 1), Has(x, y - 1), Has(x - 1, y), Has(x, y));
            var again = lowerLeft == upperRight && lowerRight == upperLeft && !touched.Add(corner);
            // A face goes on from this corner to the next, the piece at its left.
            (var face, corner) = lowerLeft && !upperLeft && !again ? (At(x - 1, y - 1, PieceSide.Top, x - 1, y), (x - 1, y))
                : lowerRight && !lowerLeft && !again ? (At(x, y - 1, PieceSide.Left, x - 1, y - 1), (x, y - 1))
                : upperRight && !lowerRight ? (At(x, y, PieceSide.Bottom, x, y - 1), (x + 1, y))
                : (At(x - 1, y, PieceSide.Right, x, y), (x, y + 1));
            yield return face;
        }
        while (corner != first);

        // What is missing is beyond the face.
        EdgeFace At(int x, int y, PieceSide facing, int beyondX, int beyondY)
        {
            if (beyondX < 0 || beyondX >= Columns || beyondY < 0 || beyondY >= Rows)
                return new EdgeFace(x, y, facing, -1);
            var missing = _cells[beyondY * Columns + beyondX];
            return new EdgeFace(x, y, facing, missing > 0 ? missing - 1 : missing);
        }
    }
}
