using Dyepath.Core.Fabrics;
using Dyepath.Core.Measuring;
using Dyepath.Core.Planning;

namespace Dyepath.Core.Tests.Garments;

/// <summary>The chance of a good piece, against makers who work it stitch by stitch (docs/made-well.md).</summary>
public sealed class MadeWellTests(ITestOutputHelper output)
{
    private static readonly double[] Sequence = [5, 4, 3, 5, 4];

    /// <summary>
    /// 1,000 yarns, each drawn from what is known of C, and a maker of her own for each: agreement to 2 points, beside the error of 1,000
    /// draws, which at half is 1.6 points.
    /// </summary>
    [Theory]
    [InlineData(63, 80, 0.5, 0.02)]
    [InlineData(84, 80, -0.5, 0.02)]
    [InlineData(105, 120, 0.5, 0.02)]
    [InlineData(83, 72, 1, 0.01)]
    [InlineData(42, 60, 1, 0.03)]
    [InlineData(83, 72, 0, 0.02)]
    [InlineData(63, 30, 0.5, 0.02)]
    [InlineData(30, 300, 2, 0.02)]
    [InlineData(126, 90, 0.5, 0.02)]
    [InlineData(105, 120, 0.5, 0.04)]
    [InlineData(83, 72, 0.5, 0.05)]
    public void Makers_simulated_stitch_by_stitch_come_out_as_often(int stitches, int rows, double lean, double spread)
    {
        var hands = new HandsPrior(spread, 50, 0.02);
        var motif = new HeldMotif(stitches, rows, 21, lean, Sequence.Sum(l => l * l) / 21);
        var chance = MadeWell.Chance(motif, hands, 0.005);
        var random = new Draws(7);
        const int yarns = 1_000, each = 4;
        var good = 0;
        for (var yarn = 0; yarn < yarns * each; yarn++)
            good += IsGood(random, stitches, rows, lean, hands, -0.005 * random.Normal()) ? 1 : 0;
        var simulated = (double)good / (yarns * each);
        output.WriteLine($"{stitches} × {rows}, lean {lean}, {spread:0 %}: {chance:0.000}, simulated {simulated:0.000}");
        Assert.Equal(simulated, chance, 0.02 + 2 * Math.Sqrt(simulated * (1 - simulated) / (yarns * each)));
    }

    /// <summary>A maker of her own steadiness for each yarn: two of three within a factor of 1.7 of 2 %.</summary>
    [Theory]
    [InlineData(63, 80, 0.5)]
    [InlineData(126, 90, 0.5)]
    [InlineData(83, 72, 1)]
    public void As_many_makers_of_every_kind_are_served(int stitches, int rows, double lean)
    {
        var motif = new HeldMotif(stitches, rows, 21, lean, Sequence.Sum(l => l * l) / 21);
        var served = MadeWell.Served(motif, new HandsPrior(0.009, 50, 0.02), 0.005);
        var random = new Draws(11);
        const int makers = 3_000;
        var good = Enumerable.Range(0, makers).Count(_ => IsGood(
            random, stitches, rows, lean, new HandsPrior(Math.Min(0.5, 0.02 * Math.Exp(Math.Log(1.7) * random.Normal())), 50, 0.02), -0.005 * random.Normal()));
        var simulated = (double)good / makers;
        output.WriteLine($"{stitches} × {rows}, lean {lean}: {served:0.000}, simulated {simulated:0.000}");
        Assert.Equal(simulated, served, 0.02 + 2 * Math.Sqrt(simulated * (1 - simulated) / makers));
    }

    /// <summary>Works every stitch, reads whole stitches at the end of each row, and measures each motif's height in rows.</summary>
    private static bool IsGood(Draws random, int stitches, int rows, double lean, HandsPrior hands, double sequence)
    {
        var rho = Math.Exp(-1 / hands.Memory);
        var anew = hands.Spread * Math.Sqrt(1 - rho * rho);
        var (bias, gain) = (0.02 * (2 * random.Uniform() - 1) + sequence, 0.85 + 0.15 * random.Normal());
        var (tension, used, correction) = (hands.Spread * random.Normal(), 0.0, 0.0);
        // The dye puts each colour's end somewhat off its place.
        var (section, ends, shift) = (0, Sequence[0] * (1 + hands.Dye * random.Normal()), 0.0);
        shift = ends - Sequence[0];
        var phases = new double[rows + 1];
        for (var row = 0; row < rows; row++)
        {
            var each = 1 + bias + gain * correction;
            for (var stitch = 0; stitch < stitches; stitch++)
            {
                tension = rho * tension + anew * random.Normal();
                used += each + tension;
                while (used > ends)
                {
                    section = (section + 1) % Sequence.Length;
                    var length = Sequence[section] * (1 + hands.Dye * random.Normal());
                    ends += length;
                    shift += length - Sequence[section];
                }
            }
            phases[row + 1] = used - (row + 1) * stitches - shift;
            var chance = random.Uniform();
            var read = Math.Round(phases[row + 1]) + (chance < 0.015 ? -1 : chance < 0.03 ? 1 : 0);
            correction = Math.Clamp(-read / stitches, -0.06, 0.06);
        }
        if (lean == 0)
            return Math.Abs(phases[rows]) <= 21 / 4.0;
        var tall = 21 / Math.Abs(lean);
        for (var motif = 0; motif < Math.Max(1, Math.Floor(rows / tall)); motif++)
        {
            var (from, to) = ((int)Math.Round(motif * tall), (int)Math.Min(rows, Math.Round((motif + 1) * tall)));
            var leans = lean + (phases[to] - phases[from]) / (to - from);
            var height = 21 / leans * Math.Sign(lean);
            if (height < 0.75 * tall || height > 1.25 * tall)
                return false;
        }
        return true;
    }

