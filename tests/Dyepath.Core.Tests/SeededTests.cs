using CsCheck;
using Xunit.Sdk;

namespace Dyepath.Core.Tests;

public sealed class SeededTests
{
    private static readonly Gen<int> Digits = Gen.Int[0, 9];

    [Fact]
    public void A_seed_gives_the_same_values_in_every_run()
    {
        // Recorded from this program: a guard against values that come from the clock.
        Assert.Equal([0, 6, 2, 1, 7], Drawn(7)[..5]);
        Assert.Equal(Drawn(7), Drawn(7));
        Assert.NotEqual(Drawn(7), Drawn(8));
    }

    [Fact]
    public void A_law_that_gives_false_is_told_with_seed_case_and_value()
    {
        var (broken, place) = (Drawn(7).First(d => d > 4), Drawn(7).FindIndex(d => d > 4));
        var told = Assert.Throws<XunitException>(() => Digits.Holds(d => d <= 4, seed: 7, cases: 20));
        Assert.StartsWith($"Seed 7, case {place} breaks the law: {broken}", told.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_law_that_throws_is_told_the_same_way_with_what_it_threw()
    {
        var thrown = new InvalidOperationException("odd");
        var told = Assert.Throws<XunitException>(() => Gen.Select(Digits, Digits).Holds(
            (one, other) => { if ((one + other) % 2 == 1) throw thrown; }, seed: 7, cases: 20));
        Assert.Matches(@"^Seed 7, case \d+ breaks the law: \(\d, \d\)", told.Message);
        Assert.Same(thrown, told.InnerException);
    }

    [Fact]
    public void A_law_without_cases_is_refused() =>
        Assert.Throws<ArgumentOutOfRangeException>("cases", () => Digits.Holds(_ => true, seed: 7, cases: 0));

    private static List<int> Drawn(ulong seed)
    {
        List<int> drawn = [];
        Digits.Holds(drawn.Add, seed, cases: 20);
        return drawn;
    }
}
