using Dyepath.Core.Constructions;
using Dyepath.Core.Edgings;
using Dyepath.Core.Garments;
using Dyepath.Core.Tests.Garments;
using Dyepath.Core.Yarns;
using static Dyepath.Core.Tests.Constructions.GarmentTrials;
using static Dyepath.Core.Tests.Garments.TestProjects;

namespace Dyepath.Core.Tests.Constructions;

public sealed class BagTests
{
    [Theory]
    [InlineData(Direction.Up, "sc", 6)]
    [InlineData(Direction.Sideways, "sc", 6)]
    [InlineData(Direction.Up, "hdc", 6)]
    [InlineData(Direction.Sideways, "hdc", 0)]
    [InlineData(Direction.Up, "sc", 0)]
    public void Edged_it_is_checked_by_other_routes(Direction direction, string stitch, double gusset) =>
        Check(Edged(Gusseted(gusset, stitch), direction, EdgingPlace.TopEdge));

    /// <summary>The gusset goes down one side, along the bottom and up the other; two rows or stitches either way are what rounding does.</summary>
    [Theory]
    [InlineData(Direction.Up)]
    [InlineData(Direction.Sideways)]
    public void A_gusset_is_as_long_as_three_sides(Direction direction)
    {
        var plan = Edged(Gusseted(6), direction, EdgingPlace.TopEdge).Planned();
        var size = Assert.Single(plan.Sizes);
        var sides = 2 * size.Finished[GarmentMeasure.Height] + size.Finished[GarmentMeasure.Width];
        Assert.Equal(sides.Centimetres, size.Finished[GarmentMeasure.GussetLength].Centimetres, 1.3);
        Assert.Equal(6, size.Finished[GarmentMeasure.GussetDepth].Centimetres, 0.7);
        Assert.Equal([SeamId.GussetToFront, SeamId.GussetToBack], size.Seams.Select(s => s.Id));
        Assert.Equal(4, Assert.Single(size.Edgings).Spread.Stretches.Length);
        var text = Text(plan);
        Assert.Contains("Turn what is sewn outside out.", text.Split("EDGINGS")[0], StringComparison.Ordinal);
        Assert.DoesNotContain("Strap: ", text.Split("EDGINGS")[0], StringComparison.Ordinal);
        Assert.Contains("AFTER THE EDGINGS", text, StringComparison.Ordinal);
        Assert.Contains("1: Strap: lay each end of the strap inside what is sewn,", text.Split("AFTER THE EDGINGS")[1], StringComparison.Ordinal);
    }

    /// <summary>
    /// The height is to the top of the edging: rows of 0.625 cm less the one that the lower seam hides, or stitches of 10/14 cm less one, and the
    /// band on them; a gusset's fabric is as long as the fabric of the three sides that it is sewn to.
    /// </summary>
    [Theory]
    [InlineData(Direction.Up)]
    [InlineData(Direction.Sideways)]
    public void Its_height_counts_the_edging_of_the_top(Direction direction)
    {
        var size = Assert.Single(Edged(Gusseted(6), direction, EdgingPlace.TopEdge).Planned().Sizes);
        var (panel, gusset, band) = (size[PieceId.Front], size[PieceId.Gusset], Assert.Single(size.Edgings).Depth.Centimetres);
        var (tall, wide) = direction == Direction.Up ? ((panel.Rows - 1) * 10 / 16.0, (panel.Stitches - 2) * 10 / 14.0)
            : ((panel.Stitches - 1) * 10 / 14.0, (panel.Rows - 2) * 10 / 16.0);
        Assert.Equal(tall + band, size.Finished[GarmentMeasure.Height].Centimetres, 4);
        var length = direction == Direction.Up ? gusset.Rows * 10 / 16.0 : gusset.Stitches * 10 / 14.0;
        Assert.Equal(2 * tall + wide, length, 1.3);
    }

    /// <summary>Nothing of gusset and strap is taken from the variegated yarn.</summary>
    [Fact]
    public void Gusset_and_strap_are_plain_and_have_their_own_counts()
    {
        var plan = Gusseted(6).With(g => g with { Direction = Direction.Up }).Planned();
        var size = plan.Sizes[0];
        Assert.Equal(["front", "back", "gusset", "strap"], size.Pieces.Select(p => p.Name));
        foreach (var id in new[] { PieceId.Gusset, PieceId.Strap })
        {
            Assert.False(size[id].Pooled);
            Assert.All(size.Yarn.Uses.Where(u => u.Piece == id), u => Assert.True(u.Companion));
        }
        // 4 cm at 14 stitches to 10 cm; 70 cm and twice the 4 cm that are sewn on, at 16 rows to 10 cm, in pairs of rows.
        var strap = size[PieceId.Strap];
        Assert.Equal((6, 124), (strap.Stitches, strap.Rows));
        var text = Text(plan);
        Assert.Contains("Plain, in Companion yarn", text, StringComparison.Ordinal);
        Assert.Contains(
            "Gusset: lay one long edge of the gusset down one side of the front, along its lower edge and up its other side, outsides in, and sew, eased evenly. "
            + "Sew the other long edge to the back in the same way.", text, StringComparison.Ordinal);
        Assert.Contains(
            "Strap: turn what is sewn outside out. Lay each end of the strap inside it, as deep as the strap is wide, one in the middle of each end of the gusset, "
            + "and sew all round the end.", text, StringComparison.Ordinal);
    }

    [Fact]
    public void Without_a_gusset_the_panels_meet()
    {
        var plan = Gusseted(0).With(g => g with { Direction = Direction.Up }).Planned();
        var size = plan.Sizes[0];
        Assert.Equal(["front", "back", "strap"], size.Pieces.Select(p => p.Name));
        Assert.Equal([SeamId.LeftSide, SeamId.RightSide, SeamId.LowerSeam], size.Seams.Select(s => s.Id));
        var text = Text(plan);
        Assert.Contains("one over the top of each side seam", text, StringComparison.Ordinal);
        Assert.DoesNotContain("gusset", text, StringComparison.OrdinalIgnoreCase);
    }

    [Fact]
    public void What_cannot_be_made_is_refused_with_its_place()
    {
        Assert.Contains(Gusseted(1).Tried().Reasons, r => r.Place == "garment.gusset");
        var reading = Faults("\"shape\": \"bag\", \"width\": \"30 cm\", \"height\": \"30 cm\", \"strap\": \"70 cm\"", companion: false);
        Assert.Contains(reading, f => f.Contains("garment.strap", StringComparison.Ordinal) && f.Contains("add one beside the yarn", StringComparison.Ordinal));
    }

    private static Core.Projects.Project Gusseted(double depth, string stitch = "sc") =>
        Of("bag", stitch).With(g => g with { Shape = (Bag)g.Shape with { Gusset = Cm(depth) } });
}
