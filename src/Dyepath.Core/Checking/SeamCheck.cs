using Dyepath.Core.Fabrics;
using Dyepath.Core.Garments;
using Dyepath.Core.Planning;

namespace Dyepath.Core.Checking;

/// <summary>
/// Every seam of a size, unit against unit: what is seen beside it, and what would lie there if the fabric went on (docs/seams.md).
/// </summary>
internal sealed class SeamCheck
{
    /// <summary>Half a thousandth of a stitch: places are rounded to millionths, jumps are means of many.</summary>
    private const double Tolerance = 5e-4;

    private readonly Plan _plan;
    private readonly SizePlan _size;
    private readonly int _perUnit;
    private readonly Construction _construction;
    private readonly Dictionary<PieceId, PlainShape> _shapes = [];

    private SeamCheck(Plan plan, SizePlan size, PlainFabric fabric) =>
        (_plan, _size, _perUnit, _construction) = (plan, size, fabric.PerUnit, plan.Construction);

    private SeamChoice Choice => _plan.Project.Garment.Seams;

    private bool Up => _plan.Direction == Direction.Up;

    public static void Seams(Plan plan, SizePlan size, PlainFabric fabric, Disagreements notes)
    {
        var check = new SeamCheck(plan, size, fabric);
        notes.Same("seams, how many", size.Seams.Length, check._construction.Joins.Length);
        foreach (var join in check._construction.Joins)
        {
            if (size.Seams.FirstOrDefault(s => s.Id == join.Id) is not { } seam)
            {
                notes.Say("seams", $"There is no {PlaceNames.Of(join.Id)}.");
                continue;
            }
            notes.Same($"seams.{seam.Where}, places", seam.First.Sum(r => r.Count), join.First.Sum(check.Places));
            notes.Same($"seams.{seam.Where}, places across", seam.Second.Sum(r => r.Count), join.Second.Sum(check.Places));
            if (fabric.Period is { } period)
                check.Judged(join, seam, period, notes);
        }
    }

    /// <summary>The jump, what it was measured against, and what chance would give.</summary>
    private void Judged(Join join, SeamPlan seam, double period, Disagreements notes)
    {
        var colours = !BesideBands(join) && join.First.AddRange(join.Second).All(e => _size[e.Piece].Pooled);
        var (one, other) = !colours ? ([], []) : (Walk(join, join.First), Walk(join, join.Second));
        var (continued, mirrored) = (Jump(one, other, period, false), Jump(one, other, period, true));
        notes.Same($"seams.{seam.Where}", seam.PhaseJump, seam.Extension == SeamExtension.Mirrored ? mirrored : continued, Tolerance);
        notes.Same($"seams.{seam.Where}, chance", seam.Chance, colours ? 0.25 * period : 0, Tolerance);
        var right = seam.Extension switch
        {
            null => !colours,
            _ when !colours => false,
            SeamExtension.Continued when join.Kind == JoinKind.Round => true,
            _ when join.Kind == JoinKind.Round => false,
            { } judged when Choice.Extension is { } wanted => judged == wanted,
            SeamExtension.Continued => continued <= mirrored + Tolerance,
            _ => mirrored <= continued + Tolerance,
        };
        if (!right)
            notes.Say($"seams.{seam.Where}, extension", $"It is judged as {seam.Extension?.ToString() ?? "without colours"}, which is not what the document asks for.");
    }

    private static double Jump(
        List<(double Seen, double Beyond)> one, List<(double Seen, double Beyond)> other, double period, bool mirrored)
    {
        var pairs = one.Count == 0 || other.Count == 0 ? 0 : Math.Max(one.Count, other.Count);
        return Enumerable.Range(0, pairs).Select(i =>
        {
            var meets = one[i * one.Count / pairs];
            return Math.Abs(Math.IEEERemainder(other[i * other.Count / pairs].Seen - (mirrored ? meets.Seen : meets.Beyond), period));
        }).DefaultIfEmpty(0).Average();
    }

    /// <summary>Beside a plain band no colours adjoin; it runs along the whole side.</summary>
    private bool BesideBands(Join join) => join.First.AddRange(join.Second).Any(e =>
        e.Side.IsUpright() && _size[e.Piece].SideBandRows > 0);

    private List<(double Seen, double Beyond)> Walk(Join join, IEnumerable<PieceEdge> edges)
    {
        var walked = new List<(double Seen, double Beyond)>();
        foreach (var edge in edges)
        {
            var along = AsWorn(edge, join);
            if (edge.Backwards)
                along.Reverse();
            walked.AddRange(along);
        }
        return walked;
    }

    private int Places(PieceEdge edge)
    {
        if (edge.Stretch is Stretch.FirstHalf or Stretch.SecondHalf)
            return Half(edge);
        if (_size[edge.Piece].Shape is not null)
            return Shape(edge.Piece).Visible(edge, Choice).Length;
        var (from, to) = Ends(edge);
        return to - from - (_construction.Joins.First(j => j.First.Contains(edge) || j.Second.Contains(edge)).Sewn
            || _size[edge.Piece].Working != Working.Spiral ? 0 : 1);
    }

