using System.Globalization;
using Dyepath.Core.Tests.Yarns;

namespace Dyepath.Bench;

/// <summary>How many makers get diamonds by themselves: by colours, and by counts from a swatch (docs/workshops.md).</summary>
internal static class WorkshopBenchmark
{
    private const int Trials = 4_000;

    private static readonly int[] CountedSequences = [1, 2, 4];

    public static void Run(TextWriter output)
    {
        output.WriteLine("| hands | sequences in a row | by colours | 1 sequence counted | 2 counted | 4 counted |");
        output.WriteLine("| --- | --- | --- | --- | --- | --- |");
        foreach (var spread in new[] { 0.01, 0.02, 0.03, 0.05 })
        {
            foreach (var rounds in new[] { 1, 2, 3, 4 })
            {
                var counted = CountedSequences.Select(count =>
                    Enumerable.Range(0, Trials).Select(t => ColourTrial.Of(spread, rounds, count, (ulong)t)).ToArray()).ToArray();
                output.WriteLine(string.Create(CultureInfo.InvariantCulture,
                    $"| {spread * 100:0} % | {rounds} | {counted[0].Count(c => c.ByColours) / (double)Trials:0.00} | {string.Join(" | ", counted.Select(all => (all.Count(c => c.ByCount) / (double)Trials).ToString("0.00", CultureInfo.InvariantCulture)))} |"));
            }
        }
    }
}
