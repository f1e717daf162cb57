using System.Collections.Concurrent;
using System.Globalization;
using System.Text.RegularExpressions;
using Dyepath.Core.Booklets;
using Dyepath.Core.Checking;
using Dyepath.Core.Edgings;
using Dyepath.Core.Instructions;
using Dyepath.Core.Planning;
using Dyepath.Core.Quantities;
using Dyepath.Core.Reading;
using Dyepath.Core.Swatches;
using Dyepath.Core.Tests.Garments;

namespace Dyepath.Core.Tests.Instructions;

/// <summary>The written pattern read back: whole, and with one number changed.</summary>
public partial class PatternCheckTests(ITestOutputHelper output)
{
    private static readonly ConcurrentDictionary<string, Plan> Plans = new();

    public static TheoryData<string> Names() => Patterns.Data();

    [Theory]
    [MemberData(nameof(Names))]
    public void Every_edition_reads_back_without_a_disagreement(string name)
    {
        var plan = PlanOf(name);
        var booklet = PatternWriter.Write(plan);
        foreach (var terms in Enum.GetValues<Terms>())
        {
            foreach (var units in Enum.GetValues<Units>())
            {
                foreach (var size in new[] { null, booklet.Sizes[0], booklet.Sizes[^1] })
                {
                    var edition = plan.Project.Edition with { Terms = terms, Units = units, Size = size };
                    Assert.Empty(PatternCheck.Text(plan, TextBooklet.Write(booklet, edition)));
                }
            }
        }
    }

    /// <summary>Every edging at the hem of a tunic or, where it is made for none, round a wrap, with an edging gauge of its own.</summary>
    [Fact]
    public void Every_edging_reads_back_and_agrees_with_the_plan()
    {
        foreach (var edging in EdgingLibrary.All)
        {
            var (name, place) = edging.Places.Contains(EdgingPlace.Hem) ? ("tunic in three sizes", EdgingPlace.Hem) : ("blanket", EdgingPlace.Border);
            // Neither has an edge that is open.
            if (edging.InRows || !edging.AllowedAt(place, children: false))
                continue;
            var project = Patterns.Named(name).With(g => g with { Edgings = [new(place, edging.Id, null)] });
            var plan = (project with { Fabric = project.Fabric with { Edging = new Gauge(21, 24, Length.FromCentimetres(10)) } }).Planned();
            Assert.Empty(PlanCheck.Verify(plan));
            var text = TextBooklet.Write(PatternWriter.Write(plan), plan.Project.Edition);
            Assert.Empty(PatternCheck.Text(plan, text));
            Assert.Equal(edging.Relaxed < 1, text.Contains("Hem at rest", StringComparison.Ordinal));
            Assert.Equal(edging.Relaxed < 1, text.Contains("long; edged it is about", StringComparison.Ordinal));
            Assert.Equal(edging.ElasticShare is not null, text.Contains("Elastic to cut: About", StringComparison.Ordinal));
        }
    }

    /// <summary>A casing's widths and its elastic, each in the size table, the edging's words or both: changed, they are noticed.</summary>
    [Theory]
    [InlineData("The edge is ")]
    [InlineData("edged it is about ")]
    [InlineData("at rest and stretches to ")]
    [InlineData("Elastic to cut: About ")]
    public void A_changed_width_of_an_edging_is_noticed(string before)
    {
        var plan = Patterns.Named("tunic in three sizes").With(g => g with { Edgings = [new(EdgingPlace.Hem, "elastic-casing", null)] }).Planned();
        var text = TextBooklet.Write(PatternWriter.Write(plan), plan.Project.Edition with { Size = "M" });
        Assert.Empty(PatternCheck.Text(plan, text));
        var changed = Regex.Replace(text, Regex.Escape(before).Replace("\\ ", @"\s+", StringComparison.Ordinal) + @"\d", m => m.Value + "1");
        Assert.NotEqual(text, changed);
        Assert.NotEmpty(PatternCheck.Text(plan, changed));
    }

