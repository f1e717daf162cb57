using System.Collections.Immutable;
using Dyepath.Core.Making;
using Dyepath.Core.Making.Drift;

namespace Dyepath.Core.Tests.Making.Drift;

/// <summary>
/// What a maker hears. Colours come early where her stitches have taken too much yarn: she works tighter, pulls the turning chain
/// tight, or leaves a stitch out.
/// </summary>
public sealed class DriftWordsTests
{
    private const double Hands = 0.06;

    private static readonly ImmutableArray<string> Colours = ["deep water", "foam", "kelp"];

    [Theory]
    [InlineData(0.3, "a little early")]
    [InlineData(-0.3, "a little late")]
    [InlineData(0.5, "one stitch early")]
    [InlineData(1.4, "one stitch early")]
    [InlineData(-1.6, "two stitches late")]
    [InlineData(3, "three stitches early")]
    [InlineData(-12, "twelve stitches late")]
    [InlineData(13, "13 stitches early")]
    public void A_drift_is_said_in_stitches(double phase, string said) => Assert.Equal(
        $"This foam comes {said}; make the turning chain {(phase > 0 ? "tight" : "loose")}.",
        Say(new() { Kind = phase > 0 ? DriftAdviceKind.TightenTurn : DriftAdviceKind.LoosenTurn, Phase = phase }));

    /// <summary>Hands that change the yarn by 6 % at most: under a sixth of that is a touch, under half a little, all of it much.</summary>
    [Theory]
    [InlineData(-0.009, "a touch tighter")]
    [InlineData(0.009, "a touch looser")]
    [InlineData(-0.011, "a little tighter")]
    [InlineData(0.029, "a little looser")]
    [InlineData(-0.031, "tighter")]
    [InlineData(0.059, "looser")]
    [InlineData(-0.06, "much tighter")]
    public void A_correction_is_said_by_feel(double correction, string said)
    {
        var kind = correction > 0 ? DriftAdviceKind.WorkLooser : DriftAdviceKind.WorkTighter;
        var phase = correction > 0 ? -2 : 2;
        var seen = phase > 0 ? "early" : "late";
        Assert.Equal(
            $"This foam comes two stitches {seen}; work the next 40 stitches {said}.",
            Say(new() { Kind = kind, Phase = phase, Correction = correction, Stitches = 40 }));
        Assert.Equal(
            $"This foam comes two stitches {seen}; work the next 40 stitches {said}, until kelp.",
            Say(new() { Kind = kind, Phase = phase, Correction = correction, Stitches = 40, UntilColour = 2 }));
        // Said against what the hands hold anyway.
        Assert.Equal(
            $"This foam comes two stitches {seen}; work the next 40 stitches {said}.",
            Say(new() { Kind = kind, Phase = phase, Correction = correction + 0.01, Hold = 0.01, Stitches = 40 }));
    }

    [Theory]
    [InlineData(DriftAdviceKind.SkipEdgeStitch, 1, "This foam comes one stitch early; skip the edge stitch.")]
    [InlineData(DriftAdviceKind.AddEdgeStitch, -1, "This foam comes one stitch late; work one more stitch into the edge.")]
    [InlineData(DriftAdviceKind.RipBack, -4, "This foam comes four stitches late, and under half of this row matches; rip back to the last change.")]
    [InlineData(DriftAdviceKind.HookDown, 2, "Your stitches take more yarn than tight hands can make good; go down a hook size.")]
    [InlineData(DriftAdviceKind.HookUp, -2, "Your stitches take less yarn than loose hands can make good; go up a hook size.")]
    [InlineData(DriftAdviceKind.CarryOn, 0, "This foam is on the count; carry on.")]
    public void Each_advice_is_one_sentence(DriftAdviceKind kind, double phase, string said) =>
        Assert.Equal(said, Say(new() { Kind = kind, Phase = phase }));

