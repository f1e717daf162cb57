using System.Collections.Immutable;
using Dyepath.Core.Booklets;
using Dyepath.Core.Colours;
using Dyepath.Core.Yarns;
using Dyepath.Drawing.Lists;
using Dyepath.Drawing.Typography;

namespace Dyepath.Drawing.Pictures;

internal static class ColourKeySigns
{
    private const double Side = 5;

    /// <summary>One entry for each colour that differs in name, colour or symbol, in the order of the sequence.</summary>
    public static ImmutableArray<KeyEntry> Of(ImmutableArray<SequenceColour> key) =>
        [.. key.Distinct().Select(colour => new KeyEntry(Swatch(colour), colour.Name))];

    /// <summary>The symbol, cut to two characters so that it stays in its cell.</summary>
    public static string Symbol(SequenceColour colour) => string.Concat(SafeText.OneLine(colour.Symbol).EnumerateRunes().Take(2));

    private static Sheet Swatch(SequenceColour colour)
    {
        var symbol = Symbol(colour);
        var lettering = new Lettering(symbol.Length > 1 ? 2.4 : 3, Contrast.InkOn(colour.Colour), Anchor.Middle);
        return new Sheet(Side, Side,
        [
            new PathBuilder().Rectangle(0.1, 0.1, Side - 0.2, Side - 0.2).With(new Style(colour.Colour, Ink.Fine)),
            new TextLine(new Point(Side / 2, lettering.BaselineAround(Side / 2)), symbol, lettering),
        ], symbol);
    }
}
