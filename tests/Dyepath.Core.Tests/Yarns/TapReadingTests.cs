using System.Collections.Immutable;
using System.Text;
using CsCheck;
using Dyepath.Core.Colours;
using Dyepath.Core.Measuring;
using Dyepath.Core.Measuring.Taps;
using static Dyepath.Core.Tests.Yarns.MeasuredYarnTests;

namespace Dyepath.Core.Tests.Yarns;

/// <summary>A yarn measured from taps alone, over simulated makers, and by hand-written records.</summary>
public class TapReadingTests
{
    private const int Trials = 150;

    [Theory]
    [InlineData(3.5)]
    [InlineData(8)]
    public void Sections_are_found_and_intervals_cover(double repeats)
    {
        int found = 0, held = 0, blamed = 0;
        for (ulong t = 0; t < Trials; t++)
        {
            var tapper = Tapper(t);
            var yarn = TappedYarn.Random(tapper.Chance);
            var reading = SimulatedTapper.Taps(tapper.Tap(yarn, (int)(repeats * yarn.Sequence))).Read();
            found += yarn.IsTurnOf(reading.Sections) ? 1 : 0;
            held += reading.Estimate is { } e && Math.Abs(e.Sequence.Value - yarn.Sequence) <= 1.96 * e.Sequence.StandardError ? 1 : 0;
            blamed += reading.Remarks.Any(r => r.Kind != TapRemarkKind.ThereAndBack) ? 1 : 0;
        }
        Assert.True(found >= 0.98 * Trials, $"found {found}");
        Assert.True(held >= 0.91 * Trials, $"held {held}");
        Assert.True(blamed <= 0.03 * Trials, $"blamed {blamed}");
    }

    [Theory]
    [InlineData(TapTrouble.Miscount, TapRemarkKind.Miscount, 0.85)]
    [InlineData(TapTrouble.Skipped, TapRemarkKind.SkippedSection, 0.9)]
    [InlineData(TapTrouble.Doubled, TapRemarkKind.DoubledSection, 0.9)]
    [InlineData(TapTrouble.Knot, TapRemarkKind.Knot, 0.7)]
    [InlineData(TapTrouble.Reversed, TapRemarkKind.ReversedBall, 0.93)]
    [InlineData(TapTrouble.Drift12, TapRemarkKind.Drift, 0.97)]
    public void What_went_wrong_is_named(object trouble, TapRemarkKind kind, double least)
    {
        const int trials = 60;
        var named = 0;
        for (ulong t = 0; t < trials; t++)
        {
            var tapper = Tapper(1_000 + t);
            var yarn = TappedYarn.Random(tapper.Chance);
            var reading = SimulatedTapper.Taps(tapper.Tap(yarn, (int)(12 * yarn.Sequence), (TapTrouble)trouble)).Read();
            named += reading.Remarks.Any(r => r.Kind == kind) ? 1 : 0;
        }
        Assert.True(named >= least * trials, $"{named} of {trials}");
    }

    [Fact]
    public void What_is_promised_is_kept()
    {
        int promised = 0, kept = 0, sure = 0, right = 0;
        for (ulong t = 0; t < 200; t++)
        {
            var tapper = Tapper(3_000 + t);
            var yarn = TappedYarn.Random(tapper.Chance);
            var all = tapper.Tap(yarn, 1_500);
            var now = (int)((2.1 + tapper.Chance.Uniform()) * yarn.Sequence);
            var reading = SimulatedTapper.Taps(all.Take(now)).Read(tolerance: 0.9);
            if (reading.Progress != TapProgress.GoOn)
                continue;
            promised++;
            var then = SimulatedTapper.Taps(all.Take(now + reading.MoreStitches)).Read(tolerance: 0.9);
            if (then.Progress != TapProgress.Sure)
                continue;
            kept++;
            sure++;
            right += Math.Abs(then.Estimate!.Sequence.Value - yarn.Sequence) <= 0.9 ? 1 : 0;
        }
        Assert.True(promised > 40, $"{promised}");
        Assert.True(kept >= 0.87 * promised, $"kept {kept} of {promised}");
        Assert.True(right >= 0.92 * sure, $"right {right} of {sure}");
    }

