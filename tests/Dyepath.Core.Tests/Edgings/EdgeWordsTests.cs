using Dyepath.Core.Edgings;
using Dyepath.Core.Quantities;

namespace Dyepath.Core.Tests.Edgings;

/// <summary>What edges are called where a maker looks for them, and what closes them.</summary>
public sealed class EdgeWordsTests
{
    [Theory]
    [InlineData(EdgeId.Front, "front")]
    [InlineData(EdgeId.Back, "back")]
    [InlineData(EdgeId.LeftFront, "left front")]
    [InlineData(EdgeId.RightFront, "right front")]
    [InlineData(EdgeId.LeftSleeve, "left sleeve")]
    [InlineData(EdgeId.RightSleeve, "right sleeve")]
    [InlineData(EdgeId.FrontNeck, "front neck")]
    [InlineData(EdgeId.BackNeck, "back neck")]
    [InlineData(EdgeId.LeftFrontNeck, "left front neck")]
    [InlineData(EdgeId.RightFrontNeck, "right front neck")]
    [InlineData(EdgeId.LeftNeckSlope, "front neck, slope at the wearer's left")]
    [InlineData(EdgeId.RightNeckSlope, "front neck, slope at the wearer's right")]
    [InlineData(EdgeId.FrontEdge, "front edge")]
    [InlineData(EdgeId.FrontLeftShoulder, "left shoulder of the front")]
    [InlineData(EdgeId.Hem, "hem")]
    [InlineData(EdgeId.Waist, "waist")]
    [InlineData(EdgeId.Cuff, "cuff")]
    [InlineData(EdgeId.Brim, "brim")]
    [InlineData(EdgeId.Crown, "crown")]
    [InlineData(EdgeId.LowerEdge, "lower edge")]
    [InlineData(EdgeId.RightEdge, "right edge")]
    [InlineData(EdgeId.UpperEdge, "upper edge")]
    [InlineData(EdgeId.LeftEdge, "left edge")]
    [InlineData(EdgeId.Point, "point")]
    [InlineData(EdgeId.RightSlope, "right slope")]
    [InlineData(EdgeId.LeftSlope, "left slope")]
    [InlineData(EdgeId.OneGussetEnd, "one end of the gusset")]
    [InlineData(EdgeId.OtherGussetEnd, "other end of the gusset")]
    [InlineData(EdgeId.BackLeftSide, "left side of the back")]
    [InlineData(EdgeId.BackRightSide, "right side of the back")]
    [InlineData(EdgeId.FrontLeftSide, "left side of the front")]
    [InlineData(EdgeId.FrontRightSide, "right side of the front")]
    [InlineData(EdgeId.BackLowerEdge, "lower edge of the back")]
    [InlineData(EdgeId.FrontLowerEdge, "lower edge of the front")]
    [InlineData(EdgeId.BackLeftSideBelowTab, "left side of the back below the tab")]
    [InlineData(EdgeId.BackRightSideBelowTab, "right side of the back below the tab")]
    [InlineData(EdgeId.FrontLeftSideBelowTab, "left side of the front below the tab")]
    [InlineData(EdgeId.FrontRightSideBelowTab, "right side of the front below the tab")]
    [InlineData(EdgeId.LeftTabLowerEdge, "lower edge of the left tab")]
    [InlineData(EdgeId.RightTabLowerEdge, "lower edge of the right tab")]
    [InlineData(EdgeId.FrontSideAboveTab, "side of the front above the tab")]
    [InlineData(EdgeId.BackSideAboveTab, "side of the back above the tab")]
    [InlineData(EdgeId.TabUpperEdge, "upper edge of the tab")]
    public void An_edge_is_called_by_its_piece_and_place(EdgeId edge, string words) => Assert.Equal(words, EdgeWords.Of(edge));

