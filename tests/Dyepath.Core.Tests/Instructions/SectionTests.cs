using Dyepath.Core.Booklets;
using Dyepath.Core.Edgings;
using Dyepath.Core.Garments;
using Dyepath.Core.Instructions;
using Dyepath.Core.Sizing;
using Dyepath.Core.Tests.Constructions;
using Dyepath.Core.Tests.Garments;

namespace Dyepath.Core.Tests.Instructions;

/// <summary>What single sections say.</summary>
public class SectionTests
{
    [Fact]
    public void Cautions_are_those_of_the_wearers_chart()
    {
        var (adult, child, blanket, cowl) = (Text("tunic"), Text("child's pullover"), Text("blanket"), Text("spiral cowl"));
        foreach (var rule in SafetyRules.All)
        {
            Assert.Equal((rule.For & Wearers.Adult) != 0, Says(adult, rule.Limit));
            // A pullover without buttons, cords or sleepers.
            Assert.Equal((rule.For & Wearers.Child) != 0 && rule.About != SafetyParts.Buttons && !rule.OfCords && !rule.OfSleepwear, Says(child, rule.Limit));
            Assert.Equal(rule.For == Wearers.Everyone, Says(cowl, rule.Limit));
        }
        Assert.True(Says(blanket, "If it is made for a baby, as for babies' garments: "));
        Assert.False(Says(blanket, "sleepwear"));
        Assert.All([adult, child, blanket, cowl], text => Assert.True(Says(text, "Dye: soak a strand") && Says(text, "Hands: pause every")));
        Assert.True(Says(child, "Sleepwear: crochet is open and loose"));
        Assert.True(Says(child, "Cords: this pattern has none; add none."));
        Assert.False(Says(child, "hood"));
        Assert.False(Says(adult, "Cords: this pattern"));
        var corded = Patterns.Named("child's pullover").With(g => g with { Edgings = [new(EdgingPlace.Hem, "drawstring", null)] }).Planned();
        var told = GarmentTrials.Text(corded);
        Assert.True(Says(told, "Drawstrings at waist and bottom of upper outerwear, sizes 2T to 16"));
        Assert.True(Says(told, "Rules for children's garments, as far as they touch this one."));
        Assert.True(Says(told, SafetyRules.Disclaimer));
        Assert.False(Says(told, "Cords: this pattern"));
        Assert.False(Says(adult, SafetyRules.Disclaimer));
    }

    [Fact]
    public void Pick_ups_that_differ_by_a_remainder_are_one_list_and_a_single_size_says_its_own()
    {
        Assert.True(Says(
            Text("tunic"),
            "18 (19, 21, 23, 25, 27, 29, 31, 33) times, then – (–, –, –, –, 2, –, –, –) in the last – (–, –, –, –, 2, –, –, –) row ends"));
        Assert.True(Says(Text("tunic"), "A dash (–) stands where a size has none."));
        Assert.False(Says(Text("tunic", "XS"), "in the last"));
        Assert.False(Says(Text("tunic", "XS"), "A dash"));
        Assert.True(Says(Text("tunic", "2X"), "27 times, then 2 in the last 2 row ends = 83 - 166 in all."));
    }

    [Fact]
    public void Only_sizes_whose_back_is_turned_over_say_so()
    {
        Assert.True(Says(Text("continued seams"), "Turn the back over before you sew in sizes L, 3X, 5X:"));
        Assert.True(Says(Text("continued seams", "L"), "Turn the back over before you sew:"));
        Assert.False(Says(Text("continued seams", "M"), "Turn the back over"));
        Assert.True(Says(Text("tunic"), "Turn the back over before you sew:"));
    }

    /// <summary>The words, the charts and the row tables agree on which side of a piece that is turned over will be seen.</summary>
    [Fact]
    public void What_is_turned_over_says_so_where_it_is_worked_and_beside_its_chart()
    {
        var text = Text("continued seams");
        Assert.True(Says(text, "Outside: the side that faces you in odd (odd, odd, even, odd, odd, even, odd, even)-numbered rows, once it is sewn."));
        Assert.True(Says(text, "Turned over in L, 3X, 5X: back. What this chart and this table call the right side is inside there;")
            || (Says(text, "Turned over in L: back.") && Says(text, "back. What this chart")));
        Assert.True(Says(text, "of a piece that is turned over it comes to lie inside, as stands beside its chart."));
        Assert.True(Says(Text("continued seams", "L"), "Outside: the side that faces you in even-numbered rows, once it is sewn."));
        Assert.False(Says(Text("continued seams", "M"), "Turned over"));
        Assert.False(Says(Text("plain sleeves", "M"), "Turned over in"));
        Assert.False(Says(Text("spiral cowl"), "turned over"));
    }

    [Fact]
    public void Measures_that_the_document_gives_once_are_said_to_be_the_same_in_every_size()
    {
        var plan = TestProjects.Tideline.Planned();
        var alike = plan.Sizes.All(s => s.Target[GarmentMeasure.SleeveLength] == plan.Sizes[0].Target[GarmentMeasure.SleeveLength]);
        Assert.False(alike);
        var dress = Dyepath.Core.Projects.StarterDocument.Of(Dyepath.Core.Constructions.Repertoire.All.Single(k => k.Name == "off-shoulder-dress")).Planned();
        var text = string.Join(' ', TextBooklet.Write(PatternWriter.Write(dress), dress.Project.Edition).Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
        Assert.Contains("The same in every size, as planned: length", text, StringComparison.Ordinal);
        Assert.DoesNotContain("The same in every size", Text("tunic"), StringComparison.Ordinal);
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
