using System.Globalization;
using Dyepath.Core.Shaping;
using Dyepath.Core.Yarns;

namespace Dyepath.Bench;

/// <summary>Outlines over rows: a front with armholes and a neck in nine sizes; aim: far below 100 ms for all nine, warm.</summary>
internal static class ShapingBenchmark
{
    private const double AimMilliseconds = 100;
    private const int Sizes = 9;
    private const int Runs = 40;

    public static void Run(TextWriter output)
    {
        var ring = ColourRing.FromUnits([5, 4, 6, 7]);
        Report(output, "armholes and neck, nine sizes, steps of 11", () => Fronts(ring, new ShapeOptions()));
        Report(output, "the same with slip stitches", () => Fronts(ring, new ShapeOptions { SlipStitches = true }));
        Report(output, "the same with breaks within 2 units", () => Fronts(ring, new ShapeOptions { Tolerance = 2 }));
        Report(output, "crown to a point, both edges together", () => Crown(ring, 89, 72));
        Report(output, "crown, twice as wide and tall", () => Crown(ring, 177, 144));
    }

    private static void Fronts(ColourRing ring, ShapeOptions options)
    {
        for (var size = 0; size < Sizes; size++)
        {
            var units = 67 + 11 * size;
            var (armhole, rows, neck) = (60 + 2 * size, 100 + 4 * size, 18 + size);
            var right = EdgeLine.Of([new(0, 0), new(armhole, 0), new(armhole, 4), new(armhole + 12, 8 + size)]);
            var left = EdgeLine.Of([new(0, units), new(armhole, units), new(armhole, units - 4), new(armhole + 12, units - 8 - size)]);
            var cut = rows - 16;
            var plan = ShapePlanner.Plan(
                SteadyPanel.Of(ring, units),
                [
                    new(0, cut, right, left),
                    new(cut, 16, right, EdgeLine.Upright((units - neck) / 2.0)) { Below = 0 },
                    new(cut, 16, EdgeLine.Upright((units + neck) / 2.0), left) { Below = 0 },
                ],
                options);
            if (plan is null)
                throw new InvalidOperationException($"Size {size} has no plan.");
        }
    }

    private static void Crown(ColourRing ring, int units, int rows)
    {
        var middle = units / 2.0;
        _ = ShapePlanner.Plan(
            SteadyPanel.Of(ring, units),
            [new(0, rows, EdgeLine.Of([new(0, 0), new(rows, middle)]), EdgeLine.Of([new(0, units), new(rows, middle)]))])
            ?? throw new InvalidOperationException("The crown has no plan.");
    }

    private static void Report(TextWriter output, string what, Action work)
    {
        Stopwatches.Warm(work);
        var times = Enumerable.Range(0, Runs).Select(_ => 1e3 * Stopwatches.Seconds(work)).Order().ToArray();
        var median = Stopwatches.Median(times);
        output.WriteLine(string.Create(
            CultureInfo.InvariantCulture,
            $"{what}: median {median:0.0} ms, fastest {times[0]:0.0} ms of {Runs}; aim over median {AimMilliseconds / median:0.0}"));
    }
}
