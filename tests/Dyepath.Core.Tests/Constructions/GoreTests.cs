using System.Collections.Immutable;
using System.Globalization;
using System.Text.RegularExpressions;
using CsCheck;
using Dyepath.Core.Booklets;
using Dyepath.Core.Checking;
using Dyepath.Core.Constructions;
using Dyepath.Core.Edgings;
using Dyepath.Core.Findings;
using Dyepath.Core.Garments;
using Dyepath.Core.Instructions;
using Dyepath.Core.Making.Order;
using Dyepath.Core.Planning;
using Dyepath.Core.Projects;
using Dyepath.Core.Reading;
using Dyepath.Core.Shaping;
using Dyepath.Core.Sizing;
using Dyepath.Core.Swatches;
using Dyepath.Core.Tests.Garments;
using Dyepath.Core.Tests.Shaping;
using Dyepath.Core.Yarns;
using static Dyepath.Core.Tests.Constructions.GarmentTrials;
using static Dyepath.Core.Tests.Garments.TestProjects;

namespace Dyepath.Core.Tests.Constructions;

/// <summary>Skirts that widen below the hip and hats that narrow at the crown, by rows that stop short (law 11).</summary>
public sealed class GoreTests
{
    private static Project Flared(double flare = 30, string stitch = "sc") => Edged(
        Of("skirt", stitch).With(g => g with { Shape = (Skirt)g.Shape with { Flare = Cm(flare) } }), Direction.Sideways, EdgingPlace.Hem)
        .With(g => g with { Edgings = [.. g.Edgings, new EdgingChoice(EdgingPlace.Waist, EdgingLibrary.ElasticCasing, null)] });

    private static Project Crowned(string stitch = "sc") => Edged(
        Begun("hat", stitch, true, Direction.Sideways).With(g => g with { Shape = (Hat)g.Shape with { Gored = true } }), Direction.Sideways, EdgingPlace.Brim);

    private static PiecePlan Panel(SizePlan size) => size[PieceId.Panel];

    private static int[] Leaves(PiecePlan piece) => [.. piece.Shape!.Parts[0].Outline.ByRow().Select(r => piece.Stitches - 1 - r.Last)];

    public static TheoryData<string, string> Garments() => new() { { "skirt", "sc" }, { "skirt", "hdc" }, { "hat", "sc" }, { "hat", "dc" } };

    private static Project Garment(string name, string stitch) => name == "skirt" ? Flared(stitch: stitch) : Crowned(stitch);

    [Theory]
    [MemberData(nameof(Garments))]
    public void Gored_garments_are_checked_by_other_routes_edged(string name, string stitch) => Check(Garment(name, stitch));

    [Theory]
    [MemberData(nameof(Garments))]
    public void Every_stitch_lies_where_a_walk_along_the_yarn_comes_to_and_has_the_colour_of_the_panel_without_gores(string name, string stitch)
    {
        var plan = Garment(name, stitch).Planned();
        var ring = plan.Sequence.Ring;
        foreach (var piece in plan.Sizes.Select(Panel))
        {
            var part = Assert.Single(piece.Shape!.Parts);
            var brute = new BruteShape([.. ring.Sections.Select(s => (int)(s / ColourRing.Unit))], ColourRing.ToMicro(piece.TurnCost));
            var start = ColourRing.ToMicro(piece.Start);
            var uncut = brute.Uncut(piece.Stitches, start);
            Assert.All(brute.Walk(BruteShape.Whole(part.Outline, start)), cell =>
            {
                Assert.Equal(cell.Value, part.Fabric[cell.Key.Row, cell.Key.Column]);
                Assert.Equal(ring.Colours[uncut(cell.Key.Row, cell.Key.Column)], ring.Colours[cell.Value]);
            });
        }
    }

    [Theory]
    [MemberData(nameof(Garments))]
    public void Pairs_stop_short_by_whole_half_rounds_and_lie_alike_from_both_ends(string name, string stitch)
    {
        foreach (var piece in Garment(name, stitch).Planned().Sizes.Select(Panel))
        {
            var (leaves, step) = (Leaves(piece), piece.Shape!.Panel.KeepingStep!.Value);
            Assert.All(leaves, left => Assert.Equal(0, left % step));
            Assert.All(leaves.Chunk(2), pair => Assert.Equal(pair[0], pair[1]));
            Assert.Equal((0, 0), (leaves[0], leaves[^1]));
            Assert.Contains(leaves, left => left > 0);
            // Each half has as many of every length, but for the pairs that a middle or a rounding takes.
            foreach (var length in leaves.Distinct())
                Assert.InRange(leaves[..(leaves.Length / 2)].Count(l => l == length) - leaves[(leaves.Length / 2)..].Count(l => l == length), -2, 2);
        }
    }

