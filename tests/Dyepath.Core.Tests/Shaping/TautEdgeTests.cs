using System.Collections.Immutable;
using Dyepath.Core.Garments;
using Dyepath.Core.Planning;
using Dyepath.Core.Quantities;

namespace Dyepath.Core.Tests.Shaping;

/// <summary>An edge in steps as a band lies along it.</summary>
public sealed class TautEdgeTests
{
    private static readonly Length Cm = Length.FromCentimetres(1);

    /// <summary>A stair of twelve steps 1 cm wide and 1 cm high is a straight line of 12√2.</summary>
    [Fact]
    public void A_fine_stair_is_one_straight_line()
    {
        var part = Assert.Single(TautEdge.Of(Stair(12, 1, 1), Cm, Cm));
        Assert.Equal(24, part.Runs.Sum(r => r.Count));
        Assert.Equal(12 * Math.Sqrt(2), part.Length.Centimetres, 6);
    }

    /// <summary>Steps of 8 cm stand 5.7 cm off a straight line: a band goes along each of them.</summary>
    [Fact]
    public void A_coarse_stair_stays_a_stair()
    {
        var parts = TautEdge.Of(Stair(3, 8, 8), Cm, Cm);
        Assert.Equal(6, parts.Length);
        Assert.All(parts, p => Assert.Equal(8, p.Length.Centimetres, 9));
    }

    /// <summary>Nothing is lost, and no line is longer than the steps that it smooths.</summary>
    [Fact]
    public void Every_run_is_in_one_part_in_its_order()
    {
        var random = new Random(5);
        for (var i = 0; i < 200; i++)
        {
            ImmutableArray<EdgeRun> runs =
            [
                .. Enumerable.Range(0, random.Next(1, 20)).Select(n => new EdgeRun(
                    PieceId.Front, n % 2 == 0 ? PieceSide.Top : random.Next(2) == 0 ? PieceSide.Right : PieceSide.Left, 0, random.Next(1, 9), n % 2 == 0,
                    n % 2 == 1 && random.Next(2) == 0)),
            ];
            var parts = TautEdge.Of(runs, 0.7 * Cm, 0.6 * Cm);
            Assert.Equal(runs, parts.SelectMany(p => p.Runs));
            Assert.All(parts, p => Assert.True(
                p.Length.Centimetres <= p.Runs.Sum(r => r.Count * (r.Side.IsUpright() ? 0.6 : 0.7)) + 1e-9, p.ToString()));
        }
    }

    private static ImmutableArray<EdgeRun> Stair(int steps, int wide, int high) =>
    [
        .. Enumerable.Range(0, steps).SelectMany(_ => new[]
        {
            new EdgeRun(PieceId.Front, PieceSide.Top, 0, wide, true, false), new EdgeRun(PieceId.Front, PieceSide.Left, 0, high, false, false),
        }),
    ];
}
