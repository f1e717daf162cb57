using System.Globalization;
using System.Text.RegularExpressions;
using Dyepath.Core.Booklets;
using Dyepath.Core.Fabrics;
using Dyepath.Core.Planning;

namespace Dyepath.Core.Reading;

/// <summary>
/// What sentences say in words and not in numbers: stitches, sides, beginnings and ends, which way to go. Each by a rule of the trade that
/// is written apart from whoever writes the sentence.
/// </summary>
internal static partial class SentenceRules
{
    /// <summary>Advice that can be turned round by one word: a part of it that is looked for first, and the word that is right.</summary>
    private static readonly (string Part, Regex Says, string Word)[] Advice =
    [
        ("late was worked too tight: work a little ", Advised(@"late was worked too tight: work a little (\w+)"), "looser"),
        ("early was worked too loose: work a little ", Advised(@"early was worked too loose: work a little (\w+)"), "tighter"),
        ("run on over the next stitch, work its last stitches a little ", Advised(@"run on over the next stitch, work its last stitches a little (\w+)"), "looser"),
        ("end too soon, a little ", Advised(@"end too soon, a little (\w+)"), "tighter"),
        (" one where the colours run on", Advised(@"(\w+) one where the colours run on"), "larger"),
        (" one where they end too soon", Advised(@"(\w+) one where they end too soon"), "smaller"),
        (" than that, you work tighter", Advised(@"colours come (\w+) than that, you work tighter"), "later"),
        ("you work tighter than the plan: take a ", Advised(@"you work tighter than the plan: take a (\w+) hook"), "larger"),
        ("larger hook, or work ", Advised(@"larger hook, or work (\w+)\."), "looser"),
        (", take a smaller one", Advised(@"come (\w+), take a smaller one"), "earlier"),
        ("earlier, take a ", Advised(@"earlier, take a (\w+) one"), "smaller"),
        ("take a smaller one, or work ", Advised(@"take a smaller one, or work (\w+)"), "tighter"),
        ("too little yarn: take a ", Advised(@"too little yarn: take a (\w+) hook"), "larger"),
        ("Where there are fewer: a ", Advised(@"Where there are fewer: a (\w+) one"), "smaller"),
        ("foundation chain takes yarn too, so it begins ", Advised(@"foundation chain takes yarn too, so it begins (\w+)"), "earlier"),
        ("The right side is the side that faces you in ", Advised(@"The right side is the side that faces you in (\w+)-numbered"), "odd"),
        ("-numbered rows becomes its outside", Advised(@"over before you sew.*: the side that faces you in (\w+)-numbered rows becomes its outside"), "even"),
        ("o", Advised(@"\b[Dd]o(?:es)? (\w+)"), "not"),
        ("inside a seam is ", Advised(@"inside a seam is (\w+) counted"), "not"),
        ("! This yarn is ", Advised(@"^! This yarn is (\w+) measured"), "not"),
        ("the rounds are ", Advised(@"the rounds are (\w+) joined"), "not"),
        ("the row two below is ", Advised(@"the row two below is (\w+) the same"), "not"),
        ("open and loose: ", Advised(@"open and loose: (\w+) to be used"), "not"),
        ("It is ", Advised(@"It is (\w+) if (?:row|round)"), "right"),
        (" side of the piece facing", Advised(@"with the (\w+) side of the piece facing"), "right"),
        ("-side ", Advised(@"Read (\w+)-side (?:rows|rounds) from"), "right"),
        ("lay ", Advised(@"\blay\b[^.:]*?, (outsides|right sides) (?:in|out)\b"), "outsides"),
    ];

