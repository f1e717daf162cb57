using Dyepath.Workspace.Fields;

namespace Dyepath.Workspace.Tests.Fields;

public sealed class TypedColourTests
{
    /// <summary>Values of the table of named colours in CSS Color Module Level 4, from memory.</summary>
    [Theory]
    [InlineData("teal", "#008080")]
    [InlineData("Coral", "#ff7f50")]
    [InlineData("rebecca purple", "#663399")]
    [InlineData("dark slate grey", "#2f4f4f")]
    [InlineData("LightGray", "#d3d3d3")]
    [InlineData("1F4E5F", "#1f4e5f")]
    [InlineData("abc", "#abc")]
    [InlineData(" #1f4e5f ", " #1f4e5f ")]
    [InlineData("lilac", "#b89bc8")]
    [InlineData("brick red", "#96423a")]
    [InlineData("Old Rose", "#c98a93")]
    [InlineData("red", "#ff0000")]
    [InlineData("mud", "mud")]
    [InlineData("transparent", "transparent")]
    [InlineData("window", "window")]
    [InlineData("", "")]
    public void A_colour_is_read_by_its_digits_or_its_name(string typed, string written) => Assert.Equal(written, TypedColour.Read(typed));
}
