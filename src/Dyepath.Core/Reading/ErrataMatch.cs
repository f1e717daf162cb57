using System.Collections.Immutable;
using Dyepath.Core.Limits;

namespace Dyepath.Core.Reading;

/// <summary>One line of the text for one size that differs.</summary>
/// <param name="Was">Missing where the line is new.</param>
/// <param name="Now">Missing where the line falls away.</param>
/// <param name="At">Where in the new text: number of the section, then of the line within it.</param>
internal sealed record ErrataPair(ErrataLine? Was, ErrataLine? Now, (int Section, int Line) At)
{
    /// <summary>Of the new text, where the line still stands there.</summary>
    public ErrataLine Line => Now ?? Was!;

    /// <summary>It says the same, at another place in the order.</summary>
    public bool IsMoved { get; init; }
}

/// <summary>
/// Finds what differs between two texts for one size. Lines stand for each other where they agree, or else have the same label, or else
/// share their words; numbers that steps and charts have only for their order do not count.
/// </summary>
internal sealed class ErrataMatch
{
    /// <summary>Pairs of lines up to which the longest common order is looked for.</summary>
    private const long MostPairs = 1_000_000;

    /// <summary>Share of the words of two lines that both have, from which one is taken for the other corrected.</summary>
    private const double Alike = 0.5;

    private readonly ImmutableArray<ErrataLine> _was;
    private readonly ImmutableArray<ErrataLine> _now;
    private readonly ErrataLine[] _before;
    private readonly int[] _partnerOfWas;
    private readonly int[] _partnerOfNow;
    private readonly HashSet<int> _moved = [];
    private readonly Effort _effort;

    private ErrataMatch(ImmutableArray<ErrataLine> was, ImmutableArray<ErrataLine> read, ImmutableArray<ErrataLine> now, Effort effort)
    {
        (_was, _now, _effort) = (was, now, effort);
        var charts = ErrataLines.Charts(read, now);
        _before = [.. read.Select(line => ErrataLines.Renumbered(line, charts))];
        (_partnerOfWas, _partnerOfNow) = ([.. was.Select(_ => -1)], [.. now.Select(_ => -1)]);
    }

    /// <summary>Every line that differs, in the order of the new text.</summary>
    /// <param name="read">The old lines one by one, as they are compared: with the new names of colours.</param>
    public static ImmutableArray<ErrataPair> Between(
        ImmutableArray<ErrataLine> was, ImmutableArray<ErrataLine> read, ImmutableArray<ErrataLine> now, Effort effort)
    {
        var match = new ErrataMatch(was, read, now, effort);
        var after = Enumerable.Range(0, now.Length).ToLookup(n => (now[n].Section, now[n].Part));
        foreach (var place in Enumerable.Range(0, was.Length).GroupBy(w => (match._before[w].Section, match._before[w].Part)))
            match.Part([.. place], [.. after[place.Key]]);
        return match.Pairs();
    }

    private void Part(int[] was, int[] now)
    {
        InOrder(was, now);
        foreach (var (w, n) in Keyed(was, now, Label))
            Join(w, n);
        foreach (var (w, n) in Keyed(was, now, line => line.Kind == ErrataKind.Row ? null : line.English))
        {
            Join(w, n);
            _moved.Add(n);
        }
        ByWords(was, now);
    }

    /// <summary>Names a line within its part; null where only its words tell it from others.</summary>
    private static string? Label(ErrataLine line) =>
        line.Kind == ErrataKind.Heading ? "" : line.Key.Length > 0 && !line.IsNumbered ? line.Key : null;

    /// <summary>Lines that say the same, as many as keep one order.</summary>
    private void InOrder(int[] was, int[] now)
    {
        var first = 0;
        for (; first < was.Length && first < now.Length && Agree(was[first], now[first]); first++)
            Join(was[first], now[first]);
        var (w, n) = (was.Length, now.Length);
        for (; w > first && n > first && Agree(was[w - 1], now[n - 1]); w--, n--)
            Join(was[w - 1], now[n - 1]);
        var (left, right) = (was[first..w], now[first..n]);
        if (left.LongLength * right.LongLength > MostPairs)
        {
            foreach (var (a, b) in Keyed(left, right, line => $"{line.Key}\n{line.English}"))
                Join(a, b);
            return;
        }
        _effort.Spend(left.LongLength * right.LongLength);
        var longest = new int[left.Length + 1, right.Length + 1];
        for (var a = left.Length - 1; a >= 0; a--)
        {
            for (var b = right.Length - 1; b >= 0; b--)
                longest[a, b] = Agree(left[a], right[b]) ? longest[a + 1, b + 1] + 1 : Math.Max(longest[a + 1, b], longest[a, b + 1]);
        }
        for (var (a, b) = (0, 0); a < left.Length && b < right.Length;)
        {
            if (Agree(left[a], right[b]))
                Join(left[a++], right[b++]);
            else if (longest[a + 1, b] >= longest[a, b + 1])
                a++;
            else
                b++;
        }
    }

