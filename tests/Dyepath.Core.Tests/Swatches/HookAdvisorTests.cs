using CsCheck;
using Dyepath.Core.Measuring;
using Dyepath.Core.Quantities;
using Dyepath.Core.Swatches;

namespace Dyepath.Core.Tests.Swatches;

public class HookAdvisorTests
{
    private static readonly double[] Hooks = [3.5, 3.75, 4, 4.5, 5, 5.5, 6, 6.5];

    private static readonly Swatch Swatch = new(
        5, new Gauge(14, 16, Length.FromCentimetres(10)), null, null, [new(100, Length.FromCentimetres(700))]);

    [Fact]
    public void The_exact_optimum_is_never_beaten_by_a_fine_grid_and_equals_its_best() =>
        Gen.Select(Gen.Double[1.2, 14].Array[1, 7], Gen.Double[0.5, 0.98], Gen.Double[1.02, 2]).Holds(
            (natural, least, most) =>
            {
                var best = HookAdvisor.Best(natural, least, most);
                const int steps = 4_000;
                var grid = Enumerable.Range(0, steps + 1).Min(i => Worst(natural, 1 / (1 / most + (1 / least - 1 / most) * i / steps)));

                Assert.InRange(best.YarnFactor, least - 1e-12, most + 1e-12);
                Assert.True(best.Worst <= grid + 1e-12);
                // The slope of any section in 1/yarn is its natural units over its whole ones.
                Assert.True(
                    grid - best.Worst <= (1 / least - 1 / most) / steps * natural.Zip(best.Stitches, (c, n) => c / n).Max() + 1e-12);
                Assert.Equal(Worst(natural, best.YarnFactor), best.Worst, 1e-12);
            },
            seed: 55, cases: 150);

    [Fact]
    public void Sections_that_are_whole_with_another_hook_send_the_maker_there()
    {
        var response = HookResponse.Supposed(Swatch);
        var factor = response.YarnFactor(5.5);
        double[] natural = [5 * factor, 4 * factor, 6 * factor, 7 * factor];

        var advice = HookAdvisor.Advise(natural, Swatch, response, Hooks);

        Assert.Equal(5.5, advice.Advised.Millimetres);
        Assert.Equal([5, 4, 6, 7], advice.Advised.Fit.Stitches);
        Assert.Equal(0, advice.Advised.Fit.Worst, 12);
        Assert.Equal(0, advice.Best.Worst, 9);
        Assert.True(advice.Now.Worst > 0.04);
        Assert.StartsWith("Try a 5.5 mm hook", advice.Words, StringComparison.Ordinal);
    }

    [Fact]
    public void A_hook_that_already_suits_is_kept()
    {
        var advice = HookAdvisor.Advise([5.02, 4, 6.03, 6.98], Swatch, HookResponse.Supposed(Swatch), Hooks);

        Assert.Equal(5, advice.Advised.Millimetres);
        Assert.Equal("The 5 mm hook suits this yarn: no colour asks for more than 0.5 % tighter or looser, and no hook at hand does clearly better.", advice.Words);
        Assert.Equal([4, 4.5, 5, 5.5, 6], advice.Hooks.Select(h => h.Millimetres));
    }

    /// <summary>Nothing is to be gained: there is no figure to say.</summary>
    [Fact]
    public void A_hook_that_suits_wholly_is_said_to_without_figures() => Assert.Equal(
        "The 5 mm hook suits this yarn: every colour comes out whole by itself.",
        HookAdvisor.Advise([5, 4, 6, 7.0001], Swatch, HookResponse.Supposed(Swatch), Hooks).Words);

    [Fact]
    public void Small_hooks_are_not_simply_favoured()
    {
        int smaller = 0, larger = 0;
        Gen.Double[3, 8].Array[4].Holds(
            natural =>
            {
                var advised = HookAdvisor.Advise(natural, Swatch, HookResponse.Supposed(Swatch), Hooks).Advised.Millimetres;
                if (advised < 5)
                    smaller++;
                else if (advised > 5)
                    larger++;
            },
            seed: 56, cases: 4_000);

        // By the largest change alone it would be 1,375 to 752.
        Assert.True(smaller > 500 && larger > 500);
        Assert.InRange((double)smaller / larger, 0.75, 1.33);
    }

    [Fact]
    public void Whole_numbers_change_over_where_both_strain_the_hands_equally() =>
        Gen.Double[0.02, 60].Holds(
            units =>
            {
                var nearest = HookAdvisor.NearestWhole(units);
                var best = Enumerable.Range(1, 70).MinBy(n => Math.Abs(units / n - 1));
                Assert.Equal(Math.Abs(units / best - 1), Math.Abs(units / nearest - 1), 1e-12);
            },
            seed: 57, cases: 2_000);

    [Fact]
    public void Arguments_out_of_range_are_refused_by_name()
    {
        var response = HookResponse.Supposed(Swatch);
        Assert.Throws<ArgumentException>("natural", () => HookAdvisor.Advise([], Swatch, response, Hooks));
        Assert.Throws<ArgumentOutOfRangeException>("natural", () => HookAdvisor.Advise([5, double.NaN], Swatch, response, Hooks));
        Assert.Throws<ArgumentOutOfRangeException>("hooks", () => HookAdvisor.Advise([5], Swatch, response, [0]));
        Assert.Throws<ArgumentOutOfRangeException>("reachMillimetres", () => HookAdvisor.Advise([5], Swatch, response, Hooks, -1));
        Assert.Throws<ArgumentOutOfRangeException>("most", () => HookAdvisor.Best([5], 1, 0.9));
    }

    [Fact]
    public void The_smallest_hooks_and_the_widest_reach_are_answered()
    {
        var fine = Swatch with { HookMillimetres = 0.5 };
        var advice = HookAdvisor.Advise([0.01, 4_000], fine, HookResponse.Supposed(fine, 3), Hooks, 5);

        Assert.Equal(0.5, advice.Advised.Millimetres);
    }

    private static double Worst(double[] natural, double factor) => natural.Max(c =>
    {
        // Any other whole number is farther off on the same side.
        var units = c / factor;
        return Math.Min(Math.Abs(units / Math.Max(1, Math.Floor(units)) - 1), Math.Abs(units / Math.Ceiling(units) - 1));
    });
}
