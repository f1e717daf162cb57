using System.Globalization;
using System.Text.RegularExpressions;

namespace Dyepath.Core.Reading;

/// <summary>
/// Follows the words of one row as a maker would and counts: stitches made from the stitches (or chains) of the row below.
/// Does not read the plan, so that it is an independent check.
/// </summary>
internal sealed partial class RowCounter
{
    private int _left;
    private int _made;

    /// <summary>The first chain of a row turns it; any later one is a stitch of the fabric.</summary>
    private bool _turned;

    /// <summary>Told up to its last stitches, however many come before them.</summary>
    private bool _worked;

    /// <summary>Stitches of the row below that are left on purpose.</summary>
    public int Unworked { get; private set; }

    /// <summary>Chains beyond the row below that are worked over.</summary>
    public int Chains { get; private set; }

    /// <summary>Stitches beyond the row below that shorter rows left, and that are worked over.</summary>
    public int Standing { get; private set; }

    /// <summary>Whether stitches are worked together where the row ends, or else where it begins; null where none are.</summary>
    public bool? TogetherAtEnd { get; private set; }

    /// <returns>Stitches made, or null with the clause that could not be followed.</returns>
    public static (int? Stitches, string? Stuck) Follow(string words, int below) => Follow(words, below, out _);

    /// <param name="row">How the row ends.</param>
    /// <inheritdoc cref="Follow(string, int)"/>
    public static (int? Stitches, string? Stuck) Follow(string words, int below, out RowCounter row)
    {
        row = new RowCounter { _left = below };
        foreach (var clause in Clauses(words))
        {
            if (!row.Work(clause))
                return (null, clause);
        }
        return row._left == 0 ? (row._made, null) : (null, $"{row._left} of the {below} below are never worked");
    }

    /// <summary>Clauses are parted by commas, but a repeated block (from * to its end) stays whole.</summary>
    private static string[] Clauses(string words)
    {
        words = words.Trim().TrimEnd('.').ToLowerInvariant();
        var start = words.IndexOf('*', StringComparison.Ordinal);
        if (start < 0)
            return Parts(words);
        var repeat = Repeat().Match(words, start);
        if (!repeat.Success)
            return [words[start..]];
        return [.. Parts(words[..start]), repeat.Value, .. Parts(words[(repeat.Index + repeat.Length)..])];
    }

    private static string[] Parts(string words) =>
        words.Split([',', ';'], StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);

    private bool Work(string clause)
    {
        if (Ignored().IsMatch(clause))
            return true;
        if (!_turned && _made == 0 && ChainToTurn().Match(clause) is { Success: true } chain)
        {
            _turned = true;
            return Counted(chain.Groups["counts"].Success ? 1 : 0, 0);
        }
        if (FirstRow().Match(clause) is { Success: true } first)
        {
            var skipped = Number(first.Groups["nth"]) - 1;
            if (first.Groups["skipped"].Success && Number(first.Groups["skipped"]) != skipped)
                return false;
            var counts = first.Groups["counts"].Success ? 1 : 0;
            return Counted(counts, skipped) && (first.Groups["rest"].Success ? Counted(_left, _left) : Counted(1, 1));
        }
        if (AllStitches().Match(clause) is { Success: true } all)
        {
            var unworked = all.Groups["unworked"].Success ? 1 : 0;
            return Counted(_left - unworked, _left - unworked);
        }
        if (clause == "which is left unworked")
            return Counted(0, _left);
        if (StopsShort().Match(clause) is { Success: true } shorter)
        {
            _worked = true;
            var rest = shorter.Groups["n"].Success ? Number(shorter.Groups["n"]) : 1;
            return Counted(_left - rest, _left - rest);
        }
        if (clause is "leave these unworked" or "leave it unworked")
        {
            Unworked = _left;
            return Counted(0, _left);
        }
        if (OverChains().Match(clause) is { Success: true } over)
        {
            Chains = over.Groups["n"].Success ? Number(over.Groups["n"]) : 1;
            return Counted(Chains, 0);
        }
        if (OverStanding().Match(clause) is { Success: true } standing)
        {
            Standing = standing.Groups["n"].Success ? Number(standing.Groups["n"]) : 1;
            return Counted(Standing, 0);
        }
        if (Together().Match(clause) is { Success: true } together)
        {
            // Before any other stitch, unless the row is told from its beginning to there.
            TogetherAtEnd = _worked;
            return Counted(1, Number(together.Groups["n"]));
        }
        if (clause.StartsWith('*'))
            return WorkRepeat(clause);
        return WorkOne(clause);
    }

