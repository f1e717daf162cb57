using Dyepath.Core.Fabrics;
using Dyepath.Core.Planning;
using Dyepath.Core.Yarns;

namespace Dyepath.Core.Tests.Motifs;

/// <summary>Contrast that survives a Gaussian blur, measured on worked fabric away from its edges.</summary>
internal static class BruteBlur
{
    /// <param name="colours">A point in colour space for each section.</param>
    /// <param name="rows">Rows measured; the fabric is worked further both ways, so that edges stay out.</param>
    /// <param name="columns">Columns measured, best a whole number of periods.</param>
    public static double Clarity(
        ColourRing ring, Working working, int stitches, PathOptions options, double[][] colours, double sigmaUnits, double sigmaRows,
        int rows, int columns)
    {
        var (padColumns, padRows) = ((int)Math.Ceiling(9 * sigmaUnits), (int)Math.Ceiling(9 * sigmaRows / 2) * 2);
        var advance = stitches + options.TurnCost;
        var path = FabricPath.Constant(working, stitches, rows + 2 * padRows, options with { Start = options.Start - padRows * advance });
        if (stitches < columns + 2 * padColumns)
            throw new ArgumentException("Too narrow to measure.");
        var fabric = Fabric.Work(ring, path);
        var (before, after) = (0.0, 0.0);
        for (var k = 0; k < colours[0].Length; k++)
        {
            var values = new double[path.Rows, stitches];
            for (var r = 0; r < path.Rows; r++)
            {
                for (var c = 0; c < stitches; c++)
                    values[r, c] = colours[fabric[r, c]][k];
            }
            before += Variance(values, padRows, rows, padColumns, columns);
            after += Variance(Blur(Blur(values, sigmaUnits, 1), sigmaRows, 0), padRows, rows, padColumns, columns);
        }
        return Math.Sqrt(after / before);
    }

    private static double[,] Blur(double[,] values, double sigma, int axis)
    {
        var radius = (int)Math.Ceiling(9 * sigma);
        var kernel = Enumerable.Range(-radius, 2 * radius + 1).Select(i => Math.Exp(-i * i / (2 * sigma * sigma))).ToArray();
        var sum = kernel.Sum();
        var (rows, columns) = (values.GetLength(0), values.GetLength(1));
        var blurred = new double[rows, columns];
        for (var r = 0; r < rows; r++)
        {
            for (var c = 0; c < columns; c++)
            {
                for (var i = -radius; i <= radius; i++)
                {
                    var (y, x) = axis == 0 ? (r + i, c) : (r, c + i);
                    if (y >= 0 && y < rows && x >= 0 && x < columns)
                        blurred[r, c] += kernel[i + radius] / sum * values[y, x];
                }
            }
        }
        return blurred;
    }

    private static double Variance(double[,] values, int fromRow, int rows, int fromColumn, int columns)
    {
        var (sum, squares) = (0.0, 0.0);
        for (var r = fromRow; r < fromRow + rows; r++)
        {
            for (var c = fromColumn; c < fromColumn + columns; c++)
            {
                sum += values[r, c];
                squares += values[r, c] * values[r, c];
            }
        }
        var mean = sum / (rows * columns);
        return squares / (rows * columns) - mean * mean;
    }
}
