using System.Collections.Immutable;
using System.Text.RegularExpressions;
using Dyepath.Core.Booklets;
using Dyepath.Core.Checking;
using Dyepath.Core.Constructions;
using Dyepath.Core.Edgings;
using Dyepath.Core.Fabrics;
using Dyepath.Core.Findings;
using Dyepath.Core.Garments;
using Dyepath.Core.Instructions;
using Dyepath.Core.Planning;
using Dyepath.Core.Projects;
using Dyepath.Core.Reading;
using Dyepath.Core.Sizing;
using Dyepath.Core.Tests.Constructions;
using static Dyepath.Core.Tests.Garments.TestProjects;

namespace Dyepath.Core.Tests.Garments;

/// <summary>A garment that opens in front: two fronts, bands that overlap, an opening that is judged but not sewn.</summary>
public sealed partial class CardiganTests
{
    public static TheoryData<Direction> Directions => [Direction.Up, Direction.Sideways];

    public static TheoryData<string, Direction, bool> Ways => [.. from stitch in new[] { "sc", "hdc", "linen" }
        from direction in new[] { Direction.Up, Direction.Sideways }
        from sleeves in new[] { true, false } select (stitch, direction, sleeves)];

    [Theory]
    [MemberData(nameof(Ways))]
    public void The_plan_and_its_words_agree(string stitch, Direction direction, bool sleeves)
    {
        var project = Cardigan(direction, c => sleeves ? c : c with { Sleeves = null });
        var plan = (project with
        {
            Fabric = project.Fabric with { Stitch = FabricStitch.All.First(s => s.Id == stitch), SectionStitches = stitch == "linen" ? [3, 2, 3, 3] : [5, 4, 6, 4] },
        }).Planned();
        Assert.Empty(PlanCheck.Verify(plan, TestContext.Current.CancellationToken));
        Assert.Empty(PatternCheck.Run(plan, TestContext.Current.CancellationToken));
    }

    /// <summary>Closed, the bands lie on each other: the back, both fronts and one band go round the body, what the side seams hide taken off.</summary>
    [Theory]
    [MemberData(nameof(Directions))]
    public void Back_fronts_and_one_band_make_the_width(Direction direction)
    {
        var plan = Cardigan(direction).Planned();
        var hidden = direction == Direction.Up ? plan.StitchWidth : plan.RowHeight;
        foreach (var size in plan.Sizes)
        {
            var band = size.Edgings.Single(e => e.Where == EdgingPlace.Fronts);
            var around = size[PieceId.Back].Width + size[PieceId.RightFront].Width + size[PieceId.LeftFront].Width - 4 * hidden + band.Depth;
            Assert.Equal(around.Centimetres, size.Finished[GarmentMeasure.Width].Centimetres, 1e-6);
            Assert.Equal(2, band.Copies);
        }
    }

    /// <summary>
    /// Fronts that end a stitch beside their shoulders pull at the neck: where counts allow it they leave half of what half of the
    /// back's neck takes (common practice, no source).
    /// </summary>
    [Theory]
    [InlineData(NeckForm.Slit, "women", "2X")]
    [InlineData(NeckForm.Slit, "women", "4X")]
    [InlineData(NeckForm.Slit, "child", "6")]
    [InlineData(NeckForm.Square, "baby", "6 months")]
    [InlineData(NeckForm.Round, "youth", "16")]
    public void Fronts_leave_room_for_the_neck_beside_their_shoulders(NeckForm form, string chart, string size)
    {
        var start = StarterDocument.Of(Repertoire.All.First(k => k.Name == "cardigan"));
        var cardigan = (Cardigan)start.Garment.Shape;
        var project = start.With(g => g with { Shape = cardigan with { Neck = cardigan.Neck with { Form = form } } }) with
        {
            Sizes = new SizeSelection(chart, [size], [], null, [], []),
        };
        var plan = project.Planned();
        var made = plan.Sizes.Single().Finished;
        Assert.True(
            made[GarmentMeasure.FrontNeck] >= made[GarmentMeasure.NeckWidth] / 4,
            $"{made[GarmentMeasure.FrontNeck].Centimetres:0.0} cm beside the shoulder, of a neck of {made[GarmentMeasure.NeckWidth].Centimetres:0.0} cm");
        Assert.DoesNotContain(plan.Findings, f => f.Level == FindingLevel.Warning);
    }

