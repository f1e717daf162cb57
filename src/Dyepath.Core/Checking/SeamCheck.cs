using Dyepath.Core.Fabrics;
using Dyepath.Core.Garments;
using Dyepath.Core.Planning;
using Dyepath.Core.Yarns;
using Edge = System.Collections.Generic.IReadOnlyList<(double Seen, double Beyond)>;

namespace Dyepath.Core.Checking;

/// <summary>Every seam of a size, unit against unit: what is seen beside it, and what would lie there if the fabric went on (docs/seams.md).</summary>
internal sealed class SeamCheck
{
    /// <summary>Half a thousandth of a stitch: places are rounded to millionths, jumps are means of many.</summary>
    private const double Hair = 5e-4;

    private readonly Plan _plan;
    private readonly SizePlan _size;
    private readonly int _perUnit;

    private SeamCheck(Plan plan, SizePlan size, PlainFabric fabric) => (_plan, _size, _perUnit) = (plan, size, fabric.PerUnit);

    private SeamChoice Choice => _plan.Project.Garment.Seams;

    private bool Up => _plan.Direction == Direction.Up;

    /// <summary>Units that a seam along row ends hides; of one across, whole units.</summary>
    private double Hidden => (double)Choice.HiddenStitches / _perUnit;

    private int HiddenWhole => Choice.HiddenStitches / _perUnit;

    public static void Seams(Plan plan, SizePlan size, PlainFabric fabric, Disagreements notes)
    {
        if (fabric.Period is not { } period)
            return;
        var check = new SeamCheck(plan, size, fabric);
        foreach (var seam in size.Seams)
        {
            var (one, other, extension) = check.Edges(seam.Id);
            var pairs = one.Count == 0 || other.Count == 0 ? 0 : Math.Max(one.Count, other.Count);
            var jumps = Enumerable.Range(0, pairs).Select(i =>
            {
                var meets = one[i * one.Count / pairs];
                var expected = extension == SeamExtension.Mirrored ? meets.Seen : meets.Beyond;
                return Math.Abs(Math.IEEERemainder(other[i * other.Count / pairs].Seen - expected, period));
            });
            notes.Same($"seams.{seam.Where}", seam.PhaseJump, jumps.DefaultIfEmpty(0).Average(), Hair);
        }
    }

    private (Edge One, Edge Other, SeamExtension Extension) Edges(SeamId id) => id switch
    {
        SeamId.LeftSide => Side(left: true),
        SeamId.RightSide => Side(left: false),
        SeamId.LeftShoulder => Shoulder(left: true),
        SeamId.RightShoulder => Shoulder(left: false),
        SeamId.LeftArmhole => Armhole(left: true),
        SeamId.RightArmhole => Armhole(left: false),
        SeamId.LeftSleeve or SeamId.RightSleeve => Pooled(PieceId.Sleeve) ? Tube(Rows(PieceId.Sleeve), sewn: true) : Nothing,
        SeamId.BackSeam => Tube(new PlainRows(_size.Pieces[0], _perUnit), sewn: true),
        SeamId.RoundJoin => Tube(new PlainRows(_size.Pieces[0], _perUnit), sewn: false),
        _ => throw new ArgumentOutOfRangeException(nameof(id), id, "No such seam."),
    };

    private static (Edge, Edge, SeamExtension) Nothing => ([], [], SeamExtension.Continued);

    private bool Pooled(PieceId id) => _size[id].Pooled;

    private PlainRows Rows(PieceId id) => new(_size[id], _perUnit);

    private (PlainRows Front, PlainRows Back, bool Turned) Panels => (Rows(PieceId.Front), Rows(PieceId.Back), _size[PieceId.Back].WrongSideOut);

    private int Opening(OpeningId id) => _size[PieceId.Front].Opening(id).Length;

    /// <summary>Worked up, the back's right-hand edge lies at the wearer's right; worked sideways, its first row at the left: unless it is turned over.</summary>
    private (Edge, Edge, SeamExtension) Side(bool left)
    {
        // Between two plain bands no colours adjoin.
        if (_size[PieceId.Front].SideBandRows > 0)
            return Nothing;
        var (front, back, turned) = Panels;
        if (Up)
        {
            var rows = front.Rows - Opening(OpeningId.Armhole);
            return (Ends(front, left, 0, rows), Ends(back, left == turned, 0, rows), Choice.Extension);
        }
        var units = (int)(front.Width(0) - (double)Opening(OpeningId.Armhole) / _perUnit);
        return (Across(front, left, 0, units), Across(back, left == turned, 0, units), Choice.Extension);
    }

