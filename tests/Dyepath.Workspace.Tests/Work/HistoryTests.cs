using Dyepath.Workspace.Work;

namespace Dyepath.Workspace.Tests.Work;

/// <summary>Undo and redo as every editor has them.</summary>
public sealed class HistoryTests
{
    private readonly History _history = new();

    [Fact]
    public void Undo_and_redo_lead_back_and_forth()
    {
        _history.Remember("one", "length", null);
        _history.Remember("two", "mass", null);
        Assert.Equal(("mass", null), (_history.Undoing, _history.Redoing));
        Assert.Equal("two", _history.Undo("three"));
        Assert.Equal(("length", "mass"), (_history.Undoing, _history.Redoing));
        Assert.Equal("one", _history.Undo("two"));
        Assert.Null(_history.Undo("one"));
        Assert.Equal("two", _history.Redo("one"));
        Assert.Equal("three", _history.Redo("two"));
        Assert.Null(_history.Redo("three"));
        Assert.Equal("two", _history.Undo("three"));
    }

    /// <summary>What was taken back went on from another text: redoing it now would lose the edit.</summary>
    [Fact]
    public void An_edit_ends_what_could_be_redone()
    {
        _history.Remember("one", "length", null);
        _history.Undo("two");
        Assert.Equal("length", _history.Redoing);
        _history.Remember("one", "mass", null);
        Assert.Null(_history.Redoing);
        Assert.Null(_history.Redo("three"));
        Assert.Equal("one", _history.Undo("three"));
    }

    [Fact]
    public void Keys_of_one_box_are_undone_as_one_until_a_pause_or_another_box()
    {
        _history.Remember("", "length", "length");
        _history.Remember("1", "length", "length");
        _history.Remember("12", "mass", "mass");
        _history.Part();
        _history.Remember("123", "mass", "mass");
        Assert.Equal("123", _history.Undo("1234"));
        Assert.Equal("12", _history.Undo("123"));
        Assert.Equal("", _history.Undo("12"));
        Assert.Null(_history.Undoing);
    }

    [Fact]
    public void After_undo_the_same_box_begins_anew()
    {
        _history.Remember("name", "name", "name");
        _history.Remember("", "length", "length");
        _history.Remember("1", "length", "length");
        _history.Undo("12");
        _history.Remember("", "length", "length");
        _history.Remember("3", "length", "length");
        Assert.Equal("", _history.Undo("34"));
        Assert.Equal("name", _history.Undo(""));
        Assert.Null(_history.Undoing);
    }

    [Fact]
    public void Of_very_many_moments_the_oldest_are_forgotten()
    {
        for (var i = 0; i <= History.MostMoments; i++)
            _history.Remember($"{i}", "length", null);
        for (var i = History.MostMoments; i > 0; i--)
            Assert.Equal($"{i}", _history.Undo("later"));
        Assert.Null(_history.Undo("later"));
    }

    [Fact]
    public void Of_very_long_texts_at_least_the_last_can_be_undone()
    {
        var half = new string('a', (int)(History.MostCharacters / 2));
        _history.Remember(half, "first", null);
        _history.Remember(half, "second", null);
        Assert.Equal("second", _history.Undoing);
        _history.Remember("b", "third", null);
        Assert.Equal("b", _history.Undo("now"));
        Assert.Equal(half, _history.Undo("b"));
        Assert.Null(_history.Undoing);
        var huge = half + half + "a";
        _history.Remember(huge, "fourth", null);
        _history.Remember("b", "fifth", null);
        Assert.Equal("b", _history.Undo("now"));
        Assert.Null(_history.Undoing);
        // What another project had does not count any more.
        _history.Remember(huge, "sixth", null);
        _history.Clear();
        _history.Remember("c", "seventh", null);
        _history.Remember("d", "eighth", null);
        Assert.Equal("d", _history.Undo("now"));
        Assert.Equal("c", _history.Undo("d"));
    }

    [Fact]
    public void Another_project_has_nothing_to_undo()
    {
        _history.Remember("one", "length", "length");
        _history.Remember("two", "mass", null);
        _history.Undo("three");
        _history.Clear();
        Assert.Equal((null, null), (_history.Undoing, _history.Redoing));
        _history.Remember("other", "length", "length");
        Assert.Equal("other", _history.Undo("another"));
    }

    /// <summary>What is done again can be undone again, and counts among what is remembered.</summary>
    [Fact]
    public void What_is_undone_and_done_again_takes_its_room_again()
    {
        var half = new string('a', (int)(History.MostCharacters / 2));
        _history.Remember(half, "first", null);
        _history.Undo(half);
        _history.Redo(half);
        Assert.Equal("first", _history.Undoing);
        _history.Remember(half, "second", null);
        Assert.Equal("second", _history.Undoing);
        _history.Remember("b", "third", null);
        _history.Undo("now");
        Assert.Equal(half, _history.Undo("b"));
        Assert.Null(_history.Undoing);
        // Going back and forth many times leaves no less room than there was.
        for (var i = 0; i < 50; i++)
        {
            _history.Redo(half);
            _history.Undo(half);
        }
        _history.Clear();
        _history.Remember("one", "first", null);
        for (var i = 0; i < 50; i++)
        {
            _history.Undo(half);
            _history.Redo("one");
        }
        _history.Undo("two");
        _history.Remember("one", "again", null);
        _history.Remember("two", "more", null);
        Assert.Equal(("two", "one"), (_history.Undo("three"), _history.Undo("two")));
    }
}
