using System.Text;
using CsCheck;
using Dyepath.Core.Making.Log;
using Dyepath.Core.Projects;
using Xunit;

namespace Dyepath.Core.Tests.Making.Log;

public sealed class MakingDocumentTests
{
    private static readonly Project Tideline = ProjectReader.Read(DemoProject.Utf8).Project!;

    private static readonly Gen<Entry> Entries =
        from did in Gen.Enum<EntryKind>()
        from at in Gen.Long[0, 4_000_000_000_000]
        from phase in Gen.Int[-1_000, 1_000].Nullable()
        from to in Gen.Int[-1, 10_000].Nullable()
        select new Entry(did, DateTimeOffset.FromUnixTimeMilliseconds(at), phase, to);

    [Fact]
    public void What_is_written_reads_back_the_same()
    {
        Entries.Array[0, 200].Holds(
            entries =>
            {
                var making = MakingDocument.Begin(Tideline, "M") with { Counted = [[5, 4, 3, 5, 4], [5, 4, 4, 4, 4]], Log = [.. entries] };
                var utf8 = MakingWriter.WriteUtf8(making);
                var read = MakingReader.Read(utf8).Making!;
                Assert.Equal(making.Log.AsEnumerable(), read.Log);
                Assert.Equal(making.Counted[1].AsEnumerable(), read.Counted[1]);
                Assert.Equal(ProjectWriter.Write(making.Project), ProjectWriter.Write(read.Project));
                Assert.Equal(utf8, MakingWriter.WriteUtf8(read));
            },
            seed: 7, cases: 30);
    }

    [Fact]
    public void A_log_of_the_greatest_length_fits()
    {
        var entry = new Entry(EntryKind.Run, DateTimeOffset.FromUnixTimeMilliseconds(1_764_000_000_000), Phase: -1);
        var making = MakingDocument.Begin(Tideline, "M") with { Log = [.. Enumerable.Repeat(entry, MakingDocument.MostEntries)] };
        Assert.Equal(MakingDocument.MostEntries, MakingReader.Read(MakingWriter.WriteUtf8(making)).Making?.Log.Length);
    }

    [Theory]
    [InlineData("""{ "did": "row", "at": 1 }""", null)]
    [InlineData("""{ "did": "rows", "at": 1 }""", "log[0].did")]
    [InlineData("""{ "did": "row", "at": -1 }""", "log[0].at")]
    [InlineData("""{ "did": "row", "at": 1e300 }""", "log[0].at")]
    [InlineData("""{ "did": "row", "at": 1, "phase": 0.5 }""", "log[0].phase")]
    [InlineData("""{ "did": "at", "at": 1, "to": 10001 }""", "log[0].to")]
    [InlineData("""{ "did": "row", "at": 1, "note": "x" }""", "log[0].note")]
    public void Faults_are_located(string entry, string? place)
    {
        var text = Encoding.UTF8.GetString(MakingWriter.WriteUtf8(MakingDocument.Begin(Tideline, "M"))).TrimEnd();
        var reading = MakingReader.Read(Encoding.UTF8.GetBytes(text[..^1].TrimEnd() + $", \"log\": [ {entry} ] }}"));
        Assert.Equal(place, reading.Faults.Select(f => f.Path).FirstOrDefault());
        Assert.Equal(place is null, reading.IsGood);
    }

    [Fact]
    public void Counts_are_of_every_section()
    {
        var making = MakingDocument.Begin(Tideline, "M") with { Counted = [[5, 4, 3]] };
        Assert.Equal("counted[0]", Assert.Single(MakingReader.Read(MakingWriter.WriteUtf8(making)).Faults).Path);
    }

    [Theory]
    [InlineData("")]
    [InlineData("[]")]
    [InlineData("{}")]
    [InlineData("""{ "makingVersion": 2 }""")]
    [InlineData("null")]
    public void Other_text_is_no_making(string text) => Assert.NotEmpty(MakingReader.Read(Encoding.UTF8.GetBytes(text)).Faults);
}
