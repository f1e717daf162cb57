using System.Text.Json;
using Dyepath.Core.Constructions;
using Dyepath.Core.Garments;
using Dyepath.Core.Motifs;
using Dyepath.Core.Planning;
using Dyepath.Core.Projects;
using Dyepath.Core.Tests.Constructions;
using static Dyepath.Core.Tests.Garments.TestProjects;

namespace Dyepath.Core.Tests.Garments;

/// <summary>What other programs read of pieces that are no rectangles, and of marks that only some garments have.</summary>
public sealed class PlanJsonShapesTests
{
    /// <summary>Right-side rows lean by 2 stitches a row less than wrong-side rows do, on a bias of 2 a pair (docs/garments.md).</summary>
    [Fact]
    public void A_bias_has_two_leans()
    {
        var plan = Begun("bias-wrap").Planned();
        var piece = Piece(plan, 0);
        var leans = piece.GetProperty("leans");
        var shape = plan.Sizes[0].Pieces[0].Shape!;
        var (right, wrong) = (leans.GetProperty("rightSideRows").GetDouble(), leans.GetProperty("wrongSideRows").GetDouble());
        Assert.Equal((shape.LeanFrom(0), shape.LeanFrom(1)), (right, wrong), new Thousandth());
        Assert.Equal(2, Math.Abs(right - wrong), 1e-3);
        Assert.False(Piece(Begun("wrap").Planned(), 0).TryGetProperty("leans", out _), "An upright piece has one lean.");
    }

    [Fact]
    public void Gores_are_told_by_the_row_that_goes_on_over_them()
    {
        var plan = Begun("hat").With(g => g with { Direction = Direction.Sideways, Shape = (Hat)g.Shape with { Gored = true } }).Planned();
        var strips = plan.Sizes[0].Pieces[0].Shape!.Strips;
        var told = Piece(plan, 0).GetProperty("gores").EnumerateArray().ToArray();
        Assert.Equal(strips.Length, told.Length);
        foreach (var (gore, strip) in told.Zip(strips))
        {
            Assert.Equal(
                (strip.Row + 1, strip.Units, strip.Skipped),
                (gore.GetProperty("goesOnInRow").GetInt32(), gore.GetProperty("overStitches").GetInt32(), gore.GetProperty("rowsMissing").GetInt32()));
            Assert.Equal(strip.Jump, gore.GetProperty("jump").GetDouble(), 1e-3);
        }
        Assert.False(Piece(Begun("hat").Planned(), 0).TryGetProperty("gores", out _), "A drawn hat has no gores.");
    }

    /// <summary>Two triangles, slanted towards the neck's middle, from their widest row to a tip of one stitch; and the front's motifs.</summary>
    [Fact]
    public void Inserts_have_their_rows_and_a_cut_piece_what_is_seen_of_it()
    {
        var plan = GarmentTrials.WithCompanion(Begun("vest")).With(g => g with
        {
            Direction = Direction.Sideways,
            Shape = (Vest)g.Shape with { Neck = new Neck(NeckForm.VInsert, null) },
        }).Planned();
        var size = plan.Sizes[0];
        for (var i = 0; i < size.Pieces.Length; i++)
        {
            var (piece, planned) = (Piece(plan, i), size.Pieces[i]);
            Assert.Equal(planned.Taper is not null, piece.TryGetProperty("taper", out var taper));
            if (planned.Taper is { } triangle)
            {
                Assert.Equal(triangle.Slope == PieceSide.Left ? "left" : "right", taper.GetProperty("slope").GetString());
                var rows = taper.GetProperty("rowStitches").EnumerateArray().Select(r => r.GetInt32()).ToArray();
                Assert.Equal((planned.Rows, planned.Stitches, 1), (rows.Length, rows[0], rows[^1]));
                Assert.Equal(Enumerable.Range(0, planned.Rows).Select(triangle.At), rows);
            }
            if (planned.Shape is { } shape)
            {
                var motifs = piece.TryGetProperty("motifs", out var seen)
                    ? seen.EnumerateArray().Select(m => (m.GetProperty("motif").GetString(), Math.Round(m.GetProperty("share").GetDouble(), 2))).ToArray() : [];
                var read = PieceMotif.Seen(plan, planned);
                Assert.Equal(read.Length > 1 ? read.Select(m => ((string?)MotifNames.Of(m.Kind), Math.Round(m.Share, 2))) : [], motifs);
                Assert.Equal(shape.WidestRow != planned.Stitches, piece.TryGetProperty("widestStitches", out var widest));
                if (shape.WidestRow != planned.Stitches)
                    Assert.Equal(shape.Parts.Max(p => p.Outline.Runs.Max(r => r.Units)), widest.GetInt32());
            }
        }
    }

