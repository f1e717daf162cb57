using Dyepath.Core.Making;
using Dyepath.Workspace.Fabric;
using Dyepath.Workspace.Tests.Work;
using Dyepath.Workspace.Worker;

namespace Dyepath.Workspace.Tests.Fabric;

/// <summary>One order of simulated pieces at a time, and what is in view meanwhile.</summary>
public sealed class SimulatorTests
{
    [Fact]
    public async Task An_order_that_is_done_is_shown_until_the_piece_is_another()
    {
        using var simulator = new Simulator(new JobsHere());
        var told = 0;
        Assert.Equal((false, null, null), (simulator.IsRunning, simulator.Result is null ? null : "some", simulator.Fault));
        Assert.True(simulator.IsStale(Order(9)));
        await simulator.RunAsync(Order(9), () => told++);
        Assert.Equal("front", Assert.Single(simulator.Result!.Value).Name);
        Assert.Equal((false, 1.0), (simulator.IsRunning, simulator.Progress));
        Assert.False(simulator.IsStale(Order(9)));
        Assert.True(simulator.IsStale(Order(10)));
        Assert.True(told >= 3);
    }

    [Fact]
    public async Task A_later_order_takes_the_place_of_an_earlier_one_and_what_was_stopped_changes_nothing()
    {
        var jobs = new JobsInHand();
        using var simulator = new Simulator(jobs);
        var first = simulator.RunAsync(Order(9), () => { });
        Assert.True(simulator.IsRunning);
        var second = simulator.RunAsync(Order(10), () => { });
        Assert.Equal(1, jobs.Stopped);
        jobs.Finish(1);
        await Task.WhenAll(first, second);
        Assert.False(simulator.IsStale(Order(10)));
        var third = simulator.RunAsync(Order(11), () => { });
        simulator.Cancel();
        await third;
        Assert.Equal((false, false, null), (simulator.IsRunning, simulator.IsStale(Order(10)), simulator.Fault));
    }

    [Fact]
    public async Task What_fails_says_what_to_do_and_leaves_the_last_result_in_view()
    {
        var jobs = new JobsInHand();
        using var simulator = new Simulator(jobs);
        var first = simulator.RunAsync(Order(9), () => { });
        jobs.Finish(0);
        await first;
        var second = simulator.RunAsync(Order(10), () => { });
        jobs.Fail(1);
        await second;
        Assert.Equal(
            "The pieces could not be worked out in this browser just now. Open the page again, or try with fewer programs open.", simulator.Fault);
        Assert.False(simulator.IsStale(Order(9)));
        var third = simulator.RunAsync(Order(10), () => { });
        Assert.Null(simulator.Fault);
        jobs.Finish(2);
        await third;
    }

    private static SimulationOrder Order(int stitches) => new(
        [5_000_000, 4_000_000], [0, 1], [new("front", [stitches, stitches], [0, 0], 0)], new(0.01, 40, 0), CheckHabit.Never, 5, 3);
}
