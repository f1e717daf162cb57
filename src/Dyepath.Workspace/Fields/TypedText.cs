using System.Globalization;
using System.Text.RegularExpressions;
using Dyepath.Core.Sizing;

namespace Dyepath.Workspace.Fields;

/// <summary>What people type where a number and its unit are asked for, as the document writes it.</summary>
public static partial class TypedText
{
    private const string Eighths = " ⅛¼⅜½⅝¾⅞";

    private const int InchesInFoot = 12;

    /// <summary>
    /// A decimal comma, a fraction (<c>14 1/4</c>, <c>14-1/4</c>, <c>14¼</c>), feet and inches (<c>5'3"</c>), a unit's sign, plural or
    /// whole name, and for a hook its US label (<c>H-8</c>); a bare number takes the field's unit. What is none of these is given back as
    /// it is, so that the message speaks of what was typed.
    /// </summary>
    /// <param name="unit">Of a bare number, such as <c>cm</c>.</param>
    public static string Quantity(string text, string unit)
    {
        ArgumentNullException.ThrowIfNull(text);
        ArgumentNullException.ThrowIfNull(unit);
        var typed = Thousands().Replace(text.Trim(), "${before}${after}");
        if (unit == "mm" && Hook(typed) is { } hook)
            return Written((decimal)hook.Diameter.Millimetres, "mm");
        if (FeetAndInches().Match(typed) is { Success: true } both && Number(both, "feet") is { } feet && Number(both, "inches") is { } inches)
            return Written(InchesInFoot * feet + inches, "in");
        if (WithUnit().Match(typed) is not { Success: true } match || Number(match, "number") is not { } number)
            return text;
        return match.Groups["unit"].Value.Trim().TrimEnd('.').ToLowerInvariant() switch
        {
            "" => Written(number, unit),
            "\"" or "”" or "″" or "''" or "inch" or "inches" or "in" => Written(number, "in"),
            "'" or "’" or "′" or "ft" or "feet" or "foot" => Written(InchesInFoot * number, "in"),
            "cm" or "cms" or "centimetre" or "centimetres" or "centimeter" or "centimeters" => Written(number, "cm"),
            "mm" or "millimetre" or "millimetres" or "millimeter" or "millimeters" => Written(number, "mm"),
            "m" or "metre" or "metres" or "meter" or "meters" => Written(number, "m"),
            "yd" or "yds" or "yard" or "yards" => Written(number, "yd"),
            "g" or "gr" or "gram" or "grams" => Written(number, "g"),
            "oz" or "ounce" or "ounces" => Written(number, "oz"),
            "%" or "percent" or "per cent" => Written(number, "%"),
            var other => Written(number, other),
        };
    }

    /// <summary>
    /// A hook by its US label, whole or as people shorten it: <c>H-8</c>, <c>h8</c>, <c>US I/9</c>, <c>H</c>, <c>US 8</c>; null where it is
    /// none, or where hooks of several diameters have the letter.
    /// </summary>
    private static HookSize? Hook(string typed)
    {
        var label = Us().Replace(typed, "");
        string Plain(string name) => new([.. name.Where(char.IsAsciiLetterOrDigit).Select(char.ToUpperInvariant)]);
        var isUs = label.Length < typed.Length;
        if (Plain(label).Length == 0 || (!isUs && !char.IsAsciiLetter(label[0])))
            return null;
        var numbered = HookSizes.All.Where(h => h.Us.Contains('-', StringComparison.Ordinal)).ToArray();
        return HookSizes.All.FirstOrDefault(h => h.Us.Length > 1 && Plain(h.Us) == Plain(label))
            ?? Only(numbered.Where(h => h.Us.Split('-')[0].Equals(label, StringComparison.OrdinalIgnoreCase)
                && !HookSizes.All.Any(o => o.Us.Equals(label, StringComparison.OrdinalIgnoreCase))))
            ?? (isUs ? Only(numbered.Where(h => h.Us.Split('-')[1] == label)) : null);

        static HookSize? Only(IEnumerable<HookSize> hooks) => hooks.ToArray() is [var one] ? one : null;
    }

