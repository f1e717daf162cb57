using Dyepath.Core.Booklets;
using Dyepath.Core.Instructions;
using Dyepath.Core.Sizing;
using Dyepath.Core.Tests.Garments;

namespace Dyepath.Core.Tests.Instructions;

/// <summary>What single sections say.</summary>
public class SectionTests
{
    [Fact]
    public void Cautions_are_those_of_the_wearers_chart()
    {
        var (adult, child, anyone) = (Text("tunic"), Text("child's pullover"), Text("blanket"));
        foreach (var rule in SafetyRules.All)
        {
            var isAdvice = rule.Rule == "advice";
            Assert.Equal((rule.For & Wearers.Adult) != 0, Says(adult, rule.Limit));
            Assert.Equal((rule.For & Wearers.Child) != 0, Says(child, rule.Limit));
            Assert.Equal(isAdvice, Says(anyone, rule.Limit));
        }
        Assert.True(Says(child, SafetyRules.Disclaimer));
        Assert.False(Says(adult, SafetyRules.Disclaimer));
    }

    [Fact]
    public void Pick_ups_that_differ_by_a_remainder_are_one_list_and_a_single_size_says_its_own()
    {
        Assert.True(Says(
            Text("tunic"),
            "18 (19, 21, 23, 25, 27, 29, 31, 33) times, then 0 (0, 0, 0, 0, 2, 0, 0, 0) in the last 0 (0, 0, 0, 0, 2, 0, 0, 0) row ends"));
        Assert.False(Says(Text("tunic", "XS"), "in the last 0"));
        Assert.True(Says(Text("tunic", "2X"), "27 times, then 2 in the last 2 row ends: 166 in all."));
    }

    [Fact]
    public void Only_sizes_whose_back_is_turned_over_say_so()
    {
        Assert.True(Says(Text("tunic"), "Turn the back over before you sew in sizes L, 3X, 5X:"));
        Assert.True(Says(Text("tunic", "L"), "Turn the back over before you sew:"));
        Assert.False(Says(Text("tunic", "M"), "Turn the back over"));
    }

    /// <summary>Columns of linen in rounds are the same colours in every round, half a pair over in every other.</summary>
    [Fact]
    public void A_chart_of_rounds_that_are_all_alike_still_shows_some()
    {
        var text = Text("linen cowl in rounds");
        Assert.True(Says(text, "After round 8 they begin again as round 1."));
        Assert.True(Says(text, "rounds 1 to 8, then again from round 1"));
    }

    [Fact]
    public void Work_in_rounds_speaks_of_rounds_and_of_half_a_pair()
    {
        var text = Text("linen spiral cowl");
        Assert.True(Says(text, "Round 1 of a piece begins"));
        Assert.True(Says(text, "the same number of pairs whenever it comes"));
        Assert.True(Says(text, "each colour begins half a pair earlier than it did in the round below"));
    }

    private static string Text(string name, string? size = null)
    {
        var plan = Patterns.Named(name).Planned();
        var text = TextBooklet.Write(PatternWriter.Write(plan), plan.Project.Edition with { Size = size });
        return string.Join(' ', text.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
    }

    private static bool Says(string text, string words) => text.Contains(words, StringComparison.Ordinal);
}
