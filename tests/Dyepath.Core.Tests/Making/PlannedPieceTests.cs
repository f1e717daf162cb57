using System.Collections.Immutable;
using CsCheck;
using Dyepath.Core.Fabrics;
using Dyepath.Core.Making;
using Dyepath.Core.Planning;
using Dyepath.Core.Yarns;

namespace Dyepath.Core.Tests.Making;

public sealed class PlannedPieceTests
{
    [Fact]
    public void Known_a_round_takes_up_the_sequence_from_its_start()
    {
        PlannedPiece piece = Pieces.Of([2, 1, 3], stitches: 5, rows: 2, start: 1);
        Assert.Equal<byte>([0, 1, 2, 2, 2, 0, 0, 1, 2, 2], piece.Colours);
        Assert.Equal([1, 2, 5, 7, 8], piece.SectionEnds);
        Assert.Equal([6], piece.SequenceEnds);
        Assert.Equal([5], piece.RowEnds);
    }

    [Fact]
    public void Known_a_stitch_half_and_half_has_the_earlier_colour() =>
        Assert.Equal<byte>([0, 0, 1, 1, 0], Pieces.Of([1.5, 2], 5, 1).Colours);

    [Fact]
    public void Known_a_turn_shifts_the_next_row()
    {
        Assert.Equal<byte>([0, 0, 1, 1, 0, 0], Pieces.Of([3, 3], 2, 3, turnCost: 1).Colours[..6]);
        Assert.Equal<byte>([0, 0, 0, 0, 0, 0], Pieces.Of([3, 3], 2, 3, turnCost: -2).Colours[..6]);
    }

    [Fact]
    public void Known_equal_neighbours_are_one_section_round_the_ring_too()
    {
        MergedRing ring = MergedRing.Of(ColourRing.FromUnits<int>([2, 3, 4, 1], [7, 5, 5, 7]));
        // A colour's number is that of its first section.
        Assert.Equal([new(0, 3_000_000), new(1, 7_000_000)], ring.Stretches);
        Assert.Equal(-1_000_000, ring.Origin);
        Assert.Single(MergedRing.Of(ColourRing.FromUnits<int>([2, 3], [4, 4])).Stretches);
    }

    [Theory]
    [InlineData(new double[] { 5, 4, 6, 7 }, new[] { 0, 1, 2, 3 }, 22)]
    [InlineData(new double[] { 3, 4, 3, 4 }, new[] { 0, 1, 0, 1 }, 7)]
    [InlineData(new double[] { 3, 4, 3, 5 }, new[] { 0, 1, 0, 1 }, 15)]
    [InlineData(new double[] { 1, 2, 4, 1, 2, 4 }, new[] { 0, 0, 1, 0, 0, 1 }, 7)]
    public void Known_the_period_is_the_shortest_that_repeats_the_colours(double[] lengths, int[] colours, double period) =>
        Assert.Equal(period * 1e6, Pieces.Of([.. lengths], [.. colours], [5]).Period);

    [Fact]
    public void Law_planned_colours_are_those_that_cover_most()
    {
        Gen.Select(
            Gen.Select(Gen.Int[5, 600], Gen.Int[0, 3]).Array[1, 7],
            Gen.Int[1, 30].Array[1, 12],
            Gen.Int[-150, 150],
            Gen.Int[-5000, 5000])
        .Holds(
            (sections, rows, turn, start) =>
            {
                PlannedPiece piece = Pieces.Of(
                    [.. sections.Select(s => s.Item1 / 100.0)], [.. sections.Select(s => s.Item2)], [.. rows], turn / 100.0, start / 100.0);
                int FirstOf(int colour) => Array.FindIndex(sections, s => s.Item2 == colour);
                var byHand = new List<byte>();
                long y = start;
                foreach (int stitches in rows)
                {
                    for (int i = 0; i < stitches; i++, y += 100) byHand.Add((byte)FirstOf(MostCovered(sections, y, y + 100)));
                    y += turn;
                }
                Assert.Equal(byHand, piece.Colours);
            },
            seed: 52, cases: 400);
    }

