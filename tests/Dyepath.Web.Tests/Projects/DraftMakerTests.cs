using System.Text;
using Dyepath.Contracts;
using Dyepath.Core.Garments;
using Dyepath.Core.Instructions.Writing;
using Dyepath.Core.Projects;
using Dyepath.Web.Projects;
using Microsoft.Extensions.Logging.Abstractions;

namespace Dyepath.Web.Tests.Projects;

public class DraftMakerTests
{
    private static readonly DraftMaker Maker = new(NullLogger<DraftMaker>.Instance);

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void The_picture_is_the_lower_left_corner_of_the_planned_fabric_as_worn(bool fromOtherEnd)
    {
        var end = $"\"fromOtherEnd\": {(fromOtherEnd ? "true" : "false")}, \"sections\"";
        var text = RunningHost.Demo.Replace("\"sections\"", end, StringComparison.Ordinal);
        var read = DocumentText.Read(Encoding.UTF8.GetBytes(text)).Text!;
        var project = read.Project!;
        Assert.Equal(fromOtherEnd, project.Yarn.FromOtherEnd);
        var picture = Maker.Make(read, default).Swatch!;

        var plan = GarmentPlanner.Plan(project).Plan!;
        var piece = plan.Sizes.Single(s => s.Name == "M").Pieces.First(p => p.Pooled);
        var fabric = PieceFabric.Of(plan, piece);
        Assert.Equal((SwatchPicture.MostStitches, SwatchPicture.MostRows), (picture.Stitches, picture.Rows));
        // Worked sideways: rows grow from left to right, and the hem is where column 0 is.
        Assert.Equal(Direction.Sideways, plan.Direction);
        for (var up = 0; up < picture.Rows; up++)
        {
            for (var across = 0; across < picture.Stitches; across++)
                Assert.Equal(fabric[across, up], picture.Cells[(picture.Rows - 1 - up) * picture.Stitches + across]);
        }
        var colours = new[] { "#17394d", "#4c9aa0", "#e9efe9", "#b89468", "#5c5a2c" };
        Assert.Equal(fromOtherEnd ? [.. colours.Reverse()] : colours, picture.Colours);
    }

    [Fact]
    public void Without_a_plan_there_is_no_picture()
    {
        var faulty = RunningHost.Demo.Replace("\"230 m\"", "\"23\"", StringComparison.Ordinal);
        var read = DocumentText.Read(Encoding.UTF8.GetBytes(faulty)).Text!;
        Assert.Null(read.Project);
        Assert.Null(Maker.Make(read, default).Swatch);
    }

    [Fact]
    public void A_copy_changes_the_title_and_nothing_else()
    {
        const string before = "\uFEFF{ // \"title\": \"x\"\n \"x\": { \"title\": 1 }, \"title\" : \"Say \\\"\\u00e9\\\"\" , \"y\": 1 }";
        const string after = "\uFEFF{ // \"title\": \"x\"\n \"x\": { \"title\": 1 }, \"title\" : \"Say \\\"é\\\", copy\" , \"y\": 1 }";
        Assert.Equal(after, Copied(before));
        Assert.Equal("{}", Copied("{}"));
        var longest = Copied($$"""{ "title": "{{new string('x', 120)}}" }""");
        Assert.Equal($$"""{ "title": "{{new string('x', 114)}}, copy" }""", longest);
    }

    private static string Copied(string text) => Encoding.UTF8.GetString(DocumentText.Read(Encoding.UTF8.GetBytes(text)).Text!.Copy().Utf8);
}
