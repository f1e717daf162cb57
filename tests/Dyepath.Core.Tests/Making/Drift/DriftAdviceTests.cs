using System.Collections.Immutable;
using CsCheck;
using Dyepath.Core.Making;
using Dyepath.Core.Making.Drift;

namespace Dyepath.Core.Tests.Making.Drift;

public sealed class DriftAdviceTests
{
    private static readonly PlannedPiece Panel = Pieces.Of([5, 4, 6, 7], 83, 72);
    private static readonly ImmutableArray<string> Names = ["sand", "foam", "slate", "rust"];

    [Fact]
    public void Law_advice_stays_within_the_hands_and_brings_the_phase_back()
    {
        var gen = Gen.Select(
            Gen.Int[-3, 3].Array[1, 12], Gen.Int[5, 80], Gen.Double[0.005, 0.05], Gen.Int[0, 5_000], Gen.Double[0.02, 0.1]);
        int corrected = 0;
        gen.Holds(
            (readings, apart, spread, worked, hands) =>
            {
                DriftFilter filter = Told(readings, apart, spread);
                DriftAdvice advice = DriftAdvice.For(filter, new DriftPlace(Panel, worked) { LargestCorrection = hands });
                Assert.InRange(advice.Correction, -hands, hands);
                Assert.InRange(advice.Hold, -hands, hands);
                if (advice.Kind is not (DriftAdviceKind.WorkTighter or DriftAdviceKind.WorkLooser)) return;
                corrected++;
                double after = filter.MeanAfter(advice.Stitches, advice.Correction);
                double left = after - Math.Round(after / 22) * 22;
                // Nulled, unless the hands are at their limit; even then better than holding.
                if (Math.Abs(advice.Correction) < hands - 1e-12) Assert.Equal(0, left, 1e-9);
                else Assert.True(Math.Abs(after) <= Math.Abs(filter.MeanAfter(advice.Stitches, 0)) + 1e-9);
                int end = worked + advice.Stitches;
                if (advice.UntilColour is { } until) Assert.Equal(until, Panel.Colours[end]);
                Assert.True(end == Panel.Stitches || Panel.SectionEnds.Contains(end));
            },
            seed: 41, cases: 1_000);
        Assert.True(corrected > 300);
    }

    [Fact]
    public void On_the_count_she_carries_on()
    {
        DriftAdvice advice = DriftAdvice.For(Told([0, 0, 0], 30, 0.01), new DriftPlace(Panel, 90));
        Assert.Equal((DriftAdviceKind.CarryOn, 0), (advice.Kind, advice.Stitches));
        Assert.Equal("This foam is on the count; carry on.", DriftWords.Say(advice, "foam", Names, 0.06));
    }

    [Theory]
    [InlineData(1, DriftAdviceKind.WorkTighter, "early", "tighter")]
    [InlineData(-1, DriftAdviceKind.WorkLooser, "late", "looser")]
    public void Known_colours_that_come_early_are_worked_tighter(int reading, DriftAdviceKind kind, string way, string how)
    {
        // Early: the stitches before took too much yarn.
        DriftAdvice advice = DriftAdvice.For(Told([reading], 60, 0.02), new DriftPlace(Panel, 83));
        Assert.Equal(kind, advice.Kind);
        string said = DriftWords.Say(advice, "sand", Names, 0.06);
        Assert.StartsWith($"This sand comes one stitch {way}; work the next {advice.Stitches} stitches ", said);
        Assert.EndsWith($"{how}, until {Names[advice.UntilColour!.Value]}.", said);
    }

    [Fact]
    public void Known_what_tension_cannot_reach_is_done_at_the_edge()
    {
        // Ten rows of 12: two stitches off within the last rows is more than hands can do.
        PlannedPiece narrow = Pieces.Of([5, 4, 6, 7], 12, 10);
        var late = new DriftPlace(narrow, 108) { LargestCorrection = 0.02, Turn = 0.5 };
        DriftFilter two = Told([-2], 60, 0.03), early = Told([2], 60, 0.03);
        Assert.Equal(DriftAdviceKind.LoosenTurn, DriftAdvice.For(two, late).Kind);
        Assert.Equal(DriftAdviceKind.TightenTurn, DriftAdvice.For(early, late).Kind);
        Assert.Equal(DriftAdviceKind.AddEdgeStitch, DriftAdvice.For(two, late with { EdgeStitch = true }).Kind);
        Assert.Equal(DriftAdviceKind.SkipEdgeStitch, DriftAdvice.For(early, late with { EdgeStitch = true }).Kind);
        Assert.Equal(DriftAdviceKind.WorkLooser, DriftAdvice.For(two, late with { Turn = 0 }).Kind);
    }

