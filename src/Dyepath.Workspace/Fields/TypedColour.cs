using System.Drawing;
using System.Globalization;
using System.Text.RegularExpressions;

namespace Dyepath.Workspace.Fields;

/// <summary>
/// Colours as people type them: digits with or without their sign, a word for a colour of yarn, or a name of the open standard for style
/// sheets (CSS Color 4).
/// </summary>
public static partial class TypedColour
{
    /// <summary>
    /// What dyers and knitters' shops call colours and the standard does not, or means otherwise: about what each looks like in wool, from
    /// memory, to be corrected by eye.
    /// </summary>
    private static readonly Dictionary<string, string> OfYarns = new(StringComparer.OrdinalIgnoreCase)
    {
        ["amber"] = "#c8862a",
        ["berry"] = "#7d2a4b",
        ["brick"] = "#96423a",
        ["bronze"] = "#8a6a3a",
        ["buttercream"] = "#f0e2b6",
        ["charcoal"] = "#3a3d40",
        ["claret"] = "#6b1f33",
        ["copper"] = "#a8613a",
        ["cream"] = "#f3ead7",
        ["denim"] = "#4a6488",
        ["duck egg"] = "#b5cfcb",
        ["fern"] = "#5f8a4f",
        ["forest"] = "#2f5138",
        ["heather"] = "#8f7f9c",
        ["ink"] = "#1f2a44",
        ["jade"] = "#3f8f78",
        ["lilac"] = "#b89bc8",
        ["mauve"] = "#a07c9a",
        ["mint"] = "#a9d4bd",
        ["moss"] = "#6b7a3a",
        ["mustard"] = "#c79a2b",
        ["oatmeal"] = "#d8cbb4",
        ["ochre"] = "#bd8736",
        ["petrol"] = "#1f5566",
        ["plum"] = "#5f3355",
        ["rose"] = "#c98a93",
        ["rust"] = "#a6532d",
        ["sage"] = "#9aa888",
        ["sand"] = "#d9c4a0",
        ["slate"] = "#5a6670",
        ["stone"] = "#b3aca0",
        ["straw"] = "#dcc670",
        ["terracotta"] = "#b5603f",
        ["wine"] = "#64233a",
    };

    /// <summary>As the document writes it; what is no colour is given back, so that the message speaks of what was typed.</summary>
    public static string Read(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        var typed = text.Trim();
        return Digits().IsMatch(typed) ? $"#{typed.ToLowerInvariant()}" : OfName(typed) ?? text;
    }

    /// <summary>
    /// The colour that a name is, or that one of its words or its last words are: <c>brick red</c>, <c>old gold</c>, <c>sea green</c>; null
    /// where none is known.
    /// </summary>
    public static string? OfName(string name)
    {
        ArgumentNullException.ThrowIfNull(name);
        var words = name.Split(' ', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);
        return OfYarns.GetValueOrDefault(string.Join(' ', words)) ?? Named(string.Concat(words))
            ?? words.Reverse().Select(word => OfYarns.GetValueOrDefault(word)).FirstOrDefault(colour => colour is not null)
            ?? Enumerable.Range(0, words.Length).Select(from => Named(string.Concat(words[from..])))
                .FirstOrDefault(colour => colour is not null);
    }

    private static string? Named(string name)
    {
        var spelt = name.Replace(" ", "", StringComparison.Ordinal).Replace("grey", "gray", StringComparison.OrdinalIgnoreCase);
        var colour = spelt.Length > 0 && spelt.All(char.IsAsciiLetter) ? Color.FromName(spelt) : default;
        // The list has the parts of a desktop's windows and the absence of colour too, which are no names of a yarn.
        return colour is { IsKnownColor: true, IsSystemColor: false, A: 255 }
            ? string.Create(CultureInfo.InvariantCulture, $"#{colour.R:x2}{colour.G:x2}{colour.B:x2}") : null;
    }

    [GeneratedRegex("^(?:[0-9a-fA-F]{6}|[0-9a-fA-F]{3})$")]
    private static partial Regex Digits();
}
