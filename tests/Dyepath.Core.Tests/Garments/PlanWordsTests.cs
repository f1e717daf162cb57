using System.Globalization;
using System.Text.RegularExpressions;
using Dyepath.Core.Booklets;
using Dyepath.Core.Constructions;
using Dyepath.Core.Documents;
using Dyepath.Core.Edgings;
using Dyepath.Core.Fabrics;
using Dyepath.Core.Findings;
using Dyepath.Core.Garments;
using Dyepath.Core.Motifs;
using Dyepath.Core.Planning;
using Dyepath.Core.Projects;
using Dyepath.Core.Quantities;
using Dyepath.Core.Sizing;
using Dyepath.Core.Swatches;
using Dyepath.Core.Tests.Instructions;
using static Dyepath.Core.Tests.Garments.TestProjects;

namespace Dyepath.Core.Tests.Garments;

/// <summary>What the planner says: what is wrong, where, and what to do; what is poor, by how much, and what would help.</summary>
public sealed class PlanWordsTests
{
    private static readonly Project Up = Tideline.Directed(Direction.Up);

    private static readonly Plan UpPlan = Up.Planned();

    private static readonly Plan FreePlan = UpPlan with { Project = Up with { Fabric = Up.Fabric with { Keeping = ColourKeeping.Free } } };

    /// <summary>What is searched for before findings are written; tests of one class run one after another.</summary>
    private static readonly Dictionary<Plan, (DirectionPlan Chosen, SizeTargets Targets)> Searched = new(ReferenceEqualityComparer.Instance);

    /// <summary>What leaves a size further off than it is now mends nothing.</summary>
    [Fact]
    public void No_remedy_is_worse_than_what_it_is_to_mend()
    {
        var seen = 0;
        foreach (var garment in new[] { "bag", "cushion", "hat", "skirt", "pullover" })
        {
            foreach (var (stitch, direction) in from s in new[] { "sc", "linen" } from d in Enum.GetValues<Direction>() select (s, d))
            {
                var project = Begun(garment, "sc", even: true, direction);
                project = project with { Fabric = project.Fabric with { Stitch = FabricStitch.All.First(s => s.Id == stitch), SectionStitches = null } };
                if (GarmentPlanner.Plan(project).Plan is not { } plan)
                    continue;
                foreach (var finding in plan.Findings.Where(f => f.Place == "garment.grading"))
                {
                    var off = Regex.Matches(finding.Text, @"([0-9.]+) cm (?:over|under) its target").Select(m => double.Parse(m.Groups[1].Value, CultureInfo.InvariantCulture));
                    var then = Regex.Matches(finding.Text, @"furthest off of [a-z ]+ then: ([0-9.]+) cm").Select(m => double.Parse(m.Groups[1].Value, CultureInfo.InvariantCulture));
                    Assert.All(then, t => Assert.True(t <= off.DefaultIfEmpty(double.MaxValue).Max(), $"{garment}, {stitch}, {direction}: {finding.Text}"));
                    seen += then.Count();
                }
            }
        }
        Assert.True(seen > 0, "No remedy was offered.");
    }

    [Fact]
    public void What_needs_a_companion_yarn_says_so()
    {
        var alone = Tideline with { Companion = null };
        Refused(alone.Sleeved(pooled: false), "garment.sleeves.yarn",
            "Plain sleeves need a companion yarn: add one, or work the sleeves in the variegated yarn.");
        Refused(alone.Sleeved(pooled: true).With(g => g with { Grading = g.Grading with { SideBands = true } }), "garment.grading.sideBands",
            "Side bands need a companion yarn: add one, or do without bands.");
        Assert.True(Tideline.Sleeved(pooled: false).Tried().HasPlan);
        Assert.True(Tideline.With(g => g with { Grading = g.Grading with { SideBands = true } }).Tried().HasPlan);
    }

    [Fact]
    public void A_count_needs_a_direction() => Refused(
        Tideline.Fixed([], [new("M", "panelStitches", null, 83, "as made")]), "garment.direction",
        "A fixed count holds for one direction only: say whether the garment is worked up or sideways.");

    [Theory]
    [InlineData("Q", "width", 100.0, null, "size", "There is no size Q: choose one of XS, S, M, L, 1X, 2X, 3X, 4X, 5X.")]
    [InlineData("M", "width", null, 83, "length", "width is a length: give one, such as \"110 cm\".")]
    [InlineData("M", "panelRows", 100.0, null, "count", "panelRows is a count: give a whole number of at least 1.")]
    [InlineData("M", "panelRows", null, 0, "count", "panelRows is a count: give a whole number of at least 1.")]
    public void A_fixed_number_that_means_nothing_says_what_is_wanted(string size, string what, double? centimetres, int? count, string member, string text) =>
        Refused(
            Up.Fixed([], [new("M", "panelRows", null, 100, "as made"), new(size, what, centimetres is { } cm ? Cm(cm) : null, count, "?")]),
            $"sizes.overrides[1].{member}", text);

