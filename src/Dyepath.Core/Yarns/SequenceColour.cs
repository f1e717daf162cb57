using System.Collections.Immutable;
using Dyepath.Core.Colours;

namespace Dyepath.Core.Yarns;

/// <summary>A section's colour as charts and words name it.</summary>
/// <param name="Name">As the pattern prints it.</param>
/// <param name="Colour">As a screen shows it.</param>
/// <param name="Symbol">One or two characters that stand for the colour where hue cannot; equal colours share theirs.</param>
public sealed record SequenceColour(string Name, Srgb Colour, string Symbol)
{
    /// <summary>
    /// The colours of a yarn, one a section, in the order of its sections. Symbols are given out in the order in which the colours come
    /// off the ball, and are the same wherever the yarn is shown.
    /// </summary>
    /// <param name="sections">At most 64.</param>
    /// <param name="fromOtherEnd">See <see cref="Yarn.FromOtherEnd"/>.</param>
    /// <param name="taken">What is no symbol: the names of the pattern's sizes.</param>
    public static ImmutableArray<SequenceColour> Of(ImmutableArray<YarnSection> sections, bool fromOtherEnd, ImmutableArray<string> taken)
    {
        var distinct = (fromOtherEnd ? sections.Reverse() : sections).DistinctBy(section => section.Colour).ToImmutableArray();
        var symbols = ColourSymbols.For([.. distinct.Select(section => section.Name)], taken);
        var symbolOf = distinct.Zip(symbols).ToDictionary(d => d.First.Colour, d => d.Second);
        return [.. sections.Select(section => new SequenceColour(section.Name, section.Colour, symbolOf[section.Colour]))];
    }

    /// <summary>The colours of a yarn, one a section, in the order in which they come off the ball.</summary>
    /// <param name="taken">What is no symbol: the names of the pattern's sizes.</param>
    public static ImmutableArray<SequenceColour> AsWorked(Yarn yarn, ImmutableArray<string> taken)
    {
        ArgumentNullException.ThrowIfNull(yarn);
        var colours = Of(yarn.Sections, yarn.FromOtherEnd, taken);
        return yarn.FromOtherEnd ? [.. colours.Reverse()] : colours;
    }
}
