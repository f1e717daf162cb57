using System.Text;

namespace Dyepath.Workspace.Shell;

/// <summary>Names of files made from a title, safe on every system.</summary>
public static class FileName
{
    private const int Longest = 60;

    /// <summary>Names that some systems keep for devices, whatever follows the first point.</summary>
    private static readonly string[] Kept = ["con", "prn", "aux", "nul", .. Enumerable.Range(0, 10).SelectMany(n => new[] { $"com{n}", $"lpt{n}" })];

    /// <param name="title">Any text.</param>
    /// <param name="ending">Such as <c>-us.pdf</c>.</param>
    /// <returns>Letters, digits and single hyphens of the title in lower case, then the ending.</returns>
    public static string Of(string title, string ending)
    {
        var name = new StringBuilder();
        foreach (var rune in title.Normalize().EnumerateRunes())
        {
            if (Rune.IsLetterOrDigit(rune))
                name.Append(Rune.ToLowerInvariant(rune));
            else if (name.Length > 0 && name[^1] != '-'
                && Rune.GetUnicodeCategory(rune) is not System.Globalization.UnicodeCategory.NonSpacingMark)
                name.Append('-');
            if (name.Length >= Longest)
                break;
        }
        var safe = name.ToString().Trim('-');
        return (safe.Length == 0 || Kept.Contains(safe) ? $"pattern{(safe.Length == 0 ? "" : "-")}{safe}" : safe) + ending;
    }
}