    [Fact]
    public void Only_the_base_size_is_locked() => Refused(
        Up.Fixed([new("L", "width", Cm(120), null, "as made")], []), "sizes.locked[0].size",
        "Only the base size, M, is locked as made; give L an override.");

    [Fact]
    public void A_number_of_another_garment_names_those_of_this_one() => Refused(
        Up.Fixed([], [new("M", "breadth", Cm(100), null, "?")]), "sizes.overrides[0].what",
        "breadth is no number of this garment: choose one of width, length, armholeDepth, neckWidth, sleeveWidth, sleeveLength, panelStitches, panelRows, sleeveStitches, sleeveRows.");

    /// <summary>The parity is the trade's: a spiral of linen stitch needs an odd count, joined rounds whole pairs.</summary>
    [Theory]
    [InlineData(Working.Spiral, 96, "Linen stitch in a spiral needs an odd number of stitches, so that every single crochet falls on a chain space: fix 95 or 97, not 96.")]
    [InlineData(Working.Rounds, 95, "Linen stitch in joined rounds needs an even number of stitches, whole pairs: fix 94 or 96, not 95.")]
    [InlineData(Working.RoundsTurned, 97, "Linen stitch in joined rounds needs an even number of stitches, whole pairs: fix 96 or 98, not 97.")]
    public void Linen_in_rounds_asks_for_its_parity(Working working, int stitches, string said)
    {
        var cowl = Patterns.LinenCowl(working, MotifKind.EvenSlant, 60);
        var reasons = (cowl with { Sizes = cowl.Sizes with { Overrides = [new("One size", "panelStitches", null, stitches, "as made")] } }).Tried().Reasons;
        Assert.Contains(reasons, r => r.Text.EndsWith(said, StringComparison.Ordinal));
        Assert.All(reasons, r => Assert.Equal("sizes", r.Place));
    }

    /// <summary>An inch either way is what a boxy garment is let off.</summary>
    [Theory]
    [InlineData(10, "over")]
    [InlineData(-10, "under")]
    public void A_poor_length_says_by_how_much_and_how_many_rounds_mend_it(int rows, string way)
    {
        var project = Up.Fixed([], [.. UpPlan.Sizes.Select(s => new FixedNumber(s.Name, "panelRows", null, s.Pieces[0].Rows + rows, "as made"))]);
        double Off(Plan of) => of.Sizes.Max(s => Math.Abs((s.Finished[GarmentMeasure.Length] - s.Target[GarmentMeasure.Length]).Centimetres));
        var plan = project.Planned();
        Assert.InRange(Off(plan), 4, 9);
        var said = Assert.Single(plan.Findings, f => f.Level == FindingLevel.Warning && f.Text.Contains(": length comes out ", StringComparison.Ordinal)).Text;
        Assert.Contains($" cm {way} their targets: ", said, StringComparison.Ordinal);
        // What it says to write brings what it says.
        var rounds = Regex.Match(said, @"work (\d+) rounds of edging at the hem: length is then off by ([\d.]+) cm at most");
        Assert.True(rounds.Success, said);
        var mended = project.With(g => g with
        {
            Edgings = g.Edgings.SetItem(0, g.Edgings[0] with { Rounds = int.Parse(rounds.Groups[1].Value, CultureInfo.InvariantCulture), Fewest = null, Most = null }),
        }).Planned();
        Assert.Equal(double.Parse(rounds.Groups[2].Value, CultureInfo.InvariantCulture), Off(mended), 0.06);
    }

    /// <summary>A count that was mistyped is named, and not what it does to others.</summary>
    [Fact]
    public void A_fixed_count_that_makes_next_to_nothing_is_named_itself()
    {
        var reasons = Tideline.Directed(Direction.Sideways).Fixed([], [new("M", "panelRows", null, 7, "a slip")]).Tried().Reasons;
        var first = reasons[0];
        Assert.Equal("sizes.overrides[0].count", first.Place);
        Assert.Matches(@"^(Worked sideways: )?Size M: 7 as fixed make a width of \d+\.\d cm where \d+\.\d cm are asked for: fix about \d+, or release it\.$", first.Text);
    }

