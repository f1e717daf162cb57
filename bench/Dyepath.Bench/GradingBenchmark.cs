using System.Globalization;
using System.Text;
using System.Text.Json.Nodes;
using Dyepath.Core.Garments;
using Dyepath.Core.Planning;
using Dyepath.Core.Projects;

namespace Dyepath.Bench;

/// <summary>
/// How seeded documents come out, charts by garments by yarns: whether sizes are near to their targets along the stitches, how many
/// counts a pattern asks for, and how many neighbours come out alike.
/// </summary>
internal static class GradingBenchmark
{
    private const int Documents = 60;

    private static readonly string[] Charts = ["women", "child", "youth", "astm-d5585-straight", "baby"];
    private static readonly string[] Directions = ["best", "up", "sideways"];
    private static readonly string[] Shapes = ["tunic", "pullover"];

    public static void Run(TextWriter output)
    {
        output.WriteLine("direction asked | planned of | sizes within 0.5 cm | worst, cm | counts a pattern | pairs of equal neighbours | leans a pattern");
        foreach (var direction in Directions)
        {
            var (documents, planned, sizes, near, counts, equal, pairs, leans) = (0, 0, 0, 0, 0, 0, 0, 0);
            double worst = 0;
            for (var seed = 0; seed < Documents; seed++)
            {
                if (Directions[seed % Directions.Length] != direction)
                    continue;
                documents++;
                var reading = ProjectReader.Read(Encoding.UTF8.GetBytes(Document(seed).ToJsonString()));
                if (reading.Project is not { } project || !GarmentPlanner.Plan(project).HasPlan)
                    continue;
                var plan = GarmentPlanner.Plan(project).Plan!;
                var along = plan.Direction == Direction.Up ? GarmentMeasure.Width : GarmentMeasure.Length;
                planned++;
                foreach (var size in plan.Sizes)
                {
                    var error = Math.Abs((size.Finished[along] - size.Target[along]).Centimetres);
                    sizes++;
                    near += error <= 0.5 ? 1 : 0;
                    worst = Math.Max(worst, error);
                }
                foreach (var (a, b) in plan.Sizes.Zip(plan.Sizes.Skip(1)))
                {
                    pairs++;
                    equal += b.Target[GarmentMeasure.Width] > a.Target[GarmentMeasure.Width]
                        && b.Finished[GarmentMeasure.Width] <= a.Finished[GarmentMeasure.Width] ? 1 : 0;
                }
                counts += plan.Sizes.SelectMany(s => new[] { s.Pieces[0].Stitches, s.Pieces[1].Stitches }).Distinct().Count();
                leans += plan.Sizes.Select(s => Math.Round(Math.Abs(s.Pieces[0].Lean), 2)).Distinct().Count();
            }
            output.WriteLine(string.Create(CultureInfo.InvariantCulture,
                $"{direction} | {planned} of {documents} | {Share(near, sizes)} | {worst:0.0} | {Mean(counts, planned)} | {equal} of {pairs} | {Mean(leans, planned)}"));
        }
    }

    private static string Share(int part, int whole) => whole == 0 ? "–" : string.Create(CultureInfo.InvariantCulture, $"{100.0 * part / whole:0} %");

    private static string Mean(int sum, int of) => of == 0 ? "–" : string.Create(CultureInfo.InvariantCulture, $"{(double)sum / of:0.0}");

    /// <summary>The demo with another chart, garment, yarn and gauge; the hem's rounds are left open.</summary>
    private static JsonNode Document(int seed)
    {
        var random = new Random(seed);
        var document = JsonNode.Parse(DemoProject.Utf8)!;
        int[] stitches = [.. Enumerable.Range(0, random.Next(3, 7)).Select(_ => random.Next(2, 8))];
        var sections = (JsonArray)document["yarn"]!["sections"]!;
        string[] colours = ["#17394d", "#4c9aa0", "#e9efe9", "#b89468", "#5c5a2c", "#7a1f2b"];
        sections.Clear();
        for (var i = 0; i < stitches.Length; i++)
            sections.Add(new JsonObject { ["name"] = $"colour {i + 1}", ["colour"] = colours[i], ["length"] = string.Create(CultureInfo.InvariantCulture, $"{6.3 * stitches[i]:0.0} cm") });
        document["yarn"]!.AsObject().Remove("counted");
        document["fabric"]!["sectionStitches"] = new JsonArray([.. stitches.Select(s => JsonValue.Create(s))]);
        var gauge = 12 + random.Next(0, 9);
        var swatch = document["fabric"]!["swatch"]!.AsObject();
        swatch["worked"] = new JsonObject { ["stitches"] = gauge, ["rows"] = Math.Round(gauge * 1.13), ["over"] = "10 cm" };
        swatch.Remove("blocked");
        swatch.Remove("hung");
        var shape = Shapes[random.Next(Shapes.Length)];
        document["garment"] = new JsonObject
        {
            ["shape"] = shape,
            ["ease"] = $"{random.Next(4, 13)} cm",
            ["belowWaist"] = $"{(shape == "tunic" ? random.Next(20, 31) : random.Next(4, 14))} cm",
            ["neckWidth"] = "20 cm",
            ["direction"] = Directions[seed % Directions.Length],
            ["edgings"] = new JsonArray(new JsonObject { ["where"] = "hem", ["edging"] = random.Next(2) == 0 ? "rib" : "sc" }),
        };
        document["sizes"] = new JsonObject { ["chart"] = Charts[seed / Directions.Length % Charts.Length] };
        return document;
    }
}
