using CsCheck;
using Dyepath.Core.Making;
using Dyepath.Core.Making.Drift;

namespace Dyepath.Core.Tests.Making.Drift;

public sealed class DriftAdviceTests
{
    // Colours end at 5, 9, 15 and 22 of every 22 stitches; a row of 83 ends 17 stitches into the fourth.
    private static readonly PlannedPiece Panel = Pieces.Of([5, 4, 6, 7], 83, 72);

    private static readonly double[] Levels = [0, 0.01, 0.015, 0.03, 0.05];

    private static readonly Gen<DriftFilter> Filters = Gen.Select(
        Gen.Double[-40, 40], Gen.Double[-0.05, 0.05], Gen.Double[0, 0.02], Gen.Double[0, 1.4], Gen.Int[-2, 2].Array[0, 3],
        (phase, bias, spread, gain, readings) => readings.Aggregate(
            Known(phase, bias, spread, gain),
            (filter, reading) => filter.Predict(15).Observe((int)Math.Round(filter.Predict(15).PhaseMean) + reading)));

    private static readonly Gen<DriftPlace> Places = Gen.Select(
        Gen.OneOf(Gen.Int[0, 5_976], Gen.Int[0, 71].Select(row => row * 83)),
        Gen.Double[0.001, 0.1], Gen.Double[0, 0.6], Gen.Bool, Gen.Double[0, 0.12], Gen.Int[0, 3].Select(i => new[] { 0, -0.01, 0.015, 0.03 }[i]), Gen.Bool, Gen.Int[0, 40],
        (worked, hands, turn, edge, hook, holding, join, rip) => new DriftPlace(Panel, worked)
        {
            LargestCorrection = hands,
            Turn = turn,
            EdgeStitch = edge,
            HookStep = hook < 0.02 ? 0 : hook,
            Holding = holding,
            CanJoin = join,
            RipTo = rip == 0 ? 0 : null,
        });

    /// <summary>Only what words can say, no further than this row, and up to where another colour than the last begins.</summary>
    [Fact]
    public void Law_advice_is_a_level_that_has_a_word_up_to_a_colour_of_this_row()
    {
        var seen = new HashSet<DriftAdviceKind>();
        Gen.Select(Filters, Places).Holds(
            (filter, place) =>
            {
                var advice = DriftAdvice.For(filter, place);
                seen.Add(advice.Kind);
                Assert.Contains(Math.Abs(advice.Correction), Levels);
                Assert.Contains(Math.Abs(advice.Hold), Levels);
                Assert.InRange(Math.Abs(advice.Correction), 0, place.LargestCorrection);
                Assert.InRange(Math.Abs(advice.Hold), 0, place.LargestCorrection);
                Assert.InRange(advice.Phase, -11, 11);
                var rowEnd = Math.Min(5_976, (place.Worked / 83 + 1) * 83);
                var end = place.Worked + advice.Stitches;
                Assert.Equal(advice.Stitches > 0 && end == rowEnd, advice.ToRowEnd);
                if (advice.Kind == DriftAdviceKind.Correct && !advice.ToRowEnd)
                {
                    Assert.InRange(advice.Stitches, 10, rowEnd - place.Worked - 1);
                    Assert.NotEqual(Panel.ColourAt(end - 1), Panel.ColourAt(end));
                }
                if (advice.LookAfter is { } look)
                    Assert.NotEqual(Panel.ColourAt(place.Worked + look - 1), Panel.ColourAt(place.Worked + look));
                Assert.Equal(advice.Kind == DriftAdviceKind.RipBack, advice.RipTo is not null);
                Assert.Equal(advice.Kind == DriftAdviceKind.Rejoin, advice.LeftOut > 0);
            },
            seed: 47, cases: 2_000);
        Assert.Equal(Enum.GetValues<DriftAdviceKind>().ToHashSet(), seen);
    }

