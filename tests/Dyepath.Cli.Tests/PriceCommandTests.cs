using System.Text.Json;

namespace Dyepath.Cli.Tests;

public class PriceCommandTests
{
    private const string Typed =
        "price --demo --pace 12..20 --ball 9.50 --companion-ball 6 --wage 15 --fixed 400 --copy 7 --fee 10% --people 8 --currency EUR";

    [Fact]
    public async Task The_demo_is_priced_size_by_size()
    {
        var sheet = await Run.Json(Typed);
        var sizes = sheet.GetProperty("sizes").EnumerateArray().ToArray();
        Assert.Equal(9, sizes.Length);
        var medium = sizes.Single(s => s.GetProperty("name").GetString() == "M");
        var hours = medium.GetProperty("hours");
        Assert.True(hours.GetProperty("low").GetDouble() < hours.GetProperty("median").GetDouble());
        Assert.Equal(69m, medium.GetProperty("yarn").GetDecimal());
        Assert.Equal((double)(69m + 15 * hours.GetProperty("median").GetDecimal()), medium.GetProperty("piece").GetProperty("median").GetDouble(), 0.1);
        Assert.Equal(64, sheet.GetProperty("breakEven").GetProperty("copies").GetInt32());
        Assert.Equal(8, medium.GetProperty("kit").GetProperty("hooks").GetInt32());
    }

    [Fact]
    public async Task In_words_one_size_can_be_asked_for_alone()
    {
        var (code, text, errors) = await Run.Dyepath(Typed + " --size M");
        Assert.True(code == 0, errors);
        Assert.Contains("Size M\n", text, StringComparison.Ordinal);
        Assert.DoesNotContain("Size S\n", text, StringComparison.Ordinal);
        Assert.Contains("Yarn costs: 69.00 EUR\n", text, StringComparison.Ordinal);
        Assert.Contains("This is for you alone: it is in no file that a buyer gets.\n", text, StringComparison.Ordinal);
        Assert.Contains("Pace: 12 to 20 single crochet a minute, 16 in the middle, as you said.", text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_is_not_typed_is_said_to_be_missing()
    {
        var (code, text, _) = await Run.Dyepath("price --demo");
        Assert.Equal(0, code);
        Assert.Contains("No figure for what the yarn costs without the price of a ball and the price of a ball of the companion yarn.", text, StringComparison.Ordinal);
        Assert.Contains("(common practice, no source)", text, StringComparison.Ordinal);
        Assert.Equal(JsonValueKind.Null, (await Run.Json("price --demo")).GetProperty("sizes")[0].GetProperty("yarn").ValueKind);
    }

    [Theory]
    [InlineData("--pace 20..12", "--pace: ")]
    [InlineData("--pace 0..12", "--pace: ")]
    [InlineData("--pace 12", "--pace: ")]
    [InlineData("--pace NaN..NaN", "--pace: ")]
    [InlineData("--pace 1e1..2e1", "--pace: ")]
    [InlineData("--ball 9,50", "--ball: “9,50” is not a number; write it with a decimal point")]
    [InlineData("--ball=-1", "--ball: -1 was given; an amount lies from 0 to 1,000,000.")]
    [InlineData("--ball 99999999999999999999999999999999999", "--ball: ")]
    [InlineData("--wage NaN", "--wage: ")]
    [InlineData("--copy 1000001", "--copy: ")]
    [InlineData("--fee 10", "--fee: “10” was given; write a share with its percent sign, such as 10%, from 0% to 99%.")]
    [InlineData("--fee 100%", "--fee: ")]
    [InlineData("--fee=-1%", "--fee: ")]
    [InlineData("--copy-fee=-1", "--copy-fee: ")]
    [InlineData("--people 0", "--people: 0 was given; it must lie from 1 to 1,000.")]
    [InlineData("--people 2.5", "--people: ")]
    [InlineData("--currency =1+1", "--currency: ")]
    [InlineData("--currency muchtoolong", "--currency: ")]
    [InlineData("--size Q", "--size: There is no size Q in this pattern: ")]
    public async Task What_cannot_be_is_refused_where_it_stands(string option, string words)
    {
        var (code, output, errors) = await Run.Dyepath($"price --demo {option}");
        Assert.Equal(2, code);
        Assert.Empty(output);
        Assert.StartsWith(words, errors, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_bad_document_is_refused_with_its_place()
    {
        var (code, _, errors) = await Run.Dyepath("price -", "{}");
        Assert.Equal(2, code);
        Assert.Contains("yarn", errors, StringComparison.Ordinal);
    }
}
