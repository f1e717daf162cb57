using System.Collections.Immutable;
using Dyepath.Core.Colours;
using Dyepath.Workspace.Draft;
using Dyepath.Workspace.Yarn;

namespace Dyepath.Workspace.Tests.Yarn;

public sealed class SymbolWordsTests
{
    private const string Rule = "A symbol is the first letter of its colour, or the next one that is free";

    [Theory]
    [InlineData("Plum Rose Kelp", "S M L", "")]
    [InlineData("Plum Rose Sand", "S M L", $"{Rule}: S is a size of this pattern.")]
    [InlineData("Plum Rose Sand Moss", "XS S M L", $"{Rule}: S and M are sizes of this pattern.")]
    [InlineData("Ochre Foam", "2 4 6", $"{Rule}: O would be read as a figure.")]
    [InlineData("Ochre Indigo Sand Bark Birch", "s", $"{Rule}: S is a size of this pattern; O and I would be read as figures; more than one colour begins with B.")]
    [InlineData("7th Foam", "S", "")]
    public void What_keeps_a_colour_from_its_initial_is_said(string names, string sizes, string words)
    {
        ImmutableArray<string> called = [.. sizes.Split(' ')];
        var symbols = ColourSymbols.For([.. names.Split(' ')], called);
        ImmutableArray<SectionView> sections =
            [.. names.Split(' ').Select((name, i) => new SectionView(i, name, new Srgb((byte)i, 0, 0), symbols[i], null, null, null))];
        Assert.Equal(words, SymbolWords.Why(sections, called));
    }
}
