using System.Collections.Immutable;
using Dyepath.Core.Checking;
using Dyepath.Core.Edgings;
using Dyepath.Core.Fabrics;
using Dyepath.Core.Findings;
using Dyepath.Core.Garments;
using Dyepath.Core.Measuring;
using Dyepath.Core.Motifs;
using Dyepath.Core.Planning;
using Dyepath.Core.Quantities;
using Dyepath.Core.Sizing;
using Dyepath.Core.Swatches;
using Dyepath.Core.Yarns;
using static Dyepath.Core.Tests.Garments.TestProjects;

namespace Dyepath.Core.Tests.Garments;

public sealed class BoxyTopTests
{
    private static readonly Plan Demo = Tideline.Planned();

    [Fact]
    public void The_demo_has_nine_sizes_both_options_and_no_disagreement()
    {
        Assert.Equal(9, Demo.Sizes.Length);
        Assert.Equal([Direction.Up, Direction.Sideways], Demo.Options.Select(o => o.Direction));
        // Worked up, no few counts serve nine sizes as a customer accepts them.
        Assert.Equal([false, true], Demo.Options.Select(o => o.Feasible));
        Assert.Empty(PlanCheck.Verify(Demo));
        Assert.NotEmpty(DirectionWords.Why(Demo));
        Assert.NotEmpty(Demo.Rules);
    }

    [Fact]
    public void One_count_and_a_hem_of_each_sizes_own_rounds_bring_the_demo_within_half_a_centimetre()
    {
        Assert.Single(Demo.Sizes.SelectMany(s => s.Pieces.Take(2)).Select(p => p.Stitches).Distinct());
        Assert.All(Demo.Sizes, s => Assert.Equal(s.Target[GarmentMeasure.Length].Centimetres, s.Finished[GarmentMeasure.Length].Centimetres, 0.5));
        Assert.True(Demo.Sizes.Select(s => s.Edgings.Single(e => e.Where == EdgingPlace.Hem).Rounds).Distinct().Count() > 3);
        var widths = Demo.Sizes.Select(s => s.Finished[GarmentMeasure.Width]).ToArray();
        Assert.All(widths.Zip(widths.Skip(1)), w => Assert.True(w.Second > w.First));
    }

    [Theory]
    [InlineData(Direction.Up)]
    [InlineData(Direction.Sideways)]
    public void Each_direction_can_be_asked_for_and_agrees_with_its_check(Direction direction)
    {
        var plan = Tideline.Directed(direction).Planned();
        Assert.Equal(direction, plan.Direction);
        Assert.Empty(PlanCheck.Verify(plan));
    }

    /// <summary>Common practice, no source: a wide slit neck opens 23 to 30 cm, an armhole in size M is about 19 cm (7½ in) deep.</summary>
    [Fact]
    public void Openings_are_what_the_trade_makes()
    {
        Assert.All(Demo.Sizes, s => Assert.InRange(s.Finished[GarmentMeasure.NeckWidth].Centimetres, 23, 30));
        Assert.InRange(Demo.Sizes.Single(s => s.Name == "M").Finished[GarmentMeasure.ArmholeDepth].Centimetres, 17, 21);
    }

    [Fact]
    public void Sleeves_shorten_as_the_dropped_shoulder_widens()
    {
        foreach (var size in Demo.Sizes)
        {
            var rule = size.Body["centreBackNeckToCuff"].Centimetres - size.Finished[GarmentMeasure.Width].Centimetres / 4
                - Tideline.Top().Sleeves!.ShorterBy.Centimetres;
            Assert.Equal(rule, size.Target[GarmentMeasure.SleeveLength].Centimetres, 0.6);
        }
        var wide = Tideline.WithTop(t => t with { BustEase = new Ease(null, null, Cm(30)) }).Planned();
        Assert.All(wide.Sizes.Zip(Demo.Sizes), s =>
            Assert.True(s.First.Target[GarmentMeasure.SleeveLength] < s.Second.Target[GarmentMeasure.SleeveLength]));
    }

