using System.Collections.Immutable;
using System.Globalization;
using Dyepath.Core.Colours;
using Dyepath.Core.Yarns;

namespace Dyepath.Core.Measuring.Taps;

/// <summary>What went wrong, and what is odd about the yarn, in words that say what to do.</summary>
internal static class TapRemarks
{
    /// <summary>Rows of one length before another length is odd.</summary>
    private const int FewestRows = 3;

    /// <summary>A row is taken for miscounted up to so many stitches; beyond, it is meant to be another row.</summary>
    private const int MostMiscounted = 3;

    /// <summary>Whole sequences before halves, or ends, are compared.</summary>
    private const int FewestForDrift = 6;
    private const int FewestForSymmetry = 3;

    /// <summary>Standard errors between the halves: chance alone reaches it in 1 record of 1,000.</summary>
    private const double Drifted = 3.3;

    public static TapRemark Of(TapBreaks.Break seen, TappedStitches taps, TapCycle cycle, ImmutableArray<TappedSection> sections)
    {
        var section = sections[seen.At];
        var tap = section.First + 1;
        var row = RowOf(taps, section.First);
        var where = row > 0 ? Said($"In row {row}, from tap {tap} on") : Said($"From tap {tap} on");
        string Name(int j) => taps.Colours[cycle.Colours[(j + cycle.Count) % cycle.Count]];
        var usual = Math.Round(cycle.Lengths[section.Section], 1);
        var name = Name(section.Section);
        return new(seen.Kind, tap, row, seen.Kind switch
        {
            TapRemarkKind.Knot =>
                $"{where} the yarn goes on with {name} at another place of the sequence: there is a knot or a join. The two sides of it are counted apart; nothing need be done.",
            TapRemarkKind.ReversedBall =>
                $"{where} the colours come in the other order: the yarn was joined from its other end. For one pattern pull every ball from the same end.",
            TapRemarkKind.SkippedSection =>
                $"{where} {name} follows {Name(sections[seen.At - 1].Section)} and {Name(section.IsBackwards ? section.Section + 1 : section.Section - 1)} is missing between them. Look at the row: tap what was passed over.",
            TapRemarkKind.DoubledSection => Said(
                $"{where} {name} has {section.Taps} taps where {usual} are usual, twice as many: it was tapped twice, or there is a knot. It is left out."),
            _ => Said($"{where} {name} has {section.Taps} taps where {usual} are usual. Count it again; it is left out."),
        });
    }

    public static TapRemark LongerPeriod(ImmutableArray<string> names, int times) => new(TapRemarkKind.LongerPeriod, 0, 0,
        $"The colours come again after {names.Length / times} sections, but their lengths only after {names.Length}: all {names.Length} are one sequence.");

    /// <summary>A sequence that runs there and back.</summary>
    public static IEnumerable<TapRemark> Symmetries(ImmutableArray<string> names, SequenceEstimate estimate)
    {
        if (estimate.Repeats < FewestForSymmetry)
            return [];
        var kinds = names.Distinct().ToList();
        // Colours that stand for the names alone.
        var yarn = new Yarn("", "", null, new Ball(default, default), [.. names.Select(n =>
            new YarnSection(n, new Srgb((byte)kinds.IndexOf(n), 0, 0)))], []);
        return SequenceFindings.Symmetries(yarn, [.. estimate.Sections.Select(s => s.Value)], estimate.CovarianceMatrix)
            .Where(f => f.Kind == FindingKind.ThereAndBack).Select(f => new TapRemark(TapRemarkKind.ThereAndBack, 0, 0, f.Text));
    }

    /// <summary>The contrast of the halves: stitches that a sequence takes at first, and later on.</summary>
    public static IEnumerable<TapRemark> Drift(TappedStitches taps, List<List<TappedSection>> stretches, int count, HandsPrior hands)
    {
        var rows = stretches.SelectMany(stretch => stretch.Chunk(count).Where(row => row.Length == count)
            .Select(row => (Taps: row.Sum(s => s.Taps), First: row.Min(s => s.First), Dyed: row.Sum(s => (double)s.Taps *
                s.Taps)))).OrderBy(row => row.First).ToArray();
        var half = rows.Length / 2;
        if (rows.Length < FewestForDrift)
            yield break;
        var early = rows[..half].Average(row => row.Taps);
        var late = rows[^half..].Average(row => row.Taps);
        var stitches = rows[..half].Sum(row => row.Taps);
        var variance = 4 * hands.WanderVariance(stitches) - hands.WanderVariance(2 * stitches)
            + hands.Dye * hands.Dye * (rows[..half].Sum(row => row.Dyed) + rows[^half..].Sum(row => row.Dyed)) + 4 * (1.0 / 12 +
                TapAlignment.Misreads);
        if (Math.Abs(late - early) * half < Drifted * Math.Sqrt(variance))
            yield break;
        var first = rows[^half].First;
        yield return new(TapRemarkKind.Drift, first + 1, RowOf(taps, first), Said(
            $"A sequence takes {early:0.0} stitches at first and {late:0.0} later on, {Math.Abs(late / early - 1) * 100:0} % {(late > early ? "more" : "fewer")}: your hands have become {(late > early ? "tighter" : "looser")}, or the dye changes along the ball. Check the colours as you work, and tap again after a rest."));
    }

