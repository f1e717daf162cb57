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
        from told in Gen.Bool
        from said in Gen.Select(Gen.Int[-4, 4], Gen.Int[-4, 4].Nullable(), Gen.Int[1, 10_000].Nullable(), Gen.Int[1, 10_000].Nullable(), (hold, work, stitches, look) => new Said(hold, work, stitches, look))
        from act in Gen.Enum<SaidAct>().Nullable()
        from rip in Gen.Int[1, 10_000].Nullable()
        from cut in Gen.Double[0, 10_000].Nullable()
        select new Entry(did, DateTimeOffset.FromUnixTimeMilliseconds(at), phase, to, told ? said with { Act = act, Rip = rip, Out = cut } : null);

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
        // Also where every one of them was answered.
        var answered = entry with { Said = new Said(-2, -3, 148, 60) };
        var told = making with { Log = [.. Enumerable.Repeat(answered, MakingDocument.MostEntries)] };
        Assert.Equal(answered, MakingReader.Read(MakingWriter.WriteUtf8(told)).Making?.Log[^1]);
    }

    /// <summary>
    /// What the first version has a form for is written in it, byte for byte: a design without its log is the same on devices of either
    /// version.
    /// </summary>
    [Fact]
    public void A_log_without_answers_is_of_the_first_version()
    {
        var old = MakingDocument.Begin(Tideline, "M") with { Log = [new Entry(EntryKind.Row, DateTimeOffset.UnixEpoch, Phase: 1)] };
        Assert.Contains("\"makingVersion\": 1", Encoding.UTF8.GetString(MakingWriter.WriteUtf8(old)), StringComparison.Ordinal);
        Assert.Contains("\"makingVersion\": 1", Encoding.UTF8.GetString(MakingWriter.WriteUtf8(MakingDocument.Begin(Tideline, "M"))), StringComparison.Ordinal);
        foreach (var entry in (Entry[])[old.Log[0] with { Said = new Said(0) }, new Entry(EntryKind.Knot, DateTimeOffset.UnixEpoch)])
        {
            var text = Encoding.UTF8.GetString(MakingWriter.WriteUtf8(old with { Log = [.. old.Log, entry] }));
            Assert.Contains("\"makingVersion\": 2", text, StringComparison.Ordinal);
            var reading = MakingReader.Read(Encoding.UTF8.GetBytes(text.Replace("\"makingVersion\": 2", "\"makingVersion\": 1", StringComparison.Ordinal)));
            Assert.Equal("log[1]", Assert.Single(reading.Faults).Path);
        }
    }

    [Theory]
    [InlineData("""{ "did": "row", "at": 1 }""", null)]
    [InlineData("""{ "did": "rows", "at": 1 }""", "log[0].did")]
    [InlineData("""{ "did": "row", "at": -1 }""", "log[0].at")]
    [InlineData("""{ "did": "row", "at": 1e300 }""", "log[0].at")]
    [InlineData("""{ "did": "row", "at": 1, "phase": 0.5 }""", "log[0].phase")]
    [InlineData("""{ "did": "at", "at": 1, "to": 10001 }""", "log[0].to")]
    [InlineData("""{ "did": "row", "at": 1, "note": "x" }""", "log[0].note")]
    [InlineData("""{ "did": "row", "at": 1, "said": { "hold": -1, "work": -3, "for": 48, "look": 60 } }""", null)]
    [InlineData("""{ "did": "row", "at": 1, "said": { "hold": 0, "act": "rip", "rip": 3 } }""", null)]
    [InlineData("""{ "did": "row", "at": 1, "said": { "hold": 5 } }""", "log[0].said.hold")]
    [InlineData("""{ "did": "row", "at": 1, "said": { "work": 1 } }""", "log[0].said.hold")]
    [InlineData("""{ "did": "row", "at": 1, "said": { "hold": 0, "for": 0 } }""", "log[0].said.for")]
    [InlineData("""{ "did": "row", "at": 1, "said": { "hold": 0, "look": 1e9 } }""", "log[0].said.look")]
    [InlineData("""{ "did": "row", "at": 1, "said": { "hold": 0, "act": "dance" } }""", "log[0].said.act")]
    [InlineData("""{ "did": "row", "at": 1, "said": { "hold": 0, "rip": -1 } }""", "log[0].said.rip")]
    [InlineData("""{ "did": "row", "at": 1, "said": { "hold": 0, "out": 1e300 } }""", "log[0].said.out")]
    [InlineData("""{ "did": "row", "at": 1, "said": "tighter" }""", "log[0].said")]
    public void Faults_are_located(string entry, string? place)
    {
        var text = Encoding.UTF8.GetString(MakingWriter.WriteUtf8(MakingDocument.Begin(Tideline, "M"))).TrimEnd()
            .Replace("\"makingVersion\": 1", "\"makingVersion\": 2", StringComparison.Ordinal);
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
    [InlineData("""{ "makingVersion": 3 }""")]
    [InlineData("null")]
    public void Other_text_is_no_making(string text) => Assert.NotEmpty(MakingReader.Read(Encoding.UTF8.GetBytes(text)).Faults);
}