    [Fact]
    public void Hips_count_only_where_the_piece_reaches_them()
    {
        var broad = Tideline.WithTop(t => t with { HipEase = Cm(40) });
        var cropped = broad.WithTop(t => t with { BelowWaist = t.HipBelowWaist - Cm(1) });
        Assert.All(
            broad.Planned().Sizes, s =>
                Assert.Equal((s.Body["hip"] + Cm(40)).Centimetres, s.Target[GarmentMeasure.Width].Centimetres, 1e-6));
        Assert.All(
            cropped.Planned().Sizes, s =>
                Assert.Equal((s.Body["bust"] + Cm(12.5)).Centimetres, s.Target[GarmentMeasure.Width].Centimetres, 1e-6));
    }

    [Fact]
    public void Armholes_follow_the_larger_of_chart_and_upper_arm()
    {
        var roomy = Tideline.WithTop(t => t with { UpperArmEase = Cm(40) }).Planned();
        Assert.All(roomy.Sizes, s => Assert.Equal(
            (s.Body["upperArm"] + Cm(40)).Centimetres / 2, s.Target[GarmentMeasure.ArmholeDepth].Centimetres, 1e-6));
        var bare = Tideline.WithTop(t => t with { UpperArmEase = Cm(-20) }).Planned();
        Assert.All(bare.Sizes, s => Assert.Equal(s.Body["armholeDepth"], s.Target[GarmentMeasure.ArmholeDepth]));
    }

    [Fact]
    public void Sideways_follows_the_blocked_gauge_and_says_so()
    {
        var plan = Tideline.Directed(Direction.Sideways).Planned();
        Assert.Equal(Tideline.Fabric.Swatch.Blocked!.StitchWidth, plan.StitchWidth);
        Assert.Contains(plan.Findings, f => f.Place == "fabric.swatch.hung");
        Assert.Equal(Tideline.Fabric.Swatch.Hung!.StitchWidth, Tideline.Directed(Direction.Up).Planned().StitchWidth);
    }

    [Fact]
    public void Edgings_count_in_the_finished_measures()
    {
        var plain = Tideline.With(g => g with { Edgings = [] }).Directed(Direction.Up);
        var edged = plain.With(g => g with { Edgings = [new(EdgingPlace.Hem, "sc", 12)] });
        Assert.Empty(PlanCheck.Verify(edged.Planned()));
        // Twelve rounds are about 8 cm: the panels are that much shorter and the garment is not.
        foreach (var (without, with) in plain.Planned().Sizes.Zip(edged.Planned().Sizes))
        {
            Assert.True(without.Pieces[0].Rows - with.Pieces[0].Rows >= 8);
            Assert.Equal(without.Finished[GarmentMeasure.Length].Centimetres, with.Finished[GarmentMeasure.Length].Centimetres, 2.1);
        }
    }

    [Fact]
    public void A_locked_base_keeps_its_numbers_and_the_others_follow()
    {
        var project = Tideline.Directed(Direction.Up);
        var byRule = project.Planned();
        var locked = project.Fixed([new("M", "width", Cm(120), null, "as made")], []).Planned();
        var moved = Cm(120) - byRule.Sizes[2].Target[GarmentMeasure.Width];
        Assert.All(byRule.Sizes.Zip(locked.Sizes), s => Assert.Equal(
            (s.First.Target[GarmentMeasure.Width] + moved).Centimetres, s.Second.Target[GarmentMeasure.Width].Centimetres, 1e-6));
    }

    [Fact]
    public void A_locked_count_is_kept_and_makes_the_ease_of_all()
    {
        var locked = Tideline.Directed(Direction.Up).Fixed([new("M", "panelStitches", null, 83, "as made")], []).Planned();
        Assert.Equal(83, locked.Sizes[2].Pieces[0].Stitches);
        Assert.Equal(locked.Sizes[2].Finished[GarmentMeasure.Width], locked.Sizes[2].Target[GarmentMeasure.Width]);
        Assert.Empty(PlanCheck.Verify(locked));
    }

    [Fact]
    public void An_override_moves_its_own_size_alone_even_to_a_count_without_the_motif()
    {
        var project = Tideline.Directed(Direction.Up);
        var plan = project.Fixed([], [new("L", "panelStitches", null, 89, "tested so")]).Planned();
        Assert.Equal(89, plan.Sizes[3].Pieces[0].Stitches);
        Assert.Contains(plan.Findings, f =>
            f.Text.Contains("Size L", StringComparison.Ordinal) && f.Text.Contains("89", StringComparison.Ordinal));
        Assert.DoesNotContain(89, plan.Sizes.Where(s => s.Name != "L").Select(s => s.Pieces[0].Stitches));
    }