    public static void Compare(Plan plan, ReadBooklet read, List<(string Place, string Text)> notes)
    {
        var terms = read.Lines.Any(l => l.Section == "ABBREVIATIONS" && l.Line.Contains("in UK terms", StringComparison.Ordinal)) ? Terms.Uk : Terms.Us;
        (string Section, string Part, string Line) before = default;
        foreach (var line in read.Lines)
        {
            if (line == before && !line.Line.StartsWith(TextBooklet.Own, StringComparison.Ordinal) && line.Line[0] != '[')
                notes.Add((line.Section, $"“{line.Line}” stands there twice"));
            before = line;
            // Her own words follow no rule.
            if (!line.Line.StartsWith(TextBooklet.Own, StringComparison.Ordinal) && Wrong(plan, terms, line) is { } wrong)
                notes.Add((line.Section, $"“{line.Line}”: {wrong}"));
        }
        Ends(read, notes);
        Openings(read, notes);
        foreach (var (section, _, table) in read.Tables)
        {
            foreach (var cell in table.Rows.Select(row => row[0]).Where(cell => !FacesRightly(cell)))
                notes.Add((section, $"“{cell}”: right-side rows are odd, wrong-side rows even"));
        }
    }

    private static string? Wrong(Plan plan, Terms terms, (string Section, string Part, string Line) line)
    {
        var words = line.Line;
        foreach (var (part, says, word) in Advice)
        {
            if (words.Contains(part, StringComparison.Ordinal) && says.IsMatch(words)
                && says.Match(WithoutNames(plan, words)) is { Success: true } said
                && !said.Groups[1].Value.Equals(word, StringComparison.OrdinalIgnoreCase))
                return $"“{said.Groups[1].Value}” should be “{word}”";
        }
        if (!FacesRightly(words))
            return "right-side rows are odd, wrong-side rows even";
        if (ReadWays().Match(words) is { Success: true } ways
            && (ways.Groups["from"].Value == ways.Groups["to"].Value || !GoesBack(ways)))
            return "rows are read from one side to the other, and back";
        if (HookSaid().Match(words) is { Success: true } hook
            && !Amounts.SaysRounded(Number(hook), plan.Project.Fabric.Swatch.HookMillimetres))
            return "the document has another hook";
        if (SwatchSaid().Match(words) is { Success: true } swatch && !IsHalfAsWideAgain(plan, swatch))
            return "a swatch is half as wide and as tall again as what is counted in it";
        if (line.Section is "KEEPING THE COLOURS" or "PIECES" or "CHARTS AND ROW STARTS" or "BEFORE YOU BEGIN"
            && (OnlyRows(plan) ? CountedRound() : OnlyRounds(plan) ? CountedRow() : null) is { } other && other.IsMatch(words)
            && other.Match(WithoutNames(plan, words)) is { Success: true } counted)
            return $"“{counted.Value}”: the pieces are worked in {(OnlyRows(plan) ? "rows" : "rounds")}";
        if (Outside().Match(words) is { Success: true } outside && !IsOutside(plan, line.Part, outside.Groups["way"].Value))
            return "the plan has the other side outside";
        if (line.Section == "PIECES" && Worked().IsMatch(words))
            return Stitches(words, terms, [.. StitchesOf(plan)]);
        if (line.Section == "EDGINGS" && EdgingOf(line.Part) is { } made && Stitch().Matches(words).Select(m => m.Value.ToLowerInvariant())
            .FirstOrDefault(stitch => !made.Select(us => TradeTerms.Say(us, terms)).Contains(stitch)) is { } foreign)
            return $"{foreign} is no stitch of this edging";
        if (line.Section == "EDGINGS" && Turning().Match(words) is { Success: true } chain && Number(chain) != (chain.Groups["not"].Success ? 2 : 1))
            return "a round of single crochet begins with one chain, one of taller stitches with two that are not counted";
        return null;
    }

    /// <summary>What is worked back is read from where the row before ends.</summary>
    private static bool GoesBack(Match ways) => !ways.Groups["back"].Success
        || (ways.Groups["back"].Value == ways.Groups["to"].Value && ways.Groups["forth"].Value == ways.Groups["from"].Value);

    /// <summary>What the document names may look like any words.</summary>
    private static string WithoutNames(Plan plan, string words) => plan.Project.Yarn.Sections.Select(s => s.Name)
        .Append(plan.Project.Yarn.Name).Append(plan.Project.Companion?.Name ?? "").Select(TextBooklet.Spaced).Where(name => name.Length > 0)
        .OrderByDescending(name => name.Length).Aggregate(words, (left, name) => left.Replace(name, "", StringComparison.Ordinal));

