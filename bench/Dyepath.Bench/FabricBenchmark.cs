using System.Diagnostics;
using System.Globalization;
using Dyepath.Core.Fabrics;
using Dyepath.Core.Yarns;

namespace Dyepath.Bench;

/// <summary>
/// Filling a fabric against a plain memory copy of the same bytes. Aim: half the copy's speed or better for whole
/// sequences without turn cost. Time includes working out the first block and its strips.
/// </summary>
public static class FabricBenchmark
{
    private const int Repeats = 9;
    private static readonly TimeSpan PerRepeat = TimeSpan.FromMilliseconds(40);

    public static void Run(TextWriter output)
    {
        ArgumentNullException.ThrowIfNull(output);
        double[] whole = [5, 4, 6, 7];
        double[] real = [5.2, 4.1, 6, 7.3];
        // Until the runtime has compiled the fill for speed.
        for (var i = 0; i < 4; i++)
            Compare(TextWriter.Null, "", real, Working.Turned, 250, 400, i * 0.25);
        output.WriteLine("Fabric fill against Buffer.MemoryCopy of the same bytes (best of 9; a fresh fill each time)");
        Compare(output, "whole C 22, turned, 83 x 72", whole, Working.Turned, 83, 72, 0);
        Compare(output, "whole C 22, turned, 250 x 400", whole, Working.Turned, 250, 400, 0);
        Compare(output, "whole C 22, turned, 1000 x 1000", whole, Working.Turned, 1000, 1000, 0);
        Compare(output, "whole C 22, turned, 1000 x 5000", whole, Working.Turned, 1000, 5000, 0);
        Compare(output, "whole C 22, rounds, 250 x 400", whole, Working.Rounds, 250, 400, 0);
        Compare(output, "whole C 22, turn 0.5, 250 x 400", whole, Working.Turned, 250, 400, 0.5);
        Compare(output, "real C 22.6, turned, 250 x 400", real, Working.Turned, 250, 400, 0);
        Compare(output, "real C 22.6, turn 0.45137, 250 x 400", real, Working.Turned, 250, 400, 0.45137);
    }

    private static unsafe void Compare(TextWriter output, string name, double[] sections, Working working, int stitches, int rows, double turn)
    {
        var reader = new RingReader(ColourRing.FromUnits(sections));
        var path = FabricPath.Constant(working, stitches, rows, new PathOptions { TurnCost = turn });
        var cells = new byte[stitches * rows];
        var source = new byte[cells.Length];
        var fill = Best(() => new FabricFill(reader, path).Fill(cells));
        var copy = Best(() =>
        {
            fixed (byte* from = source, to = cells)
                Buffer.MemoryCopy(from, to, cells.Length, cells.Length);
        });
        output.WriteLine(string.Create(CultureInfo.InvariantCulture,
            $"  {name,-38} fill {cells.Length / fill / 1e9,7:0.00} GB/s   copy {cells.Length / copy / 1e9,7:0.00} GB/s   ratio {copy / fill:0.00}"));
    }

    private static double Best(Action action)
    {
        var best = double.MaxValue;
        for (var repeat = 0; repeat < Repeats; repeat++)
        {
            var (count, watch) = (0, Stopwatch.StartNew());
            while (watch.Elapsed < PerRepeat)
            {
                for (var i = 0; i < 16; i++)
                    action();
                count += 16;
            }
            best = Math.Min(best, watch.Elapsed.TotalSeconds / count);
        }
        return best;
    }
}
