using Dyepath.Core.Booklets;
using Dyepath.Core.Constructions;
using Dyepath.Core.Garments;
using Dyepath.Core.Planning;
using Dyepath.Core.Quantities;

namespace Dyepath.Core.Tests.Garments;

/// <summary>What pieces, seams, openings and measures are called, and which side is which.</summary>
public sealed class PlaceNamesTests
{
    private static readonly string[] Pieces =
    [
        "front", "back", "left front", "right front", "sleeve", "cowl", "wrap", "blanket", "shawl", "panel", "gusset", "strap", "tab", "left insert",
        "right insert",
    ];

    private static readonly string[] Seams =
    [
        "left side", "right side", "left shoulder", "right shoulder", "left armhole", "right armhole", "left sleeve", "right sleeve", "back seam",
        "round join", "left sleeve to front", "left sleeve to back", "right sleeve to front", "right sleeve to back", "lower seam", "upper seam",
        "gusset to front", "gusset to back", "left tab to front", "left tab to back", "right tab to front", "right tab to back", "front opening",
        "left insert to front", "right insert to front",
    ];

    private static readonly string[] Openings = ["neck", "armhole", "sleeve join", "tab", "leg opening", "vent"];

    [Fact]
    public void Every_piece_seam_and_opening_has_its_name()
    {
        Assert.Equal(Pieces, Enum.GetValues<PieceId>().Select(PlaceNames.Of));
        Assert.Equal(Seams, Enum.GetValues<SeamId>().Select(PlaceNames.Of));
        Assert.Equal(Openings, Enum.GetValues<OpeningId>().Select(PlaceNames.Of));
    }

    /// <summary>The right one of a pair is called as the left one is.</summary>
    [Fact]
    public void Left_and_right_are_called_alike()
    {
        foreach (var right in Enum.GetValues<SeamId>().Where(s => s.ToString().StartsWith("Right", StringComparison.Ordinal)))
        {
            var left = Enum.Parse<SeamId>("Left" + right.ToString()["Right".Length..]);
            Assert.Equal(PlaceNames.Of(left).Replace("left", "right", StringComparison.Ordinal), PlaceNames.Of(right));
        }
        Assert.Equal(Enum.GetValues<SeamId>().Length, Enum.GetValues<SeamId>().Select(PlaceNames.Of).Distinct().Count());
    }

    [Theory]
    [InlineData(PieceSide.Left, PieceSide.Right, true, PieceSide.Bottom, PieceSide.Top)]
    [InlineData(PieceSide.Right, PieceSide.Left, true, PieceSide.Bottom, PieceSide.Top)]
    [InlineData(PieceSide.Top, PieceSide.Top, false, PieceSide.Left, PieceSide.Right)]
    [InlineData(PieceSide.Bottom, PieceSide.Bottom, false, PieceSide.Left, PieceSide.Right)]
    public void A_side_has_its_mirror_and_begins_below_or_at_the_left(PieceSide side, PieceSide mirror, bool upright, PieceSide begins, PieceSide ends)
    {
        Assert.Equal((mirror, upright, begins, ends), (side.Mirrored(), side.IsUpright(), side.AtBeginning(), side.AtEnd()));
        // Worked up, rows lie across, so that stitches run along the upper and the lower edge; worked sideways they stand.
        Assert.Equal((!upright, upright), (side.RunsAlongStitches(Direction.Up), side.RunsAlongStitches(Direction.Sideways)));
    }

    [Fact]
    public void An_edge_turned_round_twice_is_itself()
    {
        var edge = new PieceEdge(PieceId.Front, PieceSide.Left);
        Assert.True(edge.Reverse().Backwards);
        Assert.Equal(edge, edge.Reverse().Reverse());
        Assert.Equal(
            [false, false, false, false, true, true],
            Enum.GetValues<Stretch>().Select(stretch => (edge with { Stretch = stretch }).IsFilled));
        Assert.Equal(
            [true, false, false], Enum.GetValues<JoinKind>().Select(kind => new Join(SeamId.LeftSide, [edge], [edge], kind).Sewn));
    }

