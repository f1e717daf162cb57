using Dyepath.Workspace.Work;

namespace Dyepath.Workspace.Tests.Work;

/// <summary>Of long work only the last order counts, and the one before is stopped after a moment.</summary>
public sealed class OneAtATimeTests
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Work_that_nobody_takes_the_place_of_is_done()
    {
        using var one = new OneAtATime();
        Assert.Equal(3, await one.RunAsync(_ => Task.FromResult(3)));
        Assert.Equal(4, await one.RunAsync(_ => Task.FromResult(4)));
        await Assert.ThrowsAsync<FormatException>(() => one.RunAsync<int>(_ => throw new FormatException()));
        Assert.Equal(5, await one.RunAsync(_ => Task.FromResult(5)));
    }

    [Fact]
    public async Task A_later_order_lets_the_first_end_or_stops_it_and_only_its_own_result_counts()
    {
        using var one = new OneAtATime();
        var stopped = false;
        var first = one.RunAsync(async cancel =>
        {
            try
            {
                await Task.Delay(Timeout.Infinite, cancel);
            }
            finally
            {
                stopped = cancel.IsCancellationRequested;
            }
            return 1;
        });
        Assert.Equal(2, await one.RunAsync(_ => Task.FromResult(2)));
        Assert.True(stopped);
        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => first);

        var end = new TaskCompletionSource<int>();
        var third = one.RunAsync(_ => end.Task);
        var fourth = one.RunAsync(_ => Task.FromResult(4));
        end.SetResult(3);
        Assert.Equal(4, await fourth);
        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => third);
    }

    [Fact]
    public async Task Of_orders_that_wait_only_the_last_is_begun()
    {
        using var one = new OneAtATime();
        var begun = new List<int>();
        var end = new TaskCompletionSource<int>();
        Task<int> Order(int n, Task<int> work) => one.RunAsync(_ =>
        {
            begun.Add(n);
            return work;
        });
        var first = Order(1, end.Task);
        var second = Order(2, Task.FromResult(2));
        var third = Order(3, Task.FromResult(3));
        end.SetResult(1);
        Assert.Equal(3, await third);
        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => second);
        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => first);
        Assert.Equal([1, 3], begun);
    }

    [Fact]
    public async Task What_is_stopped_ends_at_once()
    {
        using var one = new OneAtATime();
        var work = one.RunAsync(async cancel =>
        {
            await Task.Delay(Timeout.Infinite, cancel);
            return 1;
        });
        one.Stop();
        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => work);
        one.Stop();
    }

    [Fact]
    public async Task What_nobody_waits_for_is_reported_when_it_fails_and_not_when_it_is_stopped()
    {
        var faults = new Faults();
        var heard = 0;
        faults.Happened += () => heard++;
        faults.Watch(() => Task.FromException(new FormatException("bad")));
        Assert.Equal(("bad", 1), (faults.Last?.Message, heard));
        faults.Clear();
        Assert.Equal((null, 2), (faults.Last, heard));
        faults.Watch(() => Task.FromException(new OperationCanceledException()));
        var did = false;
        faults.Watch(() => { did = true; });
        Assert.Equal((null, 2, true), (faults.Last, heard, did));
        faults.Watch((Action)(() => throw new FormatException("worse")));
        Assert.Equal("worse", faults.Last?.Message);
        await Task.CompletedTask.WaitAsync(Cancel);
    }
}
