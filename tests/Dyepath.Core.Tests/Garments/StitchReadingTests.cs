using Dyepath.Core.Fabrics;
using Dyepath.Core.Garments;
using Dyepath.Core.Planning;
using Dyepath.Core.Projects;
using Dyepath.Core.Quantities;
using Dyepath.Core.Swatches;
using static Dyepath.Core.Tests.Garments.TestProjects;

namespace Dyepath.Core.Tests.Garments;

public sealed class StitchReadingTests
{
    /// <summary>The demo's ring of 5, 4, 3, 5, 4 stitches, written out.</summary>
    private const string Ring = "000001111222333334444";

    [Theory]
    [InlineData(Direction.Up)]
    [InlineData(Direction.Sideways)]
    public void Law_every_stitch_is_the_one_that_counting_along_the_yarn_finds(Direction direction)
    {
        var plan = Tideline.Directed(direction).Planned();
        var worn = WornPiece.Of(plan, plan.Sizes[3].Pieces[1]);
        var piece = worn.Piece;
        var seen = new HashSet<int>();
        for (var y = 0; y < worn.Rows; y++)
        {
            for (var x = 0; x < worn.Columns; x++)
            {
                var stitch = StitchReading.At(plan, worn, x, y)!;
                var before = (stitch.Row - 1) * piece.Stitches + stitch.Order - 1;
                var place = (int)(piece.Start + before) % Ring.Length;
                Assert.True(seen.Add(before));
                Assert.Equal(worn.Cells[y * worn.Columns + x], stitch.Section);
                Assert.Equal(Ring[place] - '0', stitch.Section);
                Assert.Equal(stitch.Row % 2 == 1, stitch.RightSide);
                Assert.Equal(stitch.RightSide ? stitch.Column : piece.Stitches + 1 - stitch.Column, stitch.Order);
                Assert.Equal((plan.Sequence.YarnPerUnit * before).Centimetres, stitch.FromStart.Centimetres, 1e-6);
                var whole = 0;
                while (Ring[(place + whole) % 21] == Ring[(place + whole + 1) % 21]
                    && Ring[(place + 42 - whole) % 21] == Ring[(place + 41 - whole) % 21])
                {
                    whole++;
                }
                Assert.Equal(whole, stitch.ToChange);
                Assert.False(stitch.TwoToned);
            }
        }
        Assert.Equal(piece.Stitches * piece.Rows, seen.Count);
    }

    [Fact]
    public void Free_work_and_linen_are_read_as_their_fabric_shows_them()
    {
        var free = Tideline with { Fabric = Tideline.Fabric with { Keeping = ColourKeeping.Free, TurnCost = 0.45 } };
        var linen = Tideline with
        {
            Fabric = Tideline.Fabric with { Stitch = FabricStitch.Linen, SectionStitches = null, Keeping = ColourKeeping.Free },
        };
        foreach (var project in new[] { free, linen })
        {
            if (!project.Tried().HasPlan)
                continue;
            var plan = project.Planned();
            var worn = WornPiece.Of(plan, plan.Sizes[0].Pieces[0]);
            var read = Enumerable.Range(0, worn.Columns * worn.Rows)
                .Select(i => (Cell: worn.Cells[i], Stitch: StitchReading.At(plan, worn, i % worn.Columns, i / worn.Columns))).ToArray();
            Assert.All(read, r => Assert.Equal(r.Cell == WornPiece.Empty ? null : r.Cell, (byte?)r.Stitch?.Section));
            var unit = project.Fabric.Stitch.StitchesPerUnit;
            Assert.Equal(unit * worn.Fabrics[0].Fabric.TwoToned, read.Count(r => r.Stitch is { TwoToned: true }));
            Assert.All(read.Where(r => r.Stitch is { TwoToned: true }), r => Assert.Equal(0, r.Stitch!.ToChange));
        }
        Assert.True(free.Tried().HasPlan);
    }