    /// <summary>Hundredth by hundredth of the yarn; a tie goes to the colour met first.</summary>
    private static int MostCovered((int Length, int Colour)[] sections, long from, long to)
    {
        int[] ring = [.. sections.SelectMany(s => Enumerable.Repeat(s.Colour, s.Length))];
        var covered = new Dictionary<int, int>();
        var met = new List<int>();
        for (long y = from; y < to; y++)
        {
            int colour = ring[((y % ring.Length) + ring.Length) % ring.Length];
            if (covered.TryAdd(colour, 0)) met.Add(colour);
            covered[colour]++;
        }
        return met.MaxBy(colour => covered[colour]);
    }

    /// <summary>The first stitch has 0.6 of a in two parts and 0.4 of b in one.</summary>
    [Fact]
    public void Known_a_colour_that_comes_twice_in_a_stitch_counts_twice()
    {
        var ring = ColourRing.FromUnits([0.35, 0.4, 0.25, 3], ["a", "b", "a", "c"]);
        Assert.Equal(0, PlannedPiece.Create(ring, [8]).ColourAt(0));
        Assert.Equal(0, ring.Colours[Fabric.Work(ring, FabricPath.Constant(Working.Spiral, 8, 1))[0, 0]]);
    }

    /// <summary>What the chart shows of a row is what is made of it, however short the sections are.</summary>
    [Fact]
    public void Law_even_hands_make_the_chart()
    {
        Gen.Select(
            Gen.Select(Gen.Int[2, 600], Gen.Int[0, 3]).Array[1, 7], Gen.Enum<Working>(), Gen.Int[3, 30], Gen.Int[1, 12], Gen.Int[-150, 150],
            Gen.Int[-5000, 5000]).Holds(
            (sections, working, stitches, rows, turn, start) =>
            {
                var ring = ColourRing.FromUnits([.. sections.Select(s => s.Item1 / 100.0)], [.. sections.Select(s => s.Item2)]);
                var path = FabricPath.Constant(
                    working, stitches, rows, new PathOptions { TurnCost = working == Working.Spiral ? 0 : turn / 100.0, Start = start / 100.0 });
                var fabric = Fabric.Work(ring, path);
                var chart = Enumerable.Range(0, rows).SelectMany(row =>
                {
                    var cells = fabric.Row(row).ToArray();
                    return (path.RunsBackwards(row) ? cells.Reverse() : cells).Select(cell => (byte)ring.Colours[cell]);
                });
                Assert.Equal(chart, PlannedPiece.Of(ring, path).Colours);
            },
            seed: 53, cases: 400);
    }

    /// <summary>In linen stitch a row of odd stitches ends in half a pair: the next row begins half a pair's yarn earlier.</summary>
    [Fact]
    public void Known_half_a_pair_at_a_rows_end_takes_half_its_yarn()
    {
        var ring = ColourRing.FromUnits([2.5, 2.5]);
        var path = FabricPath.Constant(Working.Turned, 5, 4, new PathOptions { StitchesPerUnit = 2 });
        var piece = PlannedPiece.Of(ring, path);
        Assert.Equal([3, 3, 3, 3], piece.RowStitches);
        Assert.Equal(Enumerable.Range(0, 4).Select(r => 2.5e6 * r), Enumerable.Range(0, 4).Select(piece.RowPlace));
    }

    [Fact]
    public void Invalid_values_are_named()
    {
        static void Refused(string name, Action create) =>
            Assert.Equal(name, Assert.ThrowsAny<ArgumentException>(create).ParamName);

        ImmutableArray<double> sections = [5, 4];
        Refused("sequence", () => Pieces.Of([5, 0.001], 10, 10));
        Refused("rowStitches", () => Pieces.Of(sections, 0, 10));
        Refused("rowStitches", () => Pieces.Of(sections, 1001, 10));
        Refused("rowStitches", () => Pieces.Of(sections, 10, 5001));
        Refused("rowStitches", () => Pieces.Of(sections, [], []));
        Refused("turnCost", () => Pieces.Of(sections, 10, 10, turnCost: double.PositiveInfinity));
        Refused("start", () => Pieces.Of(sections, 10, 10, start: double.NaN));
    }
}
