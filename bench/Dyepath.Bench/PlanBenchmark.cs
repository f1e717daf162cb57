using System.Diagnostics;
using System.Globalization;
using Dyepath.Core.Measuring;
using Dyepath.Core.Planning;
using Dyepath.Core.Projects;

namespace Dyepath.Bench;

/// <summary>The complete plan of the demo: nine sizes, both directions, every count; aim: under 50 ms warm.</summary>
internal static class PlanBenchmark
{
    private const int WarmUps = 30;
    private const int Runs = 40;

    public static void Run(TextWriter output)
    {
        var project = ProjectReader.Read(DemoProject.Utf8).Project ?? throw new InvalidOperationException("The demo document does not read.");
        Report(output, "plan of the demo, nine sizes", project);
        foreach (var sizes in (ReadOnlySpan<int>)[1, 3])
            Report(output, $"the same, {sizes} of its sizes", project with { Sizes = project.Sizes with { Sizes = [.. project.Sizes.Sizes.Take(sizes)], Base = null } });
    }

    private static void Report(TextWriter output, string what, Project project)
    {
        for (var run = 0; run < WarmUps; run++)
            GarmentPlanner.Plan(project);
        var times = new double[Runs];
        for (var run = 0; run < Runs; run++)
        {
            var watch = Stopwatch.GetTimestamp();
            GarmentPlanner.Plan(project);
            times[run] = Stopwatch.GetElapsedTime(watch).TotalMilliseconds;
        }
        Array.Sort(times);
        output.WriteLine(string.Create(
            CultureInfo.InvariantCulture, $"{what}: median {times[Runs / 2]:0.0} ms, fastest {times[0]:0.0} ms, slowest {times[^1]:0.0} ms of {Runs} (aim: under 50)"));
    }
}
