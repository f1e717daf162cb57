using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using Dyepath.Core.Booklets;
using Dyepath.Core.Constructions;
using Dyepath.Core.Documents;
using Dyepath.Core.Edgings;
using Dyepath.Core.Findings;
using Dyepath.Core.Instructions;
using Dyepath.Core.Planning;
using Dyepath.Core.Projects;
using Dyepath.Core.Projects.Description;

namespace Dyepath.Core.Tests.Projects;

public sealed partial class StarterDocumentTests
{
    private static readonly string[] Lines = StarterDocument.Write().Split('\n');

    public static TheoryData<int> CommentedFields { get; } =
        [.. Enumerable.Range(0, Lines.Length).Where(i => CommentedField().IsMatch(Lines[i]))];

    [Fact]
    public void The_starter_reads_without_faults() => Assert.Empty(Read(Lines).Faults);

    [Theory]
    [MemberData(nameof(CommentedFields))]
    public void Every_field_that_is_commented_out_only_needs_to_lose_its_slashes(int line)
    {
        string[] edited = [.. Lines];
        edited[line] = edited[line].Replace("// ", "", StringComparison.Ordinal);
        Assert.DoesNotContain(Read(edited).Faults, f => f.Kind != FaultKind.Meaning);
    }

    public static TheoryData<string> Garments => [.. Repertoire.All.Select(kind => kind.Name)];

    /// <summary>Where a garment begins without edgings, the example is one that it can have; every edging that it names may go where it says.</summary>
    [Theory]
    [MemberData(nameof(Garments))]
    public void The_edging_that_is_commented_out_goes_onto_the_garment(string name)
    {
        var kind = Repertoire.All.First(k => k.Name == name);
        var lines = StarterDocument.Write(kind).Split('\n');
        var said = Regex.Match(Regex.Replace(string.Join('\n', lines), @"\s*\n\s*// ", " "), @"Edgings, each on an edge of its own\. [^.]*\.").Value;
        Assert.All(kind.Edges, place => Assert.All(EdgingLibrary.All, edging => Assert.Equal(
            edging.AllowedAt(place, children: false), Regex.IsMatch(said, $@"\b{JsonNamingPolicy.CamelCase.ConvertName(place.ToString())}\b[^;]*: ([^;]*, )?{edging.Id}[,;.]"))));
        var at = Array.FindIndex(lines, l => l.Contains("// \"edgings\": ", StringComparison.Ordinal));
        Assert.Equal(kind.First.Edgings.IsEmpty, at >= 0);
        if (at < 0 || kind.Edges.IsEmpty)
            return;
        lines[at] = lines[at].Replace("// ", "", StringComparison.Ordinal);
        var reading = Read(lines);
        Assert.Empty(reading.Faults);
        var choice = Assert.Single(reading.Project!.Garment.Edgings);
        Assert.Contains(choice.Where, kind.Edges);
        Assert.True(EdgingLibrary.Find(choice.Edging).AllowedAt(choice.Where, children: false));
    }

    /// <summary>
    /// What a form shows as the usual value is what holds where the field is left out; words such as "by the arm" are no value of a document.
    /// </summary>
    [Theory]
    [MemberData(nameof(Garments))]
    public void What_a_form_calls_usual_is_what_holds_where_it_is_left_out(string name)
    {
        var kind = Repertoire.All.First(k => k.Name == name);
        var begun = StarterDocument.Of(kind);
        foreach (var field in kind.Fields.Where(f => f is { Usual: not null, By: null } && (f.Kind == FieldKind.Choice || Amount().IsMatch(f.Usual))))
        {
            var document = JsonNode.Parse(ProjectWriter.Write(begun))!;
            document["garment"]![field.Name] = field.Usual;
            var reading = Read([document.ToJsonString()]);
            Assert.Empty(reading.Faults);
            Assert.Equal((field.Name, begun.Garment.Shape), (field.Name, reading.Project!.Garment.Shape));
        }
    }

    [Fact]
    public void Every_field_of_an_object_that_it_holds_is_shown_or_commented_out()
    {
        var text = string.Join('\n', Lines);
        foreach (var field in ProjectDescription.Project.Fields.Concat(YarnDescription.Yarn.Fields).Concat(FabricDescription.Fabric.Fields))
            Assert.Contains($"\"{field.Name}\": ", text, StringComparison.Ordinal);
    }

    /// <summary>What only she can say is left out, or said to be missing: nothing of it goes out in her pattern unseen.</summary>
    [Fact]
    public void What_only_the_designer_knows_is_not_made_up()
    {
        var plan = GarmentPlanner.Plan(StarterDocument.Project).Plan!;
        var booklet = PatternWriter.Write(plan);
        Assert.Equal("", booklet.Designer);
        Assert.DoesNotContain(booklet.Sections, s => s.Id == "introduction");
        Assert.StartsWith("My pullover\n===========\n\nSizes: S (M, L)\n", TextBooklet.Write(booklet, plan.Project.Edition), StringComparison.Ordinal);
        Assert.Equal(FindingLevel.Note, Assert.Single(plan.Findings, f => f.Place == "yarn.name").Level);
        var named = GarmentPlanner.Plan(StarterDocument.Project with { Yarn = StarterDocument.Project.Yarn with { Name = "Ebbstone Light" } }).Plan!;
        Assert.DoesNotContain(named.Findings, f => f.Place == "yarn.name");
    }

    private static ProjectReading Read(string[] lines) => ProjectReader.Read(Encoding.UTF8.GetBytes(string.Join('\n', lines)));

    [GeneratedRegex("^[0-9.]+ (?:cm|%)$")]
    private static partial Regex Amount();

    [GeneratedRegex("^ *// \"[$a-zA-Z]+\": .*,$")]
    private static partial Regex CommentedField();
}
