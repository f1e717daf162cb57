using System.Text;
using Dyepath.Core.Projects;

namespace Dyepath.Core.Tests.Projects;

public sealed class DemoDocumentTests
{
    [Fact]
    public void The_demo_reads_without_faults()
    {
        var reading = ProjectReader.Read(DemoDocument.Utf8());
        Assert.Empty(reading.Faults);
    }

    [Fact]
    public void The_demo_written_and_read_again_is_the_same()
    {
        var demo = ProjectReader.Read(DemoDocument.Utf8()).Project;
        Assert.Null(Same.Difference(demo, ProjectReader.Read(ProjectWriter.WriteUtf8(demo!)).Project));
    }

    [Fact]
    public void The_starter_reads_without_faults()
    {
        var reading = ProjectReader.Read(Encoding.UTF8.GetBytes(StarterDocument.Write()));
        Assert.Empty(reading.Faults);
    }
}
