using System.Text.Json.Nodes;
using System.Text.RegularExpressions;

namespace Dyepath.Cli.Tests;

/// <summary><c>dyepath errata</c>, its text read by a reader of its own.</summary>
public sealed partial class ErrataCommandTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("dyepath-").FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    /// <summary>A line told of some sizes: what it was and is; either may be missing.</summary>
    private sealed record Told(string Place, string Label, string Sizes, string Was, string Now);

    [Fact]
    public async Task It_says_what_changed_in_which_sizes_and_whom_it_touches()
    {
        var old = await Kept("old.json", d => d["edition"] = Edition(1, "2026-09-01"));
        var young = await Kept("new.json", d =>
        {
            d["edition"] = Edition(2, "2026-12-01");
            d["words"] = new JsonObject { ["care"] = "Dry it flat." };
        });
        var (code, text, errors) = await Run.Dyepath($"errata {old} {young}");
        Assert.True(code == 0, errors);
        Assert.StartsWith("My pullover: errata\n", text, StringComparison.Ordinal);
        Assert.Contains("\nEdition 2, 2026-12-01\n", text, StringComparison.Ordinal);
        Assert.Contains("\nCompared with: Edition 1, 2026-09-01.\n", text, StringComparison.Ordinal);
        Assert.Equal(["No row, seam or edging differs: what you have made stays as it is.", "Everybody: see Care and cautions."], Touched(text));
        Assert.Equal([new("Care and cautions", "In the designer's words", "All sizes", "", "Dry it flat.")], Changes(text));
    }

    /// <summary>Two patterns under one number cannot be told apart by whoever reads of it.</summary>
    [Fact]
    public async Task Two_patterns_under_one_number_are_warned_of()
    {
        var old = await Kept("old.json", d => d["edition"] = Edition(1, "2026-09-01"));
        var young = await Kept("new.json", d =>
        {
            d["edition"] = Edition(1, "2026-09-01");
            d["words"] = new JsonObject { ["care"] = "Dry it flat." };
        });
        Assert.Equal("Both call themselves edition 1: give the corrected pattern the next number before anybody gets it.", (await Run.Dyepath($"errata {old} {young}")).Errors.Trim());
        Assert.Empty((await Run.Dyepath($"errata {old} {old}")).Errors);
    }

    /// <summary>What the text tells is what the JSON has, change by change.</summary>
    [Fact]
    public async Task The_text_and_the_JSON_say_the_same()
    {
        var old = await Kept("old.json", _ => { });
        var young = await Kept("new.json", d => d["garment"]!["belowWaist"] = "20 cm");
        var (_, text, _) = await Run.Dyepath($"errata {old} {young}");
        var told = Changes(text);
        Assert.NotEmpty(told);
        var json = await Run.Json($"errata {old} {young}");
        var listed = json.GetProperty("changes").EnumerateArray().Select(c => (Was: c.GetProperty("was").GetString() ?? "", Now: c.GetProperty("now").GetString() ?? "")).ToArray();
        foreach (var change in told)
            Assert.Contains(listed, c => Shortened(change.Was, c.Was) && Shortened(change.Now, c.Now));

        // Long words are cut to the sentences that differ; a label that differs stands before them.
        static bool Shortened(string told, string whole) =>
            told.Trim('…', ' ') is var words && (whole.Contains(words, StringComparison.Ordinal) || words.EndsWith(": " + whole, StringComparison.Ordinal))
                && (told.Length > 0 || whole.Length == 0);
    }

    [Fact]
    public async Task The_same_document_touches_nobody_and_a_file_is_written_whole()
    {
        var same = await Kept("same.json", _ => { });
        var file = Path.Combine(_folder, "errata.txt");
        var (code, output, _) = await Run.Dyepath($"errata {same} - --out {file}", await File.ReadAllTextAsync(same, TestContext.Current.CancellationToken));
        Assert.Equal((0, file), (code, output.Trim()));
        var text = await File.ReadAllTextAsync(file, TestContext.Current.CancellationToken);
        Assert.Contains("Nobody: nothing that a maker reads differs.", text, StringComparison.Ordinal);
        Assert.Empty(Changes(text));
        Assert.Equal(2, Directory.GetFiles(_folder).Length);
    }

    [Theory]
    [InlineData("errata", "Required argument 'OLD' missing")]
    [InlineData("errata - -", "Only one of the two can be read from standard input")]
    [InlineData("errata nowhere.json {same}", "nowhere.json: It could not be read")]
    [InlineData("errata {same} {bad}", "{bad}: edition.date (line ")]
    [InlineData("errata {bad} {same}", "{bad}: edition.date (line ")]
    [InlineData("errata {same} -x", "-x: It is not an option of this command")]
    [InlineData("errata {same} {same} --out {folder}/missing/errata.txt", "--out: The file cannot be written")]
    [InlineData("errata {same} {same} --json --out e.txt", "--out: The file is text")]
    public async Task What_is_given_amiss_says_where(string command, string words)
    {
        var same = await Kept("same.json", _ => { });
        var bad = await Kept("bad.json", d => d["edition"] = new JsonObject { ["date"] = "2026-02-30" });
        string Filled(string text) => text.Replace("{same}", same, StringComparison.Ordinal)
            .Replace("{bad}", bad, StringComparison.Ordinal).Replace("{folder}", _folder, StringComparison.Ordinal);
        var (code, output, errors) = await Run.Dyepath(Filled(command));
        Assert.Equal(2, code);
        Assert.DoesNotContain("errata\n", output, StringComparison.Ordinal);
        Assert.Contains(Filled(words), errors, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_design_that_is_not_feasible_is_named_with_its_document()
    {
        var same = await Kept("same.json", _ => { });
        var none = await Kept("none.json", d => d["garment"]!["motif"] = "bands");
        var (code, output, _) = await Run.Dyepath($"errata {none} {same}");
        Assert.Equal(3, code);
        Assert.StartsWith($"No design is feasible as {none} stands.", output, StringComparison.Ordinal);
    }

    private async Task<string> Kept(string name, Action<JsonNode> change)
    {
        var document = JsonNode.Parse((await Run.Dyepath("new --json")).Output)!;
        change(document);
        var path = Path.Combine(_folder, name);
        await File.WriteAllTextAsync(path, document.ToJsonString(new() { WriteIndented = true }), TestContext.Current.CancellationToken);
        return path;
    }

    private static JsonObject Edition(int number, string date) => new() { ["number"] = number, ["date"] = date };

    private static string[] Touched(string text) =>
        [.. Section(text, "WHOM IT TOUCHES").Where(l => l.StartsWith("- ", StringComparison.Ordinal)).Select(l => l[2..])];

    private static Told[] Changes(string text)
    {
        var told = new List<Told>();
        var (place, label) = ("", "");
        foreach (var line in Section(text, "WHAT CHANGED"))
        {
            if (line.StartsWith("## ", StringComparison.Ordinal))
                (place, label) = (line[3..], "");
            else if (Both().Match(line) is { Success: true } both)
                told.Add(new Told(place, label, both.Groups["sizes"].Value, both.Groups["was"].Value, both.Groups["now"].Value));
            else if (One().Match(line) is { Success: true } one && one.Groups["how"].Value is var how)
                told = how == "now" ? [.. told[..^1], told[^1] with { Now = one.Groups["said"].Value }]
                    : [.. told, new Told(place, label, one.Groups["sizes"].Value, how == "new" ? "" : one.Groups["said"].Value, how == "new" ? one.Groups["said"].Value : "")];
            else if (!line.StartsWith("- And ", StringComparison.Ordinal))
                label = line.TrimEnd(':');
        }
        return [.. told];
    }

    /// <summary>Lines below a title, what was wrapped put together again.</summary>
    private static IEnumerable<string> Section(string text, string title) =>
        text.Replace("\n    ", " ", StringComparison.Ordinal).Split('\n').SkipWhile(l => l != title).Skip(2)
            .TakeWhile(l => l != "WHAT CHANGED").Where(l => l.Length > 0);

    [GeneratedRegex("^- (?<sizes>All sizes|Sizes? [^:]*): was (?<was>.*); now (?<now>.*)$")]
    private static partial Regex Both();

    [GeneratedRegex("^- (?<sizes>All sizes|Sizes? [^:]*), (?<how>was|now|new|falls away): (?<said>.*)$")]
    private static partial Regex One();
}
