using Dyepath.Core.Colours;

namespace Dyepath.Core.Tests.Colours;

public sealed class ColourNamesTests
{
    /// <summary>Those of the standard by the table of named colours in CSS Color Module Level 4, from memory.</summary>
    [Theory]
    [InlineData("deep teal", "#008080")]
    [InlineData("pale sea green", "#2e8b57")]
    [InlineData("old gold", "#ffd700")]
    [InlineData("mud", null)]
    [InlineData("mossy", null)]
    [InlineData("brick red", "#96423a")]
    [InlineData("deep plum", "#5f3355")]
    [InlineData("", null)]
    public void A_name_is_a_colour_by_itself_or_by_one_of_its_words(string name, string? colour) =>
        Assert.Equal(colour, ColourNames.Find(name)?.ToString());
}
