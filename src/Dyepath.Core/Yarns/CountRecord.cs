using System.Collections.Immutable;
using Dyepath.Core.Swatches;

namespace Dyepath.Core.Yarns;

/// <summary>
/// Reads one ball's rows of counts: where a colour was missed or recorded twice, the runs before and after it are
/// taken apart, so that a slip spoils no estimate.
/// </summary>
internal static class CountRecord
{
    /// <summary>Squares beyond this add nothing more, so that one odd count does not pass for a slip.</summary>
    private const double LargestSquare = 16;

    /// <summary>How far a slip must improve the sum of squares: chance reaches it in fewer than 1 record in 200.</summary>
    private const double WorthASlip = 25;

    /// <summary>Rows needed before a slip can be told from a row that merely differs.</summary>
    private const int LeastRows = 3;

    public static (ImmutableArray<CountedRun> Runs, ImmutableArray<MeasuringFinding> Findings) Read(
        Yarn yarn, int ball, HandsPrior hands)
    {
        var sections = yarn.Sections.Length;
        var rows = yarn.Counted[ball].Repeats;
        var runs = ImmutableArray.CreateBuilder<CountedRun>();
        var findings = ImmutableArray.CreateBuilder<MeasuringFinding>();
        var whole = rows.Where(r => r.Length == sections).ToArray();
        for (var r = 0; r < rows.Length;)
        {
            if (rows[r].Length != sections)
            {
                findings.Add(OtherShape(yarn, ball, r, whole, hands));
                r++;
                continue;
            }
            var end = r;
            while (end < rows.Length && rows[end].Length == sections)
                end++;
            AddRun(yarn, new CountedRun(ball, r, rows[r..end]), hands, runs, findings);
            r = end;
        }
        return ([.. runs.Where(run => run.Rows.Any(row => row.Sum() > 0))], findings.ToImmutable());
    }

    private static void AddRun(
        Yarn yarn,
        CountedRun run,
        HandsPrior hands,
        ImmutableArray<CountedRun>.Builder runs,
        ImmutableArray<MeasuringFinding>.Builder findings)
    {
        var sections = yarn.Sections.Length;
        var counts = run.Rows.SelectMany(row => row).ToArray();
        if (FindSlip(counts, sections, hands) is not { } slip)
        {
            runs.Add(run);
            return;
        }
        var row = slip.At / sections;
        var repeat = run.FirstRepeat + row;
        var place = $"yarn.counted[{run.Ball}].repeats[{repeat}]";
        var where = $"repeat {repeat + 1} of {yarn.Counted[run.Ball].Name}";
        findings.Add(slip.Missed
            ? new(FindingKind.MissedSection, place,
                $"In {where} the count of {yarn.Sections[slip.At % sections].Name} seems to be missing: from there on the counts "
                + "fit the colours one place later. Put it in, or count that repeat again; until then the two parts are used separately.")
            : new(FindingKind.DoubledSection, place,
                $"In {where} {yarn.Sections[(slip.At + sections - 1) % sections].Name} seems to be recorded twice: from there on the counts "
                + "fit the colours one place earlier. Take one out; until then the two parts are used separately."));
        if (row > 0)
            runs.Add(run with { Rows = run.Rows[..row] });
        // The next whole repeat begins one place early after a missed colour, one late after a doubled one.
        var next = (row + 1) * sections + (slip.Missed ? -1 : 1);
        var after = counts.Skip(next).Chunk(sections).Where(c => c.Length == sections).Select(c => c.ToImmutableArray()).ToImmutableArray();
        if (after.Length > 0)
            runs.Add(new CountedRun(run.Ball, repeat + 1, after));
    }

    private static (int At, bool Missed)? FindSlip(int[] counts, int sections, HandsPrior hands)
    {
        if (counts.Length < LeastRows * sections || sections < 2)
            return null;
        var straight = Misfit(counts, sections, hands, counts.Length, 0);
        if (straight < WorthASlip)
            return null;
        var best = (Misfit: straight - WorthASlip, At: -1, Missed: false);
        for (var at = 0; at < counts.Length - 1; at++)
        {
            foreach (var missed in (bool[])[true, false])
            {
                if (!missed && at == 0)
                    continue;
                var misfit = Misfit(counts, sections, hands, at, missed ? 1 : -1);
                if (misfit < best.Misfit - 1e-9)
                    best = (misfit, at, missed);
            }
        }
        return best.At < 0 ? null : (best.At, best.Missed);
    }

    /// <summary>Sum of squares about each section's median when the labels shift by <paramref name="shift"/> from <paramref name="at"/> on.</summary>
    private static double Misfit(int[] counts, int sections, HandsPrior hands, int at, int shift)
    {
        var groups = new List<int>[sections];
        for (var j = 0; j < sections; j++)
            groups[j] = [];
        for (var n = 0; n < counts.Length; n++)
        {
            if (n == at && shift < 0)
                continue;
            groups[(n < at ? n : n + shift) % sections].Add(counts[n]);
        }
        var sum = 0.0;
        foreach (var group in groups)
        {
            group.Sort();
            if (group.Count == 0)
                continue;
            double median = group[group.Count / 2];
            var variance = CountVariance(median, hands);
            foreach (var count in group)
                sum += Math.Min((count - median) * (count - median) / variance, LargestSquare);
        }
        return sum;
    }

    private static MeasuringFinding OtherShape(
        Yarn yarn, int ball, int repeat, ImmutableArray<int>[] whole, HandsPrior hands)
    {
        var sections = yarn.Sections.Length;
        var row = yarn.Counted[ball].Repeats[repeat];
        var place = $"yarn.counted[{ball}].repeats[{repeat}]";
        var where = $"Repeat {repeat + 1} of {yarn.Counted[ball].Name}";
        if (whole.Length > 0 && row.Length == sections - 1)
        {
            var missed = Enumerable.Range(0, sections).MinBy(skip => RowMisfit(row, whole, hands, n => n < skip ? n : n + 1, -1));
            return new(FindingKind.MissedSection, place,
                $"{where} has {row.Length} counts for {sections} colours; {yarn.Sections[missed].Name} seems to be missing. It is left out.");
        }
        if (whole.Length > 0 && row.Length == sections + 1)
        {
            var twice = Enumerable.Range(1, sections).MinBy(drop => RowMisfit(row, whole, hands, n => n < drop ? n : n - 1, drop));
            return new(FindingKind.DoubledSection, place,
                $"{where} has {row.Length} counts for {sections} colours; {yarn.Sections[twice - 1].Name} seems to be recorded twice. It is left out.");
        }
        return new(FindingKind.RepeatOfOtherShape, place,
            $"{where} has {row.Length} counts for {sections} colours. It is left out: give one count for each colour, in the yarn's order.");
    }

    private static double RowMisfit(
        ImmutableArray<int> row, ImmutableArray<int>[] whole, HandsPrior hands, Func<int, int> section, int dropped)
    {
        var sum = 0.0;
        for (var n = 0; n < row.Length; n++)
        {
            if (n == dropped)
                continue;
            var usual = whole.Average(w => w[section(n)]);
            sum += (row[n] - usual) * (row[n] - usual) / CountVariance(usual, hands);
        }
        return sum;
    }

    /// <summary>Variance of one count: its two rounded ends, the dye, and hands that hold one tension over a section.</summary>
    private static double CountVariance(double stitches, HandsPrior hands) =>
        1.0 / 6 + stitches * stitches * hands.Dye * hands.Dye + hands.WanderVariance(stitches);
}
