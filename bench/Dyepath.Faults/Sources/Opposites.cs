using System.Collections.Frozen;
using System.Globalization;
using System.Text.RegularExpressions;

namespace Dyepath.Faults.Sources;

/// <summary>Wrong words for right ones: the slips that make a pattern or a finding say the opposite.</summary>
internal static partial class Opposites
{
    private static readonly FrozenDictionary<string, string> Words = Pairs(
        "earlier later", "left right", "up down", "first last", "before after", "more fewer", "longer shorter", "wider narrower", "front back",
        "top bottom", "above below", "inside outside", "row round", "rows rounds", "even odd", "RS WS", "larger smaller", "tighter looser",
        "start end", "beginning end", "add remove", "over under", "next previous", "from to", "hem neck", "side shoulder", "sides shoulders",
        "light dark", "lighter darker", "least most", "same other", "every no", "sc dc", "hdc dc", "st ch", "stitch chain", "high low", "higher lower",
        "without with", "one two", "too hardly", "less more", "clockwise anticlockwise", "horizontal vertical", "width height", "stitches rows");

    /// <summary>Each way in which one word or number of the text can be wrong.</summary>
    public static IEnumerable<(string Right, string Wrong, string Text)> Of(string text)
    {
        foreach (Match word in Pieces().Matches(text))
        {
            if (Wrong(word.Value) is { } wrong)
                yield return (word.Value, wrong, text[..word.Index] + wrong + text[(word.Index + word.Length)..]);
        }
        foreach (Match lost in Dropped().Matches(text))
            yield return (lost.Value, "", text.Remove(lost.Index, lost.Length));
    }

    private static string? Wrong(string word)
    {
        if (int.TryParse(word, NumberStyles.None, CultureInfo.InvariantCulture, out var number))
            return (number + 1).ToString(CultureInfo.InvariantCulture);
        if (Words.TryGetValue(word, out var wrong))
            return wrong;
        return char.IsUpper(word[0]) && Words.TryGetValue(char.ToLowerInvariant(word[0]) + word[1..], out wrong)
            ? char.ToUpperInvariant(wrong[0]) + wrong[1..]
            : null;
    }

    private static FrozenDictionary<string, string> Pairs(params string[] pairs)
    {
        var words = new Dictionary<string, string>();
        foreach (var pair in pairs.Select(p => p.Split(' ')))
        {
            words.TryAdd(pair[0], pair[1]);
            words.TryAdd(pair[1], pair[0]);
        }
        return words.ToFrozenDictionary();
    }

    [GeneratedRegex("[A-Za-z]+|[0-9]{1,6}")]
    private static partial Regex Pieces();

    /// <summary>What is easily left out and changes everything.</summary>
    [GeneratedRegex(@",? ?\bturn\b| ?\bnot\b|\breverse ")]
    private static partial Regex Dropped();
}
