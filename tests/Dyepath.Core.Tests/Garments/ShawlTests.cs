using System.Collections.Immutable;
using System.Globalization;
using System.Text.RegularExpressions;
using CsCheck;
using Dyepath.Core.Booklets;
using Dyepath.Core.Checking;
using Dyepath.Core.Constructions;
using Dyepath.Core.Edgings;
using Dyepath.Core.Fabrics;
using Dyepath.Core.Garments;
using Dyepath.Core.Instructions;
using Dyepath.Core.Making.Order;
using Dyepath.Core.Making.Work;
using Dyepath.Core.Planning;
using Dyepath.Core.Projects;
using Dyepath.Core.Quantities;
using Dyepath.Core.Reading;
using Dyepath.Core.Shaping;
using Dyepath.Core.Swatches;
using Dyepath.Core.Tests.Shaping;
using Dyepath.Core.Yarns;
using static Dyepath.Core.Tests.Garments.TestProjects;

namespace Dyepath.Core.Tests.Garments;

/// <summary>Rows that grow from a short first one and shrink again, from the document to the words.</summary>
public sealed class ShawlTests
{
    /// <summary>Stitch, sequence, direction; an even period has steps of half of it, an odd one of all of it.</summary>
    public static TheoryData<string, bool, Direction> Ways() => new()
    {
        { "sc", true, Direction.Up },
        { "sc", true, Direction.Sideways },
        { "sc", false, Direction.Sideways },
        { "hdc", true, Direction.Up },
        { "hdc", false, Direction.Sideways },
        { "dc", true, Direction.Sideways },
    };

    [Theory]
    [MemberData(nameof(Ways))]
    public void Every_cell_is_where_a_walk_along_the_yarn_comes_to_and_has_the_colour_of_the_uncut_panel(string stitch, bool even, Direction direction)
    {
        var plan = ShawlOf(stitch, even, direction).Planned();
        var (piece, ring) = (plan.Sizes[0].Pieces[0], plan.Sequence.Ring);
        var part = Assert.Single(piece.Shape!.Parts);
        var turn = ColourRing.ToMicro(piece.TurnCost);
        var brute = new BruteShape([.. ring.Sections.Select(s => (int)(s / ColourRing.Unit))], turn);
        // The panel of the widest row: its first stitch lies as many stitches before the shawl's as columns lie between them.
        var rows = BruteShape.Columns(part.Outline);
        var (right, left) = (rows.Min(r => r.First), rows.Max(r => r.Last));
        var wide = brute.Uncut(left - right + 1, ColourRing.ToMicro(piece.Start) + (right - rows[0].First) * ColourRing.Unit);
        var narrow = brute.Uncut(piece.Stitches, ColourRing.ToMicro(piece.Start));
        foreach (var ((row, column), section) in brute.Walk(new BrutePart(0, false, ColourRing.ToMicro(piece.Start), rows)))
        {
            Assert.Equal(section, part.Fabric[row, column]);
            Assert.Equal(ring.Colours[wide(row, column - right)], ring.Colours[section]);
            Assert.Equal(ring.Colours[narrow(row, column)], ring.Colours[section]);
        }
        Assert.True(piece.Shape.KeepsMotif);
    }

