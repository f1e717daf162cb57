using Dyepath.Core.Colours;

namespace Dyepath.Core.Tests.Colours;

public sealed class ColourWordsTests
{
    [Theory]
    [InlineData("#000000", "black")]
    [InlineData("#ffffff", "white")]
    [InlineData("#808080", "grey")]
    [InlineData("#2b2b2b", "dark grey")]
    [InlineData("#e5e5e5", "pale grey")]
    [InlineData("#ff0000", "red")]
    [InlineData("#ff8c00", "orange")]
    [InlineData("#ffe100", "pale yellow")]
    [InlineData("#00a000", "green")]
    [InlineData("#2a9d8f", "teal")]
    [InlineData("#0000ff", "blue")]
    [InlineData("#14213d", "dark blue")]
    [InlineData("#8000ff", "purple")]
    [InlineData("#ff00ff", "magenta")]
    [InlineData("#ffb6c1", "pink")]
    [InlineData("#7f5539", "brown")]
    [InlineData("#e9d8a6", "pale beige")]
    [InlineData("#a8dadc", "pale teal")]
    public void Words_for_well_known_colours_are_the_expected_ones(string hex, string words) =>
        Assert.Equal(words, ColourWords.Describe(Srgb.Parse(hex)));

    [Fact]
    public void Every_colour_has_words() =>
        SrgbTests.Any.Holds(colour => ColourWords.Describe(colour).Length >= 3, seed: 9, cases: 1_000);
}
