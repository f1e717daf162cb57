using Dyepath.Core.Garments;
using Dyepath.Core.Planning;
using Dyepath.Workspace.Fit;

namespace Dyepath.Workspace.Tests.Fit;

public sealed class FitRulerLayoutTests
{
    private static readonly FitRuler Up = FitBench.Ruler(Direction.Up);
    private static readonly FitRuler Sideways = FitBench.Ruler(Direction.Sideways);

    public static TheoryData<Direction, double> Scales => new(
        from direction in Enum.GetValues<Direction>() from scale in new[] { 3, 11.5, 60, 120 } select (direction, scale));

    private static FitRuler Of(Direction direction) => direction == Direction.Up ? Up : Sideways;

    [Theory]
    [MemberData(nameof(Scales))]
    public void Nothing_covers_its_neighbour(Direction direction, double scale)
    {
        var layout = FitRulerLayout.Of(Of(direction), scale, inches: false);
        Apart(layout.Counts.Where(c => c.HasName).Select(c => c.X), 30);
        Apart(layout.Counts.Where(c => c.HasPicture).Select(c => c.X), FitRulerLayout.PictureSide);
        Apart(layout.Ticks.Where(t => t.Label is not null).Select(t => t.X), 40);
        foreach (var lane in layout.Sizes.GroupBy(s => s.Lane))
        {
            foreach (var (a, b) in lane.OrderBy(s => s.X).Zip(lane.OrderBy(s => s.X).Skip(1)))
                Assert.True(a.X + FitRulerLayout.HalfName(a.Size.Name) <= b.X - FitRulerLayout.HalfName(b.Size.Name));
        }
        foreach (var lane in layout.Counts.GroupBy(c => c.BandLane))
        {
            foreach (var (a, b) in lane.OrderBy(c => c.BandFrom).Zip(lane.OrderBy(c => c.BandFrom).Skip(1)))
                Assert.True(a.BandTo <= b.BandFrom);
        }

        static void Apart(IEnumerable<double> places, double least)
        {
            var sorted = places.Order().ToArray();
            Assert.All(sorted.Zip(sorted.Skip(1)), p => Assert.True(p.Second - p.First >= least));
        }
    }

    [Theory]
    [MemberData(nameof(Scales))]
    public void Everything_stands_on_the_sheet_and_to_scale(Direction direction, double scale)
    {
        var ruler = Of(direction);
        var layout = FitRulerLayout.Of(ruler, scale, inches: false);
        Assert.Equal(ruler.Counts.Length, layout.Counts.Length);
        Assert.All(layout.Counts, c => Assert.InRange(c.X, 0, layout.Width));
        Assert.All(layout.Sizes, s => Assert.InRange(s.X, 0, layout.Width));
        Assert.Equal(
            (ruler.Sizes[^1].Target - ruler.Sizes[0].Target).Centimetres * scale, layout.Sizes[^1].X - layout.Sizes[0].X, 1e-6);
        Assert.All(layout.Sizes, s => Assert.Equal(layout.X(s.Size.Choice!.Finished), s.Foot));
        // A count lies where the wished rounds of its edging bring it; a size's own rounds may move it on from there.
        Assert.All(layout.Sizes, s => Assert.Contains(layout.Counts, c => c.Serves && c.Count.Stitches == s.Size.Choice!.Front));
    }

    [Fact]
    public void The_count_in_hand_always_has_its_picture()
    {
        foreach (var count in Up.Counts)
        {
            var layout = FitRulerLayout.Of(Up, 3, inches: false, count);
            Assert.True(layout.Counts.Single(c => ReferenceEquals(c.Count, count)).HasPicture);
        }
    }

    [Theory]
    [InlineData(Direction.Up, 320)]
    [InlineData(Direction.Up, 780)]
    [InlineData(Direction.Sideways, 320)]
    [InlineData(Direction.Sideways, 780)]
    public void All_sizes_fit_into_the_window(Direction direction, double width)
    {
        var ruler = Of(direction);
        var layout = FitRulerLayout.Of(ruler, FitRulerLayout.ScaleFor(ruler, width), inches: false);
        var left = layout.ScrollTo(ruler, width);
        Assert.All(layout.Sizes, s => Assert.InRange(s.X, left, left + width));
        Assert.All(layout.Sizes, s => Assert.InRange(s.Foot!.Value, left, left + width));
    }

    [Fact]
    public void Inches_have_marks_of_their_own()
    {
        var inches = FitRulerLayout.Of(Up, 10, inches: true).Ticks.Where(t => t.Label is not null).ToArray();
        Assert.Equal((double.Parse(inches[1].Label!) - double.Parse(inches[0].Label!)) * 25.4, inches[1].X - inches[0].X, 1e-6);
    }

    [Fact]
    public void A_pulled_line_finds_the_nearest_count()
    {
        var layout = FitRulerLayout.Of(Up, 10, inches: false);
        Assert.All(layout.Counts, c => Assert.Equal(c.X, layout.NearestTo(c.X + 0.4)!.X));
    }
}
