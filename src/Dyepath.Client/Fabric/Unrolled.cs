using System.Collections.Immutable;
using Dyepath.Core.Fabrics;
using Dyepath.Core.Garments;
using Dyepath.Core.Planning;

namespace Dyepath.Client.Fabric;

/// <summary>A piece laid out flat as it is worn, without the stitches that its side seams hide; in centimetres.</summary>
/// <param name="Hidden">Columns that are hidden at each side.</param>
public sealed record LaidPiece(WornPiece Worn, double X, double Y, double Width, double Height, int Hidden)
{
    public PiecePlan Piece => Worn.Piece;

    public int Columns => Worn.Columns - 2 * Hidden;

    public double Right => X + Width;

    public double Bottom => Y + Height;

    /// <summary>The cells that are seen, of this piece or of another with other colours.</summary>
    public IEnumerable<byte> Cells(WornPiece? other = null)
    {
        var worn = other ?? Worn;
        for (var y = 0; y < worn.Rows; y++)
        {
            for (var x = Hidden; x < worn.Columns - Hidden; x++)
                yield return worn.Cells[y * worn.Columns + x];
        }
    }
}

/// <summary>An edge that is sewn to another, or where rounds join.</summary>
/// <param name="Seams">Places in the size's seams; at one edge of a sleeve that stands for both, two.</param>
public sealed record SeamLine(ImmutableArray<int> Seams, double X1, double Y1, double X2, double Y2)
{
    public bool IsUpright => X1 == X2;
}

