using System.Collections.Immutable;
using Dyepath.Core.Limits;
using Dyepath.Core.Measuring;
using Dyepath.Core.Quantities;
using Dyepath.Core.Yarns;

namespace Dyepath.Core.Planning;

/// <summary>How many makers a number of balls serves.</summary>
/// <param name="Balls">Of one yarn.</param>
/// <param name="Share">Of all makers, in (0, 1].</param>
public sealed record BallShare(int Balls, double Share);

/// <summary>
/// How likely balls are to be enough: makers differ in the yarn they take, and every ball begins anywhere in its sequence, so that a join
/// wastes anything up to one sequence. A fixed set of makers is worked out, the same one everywhere (docs/balls.md).
/// </summary>
public static class BallOdds
{
    /// <summary>
    /// Standard deviation of what a maker takes, relative to the plan. The trade's reserve is 10 to 15 %; taken as what serves 19 makers of
    /// 20, it stands for 6 to 9 %, and the smaller is assumed (common practice, no source).
    /// </summary>
    public const double UseSpread = 0.06;

    /// <summary>19 makers of 20.</summary>
    public const double Safe = 0.95;

    /// <summary>99 makers of 100: more balls are not listed.</summary>
    public const double Most = 0.99;

    /// <summary>Equally likely uses of yarn, and makers of each, who differ in where their balls begin.</summary>
    private const int Uses = 250, Alike = 8;

    private static readonly double[] Taken =
        [.. Enumerable.Range(0, Uses).Select(i => 1 + UseSpread * Normal.Quantile((i + 0.5) / Uses))];

    /// <summary>Shares by balls, from the fewest that serve anyone to the fewest that serve 99 makers of 100; never falling.</summary>
    /// <param name="sequence">C in micro-units.</param>
    /// <param name="unit">Yarn of one pooling unit.</param>
    /// <param name="pieces">In the order in which they are made.</param>
    /// <param name="otherUses">Yarn for all that need not begin at a colour, taken last.</param>
    /// <returns>Empty where so many makers cannot be served by <see cref="BallPlanner.MostBalls"/> balls.</returns>
    public static ImmutableArray<BallShare> Of(
        long sequence, Length unit, Length ball, IReadOnlyList<PooledPiece> pieces, Length otherUses, Effort? effort = null)
    {
        ArgumentNullException.ThrowIfNull(pieces);
        var served = new int[BallPlanner.MostBalls + 2];
        // Where no piece has to meet a colour, it does not matter where balls begin.
        var alike = pieces.Count == 0 ? 1 : Alike;
        var makers = Uses * alike;
        for (var maker = 0; maker < makers; maker++)
        {
            var taken = Taken[maker / alike];
            var need = Need(sequence, unit * taken, ball, pieces, otherUses * taken, maker);
            effort?.Spend(1 + need + pieces.Count);
            served[need]++;
        }
        var shares = ImmutableArray.CreateBuilder<BallShare>();
        for (int balls = 0, sum = 0; balls <= BallPlanner.MostBalls; balls++)
        {
            sum += served[balls];
            if (sum > 0)
                shares.Add(new BallShare(balls, (double)sum / makers));
            if (sum >= Most * makers)
                return shares.ToImmutable();
        }
        return [];
    }

    /// <summary>The fewest balls that serve 19 makers of 20.</summary>
    /// <param name="shares">As <see cref="Of"/> gives them, not empty.</param>
    public static int SafeOf(ImmutableArray<BallShare> shares) => shares.First(s => s.Share >= Safe).Balls;

    /// <summary>Balls that one maker takes, with her own joins; one over <see cref="BallPlanner.MostBalls"/> stands for more.</summary>
    private static int Need(long sequence, Length unit, Length ball, IReadOnlyList<PooledPiece> pieces, Length otherUses, int maker)
    {
        var ends = 2 * (long)Math.Round(BallPlanner.End / unit * ColourRing.Unit);
        var whole = (long)Math.Floor(ball / unit * ColourRing.Unit) - ends;
        var (balls, left, place) = (0, 0L, 0L);
        foreach (var piece in pieces)
        {
            var run = ColourRing.Modulo(piece.Begins - place, sequence) + ends;
            if (balls == 0 || left <= run)
                left = Take();
            else
                left -= run;
            var yarn = piece.Yarn;
            while (left < yarn && balls <= BallPlanner.MostBalls)
                left += Take();
            left -= yarn;
            place = piece.Begins + yarn;
        }
        var rest = (long)Math.Ceiling(otherUses / unit * ColourRing.Unit) - left;
        if (rest > 0)
            balls += whole <= 0 ? BallPlanner.MostBalls + 1 : (int)Math.Min(BallPlanner.MostBalls, (rest + whole - 1) / whole);
        return Math.Min(balls, BallPlanner.MostBalls + 1);

        // A ball that ends before the wanted place comes is of no use.
        long Take() => Math.Max(0, whole - (long)(Anywhere(maker, balls++) * sequence));
    }

    /// <summary>
    /// In [0, 1), the same for the same maker and ball: makers who take alike are spread evenly, from where one output of SplitMix64
    /// (Steele, Lea and Flood, OOPSLA 2014) puts the first of them.
    /// </summary>
    private static double Anywhere(int maker, int ball)
    {
        var z = unchecked(((ulong)(maker / Alike) * 4_096 + (ulong)ball + 1) * 0x9e3779b97f4a7c15);
        z = unchecked((z ^ (z >> 30)) * 0xbf58476d1ce4e5b9);
        z = unchecked((z ^ (z >> 27)) * 0x94d049bb133111eb);
        var from = ((z ^ (z >> 31)) >> 11) * (1.0 / (1L << 53)) + (double)(maker % Alike * (2 * ball + 1) % Alike) / Alike;
        return from - Math.Floor(from);
    }
}
