using System.Globalization;
using System.Text.RegularExpressions;
using Dyepath.Core.Garments;
using Dyepath.Core.Motifs;
using Dyepath.Workspace.Fit;

namespace Dyepath.Workspace.Tests.Fit;

public sealed partial class YarnMapLayoutTests
{
    private static YarnMapLayout Demo() => YarnMapLayout.Of(FitBench.Ruler(Direction.Sideways), MotifKind.Argyle)!;

    /// <summary>Every place of the map is drawn once.</summary>
    [Fact]
    public void Zones_cover_the_map_once()
    {
        var map = Demo();
        var area = map.Zones.Sum(z => Boxes().Matches(z.Path).Sum(m => double.Parse(m.Groups["low"].Value, CultureInfo.InvariantCulture) - double.Parse(m.Groups["high"].Value, CultureInfo.InvariantCulture)));
        Assert.Equal(map.Wide * YarnMapLayout.Height, area, map.Wide * YarnMapLayout.Height * 1e-3);
    }

    /// <summary>The counts that the ruler offers are islands that the plan's own yarn lies in, and hold as far as each forgives.</summary>
    [Fact]
    public void What_the_ruler_offers_lies_on_islands()
    {
        var ruler = FitBench.Ruler(Direction.Sideways);
        var map = YarnMapLayout.Of(ruler, MotifKind.Argyle)!;
        var islands = map.Islands.ToDictionary(p => p.Stitches, p => p.Stretch);
        var plain = ruler.Counts.Where(c => c.RowStitches.Length == 1 && c.Task == CountTask.None).ToArray();
        Assert.NotEmpty(plain);
        foreach (var count in plain)
        {
            Assert.True(islands[count.Stitches].Has(0), $"{count.Stitches}");
            Assert.Equal(count.Forgives.Looser, Math.Min(islands[count.Stitches].To, count.Forgives.Looser), 5);
            Assert.Contains("argyle diamonds", map.Say(count.Stitches, 0), StringComparison.Ordinal);
        }
        Assert.Equal(ruler.Sizes.Select(s => s.Choice!.Front).Distinct().Order(), map.Sizes.Select(s => s.Stitches));
    }

    [Fact]
    public void A_place_is_said_in_words_tighter_below_and_looser_above()
    {
        var map = Demo();
        var at = map.Sizes[0].Stitches;
        Assert.StartsWith($"{at} stitches, yarn per stitch as in your swatch: argyle diamonds, ", map.Say(at, 0), StringComparison.Ordinal);
        Assert.StartsWith($"{at} stitches, yarn per stitch 2 % tighter than your swatch's: ", map.Say(at, -0.02), StringComparison.Ordinal);
        Assert.StartsWith($"{at} stitches, yarn per stitch 1.5 % looser than your swatch's: ", map.Say(at, 0.015), StringComparison.Ordinal);
        Assert.Matches("; so from [0-9.]+ % tighter to [0-9.]+ % looser\\.$", map.Say(at, 0));
        Assert.True(YarnMapLayout.Y(0.02) < YarnMapLayout.Y(0) && YarnMapLayout.Y(0) < YarnMapLayout.Y(-0.02));
        Assert.Equal(0.5, map.X(map.From));
    }

    [GeneratedRegex("M[0-9]+ (?<high>[0-9.]+)h1V(?<low>[0-9.]+)h-1z")]
    private static partial Regex Boxes();
}