    /// <summary>Lines whose numbers decide what the maker does.</summary>
    [Theory]
    [InlineData("tunic in three sizes", 11)]
    [InlineData("worked up", 12)]
    [InlineData("alternating rows", 13)]
    [InlineData("double crochet", 14)]
    [InlineData("linen stitch", 15)]
    [InlineData("blanket", 16)]
    [InlineData("cowl in rounds", 17)]
    [InlineData("V with inserts", 18)]
    public void Every_changed_stitch_row_chain_and_pick_up_is_noticed(string name, int seed)
    {
        var plan = PlanOf(name);
        var text = TextBooklet.Write(PatternWriter.Write(plan), plan.Project.Edition);
        var edgings = text.IndexOf("\nEDGINGS\n", StringComparison.Ordinal);
        var (changed, missed) = Mutate(
            plan, text, seed, Extent.Of(16, 80),
            (line, at) => PieceNumbers().IsMatch(line) && (edgings < 0 || at < edgings) || EdgingNumbers().IsMatch(line));
        Assert.True(changed > 0);
        Assert.Empty(missed);
    }

    [Fact]
    public void Most_changed_numbers_anywhere_are_noticed()
    {
        var plan = PlanOf("tunic in three sizes");
        var text = TextBooklet.Write(PatternWriter.Write(plan), plan.Project.Edition);
        var (changed, missed) = Mutate(plan, text, 7, Extent.Of(40, 200), (_, _) => true);
        output.WriteLine($"{changed - missed.Count} of {changed} changed numbers noticed; not: {string.Join(" | ", missed.Take(40))}");
        Assert.True(missed.Count <= changed / 10, string.Join("\n", missed));
    }

    /// <summary>Changes one whole number at a time by one to three, at random places with a seed.</summary>
    private static (int Changed, List<string> Missed) Mutate(Plan plan, string text, int seed, int times, Func<string, int, bool> where)
    {
        var random = new Random(seed);
        var numbers = Number().Matches(text).Where(m => where(LineOf(text, m.Index), m.Index)).ToArray();
        var missed = new List<string>();
        for (var i = 0; i < times; i++)
        {
            var at = numbers[random.Next(numbers.Length)];
            var other = int.Parse(at.Value, CultureInfo.InvariantCulture) + random.Next(1, 4);
            var changed = string.Concat(
                text.AsSpan(0, at.Index), other.ToString(CultureInfo.InvariantCulture), text.AsSpan(at.Index + at.Length));
            if (PatternCheck.Text(plan, changed).IsEmpty)
                missed.Add($"{at.Value} → {other} in “{LineOf(text, at.Index).Trim()}”");
        }
        return (times, missed);
    }

    /// <summary>With the lines that continue it.</summary>
    private static string LineOf(string text, int index)
    {
        var start = text.LastIndexOf('\n', index) + 1;
        while (start > 1 && text.AsSpan(start).StartsWith("    ", StringComparison.Ordinal))
            start = text.LastIndexOf('\n', start - 2) + 1;
        var end = text.IndexOf('\n', index);
        while (end >= 0 && text.AsSpan(end + 1).StartsWith("    ", StringComparison.Ordinal))
            end = text.IndexOf('\n', end + 1);
        return text[start..(end < 0 ? text.Length : end)];
    }

    private static Plan PlanOf(string name) => Plans.GetOrAdd(name, n => Patterns.Named(n).Planned());

    [GeneratedRegex(@"(?<![\d.\p{L}½-])\d+(?![\d.½])")]
    private static partial Regex Number();

    [GeneratedRegex(@"^(Foundation: Ch|(Row|Round) \d+( \((RS|WS)\))?: |From (row|round) \d+|Rows \d+ to \d+: Decrease|Decrease .*numbered rows: |Plain row: |Count: |Mark: |Chart: |Easy: )")]
    private static partial Regex PieceNumbers();

    [GeneratedRegex("^(Pick up: |Work: |- .*pick up )")]
    private static partial Regex EdgingNumbers();
}
