using System.Globalization;
using System.Runtime.InteropServices;
using Dyepath.Core.Constructions;
using Dyepath.Core.Findings;
using Dyepath.Core.Planning;
using Dyepath.Core.Projects;

namespace Dyepath.Bench;

/// <summary>The documents that garments are begun with: what is found in them, and how long their plans take.</summary>
internal static class StarterBenchmark
{
    private const int WarmUps = 10;
    private const int Runs = 25;

    /// <summary>
    /// Every garment and form of neck in every chart, all sizes together and each alone, as it is begun and without the edging of its
    /// hem, cuffs and brim: how many documents are warned of or have no plan, and every sentence of the first kind.
    /// </summary>
    public static void RunFindings(TextWriter output)
    {
        output.WriteLine("| garment | documents | warned of as begun | warned of with hem, cuffs and brim left plain |");
        output.WriteLine("| --- | --- | --- | --- |");
        var sentences = new List<string>();
        foreach (var alike in Starter.All.GroupBy(s => s.Name))
        {
            int documents = 0, begun = 0, bare = 0;
            foreach (var starter in alike)
            {
                var said = new Dictionary<string, List<string>>();
                foreach (var sizes in starter.Choices)
                {
                    documents++;
                    var found = Found(starter.Project(sizes));
                    begun += found.Length > 0 ? 1 : 0;
                    bare += Found((starter with { Bare = true }).Project(sizes)).Length > 0 ? 1 : 0;
                    foreach (var sentence in found)
                        (CollectionsMarshal.GetValueRefOrAddDefault(said, sentence, out _) ??= []).Add(sizes is [var one] ? one : "all");
                }
                sentences.AddRange(said.Select(s => $"{starter.Name} | {starter.Chart} | {string.Join(", ", s.Value)} | {s.Key}"));
            }
            output.WriteLine($"| {alike.Key} | {documents} | {begun} | {bare} |");
        }
        output.WriteLine();
        sentences.ForEach(output.WriteLine);
    }

    /// <summary>Warnings, or why there is no plan.</summary>
    private static string[] Found(Project project)
    {
        var result = GarmentPlanner.Plan(project);
        return result.Plan is { } plan
            ? [.. plan.Findings.Where(f => f.Level != FindingLevel.Note).Select(f => $"{f.Place}: {f.Text}")]
            : [.. result.Reasons.Select(f => $"no plan: {f.Place}: {f.Text}")];
    }

    /// <summary>Garments by forms of neck, all sizes of the chart that each is begun with; a median and the fastest run.</summary>
    public static void RunTimes(TextWriter output)
    {
        output.WriteLine("| garment | sizes | ms, median | ms, fastest | hem, cuffs and brim left plain: median | fastest |");
        output.WriteLine("| --- | --- | --- | --- | --- | --- |");
        Starter[] starters = [.. Repertoire.All.SelectMany(k => Starter.Of(k, k.IsToBody ? k.Chart : null))];
        // All that they share is compiled for speed before the first is timed.
        foreach (var starter in starters)
            Times(starter.Project());
        foreach (var starter in starters)
        {
            var begun = Times(starter.Project());
            var bare = Times((starter with { Bare = true }).Project());
            output.WriteLine(string.Create(
                CultureInfo.InvariantCulture,
                $"| {starter.Name} | {Math.Max(1, starter.Project().Sizes.Called.Length)} | {Stopwatches.Median(begun):0.0} | {begun.Min():0.0} | {Stopwatches.Median(bare):0.0} | {bare.Min():0.0} |"));
        }
    }

    private static double[] Times(Project project)
    {
        var times = new double[Runs];
        for (var run = -WarmUps; run < Runs; run++)
        {
            var seconds = Stopwatches.Seconds(() => GarmentPlanner.Plan(project));
            if (run >= 0)
                times[run] = 1000 * seconds;
        }
        return times;
    }
}
