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

    /// <summary>The hem's edging goes round both lower edges and up and down all four edges of the vents.</summary>
    [Fact]
    public void The_hem_is_edged_round_the_vents()
    {
        var without = GarmentTrials.Edged(Vented("off-shoulder-dress", "sc", Direction.Up, 0), Direction.Up, EdgingPlace.Hem).Planned();
        var with = GarmentTrials.Edged(Vented("off-shoulder-dress", "sc", Direction.Up, 18), Direction.Up, EdgingPlace.Hem).Planned();
        foreach (var (plain, vented) in without.Sizes.Zip(with.Sizes))
        {
            var longer = vented.Edgings.Single(e => e.Where == EdgingPlace.Hem).Edge - plain.Edgings.Single(e => e.Where == EdgingPlace.Hem).Edge;
            // Whole rows: half a row off at each of the four edges.
            Assert.InRange(longer.Centimetres, 4 * 18 - 2, 4 * 18 + 2);
        }
        Assert.DoesNotContain(without.Sizes.SelectMany(s => s[PieceId.Front].Openings), o => o.Id == OpeningId.Vent);
    }

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
