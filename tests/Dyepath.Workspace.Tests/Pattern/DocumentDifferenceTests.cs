using System.Text.Json.Nodes;
using Dyepath.Workspace.Pattern;

namespace Dyepath.Workspace.Tests.Pattern;

public sealed class DocumentDifferenceTests
{
    [Theory]
    [InlineData("""{"a":1}""", """{"a":1.0}""", "")]
    [InlineData("""{"title":"A"}""", """{"title":"B"}""", "title: A > B")]
    [InlineData("""{"yarn":{"ball":{"length":"1 m"}}}""", """{"yarn":{"ball":{"length":"2 m"}}}""", "yarn, ball, length: 1 m > 2 m")]
    [InlineData("""{"yarn":{"sections":[{"name":"a"}]}}""", """{"yarn":{"sections":[{"name":"a"},{"name":"b"}]}}""", "yarn, section 2:  > several values")]
    [InlineData("""{"garment":{"belowWaist":"9 cm"}}""", """{"garment":{}}""", "garment, below waist: 9 cm > ")]
    [InlineData("""{"photos":[{"jpeg":"AAAA"}]}""", """{"photos":[{"jpeg":"BBBB"}]}""", "photo 1, jpeg: a picture > a picture")]
    [InlineData("""{"x":true,"y":[1]}""", """{"x":false,"y":"z"}""", "x: yes > no; y: a list of 1 > z")]
    public void Differences_are_said_by_place(string then, string now, string said) => Assert.Equal(
        said,
        string.Join("; ", DocumentDifference.Between(JsonNode.Parse(then), JsonNode.Parse(now)).Select(d => $"{d.Words}: {d.Then} > {d.Now}")));

    [Fact]
    public void Long_words_are_shortened_between_whole_characters()
    {
        var then = new JsonObject { ["words"] = string.Concat(Enumerable.Repeat("🌊", 40)) };
        var difference = Assert.Single(DocumentDifference.Between(then, new JsonObject()));
        Assert.EndsWith("🌊…", difference.Then, StringComparison.Ordinal);
    }
}
