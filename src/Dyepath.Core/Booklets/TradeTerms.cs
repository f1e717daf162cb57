using System.Collections.Frozen;

namespace Dyepath.Core.Booklets;

/// <summary>
/// The words that differ between US and UK usage (several conversion pages agree on the stitches; the rest from memory).
/// Each term is looked up once, as a whole, so that sc → dc is never carried on to tr.
/// </summary>
public static class TradeTerms
{
    private static readonly FrozenDictionary<string, string> ToUk = new Dictionary<string, string>
    {
        ["sl st"] = "ss",
        ["sc"] = "dc",
        ["hdc"] = "htr",
        ["dc"] = "tr",
        ["tr"] = "dtr",
        ["dtr"] = "trtr",
        ["trtr"] = "qtr",
        ["esc"] = "edc",
        ["sc2tog"] = "dc2tog",
        ["sc3tog"] = "dc3tog",
        ["dc2tog"] = "tr2tog",
        ["FPdc"] = "RtrF",
        ["single crochet"] = "double crochet",
        ["half double crochet"] = "half treble",
        ["double crochet"] = "treble",
        ["treble"] = "double treble",
        ["double treble"] = "triple treble",
        ["reverse single crochet"] = "reverse double crochet",
        ["single crochet 2 together"] = "double crochet 2 together",
        ["single crochet 3 together"] = "double crochet 3 together",
        ["double crochet 2 together"] = "treble 2 together",
        ["gauge"] = "tension",
        ["skip"] = "miss",
        ["skipped"] = "missed",
        ["sk"] = "miss",
        ["yarn over"] = "yarn round hook",
        ["yo"] = "yrh",
        ["color"] = "colour",
        ["US terms"] = "UK terms",
    }.ToFrozenDictionary(StringComparer.Ordinal);

    /// <summary>The term in the usage wanted; a leading capital is kept. Terms that both usages share come back unchanged.</summary>
    public static string Say(string us, Terms terms)
    {
        ArgumentException.ThrowIfNullOrEmpty(us);
        if (terms == Terms.Us)
            return us;
        if (ToUk.TryGetValue(us, out var uk))
            return uk;
        var lower = char.ToLowerInvariant(us[0]) + us[1..];
        return ToUk.TryGetValue(lower, out uk) ? char.ToUpperInvariant(uk[0]) + uk[1..] : us;
    }

    /// <summary>Whether UK usage has another word for it.</summary>
    public static bool Differs(string us) => Say(us, Terms.Uk) != us;
}
