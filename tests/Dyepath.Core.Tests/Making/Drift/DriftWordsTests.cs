using Dyepath.Bench.Makers;
using Dyepath.Core.Making;
using Dyepath.Core.Making.Drift;

namespace Dyepath.Core.Tests.Making.Drift;

/// <summary>
/// What a maker hears. Colours come early where her stitches have taken too much yarn: she works tighter, pulls the turning chain
/// tight, or leaves a stitch out.
/// </summary>
public sealed class DriftWordsTests
{
    [Theory]
    [InlineData(-0.01, "a touch tighter")]
    [InlineData(0.01, "a touch looser")]
    [InlineData(-0.015, "a little tighter")]
    [InlineData(0.03, "looser")]
    [InlineData(-0.05, "much tighter")]
    [InlineData(0, null)]
    public void A_level_has_one_word(double level, string? said) => Assert.Equal(said, TensionGrades.Say(level));

    [Fact]
    public void No_word_means_two_per_cent() => Assert.Throws<ArgumentOutOfRangeException>(() => TensionGrades.Say(0.02));

    /// <summary>One number, one mark, one baseline, and how to go on after it.</summary>
    [Theory]
    [InlineData(-0.03, 48, -0.01, "This foam comes early; work tighter than your natural hands for the first 48 stitches, up to the mark, then only a touch tighter than natural to the end of the row.")]
    [InlineData(0.05, 15, 0, "This foam comes early; work much looser than your natural hands for the first 15 stitches, up to the mark, then back to your natural hands to the end of the row.")]
    [InlineData(-0.01, 15, -0.03, "This foam comes early; work a touch tighter than your natural hands for the first 15 stitches, up to the mark, then tighter than natural to the end of the row.")]
    [InlineData(0.03, 15, -0.01, "This foam comes early; work looser than your natural hands for the first 15 stitches, up to the mark, then a touch tighter than natural to the end of the row.")]
    [InlineData(0, 15, 0.015, "This foam comes early; work with your natural hands for the first 15 stitches, up to the mark, then a little looser than natural to the end of the row.")]
    public void A_stretch_ends_at_the_mark(double level, int stitches, double hold, string said) => Assert.Equal(
        said, Say(new() { Kind = DriftAdviceKind.Correct, Phase = 2, Correction = level, Stitches = stitches, Hold = hold }));

    [Fact]
    public void A_stretch_that_goes_through_says_the_rows_end() => Assert.Equal(
        "This foam comes early; work tighter than your natural hands to the end of the row.",
        Say(new() { Kind = DriftAdviceKind.Correct, Phase = 2, Correction = -0.03, Stitches = 94, ToRowEnd = true }));

    /// <summary>In mid-row the stretch begins where she has her eyes, not at the row's beginning; where she did not look, at the stitch at hand.</summary>
    [Theory]
    [InlineData(true, "This foam comes early; work tighter than your natural hands for 21 stitches from where you looked, up to the mark, then back to your natural hands to the end of the row.")]
    [InlineData(false, "Work tighter than your natural hands for the next 21 stitches, up to the mark, then back to your natural hands to the end of the row.")]
    public void In_mid_row_a_stretch_says_from_where_it_counts(bool looked, string said) => Assert.Equal(
        said, DriftWords.Say(
            new() { Kind = DriftAdviceKind.Correct, Phase = 2, Correction = -0.03, Stitches = 21 }, Terms with { Seen = looked ? ("foam", 2) : null, MidRow = true }));

    /// <summary>What takes back what was asked before says so; nothing that is asked goes on unsaid.</summary>
    [Theory]
    [InlineData(0, 0, true, "carry on with your natural hands to the end of the row.")]
    [InlineData(-0.03, 0, true, "enough: back to your natural hands to the end of the row.")]
    [InlineData(-0.03, 0, false, "go back to your natural hands.")]
    [InlineData(0, -0.01, true, "from here on work a touch tighter than your natural hands to the end of the row.")]
    [InlineData(-0.05, -0.01, false, "from here on work a touch tighter than your natural hands.")]
    [InlineData(-0.01, -0.01, true, "carry on a touch tighter than your natural hands to the end of the row.")]
    public void What_is_taken_back_is_said(double was, double level, bool midRow, string said)
    {
        var sentence = DriftWords.Say(
            new() { Kind = DriftAdviceKind.CarryOn, Phase = 1, Correction = level, Hold = level }, Terms with { Was = was, MidRow = midRow });
        Assert.Equal($"This foam comes early; {said}", sentence);
        // Whoever reads it has nothing to watch for, and works so from there on.
        var asked = SentenceReader.Read(sentence);
        Assert.True(asked.CarriesOn);
        Assert.Equal(TensionGrades.GradeOf(level), asked.After!.Value.Way * (int)asked.After.Value.Grade);
    }

    /// <summary>Two levels of one sentence are both measured from natural hands.</summary>
    [Fact]
    public void A_sentence_of_two_levels_is_read_from_natural_hands()
    {
        var asked = SentenceReader.Read(Say(new() { Kind = DriftAdviceKind.Correct, Phase = 2, Correction = -0.03, Stitches = 48, Hold = -0.01 }));
        Assert.True(asked.FromNatural);
        Assert.Equal((new Feel(Grade.Plain, -1), new Feel(Grade.Touch, -1)), (asked.Stretches[0].Feel, asked.After));
        Assert.Throws<FormatException>(() => SentenceReader.Read("Work tighter than your natural hands for 48 stitches, up to the mark, then a touch tighter to the end of the row."));
    }

