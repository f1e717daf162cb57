using System.Text.RegularExpressions;
using Dyepath.Core.Booklets;
using Dyepath.Core.Instructions;
using Dyepath.Core.Making.Order;
using Dyepath.Core.Planning;
using Dyepath.Core.Projects;
using Dyepath.Core.Yarns;
using Xunit;

namespace Dyepath.Core.Tests.Making.Order;

public sealed class MakingOrderTests
{
    private static readonly Plan Tideline = GarmentPlanner.Plan(ProjectReader.Read(DemoProject.Utf8).Project!).Plan!;

    public static TheoryData<string> Sizes => [.. Tideline.Sizes.Select(s => s.Name)];

    [Theory]
    [MemberData(nameof(Sizes))]
    public void Every_row_of_every_piece_is_done_once_in_order(string size)
    {
        var order = MakingOrder.Of(Tideline, size);
        var pieces = order.Size.Pieces.SelectMany(p => Enumerable.Repeat(p, p.Copies)).ToArray();
        Assert.Equal(pieces, order.Parts.Where(p => p.Piece is not null).Select(p => p.Piece));
        foreach (var part in order.Parts)
        {
            Assert.Equal(Enumerable.Range(0, part.Rows), part.Steps.OfType<RowStep>().Select(r => r.Row));
            Assert.Equal(part.Piece?.Rows ?? part.Rows, part.Rows);
            Assert.All(Enumerable.Range(0, part.Rows), row => Assert.Equal(row, ((RowStep)part.Steps[part.StepOf(row)]).Row));
        }
    }

    /// <summary>The steps say nothing that the pattern for this size does not say, but for the rows that it asks to repeat.</summary>
    [Theory]
    [MemberData(nameof(Sizes))]
    public void The_words_are_the_pattern_s(string size)
    {
        var edition = Tideline.Project.Edition with { Size = size };
        var booklet = PatternWriter.Write(Tideline);
        var pattern = Regex.Replace(TextBooklet.Write(booklet, edition), @"\s+", " ");
        var wording = new Wording([size], edition);
        foreach (var step in MakingOrder.Of(Tideline, size).Parts.SelectMany(p => p.Steps).Where(s => wording.Text(s.Label) != "Begin"))
            Assert.Contains(Regex.Replace(wording.Text(step.Text), @"\s+", " ").Trim(), pattern, StringComparison.Ordinal);
    }

    /// <summary>Two ways are a choice, not two things to do one after the other.</summary>
    [Fact]
    public void Of_the_two_ways_to_begin_one_is_chosen()
    {
        var wording = new Wording(["M"], Tideline.Project.Edition);
        var front = MakingOrder.Of(Tideline, "M").Parts[0].Steps;
        Assert.Equal(["Begin", "Foundation", "Row 1 (RS)"], front.Take(3).Select(s => wording.Text(s.Label)));
        Assert.Equal(
            "Choose one way. Easy: slip knot at the beginning of K; extra chains: 0. No waste: slip knot 1.8 cm / ¾ in after the beginning of K. "
            + "Either way row 1 begins at D1, stitch 1 of deep water (D).",
            wording.Text(front[0].Text));
    }

    [Fact]
    public void With_a_foundation_of_companion_yarn_only_the_place_is_said()
    {
        var project = Tideline.Project;
        var plan = GarmentPlanner.Plan(project with { Companion = project.Companion! with { Uses = [.. project.Companion.Uses, CompanionUse.Foundation] } }).Plan!;
        var wording = new Wording(["M"], project.Edition);
        var begin = MakingOrder.Of(plan, "M").Parts[0].Steps[0];
        Assert.Matches("^Row 1 begins at ([A-Z])([0-9]+), stitch \\2 of [a-z ]+ \\(\\1\\)\\.$", wording.Text(begin.Text));
    }

    [Fact]
    public void Every_mark_is_made_once()
    {
        foreach (var part in MakingOrder.Of(Tideline, "M").Parts.Where(p => p.Piece is not null))
        {
            var wording = new Wording(["M"], Tideline.Project.Edition);
            var said = part.Steps.Select(s => wording.Text(s.Label)).Concat(part.Steps.OfType<RowStep>().SelectMany(r => r.Notes.Select(wording.Text)));
            Assert.Equal(part.Piece!.Marks.Count(), said.Count(words => words.StartsWith("Mark", StringComparison.Ordinal)));
        }
    }
}
