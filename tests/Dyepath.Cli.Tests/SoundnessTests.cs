using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;
using Dyepath.Core.Projects;

namespace Dyepath.Cli.Tests;

/// <summary>What went wrong once, from outside.</summary>
public class SoundnessTests
{
    /// <summary>Stitches of two colours in turn: the blur leaves nothing at any lean, so nothing can be compared with the best.</summary>
    [Fact]
    public async Task A_sequence_that_the_blur_swallows_has_no_clarity()
    {
        var json = await Run.Json("fabric --sections 1,1 --stitches 17 --rows 4 --worked rounds --start=-0.5");
        Assert.Equal(0, json.GetProperty("clarity").GetDouble());
    }

    /// <summary>wrap(2 · 17) by a period of 1.5 is 34 − 34.5, over two rows.</summary>
    [Fact]
    public async Task A_sequence_shorter_than_two_stitches_has_a_lean()
    {
        var json = await Run.Json("fabric --sections 0.75,0.75 --stitches 17 --rows 4 --worked turned");
        Assert.Equal(-0.25, json.GetProperty("lean").GetDouble(), 1e-9);
    }

    [Fact]
    public async Task Half_repeats_in_joined_and_turned_rounds_are_said_to_jump_at_the_join()
    {
        var json = await Run.Json("counts --sections 5,4,6,7 --from 54 --to 54 --worked rounds-turned");
        var note = Assert.Single(json.GetProperty("counts")[0].GetProperty("notes").EnumerateArray());
        Assert.Contains("join", note.GetString(), StringComparison.Ordinal);
        var (_, output, _) = await Run.Dyepath("fabric --sections 5,4,6,7 --stitches 54 --rows 24 --worked rounds-turned");
        Assert.Contains("do not meet at the join", output, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("fabric --sections 5,4 --stitches 7 --rows 3 --turn-cost 0,5", "--turn-cost")]
    [InlineData("fabric --sections 5,4 --stitches 7 --rows 3 --start 1,000", "--start")]
    [InlineData("fabric --sections 5,4 --stitches 7.5 --rows 3", "--stitches")]
    [InlineData("fabric --sections 5,4 --stitches 7 --rows 99999999999", "--rows")]
    [InlineData("simulate --sections 5,4 --stitches 7 --rows 3 --seed -1", "--seed")]
    public async Task A_number_written_otherwise_is_refused_in_plain_words(string command, string place)
    {
        var json = await Run.Json(command, code: 2);
        var fault = Assert.Single(json.GetProperty("faults").EnumerateArray());
        Assert.Equal(place, fault.GetProperty("place").GetString());
        Assert.DoesNotContain("System.", fault.GetProperty("text").GetString()!, StringComparison.Ordinal);
    }

    [Fact]
    public async Task An_option_that_does_not_exist_is_not_taken_for_a_file()
    {
        var fault = Assert.Single((await Run.Json("plan --demo --nosuch", code: 2)).GetProperty("faults").EnumerateArray());
        Assert.Equal("--nosuch", fault.GetProperty("place").GetString());
    }

    [Theory]
    [InlineData("--json=true")]
    [InlineData("--json:true")]
    [InlineData("--json true")]
    public async Task Faults_are_json_however_json_is_asked_for(string json)
    {
        var (code, output, _) = await Run.Dyepath($"plan nowhere.json {json}");
        Assert.Equal(2, code);
        Assert.NotEmpty(JsonDocument.Parse(output).RootElement.GetProperty("faults").EnumerateArray());
    }

    [Fact]
    public async Task Bytes_that_are_not_text_are_refused_from_standard_input_too()
    {
        using var bytes = new StreamReader(new MemoryStream([0x22, 0xFF, 0x22]), new UTF8Encoding(true, throwOnInvalidBytes: true));
        using var output = new StringWriter();
        using var errors = new StringWriter();
        Assert.Equal(2, await App.RunAsync(["verify", "-"], bytes, output, errors, TestContext.Current.CancellationToken));
        Assert.Contains("UTF-8", errors.ToString(), StringComparison.Ordinal);
    }

    /// <summary>Each of these was rounded out of its window.</summary>
    [Theory]
    [InlineData(
        "--sections 11.026,14.468,2.426,10.284,4.618,7.451 --from 44 --to 47 --worked rounds --motif even --rows 200 --gauge 16x16 "
            + "--turn-cost=0.45 --half-turn")]
    [InlineData(
        "--sections 2.4,0.6,5.3,5.8,1.8,0.8,8.8,1.4 --from 90 --to 130 --worked rounds-turned --motif columns --rows 5000 --gauge 12x18 "
            + "--constant")]
    [InlineData("--sections 5,4,6,7 --from 60 --to 63 --worked turned --motif argyle --constant")]
    public async Task Advice_holds_when_it_is_taken(string search)
    {
        var found = await Run.Json($"counts {search}", code: 3);
        var advice = found.GetProperty("advice").EnumerateArray().Select(a => a.GetString()!).ToArray();
        var hook = advice.Single(a => a.Contains("hook", StringComparison.Ordinal)).Split(' ');
        var change = double.Parse(hook[10], null) / (hook[12] == "more" ? 100 : -100);
        var before = search.Split(' ')[1];
        var after = string.Join(',', before.Split(',').Select(s => (double.Parse(s, null) / (1 + change)).ToString("0.######", null)));
        await Makes(search.Replace(before, after, StringComparison.Ordinal), hook[0]);
        if (advice.SingleOrDefault(a => a.Contains("every turn", StringComparison.Ordinal))?.Split(' ') is { } turn)
        {
            var others = search.Split(' ').Where(w => !w.StartsWith("--turn-cost", StringComparison.Ordinal));
            await Makes($"{string.Join(' ', others)} --turn-cost={turn[9]}", turn[0]);
        }
    }

    private static async Task Makes(string search, string stitches) => Assert.Contains(
        (await Run.Json($"counts {search}")).GetProperty("counts").EnumerateArray(),
        c => c.GetProperty("stitches").GetInt32().ToString(null as IFormatProvider) == stitches);

    /// <summary>A command that waits for its input sees no token.</summary>
    [Fact]
    public async Task Stopping_ends_a_command_that_waits_for_its_input()
    {
        using var stop = new CancellationTokenSource();
        using var output = new StringWriter();
        using var errors = new StringWriter();
        using var never = new EndlessReader();
        var running = App.RunAsync(["plan", "-", "--json"], never, output, errors, stop.Token);
        await stop.CancelAsync();
        Assert.Equal(130, await running.WaitAsync(TimeSpan.FromMinutes(1), TestContext.Current.CancellationToken));
        Assert.NotEmpty(JsonDocument.Parse(output.ToString()).RootElement.GetProperty("faults").EnumerateArray());
    }

    private sealed class EndlessReader : TextReader
    {
        private readonly ManualResetEventSlim _closed = new();

        public override int ReadBlock(char[] buffer, int index, int count)
        {
            _closed.Wait();
            return 0;
        }

        protected override void Dispose(bool disposing)
        {
            _closed.Set();
            base.Dispose(disposing);
        }
    }

    [Fact]
    public async Task An_output_that_cannot_be_written_is_not_called_a_fault_of_the_program()
    {
        using var full = new FullDisk();
        using var errors = new StringWriter();
        var code = await App.RunAsync(["new"], TextReader.Null, full, errors, TestContext.Current.CancellationToken);
        Assert.Equal(2, code);
        Assert.DoesNotContain("   at ", errors.ToString(), StringComparison.Ordinal);
    }

    /// <summary>One text serves all sizes; the counts must be such that it can.</summary>
    [Theory]
    [InlineData("linen", "up", false)]
    [InlineData("linen", "sideways", false)]
    [InlineData("sc", "up", true)]
    public async Task Rows_of_all_sizes_are_alike_so_that_one_text_serves_them(string stitch, string direction, bool alternating)
    {
        var document = JsonNode.Parse(DemoProject.Utf8)!;
        document["fabric"]!["stitch"] = stitch;
        document["garment"]!["direction"] = direction;
        document["garment"]!["grading"] = new JsonObject { ["alternatingRows"] = alternating, ["unevenWidths"] = true, ["severalLeans"] = true };
        var plan = await Run.Json("plan -", document.ToJsonString());
        var pieces = plan.GetProperty("sizes").EnumerateArray().SelectMany(s => s.GetProperty("pieces").EnumerateArray());
        foreach (var piece in pieces.GroupBy(p => p.GetProperty("name").GetString()))
        {
            Assert.Single(piece.Select(p => p.GetProperty("rowStitches").GetArrayLength()).Distinct());
            if (stitch == "linen")
                Assert.Single(piece.Select(p => p.GetProperty("stitches").GetInt32() % 2).Distinct());
        }
    }

    private sealed class FullDisk : StringWriter
    {
        public override void Write(string? value) => throw new IOException("No space left on device");
    }
}