    [Theory]
    [InlineData(0, 0, 0, "This foam comes early; carry on with your natural hands.")]
    [InlineData(-0.01, 0, -0.01, "This foam comes early; carry on a touch tighter than your natural hands.")]
    [InlineData(-0.015, 94, -0.01, "This foam comes early; carry on a little tighter than your natural hands.")]
    [InlineData(0, 94, -0.01, "This foam comes early; carry on with your natural hands.")]
    public void What_is_held_is_always_said(double level, int stitches, double hold, string said) => Assert.Equal(
        said, DriftWords.Say(new() { Kind = DriftAdviceKind.CarryOn, Phase = 1, Correction = level, Stitches = stitches, Hold = hold, ToRowEnd = stitches > 0 }, Terms with { Was = level }));

    /// <summary>Asked of all colours, she is answered of all colours.</summary>
    [Theory]
    [InlineData(0, "Colours are on the count; carry on with your natural hands.")]
    [InlineData(2, "Colours come early; carry on with your natural hands.")]
    public void What_she_said_of_all_colours_is_said_of_all(int phase, string said) => Assert.Equal(
        said, DriftWords.Say(new() { Kind = DriftAdviceKind.CarryOn, Phase = 0.4 }, Terms with { Seen = (null, phase) }));

    [Theory]
    [InlineData(0, "This foam is on the count; carry on with your natural hands.")]
    [InlineData(-3, "This foam comes late; carry on with your natural hands.")]
    [InlineData(null, "Carry on with your natural hands.")]
    public void What_she_saw_comes_first_where_she_looked(int? phase, string said) => Assert.Equal(
        said, DriftWords.Say(new() { Kind = DriftAdviceKind.CarryOn, Phase = 0.4 }, Terms with { Seen = phase is { } p ? ("foam", p) : null }));

    [Theory]
    [InlineData(DriftAdviceKind.TightenTurn, "This foam comes early; make the turning chain tight.")]
    [InlineData(DriftAdviceKind.LoosenTurn, "This foam comes early; make the turning chain loose.")]
    [InlineData(DriftAdviceKind.SkipEdgeStitch, "This foam comes early; skip the first stitch of the next row, so that it has 93, and work two into that edge in the row after it, for 94 again.")]
    [InlineData(DriftAdviceKind.AddEdgeStitch, "This foam comes early; work one more stitch into the edge where the next row begins, so that it has 95, and work two together there in the row after it, for 94 again.")]
    [InlineData(DriftAdviceKind.RipBack, "This foam comes early; too little matches to keep it: rip back to the beginning of row 12.")]
    [InlineData(DriftAdviceKind.Rejoin, "This foam comes early; hands cannot bring it back within a row: cut the yarn, leave out 84 cm of it, and join it again.")]
    [InlineData(DriftAdviceKind.HookDown, "Your stitches take more yarn than tight hands can make good: go down a hook size.")]
    [InlineData(DriftAdviceKind.HookUp, "Your stitches take less yarn than loose hands can make good: go up a hook size.")]
    public void Each_act_is_one_sentence(DriftAdviceKind kind, string said) => Assert.Equal(
        said, Say(new() { Kind = kind, Phase = 1, RipTo = kind == DriftAdviceKind.RipBack ? 11 : null, LeftOut = 13.2 }));

    [Fact]
    public void What_is_counted_in_pairs_and_rounds_is_said_so() => Assert.Equal(
        "This foam comes early; work tighter than your natural hands for the first 20 pairs, up to the mark, then back to your natural hands to the end of the round.",
        DriftWords.Say(
            new() { Kind = DriftAdviceKind.Correct, Phase = 2, Correction = -0.03, Stitches = 20 },
            Terms with { One = "pair", Many = "pairs", Row = "round" }));

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

    /// <summary>Whatever is advised, the makers of the benchmark know what to do.</summary>
    [Fact]
    public void Every_kind_of_advice_is_understood()
    {
        foreach (var kind in Enum.GetValues<DriftAdviceKind>())
        {
            var asked = SentenceReader.Read(Say(new() { Kind = kind, Phase = 1, Correction = -0.03, Stitches = 40, Hold = -0.01, RipTo = 11, LeftOut = 13.2 }));
            Assert.Equal(kind == DriftAdviceKind.CarryOn, asked.CarriesOn);
            Assert.Equal(kind == DriftAdviceKind.Correct, asked.Stretches.Count == 1);
            Assert.Equal(kind == DriftAdviceKind.RipBack ? 12 : null, asked.RipsTo);
            Assert.Equal(kind == DriftAdviceKind.Rejoin ? 84 : null, asked.CutCentimetres);
            Assert.Equal(kind == DriftAdviceKind.SkipEdgeStitch ? -1 : kind == DriftAdviceKind.AddEdgeStitch ? 1 : 0, asked.Edge);
            Assert.Equal(kind == DriftAdviceKind.TightenTurn ? -1 : kind == DriftAdviceKind.LoosenTurn ? 1 : 0, asked.Turn);
            Assert.Equal(kind == DriftAdviceKind.HookDown ? -1 : kind == DriftAdviceKind.HookUp ? 1 : 0, asked.Hook);
        }
    }

    /// <summary>6.4 cm of yarn a stitch: 13.2 of them are 84.48 cm.</summary>
    private static DriftTerms Terms { get; } = new(("foam", 2), "stitch", "stitches", "row", 94, 6.4);

    private static string Say(DriftAdvice advice) => DriftWords.Say(advice, Terms);
}
