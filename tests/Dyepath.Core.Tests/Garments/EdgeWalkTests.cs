using Dyepath.Core.Constructions;
using Dyepath.Core.Edgings;
using Dyepath.Core.Fabrics;
using Dyepath.Core.Garments;
using Dyepath.Core.Planning;
using Dyepath.Core.Projects;
using Dyepath.Core.Tests.Constructions;
using static Dyepath.Core.Tests.Garments.TestProjects;

namespace Dyepath.Core.Tests.Garments;

/// <summary>An edging is picked up from right to left with the outside facing, and its stretches are told as they come.</summary>
public sealed class EdgeWalkTests
{
    /// <summary>A seam hides no more places of an edge at either end.</summary>
    private const int MostHidden = 2;

    public static TheoryData<string, NeckForm, Direction> Necks => new MatrixTheoryData<string, NeckForm, Direction>(
        ["vest", "pullover", "cardigan"], [NeckForm.Round, NeckForm.Square, NeckForm.V], [Direction.Up, Direction.Sideways]);

    /// <summary>
    /// With the fabric below and the work going from right to left, the piece lies at the left of the way: along its bottom that is from left
    /// to right as it is worn, up its right side, and against the order of the side along its top and its left side.
    /// </summary>
    [Fact]
    public void Every_edge_is_gone_along_with_its_piece_at_the_left_of_the_way()
    {
        foreach (var kind in Repertoire.All)
        {
            var garment = StarterDocument.Of(kind).Garment;
            Assert.All(garment.Shape.Construct(garment).Edgings.SelectMany(e => e.Edges.Concat(e.Other)), edge => Assert.Equal(
                (kind.Name, edge.Id, edge.Edge.Side is PieceSide.Top or PieceSide.Left), (kind.Name, edge.Id, edge.Edge.Backwards)));
        }
    }

    /// <summary>
    /// Held against the heights of the piece's columns, read off its cells from right to left: every straight stretch is one run of them,
    /// every stepped one several, in that order, and a corner is named where two long straight ones meet.
    /// </summary>
    [Theory]
    [MemberData(nameof(Necks))]
    public void A_neck_is_told_in_the_order_in_which_it_is_met(string garment, NeckForm form, Direction direction)
    {
        foreach (var depth in new[] { 9.0, 16.5 })
        {
            var project = Cut(garment, form, depth, direction);
            if (project is null || project.Tried().Plan is not { } plan)
                continue;
            foreach (var size in plan.Sizes)
            {
                var told = size.Edgings.Single(e => e.Where == EdgingPlace.Neck);
                foreach (var (id, edge) in plan.Construction.Edgings.First(e => e.Place == EdgingPlace.Neck).Edges)
                {
                    var piece = size[edge.Piece];
                    if (piece.Shape is null || piece.Opening(OpeningId.Neck).Into == 0)
                        continue;
                    var stretches = told.Spread.Stretches.Select(r => r.Stretch).Where(s => s.Id is StretchId.OfEdge of && of.Edge == id).ToArray();
                    Follow($"{garment} {form} {depth} {direction} {size.Name} {id}", stretches, Met(piece, direction), direction, told.Rounds > 1 && told.Edging is "sc" or "sc-rows", id == EdgeId.BackNeck);
                }
            }
        }
    }