    /// <summary>Women's hip of the size, 6 cm of ease; the hem 30 cm more.</summary>
    [Theory]
    [InlineData("sc")]
    [InlineData("hdc")]
    public void A_flared_skirt_is_as_wide_as_the_hip_from_waist_to_hip_and_as_the_hem_below(string stitch)
    {
        var plan = Flared(stitch: stitch).Planned();
        foreach (var size in plan.Sizes)
        {
            var (piece, hip) = (Panel(size), size.Body["hip"].Centimetres);
            var (stitchWidth, row) = (plan.StitchWidth.Centimetres, plan.RowHeight.Centimetres);
            // Rows come in pairs: either edge is off by one row at most.
            Assert.Equal(hip + 6, size.Finished[GarmentMeasure.Width].Centimetres, row + 1e-6);
            Assert.Equal(hip + 36, size.Finished[GarmentMeasure.HemWidth].Centimetres, row + 1e-6);
            Assert.True(Assert.Single(size.Worn).Holds);
            var leaves = Leaves(piece);
            // Half a step above the hip is as near as steps come.
            Assert.All(leaves.Where(l => l > 0), left => Assert.True(left * stitchWidth > 20 - 0.5 * piece.Shape!.Panel.KeepingStep!.Value * stitchWidth - stitchWidth));
            // Its sides run straight from hip to hem: at every height as wide as half a step's slope allows.
            for (var up = 0; up < piece.Stitches; up++)
            {
                var below = Math.Min(1, Math.Max(0, (piece.Stitches - up - 0.5) * stitchWidth - 20) / (piece.Stitches * stitchWidth - 20));
                var wide = leaves.Count(l => piece.Stitches - l > up) * row;
                var slope = 30 * piece.Shape!.Panel.KeepingStep!.Value * stitchWidth / (piece.Stitches * stitchWidth - 20);
                Assert.Equal(hip + 6 + 30 * below, wide, slope + 2 * row + 2);
            }
        }
    }

    /// <summary>A flat disc as wide across as the brim is round over 3.14: so far from its middle, so much of the round.</summary>
    [Fact]
    public void A_gored_crown_narrows_as_a_disc_does_as_nearly_as_steps_let_it()
    {
        var plan = Crowned().Planned();
        foreach (var size in plan.Sizes)
        {
            var (piece, round) = (Panel(size), size.Finished[GarmentMeasure.Circumference].Centimetres);
            Assert.Equal(0.95 * size.Body["head"].Centimetres, round, plan.RowHeight.Centimetres + 1e-6);
            var (leaves, step) = (Leaves(piece), piece.Shape!.Panel.KeepingStep!.Value);
            var radius = round / (2 * Math.PI) / plan.StitchWidth.Centimetres;
            for (var level = 0; (level + 1) * step < piece.Stitches - 5; level++)
            {
                var disc = Enumerable.Range(level * step, step).Average(s => Math.Min(1, (s + 0.5) / radius));
                Assert.Equal(disc * piece.Rows, leaves.Count(l => l <= level * step), 3.0);
            }
            Assert.True(size.Finished[GarmentMeasure.CrownEdge] < 0.75 * size.Finished[GarmentMeasure.Circumference]);
        }
    }

    /// <summary>The hip of one size may be asked for otherwise; its hem is another measure.</summary>
    [Fact]
    public void The_width_at_the_hip_can_be_overridden()
    {
        var plain = Flared().Planned().Sizes[0];
        var project = Flared();
        var plan = Check(project with { Sizes = project.Sizes with { Overrides = [new FixedNumber(plain.Name, "width", plain.Target[GarmentMeasure.Width] + Cm(6), null, "wider at the hip")] } });
        Assert.Equal(plain.Finished[GarmentMeasure.Width].Centimetres + 6, plan.Sizes[0].Finished[GarmentMeasure.Width].Centimetres, 2 * plan.RowHeight.Centimetres);
        Assert.Equal(plain.Finished[GarmentMeasure.HemWidth], plan.Sizes[0].Finished[GarmentMeasure.HemWidth]);
    }

