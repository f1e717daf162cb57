using System.Text;
using System.Text.Json.Nodes;
using Dyepath.Core.Making.Log;
using Dyepath.Core.Projects;

namespace Dyepath.Core.Tests.Projects;

/// <summary>Names of sizes stand in lists, and every size that is named is one of the pattern's.</summary>
public sealed class SizeNameTests
{
    [Theory]
    [InlineData("S", true)]
    [InlineData("2–4 years", true)]
    [InlineData("S/M", true)]
    [InlineData("גדול", true)]
    [InlineData("<S> & \"M\"", true)]
    [InlineData("M (tall)", false)]
    [InlineData("S, M", false)]
    [InlineData("S; M", false)]
    [InlineData("chest: 90", false)]
    [InlineData(" S", false)]
    [InlineData("S ", false)]
    [InlineData("S  M", false)]
    [InlineData("S\u200e", false)]
    [InlineData("S\ufeff", false)]
    public void A_list_can_be_read_back(string name, bool isGood)
    {
        var document = Demo();
        document["sizes"] = new JsonObject { ["own"] = new JsonArray(new JsonObject { ["name"] = name, ["measures"] = new JsonObject { ["bust"] = "90 cm" } }) };
        var faults = Faults(document);
        Assert.Equal(isGood, !faults.Contains("sizes.own[0].name"));
        Assert.Equal(DocumentSchema.Allows(document.ToJsonString()), isGood);
    }

    [Theory]
    [InlineData("edition", "size", "edition.size")]
    [InlineData("sizes", "base", "sizes.base")]
    public void A_garment_of_one_size_has_no_other(string owner, string member, string path)
    {
        var document = Demo();
        document["garment"] = new JsonObject { ["shape"] = "cowl", ["circumference"] = "60 cm", ["height"] = "30 cm" };
        document["sizes"] = new JsonObject { ["chart"] = "women" };
        document[owner] ??= new JsonObject();
        document[owner]![member] = "M";
        Assert.Contains(path, Faults(document));
        document[owner]![member] = "One size";
        Assert.DoesNotContain(path, Faults(document));
    }

    [Theory]
    [InlineData("M", true)]
    [InlineData("One size", false)]
    [InlineData("m", false)]
    public void A_piece_is_made_in_a_size_of_its_design(string size, bool isGood)
    {
        var making = JsonNode.Parse(MakingWriter.WriteUtf8(MakingDocument.Begin(ProjectReader.Read(DemoProject.Utf8).Project!, "M")))!;
        making["size"] = size;
        var faults = MakingReader.Read(Encoding.UTF8.GetBytes(making.ToJsonString())).Faults;
        Assert.Equal(isGood ? [] : ["size"], faults.Select(f => f.Path));
    }

    private static JsonObject Demo() => (JsonObject)JsonNode.Parse(ProjectWriter.Write(ProjectReader.Read(DemoProject.Utf8).Project!))!;

    private static string[] Faults(JsonObject document) => [.. ProjectReader.Read(Encoding.UTF8.GetBytes(document.ToJsonString())).Faults.Select(f => f.Path)];
}
