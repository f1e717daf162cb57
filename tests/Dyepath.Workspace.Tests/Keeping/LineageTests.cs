using Dyepath.Workspace.Keeping;

namespace Dyepath.Workspace.Tests.Keeping;

/// <summary>Which of two texts goes on from the other, by the changes that are in them.</summary>
public sealed class LineageTests
{
    private static Lineage Of(params (string Writer, int Changes)[] changes) => changes.Aggregate(Lineage.None, (l, c) => l.With(c.Writer, c.Changes));

    [Fact]
    public void Who_has_all_changes_of_the_other_follows_it()
    {
        Assert.True(Of(("a", 2), ("b", 1)).Follows(Of(("a", 2))));
        Assert.True(Of(("a", 2)).Follows(Of(("a", 2))));
        Assert.True(Of(("a", 3)).Follows(Of(("a", 2))));
        Assert.False(Of(("a", 1)).Follows(Of(("a", 2))));
        Assert.False(Of(("a", 9)).Follows(Of(("b", 1))));
        Assert.True(Lineage.None.Follows(Lineage.None));
    }

    [Fact]
    public void Both_together_have_the_most_of_either()
    {
        var (one, other) = (Of(("a", 3), ("b", 1)), Of(("a", 2), ("b", 4), ("c", 1)));
        Assert.Equal(Of(("a", 3), ("b", 4), ("c", 1)), one.And(other));
        Assert.Equal(one.And(other), other.And(one));
        Assert.NotEqual(one, other);
        Assert.False(one.Equals(null));
        Assert.NotEqual(Of(("a", 3)), Of(("a", 3), ("b", 1)));
    }

    /// <summary>The host's texts are numbered as they come; the same again is no new one, and of many the latest six are told.</summary>
    [Fact]
    public void The_latest_six_of_the_hosts_texts_are_told()
    {
        var lineage = Enumerable.Range(1, 6).Aggregate(Lineage.None, (l, n) => l.WithHost($"\"{n}\""));
        Assert.Equal(Enumerable.Range(1, 6).Select(n => ($"@\"{n}\"", n)), lineage.Changes.Select(c => (c.Key, c.Value)));
        Assert.Same(lineage, lineage.WithHost("\"6\""));
        var seventh = lineage.WithHost("\"7\"");
        Assert.Equal(Enumerable.Range(2, 6).Select(n => ($"@\"{n}\"", n)), seventh.Changes.Select(c => (c.Key, c.Value)));
        // One that comes back is later than all others.
        Assert.Equal(7, lineage.WithHost("\"3\"").Changes["@\"3\""]);
        Assert.True(lineage.WithHost("\"7\"").Follows(Lineage.None.WithHost("\"2\"")));
        Assert.False(lineage.Follows(Lineage.None.WithHost("\"8\"")));
        Assert.Equal(1, Of(("a", 5)).WithHost("\"1\"").Changes["@\"1\""]);
        Assert.Equal(5, Of(("a", 5)).WithHost("\"1\"").Changes["a"]);
    }

    /// <summary>The earlier half of the writers is told as one: all of them are in it, and none of the later ones.</summary>
    [Fact]
    public void Of_too_many_writers_the_earlier_half_is_told_by_the_last_of_them()
    {
        Assert.Equal(200, Lineage.MostWriters);
        var lineage = Of([.. Enumerable.Range(0, 200).Select(n => ($"{n:000}", 2))]);
        Assert.False(lineage.HasTooMany);
        Assert.True(lineage.With("200", 1).HasTooMany);
        var few = Of(("1", 2), ("2", 2), ("3", 2), ("4", 2)).WithHost("\"h\"");
        var shorter = few.Shortened();
        Assert.Equal(["3", "4", "@\"h\"", "~2"], shorter.Changes.Keys.Order(StringComparer.Ordinal));
        Assert.True(shorter.Follows(few));
        Assert.True(shorter.Follows(Of(("1", 99), ("0", 1))));
        Assert.False(shorter.Follows(Of(("3", 3))));
        Assert.False(shorter.Follows(Of(("5", 1))));
        Assert.False(shorter.Follows(Lineage.None.WithHost("\"other\"")));
        // Told once more, the floor rises.
        var again = shorter.With("5", 1).With("6", 1).Shortened();
        Assert.Equal(["5", "6", "@\"h\"", "~4"], again.Changes.Keys.Order(StringComparer.Ordinal));
        Assert.True(again.Follows(shorter));
        Assert.False(shorter.Follows(again));
        Assert.Equal(Of(("1", 1)), Of(("1", 1)).Shortened());
    }

}
