using Dyepath.Workspace.Yarn;

namespace Dyepath.Workspace.Tests.Yarn;

public class CountEntryTests
{
    [Fact]
    public void One_key_a_colour_where_a_second_digit_would_be_far_too_many()
    {
        var entry = new CountEntry();

        Assert.Equal(5, entry.Digit('5', 5.1));
        Assert.Equal("", entry.Pending);
        Assert.Null(entry.Digit('1', 5.1));
        Assert.Equal(10, entry.Digit('0', 5.1));
    }

    [Theory]
    [InlineData(12.2, "1", null)]
    [InlineData(12.2, "12", 12)]
    [InlineData(12.2, "9", 9)]
    [InlineData(150.0, "15", null)]
    public void Longer_counts_wait_for_their_digits(double usual, string typed, int? count) =>
        Assert.Equal(count, new CountEntry().Type(typed, usual));

    [Fact]
    public void Where_nothing_is_known_a_key_ends_the_count()
    {
        var entry = new CountEntry();

        Assert.Null(entry.Digit('5', null));
        Assert.Equal(5, entry.Enter());
        Assert.Equal(14, entry.Type("14 ", null));
        Assert.Equal(7, entry.Type("7,", null));
    }

    [Fact]
    public void Going_on_can_be_turned_off()
    {
        var entry = new CountEntry { GoesOn = false };

        Assert.Null(entry.Digit('5', 5));
        Assert.Equal("5", entry.Pending);
        Assert.Equal(5, entry.Enter());
    }

    [Fact]
    public void Back_takes_digits_first_and_then_says_that_the_last_count_is_meant()
    {
        var entry = new CountEntry();
        entry.Digit('1', 9);

        Assert.True(entry.Back());
        Assert.False(entry.Back());
        Assert.Null(entry.Enter());
    }

    [Fact]
    public void More_than_the_document_allows_stays_to_be_mended()
    {
        var entry = new CountEntry();

        Assert.Null(entry.Type("1001 ", null));
        Assert.Equal("1001", entry.Pending);
        Assert.Equal(0, entry.Type("0 ", null));
    }

    [Theory]
    [InlineData("1000 ", 1_000)]
    [InlineData("999\n", 999)]
    [InlineData("12;", 12)]
    [InlineData("12.", 12)]
    [InlineData("12345 ", null)]
    [InlineData(" ", null)]
    public void A_thousand_stitches_of_a_colour_are_the_most(string typed, int? count) => Assert.Equal(count, new CountEntry().Type(typed, null));

    /// <summary>Of a colour of nine 16 would be no surprise, so that a 1 may begin more; 17 would.</summary>
    [Theory]
    [InlineData(5.0, "1", null)]
    [InlineData(4.9, "1", 1)]
    [InlineData(11.2, "2", 2)]
    [InlineData(11.3, "2", null)]
    public void A_digit_waits_as_long_as_a_further_one_would_be_plausible(double usual, string typed, int? count) =>
        Assert.Equal(count, new CountEntry().Type(typed, usual));

    [Fact]
    public void What_is_cleared_is_forgotten()
    {
        var entry = new CountEntry();
        entry.Digit('1', null);
        entry.Clear();
        Assert.Equal(("", null), (entry.Pending, entry.Enter()));
    }
}