    [Theory]
    [InlineData(0.004, "This foam is on the count; carry on.")]
    [InlineData(0.006, "This foam is on the count; carry on, a touch looser than your hands would by themselves.")]
    [InlineData(-0.02, "This foam is on the count; carry on, a little tighter than your hands would by themselves.")]
    public void What_is_held_for_good_is_said_once_it_is_felt(double hold, string said) =>
        Assert.Equal(said, Say(new() { Kind = DriftAdviceKind.CarryOn, Phase = 0, Hold = hold }));

    /// <summary>Of ten stitches whole ones only; the remedies one after another.</summary>
    [Fact]
    public void A_width_that_is_not_held_says_what_would()
    {
        Assert.Equal("Your hands hold this width.", DriftWords.Say(Work(0.8)));
        Assert.Equal(
            "Your hands cannot hold this width: about five stitches in ten would have their colours. Neither looking more often nor narrower panels nor much steadier hands would do.",
            DriftWords.Say(Work(0.59)));
        Assert.Equal(
            "Your hands cannot hold this width: about no stitches in ten would have their colours. What would do: look where every colour ends, not only at a row's end.",
            DriftWords.Say(Work(0.09, sections: 0.8)));
        Assert.Equal(
            "Your hands cannot hold this width: about seven stitches in ten would have their colours. What would do: work it in two panels of 47 stitches; or work a little more evenly.",
            DriftWords.Say(Work(0.799, sections: 0.79, panels: new(2, 47, CheckHabit.EveryRow), steadier: 0.75)));
        Assert.Equal(
            "Your hands cannot hold this width: about six stitches in ten would have their colours. What would do: work it in three panels of 32 stitches and look where every colour ends; or work twice as evenly.",
            DriftWords.Say(Work(0.6, panels: new(3, 32, CheckHabit.EverySection), steadier: 0.5)));
        Assert.EndsWith(" What would do: work four times as evenly.", DriftWords.Say(Work(0.6, steadier: 0.25)), StringComparison.Ordinal);
    }

    /// <summary>Only an interval that lies on one side of the plan says which way the hands lean.</summary>
    [Theory]
    [InlineData(0.001, 0.02, "By themselves your hands take more yarn than planned; the next plan can count with it.")]
    [InlineData(-0.02, -0.001, "By themselves your hands take less yarn than planned; the next plan can count with it.")]
    [InlineData(-0.001, 0.02, "By themselves your hands take the yarn that is planned, as far as the rows tell.")]
    [InlineData(-0.02, 0.001, "By themselves your hands take the yarn that is planned, as far as the rows tell.")]
    public void What_her_log_says_of_her_hands(double low, double high, string said) => Assert.Equal(
        said, DriftWords.Say(new MakerFit(new Figure((low + high) / 2, low, high), new Figure(0.01, 0.005, 0.02), new Figure(50, 5, 500), 60)));

    [Fact]
    public void Too_short_a_log_says_so() => Assert.Equal("Too few rows are read yet to know your hands.", DriftWords.Say((MakerFit?)null));

    /// <summary>Thirty rows read are enough, and 29 are not.</summary>
    [Fact]
    public void Thirty_readings_tell_of_the_hands()
    {
        MakerLog.Entry[] read = [new MakerLog.Worked(83, 0), new MakerLog.Read(0)];
        MakerLog Of(int readings) => new(new DriftModel(0.01, 50) { Slips = 0 }, [.. Enumerable.Repeat(read, readings).SelectMany(e => e)]);
        Assert.Null(MakerFit.Of(Of(29)));
        Assert.Equal(30, MakerFit.Of(Of(30))!.Readings);
    }

    private static HoldableWork Work(double share, double? sections = null, HoldableWork.Panels? panels = null, double? steadier = null) =>
        new(share, HoldableWork.Enough, CheckHabit.EveryRow, sections, panels, steadier);

    private static string Say(DriftAdvice advice) => DriftWords.Say(advice, "foam", Colours, Hands);
}
