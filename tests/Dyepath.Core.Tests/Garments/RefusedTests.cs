using System.Collections.Immutable;
using Dyepath.Core.Constructions;
using Dyepath.Core.Edgings;
using Dyepath.Core.Fabrics;
using Dyepath.Core.Findings;
using Dyepath.Core.Garments;
using Dyepath.Core.Planning;
using Dyepath.Core.Projects;
using Dyepath.Core.Sizing;
using Dyepath.Core.Tests.Constructions;
using static Dyepath.Core.Tests.Garments.TestProjects;

namespace Dyepath.Core.Tests.Garments;

/// <summary>What cannot be planned is refused at the field that asks for it, and the sentence says what to write instead.</summary>
public sealed class RefusedTests
{
    private static string Refused(Project project, string place)
    {
        var result = project.Tried();
        Assert.False(result.HasPlan);
        var reason = Assert.Single(result.Reasons, r => r.Place == place);
        Assert.Equal(FindingLevel.Fault, reason.Level);
        return reason.Text;
    }

    private static string Said(Project project, FindingLevel level, string place, string begins) =>
        Assert.Single(project.Planned().Findings, f => f.Level == level && f.Place == place && f.Text.StartsWith(begins, StringComparison.Ordinal)).Text;

    private static Project Started(string garment) => Begun(garment, "sc", true, Direction.Sideways);

    /// <summary>Two stitches share a row's yarn in linen stitch, so that a row cannot stop short between any two of them.</summary>
    [Theory]
    [InlineData("shawl")]
    [InlineData("bias-wrap")]
    public void What_is_shaped_is_not_worked_in_pairs(string garment)
    {
        var project = Started(garment);
        project = project with { Fabric = project.Fabric with { Stitch = FabricStitch.Linen, SectionStitches = null } };
        Assert.Equal(
            $"A {project.Garment.Shape.Name} is not shaped in linen stitch: choose a stitch of which each takes its own yarn.",
            Refused(project, "fabric.stitch"));
    }

    [Theory]
    [InlineData("alternatingRows")]
    [InlineData("sideBands")]
    [InlineData("unequalPanels")]
    public void Rows_that_are_shaped_go_without_other_means_of_fit(string field)
    {
        var project = Started("shawl").With(g => g with
        {
            Grading = g.Grading with
            {
                AlternatingRows = field == "alternatingRows",
                SideBands = field == "sideBands",
                UnequalPanels = field == "unequalPanels",
            },
        });
        Assert.Equal("The rows of a shawl are shaped, which does not go with this: leave it out.", Refused(project, $"garment.grading.{field}"));
    }

    [Fact]
    public void Chains_that_would_move_the_colours_are_of_a_companion_yarn() => Assert.Equal(
        "The rows of a shawl go on over chains of a companion yarn, since chains of the variegated yarn would move its colours: add one.",
        Refused(Started("shawl") with { Companion = null }, "companion"));

    [Fact]
    public void Inserts_are_of_a_companion_yarn()
    {
        var project = Started("vest").With(g => g with { Shape = (Vest)g.Shape with { Neck = new Neck(NeckForm.VInsert, null) } });
        var reason = Assert.Single((project with { Companion = null }).Tried().Reasons, r => r.Text.StartsWith("The inserts", StringComparison.Ordinal));
        Assert.Equal("The inserts of the neck are worked in a companion yarn: add one, or choose another form.", reason.Text);
    }

    [Fact]
    public void Side_bands_are_of_a_companion_yarn() => Assert.Equal(
        "Side bands need a companion yarn: add one, or do without bands.",
        Refused(Started("pullover").With(g => g with { Grading = g.Grading with { SideBands = true } }) with { Companion = null }, "garment.grading.sideBands"));

    [Theory]
    [InlineData("sideBands")]
    [InlineData("unequalPanels")]
    public void Fronts_that_mirror_each_other_stay_alike(string field)
    {
        var project = GarmentTrials.WithCompanion(Started("cardigan")).With(g => g with
        {
            Grading = g.Grading with { SideBands = field == "sideBands", UnequalPanels = field == "unequalPanels" },
        });
        Assert.Equal(
            "The fronts of a cardigan are alike and go without plain bands at their sides: leave this out.",
            Refused(project, $"garment.grading.{field}"));
    }



