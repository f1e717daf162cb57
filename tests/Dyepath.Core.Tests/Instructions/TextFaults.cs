using System.Globalization;
using System.Text.RegularExpressions;

namespace Dyepath.Core.Tests.Instructions;

/// <summary>
/// Mistakes that a hand or a program makes in a written pattern, by kind: each changes one place of a booklet's text that is drawn with a
/// seed.
/// </summary>
internal static partial class TextFaults
{
    /// <summary>What it is called, and how it changes a text; null where the text has no such place.</summary>
    public sealed record Kind(string Name, Func<string, Random, string?> Make);

    public static IReadOnlyList<Kind> All { get; } =
    [
        // Numbers of rows and stitches.
        Number("stitches of a row", @"[.,] (\d+) sts\.", 1),
        Number("stitches of rows alike", @"As row \d+, (\d+) sts each", 1),
        Number("row that others are worked as", @"As row (\d+)", 1),
        Number("last row of several", @"^Rows \d+ to (\d+)", 2),
        Number("row of a step", @"^Row (\d+)", 1),
        Number("chain of the foundation", @"^Foundation: Ch (\d+)", 1),
        Number("extra chains", @"extra chains: (\d+)", 1),
        Number("turning chain", @": Ch (\d), ", 1),
        Number("chain that the first stitch goes into", @"in (\d)(?:nd|rd|th) ch from hook", 1),
        Number("row or stitch of a mark", @"^Mark: (?:row|stitch) (\d+)", 1),
        Number("stitches left unworked", @"to last (\d+) sts", 1),
        // Edgings.
        Number("stitches picked up in all", @"^Pick up: (\d+)", 1),
        Number("stitches of a pick-up rule", @"pick up (\d+) in", 1),
        Number("places of a pick-up rule", @"pick up \d+ in (?:every|each of the) (\d+)", 1),
        Number("times of a pick-up rule", @", (\d+) times", 1),
        Number("sum of a pick-up rule", @"(\d+) in all\.", 1),
        Number("place of an extra stitch", @"at (?:row end|stitch|place) (\d+)", 1),
        Number("rounds of an edging", @"^Work: (\d+) (?:round|row)", 1),
        Number("depth of an edging", @"about (\d+(?:\.5)?) cm", 1),
        Number("length of an edged edge", @"The edge is (\d+)", 1),
        // Yarn, swatch, hook.
        Number("stitches of the gauge", @"(\d+) stitches and \d+ rows over", 1),
        Number("rows of the gauge", @"stitches and (\d+) rows over", 1),
        Number("length that the gauge is over", @"rows over (\d+) cm", 1),
        Number("stitches unravelled", @"^- Yarn in (\d+) stitches", 1),
        Number("yarn unravelled", @"^- Yarn in \d+ stitches: (\d+)", 1),
        Number("hook", @"Hook of (\d+(?:\.5)?) mm", 1),
        Number("metres of a ball", @"(\d+) m / \d+ yd", 1),
        Number("grams of a ball", @"(\d+) g / ", 1),
        Number("balls to buy", @"Balls to buy: (\d+)", 1),
        Number("stitches of a colour", @"^- [^:]+ \(\w\): (\d+)", 1),
        Number("stitches of a sequence in the swatch", @"whole sequences of the colours take: (\d+)", 1),
        Number("stitches of the swatch", @"Make a swatch of (\d+)", 1),
        // Tables.
        Cell("cell of the measurements", "SIZES", "Finished"),
        Cell("cell of the body", "SIZES", "To fit"),
        Cell("cell of the ease", "SIZES", "Ease"),
        Cell("cell of the yarn", "MATERIALS", "Length"),
        Cell("cell of the balls", "MATERIALS", "Balls to buy"),
        Cell("cell where a ball ends", "MATERIALS", "Ball "),
        Cell("place at which a row begins", "CHARTS AND ROW STARTS", @"\d+ \((?:RS|WS)\)"),
        Row("row of the row starts left out", "CHARTS AND ROW STARTS", @"\d+ \((?:RS|WS)\)"),
        Exchange("two row starts exchanged", "CHARTS AND ROW STARTS", @"\d+ \((?:RS|WS)\)"),
        // Lists and units.
        new("two sizes of a list exchanged", (text, random) => Replace(text, random, @"(\d+) \((\d+), ", m => $"{m.Groups[2].Value} ({m.Groups[1].Value}, ", m => m.Groups[1].Value != m.Groups[2].Value)),
        new("a size left out of a list", (text, random) => Replace(text, random, @"\d+ \(\d+(, \d+)", m => m.Value[..^m.Groups[1].Length])),
        Number("centimetres of a pair", @"(\d+(?:\.5)?) cm / ", 1),
        Number("inches of a pair", @" cm / (\d+)[¼½¾]? in", 1),
        // Words.
        Word("a UK term in a US row", @"^(?:Row|Round)s? .*?\b(sc)\b", "dc"),
        Word("another stitch", @"^(?:Row|Round)s? .*?\b(sc|hdc|dc)\b", "tr"),
        Word("earlier for later", @"\b(earlier|later)\b", "earlier", "later"),
        Word("looser for tighter", @"work (?:a little |it )?(looser|tighter)", "looser", "tighter"),
        Word("a larger hook for a smaller", @"\b(larger|smaller) (?:hook|one)", "larger", "smaller"),
        Word("right side for wrong side in a label", @"^(?:Row|Round) \d+ \((RS|WS)\)", "RS", "WS"),
        Word("right side for wrong side in a row start", @"^  \d+ \((RS|WS)\)", "RS", "WS"),
        Word("odd for even", @"\b(odd|even)-numbered", "odd", "even"),
        Word("front for back", @"^\d+: (?:Shoulders|Sides|Sleeves)[^\n]*?\b(front|back)\b", "front", "back"),
        Word("left for right", @"\b(left|right)\b(?! side)", "left", "right"),
        Word("begins for ends", @"opening (begins|ends) here", "begins", "ends"),
        Word("row for round", @"\b(row|round)\b", "row", "round"),
        Word("outside in for right side facing", @"(outsides in)", "right sides out"),
        Word("join for turn", @", (turn)\b", "join"),
        Word("to the end for to the last stitch", @"(to end)", "to last st"),
        Word("each for every second", @"\b(each) st\b", "every second"),
        Word("variegated for companion yarn", @"(companion yarn)", "variegated yarn"),
        Word("a symbol of another colour", @" \(([A-Z])\): \d", "Q"),
        Word("a step left out of the middle", @"(, then fasten off)", ""),
        Word("not dropped", @"\b(not )", ""),
        Line("line left out", _ => null),
        Line("line said twice", line => line + "\n" + line),
        new("two steps exchanged", (text, random) => Neighbours(text, random)),
    ];

