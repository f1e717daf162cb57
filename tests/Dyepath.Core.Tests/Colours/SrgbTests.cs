using CsCheck;
using Dyepath.Core.Colours;

namespace Dyepath.Core.Tests.Colours;

public sealed class SrgbTests
{
    internal static readonly Gen<Srgb> Any = Gen.Select(Gen.Byte, Gen.Byte, Gen.Byte, (r, g, b) => new Srgb(r, g, b));

    [Theory]
    [InlineData("#2a9d8f", 0x2a, 0x9d, 0x8f)]
    [InlineData("#2A9D8F", 0x2a, 0x9d, 0x8f)]
    [InlineData("#1af", 0x11, 0xaa, 0xff)]
    [InlineData("#000", 0, 0, 0)]
    public void Six_digits_and_three_are_read(string text, byte red, byte green, byte blue) =>
        Assert.Equal(new Srgb(red, green, blue), Srgb.Parse(text));

    [Theory]
    [InlineData(null)]
    [InlineData("")]
    [InlineData("#")]
    [InlineData("2a9d8f")]
    [InlineData("#2a9d8")]
    [InlineData("#2a9d8f0")]
    [InlineData("#2a9d8g")]
    [InlineData("#-a9d8f")]
    [InlineData("# a9d8f")]
    [InlineData("#2a9d8 ")]
    [InlineData("#+12")]
    [InlineData("#１２３")]
    [InlineData("teal")]
    public void Anything_else_is_refused(string? text)
    {
        Assert.False(Srgb.TryParse(text, out var colour));
        Assert.Equal(Srgb.Black, colour);
        if (text is not null)
            Assert.Contains($"\"{text}\"", Assert.Throws<FormatException>(() => Srgb.Parse(text)).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Text_comes_back_as_the_same_colour() =>
        Any.Holds(colour => Srgb.Parse(colour.ToString()) == colour, seed: 1, cases: 1_000);

    [Fact]
    public void Linear_light_comes_back_as_the_same_bytes()
    {
        for (var code = 0; code < 256; code++)
        {
            var grey = new Srgb((byte)code, (byte)code, (byte)code);
            Assert.Equal(grey, grey.ToLinear().ToSrgb());
        }
    }

    [Fact]
    public void Light_beyond_the_display_is_clipped()
    {
        var light = new LinearRgb(-0.2, 0.5, 1.7);
        Assert.Equal(new Srgb(0, 188, 255), light.ToSrgb());
        Assert.Equal(new LinearRgb(0, 0.5, 1), light.Clipped());
    }

    [Fact]
    public void Default_is_black() => Assert.Equal("#000000", default(Srgb).ToString());
}
