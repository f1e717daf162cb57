using CsCheck;
using Dyepath.Workspace.Work;
using Dyepath.Workspace.Yarn;

namespace Dyepath.Workspace.Tests.Yarn;

public class SectionEditsTests
{
    [Fact]
    public void Counts_and_whole_stitches_move_with_their_section()
    {
        var document = Documents.Demo();

        SectionEdits.Move(document, 0, 3);

        Assert.Equal("deep water", document.Typed("yarn.sections[3].name"));
        Assert.Equal("[4,3,5,5,4]", document.Node("fabric.sectionStitches")!.ToJsonString());
        Assert.Equal("[3,3,5,6,4]", document.Node("yarn.counted[0].repeats[4]")!.ToJsonString());
    }

    [Fact]
    public void A_section_goes_with_all_that_is_said_of_it()
    {
        var document = Documents.Demo();

        SectionEdits.Remove(document, 1);

        Assert.Equal(4, document.Count("yarn.sections"));
        Assert.Equal("[5,3,5,4]", document.Node("fabric.sectionStitches")!.ToJsonString());
        Assert.Empty(Outcome.Of(document, CancellationToken.None).Reading.Faults);
    }

    [Fact]
    public void A_new_section_has_a_name_of_its_own_and_asks_only_for_colour_and_length()
    {
        var document = Documents.Demo();
        document.Set("yarn.sections[0].name", "colour 6");

        SectionEdits.Add(document);

        Assert.Equal("colour 7", document.Typed("yarn.sections[5].name"));
        Assert.Equal("yarn.sections[5].colour", Assert.Single(Outcome.Of(document, CancellationToken.None).Reading.Faults).Path);
        document.Set("yarn.sections[5].colour", "#123456");
        Assert.Equal("yarn.sections[5].length", Assert.Single(Outcome.Of(document, CancellationToken.None).Reading.Faults).Path);
    }

    /// <summary>Typed letter by letter, a name paints its section until a colour is picked.</summary>
    [Fact]
    public void A_name_that_is_a_colour_paints_its_section_until_one_is_picked()
    {
        var document = ProjectDocument.TryParse("{}")!;
        SectionEdits.Add(document);
        Assert.Equal([null, "#d2b48c", null, "#008080", null], new[] { "t", "tan", "tang", "deep teal", "deep teal s" }.Select(Named));
        Assert.Equal("#ff7f50", Named("coral"));
        document.Set("yarn.sections[0].colour", "#fa8072");
        Assert.Equal("#fa8072", Named("teal"));

        string? Named(string name)
        {
            document.Set("yarn.sections[0].name", name);
            SectionEdits.ColourByName(document, 0);
            return document.Has("yarn.sections[0].colour") ? document.Typed("yarn.sections[0].colour") : null;
        }
    }

    [Fact]
    public void Moving_there_and_back_changes_nothing() => Gen.Select(Gen.Int[0, 4], Gen.Int[0, 4]).Holds(
        move =>
        {
            var document = Documents.Demo();
            var before = document.Text;
            SectionEdits.Move(document, move.Item1, move.Item2);
            SectionEdits.Move(document, move.Item2, move.Item1);
            Assert.Equal(before, document.Text);
        },
        seed: 13, cases: 25);

    /// <summary>Names that are taken are passed over, however many there are.</summary>
    [Fact]
    public void New_sections_are_numbered_on_and_counted_as_none_until_they_are()
    {
        var document = Documents.Demo();
        foreach (var (at, name) in new[] { (0, "colour 6"), (1, "colour 7"), (2, "colour 8") })
            document.Set($"yarn.sections[{at}].name", name);
        SectionEdits.Add(document);
        SectionEdits.Add(document);
        Assert.Equal(("colour 9", "colour 10"), (document.Typed("yarn.sections[5].name"), document.Typed("yarn.sections[6].name")));
        // No colour of ours is put in for hers.
        Assert.False(document.Has("yarn.sections[5].colour"));
        Assert.Equal("[5,4,3,5,4,1,1]", document.Node("fabric.sectionStitches")!.ToJsonString());
        Assert.Equal("[6,3,3,5,4,0,0]", document.Node("yarn.counted[0].repeats[4]")!.ToJsonString());
        // Of several that are called alike, none takes a number away.
        var alike = Documents.Demo();
        for (var i = 0; i < 5; i++)
            alike.Set($"yarn.sections[{i}].name", "sand");
        SectionEdits.Add(alike);
        Assert.Equal("colour 6", alike.Typed("yarn.sections[5].name"));
        var empty = ProjectDocument.TryParse("{}")!;
        SectionEdits.Add(empty);
        Assert.Equal(("colour 1", false), (empty.Typed("yarn.sections[0].name"), empty.Has("fabric.sectionStitches")));
    }

    /// <summary>A repeat in the counting has no place yet for every section, and stays as it is.</summary>
    [Fact]
    public void A_repeat_that_is_not_whole_keeps_its_counts()
    {
        var document = Documents.Demo();
        document.Add("yarn.counted[1].repeats", System.Text.Json.Nodes.JsonNode.Parse("[5, 4]")!);
        SectionEdits.Remove(document, 0);
        Assert.Equal("[5,4]", document.Node("yarn.counted[1].repeats[6]")!.ToJsonString());
        Assert.Equal("[4,3,5,4]", document.Node("yarn.counted[1].repeats[0]")!.ToJsonString());
    }
}
