using System.Text;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using Dyepath.Core.Constructions;
using Dyepath.Core.Documents;
using Dyepath.Core.Projects;
using Dyepath.Workspace.Work;

namespace Dyepath.Workspace.Tests.Work;

/// <summary>A fault as a page tells it, read by someone who sees only the page and has never seen the document.</summary>
public sealed partial class FaultWordsTests
{
    private static readonly string?[] Typed = [null, "", "much", "0", "-3 cm", "99999999 cm", "S"];

    /// <summary>
    /// Whatever is typed into a box, or left out of it: the document's own words, paths and marks stay in the document. Garments, their
    /// demo and whatever a design may have beside.
    /// </summary>
    [Fact]
    public void No_page_speaks_of_paths_properties_and_quotation_marks()
    {
        var said = new SortedSet<string>(StringComparer.Ordinal);
        string[] documents = [.. Repertoire.All.Select(kind => ProjectWriter.Write(StarterDocument.Of(kind))), Encoding.UTF8.GetString(DemoProject.Utf8)];
        foreach (var text in documents)
        {
            foreach (var place in Places(ProjectDocument.TryParse(text)!.Root, "").Where(p => p != "schemaVersion"))
            {
                foreach (var value in Typed)
                {
                    var document = ProjectDocument.TryParse(text)!;
                    if (value is not null && document.Node(place) is not JsonValue)
                        continue;
                    document.Set(place, value is null ? null : JsonValue.Create(value));
                    foreach (var fault in ProjectReader.Read(Encoding.UTF8.GetBytes(document.Text)).Faults)
                        said.Add(FaultWords.Of(fault));
                }
            }
        }
        Assert.True(said.Count > 60, $"Only {said.Count} different sentences.");
        var wrong = said.Where(words => DocumentWords().IsMatch(words) || !words.EndsWith('.') || words.Length > 320 || words.Contains("  ", StringComparison.Ordinal)).ToArray();
        Assert.True(wrong.Length == 0, string.Join('\n', wrong));
    }

    [Theory]
    [InlineData("yarn.sections", null, "Put in the colours of your yarn, in the order in which they come off the ball.", true)]
    [InlineData("yarn.sections[2].colour", null, "Pick this colour by eye, or type a plain name such as teal or mustard, or # and six digits, such as #1f4e5f.", true)]
    [InlineData("yarn.sections[2].colour", "mud", "“mud” is no colour that is known here by its name: pick it by eye, or type # and six digits, such as #1f4e5f.", false)]
    [InlineData("yarn.sections[2].length", null, "Spread and blend go with the length of their colour: put that in too, or empty them.", false)]
    [InlineData("yarn.ball.length", "much", "“much” cannot stand here: put in a length of yarn such as “230 m”, from 1 m to 20000 m (m, yd, cm or in).", false)]
    [InlineData("yarn.ball.length", "", "Put in how much yarn is in a ball, from its label, such as 230 m.", true)]
    [InlineData("yarn.ball", null, "Put in the metres and grams of a ball, from its label.", true)]
    [InlineData("fabric.swatch.worked.rows", null, "Count the rows of the swatch too, over the length beside it.", true)]
    [InlineData("fabric.swatch.worked.rows", "few", "“few” cannot stand here: put in a number from 0.25 to 400.", false)]
    [InlineData("fabric.swatch", null, "Work a swatch of this yarn, and put in its hook and gauge.", true)]
    [InlineData("yarn.sections[2].spread", "99 cm", "Here stands “99 cm”; it may be at most the section's length, {0}. Check both lengths.", false)]
    [InlineData("garment.shape", "balloon", "“balloon” is none of what is offered here: choose again.", false)]
    [InlineData("fabric.swatch.hook", "I9", "“I9” is no hook that is known here: put in its millimetres, from 0.5 to 50, such as 5.5, or its US letter and number, such as I-9.", false)]
    [InlineData("sizes", null, "Choose a size chart, or put in sizes of your own.", true)]
    [InlineData("title", "", "Give the pattern a title.", true)]
    public void A_box_is_told_what_it_wants_or_what_is_wrong_with_what_it_has(string place, string? value, string words, bool isWanted)
    {
        var document = Documents.Demo();
        words = words.Replace("{0}", document.Typed("yarn.sections[2].length"), StringComparison.Ordinal);
        document.Set(place, value is null ? null : JsonValue.Create(value));
        var fault = ProjectReader.Read(Encoding.UTF8.GetBytes(document.Text)).Faults.First(f => f.Path.StartsWith(place.Replace("[2].length", "[2]", StringComparison.Ordinal), StringComparison.Ordinal));
        Assert.Equal((words, isWanted), (FaultWords.Of(fault), FaultWords.IsWanting(fault)));
    }

