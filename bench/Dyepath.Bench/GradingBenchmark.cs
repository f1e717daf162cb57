using System.Collections.Immutable;
using System.Globalization;
using Dyepath.Core.Colours;
using Dyepath.Core.Constructions;
using Dyepath.Core.Fabrics;
using Dyepath.Core.Garments;
using Dyepath.Core.Planning;
using Dyepath.Core.Projects;
using Dyepath.Core.Quantities;
using Dyepath.Core.Sizing;
using Dyepath.Core.Swatches;
using Dyepath.Core.Yarns;

namespace Dyepath.Bench;

/// <summary>
/// How seeded documents come out: every chart, every garment made to the body, yarns of all kinds, every size. Before: the two counts of
/// least squared error, the edging's rounds as they usually are. After: the plan.
/// </summary>
internal static class GradingBenchmark
{
    private const int Documents = 60;

    /// <summary>In centimetres.</summary>
    private const double Near = 0.5;

    private const string Head =
        "| no. | chart, sizes | garment | yarn | along the stitches | ≤ ½ cm, % | worst, cm | counts | edging depths | wider each size | one lean |";

    private static readonly Srgb[] Colours =
    [
        new(0x17, 0x39, 0x4d), new(0x4c, 0x9a, 0xa0), new(0xe9, 0xef, 0xe9), new(0xb8, 0x94, 0x68), new(0x5c, 0x5a, 0x2c),
        new(0x7a, 0x1f, 0x2b),
    ];

    /// <summary>Counts, and what each size comes to.</summary>
    /// <param name="Errors">Of every size along the stitches, in centimetres.</param>
    /// <param name="Rises">Whether every size is wider than the one before it whose target is less wide.</param>
    private sealed record Outcome(ImmutableArray<double> Errors, int Counts, int Depths, bool Rises, bool OneLean)
    {
        public int InReach => Errors.Count(e => Math.Abs(e) <= Near);

        public double Worst => Errors.Max(Math.Abs);
    }

    public static void Run(TextWriter output)
    {
        output.WriteLine(Head);
        output.WriteLine(string.Concat(Enumerable.Repeat("| --- ", Head.Count(c => c == '|') - 1)) + "|");
        var planned = new List<(Outcome Before, Outcome After)>();
        for (var seed = 0; seed < Documents; seed++)
        {
            var (starter, project) = Document(seed);
            var row = string.Create(CultureInfo.InvariantCulture,
                $"| {seed + 1} | {starter.Chart}, {project.Sizes.Called.Length} | {starter.Name} | {Say(project)} |");
            var result = GarmentPlanner.Plan(project);
            if (result.Plan is not { } plan)
            {
                output.WriteLine($"{row} no plan: {result.Reasons[0].Text} |||||||");
                continue;
            }
            var (before, after) = (Before(plan), After(plan));
            planned.Add((before, after));
            output.WriteLine(string.Create(CultureInfo.InvariantCulture,
                $"{row} {GarmentMeasures.Words(plan.Chosen.Ruler.Measure)} | {Share(before)} → {Share(after)} | {before.Worst:0.0} → {after.Worst:0.0} | {before.Counts} → {after.Counts} | {after.Depths} | {Say(before.Rises)} → {Say(after.Rises)} | {Say(before.OneLean)} → {Say(after.OneLean)} |"));
        }
        output.WriteLine();
        output.WriteLine($"{planned.Count} of {Documents} documents have a plan.");
        output.WriteLine();
        output.WriteLine("| | sizes within ½ cm | worst of a document, median | worst of all | counts a pattern | wider each size | one lean |");
        output.WriteLine("| --- | --- | --- | --- | --- | --- | --- |");
        Summary(output, "before", [.. planned.Select(p => p.Before)]);
        Summary(output, "after", [.. planned.Select(p => p.After)]);
    }

    private static void Summary(TextWriter output, string which, Outcome[] all)
    {
        var near = 100.0 * all.Sum(o => o.InReach) / all.Sum(o => o.Errors.Length);
        var median = Stopwatches.Median(all.Select(o => o.Worst));
        var (rises, oneLean) = (all.Count(o => o.Rises), all.Count(o => o.OneLean));
        output.WriteLine(string.Create(
            CultureInfo.InvariantCulture,
            $"| {which} | {near:0} % | {median:0.0} cm | {all.Max(o => o.Worst):0.0} cm | {all.Average(o => o.Counts):0.0} | {rises} of {all.Length} | {oneLean} of {all.Length} |"));
    }

    private static Outcome After(Plan plan)
    {
        var ruler = plan.Chosen.Ruler;
        var depths = ruler.Sizes.Select(s => s.Choice!)
            .Select(c => c.Finished - (ruler.Counts.FirstOrDefault(c.IsOn)?.Finished ?? Length.Zero)).Distinct().Count();
        var leans = plan.Sizes.SelectMany(s => s.Pieces).Where(p => p.Pooled).Select(p => Math.Abs(p.Lean)).ToArray();
        return new Outcome(
            [.. plan.Sizes.Select(s => (s.Finished[ruler.Measure] - s.Target[ruler.Measure]).Centimetres)],
            ruler.Sizes.SelectMany(s => new[] { s.Choice!.Front, s.Choice.Back }).Distinct().Count(), depths,
            Rises(plan, s => s.Finished[Across(plan)]), IsOne(leans));
    }

