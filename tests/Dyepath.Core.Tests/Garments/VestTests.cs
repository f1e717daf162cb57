using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using Dyepath.Core.Booklets;
using Dyepath.Core.Checking;
using Dyepath.Core.Constructions;
using Dyepath.Core.Fabrics;
using Dyepath.Core.Garments;
using Dyepath.Core.Instructions;
using Dyepath.Core.Making;
using Dyepath.Core.Making.Order;
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

/// <summary>A garment whose pieces are shaped, from its document to its words.</summary>
public sealed class VestTests
{
    /// <summary>Stitch, sequence, direction; an odd period has no half, so that the motif has to give way.</summary>
    public static TheoryData<string, bool, Direction> Ways() => new()
    {
        { "sc", true, Direction.Up },
        { "sc", true, Direction.Sideways },
        { "sc", false, Direction.Sideways },
        { "dc", true, Direction.Up },
        { "hdc", true, Direction.Sideways },
    };

    [Theory]
    [MemberData(nameof(Ways))]
    public void Every_cell_is_where_a_walk_along_the_yarn_comes_to(string stitch, bool even, Direction direction)
    {
        var plan = VestOf(stitch, even, direction).Planned();
        var ring = plan.Sequence.Ring;
        foreach (var piece in plan.Sizes.SelectMany(s => s.Pieces))
        {
            var shape = piece.Shape!;
            var turn = ColourRing.ToMicro(piece.TurnCost);
            var brute = new BruteShape([.. ring.Sections.Select(s => (int)(s / ColourRing.Unit))], turn);
            var uncut = brute.Uncut(piece.Stitches, ColourRing.ToMicro(piece.Start));
            long end = 0;
            foreach (var part in shape.Parts)
            {
                var rows = BruteShape.Columns(part.Outline);
                // A part that is joined on begins where the piece that is never cut has its first stitch.
                var start = part.Continues ? end : ColourRing.ToMicro(piece.Start) + part.FirstRow * (piece.Stitches * ColourRing.Unit + turn)
                    + (part.FirstRow % 2 == 0 ? rows[0].First : piece.Stitches - 1 - rows[0].Last) * ColourRing.Unit;
                var walk = new BrutePart(part.FirstRow, part.FirstRow % 2 == 1, start, rows);
                foreach (var ((row, column), section) in brute.Walk(walk))
                {
                    Assert.Equal(section, part.Fabric[row - part.FirstRow, column]);
                    if (shape.KeepsMotif)
                        Assert.Equal(ring.Colours[uncut(row, column)], ring.Colours[section]);
                }
                end = brute.EndOf(walk);
            }
        }
        Assert.Equal(even, plan.Sizes.SelectMany(s => s.Pieces).All(p => p.Shape!.KeepsMotif));
    }

    [Theory]
    [MemberData(nameof(Ways))]
    public void The_plan_and_its_words_agree(string stitch, bool even, Direction direction)
    {
        var plan = VestOf(stitch, even, direction).Planned();
        Assert.Empty(PlanCheck.Verify(plan));
        var booklet = PatternWriter.Write(plan);
        foreach (var terms in Enum.GetValues<Terms>())
            Assert.Empty(PatternCheck.Text(plan, TextBooklet.Write(booklet, plan.Project.Edition with { Terms = terms, Size = null })));
    }

    /// <summary>A reader of its own: what the rows of one size say, laid out in columns, is the outline.</summary>
    [Theory]
    [MemberData(nameof(Ways))]
    public void The_words_make_the_outline(string stitch, bool even, Direction direction)
    {
        var plan = VestOf(stitch, even, direction).Planned();
        var text = TextBooklet.Write(PatternWriter.Write(plan), plan.Project.Edition with { Terms = Terms.Us, Size = null });
        foreach (var piece in plan.Sizes[0].Pieces)
        {
            var heading = $"## {char.ToUpperInvariant(piece.Name[0])}{piece.Name[1..]}, size {plan.Sizes[0].Name}";
            var lines = text[text.IndexOf(heading, StringComparison.Ordinal)..].Split("\n\n")[0].Replace("\n    ", " ", StringComparison.Ordinal).Split('\n');
            var (planned, told) = (Cells(piece.Shape!), Told(lines));
            Assert.Empty(planned.Except(told));
            Assert.Empty(told.Except(planned));
        }
    }

    [Theory]
    [MemberData(nameof(Ways))]
    public void Nothing_is_drawn_beyond_the_outline(string stitch, bool even, Direction direction)
    {
        var plan = VestOf(stitch, even, direction).Planned();
        foreach (var piece in plan.Sizes[1].Pieces)
        {
            var worn = WornPiece.Of(plan, piece);
            var cells = Cells(piece.Shape!);
            Assert.Equal(cells.Count, worn.Cells.ToArray().Count(c => c != WornPiece.Empty));
            for (var y = 0; y < worn.Rows; y++)
            {
                for (var x = 0; x < worn.Columns; x++)
                {
                    var (row, stitchAt) = worn.At(x, y);
                    Assert.Equal(cells.Contains((row, stitchAt)), worn.Cells[y * worn.Columns + x] != WornPiece.Empty);
                }
            }
        }
    }