    private (Edge, Edge, SeamExtension) Shoulder(bool left)
    {
        var (front, back, turned) = Panels;
        var neck = Opening(OpeningId.Neck);
        if (Up)
            return (Part(front, left), Part(back, left == turned), Choice.Extension);
        var rows = (front.Rows - neck) / 2 - Choice.HiddenRows;
        var (first, last) = (Choice.HiddenRows, front.Rows - Choice.HiddenRows - rows);
        var meets = Ends(back, right: false, left == turned ? last : first, rows);
        return (Ends(front, right: false, left ? last : first, rows), turned ? meets : [.. meets.Reverse()], Choice.Extension);

        // From the outer edge inwards.
        Edge Part(PlainRows panel, bool right)
        {
            var units = (int)panel.Width(panel.Rows - 1 - Choice.HiddenRows);
            var top = Across(panel, true, 0, units);
            var outwards = right ? top : [.. top.Reverse()];
            return [.. outwards.Skip(HiddenWhole).Take(Math.Max(0, (units - neck / _perUnit) / 2 - HiddenWhole))];
        }
    }

    /// <summary>From the underarm where the sleeve begins, up the one panel to the shoulder and down the other.</summary>
    private (Edge, Edge, SeamExtension) Armhole(bool left)
    {
        if (!Pooled(PieceId.Sleeve))
            return Nothing;
        var ((front, back, turned), sleeve, depth) = (Panels, Rows(PieceId.Sleeve), Opening(OpeningId.Armhole));
        Edge ofFront, ofBack, cap;
        if (Up)
        {
            var rows = depth - Choice.HiddenRows;
            ofFront = Ends(front, left, front.Rows - depth, rows);
            ofBack = Ends(back, left == turned, back.Rows - depth, rows);
            cap = Across(sleeve, true, HiddenWhole, _size[PieceId.Sleeve].Stitches / _perUnit - 2 * HiddenWhole);
        }
        else
        {
            var units = depth / _perUnit - HiddenWhole;
            var first = (int)front.Width(front.Rows - 1 - Choice.HiddenRows) - depth / _perUnit;
            ofFront = Across(front, left, first, units);
            ofBack = Across(back, left == turned, first, units);
            cap = [.. Ends(sleeve, right: false, Choice.HiddenRows, sleeve.Rows - 2 * Choice.HiddenRows).Reverse()];
        }
        return ([.. left ? ofBack : ofFront, .. (left ? ofFront : ofBack).Reverse()], cap, Choice.Extension);
    }

    /// <summary>A piece whose own edges meet: sewn, or the round's end at its beginning, in a spiral at the next round's.</summary>
    private (Edge, Edge, SeamExtension) Tube(PlainRows piece, bool sewn)
    {
        if (!sewn && _plan.Project.Garment.Working == Working.Spiral)
            return (Ends(piece, false, 0, piece.Rows - 1, 0), Ends(piece, true, 1, piece.Rows - 1, 0), SeamExtension.Continued);
        if (!sewn)
            return (Ends(piece, false, 0, piece.Rows, 0), Ends(piece, true, 0, piece.Rows, 0), SeamExtension.Continued);
        if (Up)
            return (Ends(piece, true, 0, piece.Rows), Ends(piece, false, 0, piece.Rows), Choice.Extension);
        var units = (int)piece.Width(0);
        return (Across(piece, true, 0, units), Across(piece, false, 0, units), Choice.Extension);
    }

    private Edge Ends(PlainRows piece, bool right, int from, int rows) => Ends(piece, right, from, rows, Hidden);

    private static Edge Ends(PlainRows piece, bool right, int from, int rows, double hidden) =>
        [.. Enumerable.Range(from, Math.Max(0, rows)).Select(row => (piece.At(row, right, hidden), piece.At(row, right, hidden - 1)))];

    /// <summary>Units of the last row that is seen, or of the first, rightmost first; beyond lies the row after it, or before.</summary>
    private Edge Across(PlainRows piece, bool last, int first, int units)
    {
        var (row, beyond) = last
            ? (piece.Rows - 1 - Choice.HiddenRows, piece.Rows - Choice.HiddenRows)
            : (Choice.HiddenRows, Choice.HiddenRows - 1);
        return [.. Enumerable.Range(first, Math.Max(0, units)).Select(unit => (piece.At(row, true, unit), piece.At(beyond, true, unit)))];
    }
}
