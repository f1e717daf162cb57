using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using Dyepath.Core.Booklets;
using Dyepath.Core.Findings;
using Dyepath.Core.Instructions;
using Dyepath.Core.Planning;
using Dyepath.Core.Reading;
using Dyepath.Core.Tests.Constructions;
using Dyepath.Core.Tests.Garments;

namespace Dyepath.Core.Tests.Instructions;

/// <summary>What the technical check notices of mistakes planted in a text, kind by kind; docs/technical-check.md is written from it.</summary>
public sealed class CheckCatchesTests
{
    /// <summary>Places of each kind; a kind that a text has not has fewer.</summary>
    private const int Places = 25;

    /// <summary>Share of all mistakes that reading back alone is to notice.</summary>
    private const double Noticed = 0.95;

    private static readonly Lazy<(Plan Plan, string Text)[]> Texts = new(() =>
    [
        .. new[]
        {
            Patterns.Named("tunic in three sizes"), Patterns.Named("double crochet"), Patterns.Named("cowl in rounds"),
            GarmentTrials.WithCompanion(GarmentTrials.Of("vest")), GarmentTrials.WithCompanion(GarmentTrials.Of("cardigan")), GarmentTrials.Of("skirt"),
            GarmentTrials.Of("shawl"),
        }.Select(p => (p with { Edition = p.Edition with { Terms = Terms.Us } }).Planned())
            .Select(plan => (plan, TextBooklet.Write(PatternWriter.Write(plan), plan.Project.Edition))),
    ]);

    [Fact]
    public void Planted_mistakes_are_noticed_and_the_page_about_the_check_is_up_to_date()
    {
        var table = new StringBuilder();
        var (all, noticed) = (0, 0);
        foreach (var kind in TextFaults.All)
        {
            var (tried, caught) = (0, 0);
            for (var seed = 0; seed < Places; seed++)
            {
                var (plan, text) = Texts.Value[seed % Texts.Value.Length];
                if (kind.Make(text, new Random(seed)) is not { } wrong)
                    continue;
                tried++;
                if (!Found(plan, wrong).IsEmpty)
                    caught++;
            }
            (all, noticed) = (all + tried, noticed + caught);
            table.Append(CultureInfo.InvariantCulture, $"| {kind.Name} | {tried} | {caught} |\n");
        }
        table.Append(CultureInfo.InvariantCulture, $"| **all {TextFaults.All.Count} kinds** | **{all}** | **{noticed}** |\n");
        Assert.True(noticed >= Noticed * all, table.ToString());
        RepositoryFile.IsUpToDate("docs/technical-check.md", Page(table.ToString()));
    }

    /// <summary>A text that was handed out is the document's line by line, or each line that is not is named.</summary>
    [Fact]
    public void Of_a_text_that_is_handed_out_every_changed_line_is_named()
    {
        foreach (var (kind, i) in TextFaults.All.Select((kind, i) => (kind, i)).Where(k => Extent.IsWhole || k.i % 4 == 0))
        {
            var (plan, text) = Texts.Value[i % Texts.Value.Length];
            if (kind.Make(text, new Random(i)) is { } wrong)
                Assert.Contains(PatternCheck.Delivered(plan, wrong).Findings, f => f.Place.StartsWith("text", StringComparison.Ordinal));
        }
    }

    [Theory]
    [InlineData(Language.English, Terms.Uk, Units.Inches, Hand.Left, null)]
    [InlineData(Language.English, Terms.Us, Units.Centimetres, Hand.Right, "M")]
    [InlineData(Language.German, Terms.Us, Units.CentimetresThenInches, Hand.Right, null)]
    [InlineData(Language.Spanish, Terms.Us, Units.Centimetres, Hand.Left, "S")]
    public void A_text_that_is_handed_out_is_known_by_its_language_terms_units_hand_and_size(Language language, Terms terms, Units units, Hand hand, string? size)
    {
        var plan = Texts.Value[0].Plan;
        var edition = new Edition(terms, units, hand, size) { Language = language };
        var (taken, findings) = PatternCheck.Delivered(plan, TextBooklet.Write(PatternWriter.Write(plan), edition));
        Assert.Equal(edition, taken);
        Assert.Empty(findings);
    }

    [Fact]
    public void A_pattern_in_another_language_is_read_in_English()
    {
        var demo = Patterns.Named("tunic in three sizes");
        Assert.Empty(PatternCheck.Run((demo with { Edition = demo.Edition with { Language = Language.German, Size = "M" } }).Planned()));
    }

    [Theory]
    [InlineData("")]
    [InlineData("no booklet\n")]
    [InlineData("Sizes: \n\nPIECES\n------\n## \nRow 1: ")]
    public void What_is_no_booklet_is_said_to_differ(string text) => Assert.NotEmpty(PatternCheck.Delivered(Texts.Value[0].Plan, text).Findings);

    private static ImmutableArray<Finding> Found(Plan plan, string text)
    {
        try
        {
            return PatternCheck.Text(plan, text);
        }
        catch (FormatException unreadable)
        {
            return [new Finding(FindingLevel.Fault, "text", unreadable.Message)];
        }
    }

    private static string Page(string table) => $"""
        # The technical check

        `dyepath verify project.json`, and *Check* on the page Pattern, go over a pattern as a technical editor does:

        1. **The plan's numbers by a second route** (`Dyepath.Core/Checking`): widths, rows, openings, seams, edgings, yarn and balls are worked out
           anew from the document, by code that shares nothing with the planner but the document's own types.
        2. **The written text, read back** (`Dyepath.Core/Reading`): in both terms and all units, rows counted from their words, every pick-up
           followed, tables, row starts, pairs of units, sides, stitches, beginnings and ends held against the plan and against rules of the trade.
        3. **A text that was handed out**, `dyepath verify project.json --text booklet.txt`: its language, terms, units, hand and size are found from
           its lines; every line that is not the document's is named with what stands in its place. German and Spanish are compared, not read back:
           they are made of the same phrases and numbers as the English text (docs/languages.md).

        Not checked: words of the designer's own; pages and pictures, whose text is the booklet's; whether a sentence is well said.

        ## What it notices

        Mistakes planted in the text of seven patterns (a tunic, a pullover in double crochet, a cowl in rounds, a vest, a cardigan, a skirt, a
        shawl), {Places} places a kind with a seed, one at a time; a kind that a text does not have is tried in fewer. The last column is what the second
        step notices by itself; the third notices all of them, since it compares letters. What slips through the second are words in sentences of
        advice and headings.

        | kind of mistake | planted | noticed by reading back |
        | --- | --- | --- |
        {table.TrimEnd('\n')}

        Written by `DYEPATH_REWRITE=1 dotnet tests/Dyepath.Core.Tests/bin/Release/net10.0/Dyepath.Core.Tests.dll -method "*up_to_date*"`.

        """;
}
