using System.Text;
using Dyepath.Core.Limits;
using Dyepath.Core.Making.Log;
using Dyepath.Core.Projects;
using Dyepath.Core.Tests.Garments;

namespace Dyepath.Core.Tests.Limits;

/// <summary>Numbers that the document may not say are refused at their place; none is changed in silence.</summary>
public sealed class BoundsTests
{
    [Theory]
    [InlineData("\"sectionStitches\": [5,", "\"sectionStitches\": [5.5,", "fabric.sectionStitches[0]")]
    [InlineData("\"sectionStitches\": [5,", "\"sectionStitches\": [5.0000000000000000000001,", "fabric.sectionStitches[0]")]
    [InlineData("\"sectionStitches\": [5,", "\"sectionStitches\": [1001,", "fabric.sectionStitches[0]")]
    [InlineData("[5, 4, 3, 5, 4],", "[2.7, 4, 3, 5, 4],", "yarn.counted[0].repeats[0][0]")]
    [InlineData("\"turnCost\": \"0 stitches\"", "\"turnCost\": \"50.5 stitches\"", "fabric.turnCost")]
    [InlineData("\"turnCost\": \"0 stitches\"", "\"turnCost\": \"-1.5 stitches\", \"turningChainCounts\": true", "fabric.turnCost")]
    [InlineData("\"turnCost\": \"0 stitches\"", "\"turnCost\": \"-0.9999999 stitches\", \"turningChainCounts\": true", "fabric.turnCost")]
    [InlineData("\"turnCost\": \"0 stitches\"", "\"turnCost\": \"0 stitches\", \"hands\": { \"spread\": \"51 %\", \"memory\": \"50 stitches\" }", "fabric.hands.spread")]
    [InlineData("\"turnCost\": \"0 stitches\"", "\"turnCost\": \"0 stitches\", \"hands\": { \"spread\": \"1 %\", \"memory\": \"10001 stitches\" }", "fabric.hands.memory")]
    public void A_number_out_of_its_range_is_a_fault_at_its_place(string said, string instead, string place)
    {
        var text = Encoding.UTF8.GetString(DemoProject.Utf8);
        var at = text.IndexOf(said, StringComparison.Ordinal);
        Assert.True(at >= 0, said);
        var faults = ProjectReader.Read(Encoding.UTF8.GetBytes(text.Remove(at, said.Length).Insert(at, instead))).Faults;
        Assert.Contains(faults, f => f.Path.EndsWith(place, StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("[0, 0, 0, 0, 0]", "counted[0]")]
    [InlineData("[1000, 1000, 1000, 1000, 1000]", "counted[0]")]
    [InlineData("[5, 4, 3, 5]", "counted[0]")]
    [InlineData("[5, 4, 3, 5, 2.5]", "counted[0][4]")]
    public void Counts_of_a_makers_own_that_are_no_sequence_are_a_fault_at_their_place(string counts, string place)
    {
        var making = Encoding.UTF8.GetString(MakingWriter.WriteUtf8(MakingDocument.Begin(TestProjects.Tideline, "M")));
        var faults = MakingReader.Read(Encoding.UTF8.GetBytes(making.Insert(1, $"\"counted\": [{counts}],"))).Faults;
        Assert.Equal(place, Assert.Single(faults).Path);
    }

    [Fact]
    public void A_moment_between_milliseconds_is_a_fault_and_not_another_moment()
    {
        var making = Encoding.UTF8.GetString(MakingWriter.WriteUtf8(MakingDocument.Begin(TestProjects.Tideline, "M")));
        var faults = MakingReader.Read(Encoding.UTF8.GetBytes(making.Insert(1, "\"log\": [{ \"did\": \"row\", \"at\": 1764000000000.7 }],"))).Faults;
        Assert.Equal("log[0].at", Assert.Single(faults).Path);
    }

    [Fact]
    public void A_range_holds_both_of_its_ends_and_no_number_that_is_none()
    {
        var range = new Bounds(-1, 2, "cm");
        Assert.True(range.Holds(-1) && range.Holds(2));
        Assert.False(range.Holds(double.NaN) || range.Holds(2.0001));
        var number = 3.0;
        var fault = Assert.Throws<ArgumentOutOfRangeException>(nameof(number), () => range.Check(number));
        Assert.Contains("[-1, 2] cm", fault.Message, StringComparison.Ordinal);
    }
}
