using CsCheck;
using Dyepath.Core.Fabrics;
using Dyepath.Core.Motifs;
using Dyepath.Core.Quantities;
using Dyepath.Core.Swatches;
using Dyepath.Core.Yarns;

namespace Dyepath.Core.Tests.Motifs;

/// <summary>The map in closed form against readings of yarns that were really changed.</summary>
public sealed class YarnMapTests
{
    private static readonly Gauge Gauge = new(14, 16, Length.FromCentimetres(10));

    private const double Reach = 0.12;

    private static readonly double[] TurnCosts = [0, 0.45, 0.5, 1.92];

    private static Gen<(double[] Units, Working Way, int Rows, double Turn)> Case { get; } = Gen.Select(
        Gen.Int[20, 95].Select(t => t / 10.0).Array[2, 6], Gen.Enum<Working>(), Gen.Int[20, 90], Gen.Int[0, 3].Select(i => TurnCosts[i]))
        .Select((units, way, rows, turn) => (units, way, rows, way == Working.Spiral ? 0 : turn));

    private static YarnMap Map((double[] Units, Working Way, int Rows, double Turn) of, int from, int to) => YarnMap.Of(
        ColourRing.FromUnits(of.Units),
        new CountOptions(Gauge, from, to) { Working = of.Way, Rows = of.Rows, Path = new PathOptions { TurnCost = of.Turn } }, Reach);

    [Fact]
    public void Law_every_place_is_what_a_yarn_so_changed_draws() => Gen.Select(Case, Gen.Int[24, 120], Gen.Double[-Reach, Reach]).Holds(
        (of, n, change) =>
        {
            var column = Assert.Single(Map(of, n, n).Columns);
            var stretch = column.At(change);
            var path = FabricPath.Constant(of.Way, n, of.Rows, new PathOptions { TurnCost = of.Turn });
            var changed = MotifReader.Create(ColourRing.FromUnits([.. of.Units.Select(u => u / (1 + change))]), of.Way, Gauge).Read(path);
            var before = MotifReader.Create(ColourRing.FromUnits(of.Units), of.Way, Gauge).Read(path);
            // At a border rounding decides; and where the eye follows another wave of the changed ring, the motif is another for that reason.
            var isBorder = Math.Min(change - stretch.From, stretch.To - change) < 1e-4;
            var isOtherWave = changed.PeriodUnits / changed.VisiblePeriodUnits is { } m && before.PeriodUnits / before.VisiblePeriodUnits is { } k && Math.Round(m) != Math.Round(k);
            Assert.True(isBorder || isOtherWave || stretch.Kind == changed.Kind, $"{n} stitches, {change:0.#####}: {stretch.Kind} on the map, {changed.Kind} in the fabric.");
            // How clear it is is told of the stretch's middle; the blur along the row is that of the plan's yarn, which tells on a short
            // sequence alone, of which the blur leaves little.
            var middle = (stretch.From + stretch.To) / 2;
            var clear = MotifReader.Create(ColourRing.FromUnits([.. of.Units.Select(u => u / (1 + middle))]), of.Way, Gauge).Read(path);
            if (of.Units.Sum() >= 12 && !isOtherWave && clear.PeriodUnits / clear.VisiblePeriodUnits == before.PeriodUnits / before.VisiblePeriodUnits)
                Assert.Equal(clear.RelativeClarity, stretch.Clarity, 0.2);
        },
        seed: 431, cases: 400);

    [Fact]
    public void Law_stretches_follow_each_other_from_end_to_end_and_no_two_neighbours_are_of_one_motif() => Gen.Select(Case, Gen.Int[1, 200]).Holds(
        (of, from) =>
        {
            foreach (var column in Map(of, from, from + 4).Columns)
            {
                Assert.Equal((-Reach, Reach), (Math.Round(column.Stretches[0].From, 12), Math.Round(column.Stretches[^1].To, 12)));
                foreach (var (one, next) in column.Stretches.Zip(column.Stretches.Skip(1)))
                {
                    Assert.Equal(one.To, next.From);
                    Assert.NotEqual(one.Kind, next.Kind);
                }
                Assert.All(column.Stretches, s => Assert.True(s.From < s.To && s.Clarity is >= 0 and <= 1));
            }
        },
        seed: 432, cases: 60);

    /// <summary>Where the yarn is as planned, the stretch is what the count forgives.</summary>
    [Fact]
    public void The_stretch_about_the_plan_is_what_the_count_forgives()
    {
        var ring = ColourRing.FromUnits([5.2, 4.1, 6, 7.3]);
        var options = new CountOptions(Gauge, 60, 130) { Alternating = false };
        var map = YarnMap.Of(ring, options, Reach);
        foreach (var found in CountFinder.Find(ring, options).Counts)
        {
            var stretch = map.Columns[found.Stitches - 60].At(0);
            Assert.Equal(MotifKind.Argyle, stretch.Kind);
            Assert.Equal(found.Forgiveness!.Value.Tighter, stretch.From, 6);
            Assert.Equal(found.Forgiveness.Value.Looser, stretch.To, 6);
            Assert.Equal(found.Reading.RelativeClarity, YarnMap.Of(ring, options with { From = found.Stitches, To = found.Stitches }, 1e-5).Columns[0].At(0).Clarity, 3);
        }
    }

    [Fact]
    public void More_counts_or_a_farther_reach_than_a_map_has_are_refused()
    {
        var ring = ColourRing.FromUnits([5, 4]);
        Assert.Throws<ArgumentOutOfRangeException>(() => YarnMap.Of(ring, new CountOptions(Gauge, 1, YarnMap.MostCounts + 1), 0.1));
        Assert.Throws<ArgumentOutOfRangeException>(() => YarnMap.Of(ring, new CountOptions(Gauge, 1, 10), 0.3));
        Assert.Throws<ArgumentOutOfRangeException>(() => YarnMap.Of(ring, new CountOptions(Gauge, 1, 10), 0));
    }
}
