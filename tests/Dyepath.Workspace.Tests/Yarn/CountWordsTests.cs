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
}
