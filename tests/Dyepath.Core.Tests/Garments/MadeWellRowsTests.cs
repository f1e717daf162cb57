using Dyepath.Core.Measuring;
using Dyepath.Core.Planning;

namespace Dyepath.Core.Tests.Garments;

/// <summary>
/// The chance of a good piece against makers drawn row by row instead of stitch by stitch: quicker than those of
/// <see cref="MadeWellTests"/>, for hands that forget within a row.
/// </summary>
public sealed class MadeWellRowsTests
{
    private const double Memory = 1;

    private const int Makers = 6_000;

    public static TheoryData<int, int, double, double, double> Pieces => new()
    {
        { 63, 80, 0.5, 0.12, 0.005 },
        { 84, 80, -0.5, 0.12, 0.005 },
        { 105, 120, 0.5, 0.15, 0.01 },
        { 83, 72, 1, 0.1, 0.005 },
        { 42, 60, 1, 0.2, 0.02 },
        { 83, 72, 0, 0.3, 0.005 },
        { 63, 30, 0.5, 0.15, 0.005 },
        { 30, 120, 1.75, 0.15, 0.01 },
        { 126, 90, 0.5, 0.1, 0.03 },
        { 20, 100, -1.5, 0.35, 0.005 },
    };

    [Theory]
    [MemberData(nameof(Pieces))]
    public void Makers_drawn_row_by_row_come_out_as_often(int stitches, int rows, double lean, double spread, double error)
    {
        var hands = new HandsPrior(spread, Memory, 0);
        var chance = MadeWell.Chance(new HeldMotif(stitches, rows, 21, lean, 0), hands, error);
        var random = new Random(17);
        var good = Enumerable.Range(0, Makers).Count(_ => IsGood(random, stitches, rows, lean, spread, error)) / (double)Makers;
        Assert.Equal(good, chance, 0.03 + 2 * Math.Sqrt(good * (1 - good) / Makers));
    }

    /// <summary>What leans the other way is as hard to hold, and what is asked of makers of every kind lies between the steadiest and the wildest.</summary>
    [Theory]
    [MemberData(nameof(Pieces))]
    public void The_other_lean_is_as_likely_and_all_makers_lie_between(int stitches, int rows, double lean, double spread, double error)
    {
        var motif = new HeldMotif(stitches, rows, 21, lean, 4.3);
        var hands = new HandsPrior(spread, 50, 0.02);
        var chance = MadeWell.Chance(motif, hands, error);
        Assert.InRange(chance, 0, 1);
        Assert.Equal(chance, MadeWell.Chance(motif with { Lean = -lean }, hands, error), 1e-6);
        var (steady, wild) = (MadeWell.Chance(motif, new HandsPrior(0.002, 50, 0.02), error), MadeWell.Chance(motif, new HandsPrior(0.2, 50, 0.02), error));
        Assert.InRange(MadeWell.Served(motif, hands, error), wild, steady);
        // A yarn dyed less evenly is harder to hold, and colours that come round later are easier.
        Assert.True(MadeWell.Chance(motif, new HandsPrior(0.02, 50, 0.1), error) <= MadeWell.Chance(motif, new HandsPrior(0.02, 50, 0), error) + 1e-9, "Uneven dye helps.");
    }

    /// <summary>Hands that do all right, on yarn that is known: every motif is held; none where a quarter of it is under a stitch.</summary>
    [Fact]
    public void Perfect_hands_hold_what_is_wide_enough_to_be_read()
    {
        var hands = new HandsPrior(0.0001, 50, 0);
        Assert.InRange(MadeWell.Chance(new HeldMotif(63, 80, 21, 0.5, 0), hands, 0), 0.999, 1);
        Assert.InRange(MadeWell.Chance(new HeldMotif(63, 80, 2, 0.5, 0), hands, 0), 0, 0.2);
    }

    /// <summary>A uniform bias within 2 %, hands that make 0.85 of what they mean, give or take 0.15, readings of whole stitches, 3 % of them one off.</summary>
    private static bool IsGood(Random random, int stitches, int rows, double lean, double spread, double error)
    {
        var bias = 0.02 * (2 * random.NextDouble() - 1) - error * Draw(random);
        var gain = 0.85 + 0.15 * Draw(random);
        // The sum of a row's stitches, each like the one before it by 1/e: the sum over all pairs.
        var like = Math.Exp(-1 / Memory);
        var variance = spread * spread * (stitches + 2 * Enumerable.Range(1, stitches - 1).Sum(apart => (stitches - apart) * Math.Pow(like, apart)));
        var sd = Math.Sqrt(variance);
        var phases = new double[rows + 1];
        var meant = 0.0;
        for (var row = 1; row <= rows; row++)
        {
            phases[row] = phases[row - 1] + stitches * bias + sd * Draw(random) + gain * meant;
            var chance = random.NextDouble();
            var read = Math.Round(phases[row]) + (chance < 0.015 ? -1 : chance < 0.03 ? 1 : 0);
            meant = Math.Clamp(-read, -0.06 * stitches, 0.06 * stitches);
        }
        if (lean == 0)
            return Math.Abs(phases[rows]) <= 21 / 4.0;
        var tall = 21 / Math.Abs(lean);
        for (var motif = 0; motif < Math.Max(1, Math.Floor(rows / tall)); motif++)
        {
            var (from, to) = ((int)Math.Round(motif * tall), (int)Math.Min(rows, Math.Round((motif + 1) * tall)));
            var height = 21 * Math.Sign(lean) / (lean + (phases[to] - phases[from]) / (to - from));
            if (height < 0.75 * tall || height > 1.25 * tall)
                return false;
        }
        return true;
    }

    private static double Draw(Random random) =>
        Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
}
