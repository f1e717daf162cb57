using Dyepath.Core.Limits;
using Dyepath.Core.Measuring;

namespace Dyepath.Core.Pricing;

/// <summary>How fast a maker works: the middle of her pace, and the range that eight of ten rows keep within.</summary>
/// <remarks>All three in stitches a minute, counted as single crochet; <see cref="Workload"/> says what another stitch counts as.</remarks>
public sealed record Pace
{
    private Pace(double low, double median, double high) => (Low, Median, High) = (low, median, high);

    /// <summary>Of single crochet in a minute; beyond it nobody works.</summary>
    public static Bounds Allowed { get; } = new(1, 100, "stitches a minute");

    /// <summary>12 to 20 single crochet a minute (common practice, no source).</summary>
    public static Pace Usual { get; } = Between(12, 20);

    /// <summary>One row of ten is slower.</summary>
    public double Low { get; }

    /// <summary>Half of the rows are slower.</summary>
    public double Median { get; }

    /// <summary>One row of ten is faster.</summary>
    public double High { get; }

    /// <summary>A range that somebody states, with its middle as the median.</summary>
    /// <param name="low">Within <see cref="Allowed"/>.</param>
    /// <param name="high">Within <see cref="Allowed"/>, not below <paramref name="low"/>.</param>
    /// <exception cref="ArgumentOutOfRangeException">Outside the range, or the wrong way round.</exception>
    public static Pace Between(double low, double high) => Of(low, (low + high) / 2, high);

    /// <summary>All three as they are known.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Outside <see cref="Allowed"/>, or not in rising order.</exception>
    public static Pace Of(double low, double median, double high)
    {
        Allowed.Check(low);
        Allowed.Check(median);
        Allowed.Check(high);
        if (low > median)
            throw new ArgumentOutOfRangeException(nameof(median), median, $"{nameof(median)} must not be below {low} stitches a minute.");
        if (median > high)
            throw new ArgumentOutOfRangeException(nameof(high), high, $"{nameof(high)} must not be below {median} stitches a minute.");
        return new Pace(low, median, high);
    }
}

/// <summary>One row of a making log and how long it took.</summary>
/// <param name="SingleCrochets">Its stitches and its turn, counted as <see cref="Workload"/> counts them.</param>
/// <param name="Time">From the end of the row before it to its own end; a pause within is not taken out.</param>
public readonly record struct RowTime(double SingleCrochets, TimeSpan Time);

/// <summary>A maker's own pace, from the rows that she worked.</summary>
/// <param name="Pace">Its median and range are over rows.</param>
/// <param name="Rows">How many it rests on.</param>
/// <param name="LeftOut">Rows that are no measure of the hands: a pause lay within, or several were told at once.</param>
public sealed record MakersPace(Pace Pace, int Rows, int LeftOut)
{
    /// <summary>Fewer rows say too little of a range (an assumption without a source).</summary>
    public const int FewestRows = 10;

    /// <summary>
    /// A row this many times slower than the middle of all has a pause in it, one as many times faster was told later than it was worked
    /// (an assumption without a source).
    /// </summary>
    public const double FarOff = 3;

    /// <returns>Null where too few rows are left, or hands cannot work so.</returns>
    public static MakersPace? Of(IEnumerable<RowTime> rows)
    {
        ArgumentNullException.ThrowIfNull(rows);
        var given = rows.ToArray();
        var told = given.Where(r => r.SingleCrochets > 0 && r.Time > TimeSpan.Zero);
        double[] paces = [.. told.Select(r => r.SingleCrochets / r.Time.TotalMinutes).Order()];
        if (paces.Length < FewestRows)
            return null;
        var middle = Quantile.Of(paces, 0.5);
        paces = [.. paces.Where(p => p >= middle / FarOff && p <= middle * FarOff)];
        if (paces.Length < FewestRows || !Pace.Allowed.Holds(Quantile.Of(paces, 0.1)) || !Pace.Allowed.Holds(Quantile.Of(paces, 0.9)))
            return null;
        return new MakersPace(
            Pace.Of(Quantile.Of(paces, 0.1), Quantile.Of(paces, 0.5), Quantile.Of(paces, 0.9)), paces.Length, given.Length - paces.Length);
    }
}