    [Fact]
    public void Within_an_inch_nothing_is_said_and_a_poor_width_has_no_edging_to_mend_it()
    {
        Assert.DoesNotContain(UpPlan.Findings, f => f.Text.StartsWith("Size M: length", StringComparison.Ordinal));
        var plan = Up.Fixed([], [new("M", "panelStitches", null, UpPlan.Sizes[2].Pieces[0].Stitches + 10, "as made")]).Planned();
        var said = Assert.Single(plan.Findings, f => f.Text.Contains(": width comes out ", StringComparison.Ordinal) && f.Text.Contains(" cm over ", StringComparison.Ordinal)).Text;
        Assert.Matches(@"^Sizes? (.*, )?(.* and )?M[:, ]", said);
        Assert.Contains("work it sideways: furthest off of width and length: size ", said, StringComparison.Ordinal);
        Assert.DoesNotContain("rounds of edging", said, StringComparison.Ordinal);
    }

    /// <summary>380 m in 100 g is fine yarn by the published table (Sizing/YarnWeights).</summary>
    [Theory]
    [InlineData(2, false)]
    [InlineData(3, true)]
    [InlineData(null, false)]
    public void A_category_that_the_ball_contradicts_is_said(int? category, bool said)
    {
        var yarn = Tideline.Yarn with { Category = category, Ball = new(Length.FromMetres(190), Mass.FromGrams(50)) };
        var findings = (Tideline with { Yarn = yarn }).Planned().Findings.Where(f => f.Place == "yarn.category").Select(f => f.Text).ToArray();
        Assert.Equal(
            said ? ["The pattern names yarn weight category 3; 380 m in 100 g is usual for category 2 (fine): check the category, or the ball."] : Array.Empty<string>(),
            findings);
    }

    /// <summary>121 m in 100 g is the end of one category and the beginning of the next: the ball belongs to either (Sizing/YarnWeights).</summary>
    [Theory]
    [InlineData(4, false)]
    [InlineData(5, false)]
    [InlineData(3, true)]
    public void A_ball_between_two_categories_belongs_to_either(int category, bool said)
    {
        var yarn = Tideline.Yarn with { Category = category, Ball = new(Length.FromMetres(121), Mass.FromGrams(100)) };
        var findings = (Tideline with { Yarn = yarn }).Planned().Findings.Where(f => f.Place == "yarn.category").Select(f => f.Text).ToArray();
        Assert.Equal(
            said ? ["The pattern names yarn weight category 3; 121 m in 100 g is usual for category 4 (medium) or 5 (bulky): check the category, or the ball."] : Array.Empty<string>(),
            findings);
    }

    /// <summary>800 m in 100 g is lace, worked with 1.4 to 2.25 mm, and 150 m medium, with 5.5 to 6.5 mm, by the published table; a shawl of lace takes 4 mm.</summary>
    [Theory]
    [InlineData(800, 12, "A hook of 12 mm is far too large for this yarn: 800 m in 100 g is usually worked with 1.4 to 2.25 mm. Check the hook, and the ball's length and mass.")]
    [InlineData(150, 2.5, "A hook of 2.5 mm is far too small for this yarn: 150 m in 100 g is usually worked with 5.5 to 6.5 mm. Check the hook, and the ball's length and mass.")]
    [InlineData(800, 4, null)]
    [InlineData(150, 4, null)]
    [InlineData(150, 10, null)]
    public void A_hook_that_cannot_belong_to_the_yarn_is_said(double metres, double hook, string? said)
    {
        var project = Up with
        {
            Yarn = Up.Yarn with { Category = null, Ball = new(Length.FromMetres(metres), Mass.FromGrams(100)) },
            Fabric = Up.Fabric with { Swatch = Up.Fabric.Swatch with { HookMillimetres = hook } },
        };
        Assert.Equal(said is null ? Array.Empty<string>() : [said], project.Planned().Findings.Where(f => f.Place == "fabric.swatch.hook").Select(f => f.Text));
    }

