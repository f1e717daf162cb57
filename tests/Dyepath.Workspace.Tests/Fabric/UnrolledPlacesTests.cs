using Dyepath.Core.Constructions;
using Dyepath.Core.Garments;
using Dyepath.Core.Planning;
using Dyepath.Core.Projects;
using Dyepath.Workspace.Fabric;

namespace Dyepath.Workspace.Tests.Fabric;

/// <summary>Where pieces, seams and openings of every garment lie when it is laid out flat.</summary>
public sealed class UnrolledPlacesTests
{
    private static readonly Lazy<(string Kind, Plan Plan)[]> All = new(() =>
    [
        .. from kind in Repertoire.All
           from way in new[] { Direction.Up, Direction.Sideways }
           let project = StarterDocument.Of(kind)
           let plan = GarmentPlanner.Plan(project with { Garment = project.Garment with { Direction = way } }).Plan
           where plan is not null
           select ($"{kind.Name} {way}", plan),
    ]);

    private static IEnumerable<(string Kind, Unrolled Laid)> Laid() =>
        from at in All.Value from size in new[] { at.Plan.Sizes[0], at.Plan.Sizes[^1] }.Distinct() select (at.Kind, Unrolled.Of(at.Plan, size));

    [Fact]
    public void Groups_lie_below_each_other_twelve_centimetres_apart_and_in_the_middle()
    {
        Assert.True(All.Value.Length > 20, "most garments can be worked either way");
        foreach (var (kind, laid) in Laid())
        {
            double top = 0, wide = 0;
            foreach (var group in laid.Plan.Construction.Groups)
            {
                var pieces = group.Pieces.Select(p => laid.Pieces.Single(l => l.Piece.Id == p.Id)).ToArray();
                Assert.All(pieces, p => Assert.Equal(top, p.Y, 9));
                var across = pieces[^1].Right - pieces[0].X;
                Assert.Equal(Math.Max(0, (wide - across) / 2), pieces[0].X, 9);
                // Plain bands that are not drawn keep their room between the pieces.
                var band = pieces[0].Piece.SideBandRows == 0 ? 0
                    : Math.Max(0, laid.Size.Finished[group.Across.Measure].Centimetres / group.Across.Pieces - pieces[0].Width);
                Assert.All(pieces.Zip(pieces.Skip(1)), p => Assert.Equal(p.First.Right + band, p.Second.X, 1e-6));
                (wide, top) = (Math.Max(wide, pieces[^1].Right), top + pieces.Max(p => p.Height) + 12);
            }
            Assert.Equal((wide, top - 12), (laid.Width, laid.Height), (a, b) => Math.Abs(a.Item1 - b.Item1) + Math.Abs(a.Item2 - b.Item2) < 1e-6);
            Assert.Equal(laid.Size.Pieces.Select(p => p.Id).Order(), laid.Pieces.Select(p => p.Piece.Id).Order());
            Assert.NotEmpty(kind);
        }
    }

    /// <summary>A seam hides what the design says at the sides that are sewn, but never half of a piece.</summary>
    [Fact]
    public void A_piece_shows_all_but_what_its_seams_hide()
    {
        foreach (var (kind, laid) in Laid())
        {
            var seams = laid.Plan.Project.Garment.Seams;
            foreach (var piece in laid.Pieces)
            {
                var up = laid.Plan.Construction.GroupOf(piece.Piece.Id).WorkedIn(laid.Plan.Direction) == Direction.Up;
                var hides = Math.Min(up ? seams.HiddenStitches : seams.HiddenRows, (piece.Worn.Columns - 1) / 2);
                Assert.Equal(laid.Plan.Construction.IsSewn(piece.Piece.Id, PieceSide.Left) ? hides : 0, piece.HiddenLeft);
                Assert.Equal(laid.Plan.Construction.IsSewn(piece.Piece.Id, PieceSide.Right) ? hides : 0, piece.HiddenRight);
                Assert.Equal(piece.Piece.Width.Centimetres * piece.Columns / piece.Worn.Columns, piece.Width, 9);
                Assert.Equal(piece.Piece.Height.Centimetres, piece.Height, 9);
                Assert.True(piece.Columns == piece.Worn.Columns - piece.HiddenLeft - piece.HiddenRight, kind);
                Assert.Equal(piece.Columns * piece.Worn.Rows, piece.Cells().Count());
            }
        }
    }

