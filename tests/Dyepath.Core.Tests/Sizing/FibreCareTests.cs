using Dyepath.Core.Sizing;

namespace Dyepath.Core.Tests.Sizing;

/// <summary>How warm, by hand: what the symbol allows, and less where a fibre is tender or not known.</summary>
public sealed class FibreCareTests
{
    [Theory]
    [InlineData("100 % cotton", 40)]
    [InlineData("50 % cotton, 50 % acrylic", 40)]
    [InlineData("Organic cotton and linen", 40)]
    [InlineData("wool", 30)]
    [InlineData("70 % wool, 30 % linen", 30)]
    [InlineData("superwash merino / nylon 75/25", 30)]
    [InlineData("silk", 30)]
    [InlineData("Baumwolle", 30)]
    [InlineData("", 30)]
    public void By_the_tenderest_fibre(string fibre, int degrees) =>
        Assert.Equal($"wash by hand, {degrees} °C at most", FibreCare.HandWash([fibre]));

    [Fact]
    public void One_tender_yarn_is_enough() => Assert.Equal("wash by hand, 30 °C at most", FibreCare.HandWash(["cotton", "alpaca"]));
}
