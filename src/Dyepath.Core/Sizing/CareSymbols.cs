using System.Collections.Immutable;
using System.Diagnostics.CodeAnalysis;

namespace Dyepath.Core.Sizing;

/// <summary>
/// A care instruction of ISO 3758 in words: its key in a document, the shape it is drawn as, what it means. The drawn
/// symbols are trademarks whose use may need a licence, so only words are kept.
/// </summary>
/// <param name="Key">As a document spells it, such as <c>handWash</c>.</param>
/// <param name="Shape">How the symbol looks, in words.</param>
/// <param name="Meaning">What the maker or wearer is to do.</param>
public sealed record CareSymbol(string Key, string Shape, string Meaning);

/// <summary>The care instructions that a pattern can print.</summary>
public static class CareSymbols
{
    /// <summary>For all of them.</summary>
    public static Citation Source { get; } = new(
        Provenance.Published, "ISO 3758:2012 (a 2023 edition exists), as pages reproduce it; tumble temperatures from memory");

    /// <summary>By treatment: washing, bleaching, drying, ironing, dry cleaning.</summary>
    public static ImmutableArray<CareSymbol> All { get; } =
    [
        new("wash", "wash tub with 95, 70, 60, 50, 40 or 30",
            "wash at that many °C at most; no bar below the tub normal, one bar mild, two bars very mild"),
        new("handWash", "wash tub with a hand", "wash by hand, 40 °C at most"),
        new("doNotWash", "wash tub crossed out", "do not wash"),
        new("anyBleach", "triangle", "any bleach"),
        new("oxygenBleach", "triangle with two oblique lines", "only oxygen or non-chlorine bleach"),
        new("doNotBleach", "triangle crossed out", "do not bleach"),
        new("tumbleNormal", "square with a circle and two dots", "tumble dry, normal, 80 °C at most at the exhaust"),
        new("tumbleLow", "square with a circle and one dot", "tumble dry, low, 60 °C at most at the exhaust"),
        new("doNotTumble", "square with a crossed-out circle", "do not tumble dry"),
        new("lineDry", "square with one vertical line", "dry on a line"),
        new("dripLineDry", "square with two vertical lines", "drip dry on a line"),
        new("flatDry", "square with one horizontal line", "dry flat"),
        new("dripFlatDry", "square with two horizontal lines", "drip dry flat"),
        new("shadeDry", "oblique line in the square's top left corner", "dry in the shade"),
        new("iron200", "iron with three dots", "iron at 200 °C at most"),
        new("iron150", "iron with two dots", "iron at 150 °C at most"),
        new("iron110", "iron with one dot", "iron at 110 °C at most; careful with steam"),
        new("doNotIron", "iron crossed out", "do not iron"),
        new("dryCleanP", "circle with P", "professional dry cleaning in tetrachloroethene and the solvents of F"),
        new("dryCleanF", "circle with F", "professional dry cleaning in hydrocarbons"),
        new("wetClean", "circle with W", "professional wet cleaning"),
        new("doNotDryClean", "circle crossed out", "do not dry clean"),
    ];

    /// <summary>Looks for the key, small and capital letters told apart.</summary>
    public static bool TryFind(string key, [NotNullWhen(true)] out CareSymbol? symbol)
    {
        symbol = All.FirstOrDefault(candidate => candidate.Key == key);
        return symbol is not null;
    }
}