    [Fact]
    public void A_fixed_count_asks_for_a_direction()
    {
        var project = Started("pullover").With(g => g with { Direction = null })
            .Fixed([new FixedNumber("M", "panelStitches", null, 83, "as made")], []);
        Assert.Equal("A fixed count holds for one direction only: say whether the garment is worked up or sideways.", Refused(project, "garment.direction"));
    }

    [Fact]
    public void Edgings_are_chosen_among_those_that_there_are_with_rounds_that_they_can_have()
    {
        var known = string.Join(", ", EdgingLibrary.All.Select(e => e.Id));
        Assert.Equal($"There is no edging frill: choose one of {known}.", Refused(Hemmed(new(EdgingPlace.Hem, "frill", null)), "garment.edgings[0].edging"));
        Assert.Equal(
            "Give at least 4, as many as fewestRounds.",
            Refused(Hemmed(new(EdgingPlace.Hem, "sc", null) { Fewest = 4, Most = 3 }), "garment.edgings[0].mostRounds"));
        Assert.StartsWith(
            "The sc-rows edging is worked in rows, and the ends of this edge meet: choose one that is worked in rounds.",
            Refused(Hemmed(new(EdgingPlace.Hem, "sc-rows", null)), "garment.edgings[0].edging"), StringComparison.Ordinal);

        static Project Hemmed(EdgingChoice choice) => Started("pullover").With(g => g with { Edgings = [choice] });
    }

    [Fact]
    public void Sizes_are_chosen_among_those_of_a_chart_that_there_is()
    {
        var project = Started("pullover");
        var charts = string.Join(", ", SizeCharts.All.Select(c => c.Id));
        Assert.Equal($"There is no chart giants: choose one of {charts}.", Refused(project with { Sizes = project.Sizes with { Chart = "giants" } }, "sizes.chart"));
        Assert.Equal(
            "This garment is made to the body: name a chart, such as women, or give sizes of your own.",
            Refused(project with { Sizes = project.Sizes with { Chart = null, Sizes = [], Base = null } }, "sizes.chart"));
        Assert.StartsWith(
            "The chart women has no size Q: choose among XS, S, M, ",
            Refused(project with { Sizes = project.Sizes with { Chart = "women", Sizes = ["M", "Q"], Base = "M" } }, "sizes.names[1]"), StringComparison.Ordinal);
    }

    [Fact]
    public void Sizes_of_ones_own_that_lack_a_measure_are_named()
    {
        Assert.EndsWith(": add bust.", Refused(Own("one", "other"), "sizes.own", "Sizes one, other have no "), StringComparison.Ordinal);
        Assert.EndsWith(": add bust.", Refused(Own("one"), "sizes.own", "Size one has no "), StringComparison.Ordinal);

        static Project Own(params string[] names)
        {
            var project = Started("pullover");
            var measures = ImmutableSortedDictionary<string, Quantities.Length>.Empty;
            return project with
            {
                Sizes = project.Sizes with
                {
                    Chart = null,
                    Sizes = [],
                    Base = null,
                    Own = [.. names.Select((n, i) => new OwnSize(n, measures))],
                },
            };
        }

        static string Refused(Project project, string place, string begins) => Assert.Single(
            project.Tried().Reasons, r => r.Place == place && r.Text.StartsWith(begins, StringComparison.Ordinal) && r.Text.Contains("bust", StringComparison.Ordinal)).Text;
    }