    /// <summary>The taps against the sections as the yarn's list has them.</summary>
    public static IEnumerable<TapRemark> Against(ImmutableArray<string> names, ImmutableArray<string> listed)
    {
        if (listed.Length < 2 || IsTurned(names, listed))
            yield break;
        if (IsTurned(names, [.. listed.Reverse()]))
        {
            yield return new(TapRemarkKind.ReversedBall, 0, 0,
                "The colours come in the other order than the list has them: the ball was pulled from its other end. Pull it from the usual end, or say in the list which end you use.");
        }
        else if (listed.Length > names.Length && listed.Length % names.Length == 0
            && IsTurned([.. Enumerable.Range(0, listed.Length).Select(j => names[j % names.Length])], listed))
        {
            yield return new(TapRemarkKind.ShorterPeriod, 0, 0,
                $"The list has the sequence {TapWords.Number(listed.Length / names.Length)} times over: list {string.Join(", ", names)} once.");
        }
        else if (names.Length > listed.Length && names.Length % listed.Length == 0
            && IsTurned(names, [.. Enumerable.Range(0, names.Length).Select(j => listed[j % listed.Length])]))
        {
            yield return new(TapRemarkKind.LongerPeriod, 0, 0,
                $"The list is only a part of the sequence, which is {TapWords.Number(names.Length / listed.Length)} times as long: list {string.Join(", ", names)}.");
        }
        else
        {
            yield return new(TapRemarkKind.OtherSequence, 0, 0,
                $"The taps show {string.Join(", ", names)}; the list has {string.Join(", ", listed)}. Look which of them the yarn is.");
        }
    }

    /// <summary>Rows that differ by a few taps from all others.</summary>
    public static IEnumerable<TapRemark> Rows(TappedStitches taps)
    {
        if (UsualRow(taps) is not { } usual)
            yield break;
        var lengths = Lengths(taps);
        if (lengths.Count(length => length == usual) < Math.Max(FewestRows, lengths.Length * 3 / 4))
            yield break;
        for (var r = 0; r < lengths.Length; r++)
        {
            if (lengths[r] != usual && Math.Abs(lengths[r] - usual) <= MostMiscounted)
            {
                yield return new(TapRemarkKind.RowOfOtherLength, taps.RowEnds[r] - lengths[r] + 1, r + 1, Said(
                    $"Row {r + 1} has {lengths[r]} taps where the others have {usual}: a stitch was tapped twice, left out, or missed in the row itself. Count it."));
            }
        }
    }

    /// <summary>Stitches of the most frequent length of row; null where no row was ended.</summary>
    public static int? UsualRow(TappedStitches taps) =>
        taps.Rows == 0 ? null : Lengths(taps).GroupBy(length => length).OrderByDescending(g => g.Count()).ThenByDescending(g =>
            g.Key).First().Key;

    private static int[] Lengths(TappedStitches taps) =>
        [.. taps.RowEnds.Select((end, r) => end - (r == 0 ? 0 : taps.RowEnds[r - 1]))];

    /// <summary>The row of a tap, from 1; 0 where rows were not marked.</summary>
    private static int RowOf(TappedStitches taps, int tap) => taps.Rows == 0 ? 0 : taps.RowEnds.Count(end => end <= tap) + 1;

    /// <summary>Whether two rings of names are the same, begun at whichever place.</summary>
    private static bool IsTurned(ImmutableArray<string> one, ImmutableArray<string> other) =>
        one.Length == other.Length && Enumerable.Range(0, one.Length).Any(turn =>
            Enumerable.Range(0, one.Length).All(j => one[j].Equals(other[(j + turn) % other.Length], StringComparison.OrdinalIgnoreCase)));

    private static string Said(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
