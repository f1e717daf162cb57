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