    [Fact]
    public void A_skirt_without_flare_and_a_drawn_crown_are_rectangles()
    {
        Assert.All(Flared(0).Planned().Sizes, s => Assert.Null(Panel(s).Shape));
        Assert.All(Of("hat").Planned().Sizes, s => Assert.Null(Panel(s).Shape));
    }

    [Fact]
    public void The_words_say_where_to_stop_what_waits_and_what_goes_on_over_it()
    {
        var plan = Flared().Planned();
        var text = Text(plan);
        Assert.Matches(@"Rows 3 to \d+: As row 2, \d+ sts each, but for the gores in the table, then fasten off\.", text);
        Assert.Contains("Gore, first row (RS): Ch 1, sc in each st to last N sts, leave these unworked, turn.", text, StringComparison.Ordinal);
        Assert.Contains("Gore, second row (WS): Ch 1, sc in each st to end, turn.", text, StringComparison.Ordinal);
        Assert.Matches(@"Gore, third row \(RS\): Ch 1, sc in each st to end, then sc in each of the next N sts left unworked, turn\. \d+ sts\.", text);
        // Numbered, and one line each.
        Assert.Matches(@" Gore Row N Stitches Ends at Third row ends at 1 \d+ \d+ \d+ [A-Z]\d+ [A-Z]\d+ 2 \d+ ", text);
        Assert.Contains("Gores: some rows stop short of the waist and turn.", text, StringComparison.Ordinal);
        Assert.DoesNotContain("go on over a chain", text, StringComparison.Ordinal);
        Assert.Contains("The chain is the edge of the back seam, between the hem and the waist: its end is at the hem, where row 1 begins.", text, StringComparison.Ordinal);
        var jumps = Regex.Match(text, @"its lines of colour lie ([0-9 or]+) stitch(?:es)? to one side");
        var lean = Math.Abs(Panel(plan.Sizes[0]).Lean);
        Assert.Contains((2 * lean).ToString(CultureInfo.InvariantCulture), jumps.Groups[1].Value.Split(" or "));
    }

    /// <summary>Where a turning chain is a stitch it is one of those that wait, too.</summary>
    [Fact]
    public void A_turning_chain_that_waits_is_said_to_be_a_stitch()
    {
        var project = Flared(stitch: "dc");
        var plan = Check(project with { Fabric = project.Fabric with { TurningChainCounts = true } });
        Assert.Matches(@"then dc in each of the next N sts left unworked \(a turning ch counts as one\), turn\.", Text(plan));
    }

    [Fact]
    public void The_plan_says_where_the_picture_breaks_and_how_far()
    {
        var plan = Flared().Planned();
        var note = Assert.Single(plan.Findings, f => f.Place == "garment.flare");
        Assert.Contains("short of the waist", note.Text, StringComparison.Ordinal);
        foreach (var piece in plan.Sizes.Select(Panel))
        {
            Assert.NotEmpty(piece.Shape!.Strips);
            Assert.All(piece.Shape.Strips, s =>
                Assert.Equal(0, Math.IEEERemainder(s.Jump - s.Skipped * piece.Lean, ColourRing.ToUnits(piece.Shape.Panel.Period)), 1e-6));
        }
    }

    [Theory]
    [MemberData(nameof(Garments))]
    public void Worked_up_gores_are_refused_and_the_other_way_is_named(string name, string stitch)
    {
        var tried = Garment(name, stitch).With(g => g with { Direction = Direction.Up }).Tried();
        Assert.False(tried.HasPlan);
        Assert.Contains(tried.Reasons, r => r.Place == "garment.direction" && r.Text.Contains("work it sideways", StringComparison.Ordinal));
        Assert.Equal(Direction.Sideways, Garment(name, stitch).With(g => g with { Direction = null }).Planned().Direction);
    }

