using CsCheck;
using Dyepath.Core.Garments;
using Dyepath.Core.Planning;
using Dyepath.Core.Projects;

namespace Dyepath.Core.Tests.Garments;

/// <summary>Pieces as worn, held against the fabric stitch by stitch (docs/seams.md has the drawing).</summary>
public sealed class WornPieceTests
{
    private static readonly Plan Sideways = TestProjects.Tideline.Planned();
    private static readonly Plan Up = TestProjects.Tideline.Directed(Direction.Up).Planned();

    [Fact]
    public void Worked_up_the_first_row_is_the_hem_and_column_0_lies_at_the_right()
    {
        Assert.Equal(Direction.Up, Up.Direction);
        var piece = Up.Sizes[2].Pieces[0];
        var worn = WornPiece.Of(Up, piece);
        var fabric = PieceFabric.Of(Up, piece);
        Assert.Equal((piece.Stitches, piece.Rows), (worn.Columns, worn.Rows));
        Gen.Select(Gen.Int[0, piece.Rows - 1], Gen.Int[0, piece.Stitches - 1]).Holds(
            (row, column) => worn.Cells[(worn.Rows - 1 - row) * worn.Columns + worn.Columns - 1 - column] == fabric[row, column], seed: 11, cases: 400);
    }

    [Fact]
    public void Worked_sideways_the_first_row_is_the_left_side_and_column_0_lies_at_the_hem()
    {
        Assert.Equal(Direction.Sideways, Sideways.Direction);
        var piece = Sideways.Sizes[2].Pieces[0];
        var worn = WornPiece.Of(Sideways, piece);
        var fabric = PieceFabric.Of(Sideways, piece);
        Assert.Equal((piece.Rows, piece.Stitches), (worn.Columns, worn.Rows));
        Gen.Select(Gen.Int[0, piece.Rows - 1], Gen.Int[0, piece.Stitches - 1]).Holds(
            (row, column) => worn.Cells[(worn.Rows - 1 - column) * worn.Columns + row] == fabric[row, column], seed: 12, cases: 400);
    }

    [Fact]
    public void Wrong_side_out_it_is_seen_in_a_mirror()
    {
        var piece = Sideways.Sizes[2].Pieces[0];
        var right = WornPiece.Of(Sideways, piece with { WrongSideOut = false });
        var wrong = WornPiece.Of(Sideways, piece with { WrongSideOut = true });
        for (var y = 0; y < right.Rows; y++)
        {
            var line = wrong.Cells.Slice(y * wrong.Columns, wrong.Columns).ToArray();
            Array.Reverse(line);
            Assert.True(right.Cells.Slice(y * right.Columns, right.Columns).SequenceEqual(line));
        }
    }

    [Fact]
    public void Every_place_names_the_stitch_that_is_drawn_there()
    {
        foreach (var plan in (Plan[])[Up, Sideways])
        {
            var worn = WornPiece.Of(plan, plan.Sizes[0].Pieces[0]);
            var fabric = worn.Fabrics[0].Fabric;
            Gen.Select(Gen.Int[0, worn.Columns - 1], Gen.Int[0, worn.Rows - 1]).Holds(
                (x, y) =>
                {
                    var (row, stitch) = worn.At(x, y);
                    return fabric[row, stitch] == worn.Cells[y * worn.Columns + x];
                },
                seed: 13, cases: 400);
        }
    }

    [Fact]
    public void A_plain_piece_has_no_colours_of_the_sequence()
    {
        var sleeve = Sideways.Sizes[0].Pieces.Single(p => !p.Pooled);
        Assert.All(WornPiece.Of(Sideways, sleeve).Cells.ToArray(), cell => Assert.Equal(WornPiece.Plain, cell));
    }

    [Fact]
    public void The_project_is_pictured_by_the_lower_left_corner_of_its_base_size()
    {
        var picture = ProjectPicture.Of(Sideways, 12, 9)!;
        var worn = WornPiece.Of(Sideways, Sideways.Sizes.Single(s => s.Name == "M").Pieces[0]);
        Assert.Equal((12, 9, 5), (picture.Columns, picture.Rows, picture.Colours.Length));
        for (var y = 0; y < 9; y++)
            Assert.True(worn.Cells.Slice((worn.Rows - 9 + y) * worn.Columns, 12).SequenceEqual(picture.Cells.AsSpan(y * 12, 12)));
    }

    /// <summary>Colours are given for each unit of a pooled piece; a plain one has none.</summary>
    [Fact]
    public void Other_colours_than_there_are_stitches_are_refused()
    {
        var plan = TestProjects.Tideline.Planned();
        var (front, sleeve) = (plan.Sizes[0].Pieces[0], plan.Sizes[0].Pieces[2]);
        var units = front.Stitches * front.Rows;
        Assert.NotNull(WornPiece.Of(plan, front, new byte[units]));
        Assert.Throws<ArgumentException>(() => WornPiece.Of(plan, front, new byte[units - 1]));
        Assert.Throws<ArgumentException>(() => WornPiece.Of(plan, sleeve, new byte[sleeve.Stitches * sleeve.Rows]));
    }
}