    /// <summary>
    /// By another route, stitch by stitch with the mean of a folded normal in full: what is advised never leaves colours further off, in
    /// this row and at its end, than the hold by itself; by more than the two stitches, of some sixty, that its nearer formula may be off by.
    /// </summary>
    [Fact]
    public void Law_what_is_advised_brings_colours_back()
    {
        var corrected = 0;
        Gen.Select(Gen.Int[-3, 3].Array[1, 8], Gen.Double[0.005, 0.03], Gen.Int[0, 70]).Holds(
            (readings, spread, row) =>
            {
                var filter = Told(readings, 83, spread);
                var advice = DriftAdvice.For(filter, new DriftPlace(Panel, row * 83));
                if (advice.Correction == advice.Hold) return;
                corrected++;
                Assert.True(Off(filter, advice.After) < Off(filter, _ => advice.Hold) + 2);
            },
            seed: 41, cases: 300);
        Assert.True(corrected > 150);

        static double Off(DriftFilter filter, Func<int, double> level)
        {
            var (off, phase) = (0.0, 0.0);
            for (var i = 0; i < 83; i++)
            {
                filter = filter.Predict(1, level(i));
                phase = filter.PhaseMean - Math.Round(filter.PhaseMean / 22) * 22;
                var (mean, sd) = (Math.Abs(phase), filter.PhaseSd);
                off += sd * Math.Sqrt(2 / Math.PI) * Math.Exp(-mean * mean / (2 * sd * sd)) + mean * (2 * MathNet.Numerics.Distributions.Normal.CDF(0, 1, mean / sd) - 1);
            }
            // What is left at the end is worked off at 3 %.
            return off + phase * phase / 0.06;
        }
    }

    [Fact]
    public void On_the_count_she_carries_on_with_her_natural_hands()
    {
        var advice = DriftAdvice.For(Told([0, 0, 0], 83, 0.01), new DriftPlace(Panel, 249));
        Assert.Equal((DriftAdviceKind.CarryOn, 0, 0.0), (advice.Kind, advice.Stitches, advice.Hold));
    }

    /// <summary>Early: the stitches before took too much yarn. Two stitches over 83 are 2.4 %, three times what a trim may be.</summary>
    [Theory]
    [InlineData(2, -1)]
    [InlineData(-2, 1)]
    public void Colours_that_come_early_are_worked_tighter(int reading, int way)
    {
        var advice = DriftAdvice.For(Told([reading], 83, 0.02), new DriftPlace(Panel, 83));
        Assert.Equal((DriftAdviceKind.Correct, way), (advice.Kind, Math.Sign(advice.Correction)));
    }

    /// <summary>One per cent too loose is held by a touch, and four fifths of a row's drift away from it nothing else is said.</summary>
    [Theory]
    [InlineData(0.01, 1, -0.01)]
    [InlineData(-0.01, 1, 0.01)]
    [InlineData(0.01, 0.33, -0.03)]
    [InlineData(0.003, 1, 0)]
    [InlineData(0.5, 1, -0.05)]
    public void The_bias_is_held_by_the_level_that_leaves_least_of_it(double bias, double gain, double hold) =>
        Assert.Equal(hold, DriftAdvice.For(Known(0, bias, 0, gain), new DriftPlace(Panel, 0) { HookStep = 0 }).Hold);

    /// <summary>Half way between two levels the one that she holds stays.</summary>
    [Theory]
    [InlineData(0)]
    [InlineData(-0.01)]
    public void What_she_holds_stays_while_another_level_is_hardly_better(double holding) =>
        Assert.Equal(holding, DriftAdvice.For(Known(0, 0.005), new DriftPlace(Panel, 0) { Holding = holding }).Hold);

    [Theory]
    [InlineData(0.75, true)]
    [InlineData(-0.75, true)]
    [InlineData(0.74, false)]
    [InlineData(1.49, true)]
    [InlineData(1.5, false)]
    [InlineData(8, false)]
    public void An_edge_stitch_makes_good_about_one_stitch_that_hands_cannot(double phase, bool advised)
    {
        // Within the last two stitches of a row hands reach nothing; a bias leaves it a stitch off at the end.
        var narrow = Pieces.Of([5, 4, 6, 7], 12, 10);
        var kind = DriftAdvice.For(Known(phase, phase > 0 ? 0.04 : -0.04), new DriftPlace(narrow, 108) { LargestCorrection = 0.01, HookStep = 0, EdgeStitch = true, Turn = 0.2 }).Kind;
        Assert.Equal(advised, kind == (phase > 0 ? DriftAdviceKind.SkipEdgeStitch : DriftAdviceKind.AddEdgeStitch));
    }

