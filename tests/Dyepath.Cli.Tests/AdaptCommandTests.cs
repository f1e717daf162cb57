using System.Text.Json;

namespace Dyepath.Cli.Tests;

public class AdaptCommandTests
{
    private const string Steady = "5,4,3,5,4/5,4,3,5,4/5,4,3,5,4/5,4,3,5,4";

    [Fact]
    public async Task The_patterns_own_counts_are_as_written()
    {
        var told = await Run.Json($"adapt --demo --size M --sections {Steady}");
        Assert.Equal("as-written", told.GetProperty("verdict").GetString());
        var plan = await Run.Json("plan --demo");
        var published = plan.GetProperty("sizes").EnumerateArray().Single(s => s.GetProperty("name").GetString() == "M");
        var own = Assert.Single(told.GetProperty("plan").GetProperty("sizes").EnumerateArray());
        foreach (var name in new[] { "finished", "target", "edgings" })
            Assert.True(JsonElement.DeepEquals(published.GetProperty(name), own.GetProperty(name)), name);
        foreach (var (was, now) in published.GetProperty("pieces").EnumerateArray().Zip(own.GetProperty("pieces").EnumerateArray()))
        {
            foreach (var name in new[] { "name", "stitches", "rows", "start", "lean", "motif", "foundationChains" })
                Assert.Equal(was.GetProperty(name).GetRawText(), now.GetProperty(name).GetRawText());
        }
    }

    /// <summary>What it prints of a plan has every member that <c>plan --json</c> prints, in the same order.</summary>
    [Fact]
    public async Task The_plan_is_written_as_plan_writes_it()
    {
        var told = await Run.Json("adapt --demo --size 2X --sections 4,3,5,3,4,3,4 --colours navy,teal,#e9efe9,tan,olive,rust=#a14a2a,plum");
        Assert.Equal("re-derived", told.GetProperty("verdict").GetString());
        var plan = await Run.Json("plan --demo");
        Assert.Equal(plan.EnumerateObject().Select(m => m.Name), told.GetProperty("plan").EnumerateObject().Select(m => m.Name));
        Assert.Equal("2X", told.GetProperty("plan").GetProperty("sizes")[0].GetProperty("name").GetString());
        Assert.All(told.GetProperty("changes").EnumerateArray(), change =>
            Assert.Equal(["what", "from", "to"], change.EnumerateObject().Select(m => m.Name)));
        Assert.Contains(told.GetProperty("changes").EnumerateArray(), c =>
            c.GetProperty("to").GetString() == "navy 4, teal 3, pale grey 5, tan 3, olive 4, rust 3, plum 4");
    }

    [Fact]
    public async Task Tight_hands_get_another_hook()
    {
        var told = await Run.Json("adapt --demo --size M --sections 5,4,3,5,5/5,5,3,5,4/6,4,3,5,4/5,4,4,5,4 --gauge 14.5x16.5 --lambda 6cm");
        Assert.Equal("other-hook", told.GetProperty("verdict").GetString());
        Assert.Equal("hands", told.GetProperty("differs").GetString());
        Assert.Contains(told.GetProperty("changes").EnumerateArray(), c => c.GetProperty("what").GetString() == "hook");
    }

