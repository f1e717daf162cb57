using System.Diagnostics;
using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;

namespace Dyepath.Mutations.Trying;

/// <summary>How far a case may go.</summary>
/// <param name="Cpu">Processor time.</param>
/// <param name="Alive">Bytes alive at once.</param>
internal sealed record Limits(TimeSpan Cpu, long Alive)
{
    /// <summary>What is promised on the machine that the figures are from.</summary>
    public static Limits Promised { get; } = new(TimeSpan.FromSeconds(2), 500_000_000);

    /// <summary>For a machine of any speed that may be doing other things: only what never ends or fills everything fails.</summary>
    public static Limits Generous { get; } = new(TimeSpan.FromSeconds(60), 2_000_000_000);
}

/// <summary>What a run led to.</summary>
internal sealed record RunResult(int Cases, IReadOnlyDictionary<string, int> Outcomes, IReadOnlyList<string> Failures, TimeSpan MostCpu, int SlowestCase, long MostAllocated, TimeSpan Clock);

/// <summary>Tries the cases of a part one after the other.</summary>
internal static partial class Run
{
    private const int MostFailures = 40;

    public static async Task<RunResult> OfAsync(IPart part, int seed, int from, int count, Limits limits, Action<string>? tell = null)
    {
        await part.PrepareAsync(seed);
        var outcomes = new SortedDictionary<string, int>(StringComparer.Ordinal);
        var failures = new Dictionary<string, string>();
        var clock = Stopwatch.StartNew();
        var (mostCpu, slowest, mostAllocated) = (TimeSpan.Zero, -1, 0L);
        for (var number = from; number < from + count; number++)
        {
            var input = part.Input(seed, number);
            var meter = new Meter();
            var (outcome, wrong) = await TryAsync(part, input, number, limits);
            var (cpu, allocated) = (meter.Cpu, meter.Allocated);
            // The first of a kind compiles what it runs; twice over the limit is over it.
            if (wrong is null && cpu > limits.Cpu)
            {
                meter = new Meter();
                (outcome, wrong) = await TryAsync(part, input, number, limits);
                cpu = meter.Cpu;
                wrong ??= cpu > limits.Cpu ? $"takes over {limits.Cpu.TotalSeconds:0} s of processor time" : null;
            }
            if (wrong is null && allocated > limits.Alive)
            {
                var alive = Meter.MostAlive(() => TryAsync(part, input, number, limits).GetAwaiter().GetResult());
                wrong = alive > limits.Alive ? $"holds over {limits.Alive / 1_000_000} MB at once" : null;
            }
            if (cpu > mostCpu)
                (mostCpu, slowest) = (cpu, number);
            mostAllocated = Math.Max(mostAllocated, allocated);
            outcomes[outcome] = outcomes.GetValueOrDefault(outcome) + 1;
            if (wrong is null || failures.Count >= MostFailures || !failures.TryAdd(Kind(wrong), ""))
                continue;
            failures[Kind(wrong)] = Say(part, seed, number, wrong, Shrinker.Shrink(input, smaller => TryAsync(part, smaller, number, limits).GetAwaiter().GetResult().Wrong is { } w ? Kind(w) : null));
            tell?.Invoke(failures[Kind(wrong)]);
        }
        return new RunResult(count, outcomes, [.. failures.Values], mostCpu, slowest, mostAllocated, clock.Elapsed);
    }

    private static async Task<(string Outcome, string? Wrong)> TryAsync(IPart part, byte[] input, int number, Limits limits)
    {
        using var stop = new CancellationTokenSource(TimeSpan.FromSeconds(Math.Max(30, 10 * limits.Cpu.TotalSeconds)));
        try
        {
            return (await part.TryAsync(input, number, stop.Token), null);
        }
        catch (OperationCanceledException) when (stop.IsCancellationRequested)
        {
            return ("broken", "is still not done after ten times what is allowed");
        }
        catch (Broken broken)
        {
            return ("broken", broken.Message);
        }
        catch (Exception thrown)
        {
            var where = thrown.StackTrace?.Split('\n').Select(l => l.Trim()).Where(l => l.StartsWith("at Dyepath.", StringComparison.Ordinal)).Take(6);
            return ("broken", $"throws {thrown.GetType().Name}: {thrown.Message}\n      {string.Join("\n      ", where ?? [])}");
        }
    }

    /// <summary>Failures that differ in numbers and names alone are one kind.</summary>
    private static string Kind(string wrong) => Varying().Replace(wrong, "#");

    private static string Say(IPart part, int seed, int number, string wrong, byte[] shrunken)
    {
        var text = new StringBuilder();
        text.Append(CultureInfo.InvariantCulture, $"seed {seed}, case {number}: {wrong}\n");
        text.Append(CultureInfo.InvariantCulture, $"   again: dotnet run -c Release --project bench/Dyepath.Mutations -- --part {part.Name} --seed {seed} --case {number}\n");
        text.Append("   shrunken: ").Append(shrunken.Length <= 6_000 ? Encoding.UTF8.GetString(shrunken) : $"{shrunken.Length} bytes, beginning {Encoding.UTF8.GetString(shrunken.AsSpan(0, 400))}");
        return text.ToString();
    }

    [GeneratedRegex("“[^”]*”|\"[^\"]*\"|[0-9]+(\\.[0-9]+)?")]
    private static partial Regex Varying();
}
