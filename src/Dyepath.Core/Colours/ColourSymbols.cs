using System.Collections.Immutable;
using System.Globalization;
using Dyepath.Core.Quantities;

namespace Dyepath.Core.Colours;

/// <summary>
/// The letter that stands for a colour in a chart cell, so that a chart reads in grey and by any eyes. I, O and Q are
/// never used: they are taken for 1, 0 and O.
/// </summary>
public static class ColourSymbols
{
    public const int MostColours = 64;

    private const string Letters = "ABCDEFGHJKLMNPRSTUVWXYZ";

    /// <summary>
    /// One symbol for each name, in the same order: the capital initial where no other name shares it, else the first
    /// of A, B, C, … still free, then A2, B2, …. Give the distinct colours of a yarn; equal names get different symbols.
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">More than <see cref="MostColours"/> names.</exception>
    public static ImmutableArray<string> For(ImmutableArray<string> names)
    {
        Guard.InRange(names.Length, 0, MostColours, "colours");
        var initials = names.Select(Initial).ToImmutableArray();
        var unique = initials.GroupBy(initial => initial).Where(group => group.Count() == 1 && Letters.Contains(group.Key))
            .Select(group => group.Key).ToHashSet();
        var free = new Queue<string>(
            Letters.Where(letter => !unique.Contains(letter)).Select(letter => letter.ToString())
                .Concat(Letters.Select(letter => letter + "2")).Concat(Letters.Select(letter => letter + "3")));
        return [.. initials.Select(initial => unique.Contains(initial) ? initial.ToString() : free.Dequeue())];
    }

    private static char Initial(string name) =>
        char.ToUpper(name.TrimStart().FirstOrDefault(), CultureInfo.InvariantCulture);
}