    /// <summary>Every edge that is sewn with colours on both sides is a line along it; edges that touch share one and its numbers.</summary>
    [Fact]
    public void Seams_run_along_the_edges_that_they_join()
    {
        var shared = false;
        foreach (var (kind, laid) in Laid())
        {
            var wanted = (from seam in laid.Size.Seams.Index()
                          where seam.Item.Extension is not null
                          from run in seam.Item.First.Concat(seam.Item.Second)
                          select (seam.Index, Line: Ends(laid.Pieces.Single(p => p.Piece.Id == run.Piece), run))).ToArray();
            foreach (var (index, line) in wanted)
            {
                var drawn = Assert.Single(laid.Seams, s => Near(s, line));
                Assert.Equal(wanted.Where(w => Near(drawn, w.Line)).Select(w => w.Index).Distinct().Order(), drawn.Seams);
                Assert.Contains(index, drawn.Seams);
                shared |= drawn.Seams.Length > 1;
            }
            Assert.All(laid.Seams, s => Assert.Contains(wanted, w => Near(s, w.Line)));
            Assert.True(laid.Telling.SequenceEqual(wanted.Select(w => w.Index).Distinct().Order()), kind);
            Assert.All(laid.Seams.Concat(laid.Openings), s => Assert.Equal(s.X1 == s.X2, s.IsUpright));
        }
        Assert.True(shared, "two side seams of one cowl or sleeve lie on one line");
    }

    /// <summary>What is neither sewn nor cut out is open: beginning at the top, as long as the plan says.</summary>
    [Fact]
    public void Openings_run_along_the_edges_that_are_left_open()
    {
        var seen = 0;
        foreach (var (kind, laid) in Laid())
        {
            var wanted = new List<(double, double, double, double)>();
            foreach (var run in laid.Size.Seams.Where(s => s.Extension is null).SelectMany(s => s.First.Concat(s.Second)))
            {
                if (laid.Size[run.Piece] is { Pooled: true, SideBandRows: 0 } && run.Inside == 0)
                    wanted.Add(Ends(laid.Pieces.Single(p => p.Piece.Id == run.Piece), run));
            }
            foreach (var piece in laid.Pieces)
            {
                foreach (var opening in laid.Plan.Construction.GroupOf(piece.Piece.Id).OpeningsOf(piece.Piece.Id).Where(o => o.At != OpeningAt.Middle))
                {
                    var own = piece.Piece.Opening(opening.Id);
                    if (own.Into > 0)
                        continue;
                    wanted.AddRange(opening.Sides
                        .Where(side => !laid.Size.Seams.SelectMany(s => s.First.Concat(s.Second)).Any(r => r.Piece == piece.Piece.Id && r.Side == side && r.From >= own.First - 1))
                        .Select(side => Ends(piece, new EdgeRun(piece.Piece.Id, side, own.First - 1, own.Length, own.AlongStitches, false))));
                }
            }
            Assert.All(laid.Openings, o => Assert.Contains(wanted, w => Near(o, w)));
            Assert.All(wanted, w => Assert.Single(laid.Openings, o => Near(o, w)));
            Assert.All(laid.Openings, o => Assert.Empty(o.Seams));
            seen += laid.Openings.Length;
            Assert.NotEmpty(kind);
        }
        Assert.True(seen > 20, "garments have openings");
    }

    /// <summary>Upright sides are counted from the bottom, level ones from the left, hidden stitches left out.</summary>
    private static (double X1, double Y1, double X2, double Y2) Ends(LaidPiece piece, EdgeRun run)
    {
        if (run.Side is PieceSide.Left or PieceSide.Right)
        {
            double Up(int rows) => piece.Y + piece.Height - piece.Height * rows / piece.Worn.Rows;
            double In(int row)
            {
                var inset = piece.Width / piece.Columns * piece.Worn.Inset(piece.Worn.Rows - 1 - row);
                return run.Side == PieceSide.Left ? piece.X + inset : piece.X + piece.Width - inset;
            }
            return (In(run.From + run.Count - 1), Up(run.From + run.Count), In(run.From), Up(run.From));
        }
        double Along(int stitches) => piece.X + piece.Width * (stitches - piece.HiddenLeft) / piece.Columns;
        var y = run.Side == PieceSide.Top ? piece.Y : piece.Y + piece.Height;
        return (Along(run.From), y, Along(run.From + run.Count), y);
    }

    private static bool Near(SeamLine line, (double X1, double Y1, double X2, double Y2) at) =>
        Math.Max(Math.Max(Math.Abs(line.X1 - at.X1), Math.Abs(line.Y1 - at.Y1)), Math.Max(Math.Abs(line.X2 - at.X2), Math.Abs(line.Y2 - at.Y2))) < 0.01;
}
