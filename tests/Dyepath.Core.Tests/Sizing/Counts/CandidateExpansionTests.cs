using System.Collections.Immutable;
using CsCheck;
using Dyepath.Core.Quantities;
using Dyepath.Core.Sizing.Counts;

namespace Dyepath.Core.Tests.Sizing.Counts;

public class CandidateExpansionTests
{
    private static readonly ExpansionRule Rule = new()
    {
        BandStitch = Length.FromCentimetres(0.5),
        MostBandStitches = 2,
        CostOfBands = 1,
        CostPerBandStitch = 0.25,
        MostDifference = 10,
        CostOfDifference = 2,
        CostPerStitchOfDifference = 0.1,
    };

    /// <summary>By hand: 30 and 40 stitches of 1 cm, bands of 1 or 2 half-centimetre stitches on four edges.</summary>
    [Fact]
    public void Known_every_way_to_make_two_panels_says_what_it_costs()
    {
        ImmutableArray<ExpandedCount> made = CandidateExpansion.Build([Panel(30, 4), Panel(40, 0)], Rule);
        Assert.Equal([60, 62, 64, 70, 72, 74, 80, 82, 84], made.Select(c => c.Measure.Centimetres));
        Assert.Equal(new ExpandedCount(30, 30, 0, Length.FromCentimetres(60), 4, 0, 0), made[0]);
        Assert.Equal(new ExpandedCount(40, 30, 2, Length.FromCentimetres(74), 2, 1.5, 3), made[5]);
        Assert.Equal(6.5, made[5].Penalty);
        Assert.Equal(new CountCandidate(Length.FromCentimetres(74), 6.5), made[5].ToCandidate());
    }

    [Fact]
    public void Known_of_equal_measures_the_cheapest_stays()
    {
        ImmutableArray<ExpandedCount> made = CandidateExpansion.Build(
            [Panel(30), Panel(32), Panel(34)], Rule with { MostBandStitches = 0 });
        Assert.Equal([(30, 30), (32, 30), (32, 32), (34, 32), (34, 34)], made.Select(c => (c.FrontStitches, c.BackStitches)));
    }

    [Fact]
    public void Known_measures_outside_the_window_are_left_out()
    {
        ExpansionRule narrow = Rule with { Narrowest = Length.FromCentimetres(62), Widest = Length.FromCentimetres(70) };
        Assert.Equal([62, 64, 70], CandidateExpansion.Build([Panel(30), Panel(40)], narrow).Select(c => c.Measure.Centimetres));
    }

    [Fact]
    public void Law_what_is_pruned_is_dominated_and_what_stays_is_not() =>
        Gen.Select(Gen.Int[1, 40].Array[1, 6], Gen.Int[0, 3], Gen.Int[0, 12], Gen.Int[0, 20]).Holds(
            (stitches, bands, difference, resolution) =>
            {
                ImmutableArray<PanelCount> panels = [.. stitches.Distinct().Select(n => Panel(n, n % 3))];
                ExpansionRule rule = Rule with
                {
                    MostBandStitches = bands,
                    MostDifference = difference,
                    Resolution = Length.FromMillimetres(resolution),
                };
                ImmutableArray<ExpandedCount> made = CandidateExpansion.Build(panels, rule);
                foreach (PanelCount front in panels)
                {
                    foreach (PanelCount back in panels.Where(back => front.Stitches >= back.Stitches && front.Stitches - back.Stitches <= difference))
                    {
                        for (int band = 0; band <= bands; band++)
                        {
                            double centimetres = front.Stitches + back.Stitches + 2 * band;
                            double penalty = (front.Penalty + back.Penalty) / 2 + (band > 0 ? 1 + 0.25 * band : 0)
                                + (front.Stitches > back.Stitches ? 2 + 0.1 * (front.Stitches - back.Stitches) : 0);
                            Assert.Contains(made, kept =>
                                Math.Abs(kept.Measure.Centimetres - centimetres) <= resolution / 10.0 && kept.Penalty <= penalty + 1e-9);
                        }
                    }
                }

                Assert.Equal(made.Length, made.Select(kept => kept.Measure).Distinct().Count());
            },
            seed: 0xc1, cases: 300);

    [Fact]
    public void Law_a_wider_choice_never_costs_more()
    {
        ImmutableArray<PanelCount> panels = [.. Enumerable.Range(0, 6).Select(k => Panel(40 + 11 * k, k % 2))];
        ImmutableArray<SizeTarget> sizes = [.. Enumerable.Range(0, 9).Select(s => new SizeTarget(Length.FromCentimetres(85 + 10.3 * s)))];
        ExpansionRule equalOnly = Rule with { MostBandStitches = 0, MostDifference = 0 };
        double[] plain = Objectives(equalOnly), banded = Objectives(equalOnly with { MostBandStitches = 4 }), all = Objectives(Rule with { MostBandStitches = 4, MostDifference = 11 });
        for (int k = 0; k < sizes.Length; k++)
            Assert.True(all[k] <= banded[k] && banded[k] <= plain[k]);
        Assert.True(all[^1] < banded[^1] && banded[^1] < plain[^1]);

        double[] Objectives(ExpansionRule rule) => [.. CountProgram.SolveEach(CountProblem.Create(
            sizes, [.. CandidateExpansion.Build(panels, rule).Select(c => c.ToCandidate())])).Select(r => r.Plan!.Objective)];
    }

    [Fact]
    public void Invalid_arguments_are_named()
    {
        AssertNames("panels", [Panel(30), Panel(30)], Rule);
        AssertNames("panels[0].Stitches", [Panel(0)], Rule);
        AssertNames("panels[0].Measure", [new PanelCount(5, Length.Zero)], Rule);
        AssertNames("panels[0].Penalty", [Panel(5, double.NaN)], Rule);
        AssertNames("BandStitch", [Panel(5)], Rule with { BandStitch = Length.Zero });
        AssertNames("MostBandStitches", [Panel(5)], Rule with { MostBandStitches = 101 });
        AssertNames("CostOfBands", [Panel(5)], Rule with { CostOfBands = -1 });
        AssertNames("MostDifference", [Panel(5)], Rule with { MostDifference = -1 });
        AssertNames("Resolution", [Panel(5)], Rule with { Resolution = Length.FromCentimetres(-1) });
    }

    [Fact]
    public void Extreme_no_panels_and_a_thousand_panels()
    {
        Assert.Empty(CandidateExpansion.Build([], Rule));
        ImmutableArray<ExpandedCount> made = CandidateExpansion.Build(
            [.. Enumerable.Range(1, 1000).Select(n => Panel(n))], Rule with { MostBandStitches = 0 });
        Assert.Equal(1999, made.Length);
    }

    private static PanelCount Panel(int stitches, double penalty = 0) => new(stitches, Length.FromCentimetres(stitches), penalty);

    private static void AssertNames(string name, ImmutableArray<PanelCount> panels, ExpansionRule rule) => Assert.Contains(
        name,
        Assert.ThrowsAny<ArgumentException>(() => CandidateExpansion.Build(panels, rule)).ParamName,
        StringComparison.Ordinal);
}
