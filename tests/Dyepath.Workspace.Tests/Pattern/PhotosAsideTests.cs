using System.Text;
using System.Text.Json.Nodes;
using Dyepath.Core.Booklets;
using Dyepath.Core.Projects;
using Dyepath.Workspace.Work;

namespace Dyepath.Workspace.Tests.Pattern;

public sealed class PhotosAsideTests
{
    private static readonly string Jpeg = SmallJpeg.Base64(120_000);

    [Fact]
    public void The_slim_text_has_no_pictures_and_the_stored_text_has_them_all()
    {
        var document = WithPhoto();
        Assert.True(document.Slim.Length < 20_000);
        Assert.Equal(Jpeg, JsonNode.Parse(document.Text)!["photos"]![0]!["jpeg"]!.GetValue<string>());
        document.Set("title", "Other");
        Assert.Contains("Other", document.Slim, StringComparison.Ordinal);
        Assert.Contains(Jpeg, document.Text, StringComparison.Ordinal);
        Assert.True(document.Slim.Length < 20_000);
    }

    [Fact]
    public void What_is_worked_out_has_the_pictures()
    {
        var outcome = Outcome.Of(WithPhoto(), CancellationToken.None);
        Assert.Empty(outcome.Reading.Faults);
        Assert.Equal(Jpeg, Assert.Single(outcome.Booklet!.Sections.SelectMany(s => s.Blocks).OfType<Photo>()).Picture.Base64);
    }

    [Fact]
    public void Undo_brings_pictures_back_and_a_hundred_edits_keep_one_copy_of_them()
    {
        using var bench = Documents.Workbench();
        Assert.True(bench.Open(WithPhoto().Text));
        bench.Edit("taking a photo out", d => d.Set("photos[0]", null));
        for (var i = 0; i < 100; i++)
            bench.Edit("title", d => d.Set("title", $"Title {i}"));
        Assert.DoesNotContain(Jpeg, bench.Document!.Text, StringComparison.Ordinal);
        while (bench.Undoing is not null)
            bench.Undo();
        Assert.Contains(Jpeg, bench.Document!.Text, StringComparison.Ordinal);
        Assert.Single(bench.Document.Shelf.Pictures);
    }

    [Fact]
    public void A_name_from_elsewhere_stands_for_no_picture()
    {
        var name = WithPhoto().Shelf.Pictures.Keys.FirstOrDefault() ?? "#1";
        var other = Demo();
        other.Add("photos", new JsonObject { ["place"] = "notes", ["alternative"] = "x", ["jpeg"] = name });
        Assert.Equal("photos[0].jpeg", Assert.Single(Outcome.Of(other, CancellationToken.None).Reading.Faults).Path);
        Assert.Contains(name, other.Text, StringComparison.Ordinal);
    }

    private static ProjectDocument Demo() => ProjectDocument.TryParse(Encoding.UTF8.GetString(DemoProject.Utf8))!;

    private static ProjectDocument WithPhoto()
    {
        var document = Demo();
        document.Add("photos", new JsonObject { ["place"] = "notes", ["alternative"] = "The tunic on a line.", ["jpeg"] = Jpeg });
        return document;
    }
}
