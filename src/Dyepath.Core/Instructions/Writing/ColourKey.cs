using System.Collections.Immutable;
using Dyepath.Core.Yarns;

namespace Dyepath.Core.Instructions.Writing;

/// <summary>Gives each colour of a sequence a letter, in the order in which the yarn runs; equal colours share theirs.</summary>
public static class ColourKey
{
    /// <summary>Letters that are not mistaken for digits or for each other; a second round takes pairs.</summary>
    private const string Letters = "ABCDEFGHJKLMNPQRSTUVWXYZ";

    public static ImmutableArray<ChartColour> Of(ImmutableArray<YarnSection> sections)
    {
        var given = new Dictionary<string, string>();
        return [.. sections.Select(section =>
        {
            var colour = section.Colour.ToString();
            if (!given.TryGetValue(colour, out var symbol))
                given.Add(colour, symbol = Symbol(given.Count));
            return new ChartColour(section.Name, section.Colour, symbol);
        })];
    }

    private static string Symbol(int at) => at < Letters.Length
        ? Letters[at].ToString()
        : $"{Letters[at / Letters.Length - 1]}{Letters[at % Letters.Length]}";
}
