using Dyepath.Core.Fabrics;
using Dyepath.Core.Garments;
using Dyepath.Core.Planning;
using Dyepath.Core.Projects;
using Dyepath.Core.Swatches;
using static Dyepath.Core.Tests.Garments.TestProjects;

namespace Dyepath.Core.Tests.Garments;

/// <summary>How stitches lie before the eye, as a maker knows them from the work in her hands.</summary>
public sealed class WornStitchesTests
{
    private static readonly Plan Up = Tideline.Directed(Direction.Up).Planned();
    private static readonly Plan Sideways = Tideline.Directed(Direction.Sideways).Planned();

    /// <summary>Turned rows show their front and their back in turn; the first, at the hem, its front (common practice, no source).</summary>
    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void Turned_rows_show_front_and_back_in_turn_and_turned_over_the_other_way_round(bool over)
    {
        foreach (var plan in (Plan[])[Up, Sideways])
        {
            var piece = plan.Sizes[1].Pieces[0] with { WrongSideOut = over };
            var worn = WornPiece.Of(plan, piece);
            var stitches = WornStitches.Of(worn);
            for (var y = 0; y < worn.Rows; y++)
            {
                for (var x = 0; x < worn.Columns; x++)
                {
                    var row = plan == Up ? worn.Rows - 1 - y : over ? worn.Columns - 1 - x : x;
                    Assert.Equal((row % 2 == 1) != over ? StitchForm.Back : StitchForm.Front, (StitchForm)stitches.Forms[y * worn.Columns + x]);
                }
            }
        }
    }

    /// <summary>In rounds the maker never turns: every stitch shows its front, or worn the other way out its back.</summary>
    [Theory]
    [InlineData(Working.Rounds, false)]
    [InlineData(Working.Spiral, false)]
    [InlineData(Working.Rounds, true)]
    public void Rounds_show_one_side(Working working, bool over)
    {
        var piece = Up.Sizes[1].Pieces[0] with { Working = working, TurnCost = 0, WrongSideOut = over };
        foreach (var form in WornStitches.Of(WornPiece.Of(Up, piece)).Forms)
            Assert.Equal(over ? StitchForm.Back : StitchForm.Front, (StitchForm)form);
    }

    /// <summary>A plain piece is worked in the same turned rows, and its one yarn changes nowhere.</summary>
    [Fact]
    public void A_plain_piece_has_rows_too()
    {
        var plain = Up.Sizes[0].Pieces.First(p => !p.Pooled);
        var worn = WornPiece.Of(Up, plain);
        var stitches = WornStitches.Of(worn);
        Assert.Equal(Working.Turned, plain.Working);
        for (var y = 0; y < worn.Rows; y++)
            Assert.Equal((worn.Rows - 1 - y) % 2, stitches.Forms[y * worn.Columns]);
        Assert.All(stitches.Changes.ToArray(), c => Assert.Equal(0, c));
    }

    /// <summary>
    /// The second route walks along the yarn from the piece's first stitch in steps of a thousandth of a stitch and looks at its colour.
    /// </summary>
    [Theory]
    [InlineData(Direction.Up)]
    [InlineData(Direction.Sideways)]
    public void Law_within_a_stitch_the_yarn_changes_where_walking_along_it_finds_the_change(Direction direction)
    {
        var plan = (Tideline with { Fabric = Tideline.Fabric with { Keeping = ColourKeeping.Free, TurnCost = 0.45 } }).Directed(direction).Planned();
        var worn = WornPiece.Of(plan, plan.Sizes[0].Pieces[0]);
        var (stitches, ring) = (WornStitches.Of(worn), plan.Sequence.Ring);
        var ends = ring.Sections.Select((_, i) => ring.Sections.Take(i + 1).Sum() / 1e6).ToArray();
        int Shown(double units)
        {
            var place = units - Math.Floor(units / ends[^1]) * ends[^1];
            return ring.Colours[Array.FindIndex(ends, e => place < e)];
        }
        var (changed, first) = (0, 0);
        for (var at = 0; at < worn.Cells.Length; at += 7)
        {
            var read = StitchReading.At(plan, worn, at % worn.Columns, at / worn.Columns)!;
            var from = worn.Piece.Start + read.FromStart.Centimetres / plan.Sequence.YarnPerUnit.Centimetres;
            var walked = Enumerable.Range(0, 999).Select(step => Shown(from + (step + 1) / 1000.0)).ToArray();
            var change = stitches.Changes[at];
            if (change == 0)
            {
                Assert.Single(walked.Distinct());
                continue;
            }
            var (other, shown) = (ring.Colours[stitches.Others[at]], ring.Colours[worn.Cells[at]]);
            var otherFirst = ((StitchForm)stitches.Forms[at]).HasFlag(StitchForm.OtherFirst);
            Assert.NotEqual(shown, other);
            changed++;
            first += otherFirst ? 1 : 0;
            var until = walked.TakeWhile(c => c == (otherFirst ? other : shown)).Count();
            Assert.Equal(until / 999.0, change / (double)WornStitches.WholeStitch, 0.005);
            Assert.All(walked.Skip(until), c => Assert.Equal(otherFirst ? shown : other, c));
        }
        Assert.InRange(first, 1, changed - 1);
    }

