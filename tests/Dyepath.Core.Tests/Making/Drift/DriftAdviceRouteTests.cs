using CsCheck;
using Dyepath.Core.Making;
using Dyepath.Core.Making.Drift;

namespace Dyepath.Core.Tests.Making.Drift;

/// <summary>Advice by a second route, stitch by stitch through what lies ahead, and its limits on both sides of each.</summary>
public sealed class DriftAdviceRouteTests
{
    // Colours end at 5, 9, 15 and 22 of every 22 stitches.
    private static readonly PlannedPiece Panel = Pieces.Of([5, 4, 6, 7], 83, 72);

    private static readonly Gen<DriftFilter> Filters = Gen.Select(
        Gen.Double[-40, 40], Gen.Double[-0.08, 0.08], Gen.Double[0, 0.02], Gen.Double[0, 1.4], Gen.Int[-2, 2].Array[0, 3],
        (phase, bias, spread, gain, readings) =>
        {
            var filter = DriftFilter.Begin(new DriftModel(0.02, 50)
            {
                Period = 22,
                Bias = bias,
                BiasSpread = spread,
                Gain = gain,
            }).Shift(phase);
            foreach (var reading in readings)
                filter = filter.Predict(15).Observe((int)Math.Round(filter.Predict(15).PhaseMean) + reading);
            return filter;
        });

    private static readonly Gen<DriftPlace> Places = Gen.Select(
        Gen.OneOf(Gen.Int[0, 5_976], Gen.Int[5_700, 5_976]),
            Gen.Double[0.001, 0.1], Gen.Double[0, 0.6], Gen.Bool, Gen.Double[0, 0.12], Gen.Double[0.2, 1],
        (worked, hands, turn, edge, hook, match) => new DriftPlace(Panel, worked)
        {
            LargestCorrection = hands,
            Turn = turn,
            EdgeStitch = edge,
            HookStep = hook < 0.02 ? 0 : hook,
            Match = Math.Min(1, match + 0.2),
        });

    [Fact]
    public void Law_advice_is_what_a_look_at_every_stitch_ahead_gives()
    {
        var seen = new HashSet<DriftAdviceKind>();
        Gen.Select(Filters, Places).Holds(
            (filter, place) =>
            {
                var advice = DriftAdvice.For(filter, place);
                var (kind, correction, stitches) = Ahead(filter, place, out var phase, out var hold);
                // Half a period off comes early and late alike.
                if (Math.Abs(Math.Abs(phase) - 11) < 1e-6)
                    return;
                seen.Add(kind);
                Assert.Equal((kind, stitches), (advice.Kind, advice.Stitches));
                Assert.Equal(phase, advice.Phase, 1e-9);
                Assert.Equal(hold, advice.Hold, 1e-9);
                Assert.Equal(correction, advice.Correction, 1e-9);
                var end = place.Worked + stitches;
                int? begins = stitches > 0 && end < Panel.Stitches && Panel.ColourAt(end) != Panel.ColourAt(end - 1)
                    ? Panel.ColourAt(end) : null;
                Assert.Equal(begins, advice.UntilColour);
            },
            seed: 47, cases: 4_000);
        Assert.Equal(Enum.GetValues<DriftAdviceKind>().ToHashSet(), seen);
    }

    /// <summary>From the promises alone: of equal likenesses the nearest, of stretches the first that hands can do.</summary>
    private static (DriftAdviceKind Kind, double Correction, int Stitches) Ahead(
        DriftFilter filter, DriftPlace place, out double phase, out double hold)
    {
        var hands = place.LargestCorrection;
        phase = Enumerable.Range(-20, 41).Select(k => filter.PhaseMean + 22 * k).MinBy(Math.Abs);
        var early = phase > 0;
        // Hands that hardly follow are not asked for five times as much.
        var gain = filter.GainMean < 0.2 ? 0.2 : filter.GainMean;
        hold = Within(-filter.BiasMean / gain, hands);
        if (place.Match < 0.5)
            return (DriftAdviceKind.RipBack, hold, 0);
        var looser = filter.BiasMean > 0;
        var bias = looser ? filter.BiasMean : -filter.BiasMean;
        if (place.HookStep > 0 && bias - 2 * filter.BiasSd > 0.75 * hands * gain && 2 * bias > place.HookStep)
            return (looser ? DriftAdviceKind.HookDown : DriftAdviceKind.HookUp, hold, 0);
        if (Math.Abs(phase) < 0.25 || place.Worked == Panel.Stitches)
            return (DriftAdviceKind.CarryOn, hold, 0);
        var (correction, stitches) = (0.0, 0);
        for (var end = place.Worked + 1; end <= Panel.Stitches; end++)
        {
            var ends = end == Panel.Stitches || (end - place.Worked >= 10 && Panel.ColourAt(end) != Panel.ColourAt(end - 1));
            if (!ends)
                continue;
            stitches = end - place.Worked;
            var left = phase + filter.Predict(stitches).PhaseMean - filter.PhaseMean;
            correction = -left / gain / stitches;
            if (Math.Abs(correction) <= hands || stitches >= 200)
                break;
        }
        if (Math.Abs(correction) > hands)
        {
            if (place.EdgeStitch && Math.Abs(phase) >= 0.75)
                return (early ? DriftAdviceKind.SkipEdgeStitch : DriftAdviceKind.AddEdgeStitch, hold, 0);
            if (place.Turn >= 0.25)
                return (early ? DriftAdviceKind.TightenTurn : DriftAdviceKind.LoosenTurn, hold, 0);
        }
        correction = Within(correction, hands);
        return (correction > hold ? DriftAdviceKind.WorkLooser : DriftAdviceKind.WorkTighter, correction, stitches);
    }