    /// <summary>A conflict names its sizes, and the rules that cannot all be kept.</summary>
    [Theory]
    [InlineData("", false, false, false, false, "Size L has no count that makes the motif: choose another motif or hook.", "garment.grading")]
    [InlineData("", true, false, false, false, "Size L has no count with which each size comes out larger than the one before it.", "garment.grading")]
    [InlineData("", false, true, true, false,
        "Size L has no count with which none comes out under the largest body of its range and all share one lean.", "garment.grading")]
    [InlineData("M", true, false, false, true,
        "Size L has no count with which the counts fixed for M are kept, each size comes out larger than the one before it and at most 3 counts are used.", "sizes")]
    public void A_conflict_of_grading_names_the_rules_that_cannot_all_be_kept(
        string pin, bool rise, bool floor, bool oneLean, bool counts, string said, string place)
    {
        var rules = new GradingRules(3, Quantities.Length.Zero) { LeastRise = Cm(1) };
        var conflict = new GradingConflict([1], pin.Length > 0 ? [0] : [], rise, floor, counts, oneLean, IsProven: true);
        var finding = GradingWords.Say(conflict, new GradingProblem([Grade(80), Grade(90)], [], rules), ["M", "L"]);
        Assert.Equal((FindingLevel.Fault, place, said), (finding.Level, finding.Place, finding.Text));

        static GradingSize Grade(double target) => new(Cm(target));
    }

    /// <summary>What a further count, another hook and their like would bring, as a designer reads it.</summary>
    [Theory]
    [InlineData(GradingRemedyKind.MoreRounds, 6, "let the edging have up to 6 rounds, each size its own")]
    [InlineData(GradingRemedyKind.SideBands, 4, "allow side bands of up to 4 rows")]
    [InlineData(GradingRemedyKind.UnequalPanels, 2, "allow front and back to differ by up to 2 stitches")]
    [InlineData(GradingRemedyKind.MoreCounts, 1, "allow 1 count")]
    [InlineData(GradingRemedyKind.MoreCounts, 3, "allow 3 counts")]
    [InlineData(GradingRemedyKind.SeveralLeans, 0, "allow several leans in one pattern")]
    [InlineData(GradingRemedyKind.OtherHook, 450, "swatch with a 4.5 mm hook")]
    public void A_remedy_says_what_to_allow_and_how_far_off_it_leaves(object kind, int amount, string deed)
    {
        var remedy = new GradingRemedy((GradingRemedyKind)kind, amount, Cm(0.8), 0);
        Assert.Equal($"{deed} (furthest off of width then: 0.8 cm)", GradingWords.Say(remedy, GarmentMeasure.Width, Booklets.Units.Centimetres));
    }

    /// <summary>Of one colour no count makes diamonds: that is said first, and not only that no count was found.</summary>
    [Fact]
    public void A_yarn_of_one_colour_and_one_without_a_name_are_said()
    {
        var project = Started("wrap");
        var grey = project with { Yarn = project.Yarn with { Sections = [.. project.Yarn.Sections.Select(s => s with { Colour = new(90, 90, 90) })] } };
        Assert.Equal(
            "All sections have one colour: there is nothing to pool. Give each section the colour that it has in the yarn.",
            Refused(grey, "yarn.sections"));
        Assert.Equal(
            $"The yarn is still called “{StarterDocument.UnnamedYarn}”: put in its name and colourway, so that makers find it.",
            Said(project with { Yarn = project.Yarn with { Name = StarterDocument.UnnamedYarn } }, FindingLevel.Note, "yarn.name", "The yarn"));
        Assert.DoesNotContain((project with { Yarn = project.Yarn with { Name = "Tideline" } }).Planned().Findings, f => f.Place == "yarn.name");
    }

    /// <summary>A hook is held against the yarn's weight: one for lace is too small for a worsted yarn, one for rugs too large.</summary>
    [Theory]
    [InlineData(1, "A hook of 1 mm is far too small for this yarn: ")]
    [InlineData(20, "A hook of 20 mm is far too large for this yarn: ")]
    public void A_hook_that_cannot_belong_to_the_yarn_is_said(double hook, string begins)
    {
        var project = Started("wrap");
        project = project with { Fabric = project.Fabric with { Swatch = project.Fabric.Swatch with { HookMillimetres = hook } } };
        Assert.EndsWith(
            " mm. Check the hook, and the ball's length and mass.", Said(project, FindingLevel.Warning, "fabric.swatch.hook", begins), StringComparison.Ordinal);
    }
}