    [Theory]
    [MemberData(nameof(Ways))]
    public void Rows_grow_in_whole_half_rounds_of_the_colours_and_follow_the_triangle(string stitch, bool even, Direction direction)
    {
        var plan = ShawlOf(stitch, even, direction).Planned();
        var piece = plan.Sizes[0].Pieces[0];
        var outline = piece.Shape!.Parts[0].Outline;
        var step = even ? 11 : 19;
        var widths = Enumerable.Range(0, piece.Rows).Select(r => outline.At(r).Units).ToArray();
        Assert.All(widths.Skip(1).Zip(widths), w => Assert.Equal(0, (w.First - w.Second) % step));
        var up = direction == Direction.Up;
        // Upwards the rows only grow; sideways they grow to the middle and shrink as they grew.
        var full = widths.Max();
        for (var row = 0; row < piece.Rows; row++)
        {
            var share = up ? (row + 0.5) / piece.Rows : 1 - Math.Abs(2 * (row + 0.5) / piece.Rows - 1);
            // Half a step at each edge that moves, and what the triangle grows or shrinks by in the row for which the edge has to wait; the
            // tips are as wide as the narrowest row.
            var most = (up ? 2 : 1) * (step / 2.0 + 4);
            Assert.InRange(widths[row] - share * full, -most, Math.Max(most, widths.Min()));
        }
        Assert.InRange(widths.Min(), 3, 2 + step);
        if (up)
            Assert.Equal(widths.Order(), widths);
        var size = plan.Sizes[0];
        // 14 stitches to 10 cm: along the rows the finished measure is that of the widest one.
        Assert.Equal(full * 10.0 / 14, size.Finished[up ? GarmentMeasure.Wingspan : GarmentMeasure.Depth].Centimetres, 0.01);
        Assert.InRange(size.Finished[GarmentMeasure.Wingspan].Centimetres, 150, 170);
        Assert.InRange(size.Finished[GarmentMeasure.Depth].Centimetres, 58, 72);
    }

    [Theory]
    [MemberData(nameof(Ways))]
    public void The_plan_and_its_words_agree(string stitch, bool even, Direction direction)
    {
        foreach (var edged in new[] { false, true })
        {
            var project = ShawlOf(stitch, even, direction);
            if (edged)
                project = project.With(g => g with { Edgings = [new EdgingChoice(EdgingPlace.Border, "sc", 3)] });
            var plan = project.Planned();
            Assert.Empty(PlanCheck.Verify(plan));
            var booklet = PatternWriter.Write(plan);
            foreach (var terms in Enum.GetValues<Terms>())
                Assert.Empty(PatternCheck.Text(plan, TextBooklet.Write(booklet, plan.Project.Edition with { Terms = terms, Size = null })));
        }
    }

    /// <summary>A reader of its own, with squared paper and a strand of yarn: the words make the cells, and each step ends where it says.</summary>
    [Theory]
    [MemberData(nameof(Ways))]
    public void The_words_make_the_outline_and_name_the_colour_at_each_step(string stitch, bool even, Direction direction)
    {
        var plan = ShawlOf(stitch, even, direction).Planned();
        var piece = plan.Sizes[0].Pieces[0];
        var text = TextBooklet.Write(PatternWriter.Write(plan), plan.Project.Edition with { Terms = Terms.Us, Size = null });
        var lines = text[text.IndexOf("## Shawl", StringComparison.Ordinal)..].Split("\n\n")[0].Replace("\n    ", " ", StringComparison.Ordinal).Split('\n');
        var (columns, waiting, steps) = ((First: 0, Last: -1), 0, 0);
        var outline = piece.Shape!.Parts[0].Outline;
        var strand = plan.Sequence.Ring.Sections.SelectMany((section, i) => Enumerable.Range(1, (int)(section / ColourRing.Unit))
            .Select(n => $"{plan.Sequence.Colours[i].Symbol}{n}")).ToArray();
        var at = (int)piece.Start - 1;
        var worked = 0;
        foreach (var line in lines)
        {
            if (Number(line, "^Chain: Join .* in the first st of row ([0-9]+), ") is > 0 and var on)
            {
                Assert.Equal(worked, on);
                Assert.Equal(worked + 1, Number(line, "where row ([0-9]+) will end"));
                waiting = Number(line, "ch ([0-9]+) and fasten off");
                continue;
            }
            var row = Math.Max(Number(line, "^Row ([0-9]+) \\("), Number(line, "^Rows? ([0-9]+)(?: to [0-9]+)?: As row"));
            if (row == 0)
                continue;
            Assert.Equal(worked + 1, row);
            for (var last = Math.Max(row, Number(line, "^Rows? (?:[0-9]+ to )?([0-9]+): As row")); row <= last; row++)
            {
                if (row == 1)
                    columns = (0, Number(line, "([0-9]+) sts") - 1);
                var change = Number(line, "in each of the ([0-9]+) ch") - Number(line, "to last ([0-9]+) sts?");
                if (change > 0)
                    Assert.Equal(waiting, change);
                columns = row % 2 == 1 ? (columns.First, columns.Last + change) : (columns.First - change, columns.Last);
                Assert.Equal((outline.At(row - 1).First, outline.At(row - 1).Last), columns);
                at += columns.Last - columns.First + 1;
                if (change != 0)
                    Assert.Contains($"the last at {strand[at % strand.Length]}.", line, StringComparison.Ordinal);
                steps += change == 0 ? 0 : 1;
                worked = row;
            }
        }
        Assert.Equal(piece.Rows, worked);
        Assert.Equal(piece.Shape.Steps.Count(s => s.Act is ShapingAct.WorkOverChains or ShapingAct.LeaveUnworked), steps);
    }

