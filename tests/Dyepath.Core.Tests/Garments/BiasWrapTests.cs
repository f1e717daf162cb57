using System.Collections.Immutable;
using Dyepath.Core.Booklets;
using Dyepath.Core.Checking;
using Dyepath.Core.Constructions;
using Dyepath.Core.Edgings;
using Dyepath.Core.Fabrics;
using Dyepath.Core.Garments;
using Dyepath.Core.Instructions;
using Dyepath.Core.Making.Order;
using Dyepath.Core.Planning;
using Dyepath.Core.Projects;
using Dyepath.Core.Quantities;
using Dyepath.Core.Reading;
using Dyepath.Core.Swatches;
using Dyepath.Core.Tests.Shaping;
using Dyepath.Core.Yarns;
using static Dyepath.Core.Tests.Garments.TestProjects;

namespace Dyepath.Core.Tests.Garments;

/// <summary>A parallelogram of rows that leave stitches at one edge and go on over chains at the other.</summary>
public sealed class BiasWrapTests
{
    public static TheoryData<string, bool, Direction> Ways() => new()
    {
        { "sc", true, Direction.Up },
        { "sc", false, Direction.Up },
        { "sc", true, Direction.Sideways },
        { "hdc", true, Direction.Up },
        { "dc", false, Direction.Up },
    };

    /// <summary>Law 13: from pair to pair, right-side rows move by what an upright panel of the same first row would less 2k, wrong-side rows as it would.</summary>
    [Theory]
    [MemberData(nameof(Ways))]
    public void Every_cell_is_where_a_walk_comes_to_and_each_kind_of_rows_leans_as_law_13_says(string stitch, bool even, Direction direction)
    {
        var plan = WrapOf(stitch, even, direction).Planned();
        var (piece, ring) = (plan.Sizes[0].Pieces[0], plan.Sequence.Ring);
        var part = Assert.Single(piece.Shape!.Parts);
        var brute = new BruteShape([.. ring.Sections.Select(s => (int)(s / ColourRing.Unit))], 0);
        // Two stitches less at the right-hand end of every row that ends there, two chains at the left of every other.
        var rows = Enumerable.Range(0, piece.Rows).Select(r => ((r + 1) / 2 * 2, piece.Stitches - 1 + r / 2 * 2)).ToArray();
        Assert.Equal(rows, BruteShape.Columns(part.Outline));
        var colours = ring.Sections.SelectMany((s, i) => Enumerable.Repeat(i, (int)(s / ColourRing.Unit))).ToArray();
        foreach (var ((row, column), section) in brute.Walk(new BrutePart(0, false, ColourRing.ToMicro(piece.Start), rows)))
        {
            Assert.Equal(section, part.Fabric[row, column]);
            var moved = row / 2 * (row % 2 == 0 ? 2 * piece.Stitches - 4 : 2 * piece.Stitches);
            var at = (int)piece.Start + moved + (row % 2 == 0 ? column : 2 * piece.Stitches - 1 - column);
            Assert.Equal(colours[at % colours.Length], section);
        }
        var period = colours.Length;
        Assert.Equal(Wrapped(2 * piece.Stitches - 4, period) / 2, piece.Shape.LeanFrom(0));
        Assert.Equal(Wrapped(2 * piece.Stitches, period) / 2, piece.Shape.LeanFrom(1));
        Assert.Equal(piece.Lean, (piece.Shape.LeanFrom(0) + piece.Shape.LeanFrom(1)) / 2);
    }

    [Theory]
    [MemberData(nameof(Ways))]
    public void The_plan_and_its_words_agree(string stitch, bool even, Direction direction)
    {
        foreach (var edged in new[] { false, true })
        {
            var project = WrapOf(stitch, even, direction);
            if (edged)
                project = project.With(g => g with { Edgings = [new EdgingChoice(EdgingPlace.Border, "sc", 3)] });
            var plan = project.Planned();
            Assert.Empty(PlanCheck.Verify(plan));
            var booklet = PatternWriter.Write(plan);
            foreach (var terms in Enum.GetValues<Terms>())
                Assert.Empty(PatternCheck.Text(plan, TextBooklet.Write(booklet, plan.Project.Edition with { Terms = terms, Size = null })));
        }
    }

