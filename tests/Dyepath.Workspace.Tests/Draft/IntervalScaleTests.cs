using Dyepath.Workspace.Draft;

namespace Dyepath.Workspace.Tests.Draft;

/// <summary>Small scales: places on them, and marks that a person can read.</summary>
public sealed class IntervalScaleTests
{
    [Theory]
    [InlineData(3, 0)]
    [InlineData(4, 0)]
    [InlineData(6, 0.5)]
    [InlineData(7, 0.75)]
    [InlineData(8, 1)]
    [InlineData(9, 1)]
    public void A_value_lies_at_its_share_and_never_beyond_the_ends(double value, double share) =>
        Assert.Equal(share, new IntervalScale(4, 8).At(value));

    /// <summary>Steps of 1, 2 or 5 times a power of ten, the finest that does not make too many marks.</summary>
    [Theory]
    [InlineData(10, 10, 1)]
    [InlineData(10, 9, 2)]
    [InlineData(10, 5, 2)]
    [InlineData(10, 4, 5)]
    [InlineData(10, 2, 5)]
    [InlineData(10, 1, 10)]
    [InlineData(10, 0, 10)]
    [InlineData(0.3, 6, 0.05)]
    [InlineData(640, 8, 100)]
    public void Steps_are_round(double width, int most, double step) => Assert.Equal(step, IntervalScale.Step(width, most), 1e-12);

    [Fact]
    public void Marks_are_the_multiples_of_the_step_between_the_ends_with_both_ends()
    {
        Assert.Equal([4, 5, 6, 7, 8], new IntervalScale(4, 8).Marks(4));
        Assert.Equal([4, 6, 8], new IntervalScale(3.5, 8.5).Marks(3));
        Assert.Equal([-0.2, -0.1, 0, 0.1], new IntervalScale(-0.2, 0.1).MarksEvery(0.1));
        Assert.Equal(4, new IntervalScale(4, 8).Width);
    }

    [Theory]
    [InlineData(0.5, "50%")]
    [InlineData(0.12345, "12.35%")]
    [InlineData(1, "100%")]
    public void A_share_is_a_percentage_for_a_style(double share, string words) => Assert.Equal(words, IntervalScale.Percent(share));
}
