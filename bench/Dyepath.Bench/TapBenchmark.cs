using System.Diagnostics;
using System.Globalization;
using Dyepath.Core.Measuring;
using Dyepath.Core.Measuring.Taps;
using Dyepath.Core.Tests.Yarns;

namespace Dyepath.Bench;

/// <summary>
/// Sequences found from taps alone, over simulated yarns and makers: how often found, how often the interval holds the truth, whether what
/// is promised is kept, what is noticed of each trouble and how often an honest record is blamed, and how long a reading takes.
/// </summary>
internal static class TapBenchmark
{
    public static void Run(TextWriter output, bool quick)
    {
        var trials = quick ? 200 : 1_000;
        output.WriteLine("taps: hands 2 %, memory 50, dye 2 %, misreads 3 %, 3 to 7 sections of 3 to 9 stitches");
        output.WriteLine("| sequences tapped | found | sequence within its 95 % | sections within theirs | half width, stitches | blamed |");
        output.WriteLine("| --- | --- | --- | --- | --- | --- |");
        foreach (var (repeats, spread) in new (double, double)[] { (2.5, 0.02), (3.5, 0.02), (5, 0.02), (8, 0.02), (12, 0.02), (25, 0.02), (8, 0.03), (25, 0.03), (8, 0.01) })
        {
            int found = 0, held = 0, sections = 0, sectionsHeld = 0, blamed = 0, estimated = 0;
            var width = 0.0;
            for (var t = 0; t < trials; t++)
            {
                var tapper = new SimulatedTapper(spread, 50, 0.02, 0.03, 70_000 + (ulong)t);
                var yarn = TappedYarn.Random(tapper.Chance);
                var reading = SimulatedTapper.Taps(tapper.Tap(yarn, (int)(repeats * yarn.Sequence))).Read();
                var right = yarn.IsTurnOf(reading.Sections);
                found += right ? 1 : 0;
                blamed += reading.Remarks.Any(r => r.Kind is not TapRemarkKind.ThereAndBack) ? 1 : 0;
                if (reading.Estimate is not { } estimate)
                    continue;
                estimated++;
                held += Holds(estimate.Sequence, yarn.Sequence) ? 1 : 0;
                width += 1.96 * estimate.Sequence.StandardError;
                if (!right)
                    continue;
                var turn = Turn(yarn, reading);
                for (var j = 0; j < estimate.Sections.Length; j++)
                {
                    sections++;
                    sectionsHeld += Holds(estimate.Sections[j], yarn.Sections[(j + turn) % estimate.Sections.Length]) ? 1 : 0;
                }
            }
            output.WriteLine(Line(
                $"| {repeats}{(spread == 0.02 ? "" : $" (hands {spread * 100:0} %)")} | {Share(found, trials)} | {Share(held, estimated)} | {Share(sectionsHeld, sections)} | {width / estimated:0.00} | {Share(blamed, trials)} |"));
        }
        Promises(output, trials);
        Troubles(output, trials / 2);
        Times(output);
    }

    private static void Promises(TextWriter output, int trials)
    {
        output.WriteLine("| promise | kept | told when enough: within the tolerance |");
        output.WriteLine("| --- | --- | --- |");
        int promised = 0, kept = 0, sure = 0, right = 0, never = 0;
        for (var t = 0; t < trials; t++)
        {
            var tapper = new SimulatedTapper(0.02, 50, 0.02, 0.03, 170_000 + (ulong)t);
            var yarn = TappedYarn.Random(tapper.Chance);
            var all = tapper.Tap(yarn, 2_000);
            var now = (int)((1.6 + 2.5 * tapper.Chance.Uniform()) * yarn.Sequence);
            var reading = SimulatedTapper.Taps(all.Take(now)).Read();
            if (reading.Progress == TapProgress.NotByTapping)
                never++;
            if (reading.Progress == TapProgress.GoOn)
            {
                promised++;
                reading = SimulatedTapper.Taps(all.Take(now + reading.MoreStitches)).Read();
                kept += reading.Progress == TapProgress.Sure ? 1 : 0;
            }
            if (reading.Progress != TapProgress.Sure)
                continue;
            sure++;
            right += Math.Abs(reading.Estimate!.Sequence.Value - yarn.Sequence) <= Math.Max(1, yarn.Sequence / 25) ? 1 : 0;
        }
        output.WriteLine(Line($"| k more stitches make it sure ({promised} promises, {never} never) | {Share(kept, promised)} | {Share(right, sure)} |"));
    }