    private static bool OnlyRows(Plan plan) => plan.Sizes[0].Pieces.All(p => p.Working == Working.Turned);

    private static bool OnlyRounds(Plan plan) => plan.Sizes[0].Pieces.All(p => p.Working != Working.Turned);

    /// <summary>Of a piece that is turned over, even-numbered rows face the maker with its outside.</summary>
    private static bool IsOutside(Plan plan, string heading, string way)
    {
        var sizes = plan.Sizes.Where(s => !heading.Contains(", size ", StringComparison.Ordinal)
            || heading.EndsWith($", size {s.Name}", StringComparison.Ordinal)).ToArray();
        var said = SizeLists.Entries(way);
        // One size is printed, and the text does not say here which.
        if (said.Length != 1 && said.Length != sizes.Length)
            return false;
        var planned = sizes
            .Select(size => size.Pieces.FirstOrDefault(p => heading.StartsWith(Wording.Capital(p.Name), StringComparison.Ordinal)))
            .Select(piece => piece?.WrongSideOut == true ? "even" : "odd").ToArray();
        return said.Length == sizes.Length ? said.SequenceEqual(planned) : planned.Contains(said[0]);
    }

    /// <summary>Of the fabric, in US usage; linen stitch is made of one.</summary>
    private static IEnumerable<string> StitchesOf(Plan plan) =>
        [plan.Project.Fabric.Stitch == FabricStitch.Linen ? "sc" : plan.Project.Fabric.Stitch.Abbreviation, "sc"];

    /// <summary>The stitches of an edging by what its heading calls it, in US usage (common practice, no source).</summary>
    private static string[]? EdgingOf(string heading) => heading.ToLowerInvariant() switch
    {
        var h when h.Contains("shell", StringComparison.Ordinal) || h.Contains("drawstring", StringComparison.Ordinal) => ["sc", "dc"],
        var h when h.Contains("v-stitch", StringComparison.Ordinal) => ["sc", "dc"],
        var h when h.Contains("clusters", StringComparison.Ordinal) || h.Contains("slip-stitch rib", StringComparison.Ordinal) => ["sc", "hdc"],
        "" => null,
        _ => ["sc"],
    };

    private static string? Stitches(string words, Terms terms, string[] allowed)
    {
        var own = allowed.Select(us => TradeTerms.Say(us, terms)).Distinct().ToArray();
        // Single crochet beside the fabric's own stitch is worked in inserts alone, whose rows decrease.
        var known = Stitch().Matches(words).Select(m => m.Value.ToLowerInvariant()).Distinct().ToArray();
        return known.FirstOrDefault(stitch => stitch != own[0]
            && (own.Length == 1 || stitch != own[1] || known.Contains(own[0]))) is { } other
            ? $"{other} is no stitch of this fabric" : null;
    }

    /// <summary>In rows that are turned, odd ones have the right side in front.</summary>
    private static bool FacesRightly(string label) => Faced().Match(label) is not { Success: true } faced
        || faced.Groups["side"].Value == (int.Parse(faced.Groups["n"].Value, CultureInfo.InvariantCulture) % 2 == 1 ? "RS" : "WS");

    private static bool IsHalfAsWideAgain(Plan plan, Match said)
    {
        var gauge = plan.Project.Fabric.Swatch.Worked;
        return Covers(int.Parse(said.Groups["stitches"].Value, CultureInfo.InvariantCulture), gauge.Stitches)
            && Covers(int.Parse(said.Groups["rows"].Value, CultureInfo.InvariantCulture), gauge.Rows);

        static bool Covers(int made, double counted) => made >= 1.5 * counted - 1e-9 && made < 1.5 * counted + 1;
    }