    [Fact]
    public void A_yarn_as_in_the_book_is_read_by_hand()
    {
        var taps = TapsOf(string.Concat(Enumerable.Repeat("2 teal 4 sand 6 coral 3 teal ", 1)) + Repeated("5 teal 4 sand 6 coral", 4) + "2 teal");
        var reading = taps.Read();

        Assert.Equal(["sand", "coral", "teal"], reading.Sections);
        Assert.Equal([4, 6, 3], Assert.Single(reading.Balls).Repeats[0].Select((n, j) => j == 2 ? 3 : n));
        Assert.All(reading.Balls[0].Repeats.Skip(1), row => Assert.Equal([4, 6, 5], row));
        Assert.StartsWith("The sequence has come round five times: sand, coral, teal, about 15.", reading.Words, StringComparison.Ordinal);
    }

    [Fact]
    public void Before_the_colours_have_come_round_the_maker_goes_on()
    {
        Assert.Equal("Tap the colour of each stitch as you work it.", new TappedStitches().Read().Words);
        var reading = TapsOf("3 teal 4 sand 6 coral").Read();
        Assert.Equal(TapProgress.NotRound, reading.Progress);
        Assert.Equal("So far: teal, sand, coral. Go on until the colours have come round twice.", reading.Words);
    }

    [Fact]
    public void Rows_are_promised_where_rows_are_marked()
    {
        var taps = TapsOf("3 teal 4 sand 6 coral | 5 teal 4 sand 4 coral | 2 coral 5 teal 4 sand 2 coral | 4 coral 5 teal 4 sand |");
        var reading = taps.Read(tolerance: 0.5);
        Assert.Equal(TapProgress.GoOn, reading.Progress);
        Assert.Equal((reading.MoreStitches + 12) / 13, reading.MoreRows);
        Assert.Contains($" {TapWords.Number(reading.MoreRows)} more row", reading.Words, StringComparison.Ordinal);
    }

    [Fact]
    public void A_row_of_another_length_is_told()
    {
        var taps = TapsOf("3 teal 4 sand 6 coral | 5 teal 4 sand 4 coral | 2 coral 5 teal 4 sand 1 coral | 4 coral 5 teal 4 sand |");
        var remark = Assert.Single(taps.Read().Remarks, r => r.Kind == TapRemarkKind.RowOfOtherLength);
        Assert.Equal((3, 27), (remark.Row, remark.Tap));
        Assert.StartsWith("Row 3 has 12 taps where the others have 13", remark.Text, StringComparison.Ordinal);
    }

    [Fact]
    public void A_sequence_longer_than_its_colours_is_found()
    {
        var reading = TapsOf("2 sand " + Repeated("9 teal 4 sand 5 teal 4 sand", 6) + "2 teal").Read();
        Assert.Equal(4, reading.Sections.Length);
        Assert.Single(reading.Remarks, r => r.Kind == TapRemarkKind.LongerPeriod);
    }