    private static void Troubles(TextWriter output, int trials)
    {
        output.WriteLine("| trouble | 6 sequences: named | otherwise remarked | 12: named | otherwise remarked | 24: named | otherwise remarked |");
        output.WriteLine("| --- | --- | --- | --- | --- | --- | --- |");
        foreach (var trouble in Enum.GetValues<TapTrouble>())
        {
            output.Write($"| {trouble} |");
            foreach (var repeats in new[] { 6, 12, 24 })
            {
                int named = 0, other = 0;
                for (var t = 0; t < trials; t++)
                {
                    var tapper = new SimulatedTapper(0.02, 50, 0.02, 0.03, 370_000 + (ulong)t);
                    var yarn = TappedYarn.Random(tapper.Chance);
                    var kinds = SimulatedTapper.Taps(tapper.Tap(yarn, (int)(repeats * yarn.Sequence), trouble)).Read().Remarks.Select(r => r.Kind).ToArray();
                    named += kinds.Contains(KindOf(trouble)) ? 1 : 0;
                    other += kinds.Any(k => k != KindOf(trouble) && k != TapRemarkKind.ThereAndBack) ? 1 : 0;
                }
                output.Write(Line($" {Share(named, trials)} | {Share(other, trials)} |"));
            }
            output.WriteLine();
        }
        Shapes(output, trials);
    }

    /// <summary>Yarns whose shape is to be found: there and back, and twice as long as their colours say.</summary>
    private static void Shapes(TextWriter output, int trials)
    {
        output.WriteLine("| shape of the yarn, 6 sequences | noticed | other yarns of such colours blamed |");
        output.WriteLine("| --- | --- | --- |");
        int back = 0, backBlamed = 0, twice = 0, twiceBlamed = 0;
        for (var t = 0; t < trials; t++)
        {
            var tapper = new SimulatedTapper(0.02, 50, 0.02, 0.03, 570_000 + (ulong)t);
            double Length() => 3 + 6 * tapper.Chance.Uniform();
            var (a, b, c, d) = (Length(), Length(), Length(), Length());
            bool Reads(TappedYarn yarn, TapRemarkKind kind) =>
                SimulatedTapper.Taps(tapper.Tap(yarn, (int)(6 * yarn.Sequence))).Read().Remarks.Any(r => r.Kind == kind);
            back += Reads(new([a, b, c, d, c, b], [0, 1, 2, 3, 2, 1]), TapRemarkKind.ThereAndBack) ? 1 : 0;
            backBlamed += Reads(new([a, b, c, d, c + 3, b], [0, 1, 2, 3, 2, 1]), TapRemarkKind.ThereAndBack) ? 1 : 0;
            twice += Reads(new([a, b, c, a + 3, b, c], [0, 1, 2, 0, 1, 2]), TapRemarkKind.LongerPeriod) ? 1 : 0;
            twiceBlamed += Reads(new([a, b, c], [0, 1, 2]), TapRemarkKind.LongerPeriod) ? 1 : 0;
        }
        output.WriteLine(Line($"| there and back (others: one section 3 stitches longer) | {Share(back, trials)} | {Share(backBlamed, trials)} |"));
        output.WriteLine(Line($"| twice its colours (one section 3 stitches longer every other time) | {Share(twice, trials)} | {Share(twiceBlamed, trials)} |"));
    }

    private static void Times(TextWriter output)
    {
        foreach (var stitches in new[] { 200, 2_000, 5_000 })
        {
            var tapper = new SimulatedTapper(0.02, 50, 0.02, 0.03, 7);
            var all = tapper.Tap(TappedYarn.Random(tapper.Chance), stitches);
            var taps = SimulatedTapper.Taps(all.Take(stitches - 50));
            Stopwatches.Warm(() => SimulatedTapper.Taps(all).Read());
            var times = new List<double>();
            foreach (var colour in all.Skip(stitches - 50))
            {
                taps.Tap(colour);
                var start = Stopwatch.GetTimestamp();
                taps.Read();
                times.Add(Stopwatch.GetElapsedTime(start).TotalMilliseconds);
            }
            times.Sort();
            output.WriteLine(Line($"  a reading after each of {stitches} taps: median {times[times.Count / 2]:0.0} ms, slowest {times[^1]:0.0} ms"));
        }
    }

    private static TapRemarkKind KindOf(TapTrouble trouble) => trouble switch
    {
        TapTrouble.Miscount => TapRemarkKind.Miscount,
        TapTrouble.Skipped => TapRemarkKind.SkippedSection,
        TapTrouble.Doubled => TapRemarkKind.DoubledSection,
        TapTrouble.Knot => TapRemarkKind.Knot,
        TapTrouble.Reversed => TapRemarkKind.ReversedBall,
        TapTrouble.None => TapRemarkKind.OtherSequence,
        _ => TapRemarkKind.Drift,
    };

    private static int Turn(TappedYarn yarn, TapReading reading) => Enumerable.Range(0, yarn.Colours.Length).Where(turn =>
        Enumerable.Range(0, yarn.Colours.Length).All(j => reading.Sections[j] == TappedYarn.Name(yarn.Colours[(j + turn) % yarn.Colours.Length])))
        .MinBy(turn => Enumerable.Range(0, yarn.Colours.Length).Sum(j => Math.Abs(reading.Estimate!.Sections[j].Value - yarn.Sections[(j + turn) % yarn.Colours.Length])));

    private static bool Holds(Estimate estimate, double truth) => Math.Abs(estimate.Value - truth) <= 1.959964 * estimate.StandardError;

    private static string Share(int some, int all) => all == 0 ? "-" : ((double)some / all).ToString("0.000", CultureInfo.InvariantCulture);

    private static string Line(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
