using Dyepath.Core.Measuring;
using Dyepath.Core.Yarns;
using Dyepath.Workspace.Yarn;

namespace Dyepath.Workspace.Tests.Yarn;

public class CountWordsTests
{
    private static readonly string[] Names = ["deep water", "foam", "kelp"];

    private static SectionCounting Section(int at, CountingVerdict verdict, int more = 0, bool either = false) =>
        new(at, 4, 0.814, verdict, more, either);

    [Fact]
    public void The_longest_counting_is_asked_for_once() => Assert.Equal(
        "Count 7 more repeats to be sure of foam and kelp.",
        CountWords.ForCountedWork(
            [Section(0, CountingVerdict.Enough), Section(1, CountingVerdict.CountMore, 3), Section(2, CountingVerdict.CountMore, 7)], Names));

    [Fact]
    public void Enough_is_said_even_where_either_serves() => Assert.Equal(
        "Enough is counted: every colour's whole number is sure. Kelp lies so near a half that either whole number asks the same of your hands.",
        CountWords.ForCountedWork([Section(0, CountingVerdict.Enough), Section(2, CountingVerdict.Enough, either: true)], Names));

    [Fact]
    public void A_section_says_how_sure_it_is() =>
        Assert.Equal("4, 81 in 100 sure; 1 more repeat would tell", CountWords.Of(Section(1, CountingVerdict.CountMore, 1)));

    [Fact]
    public void Nothing_counted_asks_for_a_first_count() => Assert.Equal("Count two or three repeats first.", CountWords.ForCountedWork([], Names));

    [Theory]
    [InlineData(CountingVerdict.Enough, 0, false, "4, sure")]
    [InlineData(CountingVerdict.Enough, 0, true, "4, or its neighbour: either serves")]
    [InlineData(CountingVerdict.CountMore, 5, false, "4, 81 in 100 sure; 5 more repeats would tell")]
    [InlineData(CountingVerdict.AnotherIsNearer, 0, false, "4 is meant, another is nearer")]
    [InlineData(CountingVerdict.NotByCounting, 0, false, "4, 81 in 100 sure; counting will not tell")]
    public void Every_verdict_of_a_section_has_its_words(CountingVerdict verdict, int more, bool either, string words) =>
        Assert.Equal(words, CountWords.Of(Section(1, verdict, more, either)));

    [Fact]
    public void What_counting_settles_and_what_it_does_not_are_said_one_after_another()
    {
        Assert.Equal(
            "Count 3 more repeats to be sure of deep water. "
            + "No counting that anyone does will settle foam: choose, and let your hands do the rest. "
            + "The counts speak for other whole numbers than those meant of kelp: see the Swatch page.",
            CountWords.ForCountedWork(
                [Section(0, CountingVerdict.CountMore, 3), Section(1, CountingVerdict.NotByCounting), Section(2, CountingVerdict.AnotherIsNearer)], Names));
        Assert.Equal(
            "Enough is counted: every colour's whole number is sure. Deep water and foam lie so near a half that either whole number asks the same of your hands.",
            CountWords.ForCountedWork([Section(0, CountingVerdict.Enough, either: true), Section(1, CountingVerdict.Enough, either: true)], Names));
        Assert.Equal(("1 more repeat", "2 more repeats"), (CountWords.Repeats(1), CountWords.Repeats(2)));
    }

    [Theory]
    [InlineData(0, "first ball")]
    [InlineData(1, "second ball")]
    [InlineData(9, "tenth ball")]
    [InlineData(10, "11th ball")]
    public void Balls_are_numbered_in_words(int index, string words) => Assert.Equal(words, CountWords.Ball(index));
}
