using Dyepath.Bench;
using Dyepath.Core.Constructions;
using Dyepath.Core.Fabrics;
using Dyepath.Core.Garments;
using Dyepath.Core.Planning;
using static Dyepath.Core.Tests.Garments.TestProjects;

namespace Dyepath.Core.Tests.Constructions;

/// <summary>
/// The sides of a front and of a back are mirror images of each other, and so are two fronts, read off the heights of their columns. Every
/// other row ends at one edge, so that worked up one side's edge may lie a row off the other's; no more is asked for by any colours.
/// </summary>
public sealed class MirroredSidesTests
{
    /// <summary>
    /// Square centimetres by which two fronts, which are two pieces of yarn of their own, or rows that are cut off at one end, may differ
    /// beyond that: a step of a few stitches (an assumption without a source).
    /// </summary>
    private const double AStep = 4;

    public static TheoryData<string, string, string, Direction> Begun =>
    [
        .. from starter in Starter.All
            where starter.Kind.Name is "vest" or "cardigan" or "pullover" && starter.Chart is not null
            where Extent.IsWhole || (starter.Chart is "women" or "child" && starter.Neck is "v" or "v-insert" or "round")
            from direction in new[] { Direction.Up, Direction.Sideways }
            where Extent.IsWhole || direction == Direction.Up || starter.Kind.Name == "cardigan"
            select (starter.Kind.Name, starter.Neck!, starter.Chart!, direction),
    ];

    [Theory]
    [MemberData(nameof(Begun))]
    public void Sides_that_are_to_be_alike_are(string garment, string neck, string chart, Direction direction)
    {
        var starter = Starter.Of(Repertoire.All.First(k => k.Name == garment), chart).First(s => s.Neck == neck);
        if (starter.Project().With(g => g with { Direction = direction }).Tried().Plan is not { } plan)
            return;
        var place = plan.StitchWidth.Centimetres * plan.RowHeight.Centimetres;
        foreach (var size in plan.Sizes)
        {
            foreach (var piece in size.Pieces.Where(p => p.Id is PieceId.Front or PieceId.Back && p.Shape is not null))
            {
                var heights = Heights(piece, direction);
                var apart = Apart(heights, heights) * place / 2;
                Assert.True(apart <= (direction == Direction.Up ? 0 : AStep), $"{size.Name} {piece.Name}: {apart:0.0} cm²");
                // No row begins over slip stitches, for which the pattern has no words.
                Assert.DoesNotContain(piece.Shape!.Steps, s => s.Act == Core.Shaping.ShapingAct.SlipStitchBack);
                // Where the motif goes on, it does so at both sides.
                Assert.True(apart == 0 || !piece.Shape!.KeepsMotif, $"{size.Name} {piece.Name}");
            }
            var fronts = size.Pieces.Where(p => p.Id is PieceId.LeftFront or PieceId.RightFront && p.Shape is not null).ToArray();
            if (fronts is [var one, var other])
                Assert.True(Apart(Heights(one, direction), Heights(other, direction)) * place <= AStep, $"{size.Name} fronts");
        }
    }

    /// <summary>Stitches by which columns and those of the mirror image differ, a row at each left out.</summary>
    private static int Apart(int[] one, int[] other)
    {
        Assert.Equal(one.Length, other.Length);
        return one.Zip(other.Reverse()).Sum(h => Math.Max(0, Math.Abs(h.First - h.Second) - 1));
    }

    /// <summary>From the left as worn: rows worked up, stitches worked sideways.</summary>
    private static int[] Heights(PiecePlan piece, Direction direction)
    {
        var cells = piece.Shape!.Parts.SelectMany(part => Enumerable.Range(0, part.Outline.Rows).SelectMany(row =>
            Enumerable.Range(part.Outline.At(row).First, part.Outline.At(row).Units).Select(column => (Row: part.FirstRow + row, Column: column)))).ToArray();
        var (least, most) = (cells.Min(c => c.Column), cells.Max(c => c.Column));
        // Worked up, columns are counted from the right as it is worn; sideways, rows run from left to right and columns from the bottom up.
        var worn = cells.Select(c => direction == Direction.Up ? (X: most - c.Column, Y: c.Row) : (X: c.Row, Y: c.Column - least)).ToArray();
        var heights = new int[worn.Max(c => c.X) + 1];
        foreach (var (x, y) in worn)
        {
            var at = piece.WrongSideOut ? heights.Length - 1 - x : x;
            heights[at] = Math.Max(heights[at], y + 1);
        }
        return heights;
    }
}