    /// <summary>Every stretch of rows ends by fastening off: the piece's first, and each that is joined on.</summary>
    private static void Ends(ReadBooklet read, List<(string Place, string Text)> notes)
    {
        foreach (var part in read.Lines.Where(l => l.Section == "PIECES" && l.Part.Length > 0).GroupBy(l => l.Part))
        {
            var lines = part.Select(l => l.Line).ToArray();
            if (!lines.Any(l => Worked().IsMatch(l)))
                continue;
            var stretches = 1 + lines.Count(l => JoinedOn().IsMatch(l));
            var ends = lines.Sum(l => Ended().Count(l));
            if (ends != stretches)
                notes.Add(("PIECES", FormattableString.Invariant($"{part.Key}: {ends} ends are fastened off, where {stretches} stretches of rows are worked")));
        }
    }

    /// <summary>Of an opening with two marks the lower one is its beginning.</summary>
    private static void Openings(ReadBooklet read, List<(string Place, string Text)> notes)
    {
        foreach (var part in read.Lines.Where(l => l.Section == "PIECES").GroupBy(l => l.Part))
        {
            foreach (var pair in part.Select(l => Marked().Match(l.Line)).Where(m => m.Success).GroupBy(m => (m.Groups["edge"].Value, m.Groups["what"].Value)))
            {
                var marks = pair.OrderBy(m => int.Parse(m.Groups["n"].Value, CultureInfo.InvariantCulture)).Select(m => m.Groups["way"].Value).ToArray();
                if (marks.Where((way, i) => way != (i % 2 == 0 ? "begins" : "ends")).Any() || marks.Length % 2 == 1)
                    notes.Add(("PIECES", $"{part.Key}: the {pair.Key.Item2} {string.Join(" and ", marks)} along one edge"));
            }
        }
    }

    private static double Number(Match match) => double.Parse(match.Groups["n"].Value, CultureInfo.InvariantCulture);

    private static Regex Advised(string pattern) => new(pattern, RegexOptions.CultureInvariant);

    [GeneratedRegex(@"^(?:(?:Rows?|Rounds?) [0-9](?![^:]* begins: )|Gore, |Plain row|Decrease)")]
    private static partial Regex Worked();

    [GeneratedRegex(@"\b(?:esc|edc|sc|hdc|dc|htr|dtr|trtr|qtr|tr)\b", RegexOptions.IgnoreCase)]
    private static partial Regex Stitch();

    [GeneratedRegex(@"^(?:Row |Round )?(?<n>[0-9]+) \((?<side>RS|WS)\)")]
    private static partial Regex Faced();

    [GeneratedRegex(@"\bRead .*? from (?<from>\w+) to (?<to>\w+)(?:, wrong-side (?:rows|rounds) from (?<back>\w+) to (?<forth>\w+))?[.;]")]
    private static partial Regex ReadWays();

    [GeneratedRegex(@"^- Hook of (?<n>[0-9.]+) mm")]
    private static partial Regex HookSaid();

    [GeneratedRegex(@"^Make a swatch of (?<stitches>[0-9]+) stitches and (?<rows>[0-9]+) rows,")]
    private static partial Regex SwatchSaid();

    [GeneratedRegex(@"^(?:Row|Round|Every|Last)[^:]*: (?:Without turning, ch|Ch) (?<n>[0-9]+)(?<not> \(not counted\))?")]
    private static partial Regex Turning();

    [GeneratedRegex(@"\b(?:[Rr]ounds? [0-9]|round starts)")]
    private static partial Regex CountedRound();

    [GeneratedRegex(@"\b(?:[Rr]ows? [0-9]|row starts)")]
    private static partial Regex CountedRow();

    [GeneratedRegex(@"^Outside: the side that faces you in (?<way>.+)-numbered rows")]
    private static partial Regex Outside();

    [GeneratedRegex(@": Into row [0-9]+, with the right side of the piece facing")]
    private static partial Regex JoinedOn();

    [GeneratedRegex(@"(?<![0-9] and )[Ff]asten off")]
    private static partial Regex Ended();

    [GeneratedRegex(@"^Mark: (?:row|stitch) (?<n>[0-9]+).* at (?<edge>[^:]+): (?<what>neck opening) (?<way>begins|ends) here\.")]
    private static partial Regex Marked();
}
