using Dyepath.Core.Checking;
using Dyepath.Core.Fabrics;
using Dyepath.Core.Garments;
using Dyepath.Core.Planning;
using Dyepath.Core.Quantities;
using Dyepath.Core.Tests.Garments;
using Dyepath.Core.Yarns;

namespace Dyepath.Core.Tests.Supplies;

/// <summary>Balls that serve a share of makers, against makers worked out another way.</summary>
public sealed class BallOddsTests
{
    private static readonly Length Unit = Length.FromCentimetres(6);

    /// <summary>
    /// 100,000 makers in metres of yarn, each with her own use (normal, 6 %) and her own balls. The shares are those of 2,000: 1.5 points are
    /// 1.3 standard errors of as many drawn at random, and these are spread evenly.
    /// </summary>
    [Theory]
    [InlineData(22, 230, 4, 5_000, 40)]
    [InlineData(22, 230, 1, 900, 0)]
    [InlineData(140, 30, 3, 2_000, 12)]
    [InlineData(400, 60, 2, 6_000, 90)]
    [InlineData(60, 12, 5, 300, 3)]
    public void Shares_are_those_of_makers_simulated_in_metres(int sequence, double ball, int pieces, int stitches, double other)
    {
        var list = Enumerable.Range(0, pieces).Select(i => new PooledPiece(
            new PieceRun(PieceId.Front, i), FabricPath.Constant(Working.Turned, stitches / 20, 20, new PathOptions { Start = 3 * i }), 0, 0)).ToArray();
        var odds = BallOdds.Of(sequence * (long)ColourRing.Unit, Unit, Length.FromMetres(ball), list, Length.FromMetres(other));
        var random = new Random(20_240);
        const int makers = 100_000;
        var needs = Enumerable.Range(0, makers).Select(_ => Simulated(random, sequence, ball, pieces, stitches, other)).ToArray();
        Assert.True(odds[^1].Share >= 0.99 && odds.SkipLast(1).All(o => o.Share < 0.99));
        Assert.Equal(Enumerable.Range(odds[0].Balls, odds.Length), odds.Select(o => o.Balls));
        foreach (var (balls, share) in odds)
            Assert.Equal((double)needs.Count(n => n <= balls) / makers, share, 0.015);
        Assert.InRange((double)needs.Count(n => n < odds[0].Balls) / makers, 0, 0.005);
    }

    private static int Simulated(Random random, int sequence, double ball, int pieces, int stitches, double other)
    {
        // Box and Muller.
        var use = 1 + 0.06 * Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
        var (stitch, balls, onBall, at) = (0.06 * use, 0, 0.0, 0.0);
        var round = sequence * stitch;
        for (var piece = 0; piece < pieces; piece++)
        {
            // From where she is in the sequence to where the piece begins, and two ends.
            var ahead = (3 * piece - at) % sequence;
            var toBegin = (ahead < 0 ? ahead + sequence : ahead) * stitch + 0.3;
            if (balls > 0 && onBall > toBegin)
                onBall -= toBegin;
            else
                onBall = Open();
            var wanted = stitches * stitch;
            while (wanted > onBall)
            {
                wanted -= onBall;
                onBall = Open();
            }
            onBall -= wanted;
            at = 3 * piece + stitches;
        }
        for (var wanted = other * use; wanted > onBall; balls++)
        {
            wanted -= onBall;
            onBall = ball - 0.3;
        }
        return balls;

        double Open()
        {
            balls++;
            return Math.Max(0, ball - 0.3 - round * random.NextDouble());
        }
    }

    /// <summary>Without a sequence one maker differs from the next by her use alone: a normal distribution, by hand.</summary>
    [Fact]
    public void Plain_yarn_follows_the_spread_of_use_alone()
    {
        // 91 m from balls of 100.3 m: ten times 9.1; 100 m a ball serve who takes under 1.0989 of it, z = 1.648: 95.03 %.
        var odds = BallOdds.Of(1, Unit, Length.FromMetres(100.3), [], Length.FromMetres(91));
        Assert.Equal((1, 0.95), (odds[0].Balls, odds[0].Share), new Near(0.003));
        Assert.Equal(2, odds[^1].Balls);
        Assert.Equal(1, BallOdds.SafeOf(odds));
    }

    [Fact]
    public void What_cannot_be_served_has_no_shares() => Assert.Empty(
        BallOdds.Of(22 * (long)ColourRing.Unit, Unit, Length.FromMetres(0.2), [], Length.FromMetres(10)));

    /// <summary>15 cm at either end of a ball are woven in: a ball of 30 cm serves nobody, one of 31 cm those who need a centimetre of it.</summary>
    [Theory]
    [InlineData(0.3, false)]
    [InlineData(0.31, true)]
    public void A_ball_of_its_two_ends_alone_serves_nobody(double ball, bool serves) =>
        Assert.Equal(serves, !BallOdds.Of(1, Unit, Length.FromMetres(ball), [], Length.FromMetres(0.05)).IsEmpty);

    /// <summary>The promise of the plan: 19 makers of 20, and one ball fewer serves fewer.</summary>
    [Fact]
    public void A_plan_buys_what_serves_19_makers_of_20()
    {
        var plan = TestProjects.Tideline.Planned();
        foreach (var yarn in plan.Sizes.Select(s => s.Yarn))
        {
            Assert.True(yarn.Odds.Single(o => o.Balls == yarn.BallsSafe).Share >= 0.95);
            Assert.True(yarn.ShareWithOneFewer < 0.95);
            Assert.InRange(yarn.BallsTypical, yarn.Odds[0].Balls, yarn.Odds[^1].Balls);
            Assert.True(yarn.Companion!.Odds.Single(o => o.Balls == yarn.Companion.Balls).Share >= 0.95);
        }
        Assert.Empty(PlanCheck.Verify(plan));
        Assert.Equal(
            plan.Sizes.SelectMany(s => s.Yarn.Odds), TestProjects.Tideline.Planned().Sizes.SelectMany(s => s.Yarn.Odds));
    }

    private sealed class Near(double tolerance) : IEqualityComparer<(int Balls, double Share)>
    {
        public bool Equals((int Balls, double Share) x, (int Balls, double Share) y) => x.Balls == y.Balls && Math.Abs(x.Share - y.Share) <= tolerance;

        public int GetHashCode((int Balls, double Share) obj) => obj.Balls;
    }
}
