using System.Text.Json;

namespace Dyepath.Cli.Tests;

public class ProjectCommandTests
{
    [Fact]
    public async Task The_starter_document_plans_as_it_is()
    {
        var (code, starter, _) = await Run.Dyepath("new");
        Assert.Equal(0, code);
        Assert.Contains("//", starter, StringComparison.Ordinal);
        var plan = await Run.Json("plan -", starter);
        Assert.NotEmpty(plan.GetProperty("sizes").EnumerateArray());
    }

    [Fact]
    public async Task The_plan_has_what_it_promises()
    {
        var plan = await Run.Json("plan --demo");
        Assert.True(plan.GetProperty("direction").GetString() is "up" or "sideways");
        Assert.False(string.IsNullOrWhiteSpace(plan.GetProperty("why").GetString()));
        var sizes = plan.GetProperty("sizes").EnumerateArray().ToArray();
        Assert.Equal(9, sizes.Length);
        foreach (var size in sizes)
        {
            foreach (var name in new[] { "target", "finished" })
                Assert.All(size.GetProperty(name).EnumerateObject(), m => Assert.EndsWith("Cm", m.Name, StringComparison.Ordinal));
            foreach (var piece in size.GetProperty("pieces").EnumerateArray())
            {
                Assert.Equal(JsonValueKind.String, piece.GetProperty("name").ValueKind);
                foreach (var number in new[] { "stitches", "rows", "foundationChains", "start", "lean" })
                    Assert.Equal(JsonValueKind.Number, piece.GetProperty(number).ValueKind);
            }
            Assert.All(
                size.GetProperty("edgings").EnumerateArray(),
                e => Assert.True(
                    e.GetProperty("pickUp").GetInt32() > 0 && e.GetProperty("rounds").GetInt32() > 0
                        && e.GetProperty("where").GetString() != ""));
            Assert.All(
                size.GetProperty("seams").EnumerateArray(),
                s => Assert.True(s.GetProperty("phaseJump").GetDouble() >= 0 && s.GetProperty("where").GetString() != ""));
            var yarn = size.GetProperty("yarn");
            Assert.True(yarn.GetProperty("metres").GetDouble() > 0 && yarn.GetProperty("grams").GetDouble() > 0);
            Assert.True(yarn.GetProperty("ballsSafe").GetInt32() >= yarn.GetProperty("ballsTypical").GetInt32());
        }
    }

    [Fact]
    public async Task The_yarn_command_says_what_was_measured_and_how_sure_it_is()
    {
        var yarn = await Run.Json("yarn --demo --stitches 96");
        var sequence = yarn.GetProperty("sequenceStitches");
        Assert.InRange(21, sequence.GetProperty("low").GetDouble(), sequence.GetProperty("high").GetDouble());
        Assert.Equal(5, yarn.GetProperty("sections").GetArrayLength());
        Assert.Equal("notByCounting", yarn.GetProperty("freeWork").GetProperty("verdict").GetString());
        Assert.Equal(2, (await Run.Dyepath("yarn --demo --stitches 0")).Code);
    }

    [Fact]
    public async Task The_demo_passes_its_technical_check()
    {
        var (code, output, errors) = await Run.Dyepath("verify --demo");
        Assert.True(code == 0, output + errors);
    }

