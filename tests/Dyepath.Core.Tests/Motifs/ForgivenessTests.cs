using CsCheck;
using Dyepath.Core.Fabrics;
using Dyepath.Core.Motifs;
using Dyepath.Core.Quantities;
using Dyepath.Core.Swatches;
using Dyepath.Core.Tests.Fabrics;
using Dyepath.Core.Yarns;

namespace Dyepath.Core.Tests.Motifs;

public sealed class ForgivenessTests
{
    private static readonly Gauge Gauge = new(14, 16, Length.FromCentimetres(10));

    private static readonly double[] TurnCosts = [0, 0.45, 0.5, 1.92];

    /// <summary>The ring as its sequence becomes with another yarn per stitch, to a micro-unit.</summary>
    private static ColourRing Changed(double[] units, double change) => ColourRing.FromUnits([.. units.Select(u => u / (1 + change))]);

    [Fact]
    public void The_lean_after_a_change_is_the_closed_form() =>
        Gen.Select(Gen.Double[3, 40], Gen.Int[20, 200], Gen.Double[-0.5, 2], Gen.Double[-0.004, 0.004], Gen.Bool)
            .Holds((period, n, turn, change, turned) =>
            {
                double[] units = [period * 0.4, period * 0.6];
                var way = turned ? Working.Turned : Working.Rounds;
                var path = FabricPath.Constant(way, n, 4, new PathOptions { TurnCost = turn });
                var before = Lean.Of(path.Advance!.Value, Changed(units, 0).Total).UnitsPerRow;
                var changed = Changed(units, change).Total;
                var after = Lean.Of(path.Advance!.Value, changed).UnitsPerRow;
                var predicted = Forgiveness.LeanAfter(n + turn, before, change);
                var family = changed / 1e6 / (turned ? 2 : 1);
                var off = Math.Abs(predicted - after) % family;
                return Math.Min(off, family - off) < 1e-3;
            }, seed: 115, cases: 1_000);

    [Fact]
    public void At_83_stitches_and_half_a_stitch_of_lean_it_is_about_six_parts_in_a_thousand() =>
        Assert.Equal(0.5, Forgiveness.LeanAfter(83, 0, 0.006), 0.01);

    [Fact]
    public void Looser_hands_increase_the_lean()
    {
        Assert.True(Forgiveness.LeanAfter(83, 0.5, 0.01) > 0.5);
        Assert.True(Forgiveness.LeanAfter(83, 0.5, -0.01) < 0.5);
    }

    [Fact]
    public void The_window_is_where_bisection_over_changed_rings_finds_it() =>
        Gen.Select(Gen.Int[20, 95].Select(t => t / 10.0).Array[2, 5], Gen.Int[24, 120], Gen.Int[30, 90], Gen.Int[0, 3].Select(i => TurnCosts[i]), Gen.Enum<Working>())
            .Holds((units, n, rows, turn, way) =>
            {
                var path = FabricPath.Constant(way, n, rows, new PathOptions { TurnCost = way == Working.Spiral ? 0 : turn });
                var kind = KindAt(units, path, 0);
                var found = MotifReader.Create(ColourRing.FromUnits(units), way, Gauge).Forgive(path)!.Value;
                return found.Tighter < 1e-9 && found.Looser > -1e-9
                    && Agrees(found.Tighter, Edge(units, path, kind, -1)) && Agrees(found.Looser, Edge(units, path, kind, 1));
            }, seed: 116, cases: 40);

    [Theory]
    [InlineData(67)]
    [InlineData(83)]
    public void The_window_of_argyle_runs_between_its_diamonds_tallest_and_flattest(int stitches)
    {
        var ring = ColourRing.FromUnits([5, 4, 6, 7]);
        var reader = MotifReader.Create(ring, Working.Turned, Gauge);
        var path = FabricPath.Constant(Working.Turned, stitches, 72, new PathOptions { TurnCost = stitches == 83 ? 6 : 0 });
        var window = reader.Forgive(path)!.Value;
        var row = stitches + path.Turns[0] / 1e6;
        // At 14 stitches by 16 rows the lean may run from 0.4375 to 1.75.
        Assert.Equal(0.4375, Forgiveness.LeanAfter(row, 1, window.Tighter), 1e-9);
        Assert.Equal(1.75, Forgiveness.LeanAfter(row, 1, window.Looser), 1e-9);
    }

    [Fact]
    public void One_colour_has_nothing_to_forgive() =>
        Assert.Null(MotifReader.Create(ColourRing.FromUnits([9]), Working.Turned, Gauge).Forgive(FabricPath.Constant(Working.Turned, 30, 20)));

    [Fact]
    public void Bands_forgive_until_a_section_no_longer_fills_a_row()
    {
        var window = MotifReader.Create(ColourRing.FromUnits([30, 30]), Working.Turned, Gauge).Forgive(FabricPath.Constant(Working.Turned, 20, 20))!.Value;
        Assert.Equal((-1, 0.5), (window.Tighter, window.Looser));
    }

    [Fact]
    public void Columns_as_wide_as_the_piece_turn_to_bands_with_the_least_tighter_yarn()
    {
        var window = MotifReader.Create(ColourRing.FromUnits([22, 22]), Working.Turned, Gauge).Forgive(FabricPath.Constant(Working.Turned, 22, 72))!.Value;
        Assert.Equal(0, window.Tighter, 1e-12);
        // Looser, they stay columns until they drift by a quarter of their period over 72 rows.
        Assert.Equal(0.25 * 44 / (1 + window.Looser) / 72, Forgiveness.LeanAfter(22, 0, window.Looser), 1e-12);
    }

    private static MotifKind KindAt(double[] units, FabricPath path, double change) =>
        MotifReader.Create(Changed(units, change), path.Working, Gauge).KindOf(Piece.Of(path, path.Advance!.Value, path.Rows));

    private static bool Agrees(double closed, double brute) => Math.Abs(closed - brute) < 2e-6 + 1e-4 * Math.Abs(brute);

    /// <summary>Walks outwards in small steps until the class changes, then halves.</summary>
    private static double Edge(double[] units, FabricPath path, MotifKind kind, int direction)
    {
        // A third of what it takes to cross the narrowest class, columns.
        var step = units.Sum() / (6.0 * path.Rows * path.RowStitches[0]) * direction;
        var inside = 0.0;
        while (KindAt(units, path, inside + step) == kind)
            inside += step;
        var outside = inside + step;
        for (var i = 0; i < 20; i++)
        {
            var middle = (inside + outside) / 2;
            (inside, outside) = KindAt(units, path, middle) == kind ? (middle, outside) : (inside, middle);
        }
        return inside;
    }
}
