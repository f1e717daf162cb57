using System.Collections.Immutable;
using System.Globalization;
using Dyepath.Core.Colours;
using Dyepath.Core.Yarns;

namespace Dyepath.Core.Measuring.Taps;

/// <summary>From taps to sections, their order and counts, and what went wrong; the estimating itself is <see cref="SequenceEstimator"/>'s.</summary>
internal static class TapReader
{
    /// <summary>Boundaries estimated together: few enough to be asked for after every tap.</summary>
    private const int MostBoundaries = 64;

    /// <summary>Whole sequences before one is called sure, however even they are: the second confirms the first.</summary>
    private const int FewestRepeats = 2;

    /// <summary>The error promised for later is a little larger than the one foreseen, since the counts to come are not known.</summary>
    private const double Reserve = 1.05;

    private const double WaryOfHands = 1.25;

    public static TapReading Read(TappedStitches taps, HandsPrior hands, ImmutableArray<string> listed, double? tolerance)
    {
        var runs = TapRun.Of(taps.Taps);
        if (TapCycleSearch.Find(runs, hands) is not var (cycle, sections, times))
        {
            return new TapReading(TapProgress.NotRound, [], [], null, 0, 0, 0)
            {
                Words = TapWords.NotRound([.. TapRun.Healed(runs).Select(run => taps.Colours[run.Colour])]),
                Remarks = [.. TapRemarks.Rows(taps)],
            };
        }
        var (breaks, stretches) = TapBreaks.Of(cycle, sections, hands);
        var (order, counted) = Rows(cycle, stretches);
        ImmutableArray<string> names = [.. order.Select(j => taps.Colours[cycle.Colours[j]])];
        var doubt = SectionDoubt.Of(order.Select(_ => hands.Dye));
        doubt = doubt with { Boundary = [.. order.Select(_ => TapAlignment.Misreads)] };
        var estimate = counted.IsEmpty ? null : taps.Estimate(counted, hands, () => SequenceEstimator.Estimate(
            counted, HandsFit.Widened(counted, hands, doubt), doubt, null, MostBoundaries));
        var sequence = estimate?.Sequence.Value ?? cycle.Total;
        var reading = new TapReading(
            TapProgress.GoOn, names,
            [.. counted.Select((run, i) => new CountedBall(counted.Length == 1 ? "tapped" : Invariant($"tapped, part {i + 1}"), run.Rows))],
            estimate, (int)(taps.Count / sequence), 0, 0)
        {
            Words = "",
        };
        reading = Promised(reading, taps, cycle, stretches, estimate?.Hands ?? hands, doubt, tolerance ?? Math.Max(1, sequence / 25));
        return reading with
        {
            Words = TapWords.Of(reading, sequence),
            Remarks =
            [
                .. breaks.Select(b => TapRemarks.Of(b, taps, cycle, sections)),
                .. times > 1 ? [TapRemarks.LongerPeriod(names, times)] : (ReadOnlySpan<TapRemark>)[],
                .. estimate is null ? [] : TapRemarks.Symmetries(names, estimate),
                .. TapRemarks.Drift(taps, stretches, cycle.Count, hands),
                .. TapRemarks.Against(names, listed),
                .. TapRemarks.Rows(taps),
            ],
        };
    }

    /// <summary>The sections' order, begun where most whole sequences are had from the stretches, and those sequences.</summary>
    private static (ImmutableArray<int> Order, ImmutableArray<CountedRun> Runs) Rows(TapCycle cycle, List<List<TappedSection>> stretches)
    {
        var count = cycle.Count;
        var first = stretches.Count > 0 ? stretches[0][0].Section : 0;
        var begin = Enumerable.Range(0, count).Select(turn => (first + turn) % count)
            .MaxBy(j => stretches.Sum(stretch => (stretch.Count - Before(stretch, j, count)) / count));
        var runs = stretches.Select((stretch, ball) => new CountedRun(ball, 0,
            [
                .. stretch.Skip(Before(stretch, begin, count)).Select(section => section.Taps).Chunk(count).Where(row => row.Length ==
                    count)
                    .Select(row => row.ToImmutableArray()),
            ])).Where(run => run.Rows.Length > 0);
        return ([.. Enumerable.Range(0, count).Select(turn => (begin + turn) % count)], [.. runs]);
    }

    /// <summary>Sections of a stretch before the first one of a kind; all where there is none.</summary>
    private static int Before(List<TappedSection> stretch, int section, int count) =>
        Math.Min(stretch.Count, (section - stretch[0].Section + count) % count);

    private static TapReading Promised(
        TapReading reading, TappedStitches taps, TapCycle cycle, List<List<TappedSection>> stretches, HandsPrior hands, SectionDoubt doubt,
        double tolerance)
    {
        var need = tolerance / Normal.TwoSided(0.95);
        var repeats = reading.Balls.Sum(ball => ball.Repeats.Length);
        if (repeats >= FewestRepeats && reading.Estimate!.Sequence.StandardError <= need)
            return reading with { Progress = TapProgress.Sure };
        var lengths = reading.Estimate is { } estimate ? estimate.Sections.Select(s => Math.Max(s.Value, 0.1)).ToArray() : [..
            cycle.Lengths];
        var last = reading.Balls.IsEmpty ? 0 : reading.Balls[^1].Repeats.Length;
        // The counts to come may show that the hands are less even than assumed.
        var wary = hands.IsMakersOwn || hands.IsFitted ? hands
            : new HandsPrior(Math.Min(WaryOfHands * hands.Spread, HandsPrior.Spreads.Largest), hands.Memory, hands.Dye);
        double Variance(int m, HandsPrior of) => CountingPlan.SequenceVariance(lengths, doubt.Dye, of, m, doubt.MeanBoundary);
        var others = reading.Estimate is { } e && last > 0
            ? Math.Max(0, 1 / (e.Sequence.StandardError * e.Sequence.StandardError) - 1 / Variance(last, hands)) : 0;
        var more = 1;
        while (more <= CountingPlan.MostRepeats
            && (repeats + more < FewestRepeats || others + 1 / Variance(last + more, wary) < Reserve * Reserve / (need * need)))
        {
            more++;
        }
        var sequence = lengths.Sum();
        // What is begun of the next sequence is not needed again; its end is seen at the stitch after it.
        var begun = stretches.Count == 0 ? 0 : stretches[^1].Sum(s => s.Taps) - (reading.Balls.IsEmpty ? 0 :
            reading.Balls[^1].Repeats.Sum(r => r.Sum()));
        var stitches = (int)Math.Ceiling(more * sequence - Math.Clamp(begun, 0, sequence) + 2 + 0.03 * more * sequence);
        if (more > CountingPlan.MostRepeats || taps.Count + stitches > TappedStitches.Counts.Largest)
            return reading with { Progress = TapProgress.NotByTapping };
        var row = TapRemarks.UsualRow(taps);
        return reading with { MoreStitches = stitches, MoreRows = row is { } length ? (stitches + length - 1) / length : 0 };
    }

    private static string Invariant(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
