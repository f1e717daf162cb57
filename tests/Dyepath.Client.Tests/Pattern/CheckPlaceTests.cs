using Dyepath.Client.Pattern;
using Dyepath.Core.Garments;
using Dyepath.Core.Instructions;
using Dyepath.Core.Instructions.Reading;
using Dyepath.Core.Instructions.Writing;
using Dyepath.Core.Projects;
using Dyepath.Core.Quantities;

namespace Dyepath.Client.Tests.Pattern;

/// <summary>Plans and texts are falsified, so that real findings name their places.</summary>
public sealed class CheckPlaceTests
{
    private static readonly Plan Plan = GarmentPlanner.Plan(ProjectReader.Read(DemoProject.Utf8).Project!, CancellationToken.None).Plan!;
    private static readonly Booklet Booklet = PatternWriter.Write(Plan);

    [Fact]
    public void A_false_number_of_the_plan_leads_to_the_section_that_prints_it()
    {
        Assert.Equal(["gauge"], Sections(Plan with { YarnPerUnit = Plan.YarnPerUnit * 2 }, place => place == "yarnPerUnit"));
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

    private static Plan With(SizePlan size) => Plan with { Sizes = Plan.Sizes.SetItem(0, size) };

    private static IEnumerable<string?> Sections(Plan plan, Func<string, bool> place)
    {
        var found = PatternCheck.Steps(plan)[0]();
        return found.Where(f => place(f.Place)).Select(f => CheckPlace.SectionOf(f, Booklet)).Distinct();
    }
}