    /// <summary>A number without a unit, as people type it: with a decimal comma, or as a fraction.</summary>
    public static bool TryNumber(string text, out decimal number)
    {
        ArgumentNullException.ThrowIfNull(text);
        var match = WithUnit().Match(Thousands().Replace(Counted().Replace(text.Trim(), ""), "${before}${after}"));
        var read = match is { Success: true } && match.Groups["unit"].Length == 0 ? Number(match, "number") : null;
        number = read ?? 0;
        return read is not null;
    }

    /// <summary>A whole part, a fraction, or both; missing where the fraction divides by nothing.</summary>
    private static decimal? Number(Match match, string group)
    {
        var parts = Parts().Match(match.Groups[group].Value);
        var whole = parts.Groups["whole"].Value.Replace(',', '.');
        if (!decimal.TryParse(whole.Length == 0 ? "0" : whole, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var value))
            return null;
        if (parts.Groups["eighth"].Success)
            value += Eighths.IndexOf(parts.Groups["eighth"].Value[0], StringComparison.Ordinal) / 8m;
        else if (parts.Groups["over"].Success)
        {
            var under = decimal.Parse(parts.Groups["under"].Value, CultureInfo.InvariantCulture);
            if (under == 0)
                return null;
            value += decimal.Parse(parts.Groups["over"].Value, CultureInfo.InvariantCulture) / under;
        }
        return parts.Groups["sign"].Value.Length > 0 ? -value : value;
    }

    /// <summary>Inches in eighths with their sign, anything else in decimals.</summary>
    private static string Written(decimal number, string unit)
    {
        var size = Math.Abs(number);
        var (whole, eighths) = (Math.Floor(size), size % 1 * 8);
        var sign = number < 0 ? "-" : "";
        return unit == "in" && eighths > 0 && eighths == Math.Floor(eighths)
            ? string.Create(CultureInfo.InvariantCulture, $"{sign}{(whole == 0 ? "" : whole.ToString("0", CultureInfo.InvariantCulture))}{Eighths[(int)eighths]} in")
            : string.Create(CultureInfo.InvariantCulture, $"{sign}{size:0.##########} {unit}");
    }

    /// <summary>A comma before three digits and no others parts thousands: nobody measures to a thousandth of anything here.</summary>
    [GeneratedRegex("(?<before>^[1-9][0-9]{0,2}),(?<after>[0-9]{3})(?![0-9,.])")]
    private static partial Regex Thousands();

    [GeneratedRegex("^US ?", RegexOptions.IgnoreCase)]
    private static partial Regex Us();

    /// <summary>What is counted, behind its number.</summary>
    [GeneratedRegex(" ?(?:sts?|stitch|stitches|rows?|rounds?|rnds?)\\.?$", RegexOptions.IgnoreCase)]
    private static partial Regex Counted();

    private const string NumberPattern = @"[-−]?(?:[0-9]{1,6}[ -][0-9]{1,3}/[0-9]{1,3}|[0-9]{1,3}/[0-9]{1,3}|(?:[0-9]{1,6} ?)?[⅛¼⅜½⅝¾⅞]|[0-9]{0,6}(?:[.,][0-9]{1,10}|(?<=[0-9])))";

    [GeneratedRegex("^(?<number>" + NumberPattern + @") ?(?<unit>[^0-9\s][^0-9]{0,20})?$")]
    private static partial Regex WithUnit();

    [GeneratedRegex("^(?<feet>" + NumberPattern + @") ?(?:'|’|′|ft\.?|feet|foot) ?(?<inches>" + NumberPattern + @") ?(?:""|”|″|''|in\.?|inch|inches)?$")]
    private static partial Regex FeetAndInches();

    [GeneratedRegex(@"^(?<sign>[-−])?(?:(?<whole>[0-9]*)[ -](?<over>[0-9]+)/(?<under>[0-9]+)|(?<over>[0-9]+)/(?<under>[0-9]+)|(?<whole>[0-9]*) ?(?<eighth>[⅛¼⅜½⅝¾⅞])|(?<whole>[0-9]*[.,]?[0-9]*))$")]
    private static partial Regex Parts();
}