    /// <summary>
    /// Bands of two fronts whose edges have not as many stitches cannot have as many either: each is told by itself, the other one as it is
    /// met, from the neck down.
    /// </summary>
    [Fact]
    public void The_other_band_of_a_pair_is_counted_along_its_own_front()
    {
        var (said, alike) = (0, 0);
        foreach (int[] sections in new[] { new[] { 5, 4, 6, 3, 4 }, [5, 4, 6, 4], [4, 5, 6, 3, 4] })
        {
            var begun = Begun("cardigan", "sc", true, Direction.Sideways);
            var project = begun with
            {
                Yarn = begun.Yarn with
                {
                    Sections = [.. sections.Select((n, i) => begun.Yarn.Sections[i % 4] with { Name = $"colour {i}", Length = Cm(6.2 * n) })],
                    Counted = [begun.Yarn.Counted[0] with { Repeats = [[.. sections], [.. sections], [.. sections]] }],
                },
                Fabric = begun.Fabric with { SectionStitches = [.. sections] },
                Garment = begun.Garment with
                {
                    Shape = (Cardigan)begun.Garment.Shape with { Neck = ((Cardigan)begun.Garment.Shape).Neck with { Form = NeckForm.Round, BackDepth = Cm(4) } },
                },
            };
            if (project.Tried().Plan is not { } plan)
                continue;
            var text = GarmentTrials.Text(GarmentTrials.Check(plan));
            foreach (var size in plan.Sizes)
            {
                var bands = size.Edgings.Single(e => e.Where == EdgingPlace.Fronts);
                var (right, left) = (Front(size[PieceId.RightFront], last: true), Front(size[PieceId.LeftFront], last: false));
                Assert.Equal((right, left), (Along(bands.Spread), Along(bands.Other!)));
                _ = right == left ? alike++ : said++;
                Assert.Equal(right != left, bands.Unlike is not null);
                if (right != left)
                    Assert.Contains("left front, ", text, StringComparison.Ordinal);
            }
        }
        Assert.True(said > 0 && alike + said > 3, $"{said} unlike, {alike} alike");

        // Worked sideways, the front edge is the first or the last row.
        static int Front(PiecePlan piece, bool last)
        {
            var end = piece.WrongSideOut != last ? piece.Rows - 1 : 0;
            return piece.Shape is not { } shape ? piece.Stitches
                : shape.Parts.Where(p => p.FirstRow <= end && end < p.FirstRow + p.Rows).Sum(p => p.Outline.At(end - p.FirstRow).Units);
        }

        static int Along(PickUp pickUp) => pickUp.Stretches.Where(r => r.Stretch.Id is StretchId.OfEdge { Edge: EdgeId.FrontEdge }).Sum(r => r.Stretch.Places);
    }

    private static void Follow(
        string which, EdgeStretch[] told, List<(char Looks, int Count)> met, Direction direction, bool corners, bool behind)
    {
        // What seams hide is missing at either shoulder, of a neck that opens in front at the one.
        var hidden = met.Sum(m => m.Count) - told.Sum(s => s.Places);
        Assert.InRange(hidden, 0, 2 * MostHidden);
        var atFirst = which.EndsWith("LeftFrontNeck", StringComparison.Ordinal) ? hidden : which.EndsWith("RightFrontNeck", StringComparison.Ordinal) ? 0 : hidden / 2;
        met[0] = met[0] with { Count = met[0].Count - atFirst };
        met[^1] = met[^1] with { Count = met[^1].Count - (hidden - atFirst) };
        met.RemoveAll(m => m.Count == 0);
        // A V turns back in the middle of its lowest edge, unless that is so long that a band turns at either end of it.
        var point = which.Contains(" V ", StringComparison.Ordinal) ? met.FindIndex(m => m.Looks == 'R') : -1;
        var lowest = point - 1;
        if (point < 2 || met[lowest - 1].Looks != 'L' || met.Slice(lowest - 1, 3).TrueForAll(m => m.Count >= 6))
            point = -1;
        else if (met[lowest].Count > 1)
        {
            met.Insert(point, met[lowest] with { Count = met[lowest].Count / 2 });
            met[lowest] = met[lowest] with { Count = (met[lowest].Count + 1) / 2 };
        }
        var at = 0;
        (char Looks, int Count)? before = null;
        foreach (var stretch in told)
        {
            var (from, left) = (at, stretch.Places);
            while (left > 0 && at < met.Count)
                left -= met[at++].Count;
            Assert.True(left == 0, $"{which}: {stretch} is not met along {string.Join(' ', met)}");
            if (stretch.Stepped)
            {
                Assert.Equal((which, from == point && corners ? EdgeCorner.Inner : null), (which, stretch.Corner));
                Assert.True(point < 0 || at <= point || from >= point, $"{which}: {stretch} goes on beyond the point");
                before = null;
                continue;
            }
            Assert.True(at == from + 1, $"{which}: {stretch} turns corners along {string.Join(' ', met)}");
            var looks = met[from].Looks;
            var part = ((StretchId.OfEdge)stretch.Id).Part;
            Assert.Equal((which, (looks == 'T') != (direction == Direction.Up)), (which, stretch.RowEnds));
            if (part is EdgePart.WearersLeft or EdgePart.WearersRight)
                Assert.Equal((which, (looks == 'L') != behind), (which, part == EdgePart.WearersLeft));
            Assert.Equal((which, part is EdgePart.LowerEdge or EdgePart.Step or EdgePart.Whole), (which, looks == 'T'));
            // Down a side and on along the bottom, or along it and up: the fabric lies on both sides of the corner.
            EdgeCorner? corner = from == point && corners ? EdgeCorner.Inner : before is not { } last || !corners || stretch.Places < 6 || last.Count < 6 ? null
                : (last.Looks, looks) is ('L', 'T') or ('T', 'R') ? EdgeCorner.Inner : EdgeCorner.Outer;
            Assert.Equal((which, corner), (which, stretch.Corner));
            before = (looks, stretch.Places);
        }
        Assert.True(at == met.Count, $"{which}: {string.Join(' ', met.Skip(at))} is not told");
    }