    [Fact]
    public void An_override_of_the_base_size_moves_no_other_size()
    {
        var project = Tideline.Directed(Direction.Sideways);
        var plan = project.Planned();
        var other = project.Fixed([], [new("M", "panelRows", null, plan.Sizes[2].Pieces[0].Rows + 4, "tested so")]).Planned();
        Assert.Equal(plan.Sizes[2].Pieces[0].Rows + 4, other.Sizes[2].Pieces[0].Rows);
        var others = plan.Sizes.Zip(other.Sizes).Where(s => s.First.Name != "M");
        Assert.All(others, s => Assert.Equal(s.First.Pieces[0].Rows, s.Second.Pieces[0].Rows));
    }

    [Fact]
    public void A_count_without_a_direction_is_refused()
    {
        var result = Tideline.Fixed([new("M", "panelStitches", null, 83, "as made")], []).Tried();
        Assert.Equal(PlanOutcome.BadInput, result.Outcome);
        Assert.Equal("garment.direction", Assert.Single(result.Reasons).Place);
    }

    [Fact]
    public void What_a_chart_lacks_is_derived_and_said_and_what_own_sizes_lack_is_asked_for()
    {
        var men = Tideline with { Sizes = new SizeSelection("men", [], [], null, [], []) };
        Assert.Contains(men.Planned().Findings, f => f is { Place: "sizes.chart", Level: FindingLevel.Note }
            && f.Text.Contains("back waist length", StringComparison.Ordinal) && f.Text.Contains("ANSUR", StringComparison.Ordinal));
        var own = Tideline with
        {
            Sizes = new SizeSelection(
                null, [], [new OwnSize("mine", new Dictionary<string, Length> { ["bust"] = Cm(90) }.ToImmutableSortedDictionary())], null,
                [], []),
        };
        Assert.Contains(own.Tried().Reasons, r => r.Place == "sizes.own" && r.Text.Contains("upperArm", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("Q", "width", "size")]
    [InlineData("M", "breadth", "what")]
    [InlineData("M", "panelRows", "count")]
    public void Fixed_numbers_that_mean_nothing_are_located(string size, string what, string place)
    {
        var result = Tideline.Fixed([], [new(size, what, Cm(100), null, "?")]).Tried();
        Assert.Equal(PlanOutcome.BadInput, result.Outcome);
        Assert.Contains(result.Reasons, r => r.Place == $"sizes.overrides[0].{place}");
    }

    [Fact]
    public void A_motif_that_no_count_makes_says_what_is_nearest_and_what_would_help()
    {
        var result = Tideline.With(g => g with { Motif = MotifKind.Bands }).Tried();
        Assert.Equal(PlanOutcome.Infeasible, result.Outcome);
        Assert.Null(result.Plan);
        Assert.Contains(result.Reasons, r => r.Text.Contains("No count", StringComparison.Ordinal));
        Assert.Contains(result.Reasons, r => r.Text.Contains("instead", StringComparison.Ordinal));
    }

    [Fact]
    public void A_neck_as_wide_as_the_panel_and_sleeves_of_no_length_are_infeasible()
    {
        Assert.Contains(Tideline.WithTop(t => t with { Neck = t.Neck with { Width = Cm(60) } }).Tried().Reasons, r => r.Place == "garment.neckWidth");
        Assert.Contains(
            Tideline.WithTop(t => t with { Sleeves = t.Sleeves! with { ShorterBy = Cm(50) } }).Tried().Reasons, r =>
                r.Place == "garment.sleeves.shorterBy");
    }

    [Fact]
    public void Side_bands_and_unequal_panels_close_the_gaps()
    {
        var project = Tideline.Directed(Direction.Up).With(g => g with { Grading = g.Grading with { MostCounts = 4 } });
        var plain = project.Planned();
        var banded = project.With(g => g with { Grading = g.Grading with { SideBands = true } }).Planned();
        var unequal = project.With(g => g with { Grading = g.Grading with { UnequalPanels = true } }).Planned();
        Assert.Contains(banded.Sizes, s => s.Pieces[0].SideBandRows > 0);
        Assert.True(Typical(banded) < Typical(plain));
        Assert.True(Typical(unequal) <= Typical(plain));
        Assert.All(unequal.Sizes, s => Assert.Equal(0, 2 * (s.Pieces[0].Stitches - s.Pieces[1].Stitches) % 21));
        Assert.Empty(PlanCheck.Verify(banded));
        Assert.Empty(PlanCheck.Verify(unequal));

        static Length Typical(Plan plan) => plan.Options.Single(o => o.Direction == Direction.Up).TypicalError;
    }

    [Fact]
    public void Mirrored_seams_cost_nothing_where_the_back_is_turned_over()
    {
        var plan = Tideline.Directed(Direction.Up).With(
            g => g with { Seams = g.Seams with { Extension = SeamExtension.Mirrored } }).Planned();
        Assert.All(plan.Sizes, s => Assert.All(s.Seams.Where(m => m.First is [{ Piece: PieceId.Front }]), m => Assert.Equal(0, m.PhaseJump)));
        Assert.Empty(PlanCheck.Verify(plan));
    }

    [Fact]
    public void The_search_never_leaves_a_larger_jump_than_plain_starts_do()
    {
        var sideways = Tideline.Directed(Direction.Sideways);
        var searched = sideways.Planned();
        for (var start = 0; start < 21; start += 4)
        {
            // As if the designer had begun the back anywhere.
            var plain = sideways.With(g => g with { Starts = g.Starts.SetItem("back", start) }).Planned();
            foreach (var (chosen, other) in searched.Sizes.Zip(plain.Sizes))
                Assert.True(Cost(chosen) <= Cost(other) + 0.55, $"{chosen.Name} from {start}: {Cost(chosen)} against {Cost(other)}");
        }

        // Mean jump by length, over sides and shoulders; what a start within a colour is charged may be saved.
        static double Cost(SizePlan size) => size.Seams.Take(4).Sum(s => s.Length.Centimetres * s.PhaseJump)
            / size.Seams.Take(4).Sum(s => s.Length.Centimetres);
    }

    [Fact]
    public void Sleeveless_armholes_are_edged_and_plain_sleeves_take_companion_yarn()
    {
        var sleeveless = Tideline.WithoutSleeves().With(
            g => g with { Edgings = g.Edgings.Add(new(EdgingPlace.Armholes, "sc", 2)) }).Planned();
        Assert.All(sleeveless.Sizes, s => Assert.Contains(s.Edgings, e => e is { Where: EdgingPlace.Armholes, Copies: 2 }));
        Assert.Empty(PlanCheck.Verify(sleeveless));
        var (plain, pooled) = (Tideline.Sleeved(pooled: false).Planned(), Tideline.Sleeved(pooled: true).Planned());
        Assert.All(plain.Sizes, s => Assert.False(s.Pieces[2].Pooled));
        Assert.All(pooled.Sizes, s => Assert.True(s.Pieces[2].Pooled));
        Assert.True(plain.Sizes[0].Yarn.Companion!.Length > pooled.Sizes[0].Yarn.Companion!.Length);
        Assert.Empty(PlanCheck.Verify(plain));
        Assert.Empty(PlanCheck.Verify(pooled));
        var alone = Tideline with { Companion = null };
        Assert.Contains(alone.Sleeved(pooled: false).Tried().Reasons, r => r.Place == "garment.sleeves.yarn");
    }

    [Fact]
    public void Free_work_and_other_turn_costs_agree_with_their_check()
    {
        var free = Tideline with { Fabric = Tideline.Fabric with { Keeping = ColourKeeping.Free, TurnCost = 0.45 } };
        Assert.Empty(PlanCheck.Verify(free.Planned()));
        var halves = Tideline.With(
            g => g with { Grading = g.Grading with { AlternatingRows = true, HalfStitchTurn = true, ForgivenessWeight = 10 } });
        Assert.Empty(PlanCheck.Verify(halves.Planned()));
    }

    [Fact]
    public void A_ball_shorter_than_a_sequence_is_refused()
    {
        var result = (Tideline with
        {
            Yarn = Tideline.Yarn with
            {
                Ball = new Ball(
            Length.FromMetres(1), Tideline.Yarn.Ball.Mass)
            }
        }).Tried();
        Assert.Equal("yarn.ball.length", Assert.Single(result.Reasons).Place);
    }

    [Fact]
    public void Pieces_narrower_than_a_repeat_are_named()
    {
        var plan = Tideline.Sleeved(pooled: true).Directed(Direction.Sideways).Planned();
        var narrow = plan.Sizes.Where(s => s.Pieces[2].Stitches < 21).Select(s => s.Name).ToArray();
        Assert.NotEmpty(narrow);
        var warning = Assert.Single(plan.Findings, f => f.Text.StartsWith("The sleeve is narrower", StringComparison.Ordinal));
        Assert.Contains(string.Join(", ", narrow), warning.Text, StringComparison.Ordinal);
        Assert.DoesNotContain(plan.Findings, f => f.Text.StartsWith("The front is narrower", StringComparison.Ordinal));
    }

    [Fact]
    public void A_fixed_sleeve_width_moves_sleeve_and_armhole()
    {
        var plan = Tideline.Directed(Direction.Sideways).Fixed([], [new("M", "sleeveWidth", Cm(46), null, "roomier")]).Planned();
        Assert.Equal(46, plan.Sizes[2].Finished[GarmentMeasure.SleeveWidth].Centimetres, 0.7);
        Assert.Equal(23, plan.Sizes[2].Finished[GarmentMeasure.ArmholeDepth].Centimetres, 0.4);
    }

    /// <summary>
    /// Sewn row to row into a tube, a sleeve of n stitches of which a seam hides two meets itself as rounds of n − 2 would: each row
    /// jumps by what that misses of the sequence, which is 21 stitches.
    /// </summary>
    [Fact]
    public void A_sleeve_worked_upwards_meets_itself_under_the_arm()
    {
        var plan = Tideline.Sleeved(pooled: true).Directed(Direction.Up).With(
            g => g with { Seams = g.Seams with { Extension = SeamExtension.Continued } }).Planned();
        Assert.Contains(plan.Sizes, s => (s.Pieces[2].Stitches - 2) % 21 != 0);
        foreach (var size in plan.Sizes)
        {
            var jump = Math.Abs(Math.IEEERemainder(size.Pieces[2].Stitches - 2, 21));
            Assert.Equal([jump, jump], size.Seams.Where(s => s.Where.EndsWith("sleeve", StringComparison.Ordinal)).Select(s => s.PhaseJump));
        }
    }

    /// <summary>Measured along the garment: down the sides to the armhole, round the armhole, along the sleeve.</summary>
    [Theory]
    [InlineData(Direction.Up)]
    [InlineData(Direction.Sideways)]
    public void Seams_are_as_long_as_the_edges_that_they_join(Direction direction)
    {
        var plan = Tideline.Directed(direction).Planned();
        var step = direction == Direction.Up ? plan.RowHeight : plan.StitchWidth;
        foreach (var size in plan.Sizes)
        {
            var (front, sleeve) = (size.Pieces[0], size.Pieces[2]);
            var along = direction == Direction.Up ? sleeve.Rows : sleeve.Stitches;
            // A stitch or row of the armhole is in the shoulder seam, and one of the sleeve's in the armhole's.
            (string, Length)[] expected =
            [
                ("side", step * (front.Marks[2].Position - 1)), ("armhole", 2 * size.Finished[GarmentMeasure.ArmholeDepth]),
                ("sleeve", step * (along - 1)),
            ];
            foreach (var (where, length) in expected)
            {
                var seams = size.Seams.Where(s => s.Where.EndsWith(where, StringComparison.Ordinal)).ToArray();
                Assert.Equal([$"left {where}", $"right {where}"], seams.Select(s => s.Where));
                Assert.All(seams, s => Assert.Equal(length.Centimetres, s.Length.Centimetres, 1e-6));
            }
        }
    }

    [Fact]
    public void Planning_can_be_cancelled() => Assert.Throws<OperationCanceledException>(
        () => GarmentPlanner.Plan(Tideline, new CancellationToken(canceled: true)));
}