    [Theory]
    [InlineData(1.2, 0.25, DriftAdviceKind.TightenTurn)]
    [InlineData(-1.2, 0.25, DriftAdviceKind.LoosenTurn)]
    [InlineData(1.2, 0.24, DriftAdviceKind.CarryOn)]
    [InlineData(1.6, 0.5, DriftAdviceKind.CarryOn)]
    public void A_turning_chain_is_worth_a_quarter_of_a_stitch_or_more(double phase, double turn, DriftAdviceKind kind)
    {
        var narrow = Pieces.Of([5, 4, 6, 7], 12, 10);
        Assert.Equal(kind, DriftAdvice.For(Known(phase), new DriftPlace(narrow, 108) { LargestCorrection = 0.005, Turn = turn }).Kind);
    }

    /// <summary>Early, what is left of the sequence is cut out; late, what the colours are late by.</summary>
    [Theory]
    [InlineData(6, 16)]
    [InlineData(-6, 6)]
    [InlineData(28, 16)]
    public void What_hands_cannot_bring_back_is_cut(double phase, double leftOut)
    {
        var advice = DriftAdvice.For(Known(phase), new DriftPlace(Panel, 83) { CanJoin = true });
        Assert.Equal(DriftAdviceKind.Rejoin, advice.Kind);
        Assert.Equal(leftOut, advice.LeftOut, 1e-9);
        Assert.NotEqual(DriftAdviceKind.Rejoin, DriftAdvice.For(Known(phase), new DriftPlace(Panel, 83)).Kind);
        Assert.NotEqual(DriftAdviceKind.Rejoin, DriftAdvice.For(Known(2), new DriftPlace(Panel, 83) { CanJoin = true }).Kind);
    }

    /// <summary>
    /// Three quarters of 4 % at full gain are 3 %; the next hook has to leave less than there is, so that half its step is under the bias.
    /// </summary>
    [Theory]
    [InlineData(0.031, 0, 0.06, true)]
    [InlineData(0.029, 0, 0.04, false)]
    [InlineData(0.031, 0, 0.0621, false)]
    [InlineData(-0.031, 0, 0.06, true)]
    [InlineData(0.049, 0.009, 0.04, true)]
    [InlineData(0.049, 0.01, 0.04, false)]
    public void A_hook_is_changed_beyond_three_quarters_of_what_hands_hold(double bias, double spread, double step, bool changes)
    {
        var kind = DriftAdvice.For(Known(0, bias, spread), new DriftPlace(Panel, 0) { LargestCorrection = 0.04, HookStep = step }).Kind;
        Assert.Equal(changes, kind is DriftAdviceKind.HookDown or DriftAdviceKind.HookUp);
        if (changes)
            Assert.Equal(bias > 0 ? DriftAdviceKind.HookDown : DriftAdviceKind.HookUp, kind);
    }

    /// <summary>Steady hands are where they are thought to be; unsteady ones may be anywhere by the row's end.</summary>
    [Theory]
    [InlineData(0.005, false)]
    [InlineData(0.03, true)]
    public void A_second_look_is_asked_for_where_the_row_may_run_away(double spread, bool asked)
    {
        var advice = DriftAdvice.For(Told([0, 0, 0, 0], 83, spread), new DriftPlace(Panel, 332));
        Assert.Equal(asked, advice.LookAfter is not null);
        if (asked) Assert.InRange(advice.LookAfter!.Value, 30, 53);
    }

    [Fact]
    public void At_the_end_of_a_piece_nothing_is_left_to_be_done()
    {
        var advice = DriftAdvice.For(Known(5), new DriftPlace(Panel, 5_976) { CanJoin = true, RipTo = 3 });
        Assert.Equal((DriftAdviceKind.CarryOn, 0), (advice.Kind, advice.Stitches));
    }

    private static DriftFilter Known(double phase, double bias = 0, double biasSpread = 0, double gain = 1) =>
        DriftFilter.Begin(new DriftModel(0.02, 50) { Period = 22, Bias = bias, BiasSpread = biasSpread, Gain = gain, GainSpread = 0 })
            .Shift(phase);

    private static DriftFilter Told(int[] readings, int apart, double spread)
    {
        var filter = DriftFilter.Begin(new DriftModel(spread, 50) { Period = 22, BiasSpread = 0.01 });
        foreach (var reading in readings) filter = filter.Predict(apart).Observe(reading);
        return filter;
    }
}