    /// <summary>
    /// Up 3.3 cm, down again and 1 cm across is 7.7 cm, and the demo's stitch has 6.3 cm; at 4 rows it is 6 cm, and a single crochet of
    /// published gauges is 0.9 times as tall as wide.
    /// </summary>
    [Theory]
    [InlineData(3, "By the gauge a stitch is 1.0 cm wide and 3.3 cm tall; the 6.3 cm of yarn in it do not reach up, down and across. In this stitch 10 stitches usually go with about 11 rows. Check the swatch's stitches and rows, and the yarn that was measured.")]
    [InlineData(4, "By the gauge a stitch is 1.0 cm wide and 2.5 cm tall. In this stitch 10 stitches usually go with about 11 rows. Check the swatch's stitches and rows.")]
    [InlineData(8, null)]
    public void A_gauge_that_no_stitch_has_is_said(double rows, string? said)
    {
        var swatch = Up.Fabric.Swatch with { Worked = new Gauge(10, rows, Cm(10)), Blocked = null, Hung = null };
        var few = Up with { Sizes = Up.Sizes with { Sizes = ["S", "M", "L"] } };
        var result = (few with { Fabric = Up.Fabric with { Swatch = swatch, OtherSwatch = null } }).WithoutSleeves().Tried();
        Assert.True(result.Plan is not null, string.Join('\n', result.Reasons));
        // What follows from a wrong measure comes after it, and the figures say that they rest on it.
        Assert.Equal(said is not null, result.Plan.IsDoubtful);
        Assert.Equal(said is not null, result.Plan.Findings.FirstOrDefault(f => f.Level == FindingLevel.Warning)?.Place == "fabric.swatch.worked");
        Assert.Equal(said is null ? Array.Empty<string>() : [said], result.Plan.Findings.Where(f => f.Place == "fabric.swatch.worked").Select(f => f.Text));
    }

    /// <summary>Where there is no plan for it, the wrong measure is the first of the reasons.</summary>
    [Fact]
    public void A_wrong_gauge_is_named_before_what_it_keeps_from_being_planned()
    {
        var swatch = Up.Fabric.Swatch with { Worked = new Gauge(13, 3, Cm(10)), Blocked = null, Hung = null };
        var result = (Up with { Fabric = Up.Fabric with { Swatch = swatch, OtherSwatch = null } }).Tried();
        Assert.Null(result.Plan);
        Assert.Equal(("fabric.swatch.worked", FindingLevel.Fault), (result.Reasons[0].Place, result.Reasons[0].Level));
    }

    /// <summary>One sentence for all sizes that are off alike, and another for those that do not grow as they should.</summary>
    [Fact]
    public void Sizes_that_are_off_alike_are_said_together_and_a_leap_between_two_is_said()
    {
        var plan = Up.Fixed([], [.. UpPlan.Sizes.Take(3).Select(s => new FixedNumber(s.Name, "panelRows", null, s.Pieces[0].Rows - 10, "as made"))]).Planned();
        var names = plan.Sizes.Select(s => s.Name).ToArray();
        var off = plan.Sizes.Take(3).Select(s => Math.Abs((s.Finished[GarmentMeasure.Length] - s.Target[GarmentMeasure.Length]).Centimetres)).ToArray();
        Assert.Single(plan.Findings, f => f.Text.StartsWith(string.Create(CultureInfo.InvariantCulture,
            $"Sizes {names[0]}, {names[1]} and {names[2]}: length comes out {off.Min():0.0} to {off.Max():0.0} cm under their targets: "), StringComparison.Ordinal));
        Assert.Single(plan.Findings, f => f.Text.StartsWith($"Length is not graded evenly: from {names[2]} to {names[3]} it grows by ", StringComparison.Ordinal));
        Assert.DoesNotContain(UpPlan.Findings, f => f.Text.StartsWith("Length is not graded evenly", StringComparison.Ordinal));
    }

    [Fact]
    public void A_count_that_is_fixed_says_what_it_makes()
    {
        var plan = Up.Fixed([], [new("L", "panelStitches", null, 89, "tested so")]).Planned();
        var made = MotifWords.Of(plan.Sizes[3].Pieces[0].Motif);
        Assert.NotEqual(plan.Project.Garment.Motif, plan.Sizes[3].Pieces[0].Motif);
        foreach (var piece in new[] { "front", "back" })
            Assert.Single(plan.Findings, f => f.Place == "sizes" && f.Text == $"Size L: the {piece}'s 89 stitches, as fixed, make {made}.");
    }

    [Fact]
    public void A_narrow_piece_says_what_may_look_better()
    {
        var plan = Tideline.Sleeved(pooled: true).Directed(Direction.Sideways).Planned();
        // The sequence of the demo is 21 stitches.
        var narrow = string.Join(", ", plan.Sizes.Where(s => s.Pieces[2].RowStitches.Min() < 21).Select(s => s.Name));
        Assert.Single(plan.Findings, f => f.Place == "garment" && f.Text == $"The sleeve is narrower than one repeat of the colours in {narrow}: the motif will not be seen whole there; plain companion yarn may look better.");
    }