    private bool WorkRepeat(string clause)
    {
        var match = Repeat().Match(clause);
        var tail = match.Groups["tail"].Success ? (match.Groups["many"].Success ? Number(match.Groups["many"]) : 1) : 0;
        var block = new RowCounter { _left = int.MaxValue / 2 };
        foreach (var part in Parts(match.Groups["block"].Value))
        {
            if (!block.WorkOne(part))
                return false;
        }
        var used = int.MaxValue / 2 - block._left;
        if (used == 0 || (_left - tail) % used != 0)
            return false;
        var times = (_left - tail) / used;
        return Counted(times * block._made, times * used);
    }

    /// <summary>One stitch, chain or skip.</summary>
    private bool WorkOne(string clause)
    {
        if (clause == "ch 1")
            return Counted(1, 0);
        if (SkipOne().Match(clause) is { Success: true } skip)
            return Counted(0, skip.Groups["many"].Success ? Number(skip.Groups["many"]) : 1);
        if (InOne().Match(clause) is { Success: true } one)
            return Counted(one.Groups["many"].Success ? Number(one.Groups["many"]) : 1, 1);
        return false;
    }

    private bool Counted(int made, int used)
    {
        _made += made;
        _left -= used;
        return _left >= 0;
    }

    private static int Number(Group group) => int.Parse(group.Value, CultureInfo.InvariantCulture);

    [GeneratedRegex(@"^(turn|join with (sl st|ss) in (first (st|ch)|top of beginning ch)|the last (sc|dc) in the space of the turning ch|do not join|mark the first st|moving the marker up|the last in the top of the turning ch)$")]
    private static partial Regex Ignored();

    [GeneratedRegex(@"^ch \d+( \((?:(?<counts>counts as (the first st|a ch-1 space))|does not count as a st)\))?$")]
    private static partial Regex ChainToTurn();

    [GeneratedRegex(@"^(sc|hdc|dc|tr|htr) in (?<nth>\d+)(nd|rd|th) ch from hook( \(the (?<skipped>\d+) (?:skipped|missed) ch (?:(?<counts>counts? as (the first st|a ch-1 space))|do not count as a st)\))?(?<rest> and in each ch to end)?$")]
    private static partial Regex FirstRow();

    [GeneratedRegex(@"^(sc|hdc|dc|tr|htr) in each (st|ch) (to end|around|to (?<unworked>last st|the turning ch))$")]
    private static partial Regex AllStitches();

    [GeneratedRegex(@"^(sc|hdc|dc|tr|htr) in each st to last (?:(?<n>\d+) )?sts?(?: \(the turning ch(?: counts as one)?\))?$")]
    private static partial Regex StopsShort();

    [GeneratedRegex(@"^(sc|dc)(?<n>[23])tog$")]
    private static partial Regex Together();

    [GeneratedRegex(@"^then (sc|hdc|dc|tr|htr) in (?:each of the (?<n>\d+)|the first) ch$")]
    private static partial Regex OverChains();

    [GeneratedRegex(@"^then (sc|hdc|dc|tr|htr) in (?:each of the next (?<n>\d+) sts|the next st) left unworked(?: \(a turning ch counts as one\))?$")]
    private static partial Regex OverStanding();

    [GeneratedRegex(@"\*(?<block>[^*;]+); rep from \* (to end|around|to (?<tail>last) ((?<many>\d+) )?(st|sts|sc|dc|ch))")]
    private static partial Regex Repeat();

    [GeneratedRegex(@"^(skip|miss) (first|next)( (?<many>\d+))? (st|sts|sc|dc|ch)$")]
    private static partial Regex SkipOne();

    [GeneratedRegex(@"^((?<many>\d+) )?(sc|hdc|dc|tr|htr) in ((first|next|last) )?(st|sc|dc|ch|ch-1 space)$")]
    private static partial Regex InOne();
}
