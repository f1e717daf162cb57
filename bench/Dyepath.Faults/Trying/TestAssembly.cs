using System.Collections.Immutable;
using System.ComponentModel;
using System.Diagnostics;
using Dyepath.Faults.Sources;
using Microsoft.CodeAnalysis.CSharp;

namespace Dyepath.Faults.Trying;

/// <summary>How a run of tests ended.</summary>
/// <param name="Red">What failed, or why it counts as failed; null where all passed.</param>
internal sealed record TestRun(string? Red);

/// <summary>How long a run may go on: its processor time is what counts, for other work on the machine stretches the clock.</summary>
internal sealed record Limit(TimeSpan Cpu, TimeSpan Clock)
{
    /// <summary>For tests that are known to end.</summary>
    public static Limit Known { get; } = new(TimeSpan.FromMinutes(10), TimeSpan.FromHours(1));

    /// <summary>For tests that are left out where they take longer.</summary>
    public static Limit Of(TimeSpan cpu) => new(cpu, cpu * 40);

    /// <summary>Far more than tests that usually take this much need, whatever else the machine does.</summary>
    public static Limit Beyond(TimeSpan usualCpu) => new(usualCpu * 4 + TimeSpan.FromSeconds(5), usualCpu * 40 + TimeSpan.FromMinutes(2));
}

/// <summary>The target's built tests, with the target exchanged for the one that holds the faults.</summary>
internal sealed class TestAssembly : IDisposable
{
    // A fault may well fill the memory.
    private const string MostMemory = "0x100000000";

    private static readonly TimeSpan Tick = TimeSpan.FromMilliseconds(500);

    private readonly Target _target;
    private readonly string _folder;

    private TestAssembly(Target target, string folder)
    {
        _target = target;
        _folder = folder;
    }

    public static TestAssembly Beside(Target target, Compiler compiler, CSharpCompilation sown)
    {
        var built = Path.Combine(target.TestFolder, "bin", "Release", "net10.0");
        // Within the repository, for some tests read its files; of its own, for several runs may go on at once.
        var folder = Path.Combine(Target.Root, "out", "faults", $"{target.Name}-{Environment.ProcessId}");
        foreach (var file in Directory.EnumerateFiles(built, "*", SearchOption.AllDirectories))
        {
            var copy = Path.Combine(folder, Path.GetRelativePath(built, file));
            Directory.CreateDirectory(Path.GetDirectoryName(copy)!);
            File.Copy(file, copy);
        }
        compiler.Emit(sown, Path.Combine(folder, $"{target.Assembly}.dll"));
        return new TestAssembly(target, folder);
    }

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    public async Task<ImmutableArray<string>> ClassesAsync()
    {
        using var process = Start(["-list", "classes"], []);
        var said = await process.StandardOutput.ReadToEndAsync();
        return [.. said.Split('\n', StringSplitOptions.TrimEntries).Where(l => l.StartsWith("Dyepath.", StringComparison.Ordinal))];
    }

    /// <summary>Runs some classes in a process of their own.</summary>
    /// <param name="limit">Longer than that counts as failed.</param>
    public async Task<TestRun> RunAsync(IEnumerable<string> classes, Limit limit, params (string Name, string Value)[] environment)
    {
        var clock = Stopwatch.StartNew();
        using var process = Start([.. classes.SelectMany(c => new[] { "-class", c }), "-stopOnFail", "-noColor", "-noLogo", "-maxThreads", "1"], environment);
        var output = process.StandardOutput.ReadToEndAsync();
        var end = process.WaitForExitAsync();
        while (await Task.WhenAny(end, Task.Delay(Tick)) != end)
        {
            if (clock.Elapsed < limit.Clock && CpuOf(process) < limit.Cpu)
                continue;
            process.Kill(entireProcessTree: true);
            await end;
            return new TestRun("takes far too long");
        }
        var failed = (await output).Split('\n').FirstOrDefault(l => l.EndsWith("[FAIL]", StringComparison.Ordinal))?.Trim();
        return new TestRun(process.ExitCode == 0 ? null : failed?.Split('(')[0].Replace(" [FAIL]", "", StringComparison.Ordinal) ?? "breaks off");
    }

    private static TimeSpan CpuOf(Process process)
    {
        try
        {
            return process.TotalProcessorTime;
        }
        catch (Exception ended) when (ended is InvalidOperationException or Win32Exception)
        {
            // It has just ended, and there is nothing to ask any more.
            return TimeSpan.Zero;
        }
    }

    private Process Start(ImmutableArray<string> arguments, (string Name, string Value)[] environment)
    {
        var start = new ProcessStartInfo("dotnet", [Path.Combine(_folder, $"{_target.TestAssembly}.dll"), .. arguments])
        {
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            WorkingDirectory = _folder,
            // Short runs gain nothing from watching which code is hot.
            Environment = { ["DOTNET_GCHeapHardLimit"] = MostMemory, ["DOTNET_TieredPGO"] = "0" },
        };
        foreach (var (name, value) in environment)
            start.Environment[name] = value;
        var process = Process.Start(start) ?? throw new InvalidOperationException("dotnet does not start.");
        process.ErrorDataReceived += (_, _) => { };
        process.BeginErrorReadLine();
        return process;
    }
}
