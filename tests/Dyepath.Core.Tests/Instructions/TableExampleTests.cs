using Dyepath.Core.Booklets;
using Dyepath.Core.Fabrics;
using Dyepath.Core.Garments;
using Dyepath.Core.Instructions;
using Dyepath.Core.Planning;
using Dyepath.Core.Projects;
using Dyepath.Core.Swatches;
using static Dyepath.Core.Tests.Garments.TestProjects;

namespace Dyepath.Core.Tests.Instructions;

/// <summary>How a row is read from its table and how a strip is tried, counted by hand along colours of 6, 5, 7 and 4 stitches.</summary>
public sealed class TableExampleTests
{
    private static Plan Wrap(int stitches, int start = 0)
    {
        var project = Begun("wrap", "sc", even: true, Direction.Up);
        project = (project with { Fabric = project.Fabric with { TurnCost = 0, Keeping = ColourKeeping.Counted } }).With(g => g with
        {
            Edgings = [],
            Starts = g.Starts.SetItem("wrap", start),
        });
        return project.Fixed([], [new("One size", "panelStitches", null, stitches, "made so")]).Planned();
    }

    /// <summary>Of 65 stitches two repeats are 44, then 6, 5, 7 and 3 of 4; the row back begins with the one that is left.</summary>
    [Theory]
    [InlineData(65, 0, "6 stitches of 0 and 5 stitches of 1", "3 stitches of 3", "1 stitch of 3, 4 with the 3 stitches before the turn")]
    [InlineData(63, 0, "6 stitches of 0 and 5 stitches of 1", "1 stitch of 3", "3 stitches of 3, 4 with the one before the turn")]
    [InlineData(69, 0, "6 stitches of 0 and 5 stitches of 1", "3 stitches of 0", "3 stitches of 0, 6 with the 3 stitches before the turn")]
    [InlineData(66, 0, "6 stitches of 0 and 5 stitches of 1", "4 stitches of 3", null)]
    [InlineData(72, 0, "6 stitches of 0 and 5 stitches of 1", "6 stitches of 0", null)]
    [InlineData(65, 5, "1 stitch of 0 and 5 stitches of 1", "4 stitches of 0", "2 stitches of 0, 6 with the 4 stitches before the turn")]
    public void The_first_two_rows_are_told_as_their_colours_run(int stitches, int start, string begins, string ends, string? next)
    {
        var plan = Wrap(stitches, start);
        var context = new PatternContext(plan);
        var block = Assert.IsType<ForSizes>(Assert.Single(TableExample.Write(context)));
        var said = Say(plan, ((Paragraph)block.Blocks[1]).Text);
        Assert.StartsWith($"For instance chart 1, row 1: it begins with {Named(begins)}, the colours go on whole in their order, and the row ends with {Named(ends)}.", said, StringComparison.Ordinal);
        if (next is null)
            Assert.DoesNotContain("Row 2 begins", said, StringComparison.Ordinal);
        else
            Assert.Contains($" Row 2 begins with the rest of that colour: {Named(next)}.", said, StringComparison.Ordinal);

        // A number behind "of" is a colour's place in the sequence.
        string Named(string words) => System.Text.RegularExpressions.Regex.Replace(
            words, "of ([0-3])", m => $"of {Say(plan, Phrase.Of($"{context.Colour(m.Groups[1].Value[0] - '0')}"))}");
    }

    /// <summary>A shawl begins with rows of two colours: the first row that shows how the table is read has three, and the example takes that.</summary>
    [Fact]
    public void A_piece_that_begins_narrow_is_told_by_its_first_row_of_three_runs()
    {
        var plan = StarterDocument.Of(Core.Constructions.Repertoire.All.First(k => k.Name == "shawl")).Planned();
        var fabric = plan.Sizes[0].Pieces[0].Shape!.Parts[0].Fabric;
        var row = Enumerable.Range(0, fabric.Rows).First(r => RowRuns.Of(fabric, r).Length >= 3);
        Assert.True(row > 0, "The first row shows it: the case is not tried.");
        var runs = RowRuns.Of(fabric, row);
        var said = string.Join(' ', TableExample.Write(new PatternContext(plan)).Select(b => Say(plan, ((Paragraph)((ForSizes)b).Blocks[1]).Text)));
        Assert.StartsWith($"For instance chart 1, row {row + 1}: it begins with {runs[0].Units} stitch", said, StringComparison.Ordinal);
        Assert.Contains($"the row ends with {runs[^1].Units} stitch", said, StringComparison.Ordinal);
    }

    /// <summary>
    /// Six rows of 65 end 390 stitches on: 17 repeats and 16, so that the last of them begins at 325, 17 into its repeat, and ends 16 into
    /// one.
    /// </summary>
    [Fact]
    public void The_sixth_row_of_a_strip_begins_and_ends_so()
    {
        var plan = Wrap(65);
        var context = new PatternContext(plan);
        var said = string.Join('\n', TestStrip.Write(context).OfType<ForSizes>()
            .SelectMany(b => b.Blocks).OfType<Bullets>().SelectMany(b => b.Items)
            .Select(i => Say(plan, i)));
        // 17 is the last stitch of the third colour, from 11 to 18; 16 before the end are five of its seven.
        Assert.EndsWith($": begins with 1 of {Say(plan, Phrase.Of($"{context.Colour(2)}"))}, ends with 5 of {Say(plan, Phrase.Of($"{context.Colour(2)}"))}.", said, StringComparison.Ordinal);
        var stop = Say(plan, TestStrip.Write(context).OfType<Paragraph>().First().Text);
        Assert.Equal("Begin the piece and stop after 6 rows. It is right if row 6 begins and ends so:", stop);
    }

    private static string Say(Plan plan, Phrase phrase) => string.Concat(
        new Wording([.. plan.Sizes.Select(s => s.Name)], plan.Project.Edition with { Terms = Terms.Us, Size = null })
            .Say(phrase).Select(s => s.Text));
}
