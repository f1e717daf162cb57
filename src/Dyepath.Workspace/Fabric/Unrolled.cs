using System.Collections.Immutable;
using Dyepath.Core.Constructions;
using Dyepath.Core.Fabrics;
using Dyepath.Core.Garments;
using Dyepath.Core.Planning;

namespace Dyepath.Workspace.Fabric;

/// <summary>A piece laid out flat as it is worn, without the stitches that its side seams hide; in centimetres.</summary>
/// <param name="Worn">As it is worn, hidden columns included.</param>
/// <param name="X">Left edge.</param>
/// <param name="Y">Upper edge.</param>
/// <param name="Width">Without what seams hide.</param>
/// <param name="Height">From top to bottom.</param>
/// <param name="HiddenLeft">Columns that a seam hides at the left; a front that opens has a seam at one side only.</param>
/// <param name="HiddenRight">Columns that a seam hides at the right.</param>
public sealed record LaidPiece(WornPiece Worn, double X, double Y, double Width, double Height, int HiddenLeft, int HiddenRight)
{
    /// <summary>As planned.</summary>
    public PiecePlan Piece => Worn.Piece;

    /// <summary>Those that are seen.</summary>
    public int Columns => Worn.Columns - HiddenLeft - HiddenRight;

    /// <summary>Right edge.</summary>
    public double Right => X + Width;

    /// <summary>Lower edge.</summary>
    public double Bottom => Y + Height;

    /// <summary>The cells that are seen, of this piece or of another with other colours.</summary>
    public byte[] Cells(WornPiece? other = null) => Seen((other ?? Worn).Cells);

    /// <summary>What is seen of one byte a stitch of the whole piece.</summary>
    public byte[] Seen(ReadOnlySpan<byte> whole)
    {
        var seen = new byte[Columns * Worn.Rows];
        for (var y = 0; y < Worn.Rows; y++)
            whole.Slice(y * Worn.Columns + HiddenLeft, Columns).CopyTo(seen.AsSpan(y * Columns));
        return seen;
    }
}

/// <summary>An edge that is sewn to another, or where rounds join.</summary>
/// <param name="Seams">Places in the size's seams; at one edge of a sleeve that stands for both, two.</param>
/// <param name="X1">In centimetres.</param>
/// <param name="Y1">In centimetres.</param>
/// <param name="X2">In centimetres.</param>
/// <param name="Y2">In centimetres.</param>
public sealed record SeamLine(ImmutableArray<int> Seams, double X1, double Y1, double X2, double Y2)
{
    /// <summary>Runs up and down, or else across.</summary>
    public bool IsUpright => X1 == X2;
}