    /// <summary>Sideways the fronts' width runs along the rows, so that it comes out as half of what is wanted, less half of the overlap.</summary>
    [Fact]
    public void Sideways_the_fronts_are_as_wide_as_the_rule_asks()
    {
        var plan = Cardigan(Direction.Sideways).Planned();
        foreach (var size in plan.Sizes)
        {
            var band = size.Edgings.Single(e => e.Where == EdgingPlace.Fronts).Depth;
            var front = (size.Target[GarmentMeasure.Width] - size.Finished[GarmentMeasure.BackWidth] - band) / 2;
            // A seam may move the rows by what is let off, a centimetre all round.
            Assert.Equal(front.Centimetres, (size[PieceId.RightFront].Width - plan.RowHeight).Centimetres, 0.75);
        }
    }

    [Theory]
    [MemberData(nameof(Directions))]
    public void The_fronts_have_the_backs_shoulders_and_are_mirrors_of_each_other(Direction direction)
    {
        var plan = Cardigan(direction).Planned();
        foreach (var size in plan.Sizes)
        {
            var (back, right, left) = (size[PieceId.Back], size[PieceId.RightFront], size[PieceId.LeftFront]);
            Assert.Equal((right.Stitches, right.Rows), (left.Stitches, left.Rows));
            var across = direction == Direction.Up ? right.Stitches : right.Rows;
            var (neck, atRight, atLeft) = (back.Opening(OpeningId.Neck), right.Opening(OpeningId.Neck), left.Opening(OpeningId.Neck));
            // As worn, from the left: the right front's shoulder comes first, the left front's last.
            Assert.Equal(neck.First - 1, atRight.First - 1);
            Assert.Equal(across, atRight.Last);
            Assert.Equal(1, atLeft.First);
            Assert.Equal(neck.First - 1, across - atLeft.Last);
            Assert.Equal(back.Opening(OpeningId.Armhole).Length, right.Opening(OpeningId.Armhole).Length);
            Assert.Equal(direction == Direction.Up ? back.Rows : back.Stitches, direction == Direction.Up ? right.Rows : right.Stitches);
        }
    }

    /// <summary>What the words say is followed on the piece as it is worked, and turned over where the making up says so: the neck must come to the front edge.</summary>
    [Theory]
    [MemberData(nameof(Directions))]
    public void The_marks_lie_at_the_shoulder_and_at_the_side(Direction direction)
    {
        var plan = Cardigan(direction).Planned();
        foreach (var size in plan.Sizes)
        {
            var text = Text(plan, size.Name);
            foreach (var id in new[] { PieceId.RightFront, PieceId.LeftFront })
            {
                var piece = size[id];
                var words = text[text.IndexOf($"## {char.ToUpperInvariant(piece.Name[0])}{piece.Name[1..]}", StringComparison.Ordinal)..].Split("\n\n")[0];
                var (neck, armhole) = (Neck().Match(words), Armhole().Match(words));
                Assert.True(neck.Success && armhole.Success, words);
                var turned = text.Contains($"Turn the {piece.Name} over before you sew", StringComparison.Ordinal);
                // Right side up, row 1 begins at the wearer's left of a front as it is seen from outside: at the right.
                var sideAtLeft = id == PieceId.RightFront != turned;
                var edge = direction == Direction.Up
                    ? sideAtLeft ? "the edge where odd-numbered rows end" : "the edge where odd-numbered rows begin"
                    : sideAtLeft ? "the first row" : "the last row";
                Assert.Equal(edge, neck.Groups["from"].Value);
                Assert.Equal(edge, armhole.Groups["edge"].Value);
                Assert.Equal(size[PieceId.Back].Opening(OpeningId.Neck).First, int.Parse(neck.Groups["n"].Value, null));
            }
        }
    }

    /// <summary>Where the opening is said to be mirrored without a jump, the colours beside it are the same on both fronts, row by row.</summary>
    [Fact]
    public void A_mirrored_opening_shows_the_same_colours_at_both_edges()
    {
        var plan = Cardigan(Direction.Up).Planned();
        var met = 0;
        foreach (var size in plan.Sizes)
        {
            var opening = size.Seams.Single(s => s.Id == SeamId.FrontOpening);
            Assert.False(opening.IsSewn);
            if (opening is not { Extension: SeamExtension.Mirrored, PhaseJump: < 1e-6 })
                continue;
            met++;
            var (right, left) = (WornPiece.Of(plan, size[PieceId.RightFront]), WornPiece.Of(plan, size[PieceId.LeftFront]));
            for (var y = 0; y < right.Rows; y++)
                Assert.Equal(left.Cells[y * left.Columns], right.Cells[(y + 1) * right.Columns - 1]);
        }
        Assert.True(met > 0, "No opening is mirrored.");
    }

