using System.Text;
using System.Text.Json.Nodes;
using Dyepath.Core.Documents;
using Dyepath.Core.Projects;

namespace Dyepath.Core.Tests.Projects;

/// <summary>Extreme documents: what lies around JSON, its size, its depth, its numbers.</summary>
public sealed class ProjectReaderTests
{
    private static readonly string Demo = Encoding.UTF8.GetString(DemoProject.Utf8);

    [Theory]
    [InlineData("", "an empty file")]
    [InlineData(" \r\n\t", "an empty file")]
    [InlineData("title: Tideline", "text that is not JSON")]
    [InlineData("{", "text that is not JSON")]
    [InlineData("{} {}", "text that is not JSON")]
    [InlineData("{ 'title': 1 }", "text that is not JSON")]
    [InlineData("{ \"title\": NaN }", "text that is not JSON")]
    [InlineData("{ \"title\": \"\\ud800\" }", "half a character")]
    [InlineData("{ \"\\udc00\": 1 }", "half a character")]
    public void What_is_no_JSON_is_refused(string text, string found)
    {
        var fault = Assert.Single(Read(text).Faults);
        Assert.Equal(("document", FaultKind.NotJson), (fault.Path, fault.Kind));
        Assert.Contains(found, fault.Found, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("null", "null")]
    [InlineData("[]", "a list of 0")]
    [InlineData("\"Tideline\"", "\"Tideline\"")]
    [InlineData("1e999", "1e999")]
    public void What_is_no_object_is_refused(string json, string found)
    {
        var fault = Assert.Single(Read(json).Faults);
        Assert.Equal(("document", FaultKind.Form, found), (fault.Path, fault.Kind, fault.Found));
    }

    [Fact]
    public void A_byte_order_mark_is_no_fault() => Assert.True(ProjectReader.Read([0xEF, 0xBB, 0xBF, .. DemoProject.Utf8]).IsGood);

    [Fact]
    public void Text_in_another_encoding_is_refused_on_its_line()
    {
        byte[] utf16 = [.. Encoding.Unicode.GetPreamble(), .. Encoding.Unicode.GetBytes(Demo)];
        Assert.Equal("bytes that are not UTF-8", Assert.Single(ProjectReader.Read(utf16).Faults).Found);
        var fault = Assert.Single(ProjectReader.Read([.. "{\n\n  \"title\": \""u8, 0xE9, .. "\" }"u8]).Faults);
        Assert.Equal((3, "bytes that are not UTF-8"), (fault.Line, fault.Found));
    }

    [Fact]
    public void A_slip_of_punctuation_is_placed_on_its_line()
    {
        var line = Demo[..Demo.IndexOf("\"fibre\"", StringComparison.Ordinal)].Count(c => c == '\n') + 1;
        var fault = Assert.Single(Read(Edited("linen\",", "linen\"")).Faults);
        Assert.Equal(line + 1, fault.Line);
    }

    [Fact]
    public void Lines_are_counted_through_comments_and_either_line_end()
    {
        const string Json = "// first\r\n{ /* second\n third */ \"schemaVersion\": 1,\r\n\r\n \"title\": 5, }";
        Assert.Equal(5, Read(Json).Faults.Single(f => f.Path == "title").Line);
    }

    [Fact]
    public void Comments_and_trailing_commas_are_no_fault() =>
        Assert.True(Read("// mine\n" + Edited("\"hand\": \"right\"", "\"hand\": \"right\", /* mine */")).IsGood);

    [Theory]
    [InlineData(16, false)]
    [InlineData(17, true)]
    [InlineData(1_000, true)]
    [InlineData(500_000, true)]
    public void Nesting_is_limited(int depth, bool tooDeep)
    {
        var faults = Read($"{{\"title\":{new string('[', depth - 1)}{new string(']', depth - 1)}}}").Faults;
        Assert.Equal(tooDeep, faults.Any(f => f.Kind == FaultKind.NotJson));
    }

    [Fact]
    public void Size_is_limited_to_the_byte()
    {
        const int limit = 2_000_000;
        Assert.True(Read(Demo + new string(' ', limit - Encoding.UTF8.GetByteCount(Demo))).IsGood);
        var tooLong = Encoding.UTF8.GetBytes(Demo + new string(' ', limit + 1 - Encoding.UTF8.GetByteCount(Demo)));
        Assert.Equal("more than 2 MB", Assert.Single(ProjectReader.Read(tooLong).Faults).Found);
        using var stream = new MemoryStream(tooLong);
        Assert.Equal("more than 2 MB", Assert.Single(ProjectReader.Read(stream).Faults).Found);
    }

    [Fact]
    public void A_stream_reads_as_its_bytes()
    {
        using var stream = new MemoryStream(DemoProject.Utf8.ToArray());
        Assert.Equal("Tideline", ProjectReader.Read(stream).Project?.Title);
    }

    [Fact]
    public void A_property_that_stands_twice_is_a_fault_that_names_both_lines()
    {
        var fault = Assert.Single(Read(Edited("\"title\"", "\"designer\"")).Faults, f => f.Path == "designer");
        Assert.Equal(5, fault.Line);
        Assert.Contains("line 4", fault.Next, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("2")]
    [InlineData("1000000000000")]
    public void A_newer_document_is_refused_for_that_alone(string version)
    {
        var fault = Assert.Single(Read($"{{ \"schemaVersion\": {version}, \"weave\": [] }}").Faults);
        Assert.Equal("schemaVersion", fault.Path);
        Assert.Contains("newer Dyepath", fault.Next, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("0")]
    [InlineData("-1")]
    [InlineData("\"1\"")]
    [InlineData("1e999")]
    [InlineData("null")]
    public void A_version_that_never_was_is_a_fault(string version) =>
        Assert.Contains(Read(Edited("\"schemaVersion\": 1", $"\"schemaVersion\": {version}")).Faults, f => f.Path == "schemaVersion");

    [Theory]
    [InlineData("1.0")]
    [InlineData("1e0")]
    [InlineData("10E-1")]
    public void A_whole_number_may_be_spelt_with_decimals_or_exponent(string version) =>
        Assert.True(Read(Edited("\"schemaVersion\": 1", $"\"schemaVersion\": {version}")).IsGood);

    [Theory]
    [InlineData("1e999")]
    [InlineData("-1e999")]
    [InlineData("99999999999999999999999999")]
    [InlineData("13.000000001")]
    public void Numbers_out_of_range_are_faults(string count) => Assert.Equal(
        "fabric.sectionStitches[0]",
        Assert.Single(Read(Edited("\"sectionStitches\": [5", $"\"sectionStitches\": [{count}")).Faults).Path);

    [Fact]
    public void A_flood_of_faults_is_cut_short()
    {
        var unknown = string.Join(",", Enumerable.Range(0, 100_000).Select(i => $"\"x{i}\":0"));
        var faults = Read($"{{{unknown}}}").Faults;
        Assert.Equal(101, faults.Length);
        Assert.Equal("more faults", faults[^1].Found);
    }

    [Fact]
    public void What_is_found_is_shown_short_and_harmless()
    {
        var waves = string.Concat(Enumerable.Repeat("🌊", 200));
        var faults = Read($"{{ \"schemaVersion\": 1, \"title\": \"\\u001b[2J\\u202e{waves}\" }}").Faults;
        var fault = Assert.Single(faults, f => f.Path == "title");
        Assert.StartsWith("\"\\u001B[2J\\u202", fault.Found, StringComparison.Ordinal);
        Assert.EndsWith("…\"", fault.Found, StringComparison.Ordinal);
        Assert.True(fault.Found.Length < 300);
    }

    private static string Edited(string before, string after) => Demo.Replace(before, after, StringComparison.Ordinal);

    private static ProjectReading Read(string json) => ProjectReader.Read(Encoding.UTF8.GetBytes(json));

    /// <summary>A swatch that was only measured washed, as many are: its gauge is that of the finished garment, and no other is asked for.</summary>
    [Theory]
    [InlineData("blocked")]
    [InlineData("hung")]
    public void One_gauge_of_any_state_is_enough(string state)
    {
        var whole = JsonNode.Parse(ProjectWriter.Write(StarterDocument.Project))!;
        var swatch = whole["fabric"]!["swatch"]!.AsObject();
        swatch[state] = swatch["worked"]!.DeepClone();
        swatch.Remove("worked");
        var read = ProjectReader.Read(Encoding.UTF8.GetBytes(whole.ToJsonString()));
        Assert.True(read.IsGood, string.Join('\n', read.Faults));
        Assert.Equal(StarterDocument.Project.Fabric.Swatch.Worked, read.Project.Fabric.Swatch.Worked);
        swatch.Remove(state);
        var fault = Assert.Single(ProjectReader.Read(Encoding.UTF8.GetBytes(whole.ToJsonString())).Faults);
        Assert.Equal(("fabric.swatch.worked", "no gauge"), (fault.Path, fault.Found));
    }
}