    [Theory]
    [MemberData(nameof(Ways))]
    public void Yarn_chains_and_drawings_have_the_stitches_that_are_worked(string stitch, bool even, Direction direction)
    {
        var plan = ShawlOf(stitch, even, direction).Planned();
        var (size, piece) = (plan.Sizes[0], plan.Sizes[0].Pieces[0]);
        var outline = piece.Shape!.Parts[0].Outline;
        var (stitches, chains, joined) = (0, 0, 0);
        for (var row = 0; row < piece.Rows; row++)
        {
            stitches += outline.At(row).Units;
            var grown = row == 0 ? 0 : Math.Max(0, outline.At(row - 1).First - outline.At(row).First) + Math.Max(0, outline.At(row).Last - outline.At(row - 1).Last);
            (chains, joined) = (chains + grown, joined + (grown > 0 ? 1 : 0));
        }
        Assert.Equal((plan.Sequence.YarnPerUnit * stitches).Metres, size.Yarn.Uses.Single(u => u.Piece == PieceId.Shawl && u.Purpose == YarnPurpose.Stitches).Length.Metres, 0.001);
        var companion = size.Yarn.Uses.Single(u => u.Piece == PieceId.Shawl && u.Purpose == YarnPurpose.ChainsToWorkOver);
        Assert.True(companion.Companion);
        // Half a single crochet's yarn in a chain, and two ends of 15 cm to each length of it.
        var each = plan.Sequence.YarnPerUnit * (25.5 / 53 / plan.Project.Fabric.Stitch.YarnInSingleCrochet);
        Assert.Equal((chains * each + joined * Cm(30)).Metres, companion.Length.Metres, 0.001);
        Assert.Equal(stitches, WornPiece.Of(plan, piece).Cells.ToArray().Count(c => c != WornPiece.Empty));
        Assert.Equal(stitches, MakingOrder.Of(plan, size.Name).Parts.Single(p => p.Piece == piece).Planned!.Stitches);
        var chart = PatternWriter.Write(plan).Sections.SelectMany(s => s.Blocks).SelectMany(Inside).OfType<Figure>().Select(f => f.Picture).OfType<ColourChart>().Single();
        Assert.Equal(stitches, chart.Cells.Count(c => c != ColourChart.Blank));
        Assert.Equal(0, chart.RowOffsets.Min());
    }

    /// <summary>Steps move where rows begin, and not the picture: beside the hook, colours move from row to row as they do in a rectangle.</summary>
    [Theory]
    [MemberData(nameof(Ways))]
    public void Beside_the_hook_colours_move_by_the_lean_in_every_row(string stitch, bool even, Direction direction)
    {
        var plan = ShawlOf(stitch, even, direction).Planned();
        var piece = plan.Sizes[0].Pieces[0];
        var fabric = MakingOrder.Of(plan, plan.Sizes[0].Name).Parts.Single(p => p.Piece == piece).Fabric!;
        Assert.Null(RowWords.Earlier(fabric, 1));
        Assert.All(Enumerable.Range(2, fabric.Rows - 2), row => Assert.Equal(2 * piece.Lean, RowWords.Earlier(fabric, row)!.Value, 1e-6));
    }

