using Dyepath.Core.Projects;
using Dyepath.Workspace.Garment;
using Dyepath.Workspace.Shelf;
using Dyepath.Workspace.Work;

namespace Dyepath.Workspace.Tests.Garment;

public sealed class TitleTests
{
    [Theory]
    [InlineData("My pullover", "My pullover")]
    [InlineData("My pullover 2", "My pullover", "My pullover")]
    [InlineData("My pullover 3", "My pullover", "my pullover", "My pullover 2")]
    [InlineData("My pullover 2", "My pullover", "My pullover", "My pullover 3")]
    public void A_new_title_is_one_that_no_project_has(string free, string title, params string[] taken) =>
        Assert.Equal(free, ProjectShelf.FreeTitle(title, taken));

    /// <summary>A title that nobody has written follows the garment, its number too.</summary>
    [Theory]
    [InlineData("My pullover", "My cardigan")]
    [InlineData("My pullover 2", "My cardigan 2")]
    [InlineData("My pullover for Ada", "My pullover for Ada")]
    [InlineData("My pullover 2b", "My pullover 2b")]
    public void A_numbered_title_follows_the_garment(string before, string after)
    {
        var document = ProjectDocument.TryParse(ProjectWriter.Write(StarterDocument.Project))!;
        document.Set("title", before);
        GarmentShapes.Change(document, "cardigan");
        Assert.Equal(after, document.Title);
    }

    [Fact]
    public void Garment_and_yarn_tell_projects_of_one_title_apart()
    {
        var document = ProjectDocument.TryParse(ProjectWriter.Write(StarterDocument.Project))!;
        GarmentShapes.Change(document, "cardigan");
        document.Set("yarn.name", "Harbour");
        Assert.Equal("Cardigan in Harbour", ProjectShelf.Apart(document));
        document.Set("yarn.name", null);
        document.Set("garment.shape", "");
        Assert.Equal("No garment yet", ProjectShelf.Apart(document));
    }
}