    [Fact]
    public void The_ball_changes_where_it_ends()
    {
        var yarn = Tideline.Planned().Sizes[8].Yarn;
        foreach (var join in yarn.Joins.Where(j => j.Stitch > 1))
        {
            Assert.Equal(join.Ball, yarn.BallAt(join.Run, join.Row, join.Stitch - 1));
            Assert.Equal(join.Ball + 1, yarn.BallAt(join.Run, join.Row, join.Stitch));
        }
        Assert.NotEmpty(yarn.Joins);
        Assert.Null(yarn.BallAt(new PieceRun(PieceId.Sleeve), 1, 1));
    }

    /// <summary>Sleeves are made twice, sides of a shaped piece are joined on anew, and a unit of linen stitch is two stitches.</summary>
    [Theory]
    [InlineData("sleeved")]
    [InlineData("shaped")]
    [InlineData("linen")]
    public void The_ball_of_a_stitch_that_is_read_is_that_of_its_copy_and_side(string kind)
    {
        var plan = (kind switch
        {
            "sleeved" => Tideline.Sleeved(pooled: true),
            "shaped" => InSmallBalls(VestTests.VestOf("sc", true, Direction.Up)),
            _ => Tideline with
            {
                Fabric = Tideline.Fabric with { Stitch = FabricStitch.Linen, SectionStitches = null, Keeping = ColourKeeping.Free },
            },
        }).Planned();
        var told = 0;
        foreach (var (size, piece) in plan.Sizes.SelectMany(s => s.Pieces, (s, p) => (s, p)))
        {
            var joins = size.Yarn.Joins.Where(j => j.Run.Piece == piece.Id && j.Row > 0
                && (kind == "linen" || j.Run.Copy is not null || j.Run.Side is not null)).ToArray();
            if (joins.Length == 0)
                continue;
            var worn = WornPiece.Of(plan, piece);
            var read = Enumerable.Range(0, worn.Columns * worn.Rows)
                .Select(i => StitchReading.At(plan, worn, i % worn.Columns, i / worn.Columns)).OfType<StitchReading>().ToLookup(s => s.Row);
            foreach (var join in joins)
            {
                var stretch = PieceFabric.Stretches(plan, piece).Single(s => s.In(piece.Id, join.Run.Copy) == join.Run);
                // Of one row, sides are worked apart: those of another side know nothing of this join.
                var row = read[join.Row].DistinctBy(s => (s.Side, s.Order)).Where(s => s.Side == join.Run.Side).OrderBy(s => s.Order).ToArray();
                Assert.Equal(stretch.Path.Cells(join.Row - 1 - stretch.FirstRow), row.Length);
                var unit = (join.Stitch - 1) / plan.Project.Fabric.Stitch.StitchesPerUnit;
                foreach (var stitch in row.Where(s => Math.Abs(s.Order - 1 - unit) < 4 && s.Order - 1 != unit))
                {
                    told++;
                    Assert.Equal(join.Ball + (stitch.Order - 1 > unit ? 1 : 0), size.Yarn.BallsAt(piece, stitch)[(join.Run.Copy ?? 1) - 1]);
                }
            }
        }
        Assert.InRange(told, 20, int.MaxValue);

        static Project InSmallBalls(Project project) =>
            project with { Yarn = project.Yarn with { Ball = project.Yarn.Ball with { Length = Quantities.Length.FromMetres(8) } } };
    }

    [Fact]
    public void A_plain_piece_has_no_colours_to_read()
    {
        var plan = Tideline.Sleeved(pooled: false).Planned();
        var sleeve = plan.Sizes[0].Pieces[2];
        Assert.Null(StitchReading.At(plan, WornPiece.Of(plan, sleeve), 0, 0));
        Assert.Throws<ArgumentException>(() => PieceMotif.Read(plan, sleeve));
    }

    [Fact]
    public void A_piece_draws_the_motif_that_it_was_chosen_for()
    {
        var plan = Tideline.Planned();
        foreach (var piece in plan.Sizes.SelectMany(s => s.Pieces).Where(p => p.Pooled))
        {
            var motif = PieceMotif.Read(plan, piece);
            Assert.Equal((piece.Motif, piece.Lean), (motif.Kind, motif.Lean!.Value.UnitsPerRow));
            Assert.True(motif.DiamondWidth > Length.Zero);
        }
    }
}
