using System.Text;
using System.Text.Json.Nodes;
using Dyepath.Core.Booklets;
using Dyepath.Core.Garments;
using Dyepath.Core.Instructions;
using Dyepath.Core.Measuring;
using Dyepath.Core.Planning;
using Dyepath.Core.Projects;
using Dyepath.Workspace.Draft;
using Dyepath.Workspace.Fabric;
using Dyepath.Workspace.Work;

namespace Dyepath.Workspace.Tests.Fabric;

public sealed class UnrolledTests
{
    [Theory]
    [InlineData("up")]
    [InlineData("sideways")]
    public void Front_and_back_adjoin_and_are_as_wide_together_as_the_garment_is_round(string direction)
    {
        var plan = Demo.Plan(d =>
        {
            d.Set("garment.direction", direction);
            d.Set("garment.grading", new JsonObject { ["unevenWidths"] = true, ["severalLeans"] = true });
        });
        foreach (var size in plan.Sizes)
        {
            var unrolled = Unrolled.Of(plan, size);
            var (front, back) = (unrolled.Pieces[0], unrolled.Pieces[1]);
            Assert.Equal(front.Right, back.X, 1e-9);
            Assert.Equal(size.Finished[GarmentMeasure.Width].Centimetres, back.Right, 0.1);
            Assert.Equal(front.Columns * front.Worn.Rows, front.Cells().Count());
            // The side seam between them is one line, the other one lies at both ends.
            Assert.Equal([front.Right], unrolled.Seams.Where(s => s.Seams.Contains(0)).Select(s => s.X1));
            Assert.Equal([0, back.Right], unrolled.Seams.Where(s => s.Seams.Contains(1)).Select(s => s.X1));
            Assert.Equal([0, 1, 2, 3], unrolled.Telling);
        }
    }

    [Fact]
    public void Across_a_seam_that_matches_the_first_seen_column_is_the_one_that_the_other_piece_hides()
    {
        var plan = Demo.Plan(d =>
        {
            d.Set("garment.direction", "sideways");
            d.Set("garment.seams.extension", "continued");
        });
        foreach (var size in plan.Sizes.Where(s => s.Seams[0].PhaseJump == 0))
        {
            var unrolled = Unrolled.Of(plan, size);
            var (front, back) = (unrolled.Pieces[0], unrolled.Pieces[1]);
            var beyond = front.HiddenLeft + front.Columns;
            var below = (int)(size.Seams[0].Length / size.Pieces[0].Height * front.Worn.Rows);
            for (var y = front.Worn.Rows - below + 1; y < front.Worn.Rows; y++)
                Assert.Equal(front.Worn.Cells[y * front.Worn.Columns + beyond], back.Cells().ElementAt(y * back.Columns));
        }
        Assert.Contains(plan.Sizes, s => s.Seams[0].PhaseJump == 0);
    }

    [Fact]
    public void Pooled_sleeves_hang_beside_with_their_seams_and_a_cowl_joins_its_own_ends()
    {
        var sleeved = Demo.Plan(d => d.Set("garment.sleeves.yarn", "variegated"));
        var unrolled = Unrolled.Of(sleeved, sleeved.Sizes[0]);
        Assert.Equal(["front", "back", "sleeve"], unrolled.Pieces.Select(p => p.Piece.Name));
        Assert.Equal(Enumerable.Range(0, 8), unrolled.Telling);
        Assert.Empty(unrolled.Openings);
        var cowl = Demo.Plan(d =>
        {
            d.Set("garment", JsonNode.Parse("""{ "shape": "cowl", "circumference": "140 cm", "height": "30 cm", "motif": "columns" }"""));
            d.Set("sizes", null);
        });
        var tube = Unrolled.Of(cowl, cowl.Sizes[0]);
        Assert.Equal([0, tube.Width], tube.Seams.Select(s => s.X1));
        Assert.Equal((0, 0), (Assert.Single(tube.Pieces).HiddenLeft, tube.Pieces[0].HiddenRight));
    }

