using System.Collections.Immutable;

namespace Dyepath.Core.Sizing;

/// <summary>How warm a yarn may be washed by hand, by what its label says it is made of.</summary>
public static class FibreCare
{
    /// <summary>
    /// The symbol for washing by hand allows 40 °C (ISO 3758); wool and other hair and silk are washed at 30 °C at most (common practice,
    /// no source).
    /// </summary>
    public static Citation Source { get; } = new(
        Provenance.Published, "ISO 3758:2012 for the 40 °C of the symbol; 30 °C for wool, hair and silk is common practice, no source");

    /// <summary>Fibres that bear what the symbol allows, and what may stand beside their names (common practice, no source).</summary>
    private static readonly ImmutableHashSet<string> Hardy = ImmutableHashSet.Create(
        StringComparer.OrdinalIgnoreCase,
        "cotton", "linen", "flax", "hemp", "acrylic", "polyester", "polyamide", "nylon", "elastane", "and", "organic", "recycled", "mercerised", "mercerized");

    private static readonly char[] Between = [' ', ',', ';', '/', '+', '&', '%', '.', '(', ')'];

    /// <summary>Hand washing of all that is worked into one piece: by the tenderest fibre, and what is not known may be tender.</summary>
    /// <param name="fibres">As labels say it, such as <c>70 % wool, 30 % linen</c>; empty where a label is not known.</param>
    public static string HandWash(IEnumerable<string> fibres)
    {
        ArgumentNullException.ThrowIfNull(fibres);
        return fibres.All(IsHardy) && CareSymbols.TryFind("handWash", out var symbol) ? symbol.Meaning : "wash by hand, 30 °C at most";
    }

    private static bool IsHardy(string fibre)
    {
        string[] words =
        [
            .. fibre.Split(Between, StringSplitOptions.RemoveEmptyEntries).Where(word => !word.All(char.IsAsciiDigit)),
        ];
        return words.Length > 0 && words.All(Hardy.Contains);
    }
}
