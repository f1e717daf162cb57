using Dyepath.Bench;

// Fewer makers, for a first look.
bool quick = args.Contains("--quick");
args = [.. args.Where(arg => arg != "--quick")];

// One line a benchmark; each prints what it measured and the ratio that matters.
var benchmarks = new Dictionary<string, Action<TextWriter>>
{
    ["fabric"] = FabricBenchmark.Run,
    ["simulation"] = SimulationBenchmark.Run,
    ["making"] = output => MakingBenchmark.Run(output, quick),
    ["making-fits"] = output => MakingBenchmark.RunFits(output, quick),
    ["making-words"] = output => MakingWordsBenchmark.Run(output, quick),
    ["taps"] = output => TapBenchmark.Run(output, quick),
    ["workshop"] = WorkshopBenchmark.Run,
    ["plan"] = PlanBenchmark.Run,
    ["shaping"] = ShapingBenchmark.Run,
    ["starters"] = StarterBenchmark.RunFindings,
    ["starter-times"] = StarterBenchmark.RunTimes,
    ["grading"] = GradingBenchmark.Run,
    ["booklet"] = BookletBenchmark.Run,
    ["host"] = HostBenchmark.Run,
};

string[] asked = args is [] or ["all"] ? [.. benchmarks.Keys] : args;
if (asked.FirstOrDefault(name => !benchmarks.ContainsKey(name)) is { } unknown)
{
    Console.Error.WriteLine($"No benchmark is called '{unknown}'. There are: {string.Join(", ", benchmarks.Keys)}.");
    return 2;
}

Console.WriteLine(Machine.Describe());
foreach (string name in asked) benchmarks[name](Console.Out);
return 0;