    /// <summary>Hands vary by about a per cent from row to row: under that, only counting holds a motif.</summary>
    [Theory]
    [InlineData(-0.009, 0.05, "0.9 %")]
    [InlineData(-0.05, 0.006, "0.6 %")]
    [InlineData(-0.05, 0.011, null)]
    [InlineData(-0.011, 0.05, null)]
    public void A_motif_that_forgives_little_is_to_be_counted(double tighter, double looser, string? said)
    {
        const string place = "fabric.keeping";
        var findings = Findings(FreePlan, p => p with { Forgives = new(tighter, looser) });
        if (said is null)
            Assert.DoesNotContain(findings, f => f.Place == place);
        else
        {
            Assert.Equal(
                $"The widest pieces forgive only {said} of yarn per stitch: even tension alone will not hold the motif; work counted.",
                Assert.Single(findings, f => f.Place == place).Text);
        }
        Assert.DoesNotContain(Findings(UpPlan, p => p with { Forgives = new(tighter, looser) }), f => f.Place == place);
    }

    [Fact]
    public void A_swatch_that_hung_the_other_way_is_told_worked_sideways_alone()
    {
        const string said = "The swatch was hung with its rows across the pull, and this garment hangs the other way: sizes follow the blocked gauge. Hang a swatch by its side to see how far it drops.";
        Assert.Contains(Tideline.Directed(Direction.Sideways).Planned().Findings, f => f is { Level: FindingLevel.Note, Place: "fabric.swatch.hung", Text: said });
        Assert.DoesNotContain(UpPlan.Findings, f => f.Place == "fabric.swatch.hung");
    }

    /// <summary>A sequence of 21 stitches at 6.3 cm is 132 cm: a ball of 2.6 m holds less than two.</summary>
    [Theory]
    [InlineData(2.6, true)]
    [InlineData(2.7, false)]
    public void A_ball_of_less_than_two_sequences_is_told(double metres, bool told)
    {
        Assert.Equal(1.323, (UpPlan.Sequence.YarnPerUnit * 21).Metres, 0.002);
        var plan = UpPlan with { Project = Up with { Yarn = Up.Yarn with { Ball = new(Length.FromMetres(metres), Up.Yarn.Ball.Mass) } } };
        Assert.Equal(told, Findings(plan, p => p).Any(f => f.Text == "A ball holds less than two sequences: every join may waste half of it."));
    }

    [Fact]
    public void A_ball_that_cannot_be_planned_says_why() => Refused(
        Tideline with { Yarn = Tideline.Yarn with { Ball = new(Length.FromMetres(1), Tideline.Yarn.Ball.Mass) } }, "yarn.ball.length",
        "A ball of 1 m cannot be planned: it is shorter than one sequence with its ends, or over 1000 would be needed. Check the ball and the yarn per stitch.");

    [Fact]
    public void An_edging_that_may_not_go_there_says_where_and_which_may() => Refused(
        Tideline.With(g => g with { Edgings = [new(EdgingPlace.Hem, "fringe", null)] }), "garment.edgings[0].edging",
        $"The fringe edging is not made for this edge (hem): choose one of {string.Join(", ", EdgingLibrary.At(EdgingPlace.Hem, open: false, children: false).Select(e => e.Id))}.");

    [Fact]
    public void A_garment_of_one_size_has_no_others_to_choose_from() => Refused(
        TestProjects.Begun("wrap", "sc", true, Direction.Up).Fixed([], [new("M", "width", Length.FromCentimetres(40), null, "as made")]), "sizes.overrides[0].size",
        "There is no size M: it has one size only, One size.");

    [Theory]
    [InlineData("women", "bust")]
    [InlineData("men", "chest")]
    public void Findings_say_the_word_of_the_size_table(string chart, string word)
    {
        var sizes = Tideline.Sizes with { Chart = chart };
        Assert.Equal(word, sizes.Words(BodyMeasure.Bust));
        Assert.Equal("upper arm", sizes.Words(BodyMeasure.UpperArm));
    }

    /// <summary>The size and measure named are those that lie furthest from what the sizes ask for.</summary>
    [Fact]
    public void What_is_furthest_off_is_named_with_its_size_and_measure()
    {
        var furthest = UpPlan.Chosen.Furthest!;
        var all = UpPlan.Sizes.SelectMany(s => new[] { GarmentMeasure.Width, GarmentMeasure.Length }.Select(m => (s.Name, Measure: m, Error: s.Finished[m] - s.Target[m])));
        var (size, measure, error) = all.MaxBy(e => Math.Abs(e.Error.Centimetres));
        Assert.Equal((size, measure), (furthest.Size, furthest.Measure));
        Assert.Equal(error.Centimetres, furthest.Error.Centimetres, 1e-6);
        Assert.Equal(furthest.Off, UpPlan.Chosen.WorstError);
    }

