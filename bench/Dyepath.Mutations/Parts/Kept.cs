using System.Globalization;
using System.Text;
using System.Text.Json;
using System.Text.RegularExpressions;
using Dyepath.Mutations.Mutating;
using Dyepath.Mutations.Trying;

namespace Dyepath.Mutations.Parts;

/// <summary>
/// Holds an accepted text against what is written of it, value by value and without the document's own description: each stands there again,
/// or is one that leaving out does not change anything.
/// Lengths are kept to the nanometre and masses to the microgram.
/// </summary>
internal static partial class Kept
{
    /// <param name="isSame">Whether another text means the same document.</param>
    public static void Check(byte[] accepted, byte[] written, Func<byte[], bool> isSame)
    {
        var text = Encoding.UTF8.GetString(accepted).TrimStart('\ufeff');
        var (before, after) = (JsonTree.Parse(text), JsonTree.Parse(Encoding.UTF8.GetString(written)));
        Compare(before, after, before, "", isSame);
    }

    private static void Compare(JsonTree before, JsonTree after, JsonTree root, string path, Func<byte[], bool> isSame)
    {
        for (var i = 0; i < before.Children.Count; i++)
        {
            var name = before.Kind == '{' ? Text(before.Names[i]) : i.ToString(CultureInfo.InvariantCulture);
            var here = $"{path}.{name}";
            var at = before.Kind == '{' ? after.Names.FindIndex(n => Text(n) == name) : i < after.Children.Count ? i : -1;
            if (at < 0 || before.Kind != after.Kind)
            {
                if (here != ".$schema" && !Means(before, i, root, isSame))
                    throw new Broken($"{here} is accepted, matters and is not written");
                continue;
            }
            var (one, other) = (before.Children[i], after.Children[at]);
            if (one.Kind != other.Kind)
                throw new Broken($"{here}: {Short(one)} is written as {Short(other)}");
            if (one.Kind != '0')
                Compare(one, other, root, here, isSame);
            else if (!Equal(one.Raw, other.Raw))
                throw new Broken($"{here}: {Short(one)} is written as {Short(other)}");
        }
        if (before.Kind == '[' && before.Kind == after.Kind && after.Children.Count > before.Children.Count)
            throw new Broken($"{path} has grown");
    }

    /// <summary>Whether a text without this value means the same.</summary>
    private static bool Means(JsonTree owner, int at, JsonTree root, Func<byte[], bool> isSame)
    {
        var (value, name) = (owner.Children[at], owner.Kind == '{' ? owner.Names[at] : "");
        owner.Remove(at);
        var same = isSame(Encoding.UTF8.GetBytes(root.ToString()));
        owner.Insert(at, name, value);
        return same;
    }

    private static bool Equal(string one, string other)
    {
        if (one == other)
            return true;
        if (one[0] != '"' && other[0] != '"')
            return Number(one) is { } a && Number(other) is { } b && a.Equals(b);
        if (one[0] != '"' || other[0] != '"')
            return false;
        var (first, second) = (Text(one), Text(other));
        return first == second || Colour(first) is { } colour && colour == Colour(second)
            || Amount(first) is { } x && Amount(second) is { } y && x.Kind == y.Kind && Math.Abs(x.Size - y.Size) <= Math.Abs(x.Size) * 1e-12m + (x.Kind == 'm' ? 0.000001m : 0.0000001m);
    }

    private static double? Number(string raw) => double.TryParse(raw, NumberStyles.Float, CultureInfo.InvariantCulture, out var number) ? number : null;

    private static string? Colour(string text) => Hex().IsMatch(text)
        ? text.Length == 7 ? text.ToUpperInvariant() : string.Concat(text.ToUpperInvariant().SelectMany((c, i) => i == 0 ? "#" : new string(c, 2)))
        : null;

    /// <summary>Number and unit, the number in the first unit of its kind, by the trade's own factors.</summary>
    private static (char Kind, decimal Size)? Amount(string text)
    {
        var match = Quantity().Match(text);
        if (!match.Success)
            return null;
        var size = 0m;
        if (match.Groups["whole"].Success)
        {
            if (!decimal.TryParse(match.Groups["whole"].Value, NumberStyles.AllowDecimalPoint | NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out size))
                return null;
        }
        var fraction = match.Groups["glyph"].Success ? ("⅛¼⅜½⅝¾⅞".IndexOf(match.Groups["glyph"].Value[0], StringComparison.Ordinal) + 1) / 8m
            : match.Groups["top"].Success ? decimal.Parse(match.Groups["top"].Value, CultureInfo.InvariantCulture) / decimal.Parse(match.Groups["bottom"].Value, CultureInfo.InvariantCulture)
            : 0m;
        size = text.StartsWith('-') || text.StartsWith('−') ? -Math.Abs(size) - fraction : size + fraction;
        return match.Groups["unit"].Value switch
        {
            "cm" => ('l', size),
            "mm" => ('l', size / 10),
            "m" => ('l', size * 100),
            "in" => ('l', size * 2.54m),
            "yd" => ('l', size * 91.44m),
            "g" => ('m', size),
            "oz" => ('m', size * 28.349523125m),
            "kg" => ('m', size * 1_000),
            "%" => ('s', size),
            "cm²" or "cm2" => ('a', size),
            _ => ('n', size),
        };
    }

    private static string Text(string raw) => JsonDocument.Parse(raw).RootElement.GetString()!;

    private static string Short(JsonTree node) => node.ToString() is var text && text.Length > 80 ? text[..80] + "…" : node.ToString();

    [GeneratedRegex("^#([0-9a-fA-F]{3}|[0-9a-fA-F]{6})$")]
    private static partial Regex Hex();

    [GeneratedRegex(@"^(?<sign>[-−])?(?<whole>[0-9]+(\.[0-9]+)?)?\s*((?<glyph>[⅛¼⅜½⅝¾⅞])|(?<top>[0-9]+)/(?<bottom>[0-9]+))?\s*(?<unit>cm²|cm2|cm|mm|m|in|yd|g|oz|kg|%|stitches|stitch|sts|st)$")]
    private static partial Regex Quantity();
}