    /// <summary>Kept by feel, every section is whole stitches, so no stitch has two colours.</summary>
    [Fact]
    public void Sections_of_whole_stitches_never_change_within_one()
    {
        Assert.True(Up.Sequence.Ring.IsWhole);
        var stitches = WornStitches.Of(WornPiece.Of(Up, Up.Sizes[0].Pieces[0]));
        Assert.All(stitches.Changes.ToArray(), c => Assert.Equal(0, c));
    }

    /// <summary>
    /// Single crochet and chain alternate along every row, and single crochets stand above chains: each is worked into the space below.
    /// Along the way a row is worked, the stitch that comes first has the first half of the pair's yarn.
    /// </summary>
    [Fact]
    public void In_linen_stitch_single_crochets_stand_above_chains()
    {
        var linen = Tideline with
        {
            Fabric = Tideline.Fabric with { Stitch = FabricStitch.Linen, SectionStitches = null, Keeping = ColourKeeping.Free },
        };
        var plan = linen.Directed(Direction.Up).Planned();
        foreach (var piece in plan.Sizes[0].Pieces.Where(p => p.Pooled))
        {
            var worn = WornPiece.Of(plan, piece);
            var stitches = WornStitches.Of(worn);
            bool? Chain(int x, int y) => worn.Cells[y * worn.Columns + x] == WornPiece.Empty ? null
                : ((StitchForm)stitches.Forms[y * worn.Columns + x]).HasFlag(StitchForm.Chain);
            var halves = 0;
            for (var y = 0; y < worn.Rows; y++)
            {
                for (var x = 1; x < worn.Columns; x++)
                {
                    if ((Chain(x, y), Chain(x - 1, y)) is (bool here, bool beside))
                        Assert.NotEqual(here, beside);
                    if (y > 0 && (Chain(x, y), Chain(x, y - 1)) is (bool below, bool above))
                        Assert.NotEqual(below, above);
                    halves += stitches.Changes[y * worn.Columns + x] is > 0 and < WornStitches.WholeStitch ? 1 : 0;
                }
            }
            Assert.True(halves > 0);
        }
    }

    /// <summary>Where the turning chain counts, it stands at the row's beginning alone: at the right, and after the turn at the left.</summary>
    [Fact]
    public void A_turning_chain_that_counts_stands_where_its_row_begins()
    {
        var tall = Tideline with { Fabric = Tideline.Fabric with { Stitch = FabricStitch.DoubleCrochet, SectionStitches = null, Keeping = ColourKeeping.Free } };
        var plan = tall.Directed(Direction.Up).Planned();
        var worn = WornPiece.Of(plan, plan.Sizes[0].Pieces[0]);
        var stitches = WornStitches.Of(worn);
        Assert.True(worn.Fabrics[0].Fabric.Path.TurningChainCounts);
        for (var row = 0; row < worn.Fabrics[0].Fabric.Rows; row++)
        {
            var line = stitches.Forms.Slice((worn.Rows - 1 - row) * worn.Columns, worn.Columns).ToArray()
                .Zip(worn.Cells.Slice((worn.Rows - 1 - row) * worn.Columns, worn.Columns).ToArray())
                .Where(s => s.Second != WornPiece.Empty).Select(s => ((StitchForm)s.First).HasFlag(StitchForm.TurningChain)).ToArray();
            Assert.Equal(1, line.Count(turn => turn));
            Assert.True(row % 2 == 0 ? line[^1] : line[0]);
        }
    }
}