    /// <summary>An odd round of the colours has no half, so that rows stop short by all of it, which is deeper than the crown.</summary>
    [Fact]
    public void A_crown_less_deep_than_a_step_is_refused()
    {
        var tried = Begun("hat", "sc", false, Direction.Sideways).With(g => g with { Shape = (Hat)g.Shape with { Gored = true } }).Tried();
        Assert.False(tried.HasPlan);
        Assert.All(tried.Reasons.Where(r => r.Level == FindingLevel.Fault), r => Assert.Equal("garment.crown", r.Place));
        Assert.Contains(tried.Reasons, r => r.Text.Contains("by 19 stitches at a time (13.6 cm)", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData(29, 20)]
    [InlineData(55, 46)]
    public void A_skirt_without_room_to_widen_below_the_hip_is_refused(double length, double hip)
    {
        var tried = Flared().With(g => g with { Shape = (Skirt)g.Shape with { Length = Cm(length), HipDepth = Cm(hip) } }).Tried();
        Assert.False(tried.HasPlan);
        Assert.Contains(tried.Reasons, r => r.Place == "garment.hipDepth");
        Assert.True(Flared(0).With(g => g with { Shape = (Skirt)g.Shape with { Length = Cm(length), HipDepth = Cm(hip) } }).Tried().HasPlan);
    }

    /// <summary>Any length, flare, hip, gauge and ring of colours: where there is a plan, other routes and the words agree with it.</summary>
    [Fact]
    public void Any_flared_skirt_agrees_with_itself() =>
        Gen.Select(Gen.Int[35, 90], Gen.Int[1, 100], Gen.Int[5, 40], Gen.Select(Gen.Int[10, 18], Gen.Int[10, 20]), Gen.Int[3, 6].Array[3, 5]).Holds((length, flare, hip, gauge, sections) =>
        {
            var project = Flared(flare);
            var names = project.Yarn.Sections;
            project = project.With(g => g with { Shape = (Skirt)g.Shape with { Length = Cm(length), HipDepth = Cm(hip) } }) with
            {
                Yarn = project.Yarn with
                {
                    Sections = [.. sections.Select((n, i) => names[i % 4] with { Name = $"colour {i + 1}", Length = Cm(6.3 * n) })],
                    Counted = [project.Yarn.Counted[0] with { Repeats = [.. Enumerable.Repeat(sections.ToImmutableArray(), 3)] }],
                },
                Fabric = project.Fabric with
                {
                    Swatch = project.Fabric.Swatch with { Worked = new Gauge(gauge.Item1, gauge.Item2, Cm(10)), YarnUsed = [] },
                    SectionStitches = [.. sections],
                },
                Sizes = project.Sizes with { Sizes = ["M"], Base = "M" },
            };
            var tried = project.Tried();
            return !tried.HasPlan ? tried.Reasons.Any(r => r.Level == FindingLevel.Fault)
                : PlanCheck.Verify(tried.Plan).IsEmpty && PatternCheck.Run(tried.Plan).IsEmpty
                    && tried.Plan.Sizes[0].Finished[GarmentMeasure.Width] < tried.Plan.Sizes[0].Finished[GarmentMeasure.HemWidth] + Cm(3);
        }, seed: 1104, cases: 12);

    [Theory]
    [MemberData(nameof(Garments))]
    public void Beside_the_hook_every_row_is_told_in_order(string name, string stitch)
    {
        var plan = Garment(name, stitch).Planned();
        var order = MakingOrder.Of(plan, plan.Sizes[0].Name);
        var rows = order.Parts[0].Steps.OfType<RowStep>().ToArray();
        Assert.Equal(Panel(plan.Sizes[0]).Rows, rows.Length);
        Assert.Equal(Enumerable.Range(0, rows.Length), rows.Select(r => r.Row));
    }

    /// <summary>Along the top as many row ends are picked up as rows reach it, less those in the seam.</summary>
    [Fact]
    public void The_waist_is_edged_along_the_rows_that_reach_it()
    {
        foreach (var size in Flared().Planned().Sizes)
        {
            var reach = Leaves(Panel(size)).Count(l => l == 0);
            var waist = size.Edgings.Single(e => e.Where == EdgingPlace.Waist);
            Assert.Equal(reach - 2, waist.Spread.Stretches.Sum(s => s.Stretch.Places));
            Assert.Equal(Panel(size).Rows - 2, size.Edgings.Single(e => e.Where == EdgingPlace.Hem).Spread.Stretches.Sum(s => s.Stretch.Places));
        }
    }

    /// <summary>Drawn as worn, a gored piece narrows evenly from its bottom to its top, and every line of its fabric is closed.</summary>
    [Fact]
    public void It_is_drawn_closed_and_narrowing()
    {
        var plan = Flared().Planned();
        var piece = Panel(plan.Sizes[0]);
        var points = WornOutline.Of(plan, piece).Points;
        double Wide(double y) => points.Where(p => Math.Abs(p.Y - y) < 1e-6).Max(p => p.X) - points.Where(p => Math.Abs(p.Y - y) < 1e-6).Min(p => p.X);
        var heights = points.Select(p => p.Y).Distinct().OrderDescending().ToArray();
        Assert.All(heights.Zip(heights.Skip(1)), h => Assert.True(Wide(h.First) >= Wide(h.Second) - 1e-6));
        Assert.Equal(piece.Width.Centimetres, Wide(piece.Height.Centimetres), 1e-6);
        Assert.Equal(piece.Width.Centimetres * Leaves(piece).Count(l => l == 0) / piece.Rows, Wide(0), 1e-6);

        var worn = WornPiece.Of(plan, piece);
        var leaves = Leaves(piece);
        for (var y = 0; y < worn.Rows; y++)
        {
            var line = worn.Cells.Slice(y * worn.Columns, worn.Columns).ToArray();
            var from = Array.FindIndex(line, c => c != WornPiece.Empty);
            var to = Array.FindLastIndex(line, c => c != WornPiece.Empty);
            Assert.DoesNotContain(WornPiece.Empty, line[from..(to + 1)]);
            var rows = Enumerable.Range(0, leaves.Length).Where(r => piece.Stitches - leaves[r] > worn.Rows - 1 - y).ToArray();
            Assert.Equal(rows, Enumerable.Range(from, to - from + 1).Select(x => worn.UnitAt(x, y)!.Value.Row));
        }
    }

    [Fact]
    public void The_document_says_flare_hip_depth_and_crown()
    {
        Assert.Empty(Faults("\"shape\": \"skirt\", \"flare\": \"30 cm\", \"hipDepth\": \"18 cm\""));
        Assert.Empty(Faults("\"shape\": \"hat\", \"crown\": \"gored\""));
        Assert.Contains(Faults("\"shape\": \"skirt\", \"flare\": \"-3 cm\""), f => f.Contains("flare", StringComparison.Ordinal));
        Assert.Contains(Faults("\"shape\": \"hat\", \"crown\": \"pointed\""), f => f.Contains("crown", StringComparison.Ordinal));
    }

    /// <summary>A row that leaves, or goes on over, a stitch more or less than planned, and one that says nothing of its gore.</summary>
    [Theory]
    [InlineData(@"\n  1 +(?<n>\d+) ")]
    [InlineData(@"\n  1 +\d+ +(?<n>\d+) ")]
    [InlineData(@"\n  1 +\d+ +\d+ +(?<n>\d+) ")]
    [InlineData(@"\n  1 +\d+ +\d+ +\d+ +[A-Z](?<n>\d+) ")]
    [InlineData(@"\n  1 +\d+ +\d+ +\d+ +[A-Z]\d+ +[A-Z](?<n>\d+)\n")]
    [InlineData(@", but for the gores in the table")]
    [InlineData(@", leave these unworked")]
    public void A_row_told_otherwise_is_found(string words)
    {
        var plan = Flared().Planned();
        var text = TextBooklet.Write(PatternWriter.Write(plan), plan.Project.Edition);
        Assert.Empty(PatternCheck.Text(plan, text));
        var told = Regex.Match(text, words);
        Assert.True(told.Success);
        var number = told.Groups["n"];
        var changed = number.Success
            ? string.Concat(text.AsSpan(0, number.Index), (int.Parse(number.Value, CultureInfo.InvariantCulture) - 1).ToString(CultureInfo.InvariantCulture), text.AsSpan(number.Index + number.Length))
            : text.Remove(told.Index, told.Length);
        Assert.NotEmpty(PatternCheck.Text(plan, changed));
    }

    /// <summary>Half a repeat of 22 stitches is nearly as deep as a crown: over half of the rows end together.</summary>
    [Fact]
    public void A_crown_that_closes_at_one_height_is_said_to()
    {
        Assert.Contains(Crowned().Planned().Findings, f => f.Place == "garment.crown" && f.Text.Contains("closes at one height", StringComparison.Ordinal));
    }
}
