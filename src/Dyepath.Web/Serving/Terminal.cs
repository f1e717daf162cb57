using System.Text;

namespace Dyepath.Web.Serving;

/// <summary>Writes lines for a person at a terminal, which obeys control characters: whatever a line quotes, it stays a line.</summary>
internal static class Terminal
{
    /// <summary>On standard output.</summary>
    public static Task SayAsync(string line) => Console.Out.WriteLineAsync(Clean(line));

    /// <summary>On standard error.</summary>
    public static Task ComplainAsync(string line) => Console.Error.WriteLineAsync(Clean(line));

    /// <summary>Line breaks stay: sentences have them. What turns, hides or moves text is shown as a sign.</summary>
    internal static string Clean(string text)
    {
        var clean = new StringBuilder(text.Length);
        foreach (var rune in text.EnumerateRunes())
        {
            var isSafe = rune.Value == '\n' || !(Rune.IsControl(rune) || Rune.GetUnicodeCategory(rune)
                is System.Globalization.UnicodeCategory.Format or System.Globalization.UnicodeCategory.LineSeparator
                or System.Globalization.UnicodeCategory.ParagraphSeparator);
            clean.Append(isSafe ? rune : Rune.ReplacementChar);
        }
        return clean.ToString();
    }
}