    [Fact]
    public void There_and_back_is_told()
    {
        var reading = TapsOf("2 teal " + Repeated("5 sand 6 coral 5 sand 4 teal", 5)).Read();
        Assert.Contains("there and back", Assert.Single(reading.Remarks).Text, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("teal,sand,coral", null)]
    [InlineData("sand,CORAL,teal", null)]
    [InlineData("coral,sand,teal", TapRemarkKind.ReversedBall)]
    [InlineData("teal,sand,coral,teal,sand,coral", TapRemarkKind.ShorterPeriod)]
    [InlineData("teal,sand,coral,slate", TapRemarkKind.OtherSequence)]
    public void The_list_is_held_against_the_taps(string listed, TapRemarkKind? kind)
    {
        var reading = TapsOf(Repeated("5 teal 4 sand 6 coral", 4)).Read(listed: [.. listed.Split(',')]);
        Assert.Equal(kind is { } k ? [k] : [], reading.Remarks.Select(r => r.Kind));
    }

    /// <summary>What is handed over is measured by the estimator that all counts go through.</summary>
    [Fact]
    public void The_counts_are_measured_as_counted_balls()
    {
        var tapper = Tapper(5);
        var yarn = new TappedYarn([5.3, 4.4, 7.1, 6.2], [0, 1, 2, 3]);
        var reading = SimulatedTapper.Taps(tapper.Tap(yarn, 230)).Read();
        var into = reading.Into(YarnOf(null), name => new Srgb((byte)(40 * (name[1] - '0')), 0, 0));
        Assert.True(MeasuredYarn.TryMeasure(into, FabricOf(Unravelled(100, 710)), out var measured, out _));
        Assert.Equal(reading.Estimate!.Repeats, measured.Natural.Counted!.Repeats);
        Assert.Equal(reading.Estimate.Sequence.Value, measured.Natural.Total.Value, 0.1);
    }

    [Fact]
    public void Undo_takes_back_one_tap_and_the_rows_end_behind_it()
    {
        var taps = TapsOf("2 teal 1 sand |");
        Assert.Equal((3, 1), (taps.Count, taps.Rows));
        Assert.True(taps.Undo());
        Assert.Equal((2, 0), (taps.Count, taps.Rows));
        Assert.True(taps.Undo() && taps.Undo());
        Assert.False(taps.Undo());
    }

    [Theory]
    [InlineData("teal\nteal, sand 7", 2, 12, "7 has no colour behind it")]
    [InlineData("teal 0 sand", 1, 6, "is no number of taps")]
    [InlineData("teal 3x sand", 1, 6, "is no number of taps")]
    [InlineData("# only a comment\n", 1, 1, "There is no tap")]
    [InlineData("teal te@l", 1, 6, "is no colour")]
    [InlineData("teal 4 | sand", 1, 6, "4 has no colour behind it")]
    public void Faults_are_located(string text, int line, int column, string words)
    {
        var (_, faults) = TapText.Read(Encoding.UTF8.GetBytes(text));
        var fault = Assert.Single(faults);
        Assert.Equal((line, column), (fault.Line, fault.Column));
        Assert.Contains(words, fault.Text, StringComparison.Ordinal);
    }

    [Fact]
    public void Too_much_is_refused()
    {
        Assert.Contains("more than 5000 taps", Assert.Single(TapText.Read(Encoding.UTF8.GetBytes(Repeated("500 teal", 11))).Faults).Text, StringComparison.Ordinal);
        var many = string.Join(' ', Enumerable.Range(0, 40).Select(i => $"c{i}"));
        Assert.Equal(8, TapText.Read(Encoding.UTF8.GetBytes(many)).Faults.Length);
        Assert.Single(TapText.Read(new byte[TapText.MostBytes + 1]).Faults);
        Assert.Contains("UTF-8", Assert.Single(TapText.Read([0xff, 0xfe, 0x41]).Faults).Text, StringComparison.Ordinal);
    }

    /// <summary>Whatever is tapped, reading answers, and never with a number that is none.</summary>
    [Fact]
    public void Any_taps_are_read() => Gen.Int[0, 5].Array[0, 300].Sample(colours =>
    {
        var taps = new TappedStitches();
        foreach (var colour in colours)
            taps.Tap($"c{colour}");
        var reading = taps.Read();
        return reading.Words.Length > 0 && (reading.Estimate is not { } e || (double.IsFinite(e.Sequence.Value) && double.IsFinite(e.Sequence.StandardError)));
    }, iter: 300, seed: "0000taps0001");

    private static SimulatedTapper Tapper(ulong seed) => new(0.02, 50, 0.02, 0.03, 900_000 + seed);

    private static string Repeated(string text, int times) => string.Join(' ', Enumerable.Repeat(text, times)) + " ";

    private static TappedStitches TapsOf(string text)
    {
        var (taps, faults) = TapText.Read(Encoding.UTF8.GetBytes(text));
        Assert.Empty(faults);
        return taps;
    }
}
