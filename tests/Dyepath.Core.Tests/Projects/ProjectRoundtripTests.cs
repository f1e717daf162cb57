using System.Text;
using Dyepath.Core.Projects;

namespace Dyepath.Core.Tests.Projects;

public sealed class ProjectRoundtripTests
{
    [Fact]
    public void What_is_written_reads_back_the_same() => ProjectGen.Project.Holds(
        project =>
        {
            var reading = ProjectReader.Read(ProjectWriter.WriteUtf8(project));
            Assert.Empty(reading.Faults);
            Assert.Null(Same.Difference(project, reading.Project));
        },
        seed: 204, cases: 300);

    [Fact]
    public void Writing_what_was_read_gives_the_same_text() => ProjectGen.Project.Holds(
        project =>
        {
            var text = ProjectWriter.Write(project);
            Assert.Equal(text, ProjectWriter.Write(ProjectReader.Read(Encoding.UTF8.GetBytes(text)).Project!));
        },
        seed: 205, cases: 300);

    [Fact]
    public void The_comparison_sees_a_change_deep_inside()
    {
        var demo = ProjectReader.Read(DemoProject.Utf8).Project!;
        var other = demo with { Fabric = demo.Fabric with { SectionStitches = [5, 4, 3, 5, 5] } };
        Assert.Equal(".Fabric.SectionStitches[4]: 4 and 5", Same.Difference(demo, other));
    }
}
