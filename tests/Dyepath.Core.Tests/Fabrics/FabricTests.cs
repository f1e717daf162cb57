using System.Collections.Immutable;
using CsCheck;
using Dyepath.Core.Fabrics;
using Dyepath.Core.Planning;
using Dyepath.Core.Yarns;

namespace Dyepath.Core.Tests.Fabrics;

public sealed class FabricTests
{
    private static readonly Gen<(double[] Units, int[] Colours)> Rings =
        Gen.Select(Gen.Int[1, 7], Gen.Int[0, 3]).SelectMany((count, kind) => Gen.Select(
            kind switch
            {
                0 => Gen.Int[1, 9].Select(i => (double)i),
                1 => Gen.Int[1, 900].Select(i => i / 100.0),
                2 => Gen.Int[1, 12].Select(i => i / 10.0),
                _ => Gen.Int[1, 20].Select(i => i / 2.0),
            },
            Gen.Int[0, 3]).Array[count].Select(a => (a.Select(t => t.Item1).ToArray(), a.Select(t => t.Item2).ToArray())));

    private static readonly Gen<long> Micro = Gen.OneOf(
        Gen.Long[-40, 40].Select(l => l * 500_000), Gen.Long[-40, 40].Select(l => l * 1_000_000), Gen.Long[-9_000_000, 9_000_000]);

    [Fact]
    public void Every_cell_shows_what_the_definition_says()
    {
        var ways = Gen.Enum<Working>();
        Gen.Select(
            Rings, ways, Gen.Int[1, 30], Gen.Int[1, 40], Micro, Gen.OneOf(Gen.Const(0L), Gen.Long[-9, 30].Select(l => l * 100_000)),
            Gen.Bool)
            .Holds((ring, way, n, rows, start, turn, alternating) =>
            {
                turn = way == Working.Spiral ? 0 : Math.Max(turn, -900_000);
                var colourRing = ColourRing.FromUnits(ring.Units, ring.Colours);
                var options = new PathOptions { TurnCost = turn / 1e6, Start = start / 1e6 };
                var path = alternating ? FabricPath.Alternating(way, n, rows, options) : FabricPath.Constant(way, n, rows, options);
                var fabric = Fabric.Work(colourRing, path);
                var expected = new BruteFabric([.. colourRing.Sections], ring.Colours).Work(way, [.. path.RowStitches], turn, start);
                return Enumerable.Range(0, rows).All(r =>
                        fabric.Row(r).ToArray().Select(b => (int)b).SequenceEqual(expected[r].Select(e => e.Section))
                        && Enumerable.Range(0, path.Cells(r)).All(c => fabric.IsTwoToned(r, c) == expected[r][c].Two))
                    && fabric.TwoToned == expected.Sum(row => row.Count(e => e.Two));
            }, seed: 114, cases: 2_000);
    }
}