    /// <summary>Runs of the neck as they look to the left, to the top or to the right, from right to left.</summary>
    private static List<(char Looks, int Count)> Met(PiecePlan piece, Direction direction)
    {
        var cells = piece.Shape!.Parts.SelectMany(part => Enumerable.Range(0, part.Outline.Rows).SelectMany(row =>
            Enumerable.Range(part.Outline.At(row).First, part.Outline.At(row).Units).Select(column => (Row: part.FirstRow + row, Column: column)))).ToArray();
        var (least, most) = (cells.Min(c => c.Column), cells.Max(c => c.Column));
        // Worked up, columns are counted from the right as it is worn; sideways, rows run from left to right and columns from the bottom up.
        var worn = cells.Select(c => direction == Direction.Up ? (X: most - c.Column, Y: c.Row) : (X: c.Row, Y: c.Column - least)).ToArray();
        var width = worn.Max(c => c.X) + 1;
        var top = new int[width];
        foreach (var (x, y) in worn)
            top[piece.WrongSideOut ? width - 1 - x : x] = Math.Max(top[piece.WrongSideOut ? width - 1 - x : x], y + 1);
        var high = top.Max();
        var (left, right) = (Array.IndexOf(top, high), Array.LastIndexOf(top, high));
        // Between the shoulders; where it opens in front, from its one shoulder to that edge.
        var (from, to) = piece.Id switch
        {
            PieceId.LeftFront => (0, right),
            PieceId.RightFront => (left, width - 1),
            _ => (left, right),
        };
        while (piece.Id != PieceId.LeftFront && top[from] == high)
            from++;
        while (piece.Id != PieceId.RightFront && top[to] == high)
            to--;
        var runs = new List<(char, int)>();
        var height = piece.Id == PieceId.RightFront ? top[to] : high;
        for (var x = to; x >= from;)
        {
            if (top[x] != height)
                runs.Add(top[x] < height ? ('L', height - top[x]) : ('R', top[x] - height));
            height = top[x];
            var count = 0;
            for (; x >= from && top[x] == height; x--)
                count++;
            runs.Add(('T', count));
        }
        if (piece.Id != PieceId.LeftFront)
            runs.Add(('R', high - height));
        return runs;
    }

    private static Project? Cut(string garment, NeckForm form, double depth, Direction direction)
    {
        var project = Begun(garment, "sc", true, direction).With(g => g with
        {
            Shape = g.Shape switch
            {
                Vest vest => vest with { Neck = Shaped(vest.Neck) },
                BoxyTop top => top with { Neck = Shaped(top.Neck) },
                Cardigan cardigan => cardigan with { Neck = Shaped(cardigan.Neck) },
                _ => g.Shape,
            },
            Grading = g.Grading with { UnevenWidths = true, SeveralLeans = true },
        });
        var construction = project.Garment.Shape.Construct(project.Garment);
        return construction.Edgings.Any(e => e.Place == EdgingPlace.Neck)
            ? GarmentTrials.Edged(project, direction, EdgingPlace.Neck).With(g => g with { Edgings = [.. g.Edgings.Select(e => e with { Rounds = 3 })] })
            : null;

        Neck Shaped(Neck neck) => neck with { Form = form, Depth = Cm(depth), BackDepth = Cm(4) };
    }
}
