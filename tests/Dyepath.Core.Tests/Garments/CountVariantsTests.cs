using Dyepath.Core.Measuring;
using Dyepath.Core.Planning;

namespace Dyepath.Core.Tests.Garments;

/// <summary>The counts that serve makers whose own repeat is not the plan's, against makers drawn one by one (docs/made-well.md).</summary>
public sealed class CountVariantsTests(ITestOutputHelper output)
{
    private static readonly HandsPrior Hands = new(0.02, 50, 0.02);

    private static HeldMotif Motif(int units, int rows = 80, double lean = 0.5) => new(units, rows, 21, lean, 4.3);

    [Theory]
    [InlineData(42, 60, 1)]
    [InlineData(63, 80, 0.5)]
    [InlineData(83, 72, 1)]
    [InlineData(126, 40, 1)]
    public void They_serve_as_many_as_makers_drawn_one_by_one(int units, int rows, double lean)
    {
        var motif = Motif(units, rows, lean);
        var variants = CountVariants.Fewest(motif, Hands, 0.005);
        var random = new Random(3);
        const int makers = 3_000;
        double alone = 0, served = 0;
        for (var maker = 0; maker < makers; maker++)
        {
            var own = CountVariants.RepeatSpread * Draw(random);
            var hands = new HandsPrior(0.02 * Math.Exp(Math.Log(1.7) * Draw(random)), 50, 0.02);
            alone += Chance(motif, hands, -own, random);
            // She takes the count that is offered for what she counted.
            var offset = variants.Variants.Last(v => v.From <= own).Offset;
            served += Chance(motif, hands, offset / (double)units - own, random);
        }
        output.WriteLine($"{units}: {string.Join(" ", Offsets(variants))}: {variants.Alone:0.000} {variants.Served:0.000}; drawn {alone / makers:0.000} {served / makers:0.000}");
        Assert.Equal(variants.Variants.OrderBy(v => v.From), variants.Variants);
        Assert.Equal(alone / makers, variants.Alone, 0.02);
        Assert.Equal(served / makers, variants.Served, 0.02);
    }

    [Fact]
    public void No_smaller_set_serves_nine_of_ten()
    {
        foreach (var units in new[] { 42, 63, 83, 105 })
        {
            foreach (var rows in new[] { 12, 30, 60 })
            {
                var motif = Motif(units, rows, 1);
                var variants = CountVariants.Fewest(motif, Hands, 0.002);
                output.WriteLine($"{units} by {rows}: {string.Join(" ", Offsets(variants))}: {variants.Alone:0.000} {variants.Served:0.000}");
                Assert.Contains(0, Offsets(variants));
                Assert.True(variants.Served >= variants.Alone, "more counts to choose from serve no fewer");
                if (variants.Variants.Length == 1)
                    continue;
                // Every set of one fewer, with the planned count in it, by the same makers drawn on a fine grid.
                var others = Enumerable.Range(-CountVariants.Furthest, 2 * CountVariants.Furthest + 1).Where(k => k != 0).ToArray();
                var most = Sets(others, variants.Variants.Length - 2).Max(set => Served(motif, [0, .. set]));
                var grid = Served(motif, Offsets(variants));
                Assert.Equal(grid, variants.Served, 0.01);
                Assert.True(most < CountVariants.Aim + 0.005, $"{most:0.000} by a smaller set");
                Assert.True(grid >= most + CountVariants.WorthOffering - 0.005, "each further count is worth offering");
            }
        }
    }

    /// <summary>A repeat that is 2 % longer than the plan's needs 2 % more stitches.</summary>
    [Fact]
    public void Variants_lie_about_the_planned_count_and_further_apart_in_wider_rows()
    {
        var (narrow, wide) = (CountVariants.Fewest(Motif(42, 60, 1), Hands, 0.005), CountVariants.Fewest(Motif(105, 60, 1), Hands, 0.005));
        Assert.All((CountVariants[])[narrow, wide], v => Assert.True(Offsets(v)[0] < 0 && Offsets(v)[^1] > 0, "yarns that run longer and shorter"));
        Assert.True(Offsets(wide)[^1] - Offsets(wide)[0] > Offsets(narrow)[^1] - Offsets(narrow)[0], "as far in per cent is more stitches");
    }

    [Fact]
    public void Every_pooled_piece_of_a_plan_has_them_and_plain_ones_none()
    {
        var plan = TestProjects.Tideline.Planned();
        Assert.All(plan.Sizes.SelectMany(s => s.Pieces), p => Assert.Equal(p.Pooled, CountVariants.Of(plan, p) is not null));
        Assert.All(plan.Sizes, s =>
        {
            var all = CountVariants.Of(plan, s);
            Assert.Equal(s.Pieces.Where(p => p.Pooled).Select(p => p.Id).Order(), all.Keys.Order());
            Assert.All(all, v => Assert.Equal(CountVariants.Of(plan, s[v.Key])!.Variants, v.Value.Variants));
        });
    }

    private static int[] Offsets(CountVariants variants) => [.. variants.Variants.Select(v => v.Offset)];

    private static double Chance(HeldMotif motif, HandsPrior hands, double departure, Random random) => MadeWell.ChanceAt(
        motif, hands, departure + 0.02 * (2 * random.NextDouble() - 1) - 0.005 * Draw(random));

    private static double Served(HeldMotif motif, int[] offsets)
    {
        var (sum, weights) = (0.0, 0.0);
        for (var own = -0.1; own <= 0.1; own += 0.002)
        {
            var weight = Math.Exp(-own * own / (2 * CountVariants.RepeatSpread * CountVariants.RepeatSpread));
            sum += weight * offsets.Max(k => Known.GetOrAdd((motif, k, own)));
            weights += weight;
        }
        return sum / weights;
    }

    private static readonly Cache Known = new();

    private sealed class Cache
    {
        private readonly Dictionary<(HeldMotif, int), double> _chances = [];

        /// <summary>The chance by departure, to a thousandth.</summary>
        public double GetOrAdd((HeldMotif Motif, int Offset, double Own) of)
        {
            var key = (of.Motif, (int)Math.Round(1000 * (of.Offset / of.Motif.RowUnits - of.Own)));
            if (!_chances.TryGetValue(key, out var chance))
            {
                _chances[key] = chance = MadeWell.AllHands(Hands).Sum(h =>
                    h.Share * MadeWell.Biases(0.002).Sum(b => b.Share * MadeWell.ChanceAt(of.Motif, h.Hands, key.Item2 / 1000.0 + b.Bias)));
            }
            return chance;
        }
    }

    private static IEnumerable<int[]> Sets(int[] of, int size) => size == 0
        ? [[]]
        : of.SelectMany((first, at) => Sets(of[(at + 1)..], size - 1).Select(rest => (int[])[first, .. rest]));

    private static double Draw(Random random) =>
        Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
}
