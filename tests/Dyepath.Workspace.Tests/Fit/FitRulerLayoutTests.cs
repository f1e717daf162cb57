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

    /// <summary>The sheet leaves room for a name at either end, and no more.</summary>
    [Theory]
    [MemberData(nameof(Scales))]
    public void Both_ends_have_the_same_room(Direction direction, double scale)
    {
        var ruler = Of(direction);
        var layout = FitRulerLayout.Of(ruler, scale, inches: false);
        double[] places = [.. layout.Counts.Select(c => c.X), .. layout.Sizes.Select(s => s.X)];
        Assert.Equal(places.Min(), layout.Width - places.Max(), 1e-6);
        Assert.InRange(places.Min(), 40, 50);
        Assert.All(layout.Counts, c => Assert.InRange(c.X, c.BandFrom, c.BandTo));
        Assert.All(layout.Counts, c => Assert.Equal(
            (Math.Max(0, layout.X(c.Count.HoldsFrom)), Math.Min(layout.Width, layout.X(c.Count.HoldsTo))), (c.BandFrom, c.BandTo)));
        Assert.Equal(layout.Sizes.Max(s => s.Lane) + 1, layout.SizeLanes);
        Assert.Equal(layout.Counts.Max(c => c.BandLane) + 1, layout.BandLanes);
        Assert.Equal(ruler.Sizes.Select(s => s.Name), layout.Sizes.Select(s => s.Size.Name));
        Assert.Equal(Enumerable.Range(0, ruler.Sizes.Length), layout.Sizes.Select(s => s.Index));
    }

    /// <summary>The finest numbers that stand 52 pixels apart, with marks between them that stand 7 apart.</summary>
    [Theory]
    [InlineData(120, 0.5, 0.25)]
    [InlineData(52, 1, 0.25)]
    [InlineData(51.9, 2, 0.25)]
    [InlineData(11.5, 5, 1)]
    [InlineData(7, 10, 1)]
    [InlineData(3, 20, 5)]
    public void Numbers_stand_as_close_as_they_can_be_read(double scale, double numbers, double marks)
    {
        var layout = FitRulerLayout.Of(Up, scale, inches: false);
        var labels = layout.Ticks.Where(t => t.Label is not null).ToArray();
        Assert.All(labels, t => Assert.Equal(0, double.Parse(t.Label!, System.Globalization.CultureInfo.InvariantCulture) % numbers, 1e-9));
        Assert.All(labels.Zip(labels.Skip(1)), p => Assert.Equal(numbers * scale, p.Second.X - p.First.X, 1e-6));
        Assert.All(layout.Ticks.Zip(layout.Ticks.Skip(1)), p => Assert.Equal(marks * scale, p.Second.X - p.First.X, 1e-6));
        Assert.All(labels, t => Assert.Equal(
            layout.X(Core.Quantities.Length.FromCentimetres(double.Parse(t.Label!, System.Globalization.CultureInfo.InvariantCulture))), t.X, 1e-6));
    }

    /// <summary>All sizes fill the window, and stand in its middle.</summary>
    [Theory]
    [InlineData(Direction.Up)]
    [InlineData(Direction.Sideways)]
    public void A_window_is_filled_and_the_sizes_are_in_its_middle(Direction direction)
    {
        var ruler = Of(direction);
        const double width = 900;
        var scale = FitRulerLayout.ScaleFor(ruler, width);
        double[] all = [.. ruler.Sizes.Select(s => s.Target.Centimetres), .. ruler.Sizes.Select(s => s.Choice!.Finished.Centimetres)];
        Assert.Equal(Math.Min(FitRulerLayout.ClosestFit, (width - 88) / (all.Max() - all.Min())), scale, 1e-9);
        var layout = FitRulerLayout.Of(ruler, scale, inches: false);
        var middle = layout.X(Core.Quantities.Length.FromCentimetres((all.Min() + all.Max()) / 2));
        Assert.Equal(Math.Max(0, middle - width / 2), layout.ScrollTo(ruler, width), 1e-6);
        Assert.Equal(middle - 50, layout.ScrollTo(ruler, 100), 1e-6);
        Assert.Equal((FitRulerLayout.Widest, FitRulerLayout.ClosestFit), (FitRulerLayout.ScaleFor(ruler, 90), FitRulerLayout.ScaleFor(ruler, 99_999)));
    }

    /// <summary>The room at either end is 44 pixels, which half of the longest name does not fill.</summary>
    [Fact]
    public void Measures_of_the_sheet_are_what_a_page_is_drawn_by()
    {
        Assert.Equal((72.0, 120.0, 60.0, 3.0), (FitRulerLayout.PictureSide, FitRulerLayout.Closest, FitRulerLayout.ClosestFit, FitRulerLayout.Widest));
        Assert.Equal([20, 20, 25, 60], new[] { "M", "XL", "XXL", "One size 2" }.Select(FitRulerLayout.HalfName));
        foreach (var direction in Enum.GetValues<Direction>())
        {
            var layout = FitRulerLayout.Of(Of(direction), 10, inches: false);
            Assert.Equal(44, layout.Counts.Select(c => c.X).Concat(layout.Sizes.Select(s => s.X)).Min(), 1e-6);
        }
    }

    /// <summary>Every name and band is in the first lane in which it has room: 4 pixels between names, 2 between bands.</summary>
    [Theory]
    [MemberData(nameof(Scales))]
    public void Lanes_are_filled_from_the_first(Direction direction, double scale)
    {
        var layout = FitRulerLayout.Of(Of(direction), scale, inches: false);
        First([.. layout.Sizes.OrderBy(s => s.X).Select(s => (s.X - FitRulerLayout.HalfName(s.Size.Name), s.X + FitRulerLayout.HalfName(s.Size.Name), s.Lane))], 4);
        First([.. layout.Counts.Select(c => (c.BandFrom, c.BandTo, c.BandLane))], 2);
        Assert.Equal(layout.Counts.Select(c => c.Count.Finished).Order(), layout.Counts.Select(c => c.Count.Finished));

        static void First((double From, double To, int Lane)[] put, double between)
        {
            for (var i = 0; i < put.Length; i++)
            {
                var lane = 0;
                while (put[..i].Any(p => p.Lane == lane && p.To + between > put[i].From))
                    lane++;
                Assert.Equal(lane, put[i].Lane);
            }
        }
    }

    /// <summary>Who has no name or picture stands too near to one that comes first: the one in hand, those that serve, those near to a size.</summary>
    [Theory]
    [MemberData(nameof(Scales))]
    public void Names_and_pictures_go_to_the_counts_that_matter_most(Direction direction, double scale)
    {
        var ruler = Of(direction);
        var inHand = ruler.Counts[ruler.Counts.Length / 3];
        var layout = FitRulerLayout.Of(ruler, scale, inches: false, inHand);
        double Away(CountMark c) => ruler.Sizes.Min(s => Math.Abs((s.Target - c.Count.Finished).Centimetres));
        bool Before(CountMark a, CountMark b) => ReferenceEquals(a.Count, inHand)
            || (!ReferenceEquals(b.Count, inHand) && (a.Serves, b.Serves) switch { (true, false) => true, (false, true) => false, _ => Away(a) <= Away(b) + 1e-9 });
        Assert.All(layout.Counts.Where(c => !c.HasName), c => Assert.Contains(layout.Counts, o => o.HasName && Math.Abs(o.X - c.X) < 34 && Before(o, c)));
        Assert.All(layout.Counts.Where(c => c is { HasName: true, HasPicture: false }), c => Assert.Contains(layout.Counts, o => o.HasPicture && Math.Abs(o.X - c.X) < 80 && Before(o, c)));
        Assert.All(layout.Counts.Where(c => c.HasPicture), c => Assert.True(c.HasName, "a picture has its number"));
        Apart(layout.Counts.Where(c => c.HasName), 34);
        Apart(layout.Counts.Where(c => c.HasPicture), 80);
        Assert.True(layout.Counts.Single(c => ReferenceEquals(c.Count, inHand)).HasName, "what is in hand is named");
        // A count serves where a size is on it, front or back, and alternates as that does.
        Assert.All(layout.Counts, c => Assert.Equal(ruler.Sizes.Any(s => s.Choice is { } o && (o.Front == c.Count.Stitches || o.Back == c.Count.Stitches)
            && o.IsAlternating == (c.Count.RowStitches.Length == 2)), c.Serves));

        static void Apart(IEnumerable<CountMark> marks, double least)
        {
            var sorted = marks.Select(m => m.X).Order().ToArray();
            Assert.All(sorted.Zip(sorted.Skip(1)), p => Assert.True(p.Second - p.First >= least - 1e-9, $"{p}"));
        }
    }

    /// <summary>Far out and close in, and in inches, in which 0.25 is a mark of 6.35 mm.</summary>
    [Theory]
    [InlineData(1.1, false, 50, 10)]
    [InlineData(0.6, false, 100, 20)]
    [InlineData(0.3, false, 100, 50)]
    [InlineData(208, false, 0.25, 0.25)]
    [InlineData(20.5, true, 1, 0.25)]
    [InlineData(20.4, true, 2, 0.25)]
    [InlineData(11, true, 2, 0.5)]
    [InlineData(3, true, 10, 1)]
    public void Other_scales_have_their_numbers_too(double scale, bool inches, double numbers, double marks)
    {
        var layout = FitRulerLayout.Of(Up, scale, inches);
        var unit = inches ? 2.54 : 1;
        Assert.All(layout.Ticks.Zip(layout.Ticks.Skip(1)), p => Assert.Equal(marks * unit * scale, p.Second.X - p.First.X, 1e-6));
        Assert.InRange(layout.Ticks[0].X, 0, marks * unit * scale);
        Assert.InRange(layout.Width - layout.Ticks[^1].X, 0, marks * unit * scale);
        var labels = layout.Ticks.Where(t => t.Label is not null).Select(t => (double.Parse(t.Label!, System.Globalization.CultureInfo.InvariantCulture), t.X)).ToArray();
        Assert.All(labels, l => Assert.Equal(layout.X(Core.Quantities.Length.FromCentimetres(l.Item1 * unit)), l.X, 1e-6));
        Assert.All(labels, l => Assert.Equal(0, l.Item1 / numbers - Math.Round(l.Item1 / numbers), 1e-9));
        var low = -layout.X(Core.Quantities.Length.Zero) / scale / unit;
        var high = low + layout.Width / scale / unit;
        Assert.Equal(Math.Floor(high / numbers + 1e-9) - Math.Ceiling(low / numbers - 1e-9) + 1, labels.Length);
    }
}
