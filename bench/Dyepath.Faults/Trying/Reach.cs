using System.Collections.Immutable;
using System.Globalization;
using Dyepath.Faults.Sources;

namespace Dyepath.Faults.Trying;

/// <summary>A test class without any fault chosen.</summary>
/// <param name="Cpu">Processor time, with the start of a process.</param>
/// <param name="Passes">Numbers of the faults that it comes by.</param>
/// <param name="Red">The test of it that fails, or that it takes too long; null where its tests pass, as they should.</param>
internal sealed record TestClass(string Name, TimeSpan Cpu, ImmutableHashSet<int> Passes, string? Red);

internal static class Reach
{
    /// <summary>Runs each class by itself, up to a limit; the quickest come first.</summary>
    public static async Task<ImmutableArray<TestClass>> OfAsync(TestAssembly tests, ImmutableArray<string> classes, Limit limit, int parallel)
    {
        var found = new TestClass[classes.Length];
        await Parallel.ForAsync(0, classes.Length, new ParallelOptions { MaxDegreeOfParallelism = parallel }, async (i, _) =>
        {
            var file = Path.GetTempFileName();
            var run = await tests.RunAsync([classes[i]], limit, (PlantedFault.Passed, file));
            // Empty where the class does without the target.
            var lines = await File.ReadAllLinesAsync(file, CancellationToken.None);
            var cpu = TimeSpan.FromSeconds(lines.Length == 0 ? 0 : double.Parse(lines[0], CultureInfo.InvariantCulture));
            found[i] = new TestClass(classes[i], cpu, [.. lines.Skip(1).Select(l => int.Parse(l, CultureInfo.InvariantCulture))], run.Red);
            File.Delete(file);
        });
        return [.. found.OrderBy(c => c.Cpu)];
    }
}
