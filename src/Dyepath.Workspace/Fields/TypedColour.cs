using System.Drawing;
using System.Globalization;
using System.Text.RegularExpressions;

namespace Dyepath.Workspace.Fields;

/// <summary>Colours as people type them: digits with or without their sign, or a name of the open standard for style sheets (CSS Color 4).</summary>
public static partial class TypedColour
{
    /// <summary>As the document writes it; what is no colour is given back as it is, so that the message speaks of what was typed.</summary>
    public static string Read(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        var typed = text.Trim();
        return Digits().IsMatch(typed) ? $"#{typed.ToLowerInvariant()}" : Named(typed) ?? text;
    }

    /// <summary>The colour that a section's whole name is, or its last words: <c>sea green</c>, <c>old gold</c>; null where they are none.</summary>
    public static string? OfName(string name)
    {
        ArgumentNullException.ThrowIfNull(name);
        var words = name.Split(' ', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);
        return Enumerable.Range(0, words.Length).Select(from => Named(string.Concat(words[from..]))).FirstOrDefault(colour => colour is not null);
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
