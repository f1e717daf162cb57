using Dyepath.Core.Constructions;
using Dyepath.Core.Edgings;
using Dyepath.Core.Garments;
using Dyepath.Core.Instructions;
using Dyepath.Core.Tests.Garments;
using static Dyepath.Core.Tests.Constructions.GarmentTrials;
using static Dyepath.Core.Tests.Garments.TestProjects;

namespace Dyepath.Core.Tests.Constructions;

public sealed class PonchoTests
{
    /// <summary>Women's M is 72.5 to 73.5 cm from neck to cuff in the chart: twice 0.8 of the middle, and 0.85 of it.</summary>
    [Fact]
    public void It_is_as_wide_as_a_share_of_both_arms()
    {
        var size = Of("poncho").Planned().Sizes.Single(s => s.Name == "M");
        Assert.Equal(2 * 0.8 * 73, size.Target[GarmentMeasure.WristToWrist].Centimetres, 1e-6);
        Assert.Equal(0.85 * 73, size.Target[GarmentMeasure.Length].Centimetres, 1e-6);
        Assert.False(size.Target.ContainsKey(GarmentMeasure.Width));
    }

    [Theory]
    [InlineData(Direction.Up, "sc")]
    [InlineData(Direction.Sideways, "sc")]
    [InlineData(Direction.Up, "hdc")]
    [InlineData(Direction.Sideways, "hdc")]
    public void Open_and_joined_it_is_checked_by_other_routes_edged(Direction direction, string stitch)
    {
        Check(Edged(Of("poncho", stitch), direction, EdgingPlace.Hem, EdgingPlace.Neck));
        var joined = Of("poncho", stitch).With(g => g with { Shape = (Poncho)g.Shape with { SideJoin = Cm(20) } });
        Check(Edged(joined, direction, EdgingPlace.Hem, EdgingPlace.Neck));
    }

    /// <summary>Open: shoulders only, and one round along six edges with two more stitches at each of four corners.</summary>
    [Fact]
    public void Open_sides_are_edged_in_one_round()
    {
        var plan = Edged(Of("poncho"), Direction.Up, EdgingPlace.Hem).Planned();
        var size = plan.Sizes[0];
        Assert.Equal([SeamId.LeftShoulder, SeamId.RightShoulder], size.Seams.Select(s => s.Id));
        var hem = Assert.Single(size.Edgings);
        Assert.Equal(6, hem.Spread.Stretches.Length);
        var (stitches, rows) = (size[PieceId.Front].Stitches, size[PieceId.Front].Rows);
        // A shoulder seam hides the last row of each panel.
        Assert.Equal([rows - 1, stitches, rows - 1, rows - 1, stitches, rows - 1], hem.Spread.Stretches.Select(s => s.Stretch.Places));
        Assert.Contains("2 extra at each of the 4 corners", PickUpWords.Text(hem.Spread), StringComparison.Ordinal);
    }

    [Fact]
    public void Sides_are_joined_for_the_stated_length()
    {
        var plan = Of("poncho").With(g => g with { Direction = Direction.Up, Shape = (Poncho)g.Shape with { SideJoin = Cm(20) }, Edgings = [] }).Planned();
        foreach (var size in plan.Sizes)
        {
            Assert.Equal(20, size.Seams.Single(s => s.Id == SeamId.LeftSide).Length.Centimetres, 1.5);
            Assert.Contains(size.Worn, f => f.Part == FitPart.Armhole && f.Holds);
            Assert.Contains(size.Worn, f => f.Part == FitPart.JoinedSides && f.Holds);
        }
        Assert.Contains("Sides: sew row to row from the hem up to the armhole marks.", Text(plan), StringComparison.Ordinal);
    }

    [Fact]
    public void Joined_too_far_leaves_no_way_for_an_arm()
    {
        var tried = Of("poncho").With(g => g with { Direction = Direction.Up, Shape = (Poncho)g.Shape with { Length = Cm(50), SideJoin = Cm(40) } }).Planned();
        Assert.All(tried.Sizes, s => Assert.DoesNotContain(s.Worn, f => f.Part == FitPart.Armhole && f.Holds));
        var refused = Of("poncho").With(g => g with { Shape = (Poncho)g.Shape with { Length = Cm(50), SideJoin = Cm(60) } }).Tried();
        Assert.False(refused.HasPlan);
        Assert.Contains(refused.Reasons, r => r.Place == "garment.sideJoin");
    }
}
