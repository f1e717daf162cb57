using System.Text;

namespace Dyepath.Drawing.Typography;

/// <summary>
/// Makes any string fit to print. Lone surrogates and characters that XML forbids become U+FFFD; bidirectional
/// overrides, embeddings and isolates, which can make a page read as what it does not say, are dropped.
/// </summary>
internal static class SafeText
{
    private const char Replacement = '\uFFFD';

    /// <summary>Line ends and tabs become spaces.</summary>
    public static string OneLine(string text) => IsPlain(text) ? text : Clean(text, keepLines: false);

    /// <summary>Line ends become <c>\n</c>.</summary>
    public static string Lines(string text) => Clean(text, keepLines: true);

    /// <summary>Escaped for the text and the attribute values of HTML and SVG.</summary>
    public static string Markup(string text) => Escape(OneLine(text));

    private static bool IsPlain(string text) => !text.AsSpan().ContainsAnyExceptInRange(' ', '~');

    private static string Clean(string text, bool keepLines)
    {
        var clean = new StringBuilder(text.Length);
        for (var i = 0; i < text.Length; i++)
        {
            var c = text[i];
            if (char.IsHighSurrogate(c) && i + 1 < text.Length && char.IsLowSurrogate(text[i + 1]))
            {
                clean.Append(c).Append(text[++i]);
                continue;
            }
            switch (c)
            {
                case '\r' when i + 1 < text.Length && text[i + 1] == '\n':
                    break;
                case '\r' or '\n' or '\u2028' or '\u2029':
                    clean.Append(keepLines ? '\n' : ' ');
                    break;
                case '\t':
                    clean.Append(' ');
                    break;
                case '\u200E' or '\u200F' or '\u061C' or (>= '\u202A' and <= '\u202E') or (>= '\u2066' and <= '\u2069') or '\uFEFF':
                    break;
                default:
                    clean.Append(char.IsSurrogate(c) || char.IsControl(c) || c is '\uFFFE' or '\uFFFF' ? Replacement : c);
                    break;
            }
        }
        return clean.ToString();
    }

    private static string Escape(string text)
    {
        if (text.AsSpan().IndexOfAny("&<>\"'") < 0)
            return text;
        return text.Replace("&", "&amp;", StringComparison.Ordinal)
            .Replace("<", "&lt;", StringComparison.Ordinal)
            .Replace(">", "&gt;", StringComparison.Ordinal)
            .Replace("\"", "&quot;", StringComparison.Ordinal)
            .Replace("'", "&#39;", StringComparison.Ordinal);
    }
}
