using System.Text.RegularExpressions;
using Dyepath.Core.Booklets;

namespace Dyepath.Core.Reading;

/// <summary>Holds every amount that is said in two units against itself, and each against the step it is rounded to.</summary>
internal static partial class UnitPairs
{
    public static void Check(string words, List<string> wrong)
    {
        foreach (Match pair in Pair().Matches(words))
        {
            var (first, second) = (SizeLists.Entries(pair.Groups["a"].Value), SizeLists.Entries(pair.Groups["b"].Value));
            var longest = Math.Max(first.Length, second.Length);
            if (Math.Min(first.Length, second.Length) is not 1 and var shorter && shorter != longest)
            {
                wrong.Add($"“{pair.Value}”: the two units have lists of different lengths");
                continue;
            }
            for (var i = 0; i < longest; i++)
                Compare(first[first.Length == 1 ? 0 : i], pair.Groups["ua"].Value, second[second.Length == 1 ? 0 : i], pair.Groups["ub"].Value, pair.Value, wrong);
        }
    }

    public static void Check(ReadTable table, List<string> wrong)
    {
        foreach (var row in table.Rows)
        {
            if (Units().Match(row[0]) is not { Success: true } units)
                continue;
            foreach (var cell in row.Skip(1))
            {
                var halves = cell.Split(" / ");
                if (halves.Length != 2)
                    wrong.Add($"“{row[0]}”: {cell} is not in two units");
                else
                    Compare(halves[0], units.Groups["ua"].Value, halves[1], units.Groups["ub"].Value, $"{row[0]}: {cell}", wrong);
            }
        }
    }

    private static void Compare(string first, string firstUnit, string second, string secondUnit, string place, List<string> wrong)
    {
        if (!SizeLists.TryNumber(first, out var a) || !SizeLists.TryNumber(second, out var b))
        {
            wrong.Add($"“{place}” cannot be read");
            return;
        }
        var metric = firstUnit is "cm" or "m" or "g";
        var (m, i, unit) = metric ? (a, b, firstUnit) : (b, a, secondUnit);
        // In whole metres, yards and grams amounts are rounded up, which leaves one of either open.
        var (factor, open) = unit switch
        {
            "cm" => (2.54, Math.Abs(m) < 2.5 ? 0.05 + 2.54 / 16 : 0.25 + 2.54 / 8),
            "m" => (0.9144, 1),
            _ => (28.349523125, 1 + 28.35 / 20),
        };
        if (Math.Abs(m - i * factor) > open + 1e-6)
            wrong.Add($"“{place}”: the two units disagree");
        if (unit == "cm" && Math.Abs(m) >= 2.5 && Math.Abs(m * 2 - Math.Round(m * 2)) > 1e-6)
            wrong.Add($"“{place}”: {m} cm is not a half centimetre");
    }

    [GeneratedRegex(@"(?<a>[0-9.½¼¾⅛⅜⅝⅞−]+(?: \([^()]*\))?) (?<ua>cm|in|m|yd|g|oz) / (?<b>[0-9.½¼¾⅛⅜⅝⅞−]+(?: \([^()]*\))?) (?<ub>cm|in|m|yd|g|oz)\b")]
    private static partial Regex Pair();

    [GeneratedRegex(@", (?<ua>cm|in|m|yd|g|oz) / (?<ub>cm|in|m|yd|g|oz)$")]
    private static partial Regex Units();
}