    private static Kind Number(string name, string pattern, int most) => new(name, (text, random) => Replace(text, random, pattern, match =>
    {
        var group = match.Groups[1];
        var by = random.Next(1, most + 1) * (random.Next(2) == 0 ? 1 : -1);
        var was = double.Parse(group.Value, CultureInfo.InvariantCulture);
        var now = Math.Abs(was + by) < 0.1 ? was + Math.Abs(by) : was + by;
        return Put(match, group, Math.Abs(now).ToString("0.#", CultureInfo.InvariantCulture));
    }));

    private static Kind Word(string name, string pattern, string one, string? other = null) => new(name, (text, random) => Replace(
        text, random, pattern, match => Put(match, match.Groups[1], match.Groups[1].Value == one && other is not null ? other : one),
        match => other is not null || match.Groups[1].Value != one));

    private static string Put(Match match, Group group, string words) =>
        match.Value[..(group.Index - match.Index)] + words + match.Value[(group.Index - match.Index + group.Length)..];

    private static string? Replace(string text, Random random, string pattern, Func<Match, string> change, Func<Match, bool>? where = null)
    {
        // Sentences go on in lines that are indented.
        var whole = Joined().Replace(text, " ");
        var matches = Regex.Matches(whole, pattern, RegexOptions.Multiline).Where(m => where?.Invoke(m) ?? true).ToArray();
        if (matches.Length == 0)
            return null;
        var match = matches[random.Next(matches.Length)];
        return whole[..match.Index] + change(match) + whole[(match.Index + match.Length)..];
    }

    private static Kind Cell(string name, string section, string label) => Lined(name, section, label, (lines, at, random) =>
    {
        var numbers = Regex.Matches(lines[at], @"(?<=  |/ |[A-Z])\d+");
        var numeral = numbers[random.Next(numbers.Count)];
        var more = (int.Parse(numeral.Value, CultureInfo.InvariantCulture) + random.Next(1, 3)).ToString(CultureInfo.InvariantCulture);
        lines[at] = lines[at][..numeral.Index] + more + lines[at][(numeral.Index + numeral.Length)..];
    });

    private static Kind Row(string name, string section, string label) => Lined(name, section, label, (lines, at, _) => lines.RemoveAt(at));

    private static Kind Exchange(string name, string section, string label) => Lined(name, section, label, (lines, at, _) =>
    {
        var (one, two) = (lines[at], lines[at + 1]);
        var (headOne, headTwo) = (Regex.Match(one, @"^ *\S+ \(\w+\)").Value, Regex.Match(two, @"^ *\S+ \(\w+\)").Value);
        (lines[at], lines[at + 1]) = (headOne + two[headTwo.Length..], headTwo + one[headOne.Length..]);
    }, (lines, at) => at + 1 < lines.Count && Regex.IsMatch(lines[at + 1], $"^  {label}")
        && Tail(lines[at]) != Tail(lines[at + 1]));

    private static string Tail(string line) => line[(line.IndexOf(')', StringComparison.Ordinal) + 1)..].Trim();

    private static Kind Lined(
        string name, string section, string label, Action<List<string>, int, Random> change, Func<List<string>, int, bool>? where = null) => new(name, (text, random) =>
    {
        var lines = text.Split('\n').ToList();
        var begin = lines.FindIndex(l => l == section);
        if (begin < 0)
            return null;
        var end = lines.FindIndex(begin + 2, l => l.StartsWith("---", StringComparison.Ordinal));
        var places = Enumerable.Range(begin, (end < 0 ? lines.Count : end - 1) - begin)
            .Where(i => Regex.IsMatch(lines[i], $"^  {label}") && Regex.IsMatch(lines[i], @"(?<=  |/ |[A-Z])\d+") && (where?.Invoke(lines, i) ?? true)).ToArray();
        if (places.Length == 0)
            return null;
        change(lines, places[random.Next(places.Length)], random);
        return string.Join('\n', lines);
    });

    /// <summary>A row, edging step or chart line.</summary>
    private static Kind Line(string name, Func<string, string?> change) => new(name, (text, random) =>
        Replace(text, random, @"^(?:Foundation|Row|Rows|Round|Rounds|Mark|Pick up|Work|Gauge|- )\b?.*\n", match => change(match.Value.TrimEnd('\n')) is { } line ? line + "\n" : ""));

    private static string? Neighbours(string text, Random random) => Replace(
        text, random, @"^((?:Row|Rows|Round|Rounds) [^\n]*)\n((?:Row|Rows|Round|Rounds) [^\n]*)\n", m => $"{m.Groups[2].Value}\n{m.Groups[1].Value}\n");

    [GeneratedRegex(@"\n    (?=\S)")]
    private static partial Regex Joined();
}
