using System.Collections.Immutable;
using Dyepath.Core.Colours;
using Dyepath.Core.Quantities;
using Dyepath.Core.Yarns;

namespace Dyepath.Core.Tests.Yarns;

/// <summary>Symbols are given out in the order in which the colours come off the ball.</summary>
public sealed class SequenceColourTests
{
    // Two colours of one initial, which want the same letter of their names next: who comes off the ball first has it.
    private static readonly ImmutableArray<YarnSection> Sections =
    [
        Section("pine", 10), Section("pink", 20), Section("sand", 40), Section("pink", 20),
    ];

    [Fact]
    public void From_the_near_end_the_first_colour_chooses_first() =>
        Assert.Equal(["N", "K", "S", "K"], Symbols(SequenceColour.Of(Sections, fromOtherEnd: false, [])));

    [Fact]
    public void From_the_other_end_the_last_colour_chooses_first() =>
        Assert.Equal(["E", "N", "S", "N"], Symbols(SequenceColour.Of(Sections, fromOtherEnd: true, [])));

    private static IEnumerable<string> Symbols(ImmutableArray<SequenceColour> colours) => colours.Select(c => c.Symbol);

    private static YarnSection Section(string name, byte grey) => new(name, new Srgb(grey, grey, grey), Length.FromCentimetres(20), Length.Zero);
}
