using Dyepath.Core.Fabrics;
using Dyepath.Core.Garments;
using Dyepath.Core.Planning;
using Dyepath.Core.Yarns;

namespace Dyepath.Core.Checking;

/// <summary>Side and shoulder seams of a boxy top, stitch against stitch on the worked fabric.</summary>
internal static class SeamCheck
{
    private const double Hair = 1e-4;

    public static void Seams(Plan plan, SizePlan size, Disagreements notes)
    {
        var perUnit = plan.Project.Fabric.Stitch.StitchesPerUnit;
        var front = size.Find(PieceId.Front);
        // In linen stitch a seam may hide half a unit, which no cell of the fabric shows.
        if (front is null || perUnit != 1 || ColourPeriod.Of(plan.Sequence.Ring) is not { } period)
            return;
        var back = size[PieceId.Back];
        var seams = plan.Project.Garment.Seams;
        var walk = new Walk(Path(front), Path(back), front, back, seams, ColourRing.ToUnits(period.Micro));
        foreach (var seam in size.Seams.Where(s => s.Id is SeamId.LeftSide or SeamId.RightSide or SeamId.LeftShoulder or SeamId.RightShoulder))
        {
            var left = seam.Id is SeamId.LeftSide or SeamId.LeftShoulder;
            var side = seam.Id is SeamId.LeftSide or SeamId.RightSide;
            if (side && front.SideBandRows > 0)
                continue;
            var jump = plan.Direction == Direction.Up
                ? side ? walk.SideUp(left) : walk.ShoulderUp(left)
                : side ? walk.SideSideways(left) : walk.ShoulderSideways(left);
            notes.Same($"seams.{seam.Where}", seam.PhaseJump, jump, Hair);
        }
    }

    private static FabricPath Path(PiecePlan piece)
    {
        var options = new PathOptions { TurnCost = piece.TurnCost, Start = piece.Start };
        // One row more than there is: what would follow the last.
        return piece.RowStitches.Length == 2
            ? FabricPath.Alternating(piece.Working, piece.Stitches, piece.Rows + 1, options)
            : FabricPath.Constant(piece.Working, piece.Stitches, piece.Rows + 1, options);
    }

    private sealed record Walk(
        FabricPath Front, FabricPath Back, PiecePlan FrontPiece, PiecePlan BackPiece, SeamChoice Seams, double Period)
    {
        private int Rows => FrontPiece.Rows;

        private bool Mirrored => Seams.Extension == SeamExtension.Mirrored;

        /// <summary>The back's right-hand edge lies at the wearer's right, unless it is turned over.</summary>
        public double SideUp(bool left)
        {
            var armhole = FrontPiece.Opening(OpeningId.Armhole).Length;
            return Mean(Enumerable.Range(0, Rows - armhole).Select(row =>
            {
                var backRight = left == BackPiece.WrongSideOut;
                return Jump(
                    At(Front, row, left, Seams.HiddenStitches) + (Mirrored ? 0 : Step(Front, row, left)),
                    At(Back, row, backRight, Seams.HiddenStitches));
            }));
        }

        public double ShoulderUp(bool left)
        {
            var row = Rows - 1 - Seams.HiddenRows;
            var (frontWide, backWide) = (Shoulder(FrontPiece, Front, row), Shoulder(BackPiece, Back, row));
            var pairs = Math.Max(frontWide, backWide);
            return Mean(Enumerable.Range(0, pairs).Select(i =>
            {
                var f = Seams.HiddenStitches + i * frontWide / pairs;
                var b = Seams.HiddenStitches + i * backWide / pairs;
                // Column of the front's stitch, from the right.
                var column = left ? f : Front.Cells(row) - 1 - f;
                var expected = Mirrored ? Cell(Front, row, column) : Cell(Front, row + 1, column);
                return Jump(expected, At(Back, row, left == BackPiece.WrongSideOut, b));
            }));
        }

        /// <summary>Sideways, rows grow across the body: the front's last row meets the back's first at the wearer's left.</summary>
        public double SideSideways(bool left)
        {
            var (first, last) = (Seams.HiddenRows, Rows - 1 - Seams.HiddenRows);
            var stitches = FrontPiece.Opening(OpeningId.Armhole).First - 1;
            return Mean(Enumerable.Range(0, stitches).Select(column =>
            {
                var (row, beyond) = left ? (last, last + 1) : (first, first - 1);
                var meets = left != BackPiece.WrongSideOut ? first : last;
                return Jump(Cell(Front, Mirrored ? row : beyond, column), Cell(Back, meets, column));
            }));
        }

        public double ShoulderSideways(bool left)
        {
            var wide = FrontPiece.Opening(OpeningId.Neck).First - 1 - Seams.HiddenRows;
            return Mean(Enumerable.Range(0, wide).Select(i =>
            {
                // Going from the neck to the arm at the wearer's left, from the arm to the neck at the right.
                var row = left ? Rows - Seams.HiddenRows - wide + i : Seams.HiddenRows + i;
                var meets = BackPiece.WrongSideOut ? row : Rows - 1 - row;
                var expected = At(Front, row, false, Seams.HiddenStitches) + (Mirrored ? 0 : Step(Front, row, false));
                return Jump(expected, At(Back, meets, false, Seams.HiddenStitches));
            }));
        }

        private int Shoulder(PiecePlan piece, FabricPath path, int row) =>
            (path.Cells(row) - piece.Opening(OpeningId.Neck).Length) / 2 - Seams.HiddenStitches;

        /// <summary>Yarn place of the stitch so many from an edge.</summary>
        private static double At(FabricPath path, int row, bool right, int inwards) =>
            Cell(path, row, right ? inwards : path.Cells(row) - 1 - inwards);

        /// <summary>One stitch outwards, along the yarn or against it.</summary>
        private static int Step(FabricPath path, int row, bool right) => path.RunsBackwards(row) == right ? 1 : -1;

        private static double Cell(FabricPath path, int row, int column)
        {
            if (row >= 0)
                return ColourRing.ToUnits(path.SpanOf(row, path.RunsBackwards(row) ? path.Cells(row) - 1 - column : column).From);
            // The row before the first would have run back to where that begins.
            return ColourRing.ToUnits(path.RowStart(0) - path.Turns[0]) - 1 - column;
        }

        private double Jump(double expected, double found) => Math.Abs(Math.IEEERemainder(found - expected, Period));

        private static double Mean(IEnumerable<double> jumps) => jumps.DefaultIfEmpty(0).Average();
    }
}
