using System.Collections.Immutable;
using Dyepath.Core.Colours;
using Dyepath.Core.Yarns;

namespace Dyepath.Core.Instructions.Writing;

/// <summary>A symbol for each colour of a sequence, in the order in which the yarn runs; equal colours share theirs.</summary>
public static class ColourKey
{
    public static ImmutableArray<ChartColour> Of(ImmutableArray<YarnSection> sections)
    {
        var distinct = sections.DistinctBy(section => section.Colour).ToImmutableArray();
        var symbols = ColourSymbols.For([.. distinct.Select(section => section.Name)]);
        return [.. sections.Select(section => new ChartColour(
            section.Name, section.Colour, symbols[distinct.IndexOf(distinct.First(d => d.Colour == section.Colour))]))];
    }
}
