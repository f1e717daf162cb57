using System.Collections.Immutable;
using CsCheck;
using Dyepath.Core.Constructions;
using Dyepath.Core.Garments;
using Dyepath.Core.Planning;
using Dyepath.Core.Projects;
using Dyepath.Core.Shaping;

namespace Dyepath.Core.Tests.Shaping;

/// <summary>The edge of outlines that nobody would plan, worked sideways: each row is a column as worn, as high as the row is long.</summary>
public sealed class ShapedEdgesTests
{
    private static readonly Gen<int[]> Heights = Gen.Int[3, 12].Array[3, 14];

    private static readonly Gen<(int From, int To)[]> Lengths = Gen.Select(Gen.Int[0, 3], Gen.Int[4, 12]).Array[3, 14];

    /// <summary>What is missing of the rectangle falls into as many cuts as there are pieces of it that hang together, cell by cell.</summary>
    [Fact]
    public void What_hangs_together_is_one_cut() => Lengths.Holds(
        columns =>
        {
            var edges = Of("vest", PieceId.Front, columns);
            var (low, high) = (columns.Min(c => c.From), columns.Max(c => c.To));
            var missing = new HashSet<(int X, int Y)>(
                from x in Enumerable.Range(0, columns.Length)
                from y in Enumerable.Range(low, high - low)
                where y < columns[x].From || y >= columns[x].To
                select (x, y));
            var cuts = 0;
            for (; missing.Count > 0; cuts++)
            {
                var open = new Queue<(int X, int Y)>([missing.First()]);
                missing.Remove(open.Peek());
                while (open.TryDequeue(out var at))
                {
                    foreach (var next in new[] { (at.X - 1, at.Y), (at.X + 1, at.Y), (at.X, at.Y - 1), (at.X, at.Y + 1) })
                    {
                        if (missing.Remove(next))
                            open.Enqueue(next);
                    }
                }
            }
            Assert.Equal((columns.Length, high - low), (edges.Columns, edges.Rows));
            Assert.Equal(cuts, edges.Cuts.Length);
        },
        seed: 611, cases: 600);

    /// <summary>Of a vest's front the one in the middle is the neck, as wide and as deep as it is, and those at the ends are armholes.</summary>
    [Fact]
    public void Cuts_are_told_by_the_sides_that_they_open()
    {
        var edges = Of("vest", PieceId.Front, [4, 4, 9, 9, 9, 6, 5, 6, 9, 9, 3]);
        Assert.Equal(new CutExtent(OpeningId.Armhole, PieceSide.Left, 4, 5, 2), edges.Find(OpeningId.Armhole, PieceSide.Left));
        Assert.Equal(new CutExtent(OpeningId.Armhole, PieceSide.Right, 3, 6, 1), edges.Find(OpeningId.Armhole, PieceSide.Right));
        Assert.Equal(new CutExtent(OpeningId.Neck, PieceSide.Top, 5, 3, 4), edges.Find(OpeningId.Neck, PieceSide.Top));
        var design = Construction("vest").GroupOf(PieceId.Front).Openings.First(o => o.Id == OpeningId.Armhole);
        Assert.Equal(1.5, edges.Into(design), 1e-9);
    }

    /// <summary>Once round, every cell side between what is worked and what is not is gone along once; corners are where the way turns.</summary>
    [Fact]
    public void The_edge_goes_once_round() => Heights.Holds(
        heights =>
        {
            var corners = Of("vest", PieceId.Front, heights).Corners().ToArray();
            var turns = 4 + 2 * heights.Zip(heights.Skip(1)).Count(h => h.First != h.Second);
            Assert.Equal(turns, corners.Length);
            // The shoelace of its corners has the area of the cells, against the clock.
            var area = corners.Zip(corners.Skip(1).Append(corners[0]), (a, b) => a.X * b.Y - b.X * a.Y).Sum() / 2.0;
            Assert.Equal(heights.Sum(), area);
        },
        seed: 612, cases: 400);

    /// <summary>
    /// Of a shawl, what its form leaves out at the left belongs to its left slope, and at the right to its right one, however unlike the two
    /// are: of rows from the lower point up, the left slope is what the first rows leave, the right one what the last ones do.
    /// </summary>
    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void A_slope_belongs_to_the_side_that_it_meets(bool steepAtLeft)
    {
        // As worn upwards: cells of each line, from the left; the widest on top.
        (int From, int To)[] lines = steepAtLeft ? [(4, 6), (4, 8), (3, 10), (0, 12)] : [(6, 8), (4, 8), (2, 9), (0, 12)];
        const int columns = 12;
        // Worked up, columns are counted from the right as it is worn.
        var outline = Outline.ByRow([.. lines.Select(l => (columns - l.To, columns - 1 - l.From))]);
        var edges = new ShapedEdges([new PartOutline(0, outline)], Construction("shawl"), PieceId.Shawl, up: true, turned: false, (_, _) => (0, 0));
        Assert.Empty(edges.Cuts);
        var (left, right) = (Length(PieceSide.Left), Length(PieceSide.Right));
        // Every line's own side, and the steps between them.
        Assert.Equal(4 + lines.Zip(lines.Skip(1)).Sum(l => Math.Abs(l.First.From - l.Second.From)), left);
        Assert.Equal(4 + lines.Zip(lines.Skip(1)).Sum(l => Math.Abs(l.First.To - l.Second.To)), right);

        int Length(PieceSide side) => edges.Runs(new PieceEdge(PieceId.Shawl, side), (0, 0)).Sum(r => r.Count);
    }

    private static Construction Construction(string garment)
    {
        var begun = StarterDocument.Of(Repertoire.All.First(k => k.Name == garment)).Garment;
        return begun.Shape.Construct(begun);
    }

    private static ShapedEdges Of(string garment, PieceId piece, int[] heights) => Of(garment, piece, [.. heights.Select(h => (0, h))]);

    private static ShapedEdges Of(string garment, PieceId piece, (int From, int To)[] columns) => new(
        [new PartOutline(0, Outline.ByRow([.. columns.Select(c => (c.From, c.To - 1))]))], Construction(garment), piece, up: false, turned: false,
        (_, _) => (0, 0));
}
