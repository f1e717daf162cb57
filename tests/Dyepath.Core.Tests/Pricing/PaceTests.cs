using CsCheck;
using Dyepath.Core.Pricing;

namespace Dyepath.Core.Tests.Pricing;

public sealed class PaceTests
{
    /// <summary>Rows of any maker: so many single crochet at a pace that her hands have.</summary>
    private static readonly Gen<RowTime[]> Rows =
        from pace in Gen.Double[5, 40]
        from rows in Gen.Select(Gen.Double[20, 200], Gen.Double[0.7, 1.4]).Array[MakersPace.FewestRows, 60]
        select rows.Select(r => new RowTime(r.Item1, TimeSpan.FromMinutes(r.Item1 / (pace * r.Item2)))).ToArray();

    [Theory]
    [InlineData(0, 20)]
    [InlineData(12, 101)]
    [InlineData(20, 12)]
    [InlineData(double.NaN, 20)]
    [InlineData(12, double.PositiveInfinity)]
    [InlineData(-12, 20)]
    public void Nobody_works_so(double low, double high) => Assert.Throws<ArgumentOutOfRangeException>(() => Pace.Between(low, high));

    [Fact]
    public void The_median_lies_between() => Assert.Throws<ArgumentOutOfRangeException>(() => Pace.Of(12, 21, 20));

    [Fact]
    public void The_usual_pace_is_twelve_to_twenty() => Assert.Equal((12, 16, 20), (Pace.Usual.Low, Pace.Usual.Median, Pace.Usual.High));

    /// <summary>By hand: 11 rows of 60 single crochet at 10, 11, … 20 a minute; a tenth and nine tenths are the second and the tenth of them.</summary>
    [Fact]
    public void A_tenth_half_and_nine_tenths_of_the_rows()
    {
        var own = MakersPace.Of(Enumerable.Range(10, 11).Select(pace => new RowTime(60, TimeSpan.FromMinutes(60.0 / pace))))!;
        Assert.Equal((11, 15, 19), (own.Pace.Low, own.Pace.Median, own.Pace.High), Close);
        Assert.Equal((11, 0), (own.Rows, own.LeftOut));
    }

    /// <summary>A night within a row, rows told all at once, and a clock that was put back are no measure of the hands.</summary>
    [Fact]
    public void Pauses_and_late_taps_are_left_out()
    {
        var steady = Enumerable.Repeat(new RowTime(60, TimeSpan.FromMinutes(4)), 20);
        var own = MakersPace.Of(
        [
            .. steady, new(60, TimeSpan.FromHours(9)), new(60, TimeSpan.FromMinutes(13)), new(60, TimeSpan.FromSeconds(2)), new(60, TimeSpan.Zero),
            new(60, TimeSpan.FromMinutes(-5)), new(0, TimeSpan.FromMinutes(4)),
        ])!;
        Assert.Equal((15, 15, 15), (own.Pace.Low, own.Pace.Median, own.Pace.High), Close);
        Assert.Equal((20, 6), (own.Rows, own.LeftOut));
    }

    [Fact]
    public void Too_few_rows_or_hands_that_nobody_has_tell_nothing()
    {
        Assert.Null(MakersPace.Of([]));
        Assert.Null(MakersPace.Of(Enumerable.Repeat(new RowTime(60, TimeSpan.FromMinutes(4)), MakersPace.FewestRows - 1)));
        Assert.NotNull(MakersPace.Of(Enumerable.Repeat(new RowTime(60, TimeSpan.FromMinutes(4)), MakersPace.FewestRows)));
        Assert.Null(MakersPace.Of(Enumerable.Repeat(new RowTime(60, TimeSpan.FromSeconds(1)), 20)));
        Assert.Null(MakersPace.Of(Enumerable.Repeat(new RowTime(60, TimeSpan.FromDays(1)), 20)));
        Assert.Null(MakersPace.Of(Enumerable.Repeat(new RowTime(60, TimeSpan.MaxValue), 20)));
    }

    [Fact]
    public void Law_rows_that_take_twice_as_long_are_half_the_pace() => Rows.Holds(
        rows =>
        {
            var (own, slow) = (MakersPace.Of(rows)!, MakersPace.Of(rows.Select(r => r with { Time = r.Time * 2 }))!);
            Assert.Equal(own.Pace.Median / 2, slow.Pace.Median, 1e-6);
            Assert.Equal(own.Pace.Low / 2, slow.Pace.Low, 1e-6);
            Assert.Equal(own.Pace.High / 2, slow.Pace.High, 1e-6);
        },
        seed: 21, cases: 200);

    /// <summary>Four of five rows at least lie within the range, ends included, and the order of rows does not matter.</summary>
    [Fact]
    public void Law_eight_of_ten_rows_lie_within() => Rows.Holds(
        rows =>
        {
            var own = MakersPace.Of(rows)!;
            var within = rows.Count(r => r.SingleCrochets / r.Time.TotalMinutes is var pace && pace >= own.Pace.Low - 1e-9 && pace <= own.Pace.High + 1e-9);
            Assert.InRange(within, 0.8 * rows.Length - 2, 0.8 * rows.Length + 2);
            Assert.Equal(own, MakersPace.Of(rows.Reverse()));
        },
        seed: 22, cases: 200);

    private static bool Close((double, double, double) one, (double, double, double) other) =>
        Math.Abs(one.Item1 - other.Item1) < 1e-6 && Math.Abs(one.Item2 - other.Item2) < 1e-6 && Math.Abs(one.Item3 - other.Item3) < 1e-6;
}
