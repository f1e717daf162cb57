using Dyepath.Workspace.Shell;

namespace Dyepath.Workspace.Tests.Shell;

public sealed class TimeWordsTests
{
    [Theory]
    [InlineData(0, "just now")]
    [InlineData(1.9, "just now")]
    [InlineData(2.1, "2 minutes ago")]
    [InlineData(59.5, "59 minutes ago")]
    [InlineData(60.1, "an hour ago")]
    [InlineData(119.5, "an hour ago")]
    [InlineData(120.1, "2 hours ago")]
    [InlineData(23.9 * 60, "23 hours ago")]
    public void What_was_today_is_said_by_minutes_and_hours(double minutes, string words) =>
        Assert.Equal(words, TimeWords.Ago(DateTimeOffset.UtcNow.AddMinutes(-minutes)));

    [Fact]
    public void What_was_before_is_said_by_its_day()
    {
        var at = new DateTimeOffset(2026, 3, 1, 12, 0, 0, TimeSpan.Zero);
        Assert.Equal("1 March 2026", TimeWords.Day(at));
        Assert.Equal("1 March 2026", TimeWords.Ago(at));
        var yesterday = DateTimeOffset.UtcNow.AddHours(-24.1);
        Assert.Equal(TimeWords.Day(yesterday), TimeWords.Ago(yesterday));
    }
}