/// <summary>
/// The pieces of one size side by side in the order in which they adjoin round the body, a sleeve below them; y grows downwards.
/// </summary>
/// <param name="Plan">What the size is of.</param>
/// <param name="Size">What is laid out.</param>
/// <param name="Pieces">In the order in which they adjoin.</param>
/// <param name="Seams">Where edges are sewn or rounds join.</param>
/// <param name="Openings">Armholes that are edged, or that take plain sleeves: no colours meet there.</param>
public sealed record Unrolled(
    Plan Plan, SizePlan Size, ImmutableArray<LaidPiece> Pieces, ImmutableArray<SeamLine> Seams, ImmutableArray<SeamLine> Openings)
{
    /// <summary>Between groups of pieces, in centimetres: room for a piece's name.</summary>
    private const double GroupGap = 12;

    /// <summary>Lines that are no farther apart are one, in centimetres.</summary>
    private const double Touching = 0.01;

    /// <summary>Of everything, in centimetres.</summary>
    public double Width => Pieces.Max(p => p.Right);

    /// <summary>Of everything, in centimetres.</summary>
    public double Height => Pieces.Max(p => p.Bottom);

    /// <summary>Lays out a size.</summary>
    public static Unrolled Of(Plan plan, SizePlan size)
    {
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(size);
        var construction = plan.Construction;
        var pieces = Lay(plan, size, construction);
        var (seams, openings) = (new List<SeamLine>(), new List<SeamLine>());
        for (var at = 0; at < size.Seams.Length; at++)
        {
            var seam = size.Seams[at];
            // Between two plain bands no colours adjoin, nor beside a plain piece.
            var tells = seam.Extension is not null;
            foreach (var run in seam.First.Concat(seam.Second))
            {
                var line = Line(pieces.First(p => p.Piece.Id == run.Piece), run, at);
                if (tells)
                    Merge(seams, line);
                // What is cut out is seen without a line.
                else if (size[run.Piece].Pooled && size[run.Piece].SideBandRows == 0 && run.Inside == 0)
                    Merge(openings, line with { Seams = [] });
            }
        }
        foreach (var laid in pieces)
        {
            foreach (var opening in construction.GroupOf(laid.Piece.Id).OpeningsOf(laid.Piece.Id).Where(o => o.At != OpeningAt.Middle))
            {
                var own = laid.Piece.Opening(opening.Id);
                // What is cut out is seen without a line.
                if (own.Into > 0)
                    continue;
                foreach (var side in opening.Sides)
                {
                    var run = new EdgeRun(laid.Piece.Id, side, own.First - 1, own.Length, own.AlongStitches, false);
                    if (!size.Seams.Any(s => s.First.Concat(s.Second)
                        .Any(r => r.Piece == run.Piece && r.Side == side && r.From >= run.From)))
                        Merge(openings, Line(laid, run, 0) with { Seams = [] });
                }
            }
        }
        return new Unrolled(plan, size, pieces, [.. seams], [.. openings]);
    }

    /// <summary>Seams where two pooled edges meet: what the colours do there is worth a figure.</summary>
    public IEnumerable<int> Telling => Seams.SelectMany(s => s.Seams).Distinct().Order();

    /// <summary>The pieces of the first group side by side, plain bands between them; those of every further one below.</summary>
    private static ImmutableArray<LaidPiece> Lay(Plan plan, SizePlan size, Construction construction)
    {
        var pieces = ImmutableArray.CreateBuilder<LaidPiece>();
        double top = 0, wide = 0;
        foreach (var group in construction.Groups)
        {
            double left = 0, high = 0;
            foreach (var design in group.Pieces)
            {
                var laid = Lay(plan, construction, size[design.Id], left, top);
                pieces.Add(laid);
                var bands = laid.Piece.SideBandRows == 0 ? 0
                    : (size.Finished[group.Across.Measure].Centimetres - group.Across.Pieces * laid.Width) / group.Across.Pieces;
                left = laid.Right + Math.Max(0, bands);
                high = Math.Max(high, laid.Height);
            }
            var right = pieces[^1].Right;
            if (wide > 0)
            {
                for (var i = pieces.Count - group.Pieces.Length; i < pieces.Count; i++)
                    pieces[i] = pieces[i] with { X = pieces[i].X + Math.Max(0, (wide - right) / 2) };
            }
            wide = Math.Max(wide, right);
            top += high + GroupGap;
        }
        return pieces.ToImmutable();
    }

    private static LaidPiece Lay(Plan plan, Construction construction, PiecePlan piece, double x, double y)
    {
        var worn = WornPiece.Of(plan, piece);
        var seams = plan.Project.Garment.Seams;
        var (left, right) = (Hidden(PieceSide.Left), Hidden(PieceSide.Right));
        var cell = piece.Width.Centimetres / worn.Columns;
        return new LaidPiece(worn, x, y, cell * (worn.Columns - left - right), piece.Height.Centimetres, left, right);

        int Hidden(PieceSide side) => !construction.IsSewn(piece.Id, side) ? 0
            : Math.Min(
                construction.GroupOf(piece.Id).WorkedIn(plan.Direction) == Direction.Up ? seams.HiddenStitches : seams.HiddenRows,
                (worn.Columns - 1) / 2);
    }

    private static SeamLine Line(LaidPiece laid, EdgeRun run, int seam)
    {
        if (run.Side.IsUpright())
        {
            var x = run.Side == PieceSide.Left ? laid.X : laid.Right;
            var cell = laid.Height / laid.Worn.Rows;
            var inwards = run.Side == PieceSide.Left ? 1 : -1;
            double At(int place) => x + inwards * laid.Width / laid.Columns * laid.Worn.Inset(laid.Worn.Rows - 1 - place);
            return new SeamLine([seam], At(run.From + run.Count - 1), laid.Bottom - cell * (run.From + run.Count), At(run.From),
                laid.Bottom - cell * run.From);
        }
        var (y, column) = (run.Side == PieceSide.Top ? laid.Y : laid.Bottom, laid.Width / laid.Columns);
        return new SeamLine(
            [seam], laid.X + column * (run.From - laid.HiddenLeft), y, laid.X + column * (run.From + run.Count - laid.HiddenLeft), y);
    }

    /// <summary>A line that is there already stands for both: edges that touch, or one edge of a piece that is made twice.</summary>
    private static void Merge(List<SeamLine> lines, SeamLine line)
    {
        var at = lines.FindIndex(l => Math.Abs(l.X1 - line.X1) < Touching && Math.Abs(l.X2 - line.X2) < Touching
            && Math.Abs(l.Y1 - line.Y1) < Touching && Math.Abs(l.Y2 - line.Y2) < Touching);
        if (at < 0)
            lines.Add(line);
        else
            lines[at] = lines[at] with { Seams = [.. lines[at].Seams.Union(line.Seams).Order()] };
    }
}