    [Theory]
    [InlineData("linen", true, false, "fabric.stitch")]
    [InlineData("sc", true, true, "garment.grading.alternatingRows")]
    [InlineData("sc", false, false, "companion")]
    public void What_does_not_go_with_it_is_refused_where_it_stands(string stitch, bool companion, bool alternating, string place)
    {
        var project = ShawlOf(stitch, true, Direction.Up).With(g => g with { Grading = g.Grading with { AlternatingRows = alternating } });
        if (!companion)
            project = project with { Companion = null };
        Assert.Contains(project.Tried().Reasons, f => f.Place == place);
    }

    [Fact]
    public void A_starter_plans_in_single_and_in_half_double_crochet()
    {
        foreach (var stitch in new[] { FabricStitch.SingleCrochet, FabricStitch.All.First(s => s.Id == "hdc") })
        {
            var project = StarterDocument.Of(Repertoire.All.First(k => k.Name == "shawl"));
            Assert.True((project with { Fabric = project.Fabric with { Stitch = stitch } }).Planned().Sizes[0].Pieces[0].Shape!.KeepsMotif);
        }
    }

    [Fact]
    public void Any_shawl_is_planned_and_read_back_or_refused_for_a_reason()
    {
        var planned = 0;
        Gen.Select(Gen.Select(Gen.Int[20, 260], Gen.Int[8, 150], Gen.Int[8, 30], Gen.Int[6, 30]), Gen.Int[2, 9].Array[2, 6], Gen.Int[0, 7], Gen.Bool).Holds((measures, sections, ways, edged) =>
        {
            var project = ShawlOf((ways / 2) switch { 1 => "hdc", 2 => "dc", _ => "sc" }, true, ways % 2 == 0 ? Direction.Up : Direction.Sideways);
            var (across, down, stitches, rows) = measures;
            var names = project.Yarn.Sections;
            project = project with
            {
                Yarn = project.Yarn with
                {
                    Sections = [.. sections.Select((n, i) => names[i % 4] with { Name = $"colour {i + 1}", Length = Cm(6.3 * n) })],
                    Counted = [project.Yarn.Counted[0] with { Repeats = [.. Enumerable.Repeat(sections.ToImmutableArray(), 3)] }],
                },
                Fabric = project.Fabric with
                {
                    Swatch = project.Fabric.Swatch with { Worked = new Gauge(stitches, rows, Cm(10)) },
                    SectionStitches = [.. sections],
                },
                Garment = project.Garment with
                {
                    Shape = new Shawl(Cm(across), Cm(down)),
                    Edgings = edged ? [new EdgingChoice(EdgingPlace.Border, "sc", 2)] : [],
                },
            };
            var result = project.Tried();
            if (result.Plan is not { } plan)
                return !result.Reasons.IsEmpty && result.Reasons.All(r => r.Text.Length > 0 && !r.Place.StartsWith("inner", StringComparison.Ordinal));
            planned++;
            var text = TextBooklet.Write(PatternWriter.Write(plan), plan.Project.Edition with { Size = null });
            return PlanCheck.Verify(plan).IsEmpty && !PatternCheck.Text(plan, text).Any() && plan.Sizes[0].Pieces[0].Shape!.KeepsMotif;
        }, seed: 924, cases: 60);
        Assert.True(planned > 15, $"{planned}");
    }

    private static IEnumerable<Block> Inside(Block block) => block is ForSizes some ? some.Blocks.SelectMany(Inside) : [block];

    private static Project ShawlOf(string stitch, bool even, Direction direction) => Begun("shawl", stitch, even, direction);

    private static int Number(string line, string pattern) =>
        Regex.Match(line, pattern) is { Success: true } match ? int.Parse(match.Groups[1].Value, CultureInfo.InvariantCulture) : 0;
}
