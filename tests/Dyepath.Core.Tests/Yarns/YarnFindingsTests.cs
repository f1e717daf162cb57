using System.Collections.Immutable;
using Dyepath.Core.Fabrics;
using Dyepath.Core.Measuring;
using Dyepath.Core.Swatches;
using Dyepath.Core.Yarns;
using static Dyepath.Core.Tests.Yarns.MeasuredYarnTests;

namespace Dyepath.Core.Tests.Yarns;

public class YarnFindingsTests
{
    private static readonly double[] Ring = [5, 4, 9, 7];

    [Fact]
    public void A_missed_colour_is_placed_and_spoils_no_estimate()
    {
        var counts = Record(Ring, 8, 3).SelectMany(r => r).ToList();
        counts.RemoveAt(4 * 4 + 2);
        var measured = Measure(YarnOf(null, Rows(counts)), FabricOf(Unravelled(100, 710)));

        var finding = Assert.Single(measured.Findings);
        Assert.Equal(FindingKind.MissedSection, finding.Kind);
        Assert.Equal("yarn.counted[0].repeats[4]", finding.Place);
        Assert.Contains("slate", finding.Text, StringComparison.Ordinal);
        Assert.Equal(25, measured.Natural.Total.Value, 1.5);
    }

    [Fact]
    public void A_colour_recorded_twice_is_placed_and_spoils_no_estimate()
    {
        var counts = Record(Ring, 8, 5).SelectMany(r => r).ToList();
        counts.Insert(3 * 4 + 3, counts[3 * 4 + 2]);
        var measured = Measure(YarnOf(null, Rows(counts)), FabricOf(Unravelled(100, 710)));

        var finding = Assert.Single(measured.Findings);
        Assert.Equal(FindingKind.DoubledSection, finding.Kind);
        Assert.Equal("yarn.counted[0].repeats[3]", finding.Place);
        Assert.Contains("slate", finding.Text, StringComparison.Ordinal);
        Assert.Equal(25, measured.Natural.Total.Value, 1.5);
    }

    [Fact]
    public void A_missed_colour_is_found_wherever_it_was_missed()
    {
        int found = 0, tried = 0;
        for (ulong seed = 0; seed < 40; seed++)
        {
            for (var at = 4; at < 20; at++)
            {
                var counts = Record(Ring, 7, seed).SelectMany(r => r).ToList();
                counts.RemoveAt(at);
                var read = CountRecord.Read(YarnOf(null, Rows(counts)), 0, HandsPrior.Default);
                tried++;
                found += read.Findings.Any(
                    f => f.Kind == FindingKind.MissedSection && f.Place.EndsWith($"[{at / 4}]", StringComparison.Ordinal)) ? 1 : 0;
            }
        }
        Assert.True(found >= 0.97 * tried, $"{found} of {tried}");
    }

    [Fact]
    public void Two_slips_in_one_record_are_both_found()
    {
        var counts = Record(Ring, 16, 3).SelectMany(r => r).ToList();
        counts.RemoveAt(10 * 4 + 2);
        counts.RemoveAt(4 * 4 + 2);

        var read = CountRecord.Read(YarnOf(null, Rows(counts)), 0, HandsPrior.Default);

        Assert.Equal(2, read.Findings.Count(f => f.Kind == FindingKind.MissedSection));
        Assert.Equal(3, read.Runs.Length);
    }

    [Fact]
    public void The_longest_records_are_read()
    {
        var ring = Enumerable.Range(0, 64).Select(j => 3.0 + j % 7).ToArray();
        var sections = Enumerable.Range(0, 64).Select(j => new YarnSection($"c{j}", new((byte)j, 0, 0))).ToImmutableArray();
        var rows = Record(ring, 50, 3);
        var yarn = YarnOf(null, rows) with { Sections = sections };

        Assert.Empty(Measure(yarn, FabricOf(Unravelled(100, 710))).Findings);
        var slipped = rows.SelectMany(r => r).ToList();
        slipped.RemoveAt(64 * 20 + 30);
        var read = CountRecord.Read(
            yarn with { Counted = [new("A", [.. slipped.Chunk(64).Where(c => c.Length == 64).Select(c => c.ToImmutableArray())])] }, 0,
            HandsPrior.Default);
        Assert.Equal("yarn.counted[0].repeats[20]", Assert.Single(read.Findings).Place);
    }

    [Theory]
    [InlineData(5, 4, 9, 7)]
    [InlineData(5.5, 4.5, 5, 5.6)]
    public void Honest_records_seldom_raise_a_finding(double a, double b, double c, double d)
    {
        var raised = 0;
        const int records = 300;
        for (ulong seed = 0; seed < records; seed++)
        {
            var yarn = YarnOf(null, Record([a, b, c, d], 6, seed), Record([a, b, c, d], 8, seed + 10_000));
            raised += Measure(yarn, FabricOf(Unravelled(100, 710))).Findings.IsEmpty ? 0 : 1;
        }
        // Four tests at 1 % each.
        Assert.True(raised <= 0.045 * records, $"{raised} of {records}");
    }

    [Fact]
    public void A_repeat_in_the_counting_waits_without_a_word()
    {
        var rows = Record(Ring, 4, 2);
        var measured = Measure(YarnOf(null, rows.Add([5, 4])), FabricOf(Unravelled(100, 710)));

        Assert.Empty(measured.Findings);
        Assert.Equal(4, measured.Natural.Counted!.Repeats);
        Assert.Equal(Measure(YarnOf(null, rows), FabricOf(Unravelled(100, 710))).Natural.Total, measured.Natural.Total);
    }