    [Theory]
    [InlineData(GarmentMeasure.ArmholeDepth, "armhole depth", "too deep", "too shallow")]
    [InlineData(GarmentMeasure.NeckDepth, "front neck depth", "too deep", "too shallow")]
    [InlineData(GarmentMeasure.BackNeckDepth, "back neck depth", "too deep", "too shallow")]
    [InlineData(GarmentMeasure.LegOpening, "leg opening depth", "too deep", "too shallow")]
    [InlineData(GarmentMeasure.GussetDepth, "gusset depth", "too deep", "too shallow")]
    [InlineData(GarmentMeasure.Depth, "depth", "too deep", "too shallow")]
    [InlineData(GarmentMeasure.Length, "length", "too long", "too short")]
    [InlineData(GarmentMeasure.SleeveLength, "sleeve length", "too long", "too short")]
    [InlineData(GarmentMeasure.StrapLength, "strap length", "too long", "too short")]
    [InlineData(GarmentMeasure.TabLength, "tab length", "too long", "too short")]
    [InlineData(GarmentMeasure.GussetLength, "gusset length", "too long", "too short")]
    [InlineData(GarmentMeasure.SleeveJoin, "sleeve joined to the body", "too long", "too short")]
    [InlineData(GarmentMeasure.TabJoin, "tab joined to the side", "too long", "too short")]
    [InlineData(GarmentMeasure.Vent, "side vent", "too long", "too short")]
    [InlineData(GarmentMeasure.Height, "height", "too tall", "too low")]
    [InlineData(GarmentMeasure.TabHeight, "tab height", "too tall", "too low")]
    [InlineData(GarmentMeasure.InsertHeight, "insert height", "too tall", "too low")]
    [InlineData(GarmentMeasure.Width, "width", "too wide", "too narrow")]
    [InlineData(GarmentMeasure.SleeveWidth, "sleeve width", "too wide", "too narrow")]
    [InlineData(GarmentMeasure.Circumference, "circumference", "too wide", "too narrow")]
    [InlineData(GarmentMeasure.InsertWidth, "insert width", "too wide", "too narrow")]
    public void A_measure_is_called_by_its_words_and_is_off_one_way_or_the_other(GarmentMeasure measure, string words, string over, string under)
    {
        Assert.Equal(words, GarmentMeasures.Words(measure));
        var off = new FitError("M", measure, Length.FromCentimetres(1.2));
        Assert.Equal((true, $"size M, {words}, 1.2 cm {over}"), (off.IsOver, off.Say(Units.Centimetres)));
        var less = off with { Error = -off.Error };
        Assert.Equal((false, off.Off, $"size M, {words}, 1.2 cm {under}"), (less.IsOver, less.Off, less.Say(Units.Centimetres)));
        Assert.Equal("every size as asked", (off with { Error = Length.Zero }).Say(Units.Centimetres));
    }

    /// <summary>Every garment's asked counts are called by their group, such as sleeveRows, or cannot be fixed.</summary>
    [Fact]
    public void Counts_that_can_be_fixed_are_called_by_what_has_them()
    {
        var names = Repertoire.All.SelectMany(kind => GarmentPlanner.Plan(Core.Projects.StarterDocument.Of(kind)).Plan is { } plan
            ? plan.Construction.Groups : []).DistinctBy(g => g.Name).ToArray();
        Assert.All(names, g => Assert.Equal(($"{g.Name}Stitches", $"{g.Name}Rows"), (FixedCounts.Stitches(g), FixedCounts.Rows(g))));
        Assert.Equal(
            FixedCounts.OfStitches.Select(n => n.Replace("Stitches", "Rows", StringComparison.Ordinal)), FixedCounts.OfRows);
    }
}
