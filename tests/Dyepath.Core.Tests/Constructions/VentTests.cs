using Dyepath.Core.Constructions;
using Dyepath.Core.Edgings;
using Dyepath.Core.Garments;
using Dyepath.Core.Planning;
using Dyepath.Core.Projects;
using static Dyepath.Core.Tests.Garments.TestProjects;

namespace Dyepath.Core.Tests.Constructions;

/// <summary>A dress whose sides are open from the hem up.</summary>
public sealed class VentTests
{
    public static TheoryData<string, string, Direction> Ways => new()
    {
        { "off-shoulder-dress", "sc", Direction.Up },
        { "off-shoulder-dress", "hdc", Direction.Sideways },
        { "off-shoulder-top", "dc", Direction.Up },
        { "off-shoulder-top", "sc", Direction.Sideways },
    };

    [Theory]
    [MemberData(nameof(Ways))]
    public void Plan_and_words_agree_and_the_sides_are_sewn_above_it(string garment, string stitch, Direction direction)
    {
        var plan = GarmentTrials.Check(GarmentTrials.Edged(Vented(garment, stitch, direction, 18), direction, EdgingPlace.Hem, EdgingPlace.Cuffs));
        var text = GarmentTrials.Text(plan);
        Assert.Contains("from the vent marks up to the sleeve join marks", text, StringComparison.Ordinal);
        Assert.Contains("from here up the sides are sewn, below they stay open as vents.", text, StringComparison.Ordinal);
        foreach (var size in plan.Sizes)
        {
            // By the gauge alone: what is open and what is joined to the sleeves is not sewn.
            var step = direction == Direction.Up ? plan.RowHeight : plan.StitchWidth;
            var all = direction == Direction.Up ? size[PieceId.Front].Rows : size[PieceId.Front].Stitches;
            var open = size[PieceId.Front].Opening(OpeningId.Vent);
            Assert.Equal(18, (step * open.Length).Centimetres, step.Centimetres);
            Assert.Equal(1, open.First);
            var sewn = size.Seams.Single(s => s.Id == SeamId.LeftSide).First.Sum(r => r.Count);
            Assert.Equal(all - open.Length - size[PieceId.Front].Opening(OpeningId.SleeveJoin).Length, sewn);
            Assert.Equal(open.Last + 1, size[PieceId.Front].Marks.Single(m => m.Opening.Id == OpeningId.Vent).Position);
        }
    }

    /// <summary>The lower edges of front and back are edged each by itself, in rows, and have as many stitches as each other.</summary>
    [Theory]
    [InlineData(Direction.Up)]
    [InlineData(Direction.Sideways)]
    public void Front_and_back_are_edged_from_vent_to_vent(Direction direction)
    {
        var project = Vented("off-shoulder-dress", "sc", direction, 18).With(g => g with { Grading = g.Grading with { UnequalPanels = direction == Direction.Up } });
        var plan = GarmentTrials.Check(GarmentTrials.Edged(project, direction, EdgingPlace.Hem));
        foreach (var size in plan.Sizes)
        {
            var hem = size.Edgings.Single(e => e.Where == EdgingPlace.Hem);
            Assert.Equal("sc-rows", hem.Edging);
            Assert.Equal(2, hem.Copies);
            Assert.Equal(size[PieceId.Front].Stitches, size[PieceId.Back].Stitches);
            // No seam takes of the lower edge between the vents.
            Assert.Equal(direction == Direction.Up ? size[PieceId.Front].Stitches : size[PieceId.Front].Rows, hem.Spread.Stretches.Sum(s => s.Stretch.Places));
        }
        var text = GarmentTrials.Text(plan);
        Assert.Contains("Hem (work 2)", text, StringComparison.Ordinal);
        Assert.Contains("facing at one vent, along the lower edge to the other vent.", text, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("", false)]
    [InlineData("0 cm", false)]
    [InlineData("18 cm", true)]
    [InlineData("7 in", true)]
    public void The_page_offers_rows_between_vents(string vent, bool open) => Assert.Equal(
        open, Repertoire.All.First(k => k.Name == "off-shoulder-dress").IsOpen(EdgingPlace.Hem, name => name == "vent" ? vent : ""));

    [Fact]
    public void Vents_that_leave_nothing_of_the_sides_are_refused()
    {
        var reason = Assert.Single(Vented("off-shoulder-top", "sc", Direction.Up, 40).Tried().Reasons, r => r.Place == "garment.vent");
        // 42 cm long, 5 of it joined to the sleeves, and 15 cm to be sewn.
        Assert.EndsWith("make them 22 cm or shorter.", reason.Text, StringComparison.Ordinal);
    }

    private static Project Vented(string garment, string stitch, Direction direction, double centimetres) =>
        Begun(garment, stitch, true, direction).With(g => g with { Shape = (OffShoulder)g.Shape with { Vent = Cm(centimetres) } });
}
