using System.Collections.Immutable;
using Dyepath.Core.Colours;
using Dyepath.Core.Quantities;
using Dyepath.Core.Yarns;

namespace Dyepath.Core.Tests.Yarns;

/// <summary>Symbols are given out in the order in which the colours come off the ball.</summary>
public sealed class SequenceColourTests
{
    // Three colours of one initial: their symbols are the first free letters, in order.
    private static readonly ImmutableArray<YarnSection> Sections =
    [
        Section("moss", 10), Section("mint", 20), Section("malachite", 30), Section("sand", 40), Section("mint", 20),
    ];

    [Fact]
    public void From_the_near_end_the_first_colour_has_the_first_letter() =>
        Assert.Equal(["A", "B", "C", "S", "B"], Symbols(SequenceColour.Of(Sections, fromOtherEnd: false, [])));

    [Fact]
    public void From_the_other_end_the_last_colour_has_the_first_letter() =>
        Assert.Equal(["C", "A", "B", "S", "A"], Symbols(SequenceColour.Of(Sections, fromOtherEnd: true, [])));

    private static IEnumerable<string> Symbols(ImmutableArray<SequenceColour> colours) => colours.Select(c => c.Symbol);

    private static YarnSection Section(string name, byte grey) => new(name, new Srgb(grey, grey, grey), Length.FromCentimetres(20), Length.Zero);
}
