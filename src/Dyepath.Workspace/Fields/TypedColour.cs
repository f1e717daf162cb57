using System.Text.RegularExpressions;
using Dyepath.Core.Colours;

namespace Dyepath.Workspace.Fields;

/// <summary>Colours as people type them: digits with or without their sign, or a name.</summary>
public static partial class TypedColour
{
    /// <summary>As the document writes it; what is no colour is given back, so that the message speaks of what was typed.</summary>
    public static string Read(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        var typed = text.Trim();
        return Digits().IsMatch(typed) ? $"#{typed.ToLowerInvariant()}" : ColourNames.Find(typed)?.ToString() ?? text;
    }

    [GeneratedRegex("^(?:[0-9a-fA-F]{6}|[0-9a-fA-F]{3})$")]
    private static partial Regex Digits();
}
