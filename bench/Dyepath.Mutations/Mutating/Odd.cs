using System.Globalization;
using System.Text.RegularExpressions;

namespace Dyepath.Mutations.Mutating;

/// <summary>Values at and beyond the edges of everything, and near what stood there.</summary>
internal static partial class Odd
{
    private static readonly string[] Numbers =
    [
        "0", "-0", "-0.0", "1", "-1", "2", "0.5", "2.7", "3.0", "1e2", "1E+2", "1e-2", "1e308", "-1e308", "1e309", "1e-320", "5e-324", "4.9406564584124654e-324",
        "1e-7", "1e6", "999999999999", "2147483647", "2147483648", "-2147483648", "9007199254740993", "9223372036854775807", "18446744073709551616", "0.1000000000000000055",
        "1000", "1001", "4096", "4097", "5000", "5001", "64", "65", "20000", "253402300799999", "253402300800000", "00", "01", "+1", ".5", "1.", "0x10", "1e", "NaN", "Infinity", "-Infinity",
        "123456789012345678901234567890123456789012345678901234567890", "0.333333333333333333333333333333333333333",
    ];

    private static readonly string[] Texts =
    [
        "", " ", "x", "NaN", "null", "true", "0", "-1", "\u0000", "\u0007", "\n", "\r\n", "\t", "\u2028", "\u202e", "\u2066", "\u200f", "\ufeff", "\ufffd", "é", "e\u0301", "波", "🌊", "👩‍👩‍👧",
        "<script>alert(1)</script>", "</style>", "&amp;", "]]>", "<!--", "\"", "'", "\\", "/", "../../etc/passwd", "C:\\con", "a/b", "~", "%00", "%s%n", "{0}", "$1", "javascript:x",
        "'; drop table projects; --", "schemaVersion", "__proto__", "constructor", "S", "M", "size 3", "S (M, L)", "1e3 cm", "=1+1", "Row 1", "> ", "## x", "-----",
        "women", "child", "sc", "dc", "linen", "hdc", "counted", "free", "tunic", "cowl", "wrap", "blanket", "turned", "rounds", "rounds-turned", "spiral", "up", "sideways", "best", "argyle", "columns",
        "steep", "even", "shallow", "bands", "picot", "rib", "shell", "corded", "hem", "border", "brims", "US", "UK", "cm", "in", "cm (in)", "in (cm)", "left", "companion", "variegated", "loose", "newer",
        "#000", "#FFFFFF", "#12345g", "row", "run", "read", "at", "part", "back", "edge", "turn", "hook", "step",
    ];

    private static readonly string[] Amounts =
    [
        "0", "-0", "0.05", "0.1", "0.5", "1", "-1", "1e3", "1e-7", "0.0000001", "0.00000001", "99.9999999", "100", "100.0000001", "1000", "1000.0000001", "10000", "20000", "20000.1", "100000", "½", "1 ½", "3/8", "1 3/8",
        "1/3", "0.333333333333333333", "1e308", "NaN", "٣", "1,5", "10.", ".5", "+3", "007", "5", "-5", "10", "10.0000001", "40", "0.49999", "-100", "2.54", "12.25",
    ];

    private static readonly string[] Units = ["cm", "mm", "m", "in", "yd", "g", "oz", "kg", "stitches", "sts", "st", "stitch", "%", "cm²", "cm2", "", "km", "CM", "\"", " cm"];

    /// <summary>JSON text of a value that may stand anywhere.</summary>
    public static string Value(Random random, string before) => random.Next(10) switch
    {
        0 or 1 => Numbers[random.Next(Numbers.Length)],
        2 => JsonTree.Quoted(Texts[random.Next(Texts.Length)]),
        3 or 4 => JsonTree.Quoted($"{Amounts[random.Next(Amounts.Length)]} {Units[random.Next(Units.Length)]}"),
        5 => random.Next(6) switch { 0 => "true", 1 => "false", 2 => "null", 3 => "{}", 4 => "[]", _ => "\"\\ud800\"" },
        _ => Near(random, before),
    };

    public static string Name(Random random, string before) => random.Next(4) switch
    {
        0 => JsonTree.Quoted(Texts[random.Next(Texts.Length)]),
        1 when before.Length > 3 => before.Remove(1 + random.Next(before.Length - 2), 1),
        2 => before.ToUpperInvariant(),
        _ => before.Insert(1, "x"),
    };

    /// <summary>What stood there, a little or a great deal off.</summary>
    private static string Near(Random random, string before)
    {
        if (Number().Match(before) is not { Success: true } number)
            return before.StartsWith('"') ? LongText(random, before) : before == "true" ? "false" : "true";
        var value = double.Parse(number.Value, CultureInfo.InvariantCulture);
        var other = random.Next(12) switch
        {
            0 => Math.BitIncrement(value),
            1 => Math.BitDecrement(value),
            2 => -value,
            3 => value + 0.5,
            4 => value * 10,
            5 => value / 10,
            6 => value + 1,
            7 => value - 1,
            8 => value * (0.8 + 0.4 * random.NextDouble()),
            9 => value * 1_000,
            10 => Math.Floor(value),
            _ => value * 2,
        };
        var said = other.ToString(random.Next(3) == 0 ? "R" : "0.################", CultureInfo.InvariantCulture);
        return before.Remove(number.Index, number.Length).Insert(number.Index, said);
    }

    private static string LongText(Random random, string before) => random.Next(4) switch
    {
        0 => JsonTree.Quoted(string.Concat(Enumerable.Repeat("ab c", random.Next(1, 40)))),
        1 => JsonTree.Quoted(new string('W', random.Next(1, 200))),
        2 => JsonTree.Quoted(Texts[random.Next(Texts.Length)] + Texts[random.Next(Texts.Length)]),
        _ => before.Insert(1, Texts[random.Next(Texts.Length)] is var text && text.Length > 0 ? JsonTree.Quoted(text)[1..^1] : "x"),
    };

    [GeneratedRegex(@"-?[0-9]+(\.[0-9]+)?([eE][-+]?[0-9]+)?")]
    private static partial Regex Number();
}