    [Fact]
    public void What_more_repeats_would_leave_agrees_with_what_they_left()
    {
        var measured = Measure(YarnOf(null, Record(Ring, 12, 2)), FabricOf(Unravelled(100, 710)));

        Assert.Equal(measured.Natural.Total.StandardError, measured.SequenceErrorAfter(12), 0.02);
        Assert.True(measured.SequenceErrorAfter(24) < measured.SequenceErrorAfter(12));
    }

    [Theory]
    [InlineData(new[] { 5, 4, 7 }, FindingKind.MissedSection, "slate")]
    [InlineData(new[] { 5, 4, 9, 9, 7 }, FindingKind.DoubledSection, "slate")]
    [InlineData(new[] { 5, 4 }, FindingKind.RepeatOfOtherShape, "2 counts for 4 colours")]
    public void A_row_of_another_length_is_named_and_left_out(int[] row, FindingKind kind, string words)
    {
        var rows = Record(Ring, 4, 2).Insert(2, [.. row]);
        var measured = Measure(YarnOf(null, rows), FabricOf(Unravelled(100, 710)));

        var finding = Assert.Single(measured.Findings);
        Assert.Equal((kind, "yarn.counted[0].repeats[2]"), (finding.Kind, finding.Place));
        Assert.Contains(words, finding.Text, StringComparison.Ordinal);
        Assert.Equal(4, measured.Natural.Counted!.Repeats);
    }

    [Fact]
    public void An_odd_count_is_named()
    {
        var rows = Record(Ring, 6, 2);
        rows = rows.SetItem(3, rows[3].SetItem(1, 7));
        var finding = Measure(YarnOf(null, rows), FabricOf(Unravelled(100, 710))).Findings.First(f => f.Kind == FindingKind.OddRepeat);

        Assert.Equal("yarn.counted[0].repeats[3][1]", finding.Place);
        Assert.Contains("7 stitches of foam", finding.Text, StringComparison.Ordinal);
        var linen = FabricOf(Unravelled(100, 710)) with { Stitch = FabricStitch.Linen };
        Assert.Contains(Measure(YarnOf(null, rows), linen).Findings, f => f.Text.Contains("7 pairs of foam", StringComparison.Ordinal));
    }

    [Fact]
    public void A_ball_of_another_sequence_is_named()
    {
        var measured = Measure(
            YarnOf(null, Record(Ring, 6, 2), Record(Ring, 6, 3), Record([6, 5, 10, 8], 6, 4)), FabricOf(Unravelled(100, 710)));

        Assert.Contains(measured.Findings, f => f.Kind == FindingKind.BallDisagrees && f.Place == "yarn.counted[2]");
    }

    [Fact]
    public void A_ball_that_drifts_is_named()
    {
        var measured = Measure(YarnOf(null, Record(Ring, 5, 2).AddRange(Record([6, 5, 10, 8], 5, 4))), FabricOf(Unravelled(100, 710)));

        Assert.Contains(measured.Findings, f => f.Kind == FindingKind.BallDrifts && f.Place == "yarn.counted[0]");
    }

    [Fact]
    public void A_shorter_sequence_inside_is_found()
    {
        var yarn = YarnOf(null, Record([5, 8, 5, 8], 6, 2));
        yarn = yarn with { Sections = [yarn.Sections[0], yarn.Sections[1], yarn.Sections[0], yarn.Sections[1]] };

        var finding = Assert.Single(Measure(yarn, FabricOf(Unravelled(100, 710))).Findings, f => f.Kind == FindingKind.ShorterPeriod);
        Assert.Contains("after 2 sections", finding.Text, StringComparison.Ordinal);
    }

    [Fact]
    public void Equal_colours_of_unequal_length_are_no_shorter_sequence()
    {
        var yarn = YarnOf(null, Record([5, 8, 9, 8], 6, 2));
        yarn = yarn with { Sections = [yarn.Sections[0], yarn.Sections[1], yarn.Sections[0], yarn.Sections[1]] };

        var findings = Measure(yarn, FabricOf(Unravelled(100, 710))).Findings;
        Assert.DoesNotContain(findings, f => f.Kind == FindingKind.ShorterPeriod);
        Assert.Contains(findings, f => f.Kind == FindingKind.ThereAndBack);
    }

    [Fact]
    public void A_there_and_back_sequence_is_found()
    {
        var yarn = YarnOf([36, 50, 60, 50]);
        yarn = yarn with { Sections = yarn.Sections.SetItem(3, yarn.Sections[1]) };

        var finding = Assert.Single(Measure(yarn, FabricOf(Unravelled(100, 710))).Findings);
        Assert.Equal(FindingKind.ThereAndBack, finding.Kind);
        Assert.Contains("about sand", finding.Text, StringComparison.Ordinal);
    }

    [Fact]
    public void Counts_and_lengths_that_disagree_are_named_and_the_counts_used()
    {
        var measured = Measure(YarnOf([36, 29, 85, 50], Record(Ring, 8, 2)), FabricOf(Unravelled(100, 710)));

        Assert.Contains(measured.Findings, f => f.Kind == FindingKind.CountsAndLengthsDisagree && f.Place == "yarn.sections[2].length");
        Assert.Equal(9, measured.Stitches[2]);
    }

    [Fact]
    public void Hands_far_wilder_than_supposed_are_named()
    {
        var rows = new SimulatedMaker(0.12, 3, 0.02, 1).Count(Ring, 20);
        var measured = Measure(YarnOf(null, rows), FabricOf(Unravelled(100, 710)) with { Hands = new HandSteadiness(0.005, 50) });

        Assert.Contains(measured.Findings, f => f.Kind == FindingKind.HandsUnlikePrior);
    }

    private static ImmutableArray<ImmutableArray<int>> Rows(List<int> counts) =>
        [.. counts.Chunk(4).Where(c => c.Length == 4).Select(c => c.ToImmutableArray())];
}
