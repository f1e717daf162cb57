using Dyepath.Core.Making.Drift;
using Dyepath.Core.Making.Log;
using Dyepath.Core.Making.Order;
using Dyepath.Core.Making.Work;
using Dyepath.Workspace.Making.Beside;
using Dyepath.Workspace.Worker;

namespace Dyepath.Workspace.Tests.Making;

/// <summary>A maker's figures, from her log into her next design, and how she wants the page.</summary>
public sealed class KeptHandsTests
{
    private static readonly HandsReport Told = new("words", new(1, 0.9, 1.1), 1, new(0.0234, 0.01, 0.04), new(38.26, 10, 100), 12);

    [Fact]
    public void Figures_of_a_log_go_into_the_next_design_as_it_writes_them()
    {
        var kept = KeptHands.Of("Tideline, M", Told);
        Assert.Equal(new KeptHands("Tideline, M", 0.0234, 38.26), kept);
        Assert.Equal(("2.34 %", "38.3 stitches"), (kept.SpreadText, kept.MemoryText));
        var document = Documents.Demo();
        Assert.False(kept.AreIn(document));
        kept.PutInto(document);
        Assert.True(kept.AreIn(document));
        Assert.Equal(("2.34 %", "38.3 stitches"), (document.Typed("fabric.hands.spread"), document.Typed("fabric.hands.memory")));
        Assert.False((kept with { Memory = 50 }).AreIn(document));
        Assert.False((kept with { Spread = 0.03 }).AreIn(document));
        Assert.Equal(1, KeptHands.Of("", Told with { Memory = new(0.4, 0, 1) }).Memory);
        Assert.Equal(10_000, KeptHands.Of("", Told with { Memory = new(99_999, 0, 1) }).Memory);
    }

    [Theory]
    [InlineData(0.02, 40, true)]
    [InlineData(0.5, 1, true)]
    [InlineData(0.51, 40, false)]
    [InlineData(0, 40, false)]
    [InlineData(0.02, 0.9, false)]
    [InlineData(0.02, 10_000, true)]
    [InlineData(0.02, 10_001, false)]
    public void Only_hands_that_can_be_are_read_again(double spread, double memory, bool can)
    {
        var kept = new KeptHands("Tideline, M", spread, memory);
        Assert.Equal(can ? kept : null, KeptHands.Read(kept.Write()));
    }

    [Fact]
    public void What_is_none_is_not_read()
    {
        Assert.Null(KeptHands.Read(null));
        Assert.Null(KeptHands.Read("?"));
        Assert.Null(KeptHands.Read("""{ "spread": 0.02, "memory": 40 }"""));
    }

    [Fact]
    public void Settings_come_back_as_they_were_written_and_otherwise_as_they_are_for_everybody()
    {
        var settings = new BesideSettings
        {
            ByRuns = true,
            LeftHook = false,
            LeftThumb = true,
            Speaks = true,
            Rate = 1.5,
            Voice = "Shore",
            Buzzes = false,
            StaysAwake = false,
            Large = true,
        };
        Assert.Equal(settings, BesideSettings.Read(settings.Write()));
        Assert.All([null, "?", "null"], json => Assert.Equal(new BesideSettings(), BesideSettings.Read(json)));
        // A phone speaks at her pace, buzzes and stays awake until she says otherwise, and is silent.
        var usual = new BesideSettings();
        Assert.Equal((1, "", true, true, false, false), (usual.Rate, usual.Voice, usual.Buzzes, usual.StaysAwake, usual.Speaks, usual.ByRuns));
        Assert.Equal((0.5, ""), (BesideSettings.Read("""{ "rate": 0.1 }""").Rate, BesideSettings.Read("""{ "voice": null }""").Voice));
        Assert.Equal(2, BesideSettings.Read("""{ "rate": 9 }""").Rate);
    }

    /// <summary>Rows that end a stitch early and late in turn: her figures are told with their range, about the planned yarn.</summary>
    [Fact]
    public void A_log_with_enough_readings_gives_figures_with_their_range()
    {
        var order = BesideView.TryOpen(MakingBench.Demo(), out _)!.Order;
        var before = order.Parts[0].Steps.TakeWhile(s => s is not RowStep).Count();
        Entry[] log =
        [
            .. Enumerable.Range(0, before).Select(_ => new Entry(EntryKind.Step, MakingBench.Now)),
            .. Enumerable.Range(0, 30).Select(i => new Entry(EntryKind.Row, MakingBench.Now, Phase: (i % 4) switch { 0 => 1, 2 => -1, _ => 0 })),
        ];
        var told = HandsJob.Read(JobRunner.Run(HandsJob.Name, HandsJob.Order(MakingBench.Demo() with { Log = [.. log] }), new Progress<double>()));
        Assert.True(told.Readings > 20);
        Assert.NotEqual("", told.Words);
        var (yarn, spread, memory) = (told.YarnCentimetres!.Value, told.Spread!.Value, told.Memory!.Value);
        foreach (var range in new[] { yarn, spread, memory })
        {
            Assert.InRange(range.Value, range.Low, range.High);
            Assert.True(range.Low < range.High);
        }
        // The demo's stitch takes 6.3 cm; hands that end within a stitch of the plan take within a few per cent of that.
        Assert.Equal(6.3, told.PlannedCentimetres, 0.1);
        Assert.InRange(yarn.Value / told.PlannedCentimetres, 0.97, 1.03);
        Assert.InRange(yarn.Low / told.PlannedCentimetres, 0.9, 1.01);
        Assert.InRange(yarn.High / told.PlannedCentimetres, 0.99, 1.1);

        var view = BesideView.TryOpen(MakingBench.Demo(), out _)!;
        var fit = MakerFit.Of(HandsLog.Of(MakingState.Begin(view.Order, view.Own).Apply(log)))!;
        Assert.Equal(told.PlannedCentimetres * (1 + fit.Bias.Low), yarn.Low, 1e-9);
        Assert.Equal(told.PlannedCentimetres * (1 + fit.Bias.High), yarn.High, 1e-9);
        Assert.Equal((fit.Spread.Value, fit.Memory.Value, fit.Readings), (spread.Value, memory.Value, told.Readings));

        var width = WidthJob.Read(JobRunner.Run(WidthJob.Name, HandsJob.Order(MakingBench.Demo() with { Log = [.. log] }), new Progress<double>()));
        Assert.NotEqual("", width.Words);
    }

    [Fact]
    public void Before_the_first_reading_there_are_words_and_no_figures()
    {
        var told = HandsJob.Read(JobRunner.Run(HandsJob.Name, HandsJob.Order(MakingBench.Demo()), new Progress<double>()));
        Assert.Equal((null, null, null, 0), (told.YarnCentimetres, told.Spread, told.Memory, told.Readings));
        Assert.Contains("Too few rows are read yet to know your hands.", told.Words, StringComparison.Ordinal);
        Assert.Throws<ArgumentException>(() => JobRunner.Run(HandsJob.Name, HandsJob.Order(MakingBench.Demo() with { Size = "17" }), new Progress<double>()));
    }
}
