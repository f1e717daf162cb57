using System.Collections.Immutable;
using Dyepath.Core.Limits;
using Dyepath.Core.Yarns;

namespace Dyepath.Core.Measuring;

/// <summary>
/// Reads one ball's rows of counts: where a colour was missed or recorded twice, the runs before and after it are
/// taken apart, so that a slip spoils no estimate.
/// </summary>
internal static class CountRecord
{
    /// <summary>How far a slip must improve the sum of squares: chance reaches it in fewer than 1 record in 200.</summary>
    private const double WorthASlip = 25;

    /// <summary>Rows needed before a slip can be told from a row that merely differs.</summary>
    private const int LeastRows = 3;

    public static (ImmutableArray<CountedRun> Runs, ImmutableArray<MeasuringFinding> Findings) Read(
        Yarn yarn, int ball, HandsPrior hands, Effort? effort = null, double boundary = 0)
    {
        var sections = yarn.Sections.Length;
        var rows = yarn.Counted[ball].Repeats;
        var runs = ImmutableArray.CreateBuilder<CountedRun>();
        var findings = ImmutableArray.CreateBuilder<MeasuringFinding>();
        var whole = rows.Where(r => r.Length == sections).ToArray();
        for (var r = 0; r < rows.Length;)
        {
            if (yarn.Counted[ball].IsBegun(r, sections))
                break;
            if (rows[r].Length != sections)
            {
                findings.Add(OtherShape(yarn, ball, r, whole, new(hands, boundary)));
                r++;
                continue;
            }
            var end = r;
            while (end < rows.Length && rows[end].Length == sections)
                end++;
            AddRun(yarn, new CountedRun(ball, r, rows[r..end]), new(hands, boundary), runs, findings, effort);
            r = end;
        }
        return ([.. runs.Where(run => run.Rows.Any(row => row.Sum() > 0))], findings.ToImmutable());
    }

    private static void AddRun(
        Yarn yarn,
        CountedRun run,
        CountDoubt doubt,
        ImmutableArray<CountedRun>.Builder runs,
        ImmutableArray<MeasuringFinding>.Builder findings,
        Effort? effort)
    {
        var sections = yarn.Sections.Length;
        var counts = run.Rows.SelectMany(row => row).ToArray();
        if (FindSlip(counts, sections, doubt, effort) is not { } slip)
        {
            runs.Add(run);
            return;
        }
        var row = slip.At / sections;
        var repeat = run.FirstRepeat + row;
        var place = $"yarn.counted[{run.Ball}].repeats[{repeat}]";
        var where = $"repeat {repeat + 1} of {yarn.Counted[run.Ball].Name}";
        if (row > 0)
            AddRun(yarn, run with { Rows = run.Rows[..row] }, doubt, runs, findings, effort);
        findings.Add(slip.Missed
            ? new(FindingKind.MissedSection, place,
                $"In {where} the count of {yarn.Sections[slip.At % sections].Name} seems to be missing: from there on the counts "
                + "fit the colours one place later. Put it in, or count that repeat again; until then the two parts are used separately.")
            : new(FindingKind.DoubledSection, place,
                $"In {where} {yarn.Sections[(slip.At + sections - 1) % sections].Name} seems to be recorded twice: from "
                + "there on the counts fit the colours one place earlier. Take one out; until then the two parts are used separately."));
        // The next whole repeat begins one place early after a missed colour, one late after a doubled one.
        var next = (row + 1) * sections + (slip.Missed ? -1 : 1);
        var after = counts.Skip(next).Chunk(sections).Where(c => c.Length == sections).Select(c => c.ToImmutableArray()).ToImmutableArray();
        if (after.Length > 0)
            AddRun(yarn, new CountedRun(run.Ball, repeat + 1, after), doubt, runs, findings, effort);
    }

    private static (int At, bool Missed)? FindSlip(int[] counts, int sections, CountDoubt doubt, Effort? effort)
    {
        if (counts.Length < LeastRows * sections || sections < 2)
            return null;
        var best = (Misfit: new CountGroups(counts, sections, 0, doubt, effort).Misfit - WorthASlip, At: -1, Missed: false);
        foreach (var missed in (bool[])[true, false])
        {
            // All counts begin as if after the slip; those before it go back to their own places one by one.
            var shift = missed ? 1 : -1;
            var groups = new CountGroups(counts, sections, shift, doubt, effort);
            if (!missed)
                groups.Remove(0, shift);
            for (var at = 0; at < counts.Length - 1; at++)
            {
                // Of two equal counts either may be the extra one: the later is.
                var sameDouble = !missed && !best.Missed && best.At > 0 && at == best.At + 1 && groups.Misfit < best.Misfit + 1e-9;
                if ((missed || at > 0) && (groups.Misfit < best.Misfit - 1e-9 || sameDouble))
                    best = (groups.Misfit, at, missed);
                groups.Remove(missed ? at : at + 1, shift);
                groups.Add(at, 0);
            }
        }
        return best.At < 0 ? null : (best.At, best.Missed);
    }

    private static MeasuringFinding OtherShape(
        Yarn yarn, int ball, int repeat, ImmutableArray<int>[] whole, CountDoubt doubt)
    {
        var sections = yarn.Sections.Length;
        var row = yarn.Counted[ball].Repeats[repeat];
        var place = $"yarn.counted[{ball}].repeats[{repeat}]";
        var where = $"Repeat {repeat + 1} of {yarn.Counted[ball].Name}";
        if (whole.Length > 0 && row.Length == sections - 1)
        {
            var missed = Enumerable.Range(0, sections).MinBy(skip => RowMisfit(row, whole, doubt, n => n < skip ? n : n + 1, -1));
            return new(FindingKind.MissedSection, place,
                $"{where} has {row.Length} counts for {sections} colours; {yarn.Sections[missed].Name} seems to be "
                + "missing. It is left out.");
        }
        if (whole.Length > 0 && row.Length == sections + 1)
        {
            var twice = Enumerable.Range(1, sections).Reverse().MinBy(drop =>
                RowMisfit(row, whole, doubt, n => n < drop ? n : n - 1, drop));
            return new(FindingKind.DoubledSection, place,
                $"{where} has {row.Length} counts for {sections} colours; {yarn.Sections[twice - 1].Name} seems to be "
                + "recorded twice. It is left out.");
        }
        return new(FindingKind.RepeatOfOtherShape, place,
            $"{where} has {row.Length} counts for {sections} colours. It is left out: give one count for each colour, in "
            + "the yarn's order.");
    }

    private static double RowMisfit(
        ImmutableArray<int> row, ImmutableArray<int>[] whole, CountDoubt doubt, Func<int, int> section, int dropped)
    {
        var sum = 0.0;
        for (var n = 0; n < row.Length; n++)
        {
            if (n == dropped)
                continue;
            var usual = whole.Average(w => w[section(n)]);
            sum += (row[n] - usual) * (row[n] - usual) / doubt.Variance(usual);
        }
        return sum;
    }
}