    [Fact]
    public void Steadier_hands_and_better_known_yarn_make_more_good_pieces()
    {
        var motif = new HeldMotif(83, 80, 21, 0.5, 4.3);
        var steps = new[] { 0.005, 0.01, 0.02, 0.03, 0.05 }.Select(s => MadeWell.Chance(motif, new HandsPrior(s, 50, 0.02), 0.005)).ToArray();
        Assert.Equal(steps.OrderDescending(), steps);
        output.WriteLine(string.Join(", ", steps));
        Assert.True(steps[0] > 0.98 && steps[^1] < 0.8);
        Assert.True(MadeWell.Chance(motif, HandsPrior.Default, 0.03) < MadeWell.Chance(motif, HandsPrior.Default, 0.001));
        // Wider is harder to hold.
        Assert.True(MadeWell.Chance(motif with { RowUnits = 125 }, HandsPrior.Default, 0.005) < MadeWell.Chance(motif, HandsPrior.Default, 0.005));
    }

    /// <summary>Argyle of half a stitch over 21: 42 rows; a quarter taller is 21/52.5 = 0.4 a row, a quarter lower 21/31.5 = 0.667.</summary>
    [Fact]
    public void A_quarter_of_the_height_is_a_drift_between_a_fifth_and_a_third_of_the_period()
    {
        var (least, most, rows, motifs) = MadeWell.Spans(new HeldMotif(63, 90, 21, 0.5, 0));
        Assert.Equal((-4.2, 7.0, 42.0, 2), (Math.Round(least, 9), Math.Round(most, 9), rows, motifs));
        (least, most, _, _) = MadeWell.Spans(new HeldMotif(63, 90, 21, -0.5, 0));
        Assert.Equal((-7.0, 4.2), (Math.Round(least, 9), Math.Round(most, 9)));
        (least, most, rows, motifs) = MadeWell.Spans(new HeldMotif(63, 21, 21, 0.5, 0));
        Assert.Equal((-2.1, 3.5, 21.0, 1), (Math.Round(least, 9), Math.Round(most, 9), rows, motifs));
        Assert.Equal((-5.25, 5.25, 90.0, 1), MadeWell.Spans(new HeldMotif(63, 90, 21, 0, 0)));
    }

    [Fact]
    public void Every_size_of_a_plan_has_its_chance_and_plain_pieces_none()
    {
        var plan = TestProjects.Tideline.Planned();
        Assert.All(plan.Sizes, s =>
        {
            Assert.All(s.Pieces, p => Assert.Equal(p.Pooled, p.MadeWell is not null));
            Assert.Equal(s.Pieces.Where(p => p.Pooled).Min(p => p.MadeWell), s.MadeWell);
            Assert.All(s.Pieces, p => Assert.Equal(p.Pooled, MadeWell.Served(plan, p) is not null));
            Assert.InRange(MadeWell.Served(plan, s)!.Value, 0.01, 0.999);
            Assert.InRange(s.MadeWell!.Value, 0.01, 0.999);
        });
    }

    /// <summary>
    /// Hundreds of millions of draws: bits by Steele, Lea and Flood's SplitMix64 (2014), and normals by inversion, the quantiles of the
    /// middles of 65,536 equal parts, whose spread is that of a normal to a ten-thousandth.
    /// </summary>
    private sealed class Draws(ulong seed)
    {
        private static readonly double[] Quantiles =
            [.. Enumerable.Range(0, 1 << 16).Select(i => MathNet.Numerics.Distributions.Normal.InvCDF(0, 1, (i + 0.5) / (1 << 16)))];

        private ulong _state = seed;

        public double Normal() => Quantiles[Bits() >> 48];

        /// <summary>From 0 up to 1.</summary>
        public double Uniform() => (Bits() >> 11) * (1.0 / (1UL << 53));

        private ulong Bits()
        {
            unchecked
            {
                var z = _state += 0x9E3779B97F4A7C15;
                z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9;
                z = (z ^ (z >> 27)) * 0x94D049BB133111EB;
                return z ^ (z >> 31);
            }
        }
    }
}
