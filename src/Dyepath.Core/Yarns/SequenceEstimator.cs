using System.Collections.Immutable;
using Dyepath.Core.Swatches;

namespace Dyepath.Core.Yarns;

/// <summary>Repeats counted without a break in work from one ball, every row as long as the sequence.</summary>
/// <param name="Ball">Index of the ball.</param>
/// <param name="FirstRepeat">Index of its first row among the ball's.</param>
internal sealed record CountedRun(int Ball, int FirstRepeat, ImmutableArray<ImmutableArray<int>> Rows);

/// <summary>
/// Estimates a colour sequence from stitches counted per colour, by generalised least squares on the cumulative
/// boundaries (docs/mathematics.md, "Measuring"). A mean of the repeats with its usual error takes the repeats for
/// independent, which hands that drift do not make, and covers 0.65 to 0.75 where it says 0.95.
/// </summary>
public static class SequenceEstimator
{
    /// <summary>
    /// Boundaries estimated together; a longer run is cut into pieces of this size, each with its own beginning, which
    /// bounds the work by the number of counts and gives up little: what a longer run adds is the rounding's share alone.
    /// </summary>
    private const int MostBoundaries = 320;

    /// <summary>The weights depend on the answer through the boundaries' places; it settles in two passes.</summary>
    private const int Passes = 2;

    /// <param name="repeats">
    /// 1 or more rows of 1 to 64 counts, each 0 to 4,096 stitches (pooling units), all of one length, counted without a break.
    /// </param>
    /// <param name="dye">Relative standard deviation of each section's length; omitted, the prior's for all.</param>
    /// <exception cref="ArgumentException">No row, rows of unequal length, a count out of range, or nothing counted at all.</exception>
    public static SequenceEstimate Estimate(
        ImmutableArray<ImmutableArray<int>> repeats, HandsPrior hands, IReadOnlyList<double>? dye = null)
    {
        ArgumentNullException.ThrowIfNull(hands);
        if (repeats.IsDefaultOrEmpty || repeats[0].Length is 0 or > ColourRing.MostSections
            || repeats.Any(r => r.Length != repeats[0].Length || r.Any(k => k is < 0 or > ColourRing.LongestSequence)))
        {
            throw new ArgumentException(
                $"Counts need 1 or more rows, each of the same 1 to {ColourRing.MostSections} counts from 0 to "
                + $"{ColourRing.LongestSequence}.",
                nameof(repeats));
        }
        if (repeats.All(r => r.Sum() == 0))
            throw new ArgumentException("No stitch was counted.", nameof(repeats));
        if (dye is not null && (dye.Count != repeats[0].Length || dye.Any(d => !(d >= 0 && d <= 1))))
            throw new ArgumentException("Dye needs one figure from 0 to 1 for each section.", nameof(dye));
        return Estimate([new CountedRun(0, 0, repeats)], hands, dye ?? Enumerable.Repeat(hands.Dye, repeats[0].Length).ToArray());
    }

    internal static SequenceEstimate Estimate(IReadOnlyList<CountedRun> runs, HandsPrior hands, IReadOnlyList<double> dye)
    {
        var sections = runs[0].Rows[0].Length;
        var blocks = runs.SelectMany(run => run.Rows.Chunk(Math.Max(1, (MostBoundaries - 1) / sections))).ToArray();
        var repeats = blocks.Sum(b => b.Length);
        var mean = new double[sections];
        for (var j = 0; j < sections; j++)
            mean[j] = Math.Max(blocks.Sum(b => b.Sum(row => row[j])) / (double)repeats, 1.0 / (2 * repeats));

        var spread = dye.ToArray();
        SequenceEstimate? estimate = null;
        for (var pass = 0; pass < Passes; pass++)
        {
            var error = Math.Sqrt(CountingPlan.SequenceVariance(mean, spread, hands, repeats));
            var covariance = new CountCovariance(mean, spread, hands, error);
            estimate = Solve(blocks, sections, covariance, hands, repeats);
            for (var j = 0; j < sections; j++)
                mean[j] = Math.Max(estimate.Sections[j].Value, 1.0 / (2 * repeats));
        }
        return estimate!;
    }

    private static SequenceEstimate Solve(
        ImmutableArray<int>[][] blocks, int sections, CountCovariance covariance, HandsPrior hands, int repeats)
    {
        var factors = new Dictionary<int, Cholesky>();
        var normal = new double[sections * sections];
        var right = new double[sections];
        double squares = 0;
        var observations = 0;
        foreach (var block in blocks)
        {
            var size = block.Length * sections + 1;
            if (!factors.TryGetValue(block.Length, out var factor))
                factors.Add(block.Length, factor = Cholesky.Factor(covariance.Matrix(block.Length), size));
            var offset = new double[size];
            Array.Fill(offset, 1);
            factor.SolveLower(offset);
            var counts = Whitened(factor, offset, n => block[(n - 1) / sections][(n - 1) % sections]);
            var columns = Enumerable.Range(0, sections)
                .Select(j => Whitened(factor, offset, n => (n - 1) % sections == j ? 1 : 0)).ToArray();
            for (var a = 0; a < sections; a++)
            {
                right[a] += Cholesky.Dot(columns[a], counts);
                for (var b = 0; b <= a; b++)
                    normal[a * sections + b] += Cholesky.Dot(columns[a], columns[b]);
            }
            squares += Cholesky.Dot(counts, counts);
            observations += size - 1;
        }

        var solution = (double[])right.Clone();
        var inverse = Cholesky.Factor(normal, sections);
        inverse.Solve(solution);
        return new SequenceEstimate(
            solution, inverse.Inverse(), repeats, Math.Max(0, squares - Cholesky.Dot(solution, right)), observations - sections, hands);
    }

    /// <summary>Running totals of the steps, whitened, and rid of the block's unknown beginning.</summary>
    private static double[] Whitened(Cholesky factor, double[] offset, Func<int, double> step)
    {
        var column = new double[factor.Size];
        for (var n = 1; n < column.Length; n++)
            column[n] = column[n - 1] + step(n);
        factor.SolveLower(column);
        var share = Cholesky.Dot(column, offset) / Cholesky.Dot(offset, offset);
        for (var n = 0; n < column.Length; n++)
            column[n] -= share * offset[n];
        return column;
    }
}