/// <summary>
/// The pieces of one size side by side in the order in which they adjoin round the body, a sleeve below them; y grows downwards.
/// </summary>
/// <param name="Openings">Armholes that are edged, or that take plain sleeves: no colours meet there.</param>
public sealed record Unrolled(
    Plan Plan, SizePlan Size, ImmutableArray<LaidPiece> Pieces, ImmutableArray<SeamLine> Seams, ImmutableArray<SeamLine> Openings)
{
    /// <summary>Between panels and sleeve, in centimetres: room for the sleeve's name.</summary>
    private const double SleeveGap = 12;

    public double Width => Pieces.Max(p => p.Right);

    public double Height => Pieces.Max(p => p.Bottom);

    public static Unrolled Of(Plan plan, SizePlan size)
    {
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(size);
        return plan.Project.Garment.Shape is BoxyTop ? Top(plan, size) : Rectangle(plan, size);
    }

    /// <summary>Seams where two pooled edges meet: what the colours do there is worth a figure.</summary>
    public IEnumerable<int> Telling => Seams.SelectMany(s => s.Seams).Distinct().Order();

    private static Unrolled Rectangle(Plan plan, SizePlan size)
    {
        var sewn = size.Seams.Any(s => s.Id == SeamId.BackSeam);
        var piece = Lay(plan, size.Pieces[0], 0, sewn);
        ImmutableArray<SeamLine> seams = size.Seams.IsEmpty
            ? []
            : [Upright(piece.X, 0, piece.Height, 0), Upright(piece.Right, 0, piece.Height, 0)];
        return new Unrolled(plan, size, [piece], seams, []);
    }

    private static Unrolled Top(Plan plan, SizePlan size)
    {
        var front = Lay(plan, size[PieceId.Front], 0, true);
        // Plain bands at the sides stand between the panels.
        var bands = (size.Finished[GarmentMeasure.Width].Centimetres - 2 * front.Width) / 2;
        var back = Lay(plan, size[PieceId.Back], front.Width + (front.Piece.SideBandRows > 0 ? Math.Max(0, bands) : 0), true);
        var pieces = ImmutableArray.Create(front, back);
        var seams = ImmutableArray.CreateBuilder<SeamLine>();
        var openings = ImmutableArray.CreateBuilder<SeamLine>();
        var sleeve = size.Find(PieceId.Sleeve) is { } own ? Below(Lay(plan, own, 0, true)) : null;
        if (front.Piece.SideBandRows == 0)
        {
            Edge(front, right: true, upper: false, SeamId.LeftSide);
            Edge(back, right: false, upper: false, SeamId.LeftSide);
            Edge(front, right: false, upper: false, SeamId.RightSide);
            Edge(back, right: true, upper: false, SeamId.RightSide);
        }
        Edge(front, right: true, upper: true, SeamId.LeftArmhole);
        Edge(back, right: false, upper: true, SeamId.LeftArmhole);
        Edge(front, right: false, upper: true, SeamId.RightArmhole);
        Edge(back, right: true, upper: true, SeamId.RightArmhole);
        Shoulders(front, SeamId.RightShoulder, SeamId.LeftShoulder);
        Shoulders(back, SeamId.LeftShoulder, SeamId.RightShoulder);
        if (sleeve is not null)
        {
            pieces = pieces.Add(sleeve);
            if (sleeve.Piece.Pooled)
            {
                seams.Add(new SeamLine(Named(SeamId.LeftArmhole, SeamId.RightArmhole), sleeve.X, sleeve.Y, sleeve.Right, sleeve.Y));
                seams.Add(new SeamLine(Named(SeamId.LeftSleeve, SeamId.RightSleeve), sleeve.X, sleeve.Y, sleeve.X, sleeve.Bottom));
                seams.Add(new SeamLine(Named(SeamId.LeftSleeve, SeamId.RightSleeve), sleeve.Right, sleeve.Y, sleeve.Right, sleeve.Bottom));
            }
        }
        return new Unrolled(plan, size, pieces, seams.ToImmutable(), openings.ToImmutable());

        LaidPiece Below(LaidPiece piece) =>
            piece with { X = Math.Max(0, (back.Right - piece.Width) / 2), Y = Math.Max(front.Bottom, back.Bottom) + SleeveGap };

        void Edge(LaidPiece piece, bool right, bool upper, SeamId seam)
        {
            var x = right ? piece.Right : piece.X;
            var at = piece.Height * (1 - ArmholeFrom(plan, piece.Piece));
            var line = upper ? new SeamLine(Named(seam), x, 0, x, at) : new SeamLine(Named(seam), x, at, x, piece.Height);
            var sewn = !upper || sleeve is { Piece.Pooled: true };
            var lines = sewn ? seams : openings;
            if (!lines.Contains(line, SameLine.Instance))
                lines.Add(line);
        }

        void Shoulders(LaidPiece piece, SeamId first, SeamId second)
        {
            var (from, to) = Neck(plan, piece);
            seams.Add(new SeamLine(Named(first), piece.X, 0, from, 0));
            seams.Add(new SeamLine(Named(second), to, 0, piece.Right, 0));
        }

        ImmutableArray<int> Named(params ReadOnlySpan<SeamId> ids)
        {
            var found = ImmutableArray.CreateBuilder<int>();
            foreach (var id in ids)
            {
                if (size.Seams.ToList().FindIndex(s => s.Id == id) is >= 0 and var at)
                    found.Add(at);
            }
            return found.ToImmutable();
        }
    }

    /// <summary>Share of a panel's height at which its armholes begin.</summary>
    private static double ArmholeFrom(Plan plan, PiecePlan piece) =>
        (piece.Opening(OpeningId.Armhole).First - 1.0) / (plan.Direction == Direction.Up ? piece.Rows : piece.Stitches);

    private static (double From, double To) Neck(Plan plan, LaidPiece laid)
    {
        var piece = laid.Piece;
        var cell = piece.Width.Centimetres / laid.Worn.Columns;
        var all = plan.Direction == Direction.Up ? piece.Stitches : piece.Rows;
        var neck = piece.Opening(OpeningId.Neck);
        var before = neck.First - 1.0;
        var after = all - neck.Last;
        return (laid.X + cell * (before - laid.Hidden), laid.Right - cell * (after - laid.Hidden));
    }

    private static LaidPiece Lay(Plan plan, PiecePlan piece, double x, bool sewn)
    {
        var worn = WornPiece.Of(plan, piece);
        var seams = plan.Project.Garment.Seams;
        var hidden = !sewn ? 0 : plan.Direction == Direction.Up ? seams.HiddenStitches : seams.HiddenRows;
        hidden = Math.Min(hidden, (worn.Columns - 1) / 2);
        var cell = piece.Width.Centimetres / worn.Columns;
        return new LaidPiece(worn, x, 0, cell * (worn.Columns - 2 * hidden), piece.Height.Centimetres, hidden);
    }

    private static SeamLine Upright(double x, double from, double to, int seam) => new([seam], x, from, x, to);

    /// <summary>Two edges that touch are one line.</summary>
    private sealed class SameLine : IEqualityComparer<SeamLine>
    {
        public static SameLine Instance { get; } = new();

        public bool Equals(SeamLine? a, SeamLine? b) => a is not null && b is not null
            && a.Seams.SequenceEqual(b.Seams) && Math.Abs(a.X1 - b.X1) < 0.01 && Math.Abs(a.X2 - b.X2) < 0.01
            && a.Y1 == b.Y1 && a.Y2 == b.Y2;

        public int GetHashCode(SeamLine line) => line.Seams.Length;
    }
}