    [Fact]
    public void A_colour_that_alone_has_no_length_is_to_be_measured_too()
    {
        var document = ProjectDocument.TryParse(ProjectWriter.Write(StarterDocument.Project))!;
        document.Set("yarn.sections[1].length", null);
        var fault = Assert.Single(ProjectReader.Read(Encoding.UTF8.GetBytes(document.Text)).Faults);
        Assert.Equal("Measure this colour too: lengths are put in for every colour, or for none.", FaultWords.Of(fault));
        Assert.True(FaultWords.IsWanting(fault));
        document = ProjectDocument.TryParse(ProjectWriter.Write(StarterDocument.Project))!;
        document.Set("fabric.swatch.worked", null);
        fault = Assert.Single(ProjectReader.Read(Encoding.UTF8.GetBytes(document.Text)).Faults);
        Assert.Equal("Put in the gauge of your swatch: how many stitches and rows it has over 10 cm.", FaultWords.Of(fault));
        Assert.True(FaultWords.IsWanting(fault));
    }

    [Fact]
    public void Colours_that_are_neither_counted_nor_measured_are_to_be_counted()
    {
        var document = Documents.Demo();
        document.Set("yarn.counted", null);
        document.Set("fabric.sectionStitches", null);
        for (var i = 0; i < 5; i++)
        {
            foreach (var part in new[] { "length", "spread", "blend" })
                document.Set($"yarn.sections[{i}].{part}", null);
        }
        var fault = Assert.Single(ProjectReader.Read(Encoding.UTF8.GetBytes(document.Text)).Faults);
        Assert.True(FaultWords.IsWanting(fault));
        Assert.StartsWith("Count how many stitches each colour takes", FaultWords.Of(fault), StringComparison.Ordinal);
    }

    [Fact]
    public void What_no_box_can_have_written_is_said_to_stand_in_the_file()
    {
        var document = Documents.Demo();
        document.Set("yarn.lenght", "3 cm");
        var fault = Assert.Single(ProjectReader.Read(Encoding.UTF8.GetBytes(document.Text)).Faults);
        Assert.False(FaultWords.IsWanting(fault));
        Assert.Contains("Mend it in the file, and import it again.", FaultWords.Of(fault), StringComparison.Ordinal);
    }

    private static IEnumerable<string> Places(JsonNode? node, string place)
    {
        if (place.Length > 0)
            yield return place;
        var inner = node switch
        {
            JsonObject members => members.Select(m => (Place: place.Length == 0 ? m.Key : $"{place}.{m.Key}", m.Value)),
            JsonArray items => items.Take(2).Select((item, i) => (Place: $"{place}[{i}]", Value: item)),
            _ => [],
        };
        foreach (var below in inner.SelectMany(m => Places(m.Value, m.Place)))
            yield return below;
    }

    /// <summary>A path, a name in camel case, a straight quotation mark, or a word of the document's form.</summary>
    [GeneratedRegex("""[a-z]\.[a-z]|[a-z][A-Z]|\[[0-9]|"|\b(?:property|object|true|false|quotation|null|nothing|schema|list of|JSON)\b|\{""")]
    private static partial Regex DocumentWords();
}