    [Theory]
    [InlineData(GarmentMeasure.Width, 3.55, Units.Centimetres, "size M, width, 3.6 cm too wide")]
    [InlineData(GarmentMeasure.Width, -3.55, Units.Centimetres, "size M, width, 3.6 cm too narrow")]
    [InlineData(GarmentMeasure.Length, 1, Units.CentimetresThenInches, "size M, length, 1.0 cm too long")]
    [InlineData(GarmentMeasure.SleeveLength, -2.54, Units.Inches, "size M, sleeve length, 1 in too short")]
    [InlineData(GarmentMeasure.ArmholeDepth, -0.9525, Units.Inches, "size M, armhole depth, ⅜ in too shallow")]
    [InlineData(GarmentMeasure.Height, 4.1275, Units.InchesThenCentimetres, "size M, height, 1⅝ in too tall")]
    [InlineData(GarmentMeasure.Height, 0, Units.Centimetres, "every size as asked")]
    public void How_far_something_is_off_is_said_in_one_way(GarmentMeasure measure, double centimetres, Units units, string words) =>
        Assert.Equal(words, new FitError("M", measure, Length.FromCentimetres(centimetres)).Say(units));

    [Fact]
    public void Why_gives_the_numbers_of_both_directions()
    {
        var plan = Tideline.With(g => g with { Grading = g.Grading with { UnevenWidths = true } }).Planned();
        var (up, sideways) = (plan.Options[0], plan.Options[1]);
        Assert.Equal(Direction.Sideways, plan.Direction);
        Assert.Equal(
            $"Worked sideways: {Numbers(sideways)}. {Forgives(sideways)} Worked up it would be {Numbers(up)}. The one whose furthest size is nearer is taken; a further count has to bring 0.5 cm, and what a count forgives is worth something too.",
            DirectionWords.Why(plan));
        Assert.Equal(
            $"Worked up, as asked: {Numbers(UpPlan.Options[0])}. {Forgives(UpPlan.Options[0])} Worked sideways it would be {Numbers(UpPlan.Options[1])}.", DirectionWords.Why(UpPlan));

        static string Numbers(DirectionOption option) => string.Create(CultureInfo.InvariantCulture,
            $"{(option.Counts.Length == 1 ? $"one stitch count ({option.Counts[0]}) for every size" : $"{option.Counts.Length} stitch counts ({string.Join(", ", option.Counts)})")}; furthest off of width and length: {option.Furthest!.Say(Units.Centimetres)}");

        static string Forgives(DirectionOption option) =>
            System.Text.RegularExpressions.Regex.Match(DirectionWords.Reason(option), @"(It forgives|They forgive) \d+\.\d % of yarn per stitch, all through, before the motif is lost\.$").Value;
    }

    [Fact]
    public void Where_nothing_serves_each_direction_says_what_it_tried()
    {
        var result = Tideline.With(g => g with { Motif = MotifKind.Bands }).Tried();
        Assert.Equal(2, result.Reasons.Length);
        foreach (var (reason, begins) in result.Reasons.Zip(["Worked up: No count from ", "Worked sideways: No count from "]))
        {
            Assert.Equal(FindingLevel.Fault, reason.Level);
            Assert.StartsWith(begins, reason.Fact, StringComparison.Ordinal);
            Assert.Contains($" makes {MotifWords.Of(MotifKind.Bands)}. Nearest: ", reason.Fact, StringComparison.Ordinal);
            // What would help is told with its own direction, once, and can be done.
            Assert.Contains(reason.Remedies, r => r is { Place: "garment.motif", Value: "\"argyle\"" });
            Assert.Equal($"{reason.Fact} {string.Join(' ', reason.Remedies.Select(r => r.Text))}", reason.Text);
            Assert.Distinct(reason.Remedies.Select(r => r.Text));
        }
        Assert.All(
            Up.With(g => g with { Motif = MotifKind.Bands }).Tried().Reasons, r => Assert.StartsWith("Worked up: ", r.Text, StringComparison.Ordinal));
    }

    /// <summary>A reason that holds whichever way it is worked is told once, and tells so.</summary>
    [Fact]
    public void What_stands_in_the_way_in_every_direction_is_said_once()
    {
        var result = Tideline.WithTop(t => t with { Neck = t.Neck with { Width = Cm(60) } }).Tried();
        Assert.Distinct(result.Reasons.Select(r => r.Fact));
        Assert.All(result.Reasons, r => Assert.Matches("^Worked (up|sideways|up or sideways): ", r.Fact));
        Assert.All(result.Reasons, r => Assert.StartsWith(r.Fact, r.Text, StringComparison.Ordinal));
    }