    [Fact]
    public async Task Every_fault_of_a_bad_document_is_listed_with_its_place()
    {
        var (_, starter, _) = await Run.Dyepath("new --json");
        var bad = starter.Replace("\"schemaVersion\": 1", "\"schemaVersion\": 1, \"surprise\": true", StringComparison.Ordinal);
        var (code, _, errors) = await Run.Dyepath("verify -", bad);
        Assert.Equal(2, code);
        Assert.Contains("surprise", errors, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("plan")]
    [InlineData("plan nowhere.json")]
    [InlineData("plan --demo nowhere.json")]
    [InlineData("booklet --demo")]
    [InlineData("booklet --demo --out x --terms latin")]
    [InlineData("booklet --demo --out x --size Q")]
    public async Task A_command_that_cannot_be_followed_exits_with_2(string command) =>
        Assert.Equal(2, (await Run.Dyepath(command)).Code);

    [Theory]
    [InlineData("plan --demo --cells M", "--cells: Cells are written as JSON alone: add --json, or leave --cells out.")]
    [InlineData("new --garment sock", "--garment: There is no garment sock: choose one of pullover, ")]
    public async Task What_is_asked_for_amiss_says_where_and_what_to_do(string command, string words)
    {
        var (code, _, errors) = await Run.Dyepath(command);
        Assert.Equal(2, code);
        Assert.Contains(words, errors, StringComparison.Ordinal);
    }

    /// <summary>What the help text promises: each line's numbers are those of the JSON.</summary>
    [Fact]
    public async Task The_plan_in_words_says_what_else_to_buy_and_how_it_goes_together()
    {
        var (code, text, _) = await Run.Dyepath("plan --demo");
        Assert.Equal(0, code);
        var lines = text.Split('\n');
        var sizes = (await Run.Json("plan --demo")).GetProperty("sizes").EnumerateArray().ToArray();
        foreach (var edging in sizes[0].GetProperty("edgings").EnumerateArray())
        {
            var where = edging.GetProperty("where").GetString()!;
            var line = Assert.Single(lines, l => l.StartsWith($"Edging, {where}", StringComparison.Ordinal));
            foreach (var size in sizes)
            {
                var planned = size.GetProperty("edgings").EnumerateArray().Single(e => e.GetProperty("where").GetString() == where);
                Assert.Matches($@"rounds: .*\b{planned.GetProperty("rounds").GetInt32()}\b.*; stitches picked up: .*\b{planned.GetProperty("pickUp").GetInt32()}\b", line);
            }
        }
        foreach (var seam in sizes[0].GetProperty("seams").EnumerateArray())
            Assert.Single(lines, l => l.StartsWith(seam.GetProperty("where").GetString()! + ": ", StringComparison.OrdinalIgnoreCase));
        foreach (var piece in sizes[0].GetProperty("pieces").EnumerateArray().Where(p => p.GetProperty("pooled").GetBoolean()))
            Assert.Single(lines, l => l.StartsWith($"Begins, {piece.GetProperty("name").GetString()}: stitch ", StringComparison.Ordinal));
        Assert.Single(lines, l => l.StartsWith("Fits, at the least: ", StringComparison.Ordinal) && l.Contains(" cm to spare in ", StringComparison.Ordinal));
    }

    [Fact]
    public async Task Companion_yarn_and_elastic_are_said_to_be_bought()
    {
        var (_, skirt, _) = await Run.Dyepath("new --garment skirt --json");
        var (code, text, errors) = await Run.Dyepath("plan -", skirt);
        Assert.True(code == 0, text + errors);
        Assert.Contains("Also buy: elastic for the waist, ", text, StringComparison.Ordinal);
        var (_, bag, _) = await Run.Dyepath("new --garment bag --json");
        var companion = (await Run.Json("plan -", bag)).GetProperty("sizes")[0].GetProperty("yarn").GetProperty("companion");
        (code, text, errors) = await Run.Dyepath("plan -", bag);
        Assert.True(code == 0, text + errors);
        var metres = Math.Ceiling(companion.GetProperty("metres").GetDouble());
        Assert.Contains($"Also buy: Companion yarn, {metres} m; balls for 19 of 20: {companion.GetProperty("balls").GetInt32()}; for ", text, StringComparison.Ordinal);
    }

    /// <summary>Bands of buttons are closed by as many as the pattern's materials name.</summary>
    [Fact]
    public async Task Buttons_are_said_to_be_bought()
    {
        var (_, cardigan, _) = await Run.Dyepath("new --garment cardigan --json");
        Assert.Contains("button-band", cardigan, StringComparison.Ordinal);
        var (code, text, errors) = await Run.Dyepath("plan -", cardigan);
        Assert.True(code == 0, text + errors);
        Assert.Matches(@"Also buy: buttons, \d", text);
    }

    [Fact]
    public async Task A_shaped_piece_says_its_widest_row_beside_its_first()
    {
        var (_, shawl, _) = await Run.Dyepath("new --garment shawl --json");
        var plan = await Run.Json("plan -", shawl);
        var counts = plan.GetProperty("options").EnumerateArray().First(o => o.GetProperty("direction").GetString() == plan.GetProperty("direction").GetString())
            .GetProperty("counts").EnumerateArray().Select(c => c.GetInt32()).ToArray();
        var piece = plan.GetProperty("sizes")[0].GetProperty("pieces")[0];
        Assert.Contains(piece.GetProperty("widestStitches").GetInt32(), counts);
        Assert.NotEqual(piece.GetProperty("stitches").GetInt32(), piece.GetProperty("widestStitches").GetInt32());
        Assert.NotEmpty(plan.GetProperty("options")[0].GetProperty("decides").EnumerateArray());
    }

    [Fact]
    public async Task Yarn_of_linen_stitch_is_counted_in_pairs()
    {
        var (_, starter, _) = await Run.Dyepath("new --json");
        Assert.Contains("\"stitch\": \"sc\"", starter, StringComparison.Ordinal);
        var (code, text, errors) = await Run.Dyepath("yarn -", starter.Replace("\"stitch\": \"sc\"", "\"stitch\": \"linen\"", StringComparison.Ordinal));
        Assert.True(code == 0, errors);
        Assert.Matches(@"Sequence: .* pairs, ", text);
        Assert.Contains("Yarn in a pair of stitches: ", text, StringComparison.Ordinal);
        Assert.DoesNotContain(" stitches by itself", text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_booklet_is_written_whole()
    {
        var folder = Directory.CreateTempSubdirectory("dyepath-");
        try
        {
            var files = (await Run.Json($"booklet --demo --out {folder.FullName}")).GetProperty("files").EnumerateArray()
                .Select(f => f.GetString()!).ToArray();
            Assert.Contains(files, f => f.EndsWith("index.html", StringComparison.Ordinal));
            Assert.Contains(files, f => f.EndsWith("booklet.pdf", StringComparison.Ordinal));
            Assert.All(files, f => Assert.True(new FileInfo(f).Length > 100));
            Assert.True(new FileInfo(files.First(f => f.EndsWith(".pdf", StringComparison.Ordinal))).Length < 2_000_000);
            Assert.DoesNotContain(folder.GetFiles(), f => f.Extension == ".part");
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    [Fact]
    public async Task Help_explains_every_command_with_an_example()
    {
        foreach (var command in new[] { "fabric", "counts", "simulate", "new", "yarn", "verify", "plan", "booklet" })
        {
            var (code, output, _) = await Run.Dyepath($"{command} --help");
            Assert.Equal(0, code);
            Assert.Contains("Example: dyepath " + command, output, StringComparison.Ordinal);
        }
    }
}