    /// <summary>What is left over on both sides and has the same key, the first with the first.</summary>
    private List<(int Was, int Now)> Keyed(int[] was, int[] now, Func<ErrataLine, string?> key)
    {
        var free = now.Where(n => _partnerOfNow[n] < 0 && key(_now[n]) is not null)
            .GroupBy(n => (_now[n].Kind, key(_now[n]))).ToDictionary(g => g.Key, g => new Queue<int>(g));
        var pairs = new List<(int, int)>();
        foreach (var w in was.Where(w => _partnerOfWas[w] < 0 && key(_before[w]) is not null))
        {
            if (free.TryGetValue((_before[w].Kind, key(_before[w])), out var queue) && queue.TryDequeue(out var n))
                pairs.Add((w, n));
        }
        return pairs;
    }

    /// <summary>What is left over, each with what shares most of its words.</summary>
    private void ByWords(int[] was, int[] now)
    {
        int[] left = [.. was.Where(w => _partnerOfWas[w] < 0)], right = [.. now.Where(n => _partnerOfNow[n] < 0)];
        if (left.LongLength * right.LongLength * 100 > MostPairs)
            return;
        var words = left.Select(w => Words(_before[w])).ToArray();
        var others = right.Select(n => Words(_now[n])).ToArray();
        var found =
            from a in Enumerable.Range(0, left.Length)
            from b in Enumerable.Range(0, right.Length)
            where _before[left[a]].Kind == _now[right[b]].Kind && _now[right[b]].Kind != ErrataKind.Row
            let shared = Shared(words[a], others[b])
            where shared >= Alike
            orderby shared descending, Math.Abs(a - b), a, b
            select (left[a], right[b]);
        foreach (var (w, n) in found)
        {
            if (_partnerOfWas[w] < 0 && _partnerOfNow[n] < 0)
                Join(w, n);
        }

        HashSet<string> Words(ErrataLine line)
        {
            _effort.Spend(line.English.Length);
            return [.. $"{line.Key} {line.English}".Split(' ', StringSplitOptions.RemoveEmptyEntries)];
        }

        double Shared(HashSet<string> a, HashSet<string> b)
        {
            _effort.Spend(a.Count);
            return 2.0 * a.Count(b.Contains) / (a.Count + b.Count);
        }
    }

    private void Join(int was, int now) => (_partnerOfWas[was], _partnerOfNow[now]) = (now, was);

    private bool Agree(int was, int now) => Agree(_before[was], _now[now]);

    /// <summary>The place in the order is no part of what a step says.</summary>
    private static bool Agree(ErrataLine a, ErrataLine b) =>
        a.Kind == b.Kind && a.English == b.English && (a.Key == b.Key || (a.IsNumbered && b.IsNumbered));

    /// <summary>An empty row of a table that is new or gone.</summary>
    private static bool SaysNothing(ErrataPair pair) =>
        (pair.Was is null || pair.Now is null) && pair.Line.Kind == ErrataKind.Row && !pair.Line.English.Any(char.IsLetterOrDigit);

    /// <summary>What falls away stands where the line before it in the old text stands in the new one.</summary>
    private ImmutableArray<ErrataPair> Pairs()
    {
        var places = new (int Section, int Line)[_now.Length];
        for (var n = 1; n < _now.Length; n++)
            places[n] = _now[n].Section == _now[n - 1].Section
                ? (places[n - 1].Section, places[n - 1].Line + 1) : (places[n - 1].Section + 1, 0);
        var pairs = new List<ErrataPair>();
        for (var n = 0; n < _now.Length; n++)
        {
            var w = _partnerOfNow[n];
            if (w < 0)
                pairs.Add(new ErrataPair(null, _now[n], places[n]));
            else if (!Agree(w, n) || _moved.Contains(n))
                pairs.Add(new ErrataPair(_was[w], _now[n], places[n]) { IsMoved = Agree(w, n) });
        }
        var at = 0;
        for (var w = 0; w < _was.Length; w++)
        {
            if (_partnerOfWas[w] >= 0)
                at = _partnerOfWas[w];
            else
                pairs.Add(new ErrataPair(_was[w], null, places[at]));
        }
        return [.. pairs.Where(p => !SaysNothing(p)).OrderBy(p => p.At).ThenBy(p => p.Now is null)];
    }
}