    [Theory]
    [InlineData(EdgePart.Whole, "back neck")]
    [InlineData(EdgePart.Steps, "back neck, steps")]
    [InlineData(EdgePart.RowEnds, "back neck, row ends")]
    [InlineData(EdgePart.AlongSteps, "back neck, along its steps")]
    [InlineData(EdgePart.StepsAtWearersLeft, "back neck, along the steps at the wearer's left")]
    [InlineData(EdgePart.StepsAtWearersRight, "back neck, along the steps at the wearer's right")]
    [InlineData(EdgePart.LowerEdge, "back neck, lower edge")]
    [InlineData(EdgePart.Step, "back neck, step")]
    [InlineData(EdgePart.UpperEdge, "back neck, upper edge")]
    [InlineData(EdgePart.UprightEdge, "back neck, upright edge")]
    [InlineData(EdgePart.WearersLeft, "back neck, edge at the wearer's left")]
    [InlineData(EdgePart.WearersRight, "back neck, edge at the wearer's right")]
    public void A_part_of_an_edge_is_called_after_it(EdgePart part, string words) =>
        Assert.Equal(words, EdgeWords.Of(new StretchId.OfEdge(EdgeId.BackNeck, part)));

    [Fact]
    public void What_is_no_edge_of_a_piece_has_its_words()
    {
        Assert.Equal("end of the hem", EdgeWords.Of(new StretchId.EndOf(EdgingPlace.Hem)));
        Assert.Equal(
            ["side", "below the mark", "above it"],
            new[] { SidePart.Whole, SidePart.BelowMark, SidePart.AboveMark }.Select(p => EdgeWords.Of(new StretchId.OfSide(p))));
        Assert.Equal(("outer corner", "inner corner"), (EdgeWords.Of(EdgeCorner.Outer), EdgeWords.Of(EdgeCorner.Inner)));
    }

    /// <summary>A cord on a child's clothing is no longer than the safety rules let it be, and cannot be caught.</summary>
    [Fact]
    public void A_childs_cord_is_short_and_fast()
    {
        var step = EdgingLibrary.Find("drawstring").ForChildren!;
        Assert.Equal("Cord, for a child", EdgingSayings.Say(step.Label));
        Assert.Equal(
            "Leave no more than 7.5 cm of it outside with the edge pulled wide, tie no knots and no toggles, and sew it fast at the middle.",
            EdgingSayings.Say(step.Text));
    }

    /// <summary>Buttons are sold by lines, 40 to an inch, and called by the nearest millimetre.</summary>
    [Fact]
    public void Buttons_are_those_that_are_sold_by_lines()
    {
        int[] lines = [10, 12, 14, 16, 18, 19, 20, 24, 28, 32, 36, 40, 44, 48, 54, 60];
        Assert.Equal(lines.Select(l => (int)Math.Round(l * 25.4 / 40, MidpointRounding.AwayFromZero)), ButtonBand.Diameters);
    }

    /// <summary>A hole of two stitches gives by a quarter, so that it passes what is two and a half stitches across.</summary>
    [Fact]
    public void Every_button_passes_a_hole_of_its_size_and_no_smaller_one()
    {
        foreach (var across in ButtonBand.Diameters.Skip(1))
        {
            Assert.Equal(across, ButtonBand.Diameter(Length.FromMillimetres(across / 2.5)));
            Assert.True(ButtonBand.Diameter(Length.FromMillimetres((across - 0.01) / 2.5)) < across, $"{across} mm passes too small a hole.");
        }
    }

    /// <summary>Every number of holes tried from the most down: the first that leaves the ends and six stitches between.</summary>
    [Theory]
    [InlineData(0.5, 0)]
    [InlineData(0.7, 3.5)]
    [InlineData(1.1, 0.2)]
    public void As_many_buttonholes_as_fit_are_worked_evenly(double width, double folded)
    {
        for (var stitches = 0; stitches < 120; stitches++)
        {
            var closing = Enumerable.Range(0, stitches + 1).Last(n => n == 0 || n * width <= stitches * width - folded + 1e-6);
            var end = Enumerable.Range(1, 9).MinBy(n => Math.Abs(n * width - 1.5));
            var holes = Enumerable.Range(1, 30).Reverse().FirstOrDefault(n => 2 * end + 2 * n + 6 * (n - 1) <= closing);
            var layout = ButtonLayout.Of(stitches, Length.FromCentimetres(width), Length.FromCentimetres(folded));
            if (holes == 0)
            {
                Assert.InRange(layout.Holes, 0, 1);
                continue;
            }
            var between = holes == 1 ? 0 : Enumerable.Range(6, 120).Last(n => 2 * end + 2 * holes + n * (holes - 1) <= closing);
            Assert.Equal((stitches, holes, end, between), (stitches, layout.Holes, layout.Before, layout.Between));
            Assert.Equal((2 + between) * width, layout.Spacing(Length.FromCentimetres(width)).Centimetres, 1e-9);
        }
    }
}
