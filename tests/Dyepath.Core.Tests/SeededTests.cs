using System.Text.RegularExpressions;
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
    public void A_law_that_gives_false_is_told_with_seed_and_case_and_the_smallest_value()
    {
        var place = Drawn(7).FindIndex(d => d > 4);
        var told = Assert.Throws<XunitException>(() => Digits.Holds(d => d <= 4, seed: 7, cases: 100));
        Assert.StartsWith($"Seed 7, case {place} breaks the law; the smallest like it: ", told.Message, StringComparison.Ordinal);
        Assert.EndsWith("\n5", told.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void The_seed_that_is_told_for_the_smallest_value_gives_it_again()
    {
        var told = Assert.Throws<XunitException>(() => Digits.Holds(d => d <= 4, seed: 7, cases: 100));
        var again = Regex.Match(told.Message, "seed: \"([^\"]+)\"").Groups[1].Value;
        Assert.Equal(5, Digits.Generate(PCG.Parse(again), null, out _));
    }

    [Fact]
    public void A_law_that_throws_is_told_the_same_way_with_what_it_threw()
    {
        var thrown = new InvalidOperationException("odd");
        var told = Assert.Throws<XunitException>(() => Gen.Select(Digits, Digits).Holds(
            (one, other) => { if ((one + other) % 2 == 1) throw thrown; }, seed: 7, cases: 100));
        Assert.Matches(@"^Seed 7, case \d+ breaks the law; the smallest like it: [^\n]+\n\((0, 1|1, 0)\)$", told.Message);
        Assert.Same(thrown, told.InnerException);
    }

    [Fact]
    public void A_law_that_breaks_once_and_not_again_is_told_as_such()
    {
        var calls = 0;
        var told = Assert.Throws<XunitException>(() => Digits.Holds(_ => ++calls != 3, seed: 7, cases: 20));
        Assert.StartsWith("Seed 7, case 2 breaks the law once and not again", told.Message, StringComparison.Ordinal);
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
