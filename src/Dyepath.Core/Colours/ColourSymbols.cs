using System.Collections.Immutable;
using System.Globalization;
using Dyepath.Core.Quantities;

namespace Dyepath.Core.Colours;

/// <summary>
/// The letter that stands for a colour in a chart cell, so that a chart can be read in grey and with any colour vision. I, O and Q are
/// never used: they are taken for 1, 0 and O. Nor is what the pattern calls a size, such as M.
/// </summary>
public static class ColourSymbols
{
    public const int MostColours = 64;

    private const string Letters = "ABCDEFGHJKLMNPRSTUVWXYZ";

    /// <summary>
    /// One symbol for each name, in the same order: the capital initial where no other name shares it, else the first
    /// of A, B, C, … still free, then A2, B2, …. Give the distinct colours of a yarn; equal names get different symbols.
    /// </summary>
    /// <param name="taken">What is no symbol, because it means something else in the same pattern; letter case is ignored.</param>
    /// <exception cref="ArgumentOutOfRangeException">More than <see cref="MostColours"/> names.</exception>
    public static ImmutableArray<string> For(ImmutableArray<string> names, ImmutableArray<string> taken)
    {
        Guard.InRange(names.Length, 0, MostColours, "colours");
        var others = taken.ToHashSet(StringComparer.OrdinalIgnoreCase);
        var initials = names.Select(Initial).ToImmutableArray();
        var unique = initials.GroupBy(initial => initial)
            .Where(group => group.Count() == 1 && Letters.Contains(group.Key, StringComparison.Ordinal))
            .Select(group => group.Key).Where(initial => !others.Contains(initial)).ToHashSet();
        var free = Enumerable.Range(1, int.MaxValue).SelectMany(round => Letters.Select(letter => Symbol(letter, round)))
            .Where(symbol => !unique.Contains(symbol) && !others.Contains(symbol)).Take(names.Length).ToImmutableArray();
        var next = 0;
        return [.. initials.Select(initial => unique.Contains(initial) ? initial : free[next++])];
    }

    private static string Symbol(char letter, int round) =>
        round == 1 ? letter.ToString() : string.Create(CultureInfo.InvariantCulture, $"{letter}{round}");

    private static string Initial(string name) =>
        name.TrimStart() is { Length: > 0 } said ? char.ToUpper(said[0], CultureInfo.InvariantCulture).ToString() : " ";
}
