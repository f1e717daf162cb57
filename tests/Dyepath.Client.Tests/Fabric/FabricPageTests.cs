using Bunit;
using Dyepath.Client.Fabric;
using Dyepath.Workspace.Fabric;
using Dyepath.Workspace.Tests.Fabric;
using Dyepath.Workspace.Work;
using Dyepath.Workspace.Worker;
using Microsoft.Extensions.DependencyInjection;

namespace Dyepath.Client.Tests.Fabric;

public sealed class FabricPageTests : BunitContext
{
    private readonly FakeJobs _jobs = new();
    private readonly Workbench _workbench = Documents.Workbench();

    public FabricPageTests()
    {
        Services.AddWork(_workbench, _jobs);
        Assert.True(_workbench.Open(Demo.Document().Text));
    }

    [Fact]
    public void Moving_a_start_shows_at_once_what_the_seams_pay_and_best_takes_it_back()
    {
        var page = Render<FabricPage>();
        var best = page.FindAll(".seams li").Select(l => l.TextContent).ToArray();
        Assert.Equal(4, best.Length);
        Assert.Contains("Left side: good, mirrored: the colours run on here", best[0], StringComparison.Ordinal);
        page.Find("[aria-label^='1 later: begin the back']").Click();
        page.WaitForAssertion(
            () => Assert.Contains(
                "close, mirrored: the colours jump 1 stitch of yarn here; no stitch lies at its place", page.Find(".seams li").TextContent, StringComparison.Ordinal),
            TimeSpan.FromSeconds(20));
        page.Find("[aria-label='Best: begin the back where it is best']").Click();
        page.WaitForAssertion(() => Assert.Equal(best, page.FindAll(".seams li").Select(l => l.TextContent)), TimeSpan.FromSeconds(20));
    }

    [Fact]
    public void Likely_pieces_are_asked_for_shown_with_progress_and_told_apart_from_the_plan()
    {
        var page = Render<FabricPage>();
        Assert.Empty(page.FindAll(".hands-table"));
        page.Find("#see-made").Change("likely");
        var order = Assert.Single(_jobs.Orders);
        _jobs.Tell(0.4);
        page.WaitForAssertion(() => Assert.Contains("Working them, 40 %", page.Find(".see").TextContent, StringComparison.Ordinal));
        Assert.Contains("as planned", page.Find("canvas").GetAttribute("aria-label"), StringComparison.Ordinal);
        _jobs.Finish(order);
        page.WaitForAssertion(() => Assert.Equal(2, page.FindAll(".hands-table tbody tr").Count));
        Assert.Contains("as your hands are likely to make them", page.Find("canvas").GetAttribute("aria-label"), StringComparison.Ordinal);
        page.Find("#check-habit").Change("EverySection");
        Assert.Equal(2, _jobs.Orders.Count);
        page.Find(".see button").Click();
        Assert.True(_jobs.Cancelled);
        page.WaitForAssertion(() => Assert.Empty(page.FindAll("progress")));
    }

    [Fact]
    public void The_chance_of_a_good_piece_stands_among_its_figures()
    {
        var figures = Render<FabricPage>().Find(".piece-figures");
        foreach (var piece in _workbench.Size!.Pieces.Where(p => p.Pooled))
            Assert.Contains(FabricWords.MadeWell(piece.MadeWell), figures.TextContent, StringComparison.Ordinal);
        Assert.Matches(@"Comes out well in hands as on Swatch(for \d+ makers of 100)+", figures.TextContent);
    }

    [Fact]
    public void A_job_that_fails_says_so()
    {
        var page = Render<FabricPage>();
        page.Find("#see-made").Change("likely");
        _jobs.Fail();
        page.WaitForAssertion(() => Assert.Contains("could not be worked out", page.Markup, StringComparison.Ordinal));
    }

    [Fact]
    public async Task A_stitch_that_is_picked_is_read_out()
    {
        var page = Render<FabricPage>();
        var board = page.FindComponent<FabricBoard>();
        await page.InvokeAsync(() => board.Instance.Read(1, 12, 30));
        board.Render();
        Assert.Matches(
            @"^Back, row \d+ \((RS|WS)\), stitch \d+ from the right: [a-z ]+ \([A-Z]\)\. \d+\.\d m of yarn", page.Find(".reading").TextContent);
        await page.InvokeAsync(() => board.Instance.Read(2, 3, 3));
        board.Render();
        Assert.Contains("companion yarn", page.Find(".reading").TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public void The_picture_is_cloth_until_it_is_asked_for_plain_and_its_text_says_which()
    {
        var page = Render<FabricPage>();
        Assert.Contains(" Drawn as cloth. ", page.Find("canvas").GetAttribute("aria-label"), StringComparison.Ordinal);
        Assert.Equal(["as cloth", "plain, with symbols"], page.FindAll("#see-drawn option").Select(o => o.TextContent));
        page.Find("#see-drawn").Change("plain");
        Assert.Contains(" Drawn plain, with symbols. ", page.Find("canvas").GetAttribute("aria-label"), StringComparison.Ordinal);
        page.Find("#see-drawn").Change("cloth");
        Assert.Contains(" Drawn as cloth. ", page.Find("canvas").GetAttribute("aria-label"), StringComparison.Ordinal);
    }

    /// <summary>One job at a time, done when the test says so.</summary>
    private sealed class FakeJobs : IJobs
    {
        private TaskCompletionSource<byte[]> _done = new();
        private Action<double> _progress = _ => { };

        public List<string> Orders { get; } = [];

        public bool Cancelled { get; private set; }

        public Task WarmAsync() => Task.CompletedTask;

        public Task<byte[]> RunAsync(string job, string input, Action<double> progress, CancellationToken cancel, string[]? assemblies)
        {
            Orders.Add(input);
            (_done, _progress) = (new TaskCompletionSource<byte[]>(), progress);
            var done = _done;
            cancel.Register(() => Cancelled |= done.TrySetCanceled());
            return done.Task;
        }

        public void Tell(double share) => _progress(share);

        public void Finish(string order) => _done.SetResult(JobRunner.Run(
            SimulationJob.Name, order.Replace("\"trials\":500", "\"trials\":3", StringComparison.Ordinal), new Nobody()));

        public void Fail() => _done.SetException(new JobException("no worker", new InvalidOperationException()));

        private sealed class Nobody : IProgress<double>
        {
            public void Report(double value)
            {
            }
        }
    }
}
