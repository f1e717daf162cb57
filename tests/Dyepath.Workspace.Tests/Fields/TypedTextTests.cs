using Dyepath.Core.Projects;
using Dyepath.Core.Quantities;
using Dyepath.Workspace.Fields;

namespace Dyepath.Workspace.Tests.Fields;

/// <summary>What people type is understood; an inch is 2.54 cm and a foot 12 inches by the international agreement of 1959.</summary>
public sealed class TypedTextTests
{
    [Theory]
    [InlineData("9 7/8 in", 9.875)]
    [InlineData("9-7/8 in", 9.875)]
    [InlineData("14 3/4\"", 14.75)]
    [InlineData("14 1/4", 14.25)]
    [InlineData("½", 0.5)]
    [InlineData("12½", 12.5)]
    [InlineData("12 ½ inches", 12.5)]
    [InlineData("3/8", 0.375)]
    [InlineData("-1 1/2", -1.5)]
    [InlineData("3 ft", 36)]
    [InlineData("3'", 36)]
    [InlineData("5'3\"", 63)]
    [InlineData("5 ft 3 1/2 in", 63.5)]
    [InlineData("5”", 5)]
    [InlineData("5 ″", 5)]
    [InlineData("14,5 in.", 14.5)]
    [InlineData("14.25 inch", 14.25)]
    public void Inches_and_feet_are_understood(string typed, double inches)
    {
        var written = TypedText.Quantity(typed, "in");
        Assert.Equal(inches >= 0, TypedQuantity.TryLength(written, out var length));
        if (inches >= 0)
            Assert.Equal(inches * 2.54, length.Centimetres, 6);
        else
            Assert.Equal("-1½ in", written);
    }

    [Theory]
    [InlineData("31,5", "cm", "31.5 cm")]
    [InlineData("31.5", "cm", "31.5 cm")]
    [InlineData("31.5cm", "cm", "31.5 cm")]
    [InlineData("9⅞", "in", "9⅞ in")]
    [InlineData("1/3", "in", "0.3333333333 in")]
    [InlineData("250 yards", "m", "250 yd")]
    [InlineData("230", "m", "230 m")]
    [InlineData("50 grams", "g", "50 g")]
    [InlineData("1 3/4 oz", "g", "1.75 oz")]
    [InlineData("50", "stitches", "50 stitches")]
    [InlineData("2.5%", "%", "2.5 %")]
    [InlineData(".5", "cm", "0.5 cm")]
    [InlineData("H-8", "mm", "5 mm")]
    [InlineData("k-10.5", "mm", "6.5 mm")]
    [InlineData("7", "mm", "7 mm")]
    [InlineData("H", "mm", "5 mm")]
    [InlineData("h8", "mm", "5 mm")]
    [InlineData("US I/9", "mm", "5.5 mm")]
    [InlineData("US 8", "mm", "5 mm")]
    [InlineData("us h-8", "mm", "5 mm")]
    [InlineData("2,180", "m", "2180 m")]
    [InlineData("1,180 m", "m", "1180 m")]
    [InlineData("2,18", "m", "2.18 m")]
    [InlineData("0,125", "cm", "0.125 cm")]
    [InlineData("2,1805", "m", "2.1805 m")]
    [InlineData("5,5 mm", "mm", "5.5 mm")]
    public void It_is_written_as_the_document_writes_it(string typed, string unit, string written) =>
        Assert.Equal(written, TypedText.Quantity(typed, unit));

    [Theory]
    [InlineData("wide")]
    [InlineData("1/0 in")]
    [InlineData("12 and a bit")]
    [InlineData("UK 6")]
    [InlineData("G-6 4.25")]
    [InlineData("")]
    [InlineData("5 3 in")]
    public void What_is_no_number_is_kept_as_typed(string typed) => Assert.False(TypedQuantity.TryLength(TypedText.Quantity(typed, "in"), out _));

    [Theory]
    [InlineData("13 3/4", 13.75)]
    [InlineData("13¾", 13.75)]
    [InlineData("13,75", 13.75)]
    [InlineData("14", 14.0)]
    [InlineData("13 sts", 13.0)]
    [InlineData("15 1/2 rows", 15.5)]
    [InlineData("1,200", 1200.0)]
    [InlineData("14 cm", null)]
    [InlineData("a few", null)]
    [InlineData("", null)]
    public void Numbers_without_a_unit_may_be_fractions_too(string typed, double? number) =>
        Assert.Equal((number is not null, (decimal)(number ?? 0)), (TypedText.TryNumber(typed, out var read), read));

    [Fact]
    public void What_is_no_number_stands_in_the_message_as_it_was_typed()
    {
        Assert.Equal("wide", TypedText.Quantity("wide", "cm"));
        Assert.Equal("1/0 in", TypedText.Quantity("1/0 in", "cm"));
    }
}
