using System.Collections.Immutable;
using Dyepath.Core.Booklets;
using Dyepath.Core.Edgings;
using Dyepath.Core.Garments;
using Dyepath.Core.Instructions;
using Dyepath.Core.Planning;
using Dyepath.Core.Projects;
using Dyepath.Core.Tests.Constructions;
using static Dyepath.Core.Tests.Garments.TestProjects;

namespace Dyepath.Core.Tests.Instructions;

/// <summary>What has to be right before the first stitch: each sentence, with its numbers by hand.</summary>
public sealed class BeforeSectionTests
{
    private static Project Wrap(params int[] sections)
    {
        var project = Begun("wrap", "sc", even: true, Direction.Up).With(g => g with { Edgings = [] });
        return project with
        {
            Yarn = project.Yarn with
            {
                Sections = [.. project.Yarn.Sections.Take(sections.Length)],
                Counted = [project.Yarn.Counted[0] with { Repeats = [.. Enumerable.Repeat(sections.ToImmutableArray(), 3)] }],
            },
            Fabric = project.Fabric with { SectionStitches = [.. sections] },
        };
    }

    private static Dictionary<string, string> Said(Project project)
    {
        var plan = project.Planned();
        var edition = plan.Project.Edition with { Terms = Terms.Us, Units = Units.Centimetres, Size = null };
        var say = new Wording([.. plan.Sizes.Select(s => s.Name)], edition);
        var steps = Assert.IsType<Steps>(Assert.Single(BeforeSection.Write(new PatternContext(plan)).Blocks));
        return steps.Items.ToDictionary(i => Say(i.Label), i => Say(i.Text));

        string Say(Phrase phrase) => string.Concat(say.Say(phrase).Select(s => s.Text));
    }

    /// <summary>Two sequences, and 3.5 % of them more or fewer, which hands still hold; one stitch at least.</summary>
    [Theory]
    [InlineData(6, 5, 7, 4, "42 to 46")]
    [InlineData(20, 20, 20, 10, "135 to 145")]
    [InlineData(2, 3, 2, 3, "19 to 21")]
    public void Two_sequences_are_counted(int a, int b, int c, int d, string counts) => Assert.Equal(
        $"In the middle of the swatch, along its rows, count the stitches that 2 whole sequences of the colours take: {counts}. Where there are more, each stitch takes too little yarn: take a larger hook. Where there are fewer: a smaller one.",
        Said(Wrap(a, b, c, d))["Count"]);

    [Fact]
    public void Which_way_the_yarn_runs_is_told_where_it_shows()
    {
        var project = Wrap(6, 5, 7, 4);
        string[] order = [.. new PatternContext(project.Planned()).Key.Select(k => k.Symbol)];
        Assert.Equal(
            $"The colours come off the ball as {order[0]}, {order[1]}, {order[2]}, {order[3]} and so on. If yours come as {order[0]}, {order[3]}, {order[2]}, {order[1]} and so on, work from the ball's other end.",
            Said(project)["Way of the yarn"]);
        Assert.Contains("Way of the yarn", Said(Wrap(6, 5, 11)).Keys);
        // Two colours come by turns from either end.
        Assert.DoesNotContain("Way of the yarn", Said(Wrap(11, 11)).Keys);
    }

    [Fact]
    public void As_many_markers_are_told_as_stay_in_the_work_until_it_is_sewn()
    {
        Assert.Equal("1 at a time: one for the row at hand.", Said(Wrap(6, 5, 7, 4))["Markers"]);
        // A border has four corners, each with a marker of its own.
        Assert.Equal(
            "5 at a time: one for the row at hand and one for each corner of an edging.",
            Said(Wrap(6, 5, 7, 4).With(g => g with { Edgings = [new(EdgingPlace.Border, "sc", 3)] }))["Markers"]);
        // Of front and back: a neck begins and ends, and armholes begin at either side at one height.
        var top = Begun("pullover", "sc", even: true, Direction.Up)
            .With(g => g with { Edgings = [], Grading = g.Grading with { UnevenWidths = true, SeveralLeans = true } });
        Assert.Equal("9 at a time: one for the row at hand and one for each place that is to be marked.", Said(top)["Markers"]);
        var vest = GarmentTrials.WithCompanion(Begun("vest", "sc", even: true, Direction.Sideways))
            .With(g => g with { Edgings = [], Grading = g.Grading with { UnevenWidths = true, SeveralLeans = true } });
        Assert.EndsWith("one for the row at hand and one to hold the row's loop while a chain is made.", Said(vest)["Markers"].Replace(", one for each place that is to be marked", "", StringComparison.Ordinal), StringComparison.Ordinal);
        Assert.Equal("1 at a time: one for the round at hand.", Said(Patterns.Named("cowl in rounds").With(g => g with { Edgings = [] }))["Markers"]);
    }

    [Fact]
    public void Tails_and_joins_are_told_and_seams_only_where_there_are_any()
    {
        var wrap = Said(Wrap(6, 5, 7, 4));
        Assert.Equal("Leave 15 cm wherever you begin, cut or join, to weave in at the end.", wrap["Tails"]);
        Assert.Equal(
            "Where a ball ends, and at a knot, cut both ends at the same place of the colours and leave 15 cm of each beyond it. Work the last stitch of the old end until only its last loop is to be drawn through, and draw the new end through: the next stitch goes on at the place of the colours where the old end stopped.",
            wrap["Joins"]);
        Assert.Equal(
            "The picture hangs on this count, the size on the gauge. Where one hook does not give both, keep the count, and make the size whose measurements your gauge gives.",
            wrap["Which comes first"]);
        Assert.EndsWith(" Seams are sewn with lengths of their own.", Said(Begun("cushion", "sc", even: true, Direction.Up))["Tails"], StringComparison.Ordinal);
    }
}
