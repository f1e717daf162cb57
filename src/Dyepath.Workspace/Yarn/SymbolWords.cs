using System.Collections.Immutable;
using Dyepath.Core.Booklets;
using Dyepath.Core.Colours;
using Dyepath.Workspace.Draft;

namespace Dyepath.Workspace.Yarn;

/// <summary>Why a colour's symbol is not the letter that its name begins with.</summary>
public static class SymbolWords
{
    /// <summary>Empty where every symbol is its name's initial.</summary>
    /// <param name="sizes">What the pattern's sizes are called.</param>
    public static string Why(ImmutableArray<SectionView> sections, ImmutableArray<string> sizes)
    {
        var distinct = sections.DistinctBy(s => s.Colour).ToArray();
        var other = distinct.Where(s => ColourSymbols.Initial(s.Name) is var initial && char.IsLetter(initial[0]) && initial != s.Symbol)
            .Select(s => ColourSymbols.Initial(s.Name)).Distinct().ToArray();
        if (other.Length == 0)
            return "";
        var called = other.Where(i => sizes.Contains(i, StringComparer.OrdinalIgnoreCase)).ToArray();
        var mistaken = other.Except(called).Where(ColourSymbols.IsMistaken).ToArray();
        var shared = other.Except(called).Except(mistaken)
            .Where(i => distinct.Count(s => ColourSymbols.Initial(s.Name) == i) > 1).ToArray();
        string[] reasons =
        [
            .. called.Length == 0 ? [] : new[] { $"{Wording.List(called)} {(called.Length == 1 ? "is a size" : "are sizes")} of this pattern" },
            .. mistaken.Length == 0 ? [] : new[] { $"{Wording.List(mistaken)} would be read as {(mistaken.Length == 1 ? "a figure" : "figures")}" },
            .. shared.Length == 0 ? [] : new[] { $"more than one colour begins with {Wording.List(shared)}" },
        ];
        return "A symbol is the first letter of its colour, or the next one that is free"
            + (reasons.Length == 0 ? "." : $": {string.Join("; ", reasons)}.");
    }
}
