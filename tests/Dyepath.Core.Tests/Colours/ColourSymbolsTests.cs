using System.Collections.Immutable;
using CsCheck;
using Dyepath.Core.Colours;

namespace Dyepath.Core.Tests.Colours;

public sealed class ColourSymbolsTests
{
    [Theory]
    [InlineData("Kelp Foam Slate", "K F S")]
    [InlineData("kelp foam slate", "K F S")]
    [InlineData("Sand Sea Foam", "A E F")]
    [InlineData("Ash Bark Birch", "A R C")]
    [InlineData("Indigo Ochre Quartz", "N C U")]
    [InlineData("Écru 7 Foam", "C A F")]
    public void Initials_serve_where_unique_and_clear(string names, string symbols) =>
        Assert.Equal(symbols, string.Join(' ', ColourSymbols.For([.. names.Split(' ')], [])));

    [Theory]
    [InlineData("Sand Moss Lime Foam", "S M L", "A B E F")]
    [InlineData("Plum Rose Sand Moss", "XS S M L", "P R A B")]
    [InlineData("Plum Rose Sand Elm", "XS S M L", "P R A E")]
    [InlineData("Plum Rose Mauve", "S M L", "P R A")]
    [InlineData("Sand Moss Lime Foam", "s XS", "A M L F")]
    [InlineData("Sand Sea Foam", "A B C", "N E F")]
    [InlineData("Ash Bark Birch", "2 4 6", "A R C")]
    public void What_a_size_is_called_stands_for_no_colour(string names, string sizes, string symbols) =>
        Assert.Equal(symbols, string.Join(' ', ColourSymbols.For([.. names.Split(' ')], [.. sizes.Split(' ')])));

    /// <summary>A letter that two colours begin with would be taken for the other one.</summary>
    [Fact]
    public void An_initial_that_colours_share_stands_for_no_third() =>
        Assert.Equal(["A", "E", "H"], ColourSymbols.For(["Sand", "Sea", "Ísh"], []));

    [Fact]
    public void Sizes_called_by_every_letter_leave_letters_with_numbers()
    {
        var letters = Enumerable.Range('A', 26).Select(c => ((char)c).ToString()).ToImmutableArray();
        Assert.Equal(["B2", "C2"], ColourSymbols.For(["Sand", "Foam"], letters.Add("A2")));
    }

    [Fact]
    public void Blank_names_get_letters_too() => Assert.Equal(["A", "B"], ColourSymbols.For(["", "  "], []));

    [Fact]
    public void Symbols_are_distinct_short_and_free_of_confusable_letters() =>
        Gen.String[0, 6].Array[0, ColourSymbols.MostColours].Holds(names =>
        {
            var symbols = ColourSymbols.For([.. names], []);
            return symbols.Length == names.Length && symbols.Distinct().Count() == names.Length
                && symbols.All(symbol => symbol.Length is 1 or 2 && !"IOQ".Contains(symbol[0], StringComparison.Ordinal));
        }, seed: 8, cases: 1_000);

    [Fact]
    public void Sixty_four_colours_of_one_name_are_served_and_no_more()
    {
        Assert.Equal(64, ColourSymbols.For([.. Enumerable.Repeat("Sand", 64)], []).Distinct().Count());
        Assert.Throws<ArgumentOutOfRangeException>(() => ColourSymbols.For([.. Enumerable.Repeat("Sand", 65)], []));
    }
}