    private static double Within(double value, double most) => value > most ? most : value < -most ? -most : value;

    private static DriftFilter Known(double phase, double bias = 0, double biasSpread = 0, double gain = 1) =>
        DriftFilter.Begin(new DriftModel(0.02, 50)
        {
            Period = 22,
            Bias = bias,
            BiasSpread = biasSpread,
            Gain = gain,
            GainSpread = 0,
        }).Shift(phase);

    [Theory]
    [InlineData(0.25, false)]
    [InlineData(-0.25, false)]
    [InlineData(0.2499, true)]
    [InlineData(-0.2499, true)]
    public void Under_a_quarter_of_a_stitch_is_on_the_count(double phase, bool carriesOn) =>
        Assert.Equal(carriesOn, DriftAdvice.For(Known(phase), new DriftPlace(Panel, 0)).Kind == DriftAdviceKind.CarryOn);

    [Theory]
    [InlineData(0.75, DriftAdviceKind.SkipEdgeStitch)]
    [InlineData(-0.75, DriftAdviceKind.AddEdgeStitch)]
    [InlineData(0.7499, DriftAdviceKind.TightenTurn)]
    [InlineData(-0.7499, DriftAdviceKind.LoosenTurn)]
    public void An_edge_stitch_makes_good_three_quarters_of_a_stitch_or_more(double phase, DriftAdviceKind kind) => Assert.Equal(
        kind, DriftAdvice.For(Known(phase), new DriftPlace(Panel, 0) { LargestCorrection = 0.001, EdgeStitch = true, Turn = 0.25 }).Kind);

    [Theory]
    [InlineData(0.25, DriftAdviceKind.TightenTurn)]
    [InlineData(0.2499, DriftAdviceKind.WorkTighter)]
    public void A_turn_that_gives_less_than_a_quarter_of_a_stitch_is_no_help(double turn, DriftAdviceKind kind) => Assert.Equal(
        kind, DriftAdvice.For(Known(2), new DriftPlace(Panel, 0) { LargestCorrection = 0.001, Turn = turn }).Kind);

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

    /// <summary>Ten stitches on from 5 a colour ends, at 15; ten on from 6 none does, until 22.</summary>
    [Theory]
    [InlineData(5, 10)]
    [InlineData(6, 16)]
    [InlineData(12, 10)]
    [InlineData(13, 14)]
    public void No_correction_is_over_before_ten_stitches(int worked, int stitches) =>
        Assert.Equal(stitches, DriftAdvice.For(Known(0.5), new DriftPlace(Panel, worked) { LargestCorrection = 0.1 }).Stitches);

    /// <summary>What hands cannot bring back ends with the first colour from 200 stitches on: from 3 at 203, from 4 at 207.</summary>
    [Theory]
    [InlineData(3, 200)]
    [InlineData(4, 203)]
    public void No_correction_goes_on_for_more_than_200_stitches_and_a_colour(int worked, int stitches) =>
        Assert.Equal(stitches, DriftAdvice.For(Known(5), new DriftPlace(Panel, worked) { LargestCorrection = 0.001 }).Stitches);

    [Theory]
    [InlineData(5_975, 1)]
    [InlineData(5_970, 6)]
    [InlineData(5_976, 0)]
    public void At_the_end_of_a_piece_there_is_only_what_is_left(int worked, int stitches)
    {
        var advice = DriftAdvice.For(Known(1), new DriftPlace(Panel, worked));
        Assert.Equal((stitches, (int?)null), (advice.Stitches, advice.UntilColour));
        Assert.Equal(stitches == 0, advice.Kind == DriftAdviceKind.CarryOn);
    }
}