    /// <summary>Where only the other direction can be planned, that is what helps.</summary>
    [Fact]
    public void The_other_direction_is_a_press_away()
    {
        var wide = Tideline.With(g => g with { Direction = Direction.Up, Grading = g.Grading with { MostCounts = 1 } });
        var result = wide.Tried();
        Assert.Equal(PlanOutcome.Infeasible, result.Outcome);
        var remedy = result.Reasons[0].Remedies[0];
        Assert.Equal(("garment.direction", "\"sideways\""), (remedy.Place, remedy.Value));
        Assert.StartsWith("Work it sideways: there is a plan (furthest off of ", remedy.Text, StringComparison.Ordinal);
        Assert.NotNull(wide.With(g => g with { Direction = Direction.Sideways }).Tried().Plan);
    }

    /// <summary>By hand: what a head needs, less what the neck gives; under a centimetre is told, size by size.</summary>
    [Fact]
    public void A_neck_that_hardly_goes_over_the_head_is_told()
    {
        var told = 0;
        foreach (var width in new[] { 25.5, 26, 26.5, 27, 27.5, 28 })
        {
            var plan = Tideline.WithTop(t => t with { Neck = t.Neck with { Width = Cm(width) } }).Tried().Plan;
            if (plan is null)
                continue;
            var close = plan.Sizes.SelectMany(s => s.Worn, (s, f) => (s.Name, Fit: f)).Where(f => f.Fit.Body == BodyMeasure.Head
                && f.Fit.Garment >= f.Fit.Wanted && f.Fit.Garment < f.Fit.Wanted + Cm(1)).ToArray();
            var said = plan.Findings.Where(f => f.Text.Contains(" goes over the head with ", StringComparison.Ordinal)).ToArray();
            Assert.Equal(close.Length > 0, said.Length > 0);
            foreach (var note in said)
            {
                told++;
                Assert.Equal((FindingLevel.Note, "garment.neckWidth"), (note.Level, note.Place));
                Assert.EndsWith("For more, make the neck wider.", note.Text, StringComparison.Ordinal);
                Assert.All(close, c => Assert.Contains(c.Name, note.Text, StringComparison.Ordinal));
            }
        }
        Assert.True(told > 0, "none was close");
    }

    /// <summary>What it needs is told against what it is as made and what it stretches by: the same to spare by either sum.</summary>
    [Fact]
    public void Stretch_is_told_by_itself()
    {
        Assert.All(UpPlan.Sizes.SelectMany(s => s.Worn), f => Assert.Equal(f.Spare.Centimetres, (f.AsMade + f.Stretch - f.Needed).Centimetres, 6));
        var size = UpPlan.Sizes[0];
        var body = size.Worn.Single(f => f.Part == FitPart.Body);
        Assert.Equal((size.Finished[GarmentMeasure.Width], size.Body["bust"].Centimetres), (body.AsMade, Math.Round(body.Needed.Centimetres, 6)));
        var neck = size.Worn.Single(f => f.Part == FitPart.NeckOpening);
        Assert.Equal(neck.AsMade.Centimetres * 0.1, neck.Stretch.Centimetres, 6);
        Assert.Equal(size.Body["head"].Centimetres, neck.Needed.Centimetres, 6);
    }

    /// <summary>A child's and a man's pattern speak of a chest throughout, and a woman's of a bust.</summary>
    [Theory]
    [InlineData("women", "bust", "chest")]
    [InlineData("men", "chest", "bust")]
    [InlineData("child", "chest", "bust")]
    public void Rules_and_findings_call_the_girth_as_the_size_tables_do(string chart, string word, string other)
    {
        var begun = Bench.Starter.Of(Core.Constructions.Repertoire.All.First(k => k.Name == "pullover"), chart).First().Project();
        var plan = begun.Planned();
        Assert.Contains(plan.Rules, r => RuleWords.Of(r, plan.Project).Contains($" {word} plus ease", StringComparison.Ordinal));
        Assert.DoesNotContain(plan.Rules, r => RuleWords.Of(r, plan.Project).Contains($" {other} ", StringComparison.Ordinal));
        Assert.DoesNotContain(plan.Findings, f => f.Text.Contains($" {other}", StringComparison.Ordinal));
        Assert.Equal($"give more ease at the {word}", WornWords.Of(Mend.BustEase, begun.Sizes));
    }

