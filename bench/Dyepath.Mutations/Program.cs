using System.Globalization;
using Dyepath.Mutations;
using Dyepath.Mutations.Agreement;
using Dyepath.Mutations.Parts;
using Dyepath.Mutations.Trying;

var options = Options.Read(args, out var wrong);
if (options is null)
{
    Console.Error.WriteLine($"{wrong}\n{Options.Usage}");
    return 2;
}
var failed = false;
foreach (var name in options.Parts)
{
    await using var part = Options.Part(name);
    var (from, count) = options.Case is { } one ? (one, 1) : (0, options.Count ?? Options.UsualCount(name));
    var result = await Run.OfAsync(part, options.Seed, from, count, Limits.Promised, Console.WriteLine);
    failed |= result.Failures.Count > 0;
    Console.WriteLine(string.Create(CultureInfo.InvariantCulture,
        $"{name}: {result.Cases} cases of seed {options.Seed} in {result.Clock.TotalSeconds:0} s, {result.Failures.Count} kinds of failure; most processor time {result.MostCpu.TotalSeconds:0.00} s (case {result.SlowestCase}), most taken {result.MostAllocated / 1e6:0} MB"));
    Console.WriteLine($"   {string.Join(", ", result.Outcomes.Select(o => $"{o.Key} {o.Value}"))}");
}
return failed ? 1 : 0;