    [Fact]
    public void Its_rows_are_told_once_and_repeated()
    {
        var plan = WrapOf("sc", true, Direction.Up).Planned();
        var piece = plan.Sizes[0].Pieces[0];
        var (wide, narrow) = (piece.Stitches, piece.Stitches - 2);
        var text = TextBooklet.Write(PatternWriter.Write(plan), plan.Project.Edition with { Terms = Terms.Us, Size = null }).Replace("\n    ", " ", StringComparison.Ordinal);
        Assert.Contains($"\nRow 1 (RS): Sc in 2nd ch from hook and in each ch to end, turn. {wide} sts.\n", text, StringComparison.Ordinal);
        Assert.Contains($"\nRow 2 (WS): Ch 1, sc in each st to last 2 sts, leave these unworked, turn. {narrow} sts, the last at ", text, StringComparison.Ordinal);
        Assert.Contains("\nChain: Join Companion yarn with sl st in the first st of row 2, at the edge where row 3 will end, ch 2 and leave its loop on a marker.\n", text, StringComparison.Ordinal);
        Assert.Contains($"\nRow 3 (RS): Ch 1, sc in each st to end, then sc in each of the 2 ch, turn. {wide} sts, the last at ", text, StringComparison.Ordinal);
        Assert.Contains($"Rows 4 to {piece.Rows}: As rows 2 and 3 in turn, {narrow} and {wide} sts, each", text, StringComparison.Ordinal);
        // Beside the hook each row has its own chain; beginning and foundation are steps besides.
        var steps = MakingOrder.Of(plan, plan.Sizes[0].Name).Parts.Single(p => p.Piece == piece).Steps;
        Assert.Equal((piece.Rows - 1) / 2, steps.Count(s => s is not RowStep) - 2);
    }

    [Fact]
    public void Both_leans_are_said_and_yarn_has_every_chain()
    {
        var plan = WrapOf("sc", true, Direction.Up).Planned();
        var (size, piece) = (plan.Sizes[0], plan.Sizes[0].Pieces[0]);
        var chains = (piece.Rows - 1) / 2;
        var each = plan.Sequence.YarnPerUnit * (25.5 / 53);
        Assert.Equal((2 * chains * each + Cm(30) + (chains - 1) * plan.Sequence.YarnPerUnit).Metres, size.Yarn.Uses.Single(u => u.Piece == PieceId.Wrap && u.Purpose == YarnPurpose.ChainsToWorkOver).Length.Metres, 0.001);
        var units = Enumerable.Range(0, piece.Rows).Sum(r => r % 2 == 0 ? piece.Stitches : piece.Stitches - 2);
        Assert.Equal(units, WornPiece.Of(plan, piece).Cells.ToArray().Count(c => c != WornPiece.Empty));
        Assert.Equal((piece.Stitches - 1) * 10.0 / 14, size.Finished[GarmentMeasure.Width].Centimetres, 0.01);
        var text = TextBooklet.Write(PatternWriter.Write(plan), plan.Project.Edition with { Size = null }).Replace("\n    ", " ", StringComparison.Ordinal);
        string[] shifts = [Moved(2 * piece.Lean - 2), Moved(2 * piece.Lean + 2)];
        Assert.Contains($"each colour of a right-side row begins {shifts[0]} two rows below, each colour of a wrong-side row {shifts[1]} two rows below:", text, StringComparison.Ordinal);
        Assert.Empty(PatternCheck.Text(plan, text));
        foreach (var (kind, by) in new[] { ("right", 2 * piece.Lean - 2), ("wrong", 2 * piece.Lean + 2) })
            Assert.NotEmpty(PatternCheck.Text(plan, text.Replace($"{kind}-side row begins {Moved(by)}", $"{kind}-side row begins {Moved(by + 2)}", StringComparison.Ordinal).Replace($"{kind}-side row {Moved(by)}", $"{kind}-side row {Moved(by + 2)}", StringComparison.Ordinal)));

        static string Moved(double by) => by == 0 ? "exactly above itself" : FormattableString.Invariant($"{Math.Abs(by)} stitches {(by > 0 ? "earlier" : "later")} than it did");
    }

    [Theory]
    [InlineData("linen", true, 130, "fabric.stitch")]
    [InlineData("sc", false, 130, "companion")]
    [InlineData("sc", true, 900, "garment.length")]
    public void What_does_not_go_with_it_is_refused_where_it_stands(string stitch, bool companion, int length, string place)
    {
        var project = WrapOf(stitch, true, Direction.Up).With(g => g with { Shape = new BiasWrap(Cm(40), Cm(length)) });
        if (!companion)
            project = project with { Companion = null };
        Assert.Contains(project.Tried().Reasons, f => f.Place == place);
    }

    private static double Wrapped(int shift, int period)
    {
        var rest = shift % period;
        return 2 * rest > period ? rest - period : rest;
    }

    private static Project WrapOf(string stitch, bool even, Direction direction) => Begun("bias-wrap", stitch, even, direction);
}