    /// <summary>A fixed count is one count, whatever means the designer allows for the others; and one too small for its turn is refused.</summary>
    [Fact]
    public void A_fixed_count_is_worked_as_it_was_made()
    {
        var allowed = Up.With(g => g with { Grading = g.Grading with { AlternatingRows = true, HalfStitchTurn = true } });
        foreach (var stitches in new[] { 83, 84, 89, 94 })
        {
            var made = allowed.Fixed([], [.. UpPlan.Sizes.Select(s => new FixedNumber(s.Name, "panelStitches", null, stitches, "as made"))]).Planned();
            Assert.All(made.Sizes, s => Assert.Equal([stitches], s.Pieces[0].RowStitches));
        }
        var result = (Up with { Fabric = Up.Fabric with { TurnCost = -9 } }).Fixed([], [new("M", "panelStitches", null, 8, "as made")]).Tried();
        Assert.Contains(result.Reasons, r => r.Place == "fabric.turnCost" && r.Fact.EndsWith(
            "A turn takes back more yarn than a row of 8 stitches has: fix a larger count, or check the turn.", StringComparison.Ordinal));
    }

    /// <summary>A curve says what one count would cost, then two, and so on.</summary>
    [Fact]
    public void The_curve_begins_with_one_count()
    {
        Assert.All(UpPlan.Options, o => Assert.Equal(Enumerable.Range(o.Curve[0].Counts, o.Curve.Length), o.Curve.Select(c => c.Counts)));
        Assert.Equal(1, UpPlan.Options[0].Curve[0].Counts);
        Assert.All(UpPlan.Options.SelectMany(o => o.Curve), c => Assert.True(c.Stitches.Distinct().Count() <= c.Counts));
    }

    [Theory]
    [InlineData(PlanRule.Width, "larger of bust plus ease and, where the piece reaches the hip, hip plus hip ease")]
    [InlineData(PlanRule.Length, "back waist length plus what the garment hangs below the waist, hem edging included")]
    [InlineData(PlanRule.ArmholeDepth, "larger of the chart's armhole depth and half of upper arm plus ease")]
    [InlineData(PlanRule.NeckWidth, "The slit neck keeps the base size's width, a small step wider per size above it and narrower below; its edging is inside that width.")]
    [InlineData(PlanRule.SleeveWidth, "twice the armhole depth round")]
    [InlineData(PlanRule.SleeveLength, "centre back neck to cuff, less half of the panel's finished width, less what the sleeve is shorter by: the wider the dropped shoulder, the shorter the sleeve.")]
    [InlineData(PlanRule.Locked, "every other size is moved by as much as the base was; an override moves its own size alone.")]
    [InlineData(PlanRule.Gauge, "Finished measures use the hung gauge, or else the blocked one, or else the worked one; worked sideways, the blocked one")]
    [InlineData(PlanRule.Seam, "Hidden stitches and rows of each sewn edge, and the depth of edgings, are taken off before counts are chosen.")]
    public void The_rules_are_told(PlanRule rule, string said)
    {
        Assert.Contains(rule, UpPlan.Rules);
        Assert.Contains(said, RuleWords.Of(rule, UpPlan.Project.Garment.Shape), StringComparison.Ordinal);
    }

    [Fact]
    public void Every_rule_of_every_garment_is_told()
    {
        var shapes = Repertoire.All.Select(kind => StarterDocument.Of(kind).Garment.Shape).ToArray();
        Assert.All(shapes.SelectMany(s => s.Rules, RuleOf), text => Assert.EndsWith(".", text, StringComparison.Ordinal));
        // Rules that several garments follow, each in its own way.
        Assert.Equal(11, shapes.Where(s => s.Rules.Contains(PlanRule.Width)).Select(s => RuleOf(s, PlanRule.Width)).Distinct().Count());

        static string RuleOf(GarmentShape shape, PlanRule rule) => RuleWords.Of(rule, shape);
    }

    private static void Refused(Project project, string place, string text)
    {
        var result = project.Tried();
        Assert.Equal(PlanOutcome.BadInput, result.Outcome);
        Assert.Contains(result.Reasons, r => r.Level == FindingLevel.Fault && r.Place == place && r.Text == text);
    }

    private static Finding[] Findings(Plan plan, Func<PiecePlan, PiecePlan> change)
    {
        if (!Searched.TryGetValue(plan, out var searched))
        {
            Assert.True(SizeTargets.TryFind(plan.Project, plan.Construction, out var targets, out _));
            Searched.Add(plan, searched = (new DirectionPlanner(new Layout(SharedFabric.Of(plan), plan.Construction, plan.Direction), targets).Plan(), targets));
        }
        return [.. PlanFindings.Of(
            searched.Chosen, searched.Targets, [.. plan.Sizes.Select(s => s with { Pieces = [.. s.Pieces.Select(change)] })], null)];
    }
}
