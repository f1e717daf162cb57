using System.Net;
using System.Text;
using Dyepath.Core.Planning;
using Dyepath.Core.Projects;
using Dyepath.Web.Handovers;
using Microsoft.AspNetCore.Http;

namespace Dyepath.Web.Tests.Handovers;

public class PieceMakerTests
{
    private static readonly byte[] Demo = DemoProject.Utf8.ToArray();

    [Fact]
    public async Task Few_plan_at_once_some_wait_and_the_rest_are_asked_to_come_again()
    {
        var (running, most) = (0, 0);
        using var open = new ManualResetEventSlim();
        using var begun = new SemaphoreSlim(0);
        using var maker = new PieceMaker((project, cancel) =>
        {
            var now = Interlocked.Increment(ref running);
            InterlockedMax(ref most, now);
            begun.Release();
            open.Wait(cancel);
            Interlocked.Decrement(ref running);
            return GarmentPlanner.Plan(project, cancel);
        });
        var waiting = Enumerable.Range(0, 10).Select(_ => maker.MakeAsync(Demo, "M", new DefaultHttpContext(), default)).ToArray();
        await begun.WaitAsync();
        await begun.WaitAsync();
        var context = new DefaultHttpContext();
        var (piece, refusal) = await maker.MakeAsync(Demo, "M", context, default);
        Assert.Null(piece);
        Assert.Equal((int)HttpStatusCode.ServiceUnavailable, Assert.IsType<IStatusCodeHttpResult>(refusal, exactMatch: false).StatusCode);
        Assert.Equal("10", context.Response.Headers.RetryAfter.ToString());
        open.Set();
        Assert.All(await Task.WhenAll(waiting), made => Assert.NotNull(made.Piece));
        Assert.Equal(2, most);
        Assert.NotNull((await maker.MakeAsync(Demo, "M", new DefaultHttpContext(), default)).Piece);
    }

    [Fact]
    public async Task Who_goes_away_stops_the_plan_and_frees_its_turn()
    {
        using var begun = new SemaphoreSlim(0);
        var isFirst = true;
        using var maker = new PieceMaker((project, cancel) =>
        {
            if (!isFirst)
                return GarmentPlanner.Plan(project, cancel);
            begun.Release();
            cancel.WaitHandle.WaitOne();
            throw new OperationCanceledException(cancel);
        });
        using var gone = new CancellationTokenSource();
        var left = Enumerable.Range(0, 2).Select(_ => maker.MakeAsync(Demo, "M", new DefaultHttpContext(), gone.Token)).ToArray();
        await begun.WaitAsync();
        await begun.WaitAsync();
        await gone.CancelAsync();
        foreach (var attempt in left)
            await Assert.ThrowsAnyAsync<OperationCanceledException>(() => attempt);
        isFirst = false;
        Assert.NotNull((await maker.MakeAsync(Demo, "M", new DefaultHttpContext(), default)).Piece);
    }

    [Theory]
    [InlineData("42")]
    [InlineData("[]")]
    [InlineData("{}")]
    public async Task What_has_no_plan_is_not_handed_over(string text)
    {
        using var maker = new PieceMaker();
        var (piece, refusal) = await maker.MakeAsync(Encoding.UTF8.GetBytes(text), "M", new DefaultHttpContext(), default);
        Assert.Null(piece);
        Assert.Equal((int)HttpStatusCode.BadRequest, Assert.IsType<IStatusCodeHttpResult>(refusal, exactMatch: false).StatusCode);
    }

    private static void InterlockedMax(ref int most, int value)
    {
        for (var seen = most; value > seen; seen = most)
            Interlocked.CompareExchange(ref most, value, seen);
    }
}
