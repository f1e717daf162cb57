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
    /// <summary>Most names that can be given symbols at once.</summary>
    public const int MostColours = 64;

    private const string Letters = "ABCDEFGHJKLMNPRSTUVWXYZ";

    /// <summary>
    /// One symbol for each name, in the same order: the capital initial where no other name shares it, else the next letter of the name
    /// that is free, else the first of A, B, C, … still free, then A2, B2, …. An initial that names share stands for none of them. Give the
    /// distinct colours of a yarn; equal names get different symbols.
    /// </summary>
    /// <param name="taken">What is no symbol, because it means something else in the same pattern; letter case is ignored.</param>
    /// <exception cref="ArgumentOutOfRangeException">More than <see cref="MostColours"/> names.</exception>
    public static ImmutableArray<string> For(ImmutableArray<string> names, ImmutableArray<string> taken)
    {
        Guard.InRange(names.Length, 0, MostColours, "colours");
        var initials = names.Select(Initial).ToImmutableArray();
        var shared = initials.Where(initial => initials.Count(other => other == initial) > 1).ToHashSet();
        var used = taken.ToHashSet(StringComparer.OrdinalIgnoreCase);
        var symbols = initials.Select(initial => shared.Contains(initial) ? null : Take([initial], used)).ToArray();
        used.UnionWith(shared);
        Fill(name => name.Select(letter => letter.ToString().ToUpperInvariant()));
        Fill(_ => Enumerable.Range(1, int.MaxValue).SelectMany(round => Letters.Select(letter => Symbol(letter, round))));
        return [.. symbols.Select(symbol => symbol!)];

        void Fill(Func<string, IEnumerable<string>> from)
        {
            for (var i = 0; i < symbols.Length; i++)
                symbols[i] ??= Take(from(names[i]), used);
        }
    }

    /// <summary>The capital that a name begins with; a space where it begins with none.</summary>
    public static string Initial(string name)
    {
        ArgumentNullException.ThrowIfNull(name);
        return name.TrimStart() is { Length: > 0 } said ? char.ToUpperInvariant(said[0]).ToString() : " ";
    }

    /// <summary>Whether a letter is taken for a figure, or for one that is.</summary>
    public static bool IsMistaken(string letter) => letter is "I" or "O" or "Q";

    private static string? Take(IEnumerable<string> candidates, HashSet<string> used) =>
        candidates.FirstOrDefault(symbol => Letters.Contains(symbol[0], StringComparison.Ordinal) && used.Add(symbol));

    private static string Symbol(char letter, int round) =>
        round == 1 ? letter.ToString() : string.Create(CultureInfo.InvariantCulture, $"{letter}{round}");
}
