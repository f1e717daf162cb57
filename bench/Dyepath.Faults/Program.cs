using System.Diagnostics;
using System.Globalization;
using Dyepath.Faults;
using Dyepath.Faults.Sources;
using Dyepath.Faults.Trying;

var options = Options.Read(args, out var wrong);
if (options is null)
{
    Console.Error.WriteLine($"{wrong}\n{Options.Usage}");
    return 2;
}
var clock = Stopwatch.StartNew();
var target = options.Target;
var compiler = await Compiler.OfAsync(target);
var found = Finder.In(compiler.Compilation, path => target.FolderOf(path) is { } folder && options.Asks(folder));
var asked = found.Where(f => options.At.IsEmpty || options.At.Any(Report.Line(f).Contains));
var sown = Planter.Plant(compiler.Compilation, Seeded.Shuffled(asked, options.Seed), options.Count);
Say($"{found.Length} faults could be planted; {sown.Faults.Length} of them are, seed {options.Seed}.");
if (options.List)
{
    foreach (var fault in sown.Faults)
        Console.WriteLine(Report.Line(fault));
    return 0;
}
using var tests = TestAssembly.Beside(target, compiler, sown.Compilation);
Say("Built. Each test class is run once, to learn how long it takes and which faults it passes.");
var limit = options.Longest is { } longest ? Limit.Of(TimeSpan.FromSeconds(longest)) : Limit.Known;
var classes = await Reach.OfAsync(tests, [.. (await tests.ClassesAsync()).Where(options.Runs)], limit, options.Parallel);
foreach (var red in classes.Where(c => c.Red is not null))
    Console.WriteLine($"Left out: {red.Name}; without a fault: {red.Red}.");
var tried = sown.Faults.Where(f => options.Only.IsEmpty || options.Only.Contains(f.Number)).ToList();
Say($"{classes.Length} test classes. Trying {tried.Count} faults.");
var results = await Trial.OfAsync(tests, tried, [.. classes.Where(c => c.Red is null)], options.Parallel, r => Say(Report.Line(r)));
Console.WriteLine();
Console.WriteLine(Report.Table(results, target));
Console.WriteLine(Report.Survivors(results));
Say("Done.");
return 0;

void Say(string line) => Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{clock.Elapsed.TotalSeconds,5:0} s  {line}"));
