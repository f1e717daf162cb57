using Dyepath.Core.Constructions;
using Dyepath.Core.Edgings;
using Dyepath.Core.Garments;
using Dyepath.Core.Quantities;
using Dyepath.Core.Sizing;
using Dyepath.Core.Tests.Garments;
using Dyepath.Core.Yarns;
using static Dyepath.Core.Tests.Constructions.GarmentTrials;
using static Dyepath.Core.Tests.Garments.TestProjects;

namespace Dyepath.Core.Tests.Constructions;

public sealed class TabardTests
{
    [Theory]
    [InlineData(Direction.Up, "sc")]
    [InlineData(Direction.Sideways, "sc")]
    [InlineData(Direction.Up, "hdc")]
    [InlineData(Direction.Sideways, "hdc")]
    public void Edged_it_is_checked_by_other_routes(Direction direction, string stitch)
    {
        var plan = Check(Edged(Child(stitch), direction, EdgingPlace.Hem, EdgingPlace.Neck, EdgingPlace.Armholes));
        Assert.All(plan.Sizes, s => Assert.All(s.Worn, fit => Assert.True(fit.Holds, $"{s.Name}: {fit}")));
    }

    /// <summary>A child's size 4 has a chest of 58.5 cm: with 12.5 cm of ease (the middle of loose), less two tabs of 3 cm, half of it is a panel.</summary>
    [Fact]
    public void Panels_and_tabs_go_round_chest_and_ease()
    {
        var size = Child().With(g => g with { Direction = Direction.Sideways }).Planned().Sizes.Single(s => s.Name == "4");
        Assert.Equal((58.5 + 12.5) / 2 - 3, size.Target[GarmentMeasure.PanelWidth].Centimetres, 0.3);
        Assert.Equal(3, size.Finished[GarmentMeasure.TabLength].Centimetres, 0.7);
        var round = 2 * (size.Finished[GarmentMeasure.PanelWidth] + size.Finished[GarmentMeasure.TabLength]);
        Assert.Contains(size.Worn, f => f.Body == BodyMeasure.Bust && f.Garment == round && f.Holds);
    }

    /// <summary>Nothing is tied: the sides are held by two plain tabs, each sewn to front and back, in the middle of the sides.</summary>
    [Theory]
    [InlineData(Direction.Up)]
    [InlineData(Direction.Sideways)]
    public void Sides_are_held_by_plain_tabs_and_no_cord(Direction direction)
    {
        var plan = Child().With(g => g with { Direction = direction }).Planned();
        foreach (var size in plan.Sizes)
        {
            var tab = size[PieceId.Tab];
            Assert.Equal((2, false), (tab.Copies, tab.Pooled));
            var opening = size[PieceId.Front].Opening(OpeningId.Tab);
            var all = opening.AlongStitches ? size[PieceId.Front].Stitches : size[PieceId.Front].Rows;
            Assert.InRange(opening.First - 1 - (all - opening.Last), -1, 1);
            Assert.All(
                size.Seams.Where(s => s.Id is SeamId.LeftTabFront or SeamId.LeftTabBack or SeamId.RightTabFront or SeamId.RightTabBack),
                s => Assert.Equal(5, s.Length.Centimetres, 1.3));
        }
        var text = Text(plan);
        Assert.Contains("Tabs: ", text, StringComparison.Ordinal);
        Assert.Contains("side tabs begin here.", text, StringComparison.Ordinal);
        Assert.Contains("side tabs end here.", text, StringComparison.Ordinal);
        Assert.DoesNotContain("Sides: ", text, StringComparison.Ordinal);
        var refused = Edged(Child(), direction, EdgingPlace.Neck).With(g => g with { Edgings = [new EdgingChoice(EdgingPlace.Neck, "drawstring", null)] }).Tried();
        Assert.Contains(refused.Reasons, r => r.Text.Contains("cord", StringComparison.Ordinal));
    }

    /// <summary>76 stitches of a sequence are 54 cm, wider than what the smaller panels may be: no count makes the motif there.</summary>
    [Fact]
    public void Narrower_than_one_sequence_is_refused_with_a_reason()
    {
        var project = Child();
        var wide = project with
        {
            Fabric = project.Fabric with { SectionStitches = [20, 16, 24, 16] },
            Yarn = project.Yarn with
            {
                Sections = [.. project.Yarn.Sections.Select(s => s with { Length = 4 * s.Length })],
                Counted = [new CountedBall("first ball", [[20, 16, 24, 16], [20, 16, 24, 16]])],
            },
        };
        var tried = wide.With(g => g with { Direction = Direction.Up }).Tried();
        Assert.False(tried.HasPlan);
        Assert.Contains(tried.Reasons, r => r.Place == "garment.grading" && r.Text.StartsWith("Worked up: Sizes 2, 4, 6 have no counts", StringComparison.Ordinal));
    }

    /// <summary>The starter is for children.</summary>
    private static Core.Projects.Project Child(string stitch = "sc") => Of("tabard", stitch);
}
