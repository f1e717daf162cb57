using System.Collections.Immutable;
using System.Globalization;
using Dyepath.Faults.Sources;

namespace Dyepath.Faults.Trying;

/// <summary>What became of a fault.</summary>
/// <param name="Reached">Whether any test comes by it.</param>
/// <param name="CaughtBy">The test that failed; null where none did.</param>
internal sealed record Result(Fault Fault, bool Reached, string? CaughtBy);

internal static class Trial
{
    // A process costs more than most classes: the quick ones run together, and the rest only where those pass.
    private static readonly ImmutableArray<TimeSpan> Batches = [TimeSpan.FromSeconds(6), TimeSpan.FromSeconds(20), TimeSpan.MaxValue];

    /// <summary>Tries each fault against the classes that come by it, quickest first, until one fails.</summary>
    public static async Task<ImmutableArray<Result>> OfAsync(
        TestAssembly tests, IReadOnlyList<Fault> faults, ImmutableArray<TestClass> classes, int parallel, Action<Result> tell)
    {
        var results = new Result[faults.Count];
        await Parallel.ForAsync(0, faults.Count, new ParallelOptions { MaxDegreeOfParallelism = parallel }, async (i, _) =>
        {
            var passing = classes.Where(c => c.Passes.Contains(faults[i].Number)).ToList();
            results[i] = new Result(faults[i], passing.Count > 0, await CaughtByAsync(tests, faults[i], passing));
            lock (results)
                tell(results[i]);
        });
        return [.. results];
    }

    private static async Task<string?> CaughtByAsync(TestAssembly tests, Fault fault, List<TestClass> classes)
    {
        foreach (var batch in Batched(classes))
        {
            var usual = batch.Aggregate(TimeSpan.Zero, (sum, c) => sum + c.Cpu);
            var run = await tests.RunAsync(
                batch.Select(c => c.Name), Limit.Beyond(usual), (PlantedFault.Chosen, fault.Number.ToString(CultureInfo.InvariantCulture)));
            if (run.Red is not null)
                return run.Red;
        }
        return null;
    }

    private static IEnumerable<List<TestClass>> Batched(List<TestClass> classes)
    {
        var (batch, total, at) = (new List<TestClass>(), TimeSpan.Zero, 0);
        foreach (var next in classes)
        {
            if (batch.Count > 0 && total + next.Cpu > Batches[at])
            {
                yield return batch;
                (batch, at) = ([], at + 1);
            }
            batch.Add(next);
            total += next.Cpu;
        }
        if (batch.Count > 0)
            yield return batch;
    }
}