    [Theory]
    [MemberData(nameof(Ways))]
    public void Yarn_and_making_have_the_stitches_that_are_worked(string stitch, bool even, Direction direction)
    {
        var plan = VestOf(stitch, even, direction).Planned();
        var size = plan.Sizes[0];
        var order = MakingOrder.Of(plan, size.Name);
        foreach (var piece in size.Pieces)
        {
            var units = Cells(piece.Shape!).Count;
            Assert.Equal((plan.Sequence.YarnPerUnit * units).Metres, size.Yarn.Uses.Single(u => u.Piece == piece.Id && u.Purpose == YarnPurpose.Stitches).Length.Metres, 0.001);
            var parts = order.Parts.Where(p => p.Piece == piece).ToArray();
            Assert.Equal(units, parts.Sum(p => p.Planned!.Stitches));
            Assert.Equal(piece.Shape!.Parts.Sum(p => p.Rows), parts.Sum(p => p.Rows));
            Assert.Equal(units, PlannedPiece.Of(plan, piece).Stitches);
            // The colours of every row, in the order of work.
            foreach (var part in parts)
            {
                var worked = Enumerable.Range(0, part.Rows).SelectMany(row => RowRuns.Of(part.Fabric!, row).SelectMany(run => Enumerable.Repeat(run.Section, run.Units)));
                Assert.Equal(worked.Select(s => plan.Sequence.Ring.Colours[s]), Enumerable.Range(0, part.Planned!.Stitches).Select(part.Planned.ColourAt));
            }
        }
    }

    [Fact]
    public void Measures_come_out_as_the_rules_ask_within_what_edges_may_be_let_off()
    {
        var plan = VestOf("sc", true, Direction.Up).Planned();
        foreach (var size in plan.Sizes)
        {
            var back = (size.Finished[GarmentMeasure.Width] / 2 - size.Body["crossBack"]) / 2;
            Assert.Equal(Math.Max(0, back.Centimetres), size.Target[GarmentMeasure.ArmholeInset].Centimetres, 0.01);
            foreach (var measure in new[] { GarmentMeasure.ArmholeInset, GarmentMeasure.NeckDepth, GarmentMeasure.BackNeckDepth, GarmentMeasure.ArmholeDepth })
                Assert.Equal(size.Target[measure].Centimetres, size.Finished[measure].Centimetres, 3.5);
            Assert.Equal(size.Target[GarmentMeasure.NeckWidth].Centimetres, size.Finished[GarmentMeasure.NeckWidth].Centimetres, 6.5);
            Assert.True(size.Finished[GarmentMeasure.NeckDepth] > size.Finished[GarmentMeasure.BackNeckDepth]);
        }
    }

    [Fact]
    public void A_broken_motif_is_said_where_it_breaks()
    {
        var plan = VestOf("sc", false, Direction.Sideways).Planned();
        var first = plan.Sizes.SelectMany(s => s.Pieces).SelectMany(p => p.Shape!.Breaks).First();
        var text = TextBooklet.Write(PatternWriter.Write(plan), plan.Project.Edition with { Size = null });
        Assert.Contains($"Motif: from row {first.Row + 1} on each colour begins ", text.Replace("\n    ", " ", StringComparison.Ordinal), StringComparison.Ordinal);
    }

