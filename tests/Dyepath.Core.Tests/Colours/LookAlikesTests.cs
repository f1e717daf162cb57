using System.Collections.Immutable;
using CsCheck;
using Dyepath.Core.Colours;

namespace Dyepath.Core.Tests.Colours;

public sealed class LookAlikesTests
{
    private static readonly NamedColour Teal = new("teal", Srgb.Parse("#2a9d8f"));
    private static readonly NamedColour SeaGreen = new("sea green", Srgb.Parse("#2e9f90"));
    private static readonly NamedColour Sand = new("sand", Srgb.Parse("#e9d8a6"));
    private static readonly NamedColour Navy = new("navy", Srgb.Parse("#14213d"));

    [Fact]
    public void Nearly_equal_neighbours_are_named_once_under_normal_eyes()
    {
        var found = Assert.Single(LookAlikes.Find([Teal, SeaGreen, Sand, Navy], LookAlikeLimits.Default));
        Assert.Equal((Teal, SeaGreen, Viewing.Normal, true), (found.First, found.Second, found.Viewing, found.Adjacent));
        Assert.Equal(ColourDifference.DeltaE2000(Teal.Colour.ToLab(), SeaGreen.Colour.ToLab()), found.Difference);
    }

    [Fact]
    public void The_last_of_the_ring_meets_the_first_and_opposite_ones_do_not()
    {
        Assert.True(LookAlikes.Find([Teal, Sand, Navy, SeaGreen], LookAlikeLimits.Default).Single().Adjacent);
        Assert.False(LookAlikes.Find([Teal, Sand, SeaGreen, Navy], LookAlikeLimits.Default).Single().Adjacent);
    }

    [Fact]
    public void A_colour_that_comes_twice_is_not_compared_with_itself_but_its_neighbours_count_at_both_places()
    {
        Assert.Empty(LookAlikes.Find([Sand, Navy, Sand, Teal], LookAlikeLimits.Default));
        Assert.True(LookAlikes.Find([Teal, Navy, Sand, SeaGreen, Teal, Navy], LookAlikeLimits.Default).Single().Adjacent);
    }

    [Fact]
    public void Equal_colours_under_two_names_are_told()
    {
        var twin = Teal with { Name = "lagoon" };
        Assert.Equal(0, LookAlikes.Find([Teal, twin, Sand], LookAlikeLimits.Default).Single().Difference);
    }

    [Fact]
    public void Red_and_green_of_one_lightness_are_told_for_the_eyes_that_confuse_them()
    {
        var rust = new NamedColour("rust", Srgb.Parse("#a5673f"));
        var moss = new NamedColour("moss", Srgb.Parse("#7c7a3e"));
        var viewings = LookAlikes.Find([rust, moss], LookAlikeLimits.Default).Select(found => found.Viewing).ToArray();
        Assert.Contains(Viewing.Deutan, viewings);
        Assert.DoesNotContain(Viewing.Normal, viewings);
        Assert.DoesNotContain(Viewing.Tritan, viewings);
    }

    [Fact]
    public void A_black_and_white_print_sees_lightness_alone()
    {
        // CIELAB lightness of #c86432 is 53.63, of #2a9d8f 58.59 (golden table): under the default limit in grey only.
        var found = Assert.Single(LookAlikes.Find([new("brick", Srgb.Parse("#c86432")), Teal], LookAlikeLimits.Default));
        Assert.Equal(Viewing.Grey, found.Viewing);
        var expected = ColourDifference.DeltaE2000(Lab.FromComponents(53.627723, 0, 0), Lab.FromComponents(58.591184, 0, 0));
        Assert.Equal(expected, found.Difference, 1e-3);
    }

    [Fact]
    public void Distance_along_the_ring_chooses_the_limit()
    {
        var difference = LookAlikes.Difference(Teal.Colour, SeaGreen.Colour, Viewing.Normal);
        var strictApart = new LookAlikeLimits(adjacent: difference / 2, apart: difference * 2);
        Assert.DoesNotContain(LookAlikes.Find([Teal, SeaGreen, Sand, Navy], strictApart), found => found.Viewing == Viewing.Normal);
        Assert.Contains(LookAlikes.Find([Teal, Sand, SeaGreen, Navy], strictApart), found => found.Viewing == Viewing.Normal);
    }

    [Fact]
    public void Findings_are_sorted_below_their_limit_and_no_pair_is_named_twice_for_the_same_eyes() =>
        SrgbTests.Any.Array[0, 12].Holds(colours =>
        {
            var ring = colours.Select((colour, i) => new NamedColour($"c{i}", colour)).ToImmutableArray();
            var limits = new LookAlikeLimits(15, 20);
            var found = LookAlikes.Find(ring, limits);
            Assert.Equal(found.Length, found.Select(f => (f.First, f.Second, f.Viewing)).Distinct().Count());
            Assert.All(found, f => Assert.True(f.Difference < (f.Adjacent ? 15 : 20)));
            Assert.Equal(found.Select(f => (f.Viewing, f.Difference)).Order(), found.Select(f => (f.Viewing, f.Difference)));
            var normal = found.Where(f => f.Viewing == Viewing.Normal).Select(f => (f.First, f.Second)).ToHashSet();
            Assert.DoesNotContain(found, f => f.Viewing != Viewing.Normal && normal.Contains((f.First, f.Second)));
        }, seed: 7, cases: 100);

    [Fact]
    public void Comparing_every_pair_by_hand_finds_the_same() =>
        SrgbTests.Any.Array[3, 9].Holds(colours =>
        {
            var ring = colours.Select((colour, i) => new NamedColour($"c{i}", colour)).ToImmutableArray();
            var expected = new List<(string, string, Viewing, bool)>();
            for (var i = 0; i < ring.Length; i++)
            {
                for (var j = i + 1; j < ring.Length; j++)
                {
                    var adjacent = j == i + 1 || (i == 0 && j == ring.Length - 1);
                    var seen = Enum.GetValues<Viewing>()
                        .Where(viewing => LookAlikes.Difference(ring[i].Colour, ring[j].Colour, viewing) < (adjacent ? 12 : 18)).ToArray();
                    var told = seen is [Viewing.Normal, ..] ? seen[..1] : seen;
                    expected.AddRange(told.Select(viewing => (ring[i].Name, ring[j].Name, viewing, adjacent)));
                }
            }
            var found = LookAlikes.Find(ring, new LookAlikeLimits(12, 18));
            Assert.Equal(expected.Order(), found.Select(f => (f.First.Name, f.Second.Name, f.Viewing, f.Adjacent)).Order());
        }, seed: 10, cases: 100);

    [Fact]
    public void Empty_and_single_rings_have_nothing_to_confuse()
    {
        Assert.Empty(LookAlikes.Find([], LookAlikeLimits.Default));
        Assert.Empty(LookAlikes.Find([Teal], LookAlikeLimits.Default));
    }

    [Fact]
    public void Limits_that_are_not_differences_are_refused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => new LookAlikeLimits(-1, 8));
        Assert.Throws<ArgumentOutOfRangeException>(() => new LookAlikeLimits(6, double.NaN));
    }
}
