using Dyepath.Core.Projects;

namespace Dyepath.Core.Tests.Projects;

public class TypedQuantityTests
{
    [Theory]
    [InlineData("31.5 cm", 31.5)]
    [InlineData("12½ in", 31.75)]
    [InlineData("0 cm", 0.0)]
    public void A_length_is_read_as_in_the_document(string text, double centimetres)
    {
        Assert.True(TypedQuantity.TryLength(text, out var length));
        Assert.Equal(centimetres, length.Centimetres, 9);
    }

    [Theory]
    [InlineData("")]
    [InlineData("31.5")]
    [InlineData("a span")]
    [InlineData("-2 cm")]
    public void Anything_else_is_no_length(string text) => Assert.False(TypedQuantity.TryLength(text, out _));

    [Fact]
    public void A_hook_is_read_in_millimetres()
    {
        Assert.True(TypedQuantity.TryHook("5.5 mm", out var millimetres));
        Assert.Equal(5.5, millimetres);
        Assert.False(TypedQuantity.TryHook("5.5 cm", out _));
    }
}