    [Fact]
    public void Known_a_bias_beyond_the_hands_asks_for_another_hook()
    {
        DriftFilter loose = Told([3, 7, 10, 14, 17, 21], 40, 0.01, biasSpread: 0.05);
        Assert.Equal(DriftAdviceKind.HookDown, DriftAdvice.For(loose, new DriftPlace(Panel, 240)).Kind);
        DriftFilter tight = Told([-3, -7, -10, -14, -17, -21], 40, 0.01, biasSpread: 0.05);
        Assert.Equal(DriftAdviceKind.HookUp, DriftAdvice.For(tight, new DriftPlace(Panel, 240)).Kind);
    }

    [Theory]
    // Six stitches over 240 are a bias of 2.5 %.
    [InlineData(0.04, 0.02, true)]
    [InlineData(0.06, 0.02, false)]
    [InlineData(0.04, 0.1, false)]
    [InlineData(0, 0.02, false)]
    public void A_hook_is_changed_only_where_hands_cannot_hold_and_the_next_leaves_less(double step, double hands, bool changes)
    {
        DriftFilter loose = Told([1, 2, 3, 4, 5, 6], 40, 0.005, biasSpread: 0.05);
        DriftAdvice advice = DriftAdvice.For(loose, new DriftPlace(Panel, 240) { HookStep = step, LargestCorrection = hands });
        Assert.Equal(changes, advice.Kind == DriftAdviceKind.HookDown);
    }

    [Fact]
    public void Known_what_is_said_of_a_log()
    {
        static MakerFit Fit(double low, double high) => new(new((low + high) / 2, low, high), new(0.01, 0.01, 0.01), new(50, 50, 50), 40);
        Assert.Equal("Too few rows are read yet to know your hands.", DriftWords.Say((MakerFit?)null));
        Assert.Contains("more yarn than planned", DriftWords.Say(Fit(0.001, 0.02)));
        Assert.Contains("less yarn than planned", DriftWords.Say(Fit(-0.02, -0.001)));
        Assert.Contains("the yarn that is planned", DriftWords.Say(Fit(-0.01, 0.01)));
    }

    [Fact]
    public void Known_only_a_row_of_which_less_than_half_matches_is_ripped()
    {
        DriftFilter off = Told([3], 80, 0.03);
        Assert.Equal(DriftAdviceKind.RipBack, DriftAdvice.For(off, new DriftPlace(Panel, 83) { Match = 0.49 }).Kind);
        Assert.NotEqual(DriftAdviceKind.RipBack, DriftAdvice.For(off, new DriftPlace(Panel, 83) { Match = 0.5 }).Kind);
    }

    [Fact]
    public void Law_what_is_said_has_no_percentages()
    {
        foreach (DriftAdviceKind kind in Enum.GetValues<DriftAdviceKind>())
        {
            foreach (double phase in new[] { -14.2, -1, -0.3, 0.3, 2, 13 })
            {
                var advice = new DriftAdvice
                {
                    Kind = kind,
                    Phase = phase,
                    Correction = phase / 300,
                    Stitches = 40,
                    UntilColour = 1,
                    Hold = 0.01,
                };
                string said = DriftWords.Say(advice, "sand", Names, 0.06);
                Assert.DoesNotContain("%", said);
                Assert.DoesNotContain("0.", said);
                Assert.EndsWith(".", said);
            }
        }
    }

    private static DriftFilter Told(int[] readings, int apart, double spread, double biasSpread = 0.01)
    {
        DriftFilter filter = DriftFilter.Begin(new DriftModel(spread, 50) { Period = 22, BiasSpread = biasSpread });
        foreach (int reading in readings) filter = filter.Predict(apart).Observe(reading);
        return filter;
    }

    [Fact]
    public void What_is_counted_in_pairs_is_said_in_pairs()
    {
        DriftAdvice advice = DriftAdvice.For(Told([2], 60, 0.02), new DriftPlace(Panel, 83));
        string said = DriftWords.Say(advice, "sand", Names, 0.06, ("pair", "pairs"));
        Assert.StartsWith($"This sand comes two pairs early; work the next {advice.Stitches} pairs ", said);
    }
}
