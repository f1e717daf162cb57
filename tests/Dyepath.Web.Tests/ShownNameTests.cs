using System.Text;
using CsCheck;
using Dyepath.Contracts;
using Dyepath.Web.Serving;

namespace Dyepath.Web.Tests;

public class ShownNameTests
{
    private static readonly string[] Joining = ["\u200D", "\u0301", "\uFE0F", " ", "\u202E"];

    [Theory]
    [InlineData("Tideline", "Tideline")]
    [InlineData("  two\nlines ", "two lines")]
    [InlineData("a\u2028b\u2029c\u0085d", "a b c d")]
    [InlineData("\u202EenilediT\u202C", "enilediT")]
    [InlineData("Tide\u200Bline\uFEFF\u2060\u00AD", "Tideline")]
    [InlineData("Ti\u200Dde\u200Cline", "Tideline")]
    [InlineData("\u3164\u115F\u2800", "")]
    [InlineData("\u001B[31mred\u0007", "[31mred")]
    [InlineData("\u0301e\u0301", "e\u0301")]
    [InlineData("Maré 🧶", "Maré 🧶")]
    [InlineData("👩‍👩‍👧‍👦 and 1️⃣", "👩‍👩‍👧‍👦 and 1️⃣")]
    [InlineData("می\u200Cخواهم", "می\u200Cخواهم")]
    [InlineData("a\uFFFFb", "ab")]
    [InlineData("", "")]
    public void A_name_is_one_line_of_what_can_be_seen(string typed, string shown) => Assert.Equal(shown, ShownName.Of(typed));

    [Fact]
    public void Half_a_character_is_shown_as_a_sign_and_the_last_one_is_whole()
    {
        Assert.Equal("a\uFFFDb", ShownName.Of("a\uD83Eb"));
        var most = new string('x', ShownName.Longest - 1);
        Assert.Equal(most + "🧶", ShownName.Of(most + "🧶🧶"));
        Assert.Equal(most + "👩‍👩‍👧‍👦", ShownName.Of(most + "👩‍👩‍👧‍👦x"));
        Assert.Equal(most + "e\u0301", ShownName.Of(most + "e\u0301e\u0301"));
        // A tower of accents is no name.
        Assert.InRange(ShownName.Of("e" + new string('\u0301', 5000)).Length, 1, 10);
    }

    [Fact]
    public void Whatever_is_typed_the_name_can_be_stored_shown_and_shown_again() =>
        Gen.Frequency(
            (6, Gen.Char['a', 'z'].Select(c => c.ToString())), (3, Gen.Char.Select(c => c.ToString())),
            (2, Gen.Int[0x1F300, 0x1F6FF].Select(char.ConvertFromUtf32)), (2, Gen.Int[0, Joining.Length - 1].Select(i => Joining[i])))
            .Array[0, 300].Select(string.Concat).Holds(
                typed =>
                {
                    var shown = ShownName.Of(typed);
                    Assert.Equal(shown, ShownName.Of(shown));
                    Assert.Equal(shown, new UTF8Encoding(false, throwOnInvalidBytes: true).GetString(new UTF8Encoding(false, true).GetBytes(shown)));
                    Assert.DoesNotContain(shown, char.IsControl);
                    Assert.Equal(shown.Trim(), shown);
                    Assert.InRange(new System.Globalization.StringInfo(shown).LengthInTextElements, 0, ShownName.Longest);
                },
                seed: 11, cases: 1500);

    [Fact]
    public void A_terminal_gets_lines_and_no_orders() =>
        Assert.Equal("one\ntwo \uFFFD[2J\uFFFDthree\uFFFD", Terminal.Clean("one\ntwo \u001B[2J\u202Ethree\u2028"));
}