    /// <summary>Half of a cut's lower edge and the upright one beside it, whose upper end the seam of its side takes.</summary>
    private int Half(PieceEdge edge)
    {
        var opening = _construction.GroupOf(edge.Piece).Opening(edge.Opening!.Value, edge.Piece);
        var (along, atBeginning, atEnd) = Shape(edge.Piece).Places(opening, edge.Side);
        var hidden = Up ? Choice.HiddenRows : Choice.HiddenStitches;
        return edge.Stretch == Stretch.FirstHalf ? along / 2 + atBeginning - hidden : along - along / 2 + atEnd - hidden;
    }

    /// <summary>A row of linen stitch is counted in stitches along its side, and read in pairs.</summary>
    private (int From, int To) Ends(PieceEdge edge)
    {
        var piece = _size[edge.Piece];
        // A triangle is worked up whatever the garment is.
        var alongStitches = piece.Taper is not null ? !edge.Side.IsUpright() : AlongStitches(edge.Side);
        var all = alongStitches ? piece.Stitches : piece.Rows;
        var hidden = alongStitches ? Choice.HiddenStitches : Choice.HiddenRows;
        int from = 0, to = all;
        if (edge.Opening is { } id)
        {
            var opening = piece.Opening(id);
            (from, to) = edge.Stretch switch
            {
                Stretch.BeforeOpening => (0, opening.First - 1),
                Stretch.AfterOpening => (opening.Last, all),
                _ => (opening.First - 1, opening.Last),
            };
        }
        if (edge.Above is { } below)
            from = piece.Opening(below).Last;
        if (from == 0 && _construction.IsSewnAt(edge.Piece, edge.Side, atEnd: false))
            from = Math.Min(hidden, to);
        if (to == all && _construction.IsSewnAt(edge.Piece, edge.Side, atEnd: true))
            to = Math.Max(from, all - hidden);
        return (from, to);
    }

    /// <summary>Laid out once for all of its edges.</summary>
    private PlainShape Shape(PieceId piece)
    {
        if (!_shapes.TryGetValue(piece, out var shape))
            _shapes.Add(piece, shape = new PlainShape(_size[piece], _construction, Up));
        return shape;
    }

    private bool AlongStitches(PieceSide side) => !side.IsUpright() == Up;

    /// <summary>From the bottom up, or from left to right, as the piece hangs in the garment.</summary>
    private List<(double Seen, double Beyond)> AsWorn(PieceEdge edge, Join join)
    {
        var piece = _size[edge.Piece];
        if (piece.Shape is not null)
        {
            var shape = Shape(edge.Piece);
            var (stitches, ends) = join.Sewn ? (Choice.HiddenStitches, Choice.HiddenRows) : (0, 0);
            return [.. shape.Visible(edge, Choice).Select(line => shape.Beside(edge.Side, line, stitches, ends))];
        }
        var rows = new PlainRows(piece, _perUnit);
        var (from, to) = Ends(edge);
        var spiral = !join.Sewn && piece.Working == Working.Spiral;
        if (spiral)
            (from, to) = join.First.Contains(edge) ? (from, to - 1) : (from + 1, to);
        // Turned wrong side out, the wearer's left is what lay at the right.
        var side = piece.WrongSideOut ? edge.Side.Mirrored() : edge.Side;
        var read = new List<(double Seen, double Beyond)>();
        if (!AlongStitches(edge.Side))
        {
            var hidden = join.Sewn ? (double)Choice.HiddenStitches / _perUnit : 0;
            var atRight = side is PieceSide.Right or PieceSide.Bottom;
            // Worn up, places along the side are rows; worn sideways turned over, they are rows from the last.
            var reversed = piece.WrongSideOut && !Up;
            for (var place = from; place < to; place++)
            {
                var row = reversed ? piece.Rows - 1 - place : place;
                read.Add((rows.At(row, atRight, hidden), rows.At(row, atRight, hidden - 1)));
            }
            return read;
        }
        var last = side is PieceSide.Top or PieceSide.Right;
        var hiddenRows = join.Sewn ? Choice.HiddenRows : 0;
        var seen = last ? piece.Rows - 1 - hiddenRows : hiddenRows;
        var beyond = last ? seen + 1 : seen - 1;
        // Worn up, left is where a row's last unit from the right lies, unless the piece is turned over.
        var leftIsEnd = Up && !piece.WrongSideOut;
        var (near, far) = leftIsEnd ? (piece.Stitches - to, piece.Stitches - from) : (from, to);
        var (first, units) = (near / _perUnit, far / _perUnit - near / _perUnit);
        var endsAtLeft = piece.Stitches - far <= Choice.HiddenStitches && near > Choice.HiddenStitches;
        var over = (int)rows.Width(seen) - (piece.Stitches - far) / _perUnit - units - first;
        for (var unit = first; unit < first + units; unit++)
        {
            var inwards = unit + (endsAtLeft ? over : 0);
            read.Add((rows.At(seen, true, inwards), rows.At(beyond, true, inwards)));
        }
        if (leftIsEnd)
            read.Reverse();
        return read;
    }
}