    /// <summary>A front that opens is sewn at the side alone: its free edge is seen to the last stitch.</summary>
    [Theory]
    [InlineData("up")]
    [InlineData("sideways")]
    public void A_front_that_opens_hides_stitches_at_its_side_seam_alone(string direction)
    {
        var plan = Demo.Plan(d =>
        {
            d.Set("garment", JsonNode.Parse("""{ "shape": "cardigan", "sleeves": {}, "edgings": [{ "where": "fronts", "edging": "button-band" }] }"""));
            d.Set("garment.direction", direction);
            d.Set("garment.grading", new JsonObject { ["unevenWidths"] = true, ["severalLeans"] = true });
        });
        var pieces = Unrolled.Of(plan, plan.Sizes[1]).Pieces;
        var hidden = plan.Direction == Direction.Up ? plan.Project.Garment.Seams.HiddenStitches : plan.Project.Garment.Seams.HiddenRows;
        // Seen from outside, the wearer's right front lies at the left.
        foreach (var (id, left, right) in new[] { (PieceId.RightFront, hidden, 0), (PieceId.LeftFront, 0, hidden), (PieceId.Back, hidden, hidden) })
        {
            var laid = pieces.Single(p => p.Piece.Id == id);
            Assert.Equal((left, right), (laid.HiddenLeft, laid.HiddenRight));
            Assert.Equal(laid.Worn.Columns - left - right, laid.Columns);
            var top = laid.Worn.Cells[..laid.Worn.Columns].ToArray();
            Assert.Equal(top[left..(laid.Worn.Columns - right)], laid.Cells().Take(laid.Columns));
        }
    }

    [Fact]
    public void The_scene_says_the_same_stitches_in_symbols_that_can_be_read()
    {
        var plan = Demo.Plan();
        var unrolled = Unrolled.Of(plan, plan.Sizes[2]);
        var scene = JsonNode.Parse(FabricScene.Of(unrolled, Eyes.All[1], Distance.All[1], null).ToJson())!;
        Assert.Equal(
            plan.Sequence.Colours.Select(c => c.Symbol).Append(""),
            scene["symbols"]!.AsArray().Select(s => s!.GetValue<string>()));
        Assert.Equal(unrolled.Pieces.Length, scene["patches"]!.AsArray().Count);
        Assert.Equal(
            unrolled.Pieces.Sum(p => p.Cells().Count()),
            scene["patches"]!.AsArray().Sum(p => p!["columns"]!.GetValue<int>() * p["rows"]!.GetValue<int>()));
        Assert.True(scene["blur"]!.GetValue<double>() > 0);
    }

    /// <summary>Colours whose names begin alike get A, B, C in the order in which they come off the ball, on every page.</summary>
    [Fact]
    public void Pulled_from_the_other_end_every_page_shows_the_same_symbols()
    {
        var document = Demo.Document();
        for (var i = 0; i < 5; i++)
            document.Set($"yarn.sections[{i}].name", $"s{i + 1}");
        document.Set("yarn.fromOtherEnd", true);
        var plan = Demo.Planned(document);
        var scene = JsonNode.Parse(FabricScene.Of(Unrolled.Of(plan, plan.Sizes[2]), Eyes.All[0], Distance.All[0], null).ToJson())!;
        Assert.Equal(["A", "B", "C", "D", "E", ""], scene["symbols"]!.AsArray().Select(s => s!.GetValue<string>()));
        Assert.Equal(["s5", "s4", "s3", "s2", "s1"], plan.Sequence.Colours.Select(c => c.Name));
        Assert.Equal(
            ["s1 E", "s2 D", "s3 C", "s4 B", "s5 A"], SectionView.Read(document).Select(s => $"{s.Name} {s.Symbol}"));
        Assert.Contains("s5 (A), ", TextBooklet.Write(PatternWriter.Write(plan), plan.Project.Edition), StringComparison.Ordinal);
    }
}