    [Fact]
    public void A_plan_that_was_changed_is_found_out()
    {
        var plan = VestOf("sc", true, Direction.Up).Planned();
        var piece = plan.Sizes[0].Pieces[0];
        var shape = piece.Shape!;
        var joined = shape.Parts.Single(p => p.Below is not null && !p.Continues);
        PartOutline As(ShapedPart p, double? start = null) => new(p.FirstRow, p.Outline) { Below = p.Below, Continues = p.Continues, Start = start };
        var moved = ShapedPiece.Work(shape.Panel, [.. shape.Parts.Select(p => p == joined ? As(p, 3.25) : As(p))]);
        var wrong = plan with { Sizes = [plan.Sizes[0] with { Pieces = plan.Sizes[0].Pieces.SetItem(0, piece with { Shape = moved }) }] };
        Assert.Contains(PlanCheck.Verify(wrong), f => f.Place.Contains("second side", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("linen", false, "fabric.stitch")]
    [InlineData("sc", true, "garment.grading.alternatingRows")]
    public void What_does_not_go_with_shaped_rows_is_refused(string stitch, bool alternating, string place)
    {
        var project = VestOf(stitch, true, Direction.Up).With(g => g with { Grading = g.Grading with { AlternatingRows = alternating } });
        Assert.Contains(project.Tried().Reasons, f => f.Place == place);
    }

    [Fact]
    public void Cells_are_listed_part_by_part()
    {
        var plan = VestOf("sc", true, Direction.Up).Planned();
        var buffer = new MemoryStream();
        using (var json = new System.Text.Json.Utf8JsonWriter(buffer))
        {
            json.WriteStartObject();
            CellsJson.Write(json, plan, plan.Sizes[0]);
            json.WriteEndObject();
        }
        var cells = JsonNode.Parse(Encoding.UTF8.GetString(buffer.ToArray()))!["cells"]!.AsArray();
        var front = plan.Sizes[0].Pieces[0].Shape!;
        var listed = cells.Where(c => (string)c!["piece"]! == "front").ToArray();
        Assert.Equal(["body", "first side", "second side"], listed.Select(c => (string)c!["part"]!));
        Assert.Equal(front.Parts.Select(p => p.FirstRow), listed.Select(c => (int)c!["fromRow"]!));
        Assert.Equal(Cells(front).Count, listed.Sum(c => c!["rows"]!.AsArray().Sum(r => r!.AsArray().Count)));
        Assert.Equal("right", (string)listed[2]!["startsFrom"]!);
    }

    internal static Project VestOf(string stitch, bool even, Direction direction)
    {
        var project = Begun("vest", stitch, even, direction);
        return project with
        {
            Garment = project.Garment with
            {
                // More than a quarter of the even period, which is the furthest that a whole half of it can be.
                Shape = Lax((Vest)project.Garment.Shape),
                Grading = project.Garment.Grading with { UnevenWidths = true, SeveralLeans = true },
            },
        };
    }

    private static Vest Lax(Vest vest) => vest with { Neck = vest.Neck with { LetOff = Cm(4.5) } };

    private static HashSet<(int Row, int Column)> Cells(ShapedPiece shape) =>
    [
        .. shape.Parts.SelectMany(p => Enumerable.Range(0, p.Rows).SelectMany(row =>
            Enumerable.Range(p.Outline.At(row).First, p.Outline.At(row).Units).Select(column => (p.FirstRow + row, column)))),
    ];

    /// <summary>Follows the instructions of one size on squared paper: odd rows from the right, even rows back.</summary>
    private static HashSet<(int Row, int Column)> Told(string[] lines)
    {
        var cells = new HashSet<(int, int)>();
        var columns = new SortedSet<int>();
        var stands = new Dictionary<int, SortedSet<int>>();
        foreach (var line in lines)
        {
            if (Number(line, "^Foundation: Ch ([0-9]+)") > 0)
                continue;
            if (Number(line, "^[A-Z][a-z]+ side: Into row ([0-9]+), ") is > 0 and var on)
            {
                var left = stands[on].Where(c => !cells.Contains((on, c))).ToList();
                // Beside the first side there is a gap, and then what the second one stands on.
                var first = stands[on].Count - left.Count;
                columns = [.. stands[on].Skip(first + Number(line, "leave ([0-9]+) sts?"))];
                continue;
            }
            var row = Number(line, "^Row ([0-9]+) ");
            var last = row;
            if (row == 0)
            {
                row = Number(line, "^Rows? ([0-9]+)(?: to [0-9]+)?: As row");
                last = Number(line, "^Rows? (?:[0-9]+ to )?([0-9]+): As row");
            }
            if (row == 0)
                continue;
            for (; row <= last; row++)
            {
                var fromRight = row % 2 == 1;
                if (row == 1)
                    columns = [.. Enumerable.Range(0, Number(line, "([0-9]+) sts"))];
                for (var left = line.Contains("to last st,", StringComparison.Ordinal) || line.Contains("to last st (", StringComparison.Ordinal) ? 1 : Number(line, "to last ([0-9]+) sts"); left > 0; left--)
                    columns.Remove(fromRight ? columns.Max : columns.Min);
                for (var grown = line.Contains(" in the first ch,", StringComparison.Ordinal) ? 1 : Number(line, "in each of the ([0-9]+) ch"); grown > 0; grown--)
                    columns.Add(fromRight ? columns.Max + 1 : columns.Min - 1);
                if (!stands.TryGetValue(row, out var all))
                    stands.Add(row, all = []);
                all.UnionWith(columns);
                foreach (var column in columns)
                    Assert.True(cells.Add((row - 1, column)), $"row {row}, stitch {column} is worked twice");
            }
        }
        return cells;
    }

    private static int Number(string line, string pattern) =>
        Regex.Match(line, pattern) is { Success: true } match ? int.Parse(match.Groups[1].Value, CultureInfo.InvariantCulture) : 0;
}