    /// <summary>Not suited is no feasible design: the same exit as of <c>plan</c>, the answer written all the same.</summary>
    [Fact]
    public async Task A_yarn_that_does_not_suit_exits_as_an_infeasible_design()
    {
        var told = await Run.Json("adapt --demo --size M --sections 20,21,22,23,22 --colours navy,white,teal,red,tan", code: 3);
        Assert.Equal("not-suited", told.GetProperty("verdict").GetString());
        Assert.Equal(JsonValueKind.Null, told.GetProperty("plan").ValueKind);
        Assert.NotEmpty(told.GetProperty("wouldMake").EnumerateArray());
        var (code, output, _) = await Run.Dyepath("adapt --demo --size M --sections 21 --colours navy");
        Assert.Equal(3, code);
        Assert.StartsWith("Not this yarn for this piece", output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Her_booklet_is_of_her_size_and_in_her_colours()
    {
        var folder = Directory.CreateTempSubdirectory("dyepath").FullName;
        try
        {
            var (code, output, errors) = await Run.Dyepath($"adapt --demo --size M --sections {Steady} --colours red,navy,teal,white,tan --units cm --out {folder}");
            Assert.True(code == 0, errors);
            Assert.All(["index.html", "booklet.pdf", "booklet.txt", "listing.txt", "listing.csv"], f => Assert.True(File.Exists(Path.Combine(folder, f)), f));
            Assert.Contains("booklet.pdf", output, StringComparison.Ordinal);
            var text = await File.ReadAllTextAsync(Path.Combine(folder, "booklet.txt"), TestContext.Current.CancellationToken);
            Assert.Contains("navy", text, StringComparison.Ordinal);
            Assert.DoesNotContain("deep water", text, StringComparison.OrdinalIgnoreCase);
            Assert.DoesNotContain(" in)", text, StringComparison.Ordinal);
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    [Fact]
    public async Task Ranges_hold_the_patterns_own()
    {
        var ranges = await Run.Json("adapt --demo --size M --ranges");
        Assert.Equal("M", ranges.GetProperty("size").GetString());
        Assert.InRange(21, Least("sequenceStitches"), Most("sequenceStitches"));
        Assert.InRange(Least("sequenceStitches"), Least("sequenceStitchesOtherHook"), 21);
        Assert.InRange(13.75, Least("gaugeStitches"), Most("gaugeStitches"));
        Assert.InRange(15.75, Least("gaugeRows"), Most("gaugeRows"));
        Assert.InRange(230, Least("ballMetres"), Most("ballMetres"));
        Assert.Equal(6, ranges.GetProperty("balls").GetInt32());

        double Least(string name) => ranges.GetProperty(name).GetProperty("least").GetDouble();
        double Most(string name) => ranges.GetProperty(name).GetProperty("most").GetDouble();
    }

    [Theory]
    [InlineData("--size M", "--sections")]
    [InlineData("--size Q --sections 5,4,3,5,4", "--size: There is no size Q in this pattern: choose one of XS, S, M")]
    [InlineData("--size M --sections 5,4,3", "--colours")]
    [InlineData("--size M --sections 5,4,x,5,4", "--sections[2]")]
    [InlineData("--size M --sections 5,4,-3,5,4", "--sections[2]")]
    [InlineData("--size M --sections 5,4,3,5,1001", "--sections[4]")]
    [InlineData("--size M --sections 5,4,3.5,5,4", "more repeats")]
    [InlineData("--size M --sections 5,4,3,5,4/5,4,3", "Repeat 2 has 3 colours and the first has 5")]
    [InlineData("--size M --sections 0,0,0,0,0", "--sections")]
    [InlineData("--size M --sections 31cm,25,19cm,30cm,25cm", "--sections[1]")]
    [InlineData("--size M --sections 5,4 --colours red", "--colours: 1 colours")]
    [InlineData("--size M --sections 5,4 --colours red,#12", "--colours[1]")]
    [InlineData("--size M --sections 5,4 --colours red,umbrage", "umbrage=#a14a2a")]
    [InlineData("--size M --sections 5,4 --colours red=#f00,red=#00f", "--colours")]
    [InlineData("--size M --sections 5,4,3,5,4 --gauge 13", "--gauge")]
    [InlineData("--size M --sections 5,4,3,5,4 --lambda 6.4", "--lambda")]
    [InlineData("--size M --sections 5,4,3,5,4 --lambda 64m", "--lambda")]
    [InlineData("--size M --sections 5,4,3,5,4 --hook big", "--hook")]
    [InlineData("--size M --sections 5,4,3,5,4 --ball-length 1m", "--ball-length")]
    [InlineData("--size M --sections 5,4,3,5,4 --language klingon", "--language")]
    [InlineData("--size M --ranges --gauge 13x15", "--gauge")]
    public async Task What_cannot_be_read_is_refused_with_its_option(string options, string place)
    {
        var (code, output, errors) = await Run.Dyepath($"adapt --demo {options}");
        Assert.Equal(2, code);
        Assert.Empty(output);
        Assert.Contains(place, errors, StringComparison.Ordinal);
    }

    /// <summary>Tapped as she met them, the colours say what their counts say.</summary>
    [Fact]
    public async Task A_yarn_by_taps_is_the_yarn_by_its_counts()
    {
        var once = string.Join(' ', new[] { ("navy", 6), ("teal", 4), ("tan", 3), ("olive", 5) }.Select(c => $"{c.Item2} {c.Item1}"));
        var file = Path.GetTempFileName();
        try
        {
            await File.WriteAllTextAsync(file, string.Join('\n', Enumerable.Repeat(once, 4)) + "\n3 navy", TestContext.Current.CancellationToken);
            var tapped = await Run.Json($"adapt --demo --size M --taps {file}");
            var counted = await Run.Json("adapt --demo --size M --sections 6,4,3,5/6,4,3,5/6,4,3,5/6,4,3,5 --colours navy,teal,tan,olive");
            // Where the taps began is no end of a colour, so that they may begin the sequence with another one.
            Assert.Equal(counted.GetProperty("verdict").GetString(), tapped.GetProperty("verdict").GetString());
            foreach (var told in new[] { counted, tapped })
            {
                var colours = told.GetProperty("changes").EnumerateArray().Select(c => c.GetProperty("to").GetString()!).Single(to => to.Contains("navy 6", StringComparison.Ordinal));
                Assert.Equal(["navy 6", "olive 5", "tan 3", "teal 4"], colours.Split(", ").Order(StringComparer.Ordinal));
            }
            var (code, _, errors) = await Run.Dyepath($"adapt --demo --size M --taps {file} --sections 6,4,3,5");
            Assert.Equal(2, code);
            Assert.Contains("not by both", errors, StringComparison.Ordinal);
            await File.WriteAllTextAsync(file, "navy teal tan", TestContext.Current.CancellationToken);
            (code, _, errors) = await Run.Dyepath($"adapt --demo --size M --taps {file}");
            Assert.Equal(2, code);
            Assert.Contains("cannot be told from these stitches yet", errors, StringComparison.Ordinal);
        }
        finally
        {
            File.Delete(file);
        }
    }
}
