using System.Globalization;
using System.Text;

namespace Dyepath.Contracts;

/// <summary>
/// Names as lists, logs and terminals show them: one line of what can be seen, so that no name hides another, turns the line around
/// or moves a cursor, and never half a character.
/// </summary>
public static class ShownName
{
    /// <summary>Characters as one sees them: a ball of yarn is one, however many numbers write it.</summary>
    public const int Longest = 120;

    /// <summary>UTF-16 units that <see cref="Longest"/> characters may take: an emoji of a family takes eleven.</summary>
    private const int MostUnits = 4 * Longest;

    /// <summary>More accents than any script stacks on one letter; beyond, they only blot the lines above and below.</summary>
    private const int MostMarks = 6;

    private const char Joiner = '\u200D';
    private const char NonJoiner = '\u200C';

    /// <summary>Below, in Latin, joiners join nothing and only make two names look alike.</summary>
    private const int FirstJoined = 0x0300;

    /// <summary>Empty where nothing can be seen.</summary>
    public static string Of(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        var line = new StringBuilder(Math.Min(text.Length, MostUnits));
        var (last, marks) = (default(Rune), 0);
        foreach (var rune in text.EnumerateRunes())
        {
            if (Rune.IsWhiteSpace(rune) || Rune.IsControl(rune))
            {
                line.Append(' ');
                (last, marks) = (default, 0);
                continue;
            }
            var isMark = IsMark(rune);
            if (IsInvisible(rune, last) || (isMark && (last == default || marks == MostMarks)))
                continue;
            line.Append(rune);
            (last, marks) = (rune, isMark ? marks + 1 : 0);
        }
        return Cut(line.ToString().Trim(), Longest).TrimEnd(' ', Joiner, NonJoiner);
    }

    /// <summary>The first characters, each of them whole.</summary>
    public static string Cut(string text, int most)
    {
        ArgumentNullException.ThrowIfNull(text);
        var end = 0;
        for (var count = 0; end < text.Length && count < most; count++)
        {
            var next = end + StringInfo.GetNextTextElementLength(text, end);
            if (next > 4 * most)
                break;
            end = next;
        }
        return text[..end];
    }

    private static bool IsInvisible(Rune rune, Rune before) => rune.Value switch
    {
        Joiner or NonJoiner => before.Value < FirstJoined,
        // Letters and marks that are drawn as nothing.
        0x034F or 0x115F or 0x1160 or 0x17B4 or 0x17B5 or 0x2800 or 0x3164 or 0xFFA0 => true,
        >= 0xFDD0 and <= 0xFDEF => true,
        var value when (value & 0xFFFE) == 0xFFFE => true,
        _ => Rune.GetUnicodeCategory(rune) is UnicodeCategory.Format,
    };

    private static bool IsMark(Rune rune) => Rune.GetUnicodeCategory(rune)
        is UnicodeCategory.NonSpacingMark or UnicodeCategory.EnclosingMark or UnicodeCategory.SpacingCombiningMark;
}
