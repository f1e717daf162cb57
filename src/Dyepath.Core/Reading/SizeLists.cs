using System.Collections.Immutable;
using System.Globalization;
using System.Text.RegularExpressions;

namespace Dyepath.Core.Reading;

/// <summary>The trade's size lists, such as <c>57 (61, 65)</c>, and the words of one size among them.</summary>
internal static partial class SizeLists
{
    /// <summary>
    /// The words as a maker of one size reads them: every list of as many entries as there are sizes gives way to its own.
    /// </summary>
    public static string For(string words, int size, int sizes) => sizes == 1
        ? words
        : List().Replace(words, match =>
        {
            var entries = Entries(match.Value);
            return entries.Length == sizes ? entries[size] : match.Value;
        });

    public static ImmutableArray<string> Entries(string list) =>
        [.. list.Split(['(', ')', ','], StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries)];

    public static bool TryNumber(string text, out double value)
    {
        value = 0;
        var plain = text.Replace('−', '-');
        var fraction = 0.0;
        if (plain.Length > 0 && "⅛¼⅜½⅝¾⅞".IndexOf(plain[^1], StringComparison.Ordinal) is >= 0 and var eighths)
        {
            fraction = (eighths + 1) / 8.0;
            plain = plain[..^1];
            if (plain.Length == 0 || plain == "-")
                plain += "0";
        }
        if (!double.TryParse(plain, NumberStyles.Float, CultureInfo.InvariantCulture, out var whole))
            return false;
        value = plain[0] == '-' ? whole - fraction : whole + fraction;
        return true;
    }

    [GeneratedRegex(@"[^\s(),]+ \([^\s(),]+(?:, [^\s(),]+)*\)")]
    private static partial Regex List();
}
