using Dyepath.Core.Making.Log;
using Dyepath.Core.Making.Order;
using Dyepath.Core.Making.Work;
using Dyepath.Core.Planning;
using Dyepath.Core.Projects;

namespace Dyepath.Core.Tests.Making.Work;

public sealed class SittingTests
{
    private static readonly MakingOrder Tunic = MakingOrder.Of(GarmentPlanner.Plan(ProjectReader.Read(DemoProject.Utf8).Project!).Plan!, "XS");

    private static readonly DateTimeOffset Evening = new(2026, 3, 1, 19, 0, 0, TimeSpan.Zero);

    [Fact]
    public void Rows_of_the_evening_before_are_not_of_this_one()
    {
        var state = Begin(Evening.AddDays(-1));
        for (var row = 0; row < 5; row++)
            state = state.Apply(new Entry(EntryKind.Row, Evening.AddDays(-1).AddMinutes(8 * row), 0));
        for (var row = 0; row < 3; row++)
            state = state.Apply(new Entry(EntryKind.Row, Evening.AddMinutes(8 * row), 0));
        // The first tap of the evening ends a row.
        Assert.Equal(new Sitting(3, 3, 3, TimeSpan.FromMinutes(16)), Sitting.Of(state));
    }

    /// <summary>A row that lost its colours is not in them, one taken back or ripped is none, and before any look nothing is known.</summary>
    [Fact]
    public void Rows_are_counted_once_and_by_what_became_of_their_colours()
    {
        var state = Begin(Evening);
        Assert.Equal(0, Sitting.Of(MakingState.Begin(Tunic)).Rows);
        state = state.Apply(new Entry(EntryKind.Row, Evening));
        Assert.Equal((1, 0, 0), Counts(state));
        state = state.Apply(new Entry(EntryKind.Row, Evening, 0)).Apply(new Entry(EntryKind.Row, Evening, 9));
        Assert.Equal((3, 1, 2), Counts(state));
        Assert.Equal((2, 1, 1), Counts(state.Apply(new Entry(EntryKind.Back, Evening))));
        var ripped = state.Apply(new Entry(EntryKind.At, Evening, To: 3));
        Assert.Equal((2, 1, 1), Counts(ripped));
        Assert.Equal((3, 2, 2), Counts(ripped.Apply(new Entry(EntryKind.Row, Evening, 0))));
    }

    /// <summary>Half an hour without a pause is enough; a pause of a quarter of an hour begins it anew.</summary>
    [Fact]
    public void Hands_are_to_rest_after_half_an_hour()
    {
        var state = Begin(Evening);
        for (var minutes = 5; minutes <= 25; minutes += 5)
            state = state.Apply(new Entry(EntryKind.Row, Evening.AddMinutes(minutes)));
        Assert.False(Sitting.Of(state).IsEnough);
        state = state.Apply(new Entry(EntryKind.Row, Evening.AddMinutes(30)));
        Assert.True(Sitting.Of(state).IsEnough);
        state = state.Apply(new Entry(EntryKind.Row, Evening.AddMinutes(46)));
        Assert.False(Sitting.Of(state).IsEnough);
        Assert.Equal(7, Sitting.Of(state).Rows);
    }

    private static (int, int, int) Counts(MakingState state) => Sitting.Of(state) is var s ? (s.Rows, s.Held, s.Known) : default;

    private static MakingState Begin(DateTimeOffset at)
    {
        var state = MakingState.Begin(Tunic);
        while (state.Row is null)
            state = state.Apply(new Entry(EntryKind.Step, at));
        return state;
    }
}