    /// <summary>
    /// The exact answer without freedom of the edging: of all pairs of counts that make the motif, the one with the least sum of squares.
    /// </summary>
    private static Outcome Before(Plan plan)
    {
        var ruler = plan.Chosen.Ruler;
        var best = (
            from one in ruler.Counts
            from other in ruler.Counts
            where other.Finished >= one.Finished
            let chosen = ruler.Sizes.Select(s => Off(s, one) <= Off(s, other) ? one : other).ToArray()
            select (Chosen: chosen, Loss: chosen.Zip(ruler.Sizes, (c, s) => Off(s, c) * Off(s, c)).Sum()))
            .MinBy(p => p.Loss).Chosen;
        var widths = plan.Sizes.Zip(best).ToDictionary(
            p => p.First, p => ruler.Measure == Across(plan) ? p.Second.Finished : p.First.Finished[Across(plan)]);
        return new Outcome(
            [.. best.Zip(ruler.Sizes, (c, s) => (c.Finished - s.Target).Centimetres)], best.Distinct().Count(), 1,
            Rises(plan, s => widths[s]), IsOne(best.Select(c => Math.Abs(c.Lean))));

        static double Off(RulerSize size, RulerCount count) => Math.Abs((count.Finished - size.Target).Centimetres);
    }

    private static GarmentMeasure Across(Plan plan) => plan.Construction.Groups[0].Across.Measure;

    private static bool Rises(Plan plan, Func<SizePlan, Length> width) => plan.Sizes.Zip(plan.Sizes.Skip(1)).All(
        p => p.Second.Target[Across(plan)] <= p.First.Target[Across(plan)] || width(p.Second) > width(p.First));

    /// <summary>Leans within a quarter of a stitch look alike.</summary>
    private static bool IsOne(IEnumerable<double> leans) => leans.Max() - leans.Min() <= 0.25 + 1e-9;

    private static string Share(Outcome outcome) =>
        string.Create(CultureInfo.InvariantCulture, $"{100.0 * outcome.InReach / outcome.Errors.Length:0}");

    private static string Say(bool holds) => holds ? "yes" : "no";

    private static string Say(Project project)
    {
        var (counts, gauge) = (project.Fabric.SectionStitches!.Value, project.Fabric.Swatch.Worked);
        return string.Create(
            CultureInfo.InvariantCulture,
            $"C = {counts.Sum()} in {counts.Length}, {gauge.Stitches:0} {project.Fabric.Stitch.Abbreviation}");
    }

    /// <summary>
    /// A garment's starter in a chart, hem and cuffs edged in rounds left open, in a yarn whose sequence is as long as yarns are dyed:
    /// up to 3.6 m (common practice, no source). Nine charts and ten garments meet in every pair before one comes again.
    /// </summary>
    private static (Starter Starter, Project Project) Document(int seed)
    {
        var random = new Random(seed);
        var kinds = Repertoire.All.Where(k => k.IsToBody).ToArray();
        var necks = Starter.Of(kinds[seed % kinds.Length], SizeCharts.All[seed % SizeCharts.All.Length].Id).ToArray();
        var starter = necks[random.Next(necks.Length)];
        var project = starter.Project();
        var stitch = seed % 2 == 0 ? FabricStitch.SingleCrochet : FabricStitch.HalfDoubleCrochet;
        var gauge = random.Next(9, 29);
        var weight = YarnWeights.All(YarnWeightRevision.B).Last(w => w.Category > 0 && (w.CrochetStitches.Least ?? 0) <= gauge);
        // As in the starter's swatch: 25.2 mm of yarn to a single crochet of 7.1 mm, more in taller stitches.
        var yarnPerStitch = 63.0 / (100.0 / 14) * (100.0 / gauge) / 10 * stitch.YarnInSingleCrochet;
        var sequence = random.Next(14, Math.Clamp((int)(360 / yarnPerStitch), 15, 40) + 1);
        var sections = Split(sequence, random.Next(3, 7), random);
        return (starter, project with
        {
            Yarn = project.Yarn with
            {
                Name = "Seeded yarn",
                Category = weight.Category,
                Counted = [],
                Sections =
                [
                    .. sections.Select((n, i) => new YarnSection($"colour {i + 1}", Colours[i], Yarn(n * yarnPerStitch))),
                ],
            },
            Fabric = new FabricChoice(
                stitch,
                new Swatch(
                    (weight.Hook.Least ?? weight.Hook.Most)!.Value.Millimetres,
                    new Gauge(gauge, Math.Round(gauge / stitch.HeightOverWidth), Length.FromCentimetres(10)), null, null,
                    [new YarnUsed(40, Yarn(40 * yarnPerStitch))]),
                SectionStitches: sections),
        });

        static Length Yarn(double centimetres) => Length.FromCentimetres(Math.Round(centimetres, 1));
    }

    /// <summary>Each at least 2, where they are so many.</summary>
    private static ImmutableArray<int> Split(int sum, int parts, Random random)
    {
        var split = Enumerable.Repeat(2, parts).ToArray();
        for (var left = sum - 2 * parts; left > 0; left--)
            split[random.Next(parts)]++;
        return [.. split];
    }
}
