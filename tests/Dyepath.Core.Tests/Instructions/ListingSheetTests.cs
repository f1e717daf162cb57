using Dyepath.Core.Booklets;
using Dyepath.Core.Constructions;
using Dyepath.Core.Garments;
using Dyepath.Core.Instructions;
using Dyepath.Core.Planning;
using Dyepath.Core.Projects;
using static Dyepath.Core.Tests.Garments.TestProjects;

namespace Dyepath.Core.Tests.Instructions;

/// <summary>What a buyer reads before she buys says what the plan holds, of every garment.</summary>
public sealed class ListingSheetTests
{
    public static TheoryData<string> Kinds => [.. Repertoire.All.Select(k => k.Name)];

    [Theory]
    [MemberData(nameof(Kinds))]
    public void Every_size_its_yarn_and_its_measures_are_told(string kind)
    {
        var plan = StarterDocument.Of(Repertoire.All.First(k => k.Name == kind)).Planned();
        var (text, cells) = (TextOf(plan), Table(SpreadsheetOf(plan)));
        var sizes = cells.Single(c => c[0] == "Size");
        Assert.Equal(plan.Sizes.Select(s => s.Name), sizes.Skip(1));
        var balls = cells.Single(c => c[0] == "Balls to buy").Skip(1).Select(int.Parse).ToArray();
        Assert.Equal(plan.Sizes.Select(s => s.Yarn.BallsSafe), balls);
        Assert.All(cells.SkipWhile(c => c[0] != "Size"), line => Assert.Equal(sizes.Length, line.Length));
        foreach (var size in plan.Sizes)
        {
            foreach (var (name, value) in cells.SkipWhile(c => c[0] != "Size").Skip(1).Select(c => (c[0], c[1 + plan.Sizes.IndexOf(size)])))
                Assert.Contains($"{size.Name} {value}", text.Split('\n').First(l => l.StartsWith(name + ": ", StringComparison.Ordinal)), StringComparison.Ordinal);
        }
        Assert.Contains($"Hook: {FormattableString.Invariant($"{plan.Project.Fabric.Swatch.HookMillimetres:0.##}")} mm\n", text, StringComparison.Ordinal);
    }

    /// <summary>Girths by hand: what the body measures and what is finished differ by the ease that is told beside them.</summary>
    [Fact]
    public void Body_finished_measure_and_ease_add_up()
    {
        var plan = (Tideline with { Edition = Tideline.Edition with { Units = Units.Centimetres } }).Planned();
        var cells = Table(SpreadsheetOf(plan));
        double[] Row(string name) => [.. cells.Single(c => c[0].StartsWith(name, StringComparison.Ordinal)).Skip(1).Select(c => double.Parse(c, System.Globalization.CultureInfo.InvariantCulture))];
        var (body, made, ease) = (Row("To fit bust"), Row("Finished bust"), Row("Ease at the bust"));
        Assert.All(Enumerable.Range(0, body.Length), i => Assert.Equal(made[i], body[i] + ease[i], 1e-9));
    }

    [Fact]
    public void A_copy_of_one_size_lists_that_size()
    {
        var plan = (Tideline with { Edition = Tideline.Edition with { Size = "2X" } }).Planned();
        var cells = Table(SpreadsheetOf(plan));
        Assert.Equal(["Size", "2X"], cells.Single(c => c[0] == "Size"));
        Assert.Equal(plan.Sizes.Single(s => s.Name == "2X").Yarn.BallsSafe.ToString(System.Globalization.CultureInfo.InvariantCulture), cells.Single(c => c[0] == "Balls to buy")[1]);
    }

    /// <summary>Nothing says of the pattern's only size what is true of another; the words of the sample stay away.</summary>
    [Fact]
    public void A_copy_of_one_size_describes_that_size_and_its_hand()
    {
        var text = TextOf((Tideline with { Edition = Tideline.Edition with { Size = "2X", Hand = Hand.Left } }).Planned());
        Assert.Contains("size 2X.", text, StringComparison.Ordinal);
        Assert.DoesNotContain("size M", text, StringComparison.Ordinal);
        Assert.DoesNotContain("Sample", text, StringComparison.Ordinal);
        Assert.Contains("Written for: left-handed makers\n", text, StringComparison.Ordinal);
    }

    /// <summary>Whoever offers it is told first that the yarn of an example was not measured; the demo's is.</summary>
    [Fact]
    public void What_is_not_measured_is_not_offered()
    {
        var plan = StarterDocument.Of(Repertoire.All[0]).Planned();
        Assert.Contains("not measured yet", TextOf(plan).Split('\n').Take(4).Last(l => l.Length > 0), StringComparison.Ordinal);
        Assert.StartsWith("Attention,", SpreadsheetOf(plan), StringComparison.Ordinal);
        Assert.DoesNotContain("not measured yet", TextOf(Tideline.Planned()), StringComparison.Ordinal);
    }

    [Fact]
    public void Yarn_is_not_taken_for_the_garment()
    {
        var names = Table(SpreadsheetOf(Tideline.Planned())).Select(c => c[0]).ToArray();
        Assert.Single(names, n => n.StartsWith("Length", StringComparison.Ordinal));
        Assert.Contains(names, n => n.StartsWith("Yarn, length", StringComparison.Ordinal));
        Assert.Contains(names, n => n.StartsWith("Yarn, weight", StringComparison.Ordinal));
    }

    /// <summary>What a spreadsheet would reckon with is text (OWASP, CSV injection, from memory).</summary>
    [Theory]
    [InlineData("=1+1", "'=1+1")]
    [InlineData("@cmd", "'@cmd")]
    [InlineData("+9", "'+9")]
    [InlineData("-9", "'-9")]
    [InlineData("a, \"b\"", "\"a, \"\"b\"\"\"")]
    public void A_title_is_no_formula(string title, string cell) =>
        Assert.StartsWith($"Pattern,{cell}\r\n", SpreadsheetOf((Tideline with { Title = title }).Planned()), StringComparison.Ordinal);

    [Theory]
    [InlineData("tunic", null, "intermediate")]
    [InlineData("vest", "square", "complex")]
    public void What_is_shaped_within_the_motif_is_complex(string kind, string? neck, string level)
    {
        var start = StarterDocument.Of(Repertoire.All.First(k => k.Name == kind));
        Assert.True(neck is null || start.Garment.Shape is Vest);
        Assert.Equal(level, ListingSheet.Skill(start.Planned()));
    }

    private static string TextOf(Plan plan) => ListingSheet.Text(plan, PatternWriter.Write(plan));

    private static string SpreadsheetOf(Plan plan) => ListingSheet.Spreadsheet(plan, PatternWriter.Write(plan));

    /// <summary>RFC 4180, read by its own rules.</summary>
    private static string[][] Table(string text)
    {
        var lines = new List<string[]>();
        var (line, cell, quoted) = (new List<string>(), new System.Text.StringBuilder(), false);
        for (var i = 0; i < text.Length; i++)
        {
            if (quoted && text[i] == '"' && i + 1 < text.Length && text[i + 1] == '"')
                cell.Append(text[i++]);
            else if (text[i] == '"')
                quoted = !quoted;
            else if (!quoted && text[i] == ',')
                End();
            else if (!quoted && text[i] == '\r')
            {
                End();
                lines.Add([.. line]);
                line.Clear();
                i++;
            }
            else
                cell.Append(text[i]);
        }
        return [.. lines];

        void End()
        {
            line.Add(cell.ToString());
            cell.Clear();
        }
    }
}
