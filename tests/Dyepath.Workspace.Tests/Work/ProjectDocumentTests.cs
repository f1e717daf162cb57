using System.Text.Json.Nodes;
using Dyepath.Core.Projects;
using Dyepath.Workspace.Work;

namespace Dyepath.Workspace.Tests.Work;

/// <summary>A document by its places, whatever half-typed state it is in.</summary>
public sealed class ProjectDocumentTests
{
    private static readonly string[] Places = ["a.b[0]", "a.b[1]", "a.b[2]", "a.b[3]", "a.b[4]", "a.b[4].c"];

    [Theory]
    [InlineData("""{ "title": "One", }""", true)]
    [InlineData("""{ /* hers */ "title": "One" }""", true)]
    [InlineData("""{ "title": "One", "title": "Two" }""", false)]
    [InlineData("[]", false)]
    [InlineData("\"One\"", false)]
    [InlineData("{", false)]
    [InlineData("", false)]
    public void What_a_person_may_write_by_hand_is_read_and_what_is_no_object_is_not(string text, bool can) =>
        Assert.Equal(can, ProjectDocument.TryParse(text) is { Title: "One" });

    [Fact]
    public void What_nests_too_deep_or_is_too_long_is_no_project()
    {
        Assert.NotNull(ProjectDocument.TryParse($"{{ \"a\": {new string('[', 31)}{new string(']', 31)} }}"));
        Assert.Null(ProjectDocument.TryParse($"{{ \"a\": {new string('[', 32)}{new string(']', 32)} }}"));
        var room = ProjectReader.MostBytes - "{}".Length;
        Assert.NotNull(ProjectDocument.TryParse("{" + new string(' ', room) + "}"));
        Assert.Null(ProjectDocument.TryParse("{" + new string(' ', room + 1) + "}"));
    }

    [Fact]
    public void A_text_is_kept_as_it_came_until_something_is_changed_and_then_laid_out_with_its_letters_plain()
    {
        const string came = """{"title":"Été & “quotes”","n":1}""";
        var document = ProjectDocument.TryParse(came)!;
        Assert.Equal((came, came), (document.Text, document.Slim));
        document.Set("n", 2);
        Assert.Equal("{\n  \"title\": \"Été & “quotes”\",\n  \"n\": 2\n}", document.Text.ReplaceLineEndings("\n"));
        Assert.Equal(document.Text, document.Slim);
        Assert.Equal("Untitled", ProjectDocument.TryParse("{}")!.Title);
    }

    [Fact]
    public void Values_are_read_as_they_would_be_typed()
    {
        var document = ProjectDocument.TryParse("""{ "a": { "b": [1, "2 cm", true, null, { "c": 3.5 }] } }""")!;
        Assert.Equal(["1", "2 cm", "true", "", "", "3.5"], Places.Select(document.Typed));
        Assert.Equal((5, 0, 0), (document.Count("a.b"), document.Count("a"), document.Count("a.x")));
        Assert.Equal((true, false, false), (document.Is("a.b[2]"), document.Is("a.b[0]"), document.Is("a.b[9]")));
        Assert.Equal((true, false, false, false), (document.Has("a.b[4].c"), document.Has("a.b[3]"), document.Has("a.b[5]"), document.Has("a.b[0].c")));
    }

    [Fact]
    public void Values_are_put_where_there_is_none_yet_and_taken_away()
    {
        var document = ProjectDocument.TryParse("{}")!;
        document.Set("a.b[0].c", "x");
        Assert.Equal("""{"a":{"b":[{"c":"x"}]}}""", document.Root.ToJsonString());
        document.Set("a.b[1]", 2);
        document.Set("a.b[0]", "y");
        Assert.Equal("""{"a":{"b":["y",2]}}""", document.Root.ToJsonString());
        document.Set("a.b[5]", null);
        document.Set("a.b[2]", null);
        document.Set("z.z", null);
        document.Set("a.b[0]", null);
        Assert.Equal("""{"a":{"b":[2]}}""", document.Root.ToJsonString());
        document.Set("a", null);
        Assert.Equal("{}", document.Root.ToJsonString());
    }

    [Fact]
    public void Lists_grow_at_the_end_or_where_it_is_said_and_are_put_in_another_order()
    {
        var document = ProjectDocument.TryParse("{}")!;
        foreach (var letter in new[] { "a", "b", "d" })
            document.Add("l", letter);
        document.Add("l", "c", 2);
        document.Add("l", "e", 99);
        Assert.Equal("""["a","b","c","d","e"]""", document.Node("l")!.ToJsonString());
        document.Move("l", 0, 3);
        Assert.Equal("""["b","c","d","a","e"]""", document.Node("l")!.ToJsonString());
        document.Move("l", 4, -1);
        Assert.Equal("""["e","b","c","d","a"]""", document.Node("l")!.ToJsonString());
        var text = document.Text;
        document.Move("l", 5, 0);
        document.Move("l", -1, 0);
        document.Move("l", 2, 2);
        document.Move("none", 0, 1);
        Assert.Equal(text, document.Text);
        document.Move("l", 0, 99);
        Assert.Equal("""["b","c","d","a","e"]""", document.Node("l")!.ToJsonString());
    }

    [Theory]
    [InlineData("in", true)]
    [InlineData("in (cm)", true)]
    [InlineData("cm (in)", false)]
    [InlineData("cm", false)]
    [InlineData("", false)]
    public void Inches_are_shown_where_the_edition_gives_them_first(string units, bool inches)
    {
        var document = Documents.Demo();
        document.Set("edition.units", units);
        Assert.Equal(inches, document.IsInches);
    }

    [Fact]
    public void What_only_computes_is_given_no_photos()
    {
        var document = Documents.Demo();
        document.Set("photos", JsonNode.Parse("""[{ "caption": "evening light" }]"""));
        Assert.DoesNotContain("evening light", document.WithoutPhotos(), StringComparison.Ordinal);
        Assert.Contains("evening light", document.Text, StringComparison.Ordinal);
        document.Set("photos", null);
        Assert.Equal(document.Slim, document.WithoutPhotos());
    }
}