    /// <summary>An opening takes no seam yarn and no sentence of the making up.</summary>
    [Fact]
    public void The_opening_is_not_sewn()
    {
        var plan = Cardigan(Direction.Sideways).Planned();
        var construction = plan.Construction;
        Assert.DoesNotContain(SeamId.FrontOpening, construction.Sewing.SelectMany(s => s.Seams));
        var without = plan.Sizes[0].Seams.Where(s => s.Id != SeamId.FrontOpening).ToArray();
        Assert.All(without, s => Assert.True(s.IsSewn));
        Assert.DoesNotMatch("Colours [^.]*front opening", Text(plan, "M"));
        Assert.DoesNotContain("sew the front", Text(plan, "M"), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(false, "right front", "left front")]
    [InlineData(true, "left front", "right front")]
    public void The_designer_chooses_the_side_of_the_buttonholes(bool left, string holes, string buttons)
    {
        var plan = Cardigan(Direction.Sideways, c => c with { HolesAtLeft = left }).Planned();
        var size = plan.Sizes.First(s => s.Name == "M");
        var band = size.Edgings.Single(e => e.Where == EdgingPlace.Fronts);
        var text = Text(plan, "M");
        var said = System.Text.RegularExpressions.Regex.Match(
            text, $@"Buttonholes: (\d+) in the band of the {holes}, in row (\d+), about .* from middle to middle\. The lowest begins 1\.4 cm / ½ in from the lower end, the topmost ends ([0-9.]+) cm .* from the neck end, below the corner that folds back\.");
        Assert.True(said.Success, text);
        Assert.Equal(band.Rounds / 2 + 1, int.Parse(said.Groups[2].Value, System.Globalization.CultureInfo.InvariantCulture));
        // The corner folds as far down as it is wide, its band included, and 1 cm at least is left below it.
        var corner = size.Finished[GarmentMeasure.FrontNeck] + band.Depth;
        Assert.True(double.Parse(said.Groups[3].Value, System.Globalization.CultureInfo.InvariantCulture) >= corner.Centimetres + 0.75);
        var count = said.Groups[1].Value;
        // The right front's band begins at its lower end, the left front's at the neck: the third row runs as the first.
        Assert.Matches(left ? @"(?m)^Row 3: Ch 1, sc in each of the first \d\d sts, " : @"(?m)^Row 3: Ch 1, sc in each of the first 2 sts, ", text);
        Assert.Contains($"The band of the {buttons} takes the buttons.", text, StringComparison.Ordinal);
        Assert.Contains($"- Buttons: {count}, ", text, StringComparison.Ordinal);
    }

    /// <summary>The finished text is read back: holes counted, worked, in their row, over all stitches of the band.</summary>
    [Theory]
    [InlineData(@"(?<=in each of the first )\d+(?= sts, \* ch)", "9")]
    [InlineData(@"(?<=sts; work from \* )\d+", "5")]
    [InlineData(@"(?<=\nButtonholes: )\d+", "4")]
    [InlineData(@"(?<=right front, in row )\d+", "2")]
    [InlineData(@"(?<=\nRow )3(?=: Ch 1, sc in each of the first)", "4")]
    [InlineData(@"\nButtonholes: ", "\nHoles: ")]
    public void A_wrong_number_of_the_buttonholes_is_found(string words, string other)
    {
        var plan = Cardigan(Direction.Sideways).Planned();
        var text = TextBooklet.Write(PatternWriter.Write(plan), plan.Project.Edition with { Size = "M" }).Replace("\n    ", " ", StringComparison.Ordinal);
        Assert.Empty(PatternCheck.Text(plan, text));
        var changed = Regex.Replace(text, words, other);
        Assert.NotEqual(text, changed);
        Assert.Contains(PatternCheck.Text(plan, changed), d => d.ToString().Contains("buttonholes", StringComparison.Ordinal));
    }

    [Fact]
    public void Bands_are_begun_where_the_front_edges_run_from_right_to_left()
    {
        var text = Text(Cardigan(Direction.Sideways).Planned(), "M");
        Assert.Contains(
            "joined with the outside facing at the lower end of the right front's front edge and, for the other band, at the neck end of the left front's.",
            text, StringComparison.Ordinal);
        Assert.Contains("Shoulders: lay left front and right front on the back, outsides in.", text, StringComparison.Ordinal);
        Assert.Contains("up to the armhole marks, and on along the underside of the sleeve to the cuff.", text, StringComparison.Ordinal);
        Assert.Contains("The fronts' inner corners, from the marks to the front edges, stay free and fold outwards", text, StringComparison.Ordinal);
    }

    [Fact]
    public void Without_sleeves_the_sides_end_at_the_armholes()
    {
        var text = Text(Cardigan(Direction.Sideways, c => c with { Sleeves = null }).Planned(), "M");
        Assert.Contains("Sides: sew stitch to stitch from the hem up to the armhole marks.", text, StringComparison.Ordinal);
    }

    /// <summary>Without a band the fronts meet edge to edge.</summary>
    [Fact]
    public void Without_bands_nothing_overlaps()
    {
        var project = Cardigan(Direction.Sideways).With(g => g with { Edgings = [] });
        var size = project.Planned().Sizes[0];
        Assert.Empty(size.Edgings);
        Assert.Equal(size.Target[GarmentMeasure.Width].Centimetres, size.Finished[GarmentMeasure.Width].Centimetres, 1.5);
        Assert.DoesNotContain("Buttons:", Text(project.Planned(), "M"), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(true, "garment.grading.sideBands")]
    [InlineData(false, "garment.grading.unequalPanels")]
    public void What_fronts_cannot_have_is_refused(bool bands, string place)
    {
        var project = Cardigan(Direction.Up).With(g => g with { Grading = g.Grading with { SideBands = bands, UnequalPanels = !bands } });
        Assert.Contains(project.Tried().Reasons, r => r.Place == place);
    }

    [Theory]
    [InlineData(Direction.Up, "frontRows")]
    [InlineData(Direction.Sideways, "frontStitches")]
    public void Counts_that_follow_the_back_cannot_be_fixed_apart_from_it(Direction direction, string count)
    {
        var project = Cardigan(direction).Fixed([], [new FixedNumber("M", count, null, 80, "a test")]);
        Assert.Contains(project.Tried().Reasons, r => r.Place == "sizes" && r.Text.Contains("fix those", StringComparison.Ordinal));
    }

    /// <summary>It opens, so that no head has to pass; it must close round the bust.</summary>
    [Fact]
    public void It_is_held_against_the_body_that_it_closes_round()
    {
        var worn = Cardigan(Direction.Sideways).Planned().Sizes[0].Worn;
        Assert.DoesNotContain(worn, f => f.Body == BodyMeasure.Head);
        Assert.Contains(worn, f => f is { Body: BodyMeasure.Bust, Part: FitPart.ClosedBody, Holds: true });
        Assert.Contains(worn, f => f.Body == BodyMeasure.UpperArm);
        Assert.Contains(worn, f => f.Part == FitPart.ShoulderBesideNeck);
    }

    public static TheoryData<NeckForm, string, Direction, bool> Necks => [.. from form in new[] { NeckForm.Slit, NeckForm.Square, NeckForm.Round, NeckForm.V }
        from way in new[] { ("sc", true), ("sc", false), ("dc", true) } from direction in new[] { Direction.Up, Direction.Sideways } select (form, way.Item1, direction, way.Item2)];

    /// <summary>The plan by other routes, and the booklet read back.</summary>
    [Theory]
    [MemberData(nameof(Necks))]
    public void A_neck_of_any_form_is_planned_and_edged(NeckForm form, string stitch, Direction direction, bool even)
    {
        var plan = GarmentTrials.Check(Necked(form, direction, stitch, even));
        foreach (var size in plan.Sizes)
        {
            var (back, right, left) = (size[PieceId.Back], size[PieceId.RightFront], size[PieceId.LeftFront]);
            var across = direction == Direction.Up ? back.Width / back.Stitches : back.Width / back.Rows;
            var shoulder = back.Opening(OpeningId.Neck).First - 1;
            Assert.Equal(form != NeckForm.Slit, right.Opening(OpeningId.Neck).Into > 0);
            Assert.Equal(form is NeckForm.Square or NeckForm.Round && back.Opening(OpeningId.Neck).Into > 0, back.Shape is not null);
            // As worn, from the left: the right front's shoulder comes first, the left front's last.
            Assert.True(across * Math.Abs(right.Opening(OpeningId.Neck).First - 1 - shoulder) <= Cm(1.2), $"{size.Name}: {right.Opening(OpeningId.Neck)} {shoulder}");
            Assert.Equal(1, left.Opening(OpeningId.Neck).First);
            if (form == NeckForm.V)
                Assert.Equal(shoulder, right.Opening(OpeningId.Neck).First - 1);
            if (form != NeckForm.Slit)
                Assert.InRange(Math.Abs(right.Opening(OpeningId.Neck).Into - left.Opening(OpeningId.Neck).Into), 0, 2);
        }
    }

    /// <summary>A cut neck leaves no corner that folds back, so that buttonholes go on up to the neck.</summary>
    [Theory]
    [InlineData(NeckForm.Square)]
    [InlineData(NeckForm.Round)]
    [InlineData(NeckForm.V)]
    public void No_corner_folds_back_from_a_cut_neck(NeckForm form)
    {
        var plan = Necked(form, Direction.Sideways).Planned();
        var text = Text(plan, "M");
        Assert.DoesNotContain("fold", text, StringComparison.Ordinal);
        Assert.Matches(@"the topmost ends 1\.[4-9] cm|the topmost ends [2-4](\.[0-9])? cm", text);
    }

    /// <summary>Hem and neck are edged in rows from one front edge to the other, and the bands then go over their ends.</summary>
    [Theory]
    [MemberData(nameof(Directions))]
    public void Bands_come_after_hem_and_neck_and_go_over_their_ends(Direction direction)
    {
        var plan = Necked(NeckForm.Round, direction).Planned();
        var text = Text(plan, "M");
        Assert.Contains("at the lower end of the left front's front edge.", text, StringComparison.Ordinal);
        Assert.Contains("at the upper end of the right front's front edge.", text, StringComparison.Ordinal);
        Assert.Contains("When: After the hem and the neck: the bands go over their ends too, so that the fronts close from end to end.", text, StringComparison.Ordinal);
        var without = Necked(NeckForm.Round, direction).With(g => g with { Edgings = [.. g.Edgings.Where(e => e.Where is EdgingPlace.Fronts)] }).Planned();
        Assert.DoesNotContain("When:", Text(without, "M"), StringComparison.Ordinal);
        foreach (var size in plan.Sizes)
        {
            Assert.Equal([EdgingPlace.Hem, EdgingPlace.Neck, EdgingPlace.Fronts], size.Edgings.Select(e => e.Where).Where(p => p is EdgingPlace.Hem or EdgingPlace.Neck or EdgingPlace.Fronts));
            var (hem, neck, band) = (size.Edgings[0], size.Edgings[1], size.Edgings[2]);
            var stretches = band.Spread.Stretches;
            Assert.Equal((hem.Rounds, neck.Rounds), (stretches[0].Stretch.Places, stretches[^1].Stretch.Places));
            // The band is as long as the front edge below the neck, and hem and neck edging at its ends.
            var front = size[PieceId.RightFront];
            var edge = direction == Direction.Up ? front.Rows : front.Shape!.LastColumn - front.Shape.FirstColumn + 1;
            var neckDepth = front.Opening(OpeningId.Neck).Into;
            Assert.Equal(edge - neckDepth, stretches[1..^1].Sum(s => s.Stretch.Places));
            Assert.Equal(size.Finished[GarmentMeasure.Length].Centimetres, (size[PieceId.Back].Height + hem.Depth).Centimetres - Hidden(plan, direction), 1e-6);
        }
    }

    [Theory]
    [InlineData(EdgingPlace.Hem, "sc", "is worked in rounds, and the ends of this edge do not meet: choose sc-rows.")]
    [InlineData(EdgingPlace.Neck, "picot", "is worked in rounds, and the ends of this edge do not meet: choose sc-rows.")]
    [InlineData(EdgingPlace.Cuffs, "sc-rows", "is not made for this edge")]
    public void An_edging_that_goes_round_does_not_go_on_an_open_edge(EdgingPlace place, string edging, string words)
    {
        var project = Cardigan(Direction.Up).With(g => g with { Edgings = [new(place, edging, null)] });
        Assert.Contains(project.Tried().Reasons, r => r.Place == "garment.edgings[0].edging" && r.Text.Contains(words, StringComparison.Ordinal));
    }

    [Fact]
    public void Rows_do_not_go_on_an_edge_whose_ends_meet()
    {
        var project = GarmentTrials.Of("pullover").With(g => g with { Edgings = [new(EdgingPlace.Hem, "sc-rows", null)] });
        Assert.Contains(project.Tried().Reasons, r => r.Text.Contains("the ends of this edge meet: choose one that is worked in rounds.", StringComparison.Ordinal));
    }

    private static double Hidden(Plan plan, Direction direction) => direction == Direction.Up ? plan.RowHeight.Centimetres : plan.StitchWidth.Centimetres;

    private static Project Necked(NeckForm form, Direction direction, string stitch = "sc", bool even = true)
    {
        var project = Begun("cardigan", stitch, even, direction);
        return GarmentTrials.Edged(
            project.With(g => g with { Shape = (Cardigan)g.Shape with { Neck = new Neck(form, null) { InFront = true } }, Grading = g.Grading with { UnevenWidths = true } }),
            direction, EdgingPlace.Hem, EdgingPlace.Neck, EdgingPlace.Fronts, ((Cardigan)project.Garment.Shape).Sleeves is null ? EdgingPlace.Armholes : EdgingPlace.Cuffs);
    }

    /// <summary>The hem lengthens back and fronts alike, so that its rounds may close what the counts leave, size by size.</summary>
    [Fact]
    public void Sideways_the_hems_rounds_bring_every_size_near_its_length()
    {
        var project = Begun("cardigan", "sc", true, Direction.Sideways).With(g => g with
        {
            Edgings = [new EdgingChoice(EdgingPlace.Hem, "sc-rows", null), new EdgingChoice(EdgingPlace.Fronts, "button-band", null)],
        });
        project = project with { Sizes = project.Sizes with { Sizes = ["XS", "S", "M", "L", "1X", "2X"] } };
        var plan = GarmentTrials.Check(project);
        Assert.All(plan.Sizes, s => Assert.Equal(s.Target[GarmentMeasure.Length].Centimetres, s.Finished[GarmentMeasure.Length].Centimetres, 1.5));
        Assert.True(plan.Sizes.Select(s => s.Edgings.Single(e => e.Where == EdgingPlace.Hem).Rounds).Distinct().Count() > 1);
    }

    [Fact]
    public void Cuffs_without_sleeves_are_refused()
    {
        var text = ProjectWriter.Write(Cardigan(Direction.Up)).Replace("\"sleeves\": {},", "", StringComparison.Ordinal)
            .Replace("\"fronts\"", "\"cuffs\"", StringComparison.Ordinal).Replace("button-band", "sc", StringComparison.Ordinal);
        Assert.Contains(ProjectReader.Read(System.Text.Encoding.UTF8.GetBytes(text)).Faults, f => f.ToString().Contains("edgings[0].where", StringComparison.Ordinal));
    }

    private static Project Cardigan(Direction direction, Func<Cardigan, Cardigan>? change = null)
    {
        var project = StarterDocument.Of(Repertoire.All.First(k => k.Name == "cardigan"));
        return project.With(g => g with { Direction = direction, Shape = (change ?? (c => c))((Cardigan)g.Shape) });
    }

    /// <summary>Of one size, every paragraph on a line.</summary>
    private static string Text(Plan plan, string size) =>
        TextBooklet.Write(PatternWriter.Write(plan), plan.Project.Edition with { Size = size }).Replace("\n    ", " ", StringComparison.Ordinal);

    [GeneratedRegex(@"Mark: (?:stitch|row) (?<n>\d+) at the .*?counted from (?<from>[^:]+): the neck opening begins here and goes on to the front edge\.")]
    private static partial Regex Neck();

    [GeneratedRegex(@"Mark: (?:stitch|row) \d+ of (?<edge>[^:,]+)(?:, counted from the hem edge, where odd-numbered rows begin)?: the armhole begins here\.")]
    private static partial Regex Armhole();
}
