using Dyepath.Core.Making;

namespace Dyepath.Core.Tests.Making;

public sealed class PortableMathTests
{
    [Theory]
    // Abramowitz and Stegun, Handbook of Mathematical Functions (1964), table 1.1 (powers of e) and e itself.
    [InlineData(0, 1)]
    [InlineData(1, 2.718281828459045)]
    [InlineData(-1, 0.36787944117144233)]
    [InlineData(-0.5, 0.6065306597126334)]
    [InlineData(10, 22026.465794806718)]
    [InlineData(-10, 4.5399929762484854e-05)]
    public void Known_powers_of_e(double x, double expected) =>
        Assert.Equal(1, PortableMath.Exp(x) / expected, 4e-16);

    [Fact]
    public void Law_agrees_with_the_platform_over_the_whole_range()
    {
        var random = new Random(1);
        for (int i = 0; i < 100_000; i++)
        {
            double x = (random.NextDouble() - 0.5) * 2 * Math.Pow(10, random.NextDouble() * 14.8 - 12);
            if (Math.Abs(x) > 700) continue;
            Assert.Equal(1, PortableMath.Exp(x) / Math.Exp(x), 5e-16);
        }
    }

    [Theory]
    [InlineData(-701)]
    [InlineData(-1e9)]
    [InlineData(double.NegativeInfinity)]
    public void Extreme_far_below_zero_it_is_nothing(double x) => Assert.Equal(0, PortableMath.Exp(x));
}
