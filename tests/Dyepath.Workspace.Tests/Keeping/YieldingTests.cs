using Dyepath.Workspace.Keeping;

namespace Dyepath.Workspace.Tests.Keeping;

/// <summary>A tab that gives way in a conflict, before the other has heard of it.</summary>
public sealed class YieldingTests
{
    private readonly KeepingMachine<string> _machine = new(new WordRules(IsLog: false));

    [Fact]
    public void Who_gave_way_is_not_asked_again_by_what_the_other_goes_on_writing()
    {
        var state = Asked();
        state = _machine.On(state, new Chose<string>(Mine: false)).State;
        Assert.Equal("0 1", state.Mine);
        state = _machine.On(state, Copies("0 2 3", 2)).State;
        Assert.Equal(("0 2 3", null), (state.Mine, state.Theirs));
        state = _machine.On(state, Copies("0 2 3 4", 3)).State;
        Assert.Equal(("0 2 3 4", null), (state.Mine, state.Theirs));
        Assert.True(state.Lineage.Follows(Lineage.None.With("a", 1).With("b", 3)));
    }

    [Fact]
    public void What_was_written_here_since_is_asked_of_again()
    {
        var state = _machine.On(Asked(), new Chose<string>(Mine: false)).State;
        state = _machine.On(state, Copies("0 2", 1)).State;
        state = _machine.On(state, new Changed<string>("0 2 5")).State;
        state = _machine.On(state, Copies("0 2 3", 2)).State;
        Assert.Equal(("0 2 5", "0 2 3"), (state.Mine, state.Theirs?.Content));
    }

    [Fact]
    public void A_device_that_does_not_answer_keeps_nobody_from_choosing()
    {
        var state = _machine.On(Asked(), new Chose<string>(Mine: false)).State;
        state = _machine.On(state, new DeviceFailed<string>("refused")).State;
        Assert.Equal(("0 2", null), (state.Mine, state.Theirs));
    }

    /// <summary>A third tab went on from the text that is given up, while this one looked for the newest of the other.</summary>
    [Fact]
    public void What_has_gone_on_since_from_what_is_given_up_is_not_given_up_with_it()
    {
        var third = new Copy<string>("c", 1, Lineage.None.With("a", 1).With("c", 1), "0 1 9", default) { IsSent = false, Includes = [] };
        var copies = new DeviceHas<string>([.. Copies("0 2", 1).Copies, third]);
        var state = _machine.On(_machine.On(Asked(), new Chose<string>(Mine: false)).State, copies).State;
        Assert.Equal("0 2", state.Mine);
        Assert.False(state.Lineage.Follows(third.Lineage));
        state = _machine.On(state, copies).State;
        Assert.Equal(("0 2", "0 1 9"), (state.Mine, state.Theirs?.Content));
    }

    /// <summary>Tab a has “0 1”, tab b “0 2”.</summary>
    private KeepingState<string> Asked()
    {
        var state = _machine.Create("a", "0 1").State;
        state = _machine.On(state with { DeviceIsBusy = false }, new OtherTabWrote<string>()).State;
        state = _machine.On(state, Copies("0 2", 1)).State;
        Assert.Equal("0 2", state.Theirs?.Content);
        return state with { DeviceIsBusy = false };
    }

    /// <summary>What the device has of tab b after so many changes.</summary>
    private static DeviceHas<string> Copies(string text, int changes) =>
        new([new("b", changes, Lineage.None.With("b", changes), text, default) { IsSent = false, Includes = [] }]);
}