    [Theory]
    [InlineData("tabard", "tab begins, from the hem", "tab ends, from the hem", "neck opening begins", "neck opening ends")]
    [InlineData("pet-tabard", "leg openings begin, from the hem")]
    [InlineData("off-shoulder-top", "vents end, from the hem", "sleeve join begins, from the hem")]
    [InlineData("pullover", "neck opening begins", "neck opening ends", "armholes begin, from the hem")]
    public void A_mark_says_what_it_marks(string garment, params string[] marks)
    {
        var project = Begun(garment).With(g => g with { Direction = Direction.Sideways, Edgings = [], Shape = g.Shape is OffShoulder top ? top with { Vent = Cm(12) } : g.Shape });
        var plan = project.Planned();
        var told = Piece(plan, 0).GetProperty("marks").EnumerateArray().ToArray();
        Assert.All(marks, what => Assert.Contains(told, m => m.GetProperty("what").GetString() == what));
        Assert.Equal(
            plan.Sizes[0].Pieces[0].Marks.Select(m => m.Position),
            told.Select(m => (m.TryGetProperty("stitch", out var at) ? at : m.GetProperty("row")).GetInt32()));
    }

    /// <summary>
    /// Cell by cell the yarn is walked along: sections of whole stitches and turns that take nothing, so that the stitches of a part follow
    /// each other along the sequence from where the part begins, one row to the left and the next one back.
    /// </summary>
    [Theory]
    [InlineData("vest", Direction.Up)]
    [InlineData("vest", Direction.Sideways)]
    [InlineData("cushion", Direction.Up)]
    public void Cells_are_those_that_a_walk_along_the_yarn_comes_to(string garment, Direction direction)
    {
        var plan = TestProjects.Begun(garment, "sc", even: true, direction).With(g => g with { Grading = g.Grading with { UnevenWidths = true, SeveralLeans = true } }).Planned();
        var size = plan.Sizes[^1];
        using var stream = new MemoryStream();
        using (var writer = new Utf8JsonWriter(stream))
            PlanJson.Write(writer, plan, size.Name);
        using var json = JsonDocument.Parse(stream.ToArray());
        var parts = json.RootElement.GetProperty("sizes").EnumerateArray().Single(s => s.TryGetProperty("cells", out _)).GetProperty("cells").EnumerateArray().ToArray();
        int[] sequence = [.. new[] { 6, 5, 7, 4 }.SelectMany((n, section) => Enumerable.Repeat(section, n))];
        Assert.Equal(size.Pieces.Sum(p => p.Shape?.Parts.Length ?? 1), parts.Length);
        foreach (var part in parts)
        {
            Assert.Equal([6.0, 5, 7, 4], part.GetProperty("sections").EnumerateArray().Select(s => s.GetDouble()));
            Assert.Equal(0, part.GetProperty("turnCost").GetDouble());
            var (at, fromRow) = ((int)part.GetProperty("startUnits").GetDouble(), part.GetProperty("fromRow").GetInt32());
            var toLeft = part.GetProperty("startsFrom").GetString() == "right";
            var outline = part.GetProperty("outline").EnumerateArray()
                .Select(o => (Row: o.GetProperty("fromRow").GetInt32(), First: o.GetProperty("first").GetInt32(), Last: o.GetProperty("last").GetInt32())).ToArray();
            Assert.Equal(fromRow, outline[0].Row);
            Assert.All(outline.Zip(outline.Skip(1)), o => Assert.True(
                o.First.Row < o.Second.Row && (o.First.First, o.First.Last) != (o.Second.First, o.Second.Last), "A stretch goes on as the one before."));
            var row = fromRow;
            foreach (var cells in part.GetProperty("rows").EnumerateArray())
            {
                int[] told = [.. cells.EnumerateArray().Select(c => c.GetInt32())];
                var run = outline.Last(o => o.Row <= row);
                Assert.Equal(run.Last - run.First + 1, told.Length);
                int[] worked = toLeft ? told : [.. told.Reverse()];
                Assert.Equal(Enumerable.Range(at, told.Length).Select(place => sequence[place % 22]), worked);
                (row, at, toLeft) = (row + 1, at + told.Length, !toLeft);
            }
        }
    }

    private static Project Begun(string garment) => StarterDocument.Of(Repertoire.All.First(k => k.Name == garment));

    /// <summary>Of the first size.</summary>
    private static JsonElement Piece(Plan plan, int at)
    {
        using var json = JsonDocument.Parse(PlanJson.Write(plan));
        return json.RootElement.GetProperty("sizes")[0].GetProperty("pieces")[at].Clone();
    }

    private sealed class Thousandth : IEqualityComparer<(double, double)>
    {
        public bool Equals((double, double) x, (double, double) y) => Math.Abs(x.Item1 - y.Item1) < 1e-3 && Math.Abs(x.Item2 - y.Item2) < 1e-3;

        public int GetHashCode((double, double) obj) => 0;
    }
}
