using System.Drawing;

namespace Dyepath.Core.Colours;

/// <summary>
/// Colours by their names: words for colours of yarn, and the names of the open standard for style sheets (CSS Color 4), which has no
/// cream, mustard or rust.
/// </summary>
public static class ColourNames
{
    /// <summary>
    /// What dyers call colours and the standard does not, or means otherwise: about what each looks like in wool, from memory, to be
    /// corrected by eye.
    /// </summary>
    private static readonly Dictionary<string, Srgb> OfYarns = new(StringComparer.OrdinalIgnoreCase)
    {
        ["amber"] = Srgb.Parse("#c8862a"),
        ["berry"] = Srgb.Parse("#7d2a4b"),
        ["brick"] = Srgb.Parse("#96423a"),
        ["bronze"] = Srgb.Parse("#8a6a3a"),
        ["buttercream"] = Srgb.Parse("#f0e2b6"),
        ["charcoal"] = Srgb.Parse("#3a3d40"),
        ["claret"] = Srgb.Parse("#6b1f33"),
        ["copper"] = Srgb.Parse("#a8613a"),
        ["cream"] = Srgb.Parse("#f3ead7"),
        ["denim"] = Srgb.Parse("#4a6488"),
        ["duck egg"] = Srgb.Parse("#b5cfcb"),
        ["fern"] = Srgb.Parse("#5f8a4f"),
        ["forest"] = Srgb.Parse("#2f5138"),
        ["heather"] = Srgb.Parse("#8f7f9c"),
        ["ink"] = Srgb.Parse("#1f2a44"),
        ["jade"] = Srgb.Parse("#3f8f78"),
        ["lilac"] = Srgb.Parse("#b89bc8"),
        ["mauve"] = Srgb.Parse("#a07c9a"),
        ["mint"] = Srgb.Parse("#a9d4bd"),
        ["moss"] = Srgb.Parse("#6b7a3a"),
        ["mustard"] = Srgb.Parse("#c79a2b"),
        ["oatmeal"] = Srgb.Parse("#d8cbb4"),
        ["ochre"] = Srgb.Parse("#bd8736"),
        ["petrol"] = Srgb.Parse("#1f5566"),
        ["plum"] = Srgb.Parse("#5f3355"),
        ["rose"] = Srgb.Parse("#c98a93"),
        ["rust"] = Srgb.Parse("#a6532d"),
        ["sage"] = Srgb.Parse("#9aa888"),
        ["sand"] = Srgb.Parse("#d9c4a0"),
        ["slate"] = Srgb.Parse("#5a6670"),
        ["stone"] = Srgb.Parse("#b3aca0"),
        ["straw"] = Srgb.Parse("#dcc670"),
        ["terracotta"] = Srgb.Parse("#b5603f"),
        ["wine"] = Srgb.Parse("#64233a"),
    };

    /// <summary>
    /// The colour that a name is, or that one of its words or its last words are: <c>brick red</c>, <c>old gold</c>, <c>sea green</c>; null
    /// where none is known.
    /// </summary>
    public static Srgb? Find(string name)
    {
        ArgumentNullException.ThrowIfNull(name);
        var words = name.Split(' ', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);
        return OfYarn(string.Join(' ', words)) ?? OfStandard(string.Concat(words))
            ?? words.Reverse().Select(OfYarn).FirstOrDefault(colour => colour is not null)
            ?? Enumerable.Range(0, words.Length).Select(from => OfStandard(string.Concat(words[from..])))
                .FirstOrDefault(colour => colour is not null);
    }

    private static Srgb? OfYarn(string name) => OfYarns.TryGetValue(name, out var colour) ? colour : null;

    private static Srgb? OfStandard(string name)
    {
        var spelt = name.Replace("grey", "gray", StringComparison.OrdinalIgnoreCase);
        var colour = spelt.Length > 0 && spelt.All(char.IsAsciiLetter) ? Color.FromName(spelt) : default;
        // The list has the parts of a desktop's windows and the absence of colour too, which are no names of a yarn.
        return colour is { IsKnownColor: true, IsSystemColor: false, A: 255 } ? new Srgb(colour.R, colour.G, colour.B) : null;
    }
}
