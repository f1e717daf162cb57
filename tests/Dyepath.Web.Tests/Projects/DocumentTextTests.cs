using System.Text;
using System.Text.Json;
using Dyepath.Core.Documents;
using Dyepath.Core.Projects;
using Dyepath.Web.Projects;

namespace Dyepath.Web.Tests.Projects;

public class DocumentTextTests
{
    private const string Yarn = "🧶";

    /// <summary>One character that eleven UTF-16 units write.</summary>
    private const string Family = "👩‍👩‍👧‍👦";

    [Fact]
    public void A_copy_changes_the_title_and_nothing_else()
    {
        const string before = "\uFEFF{ // \"title\": \"x\"\n \"x\": { \"title\": 1 }, \"title\" : \"Say \\\"\\u00e9\\\"\" , \"y\": 1 }";
        const string after = "\uFEFF{ // \"title\": \"x\"\n \"x\": { \"title\": 1 }, \"title\" : \"Say \\\"é\\\", copy\" , \"y\": 1 }";
        Assert.Equal(after, Copied(before));
        Assert.Equal("{}", Copied("{}"));
    }

    [Fact]
    public void A_copy_s_title_fits_and_its_last_character_is_whole()
    {
        Assert.Equal(new string('x', 114) + ", copy", CopiedTitle(new string('x', 120)));
        Assert.Equal(new string('x', 113) + $"{Yarn}, copy", CopiedTitle(new string('x', 113) + Yarn + "xxxxxx"));
        // Seven numbers write the family, of which only some would fit.
        Assert.Equal(new string('x', 110) + ", copy", CopiedTitle(new string('x', 110) + Family));
        Assert.Equal("e\u0301, copy", CopiedTitle("e\u0301 "));
        for (var letters = 100; letters <= 121; letters++)
        {
            foreach (var character in new[] { "x", Yarn, Family, "e\u0301\u0323" })
            {
                var text = string.Concat(new string('y', letters), character, character, character);
                var title = CopiedTitle(text);
                Assert.InRange(title.EnumerateRunes().Count(), 1, 120);
                Assert.EndsWith(", copy", title, StringComparison.Ordinal);
                Assert.DoesNotContain('\uFFFD', title);
                var kept = title[..^", copy".Length];
                Assert.StartsWith(kept, text, StringComparison.Ordinal);
                Assert.Equal(0, Math.Max(0, kept.Length - letters) % character.Length);
            }
        }
    }

    [Theory]
    [InlineData("42")]
    [InlineData("-1.5e3")]
    [InlineData("true")]
    [InlineData("null")]
    [InlineData("\"title\"")]
    [InlineData("[]")]
    [InlineData("[{ \"title\": \"x\" }]")]
    [InlineData("// { }\n42")]
    public void What_is_no_object_is_no_project(string text)
    {
        var (read, fault) = DocumentText.Read(Encoding.UTF8.GetBytes(text));
        Assert.Null(read);
        Assert.Equal(FaultKind.NotJson, fault!.Kind);
        Assert.Contains("{ … }", fault.Allowed, StringComparison.Ordinal);
    }

    private static string Titled(string title) => $$"""{ "title": "{{title}}" }""";

    private static string CopiedTitle(string title)
    {
        using var copy = JsonDocument.Parse(Copied(Titled(title)));
        return copy.RootElement.GetProperty("title").GetString()!;
    }

    private static string Copied(string text) => Encoding.UTF8.GetString(DocumentText.Read(Encoding.UTF8.GetBytes(text)).Text!.Copy().Utf8);
}
