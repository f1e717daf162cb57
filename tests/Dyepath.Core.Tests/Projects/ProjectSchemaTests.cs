using System.Text;
using Dyepath.Core.Projects;

namespace Dyepath.Core.Tests.Projects;

public sealed class ProjectSchemaTests
{
    [Fact]
    public void The_published_schema_is_up_to_date() => RepositoryFile.IsUpToDate("schema/project-1.schema.json", ProjectSchema.Write());

    [Fact]
    public void The_demo_and_the_starter_are_valid()
    {
        Assert.True(DocumentSchema.Allows(Encoding.UTF8.GetString(DemoProject.Utf8)));
        Assert.True(DocumentSchema.Allows(StarterDocument.Write()));
    }

    [Fact]
    public void Whatever_is_written_is_valid() =>
        ProjectGen.Project.Holds(project => Assert.True(DocumentSchema.Allows(ProjectWriter.Write(project))), seed: 206, cases: 100);

    [Theory]
    [InlineData("{}")]
    [InlineData("[]")]
    [InlineData("null")]
    [InlineData("""{ "schemaVersion": 1, "title": "only" }""")]
    public void What_is_no_project_is_not_valid(string json) => Assert.False(DocumentSchema.Allows(json));
}
