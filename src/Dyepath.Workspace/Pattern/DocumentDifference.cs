using System.Globalization;
using System.Text.Json.Nodes;

namespace Dyepath.Workspace.Pattern;

/// <summary>One place at which two states of a document differ.</summary>
/// <param name="Place">Such as <c>yarn.sections[2].length</c>.</param>
/// <param name="Then">What stood there, short; empty where nothing did.</param>
/// <param name="Now">What stands there now; empty where nothing does.</param>
public sealed record Difference(string Place, string Then, string Now)
{
    /// <summary>The place as words, such as <c>yarn, section 3, length</c>.</summary>
    public string Words => string.Join(", ", Place.Split('.').SelectMany(Part));

    private static IEnumerable<string> Part(string part)
    {
        var bracket = part.IndexOf('[', StringComparison.Ordinal);
        var name = Spaced(bracket < 0 ? part : part[..bracket]);
        if (bracket < 0 || !int.TryParse(part.AsSpan(bracket + 1, part.IndexOf(']', StringComparison.Ordinal) - bracket - 1),
            CultureInfo.InvariantCulture, out var index))
            return [name];
        return [string.Create(CultureInfo.InvariantCulture, $"{(name.EndsWith('s') ? name[..^1] : name)} {index + 1}")];
    }

    /// <summary><c>belowWaist</c> as <c>below waist</c>.</summary>
    private static string Spaced(string name) =>
        string.Concat(name.Select(c => char.IsAsciiLetterUpper(c) ? $" {char.ToLowerInvariant(c)}" : c.ToString()));
}

/// <summary>Where two documents differ, in the order of the present one.</summary>
public static class DocumentDifference
{
    private const int LongestShown = 48;

    /// <summary>A document that is missing counts as empty.</summary>
    public static IReadOnlyList<Difference> Between(JsonNode? then, JsonNode? now) => [.. At("", then, now)];

    private static IEnumerable<Difference> At(string place, JsonNode? then, JsonNode? now)
    {
        if (then is JsonObject before && now is JsonObject after)
        {
            var names = after.Select(m => m.Key).Concat(before.Select(m => m.Key)).Distinct();
            return names.SelectMany(name => At(place.Length == 0 ? name : $"{place}.{name}", before[name], after[name]));
        }
        if (then is JsonArray old && now is JsonArray fresh)
        {
            return Enumerable.Range(0, Math.Max(old.Count, fresh.Count)).SelectMany(i => At(
                string.Create(CultureInfo.InvariantCulture, $"{place}[{i}]"), i < old.Count ? old[i] : null, i < fresh.Count ? fresh[i] : null));
        }
        return JsonNode.DeepEquals(then, now) ? [] : [new Difference(place, Shown(place, then), Shown(place, now))];
    }

    private static string Shown(string place, JsonNode? node)
    {
        if (place.EndsWith(".jpeg", StringComparison.Ordinal) && node is not null)
            return "a picture";
        var text = node switch
        {
            null => "",
            JsonObject => "several values",
            JsonArray list => string.Create(CultureInfo.InvariantCulture, $"a list of {list.Count}"),
            _ when node.GetValueKind() == System.Text.Json.JsonValueKind.String => node.GetValue<string>().Replace('\n', ' '),
            _ when node.GetValueKind() is System.Text.Json.JsonValueKind.True => "yes",
            _ when node.GetValueKind() is System.Text.Json.JsonValueKind.False => "no",
            _ => node.ToJsonString(),
        };
        return text.Length <= LongestShown ? text : $"{text.AsSpan(0, char.IsHighSurrogate(text[LongestShown - 2]) ? LongestShown - 2 : LongestShown - 1)}…";
    }
}
