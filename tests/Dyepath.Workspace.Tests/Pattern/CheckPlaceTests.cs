using CsCheck;
using Dyepath.Core.Booklets;
using Dyepath.Core.Documents;
using Dyepath.Core.Findings;
using Dyepath.Core.Garments;
using Dyepath.Core.Instructions;
using Dyepath.Core.Planning;
using Dyepath.Core.Projects;
using Dyepath.Core.Quantities;
using Dyepath.Core.Reading;
using Dyepath.Workspace.Pattern;

namespace Dyepath.Workspace.Tests.Pattern;

/// <summary>Plans and texts are falsified, so that real findings name their places.</summary>
public sealed class CheckPlaceTests
{
    private static readonly Plan Plan = GarmentPlanner.Plan(ProjectReader.Read(DemoProject.Utf8).Project!, CancellationToken.None).Plan!;
    private static readonly Booklet Booklet = PatternWriter.Write(Plan);

    [Fact]
    public void A_false_number_of_the_plan_leads_to_the_section_that_prints_it()
    {
        Assert.Equal(["gauge"], Sections(Plan with { Sequence = Plan.Sequence with { YarnPerUnit = Plan.Sequence.YarnPerUnit * 2 } }, place => place == "yarnPerUnit"));
        var size = Plan.Sizes[0];
        var piece = size.Pieces[0];
        Assert.Equal(["pieces"], Sections(With(size with { Pieces = size.Pieces.SetItem(0, piece with { FoundationChains = 7 }) }), p => p.Contains("foundationChains", StringComparison.Ordinal)));
        Assert.Equal(["materials"], Sections(With(size with { Yarn = size.Yarn with { BallsSafe = 1 } }), p => p.Contains("ballsSafe", StringComparison.Ordinal)));
        Assert.Equal(["sizes"], Sections(With(size with { Finished = size.Finished.SetItem(GarmentMeasure.Width, Length.FromCentimetres(5)) }), p => p.Contains("finished", StringComparison.Ordinal)));
        Assert.Equal("fabric.swatch.yarnUsed", CheckPlace.DocumentPlaceOf("yarnPerUnit"));
    }

    [Theory]
    [InlineData("Balls to buy: ", "Balls to buy: 9", "materials")]
    [InlineData("Row 2 (", "Row 3 (", "pieces")]
    [InlineData("## Hem", "## Neck", "edgings")]
    public void A_false_line_of_the_text_leads_to_its_section(string words, string wrong, string section)
    {
        var text = TextBooklet.Write(Booklet, Plan.Project.Edition);
        var at = text.IndexOf(words, StringComparison.Ordinal);
        var found = PatternCheck.Text(Plan, text.Remove(at, words.Length).Insert(at, wrong));
        Assert.Contains(section, found.Select(f => CheckPlace.SectionOf(f, Booklet)));
    }

    [Theory]
    [InlineData(Terms.Us)]
    [InlineData(Terms.Uk)]
    public void Sections_are_known_by_their_titles_in_both_terms(Terms terms)
    {
        foreach (var section in Booklet.Sections)
        {
            var title = new Wording(Booklet, Booklet.Edition with { Terms = terms }).Text(section.Title).ToUpperInvariant();
            Assert.Equal(section.Id, CheckPlace.SectionOf(new Finding(FindingLevel.Fault, $"pattern: {title}, somewhere", ""), Booklet));
        }
    }

    /// <summary>They may lead to findings, never to a fall.</summary>
    [Fact]
    public void Own_words_that_imitate_the_pattern_do_not_stop_the_check() => Gen.Select(Gen.Int[0, 7], Gen.Int[0, 27].Select(i => Imitations[i]).Array[1, 8]).Holds(
        (at, lines) =>
        {
            var words = Plan.Project.Words.SetItem(WordPlaces.All[at], string.Join('\n', lines));
            var found = PatternCheck.Steps(Plan with { Project = Plan.Project with { Words = words } })[1]();
            Assert.All(found, finding => Assert.StartsWith("pattern", finding.Place, StringComparison.Ordinal));
        },
        seed: 43, cases: 30);

    private static readonly string[] Imitations =
    [
        "PIECES", "------", "EDGINGS", "=====", "## Front", "## Hem", "    ", "  a  b  c", "Sizes: ", "Sizes: A (B, C", "Foundation: Ch 99999999999999999999.",
        "Row 1 (RS): Sc in next 3 sts, turn. (99999999999999999999 sts)", "Row 2: Repeat row 1.", "From row 2: Repeat rows 0 and 3 until you have (, , ) rows.",
        "10 cm / 4 in", "1 (2, 3 cm / ½ (⅛) in", "Balls to buy: ×.", "Mark: stitch (of", "Chart 1: 0 stitches", "Pick up 3 in every 4", "Length, m / yd  7", "[Picture: The colour sequence 5 of (X)]",
        "Easy: slip knot 3 cm into Q", "Work: 0 rounds", "Pick up: ", "16 stitches and 20 rows over 10 cm.", "Yarn in 20 stitches: x.", "Chart: 7, row 900",
    ];

    private static Plan With(SizePlan size) => Plan with { Sizes = Plan.Sizes.SetItem(0, size) };

    private static IEnumerable<string?> Sections(Plan plan, Func<string, bool> place)
    {
        var found = PatternCheck.Steps(plan)[0]();
        return found.Where(f => place(f.Place)).Select(f => CheckPlace.SectionOf(f, Booklet)).Distinct();
    }
}
