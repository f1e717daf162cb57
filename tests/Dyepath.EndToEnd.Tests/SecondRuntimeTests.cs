using System.Text;
using Dyepath.Core.Making;
using Dyepath.Core.Planning;
using Dyepath.Core.Projects;
using Dyepath.Workspace.Fabric;
using Dyepath.Workspace.Worker;

namespace Dyepath.EndToEnd.Tests;

#pragma warning disable CA1416 // The client is marked as the browser's; this part of it computes anywhere.

/// <summary>Long computing in the browser's second runtime.</summary>
public sealed class SecondRuntimeTests(Browser browser, SharedHost shared)
{
    [Fact]
    [Trait(Extent.Trait, Extent.Whole)]
    public async Task TheBrowserDrawsTheSameTrialsBitForBitAsTheProcessorHere()
    {
        var plan = GarmentPlanner.Plan(ProjectReader.Read(DemoProject.Utf8).Project!).Plan!;
        var order = SimulationJob.Write(SimulationOrder.Of(plan, plan.Sizes[2], CheckHabit.EverySection, trials: 40, seed: 7));
        var here = JobRunner.Run(SimulationJob.Name, order, new Progress<double>());
        await using var desk = await browser.DeskAsync(shared);
        var page = desk.Page;
        var there = await page.EvaluateAsync<int[]>(
            """
            async order => {
              const jobs = await import(document.querySelector('script[src$="js/start.js"]').src.replace('start.js', 'jobs.js'));
              await jobs.start(900, 'simulate', order, () => {}, []);
              return [...jobs.take(900)];
            }
            """,
            order);
        Assert.Equal(Encoding.UTF8.GetString(here), Encoding.UTF8.GetString([.. there.Select(b => (byte)b)]));
    }
}
